// SPDX-License-Identifier: Apache-2.0
#include "models/hazard/wind_load.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "models/properties/constants.hpp"
#include "sim/core/errors.hpp"

namespace noonhouse {

double velocity_pressure_pa(double speed_m_s) { return kHalfAirDensity * speed_m_s * speed_m_s; }

double velocity_pressure_in_air_pa(double speed_m_s, double density_kg_m3) {
  return 0.5 * density_kg_m3 * speed_m_s * speed_m_s;
}

double net_uplift_pa(double speed_m_s, double mass_kg_m2, double net_coefficient) {
  return -net_coefficient * velocity_pressure_pa(speed_m_s) - mass_kg_m2 * kGravity;
}

double lift_off_speed_m_s(double mass_kg_m2, double net_coefficient) {
  if (net_coefficient >= 0.0) return std::numeric_limits<double>::infinity();
  return std::sqrt(mass_kg_m2 * kGravity / (kHalfAirDensity * -net_coefficient));
}

double ballast_kg(const BallastNeed& need) {
  NOON_ASSERT(need.safety_factor >= 1.0 && need.area_m2 >= 0.0 && need.mass_kg_m2 >= 0.0);
  const double lift_pa = std::max(0.0, -need.net_coefficient) * velocity_pressure_pa(need.gust_m_s);
  return need.area_m2 * std::max(0.0, need.safety_factor * lift_pa / kGravity - need.mass_kg_m2);
}

double ballast_kg_m(const BallastNeed& need, double edge_length_m) {
  NOON_ASSERT(edge_length_m > 0.0);
  return ballast_kg(need) / edge_length_m;
}

}  // namespace noonhouse
