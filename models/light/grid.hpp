// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstddef>
#include <vector>

namespace noonhouse {

/// Numbers by row and column.
struct Grid {
  std::size_t rows = 0, columns = 0;
  std::vector<double> values;
  Grid() = default;
  Grid(std::size_t r, std::size_t c) : rows(r), columns(c), values(r * c, 0.0) {}
  double& operator()(std::size_t r, std::size_t c) { return values[r * columns + c]; }
  double operator()(std::size_t r, std::size_t c) const { return values[r * columns + c]; }
};

}  // namespace noonhouse
