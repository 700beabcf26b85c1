// SPDX-License-Identifier: Apache-2.0
#include "sim/graph/pattern.hpp"

#include <algorithm>
#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/minimum_degree_ordering.hpp>
#include <set>

#include "sim/core/errors.hpp"

namespace noonhouse {

int Pattern::find(int row, int col) const {
  const auto begin = column.begin() + row_begin[static_cast<std::size_t>(row)];
  const auto end = column.begin() + row_begin[static_cast<std::size_t>(row) + 1];
  const auto at = std::lower_bound(begin, end, col);
  return at != end && *at == col ? static_cast<int>(at - column.begin()) : -1;
}

Pattern filled_pattern(int size, const std::vector<std::pair<int, int>>& entries) {
  std::vector<std::set<int>> rows(static_cast<std::size_t>(size));
  for (int i = 0; i < size; ++i) rows[static_cast<std::size_t>(i)].insert(i);
  for (const auto& [row, col] : entries) {
    NOON_ASSERT(row >= 0 && row < size && col >= 0 && col < size);
    rows[static_cast<std::size_t>(row)].insert(col);
    rows[static_cast<std::size_t>(col)].insert(row);
  }
  // Eliminating k joins all its later neighbours.
  for (int k = 0; k < size; ++k) {
    const auto& row = rows[static_cast<std::size_t>(k)];
    const std::vector<int> later(row.upper_bound(k), row.end());
    for (int i : later) rows[static_cast<std::size_t>(i)].insert(later.begin(), later.end());
  }
  Pattern out;
  out.size = size;
  out.row_begin.push_back(0);
  for (int i = 0; i < size; ++i) {
    for (int j : rows[static_cast<std::size_t>(i)]) {
      if (j == i) out.diagonal.push_back(out.entries());
      out.column.push_back(j);
    }
    out.row_begin.push_back(out.entries());
  }
  return out;
}

std::vector<int> fill_reducing_order(int vertices, const std::vector<std::pair<int, int>>& edges) {
  using Graph = boost::adjacency_list<boost::vecS, boost::vecS, boost::directedS>;
  const auto count = static_cast<std::size_t>(vertices);
  std::set<std::pair<int, int>> unique;
  for (const auto& [a, b] : edges) {
    if (a == b) continue;
    unique.emplace(a, b);
    unique.emplace(b, a);
  }
  // One vertex without edges more: in a complete graph the library looks one degree beyond its table otherwise.
  Graph graph(count + 1);
  for (const auto& [a, b] : unique) boost::add_edge(static_cast<std::size_t>(a), static_cast<std::size_t>(b), graph);
  // The library fills its third argument with each vertex's place and its fourth with the vertex at each place.
  std::vector<int> degree(count + 1, 0), place(count + 1, 0), order(count + 1, 0), supernode(count + 1, 1);
  const auto index = boost::get(boost::vertex_index, graph);
  boost::minimum_degree_ordering(graph, boost::make_iterator_property_map(degree.begin(), index), place.data(),
                                 order.data(), boost::make_iterator_property_map(supernode.begin(), index), 0, index);
  std::erase(order, vertices);
  std::vector<int> sorted = order;
  std::sort(sorted.begin(), sorted.end());
  NOON_ASSERT(sorted.size() == count);
  for (int i = 0; i < vertices; ++i) NOON_ASSERT(sorted[static_cast<std::size_t>(i)] == i);
  return order;
}

}  // namespace noonhouse
