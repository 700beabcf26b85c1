// SPDX-License-Identifier: Apache-2.0
#include "models/air/stirring.hpp"

#include <cmath>

#include "sim/core/errors.hpp"

namespace noonhouse {

double nozzle_jet_speed_m_s(double pressure_pa, double water_density_kg_m3, double velocity_coefficient) {
  NOON_ASSERT(water_density_kg_m3 > 0.0 && velocity_coefficient >= 0.0);
  return pressure_pa > 0.0 ? velocity_coefficient * std::sqrt(2.0 * pressure_pa / water_density_kg_m3) : 0.0;
}

double jet_power_w(double mass_flow_kg_s, double speed_m_s) {
  NOON_ASSERT(mass_flow_kg_s >= 0.0);
  return 0.5 * mass_flow_kg_s * speed_m_s * speed_m_s;
}

double turbulent_velocity_m_s(double power_w, double eddy_m, double air_kg) {
  NOON_ASSERT(power_w >= 0.0 && eddy_m >= 0.0 && air_kg > 0.0);
  return std::cbrt(power_w * eddy_m / air_kg);
}

}  // namespace noonhouse
