// SPDX-License-Identifier: Apache-2.0
#include "models/properties/air_transport.hpp"

#include <cmath>

#include "models/properties/constants.hpp"

namespace noonhouse {

double air_dynamic_viscosity_pa_s(double temperature_k) {
  return 1.458e-6 * temperature_k * std::sqrt(temperature_k) / (temperature_k + 110.4);
}

double air_conductivity_w_m_k(double temperature_k) {
  return 2.64638e-3 * temperature_k * std::sqrt(temperature_k) /
         (temperature_k + 245.4 * std::pow(10.0, -12.0 / temperature_k));
}

AirTransport dry_air_transport(double temperature_k, double pressure_pa) {
  const double density = pressure_pa / (kGasConstantDryAir * temperature_k);
  AirTransport air{};
  air.conductivity_w_m_k = air_conductivity_w_m_k(temperature_k);
  air.dynamic_viscosity_pa_s = air_dynamic_viscosity_pa_s(temperature_k);
  air.kinematic_viscosity_m2_s = air.dynamic_viscosity_pa_s / density;
  air.thermal_diffusivity_m2_s = air.conductivity_w_m_k / (density * kDryAirHeat);
  air.prandtl = air.kinematic_viscosity_m2_s / air.thermal_diffusivity_m2_s;
  return air;
}

}  // namespace noonhouse
