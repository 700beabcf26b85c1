// SPDX-License-Identifier: Apache-2.0
#include "models/water/tank_shape.hpp"

#include <algorithm>
#include <cmath>

#include "models/properties/constants.hpp"
#include "models/properties/water.hpp"

namespace noonhouse {
namespace {}

double TankShape::perimeter_m() const {
  const double area = plan_area_m2();
  if (plan == Plan::round) return 2.0 * std::sqrt(kPi * area);
  return 2.0 * (1.0 + side_ratio) * std::sqrt(area / side_ratio);
}

double TankShape::depth_m(double content_kg) const {
  return std::clamp(content_kg / (kWaterKgPerM3 * plan_area_m2()), 0.0, height_m);
}

double TankShape::shown_to_sun_m2(double sun_elevation_rad) const {
  if (sun_elevation_rad < 0.0) return 0.0;
  return perimeter_m() / kPi * height_m * std::cos(sun_elevation_rad) + plan_area_m2() * std::sin(sun_elevation_rad);
}

WindEvaporation tank_evaporation(const TankShape& shape, double open_share, double pressure_pa) {
  constexpr double kLastFilmKgM2 = 1.0;
  const double area_m2 = open_share * shape.plan_area_m2();
  return {area_m2, pressure_pa, kLastFilmKgM2 * shape.plan_area_m2()};
}

}  // namespace noonhouse
