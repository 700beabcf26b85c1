// SPDX-License-Identifier: Apache-2.0
#pragma once
#include "models/properties/constants.hpp"
#include "models/properties/psychrometrics.hpp"

namespace noonhouse {

/// Vapour of air at a temperature and a relative humidity [kg/kg dry air].
inline double humidity_at(double temperature_k, double share, double pressure_pa = kStandardPressure) {
  return humidity_ratio(share * saturation_pressure_pa(temperature_k), pressure_pa);
}

}  // namespace noonhouse
