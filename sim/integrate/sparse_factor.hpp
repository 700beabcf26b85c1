// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <cstddef>
#include <vector>

#include "sim/graph/pattern.hpp"

namespace noonhouse {

/// LU factors without pivoting on a filled pattern, for matrices I/(h gamma) - J whose diagonal leads.
/// factor() works in place in the pattern's own layout: no search, no allocation, no fill-in at run time.
class SparseFactor {
 public:
  explicit SparseFactor(const Pattern& pattern);

  /// Loads diagonal * D - jacobian and factors it; D is the unit matrix, or `stores` along its diagonal. False when a
  /// pivot has lost all its digits (relative to its starting diagonal): the caller should try a shorter step.
  bool factor(double diagonal, const double* jacobian, const double* stores = nullptr);
  /// Replaces x by the solution of (factored matrix) x = x.
  void solve(double* x) const;
  /// The same for two right-hand sides at once, which costs little more than one.
  void solve(double* x, double* y) const;

 private:
  template <std::size_t N>
  void substitute(const std::array<double*, N>& x) const;

  const Pattern* pattern_;
  std::vector<double> value_;
  std::vector<double> inverse_pivot_;
  std::vector<int> target_;  ///< for every (row, k, column of k's upper part) in order: position in the row
};

}  // namespace noonhouse
