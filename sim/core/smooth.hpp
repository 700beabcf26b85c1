// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cmath>

namespace noonhouse {

/// max(x, 0) with its corner rounded over about +-width: (x + sqrt(x^2 + width^2)) / 2. Always positive.
/// Far below zero the same value comes from width^2 / (2 (sqrt(x^2 + width^2) - x)), which loses no digits.
template <class S>
S smooth_positive(const S& x, double width) {
  using std::sqrt;
  const S root = sqrt(x * x + width * width);
  if (x < 0.0) return 0.5 * width * width / (root - x);
  return 0.5 * (x + root);
}

/// Rises from 0 at x = 0 to 1 at x = width along 3s^2 - 2s^3, flat outside; slope continuous.
template <class S>
S ramp(const S& x, double width) {
  if (x <= 0.0) return S(0.0);
  if (x >= width) return S(1.0);
  const S s = x / width;
  return s * s * (3.0 - 2.0 * s);
}

/// |x| with its corner rounded over about +-width: sqrt(x^2 + width^2).
template <class S>
S smooth_abs(const S& x, double width) {
  using std::sqrt;
  return sqrt(x * x + width * width);
}

}  // namespace noonhouse
