// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <utility>
#include <vector>

namespace noonhouse {

/// The fixed sparsity of the house's matrices, closed under elimination: compressed rows, columns
/// ascending, every diagonal present, symmetric in structure. One layout serves Jacobian and factors.
struct Pattern {
  int size = 0;
  std::vector<int> row_begin;  ///< size + 1
  std::vector<int> column;
  std::vector<int> diagonal;  ///< position of (i, i)

  int entries() const { return static_cast<int>(column.size()); }
  /// Position of (row, col), or -1 where the pattern has no entry.
  int find(int row, int col) const;
};

/// The pattern of a matrix with these (row, column) entries, made symmetric, with the fill that
/// elimination in the natural order brings.
Pattern filled_pattern(int size, const std::vector<std::pair<int, int>>& entries);

/// An elimination order that keeps fill low: order[k] is the vertex eliminated k-th.
/// Minimum degree on the undirected graph (Boost.Graph, minimum_degree_ordering; George & Liu 1989).
std::vector<int> fill_reducing_order(int vertices, const std::vector<std::pair<int, int>>& edges);

}  // namespace noonhouse
