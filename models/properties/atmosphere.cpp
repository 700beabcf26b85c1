// SPDX-License-Identifier: Apache-2.0
#include "models/properties/atmosphere.hpp"

#include <cmath>

#include "models/properties/constants.hpp"

namespace noonhouse {

double standard_pressure_pa(double altitude_m) {
  return kStandardPressure * std::pow(1.0 - 2.25577e-5 * altitude_m, 5.2559);
}

double standard_temperature_k(double altitude_m) { return kZeroCelsius + 15.0 - 0.0065 * altitude_m; }

double fao_pressure_pa(double altitude_m) { return 101300.0 * std::pow((293.0 - 0.0065 * altitude_m) / 293.0, 5.26); }

}  // namespace noonhouse
