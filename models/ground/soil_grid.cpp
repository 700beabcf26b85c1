// SPDX-License-Identifier: Apache-2.0
#include "models/ground/soil_grid.hpp"

#include <cmath>

#include "sim/core/errors.hpp"

namespace noonhouse {

std::vector<double> soil_layer_thicknesses_m(double depth_m, int layers, double growth) {
  NOON_ASSERT(depth_m > 0.0 && layers > 0 && growth > 0.0);
  const double first = growth == 1.0 ? depth_m / layers : depth_m * (growth - 1.0) / (std::pow(growth, layers) - 1.0);
  std::vector<double> thicknesses;
  for (int i = 0; i < layers; ++i) thicknesses.push_back(first * std::pow(growth, i));
  return thicknesses;
}

}  // namespace noonhouse
