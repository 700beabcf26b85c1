// SPDX-License-Identifier: Apache-2.0
#include "models/air/louvre.hpp"

#include <array>
#include <cmath>
#include <sstream>

#include "models/air/opening_flow.hpp"
#include "models/properties/constants.hpp"
#include "sim/core/errors.hpp"

namespace noonhouse {

double louvre_discharge(double sash_angle_rad) {
  const double degrees = sash_angle_rad / kRadiansPerDegree;
  if (!(degrees >= -1e-9 && degrees <= 30.0 + 1e-9)) {
    std::ostringstream message;
    message << "a louvre's sash angle is " << degrees << " degrees; discharge is known from 0 (open) to 30 degrees";
    throw UserError(ErrorKind::out_of_range, message.str());
  }
  if (degrees <= 15.0) return 0.80 + (0.62 - 0.80) * degrees / 15.0;
  return 0.62 + (0.41 - 0.62) * (degrees - 15.0) / 15.0;
}

double HingedFlap::gap_m2(double angle_rad) const {
  const double edge = 2.0 * width_m * depth_m * std::sin(0.5 * angle_rad);
  return cheeks ? edge : edge + depth_m * depth_m * std::sin(angle_rad);
}

double HingedFlap::effective_area_m2(double angle_rad) const {
  const std::array areas{width_m * depth_m, gap_m2(angle_rad)};
  return area_in_series_m2(areas);
}

}  // namespace noonhouse
