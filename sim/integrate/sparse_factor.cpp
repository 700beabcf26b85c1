// SPDX-License-Identifier: Apache-2.0
#include "sim/integrate/sparse_factor.hpp"

#include <cmath>

#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {
std::size_t at(int i) { return static_cast<std::size_t>(i); }
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

bool SparseFactor::factor(double diagonal, const double* jacobian) {
  const Pattern& pattern = *pattern_;
  double* value = value_.data();
  const int entries = pattern.entries();
  for (int p = 0; p < entries; ++p) value[p] = -jacobian[p];
  for (int row = 0; row < pattern.size; ++row) value[pattern.diagonal[at(row)]] += diagonal;
  const int* target = target_.data();
  for (int row = 0; row < pattern.size; ++row) {
    const int own_diagonal = pattern.diagonal[at(row)];
    const double start = std::abs(value[own_diagonal]);
    for (int p = pattern.row_begin[at(row)]; p < own_diagonal; ++p) {
      const int k = pattern.column[at(p)];
      const double factor = value[p] *= inverse_pivot_[at(k)];
      const int upper_end = pattern.row_begin[at(k) + 1];
      for (int u = pattern.diagonal[at(k)] + 1; u < upper_end; ++u) value[*target++] -= factor * value[u];
    }
    const double pivot = value[own_diagonal];
    if (!(std::abs(pivot) > kLostPivot * start)) return false;
    inverse_pivot_[at(row)] = 1.0 / pivot;
  }
  return true;
}

void SparseFactor::solve(double* x) const {
  const Pattern& pattern = *pattern_;
  const double* value = value_.data();
  const int* column = pattern.column.data();
  for (int row = 0; row < pattern.size; ++row) {
    double sum = x[row];
    for (int p = pattern.row_begin[at(row)]; p < pattern.diagonal[at(row)]; ++p) sum -= value[p] * x[column[p]];
    x[row] = sum;
  }
  for (int row = pattern.size - 1; row >= 0; --row) {
    double sum = x[row];
    for (int p = pattern.diagonal[at(row)] + 1; p < pattern.row_begin[at(row) + 1]; ++p) sum -= value[p] * x[column[p]];
    x[row] = sum * inverse_pivot_[at(row)];
  }
}

}  // namespace noonhouse
