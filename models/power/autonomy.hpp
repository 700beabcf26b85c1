// SPDX-License-Identifier: Apache-2.0
#pragma once

namespace noonhouse {

/// Capacity of a battery that carries a daily use for days without sun [J]:  C = E days / (depth x efficiency)
/// [method of IEEE 1013 and IEEE 1562]. `depth`: share of the capacity that may be used; `efficiency`: of discharging.
/// Divide by capacity_share() of the coldest battery to cover cold. Not modelled: fast rates, self-discharge, wear.
double battery_size_j(double daily_use_j, double days, double depth, double efficiency);

/// Rated power of an array that makes up a daily use each day [W]:  P = E / (h x efficiency), h hours of full sun
/// (1000 W/m2) a day in its plane, `efficiency` from rated power to what the loads get [method of IEEE 1013 and IEEE
/// 1562]. Does not model days of refilling after bad weather.
double array_size_w(double daily_use_j, double full_sun_hours, double efficiency);

/// What draws on a battery while no sun comes.
struct SunlessUse {
  double daily_load_j = 0.0;          ///< of devices, as the loads see it
  double standby_w = 0.0;             ///< draws all day on top
  double discharge_efficiency = 1.0;  ///< above 0 to 1
  double self_discharge_per_s = 0.0;  ///< at the battery's temperature
};
/// Days until a charge [J] is down to the charge at which loads are cut off [J], without sun; 0 where it is there
/// already, infinite where nothing draws. Exact for a steady load:
///   dQ/dt = -q - r Q,  t = ln(1 + r (Q - Q_cut) / (q + r Q_cut)) / r,  q = (E / day + standby) / efficiency
/// Does not model fast rates, nor loads that follow the weather: within a day the answer is a mean.
double days_without_sun(double charge_j, double cut_off_j, const SunlessUse& use);

}  // namespace noonhouse
