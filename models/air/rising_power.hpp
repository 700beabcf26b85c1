// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cmath>

namespace noonhouse {

/// x^p for x > 0, zero below, with a slope of zero at zero:  x^2 (x^2 + d^2)^(p/2 - 1),   0 < p <= 2, softness d > 0.
/// Rises everywhere above zero, value and slope are continuous, and the slope is at most of the order of d^(p-1).
/// Cost: too small, by a share of at most (1 - p/2) d^2 / x^2: for a root 0.75 % at 10 d.
template <class S>
S rising_power(const S& x, double power, double softness) {
  using std::pow;
  if (!(x > 0.0)) return S(0.0);
  return x * x * pow(S(x * x + softness * softness), 0.5 * power - 1.0);
}

}  // namespace noonhouse
