// SPDX-License-Identifier: Apache-2.0
#pragma once

/// How far sprays and jets stir the air they are in. Powers are mechanical [W], from the jet to the air, never
/// negative; all of it ends as turbulence of the one body of air that is named.
namespace noonhouse {

/// Speed [m/s] of water that leaves a nozzle at a gauge pressure [Pa], zero at or below none:  v = C_v sqrt(2 p / rho)
///   [Bernoulli]; C_v is what the nozzle's friction leaves of the speed.
double nozzle_jet_speed_m_s(double pressure_pa, double water_density_kg_m3, double velocity_coefficient);

/// Power [W] of a jet of this mass flow [kg/s] and speed [m/s], of water drops or of a fan's air:  P = m u^2 / 2.
/// Drops give the air all of it but what they fall with in the end, and besides their weight's work, m g times the
/// height of fall: 20 J/kg from 2 m, where 4 bar are 400 J/kg; that work is not in here.
double jet_power_w(double mass_flow_kg_s, double speed_m_s);

/// Speed [m/s] of the turbulence that a power keeps up in a mass of air [kg], above zero, with eddies of a size L [m]:
///   P / M = u^3 / L,  so  u = (P L / M)^(1/3)
/// [Tennekes & Lumley 1972, A First Course in Turbulence, sec. 1.5: dissipation of large eddies, their factor of the
/// order of one taken as one]. L is a share of the body's height or of the jet's width when it has spread, to be stated
/// by the caller. For fully turbulent air at rest in itself between pulses longer than L / u; its slope by the power is
/// infinite at zero. Does not model: layers that resist stirring by their difference of temperature, decay.
double turbulent_velocity_m_s(double power_w, double eddy_m, double air_kg);

}  // namespace noonhouse
