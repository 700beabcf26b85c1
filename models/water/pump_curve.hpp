// SPDX-License-Identifier: Apache-2.0
#pragma once
#include "models/properties/nozzle.hpp"
#include "models/water/water_line.hpp"

/// What a pump brings to nozzles over a lift and a line.
namespace noonhouse {

/// A pump by two points of its data sheet, joined by a parabola with its top at shut-off:
///   p = p0 (1 - (Q / Qmax)^2)      [common practice, no source]
/// p is the rise from inlet to outlet. For centrifugal and small diaphragm pumps that fall off with flow. A piston
/// pump at high pressure gives one flow whatever the pressure: not this curve, but hydraulic_power_w is its power too.
/// Does not model: suction too deep, a pressure switch or relief valve, the speed's fall with the battery's voltage.
struct PumpCurve {
  double shut_off_pa = 0.0;      ///< p0
  double free_flow_m3_s = 1e-4;  ///< Qmax, above zero
  /// Rise of pressure at a flow [Pa]; beyond Qmax the pump is a resistance: the same formula continued.
  double pressure_pa(double flow_m3_s) const {
    const double share = flow_m3_s / free_flow_m3_s;
    return shut_off_pa * (1.0 - share * share);
  }
};

/// Where pump, line and nozzles meet.
struct PumpedFlow {
  double flow_m3_s = 0.0;           ///< of all nozzles together
  double nozzle_pressure_pa = 0.0;  ///< above the air's
  double hydraulic_power_w = 0.0;   ///< that the pump gives to the water; negative where water drives the pump
};

/// The one flow at which the pump's pressure is used up:
///   p(Q) = rho g H + dp_line(Q) + (Q / (N k))^2
/// H: rise from the tank's level to the nozzles, negative where the tank stands higher (then water also runs by its
/// weight). N nozzles of constant k, all at the pressure of the line's end. Zero flow where the lift beats the pump or
/// there is no nozzle; the nozzles' pressure is then zero, as they are open. Water of 20 degC unless said.
PumpedFlow operating_point(const PumpCurve& pump, const WaterLine& line, double lift_m, double nozzle_constant,
                           int nozzles, double temperature_k = 293.15);

/// Electric power that a pump takes [W] for what it gives to the water, by the efficiency of pump and motor together,
/// above 0 to 1. Does not model: what it takes while it pumps against a shut line, where it gives nothing.
constexpr double pump_electric_power_w(double hydraulic_power_w, double efficiency) {
  return hydraulic_power_w / efficiency;
}

}  // namespace noonhouse
