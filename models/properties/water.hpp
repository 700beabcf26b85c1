// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cmath>

#include "models/properties/constants.hpp"

/// Water as liquid, and vapour on its way through air.
namespace noonhouse {

/// Density of liquid water at 1 atm [kg/m3], 0 to 100 degC, within 0.01.
///   Kell 1975, J. Chem. Eng. Data 20, 97.
template <class S>
S water_density_kg_m3(const S& temperature_k) {
  const S t = temperature_k - kZeroCelsius;
  return (999.83952 +
          t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - 280.54253e-12 * t))))) /
         (1.0 + 16.879850e-3 * t);
}

/// Litres of a tank or a gauge as mass; the few per mille by which warm water is lighter are left out [kg/m3].
inline constexpr double kWaterKgPerM3 = 1000.0;

/// Heat that evaporates liquid water of a temperature into vapour of the same [J/kg].
///   L0 - (cw - cpv) t: exactly vapour_enthalpy - liquid_enthalpy, so that balances close.
/// Within 0.7 % of steam tables on 0 to 60 degC (from memory).
template <class S>
S latent_heat(const S& temperature_k) {
  return kLatentHeatZero - (kWaterHeat - kVapourHeat) * (temperature_k - kZeroCelsius);
}

/// Diffusivity of water vapour in air [m2/s].
///   0.2178e-4 (T / 273.15)^1.81 (101325 / p)      [Massman 1998, Atmos. Environ. 32, 1111]
template <class S>
S vapour_diffusivity_m2_s(const S& temperature_k, double pressure_pa) {
  using std::pow;
  return (0.2178e-4 * kStandardPressure / pressure_pa) * pow(temperature_k / kZeroCelsius, 1.81);
}

}  // namespace noonhouse
