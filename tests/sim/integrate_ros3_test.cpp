// SPDX-License-Identifier: Apache-2.0
// The order conditions of Rosenbrock methods: Hairer & Wanner, Solving Ordinary Differential Equations II,
// section IV.7, Table 7.1 (orders 1 to 3) and the stability function (7.14'); quoted from memory.
#include <gtest/gtest.h>

#include <complex>

#include "sim/integrate/ros3.hpp"

namespace noonhouse {
namespace {

using Row3 = std::array<double, 3>;
using Matrix = std::array<Row3, 3>;
constexpr double kRounding = 1e-14;

Row3 times(const Row3& row, const Matrix& m) {
  Row3 out{};
  for (std::size_t j = 0; j < 3; ++j)
    for (std::size_t i = 0; i < 3; ++i) out[j] += row[i] * m[i][j];
  return out;
}
double dot(const Row3& a, const Row3& b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }

/// The textbook form k_i = h f(y + sum alpha_ij k_j) + h J sum gamma_ij k_j from the coefficients in use.
struct Textbook {
  Matrix gamma{}, alpha{}, beta{};
  Row3 alpha_sum{}, gamma_sum{}, beta_sum{}, b{}, b_embedded{};

  Textbook() {
    // gamma = (I / kGamma - C)^-1, lower triangular, by forward substitution.
    const Matrix c{Row3{0, 0, 0}, Row3{ros3::kC21, 0, 0}, Row3{ros3::kC31, ros3::kC32, 0}};
    for (std::size_t col = 0; col < 3; ++col)
      for (std::size_t row = col; row < 3; ++row) {
        double sum = row == col ? 1.0 : 0.0;
        for (std::size_t k = col; k < row; ++k) sum += c[row][k] * gamma[k][col];
        gamma[row][col] = ros3::kGamma * sum;
      }
    const Matrix a{Row3{0, 0, 0}, Row3{ros3::kA21, 0, 0}, Row3{1.0, 0, 0}};
    for (std::size_t i = 0; i < 3; ++i) {
      alpha[i] = times(a[i], gamma);
      for (std::size_t j = 0; j < 3; ++j) beta[i][j] = alpha[i][j] + gamma[i][j];
      alpha_sum[i] = alpha[i][0] + alpha[i][1] + alpha[i][2];
      gamma_sum[i] = gamma[i][0] + gamma[i][1] + gamma[i][2];
      beta_sum[i] = alpha_sum[i] + gamma_sum[i];
    }
    b = times(ros3::kM, gamma);
    Row3 embedded{};
    for (std::size_t i = 0; i < 3; ++i) embedded[i] = ros3::kM[i] - ros3::kE[i];
    b_embedded = times(embedded, gamma);
  }
};

/// R(z) = 1 + z b^T (I - z beta)^-1 (1, 1, 1).
std::complex<double> stability(const Textbook& t, const Row3& weights, std::complex<double> z) {
  std::array<std::complex<double>, 3> x{};
  for (std::size_t i = 0; i < 3; ++i) {
    x[i] = 1.0;
    for (std::size_t j = 0; j < i; ++j) x[i] += z * t.beta[i][j] * x[j];
    x[i] /= 1.0 - z * t.beta[i][i];
  }
  return 1.0 + z * (weights[0] * x[0] + weights[1] * x[1] + weights[2] * x[2]);
}

TEST(Ros3, MeetsTheConditionsOfThirdOrder) {
  const Textbook t;
  EXPECT_NEAR(t.b[0] + t.b[1] + t.b[2], 1.0, kRounding);
  EXPECT_NEAR(dot(t.b, t.beta_sum), 1.0 / 2.0, kRounding);
  EXPECT_NEAR(
      dot(t.b, {t.alpha_sum[0] * t.alpha_sum[0], t.alpha_sum[1] * t.alpha_sum[1], t.alpha_sum[2] * t.alpha_sum[2]}),
      1.0 / 3.0, kRounding);
  EXPECT_NEAR(dot(times(t.b, t.beta), t.beta_sum), 1.0 / 6.0, kRounding);
}

TEST(Ros3, ItsCompanionIsOfSecondOrderAndNoMore) {
  const Textbook t;
  EXPECT_NEAR(t.b_embedded[0] + t.b_embedded[1] + t.b_embedded[2], 1.0, kRounding);
  EXPECT_NEAR(dot(t.b_embedded, t.beta_sum), 1.0 / 2.0, kRounding);
  EXPECT_GT(std::abs(dot(times(t.b_embedded, t.beta), t.beta_sum) - 1.0 / 6.0), 1e-3);
}

TEST(Ros3, TimesOfTheStagesAreTheRowSums) {
  const Textbook t;
  EXPECT_NEAR(t.alpha_sum[1], ros3::kAlpha2, kRounding);
  EXPECT_NEAR(t.alpha_sum[2], ros3::kAlpha2, kRounding);
  for (std::size_t i = 0; i < 3; ++i) EXPECT_NEAR(t.gamma_sum[i], ros3::kTime[i], kRounding);
}

TEST(Ros3, IsLStable) {
  const Textbook t;
  EXPECT_LT(std::abs(stability(t, t.b, -1e12)), 1e-10);
  for (int k = 0; k <= 4000; ++k) {
    const double omega = std::pow(10.0, -4.0 + 8.0 * k / 4000.0);
    EXPECT_LE(std::abs(stability(t, t.b, {0.0, omega})), 1.0 + 1e-12) << omega;
  }
  // gamma is the middle root of 6 g^3 - 18 g^2 + 9 g - 1 = 0, which third order with R(infinity) = 0 demands.
  constexpr double g = ros3::kGamma;
  EXPECT_NEAR(6 * g * g * g - 18 * g * g + 9 * g - 1, 0.0, kRounding);
}

TEST(Ros3, WhatIsCarriedIsWeightedLikeTheStages) {
  const Textbook t;
  const auto w = ros3::carried_weights();
  for (std::size_t i = 0; i < 3; ++i) EXPECT_NEAR(w[i], t.b[i], kRounding);
  EXPECT_NEAR(w[0] + w[1] + w[2], 1.0, kRounding);
}

}  // namespace
}  // namespace noonhouse
