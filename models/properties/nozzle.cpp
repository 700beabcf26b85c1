// SPDX-License-Identifier: Apache-2.0
#include "models/properties/nozzle.hpp"

#include <cmath>

#include "models/properties/constants.hpp"
#include "sim/core/errors.hpp"

namespace noonhouse {

double nozzle_flow_m3_s(double constant, double pressure_pa) {
  return pressure_pa > 0.0 ? constant * std::sqrt(pressure_pa) : 0.0;
}

double nozzle_constant(double flow_m3_s, double pressure_pa) {
  NOON_ASSERT(flow_m3_s >= 0.0 && pressure_pa > 0.0);
  return flow_m3_s / std::sqrt(pressure_pa);
}

double orifice_constant(double discharge_coefficient, double diameter_m, double density_kg_m3) {
  NOON_ASSERT(density_kg_m3 > 0.0);
  return discharge_coefficient * (kPi / 4.0) * diameter_m * diameter_m * std::sqrt(2.0 / density_kg_m3);
}

double hydraulic_power_w(double pressure_pa, double flow_m3_s) { return pressure_pa * flow_m3_s; }

}  // namespace noonhouse
