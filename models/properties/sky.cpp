// SPDX-License-Identifier: Apache-2.0
#include "models/properties/sky.hpp"

#include <algorithm>

namespace noonhouse {

namespace {

/// Cloud factor of the net longwave loss, 1 under a clear sky, 0.055 under a full one.   [FAO-56, eq. (39)]
double cloud_factor(double clearness_ratio) { return 1.35 * std::clamp(clearness_ratio, 0.3, 1.0) - 0.35; }

}  // namespace

double fao_net_longwave_daily(double coldest_k, double warmest_k, double vapour_pressure_pa, double clearness_ratio) {
  const double daily_stefan_boltzmann = 4.903e-3;  // J/(m2 K4) a day, as FAO-56 prints it
  const double black = daily_stefan_boltzmann * 0.5 * (std::pow(coldest_k, 4.0) + std::pow(warmest_k, 4.0));
  return black * (0.34 - 0.14 * std::sqrt(vapour_pressure_pa / 1000.0)) * cloud_factor(clearness_ratio);
}

double cloud_fraction_from_clearness(double clearness_ratio) { return 1.0 - cloud_factor(clearness_ratio); }

}  // namespace noonhouse
