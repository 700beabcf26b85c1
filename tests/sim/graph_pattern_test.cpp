// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <algorithm>
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/uniform_int_distribution.hpp>
#include <numeric>

#include "sim/graph/pattern.hpp"

namespace noonhouse {
namespace {

using Edges = std::vector<std::pair<int, int>>;

/// Entries of the filled pattern when the vertices are eliminated in this order.
int filled_entries(int size, const Edges& edges, const std::vector<int>& order) {
  std::vector<int> place(order.size());
  for (std::size_t k = 0; k < order.size(); ++k) place[static_cast<std::size_t>(order[k])] = static_cast<int>(k);
  Edges moved;
  for (const auto& [a, b] : edges)
    moved.emplace_back(place[static_cast<std::size_t>(a)], place[static_cast<std::size_t>(b)]);
  return filled_pattern(size, moved).entries();
}

std::vector<int> natural(int size) {
  std::vector<int> order(static_cast<std::size_t>(size));
  std::iota(order.begin(), order.end(), 0);
  return order;
}

void expect_permutation(std::vector<int> order, int size) {
  std::sort(order.begin(), order.end());
  EXPECT_EQ(order, natural(size));
}

Edges star(int leaves) {
  Edges edges;
  for (int i = 1; i <= leaves; ++i) edges.emplace_back(0, i);
  return edges;
}

Edges grid(int side) {
  Edges edges;
  for (int r = 0; r < side; ++r)
    for (int c = 0; c < side; ++c) {
      if (c + 1 < side) edges.emplace_back(r * side + c, r * side + c + 1);
      if (r + 1 < side) edges.emplace_back(r * side + c, (r + 1) * side + c);
    }
  return edges;
}

Edges complete(int size) {
  Edges edges;
  for (int i = 0; i < size; ++i)
    for (int j = 0; j < i; ++j) edges.emplace_back(i, j);
  return edges;
}

TEST(Pattern, FindsEveryEntryAndNoOther) {
  const Pattern p = filled_pattern(4, {{0, 3}, {1, 3}});
  EXPECT_EQ(p.entries(), 4 + 4);
  for (int i = 0; i < 4; ++i) EXPECT_EQ(p.find(i, i), p.diagonal[static_cast<std::size_t>(i)]);
  EXPECT_GE(p.find(3, 0), 0);
  EXPECT_GE(p.find(0, 3), 0) << "made symmetric";
  EXPECT_EQ(p.find(0, 1), -1);
  EXPECT_EQ(p.find(2, 3), -1);
}

TEST(Pattern, EliminatingAHubJoinsAllItsNeighbours) {
  EXPECT_EQ(filled_pattern(6, star(5)).entries(), 36);                   // hub first: full
  EXPECT_EQ(filled_entries(6, star(5), {1, 2, 3, 4, 5, 0}), 6 + 2 * 5);  // hub last: none
}

TEST(Pattern, IsClosedUnderElimination) {
  boost::random::mt19937_64 random(11);
  const auto draw = [&](int below) { return boost::random::uniform_int_distribution<int>(0, below - 1)(random); };
  for (int round = 0; round < 40; ++round) {
    const int size = 2 + draw(20);
    Edges edges;
    for (int e = draw(3 * size); e > 0; --e) edges.emplace_back(draw(size), draw(size));
    const Pattern p = filled_pattern(size, edges);
    for (int k = 0; k < size; ++k)
      for (int i = k + 1; i < size; ++i) {
        ASSERT_EQ(p.find(i, k) >= 0, p.find(k, i) >= 0);
        for (int j = k + 1; j < size; ++j)
          if (p.find(i, k) >= 0 && p.find(k, j) >= 0) {
            ASSERT_GE(p.find(i, j), 0);
          }
      }
    for (const auto& [a, b] : edges) ASSERT_GE(p.find(a, b), 0);
  }
}

TEST(Order, IsAPermutationOfAnyGraph) {
  boost::random::mt19937_64 random(3);
  const auto draw = [&](int below) { return boost::random::uniform_int_distribution<int>(0, below - 1)(random); };
  expect_permutation(fill_reducing_order(1, {}), 1);
  expect_permutation(fill_reducing_order(5, {}), 5);                                // all alone
  expect_permutation(fill_reducing_order(4, {{0, 0}, {1, 2}, {2, 1}, {1, 2}}), 4);  // loops, doubles, alone
  expect_permutation(fill_reducing_order(6, {{0, 1}, {2, 3}, {4, 5}}), 6);          // parts
  for (int size = 2; size <= 30; ++size) expect_permutation(fill_reducing_order(size, complete(size)), size);
  for (int round = 0; round < 500; ++round) {
    const int size = 1 + draw(60);
    Edges edges;
    for (int e = draw(4 * size); e > 0; --e) edges.emplace_back(draw(size), draw(size));
    expect_permutation(fill_reducing_order(size, edges), size);
  }
}

TEST(Order, TreesFillNothing) {
  EXPECT_EQ(filled_entries(31, star(30), fill_reducing_order(31, star(30))), 31 + 2 * 30);
  Edges chain;  // a chain numbered from both ends inward and out again, so that the natural order fills
  for (int i = 0; i + 1 < 40; ++i) chain.emplace_back((i * 7) % 40, ((i + 1) * 7) % 40);
  EXPECT_EQ(filled_entries(40, chain, fill_reducing_order(40, chain)), 40 + 2 * 39);
  EXPECT_GT(filled_entries(40, chain, natural(40)), 40 + 2 * 39);
}

TEST(Order, AGridFillsFarLessThanInItsNaturalOrder) {
  const int natural_fill = filled_entries(225, grid(15), natural(225));
  const int ordered_fill = filled_entries(225, grid(15), fill_reducing_order(225, grid(15)));
  EXPECT_LT(ordered_fill, natural_fill * 6 / 10);
}

TEST(Order, MinimumDegreeNeverLosesToTheNaturalOrderByMuchOnRandomGraphs) {
  boost::random::mt19937_64 random(5);
  const auto draw = [&](int below) { return boost::random::uniform_int_distribution<int>(0, below - 1)(random); };
  std::int64_t ordered = 0, as_numbered = 0;
  for (int round = 0; round < 60; ++round) {
    Edges edges;
    for (int e = 0; e < 70; ++e) edges.emplace_back(draw(50), draw(50));
    ordered += filled_entries(50, edges, fill_reducing_order(50, edges));
    as_numbered += filled_entries(50, edges, natural(50));
  }
  EXPECT_LT(ordered * 2, as_numbered);
}

}  // namespace
}  // namespace noonhouse
