// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <algorithm>
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/uniform_int_distribution.hpp>
#include <boost/random/uniform_real_distribution.hpp>
#include <cmath>
#include <utility>
#include <vector>

#include "sim/integrate/sparse_factor.hpp"

namespace noonhouse {
namespace {

using Dense = std::vector<std::vector<double>>;

/// Gaussian elimination with partial pivoting: shares nothing with what it checks.
std::vector<double> dense_solution(Dense a, std::vector<double> b) {
  const std::size_t n = b.size();
  for (std::size_t k = 0; k < n; ++k) {
    std::size_t best = k;
    for (std::size_t i = k; i < n; ++i)
      if (std::abs(a[i][k]) > std::abs(a[best][k])) best = i;
    std::swap(a[k], a[best]);
    std::swap(b[k], b[best]);
    for (std::size_t i = k + 1; i < n; ++i) {
      const double f = a[i][k] / a[k][k];
      for (std::size_t j = k; j < n; ++j) a[i][j] -= f * a[k][j];
      b[i] -= f * b[k];
    }
  }
  for (std::size_t k = n; k-- > 0;) {
    for (std::size_t j = k + 1; j < n; ++j) b[k] -= a[k][j] * b[j];
    b[k] /= a[k][k];
  }
  return b;
}

/// A random exchange network: an unsymmetric matrix whose columns sum to less than zero, as a Jacobian's do.
struct Network {
  Pattern pattern;
  std::vector<double> jacobian;
  Dense dense;
};

Network random_network(int size, int edges, boost::random::mt19937_64& random) {
  boost::random::uniform_int_distribution<int> vertex(0, size - 1);
  boost::random::uniform_real_distribution<double> strength(-6.0, 2.0);
  std::vector<std::pair<int, int>> entries;
  for (int e = 0; e < edges; ++e) entries.emplace_back(vertex(random), vertex(random));
  Network net{filled_pattern(size, entries), {}, {}};
  const auto n = static_cast<std::size_t>(size);
  net.jacobian.assign(static_cast<std::size_t>(net.pattern.entries()), 0.0);
  net.dense.assign(n, std::vector<double>(n, 0.0));
  const auto add = [&](int row, int col, double value) {
    net.jacobian[static_cast<std::size_t>(net.pattern.find(row, col))] += value;
    net.dense[static_cast<std::size_t>(row)][static_cast<std::size_t>(col)] += value;
  };
  for (const auto& [a, b] : entries) {
    if (a == b) continue;
    const double forward = std::pow(10.0, strength(random)), back = std::pow(10.0, strength(random));
    add(a, a, -forward);
    add(b, a, forward);
    add(b, b, -back);
    add(a, b, back);
  }
  return net;
}

TEST(SparseFactor, EqualsADenseEliminationOnRandomNetworks) {
  boost::random::mt19937_64 random(17);
  boost::random::uniform_real_distribution<double> value(-1.0, 1.0);
  boost::random::uniform_int_distribution<int> sizes(1, 40);
  for (int round = 0; round < 200; ++round) {
    const int size = sizes(random);
    Network net = random_network(size, 2 * size, random);
    SparseFactor factor(net.pattern);
    for (double diagonal : {1e-3, 1.0, 1e3}) {
      ASSERT_TRUE(factor.factor(diagonal, net.jacobian.data()));
      Dense matrix = net.dense;
      for (auto& row : matrix)
        for (double& entry : row) entry = -entry;
      for (std::size_t i = 0; i < matrix.size(); ++i) matrix[i][i] += diagonal;
      std::vector<double> right(matrix.size());
      for (double& r : right) r = value(random);
      const auto expected = dense_solution(matrix, right);
      auto x = right;
      factor.solve(x.data());
      double largest = 0.0;
      for (double v : expected) largest = std::max(largest, std::abs(v));
      // Condition grows with the spread of time constants; 1e-12 holds while the diagonal is not tiny.
      const double tolerance = diagonal < 1.0 ? 1e-9 : 1e-12;
      for (std::size_t i = 0; i < x.size(); ++i) ASSERT_NEAR(x[i], expected[i], tolerance * largest);
      std::vector<double> one = right, two(right.rbegin(), right.rend()), alone = two;
      factor.solve(one.data(), two.data());
      factor.solve(alone.data());
      ASSERT_EQ(one, x) << "two at once are the same as one after the other";
      ASSERT_EQ(two, alone);
    }
  }
}

TEST(SparseFactor, SaysWhenAPivotIsLost) {
  const Pattern pattern = filled_pattern(2, {{0, 1}});
  SparseFactor factor(pattern);
  std::vector<double> jacobian(4, 0.0);
  jacobian[static_cast<std::size_t>(pattern.find(0, 1))] = 1.0;
  jacobian[static_cast<std::size_t>(pattern.find(1, 0))] = 1.0;
  EXPECT_FALSE(factor.factor(1.0, jacobian.data())) << "1 -1; -1 1 is singular";
  EXPECT_TRUE(factor.factor(1.5, jacobian.data())) << "and the next matrix is not spoilt by it";
  EXPECT_FALSE(factor.factor(std::nan(""), jacobian.data()));
}

}  // namespace
}  // namespace noonhouse
