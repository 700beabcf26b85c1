// SPDX-License-Identifier: Apache-2.0
#pragma once
#include "models/properties/constants.hpp"

namespace noonhouse {

/// Degrees of angle as radians.
inline constexpr double kDeg = kRadiansPerDegree;

/// [K] of a temperature that is printed in degC.
inline double kelvin(double celsius) { return celsius + kZeroCelsius; }

}  // namespace noonhouse
