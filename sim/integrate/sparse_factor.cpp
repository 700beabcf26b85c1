// SPDX-License-Identifier: Apache-2.0
#include "sim/integrate/sparse_factor.hpp"

#include <cmath>

#include "sim/core/errors.hpp"
#include "sim/core/index.hpp"

namespace noonhouse {
namespace {
constexpr double kLostPivot = 1e-13;
}  // namespace

SparseFactor::SparseFactor(const Pattern& pattern)
    : pattern_(&pattern), value_(at(pattern.entries()), 0.0), inverse_pivot_(at(pattern.size), 0.0) {
  for (int row = 0; row < pattern.size; ++row)
    for (int p = pattern.row_begin[at(row)]; p < pattern.diagonal[at(row)]; ++p) {
      const int k = pattern.column[at(p)];
      for (int u = pattern.diagonal[at(k)] + 1; u < pattern.row_begin[at(k) + 1]; ++u) {
        target_.push_back(pattern.find(row, pattern.column[at(u)]));
        NOON_ASSERT(target_.back() >= 0);
      }
    }
}

bool SparseFactor::factor(double diagonal, const double* jacobian, const double* stores) {
  const int* row_begin = pattern_->row_begin.data();
  const int* own = pattern_->diagonal.data();
  const int* column = pattern_->column.data();
  double* value = value_.data();
  double* inverse = inverse_pivot_.data();
  const int size = pattern_->size, entries = pattern_->entries();
  for (int p = 0; p < entries; ++p) value[p] = -jacobian[p];
  const int* target = target_.data();
  for (int row = 0; row < size; ++row) {
    value[own[row]] += stores ? stores[row] * diagonal : diagonal;
    const double start = std::abs(value[own[row]]);
    for (int p = row_begin[row]; p < own[row]; ++p) {
      const int k = column[p];
      const double factor = value[p] *= inverse[k];
      const double* upper = value + own[k] + 1;
      const int count = row_begin[k + 1] - own[k] - 1;
      for (int u = 0; u < count; ++u) value[target[u]] -= factor * upper[u];
      target += count;
    }
    const double pivot = value[own[row]];
    if (!(std::abs(pivot) > kLostPivot * start)) return false;
    inverse[row] = 1.0 / pivot;
  }
  return true;
}

template <std::size_t N>
void SparseFactor::substitute(const std::array<double*, N>& x) const {
  const int* row_begin = pattern_->row_begin.data();
  const int* own = pattern_->diagonal.data();
  const int* column = pattern_->column.data();
  const double* value = value_.data();
  // Both sweeps take the entry solved last at the end of each sum, so that sums of successive rows overlap.
  std::array<double, N> sum;
  const auto subtract = [&](int p) {
    for (std::size_t n = 0; n < N; ++n) sum[n] -= value[p] * x[n][column[p]];
  };
  for (int row = 0; row < pattern_->size; ++row) {
    for (std::size_t n = 0; n < N; ++n) sum[n] = x[n][row];
    for (int p = row_begin[row]; p < own[row]; ++p) subtract(p);
    for (std::size_t n = 0; n < N; ++n) x[n][row] = sum[n];
  }
  for (int row = pattern_->size - 1; row >= 0; --row) {
    for (std::size_t n = 0; n < N; ++n) sum[n] = x[n][row];
    for (int p = row_begin[row + 1] - 1; p > own[row]; --p) subtract(p);
    for (std::size_t n = 0; n < N; ++n) x[n][row] = sum[n] * inverse_pivot_[at(row)];
  }
}

void SparseFactor::solve(double* x) const { substitute<1>({x}); }
void SparseFactor::solve(double* x, double* y) const { substitute<2>({x, y}); }

}  // namespace noonhouse
