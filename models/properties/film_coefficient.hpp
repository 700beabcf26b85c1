// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cmath>

#include "sim/core/smooth.hpp"

namespace noonhouse {

/// Film coefficient of free convection in air with a draught [W/(m2 K)], always positive.
///   h = floor + c |dT|^(1/3)
/// Turbulent free convection in air near room temperature: c = 1.31 for a vertical plate, 1.52 for a warm plate
/// facing up   [Holman, Heat Transfer, table 7-2, simplified equations; from memory]. The floor stands for the
/// draught that is never absent (common practice, no source). |dT| is rounded within about 0.05 K of zero.
/// Not modelled: laminar films, a cold plate facing up, the size of the surface.
struct FilmCoefficient {
  double per_cube_root = 1.31;  ///< c [W/(m2 K^(4/3))]
  double floor_w_m2_k = 1.0;
  template <class S>
  S at(const S& difference_k) const {
    using std::cbrt;
    return floor_w_m2_k + per_cube_root * cbrt(smooth_abs(difference_k, 0.05));
  }
};

}  // namespace noonhouse
