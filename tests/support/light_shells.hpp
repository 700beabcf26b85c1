// SPDX-License-Identifier: Apache-2.0
#pragma once
#include "models/light/light_scene.hpp"

namespace noonhouse {

/// 6 m long, 3 m wide, eaves 1.8 m, ridge 2.6 m, two bays. Pieces: front wall, front roof, back roof, back wall of the
/// first bay, the same of the last, then the first and the last end.
inline LightShell gable_shell() {
  return {{{1.5, 0.0}, {1.5, 1.8}, {0.0, 2.6}, {-1.5, 1.8}, {-1.5, 0.0}},
          {3.0, 0.0, -3.0},
          {{0, 1, 2, 3}, {4, 5, 6, 7}},
          8,
          9,
          10};
}

/// A cube of one metre: front wall, roof, back wall, first end, last end.
inline LightShell cube_shell() {
  return {{{0.5, 0.0}, {0.5, 1.0}, {-0.5, 1.0}, {-0.5, 0.0}}, {0.5, -0.5}, {{0, 1, 2}}, 3, 4, 5};
}

}  // namespace noonhouse
