// SPDX-License-Identifier: Apache-2.0
#pragma once

/// What flows through a nozzle, and the power in it.
namespace noonhouse {

/// Volume flow [m3/s] of a nozzle at a gauge pressure [Pa]:  Q = K sqrt(p), K in m3/(s Pa^(1/2)).
/// Bernoulli's law with a constant discharge coefficient: turbulent flow through a fixed opening. Zero at or below zero
/// pressure. Does not model: valves that open at a pressure, nozzles that hold their flow.
double nozzle_flow_m3_s(double constant, double pressure_pa);

/// The K of a nozzle from one line of its maker's table, flow [m3/s] at a gauge pressure above zero [Pa].
double nozzle_constant(double flow_m3_s, double pressure_pa);

/// The K of a round opening [m] that lets water of this density [kg/m3] into air:  K = C (pi/4) d^2 sqrt(2 / rho).
/// Discharge coefficient C: 0.61 for a sharp edge (Lamb, Hydrodynamics; from memory), less for a whirling flow.
double orifice_constant(double discharge_coefficient, double diameter_m, double density_kg_m3);

/// Power in the water [W]:  P = p Q. What the motor draws is this over the efficiency of pump and motor.
double hydraulic_power_w(double pressure_pa, double flow_m3_s);

}  // namespace noonhouse
