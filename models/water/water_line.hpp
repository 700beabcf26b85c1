// SPDX-License-Identifier: Apache-2.0
#pragma once

/// Pressure that water loses on its way through a round pipe or hose.
namespace noonhouse {

/// Dynamic viscosity of liquid water [Pa s], 0 to 100 degC at 1 atm, within 2.5 %.
///   2.414e-5 10^(247.8 / (T - 140))     [widely printed fit, T in K; from memory]
double water_viscosity_pa_s(double temperature_k);

/// Darcy's friction factor f [-] of a round pipe by Reynolds number (above zero) and relative roughness e/d, in all
/// regimes by one smooth formula:
///   f = 8 [(8/Re)^12 + (A + B)^(-3/2)]^(1/12)
///   A = [2.457 ln(1 / ((7/Re)^0.9 + 0.27 e/d))]^16,  B = (37530/Re)^16
///   [Churchill 1977, Chem. Eng. 84 (24), 91; from memory]
/// 64/Re while laminar, Colebrook's within 3 % above Re 5000 (measured); between Re 2100 and 4000 no pipe is sure of
/// its factor.
double darcy_friction_factor(double reynolds, double relative_roughness);

/// A pipe or hose with its fittings, full of water.
struct WaterLine {
  double length_m = 0.0;
  double bore_m = 0.01;         ///< inside, above zero
  double roughness_m = 1.5e-6;  ///< drawn tubing, plastics [Moody 1944, Trans. ASME 66, 671; from memory]
  double fittings = 0.0;        ///< sum of the loss coefficients of strainer, valves, bends, by the speed in the bore
};

/// Pressure lost along a line [Pa] at a flow [m3/s], with the sign of the flow; water of the given temperature.
///   dp = (f L/d + sum of zeta) rho u^2 / 2      [Darcy-Weisbach]
/// Does not model: the flow's fall along a line with nozzles on its way (all of it is taken to go to the end, which
/// overstates the loss up to threefold on that stretch), water hammer, hoses that widen.
double line_loss_pa(const WaterLine& line, double flow_m3_s, double temperature_k);

}  // namespace noonhouse
