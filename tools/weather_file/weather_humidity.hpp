// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <algorithm>

#include "models/properties/psychrometrics.hpp"

namespace noonhouse {

/// Humidity ratio at saturation over liquid water, also below freezing: weather services report humidity over liquid
/// water at all temperatures (WMO-No. 8, part I, ch. 4; from memory). [kg/kg dry air]
inline double ratio_at_saturation(double temperature_k, double pressure_pa) {
  return humidity_ratio(saturation_pressure_water_pa(temperature_k), pressure_pa);
}

/// Humidity ratio from a dew point over liquid water, at most saturation at the temperature. [kg/kg dry air]
inline double ratio_from_dew_point(double dew_point_k, double temperature_k, double pressure_pa) {
  return ratio_at_saturation(std::min(dew_point_k, temperature_k), pressure_pa);
}

/// Humidity ratio from relative humidity (1 = saturated over liquid water), at most saturation. [kg/kg dry air]
inline double ratio_from_relative_humidity(double share, double temperature_k, double pressure_pa) {
  return humidity_ratio(std::clamp(share, 0.0, 1.0) * saturation_pressure_water_pa(temperature_k), pressure_pa);
}

}  // namespace noonhouse
