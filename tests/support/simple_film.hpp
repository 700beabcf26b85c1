// SPDX-License-Identifier: Apache-2.0
#pragma once
#include "models/properties/surface_film.hpp"

namespace noonhouse {

/// A film alike for warm and cold surfaces: h^3 = draught^3 + c^3 D, turbulent at every difference.
inline SurfaceFilm simple_film(double per_cube_root, double draught_w_m2_k) {
  const FreeFilm free{0.0, per_cube_root * per_cube_root * per_cube_root, 0.0};
  return {draught_w_m2_k * draught_w_m2_k * draught_w_m2_k, free, free};
}

}  // namespace noonhouse
