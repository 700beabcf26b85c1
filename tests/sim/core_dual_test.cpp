// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <functional>
#include <string>
#include <vector>

#include "sim/core/dual.hpp"
#include "sim/core/smooth.hpp"

namespace noonhouse {
namespace {

using D = Dual<2>;
using Values = std::function<double(double, double)>;
using Duals = std::function<D(const D&, const D&)>;
struct Operation {
  std::string name;
  Values values;
  Duals duals;
};

template <class F>
Operation operation(std::string name, F f) {
  return {std::move(name), [f](double a, double b) { return f(a, b); },
          [f](const D& a, const D& b) -> D { return f(a, b); }};
}

std::vector<Operation> operations() {
  using std::abs, std::cbrt, std::cos, std::exp, std::fabs, std::log, std::pow, std::sin, std::sqrt, std::tanh;
  return {operation("a+b", [](auto a, auto b) { return a + b; }),
          operation("a-b", [](auto a, auto b) { return a - b; }),
          operation("a*b", [](auto a, auto b) { return a * b; }),
          operation("a/b", [](auto a, auto b) { return a / b; }),
          operation("-a", [](auto a, auto) { return -a; }),
          operation("a+2", [](auto a, auto b) { return a + 2.0 * b + (3.0 + b); }),
          operation("a-2", [](auto a, auto b) { return (a - 2.0) * (5.0 - b); }),
          operation("a/2", [](auto a, auto b) { return a / 2.0 + 7.0 / b; }),
          operation("a*2", [](auto a, auto b) { return a * 2.5 + 0.5 * b; }),
          operation("+=",
                    [](auto a, auto b) {
                      auto c = a;
                      c += b;
                      c *= a;
                      c -= b;
                      c /= b;
                      return c;
                    }),
          operation("exp", [](auto a, auto b) { return exp(a * b); }),
          operation("log", [](auto a, auto b) { return log(a) * b; }),
          operation("sqrt", [](auto a, auto b) { return sqrt(a) / b; }),
          operation("pow", [](auto a, auto b) { return pow(a, 1.7) + pow(b, -0.4); }),
          operation("cbrt", [](auto a, auto b) { return cbrt(a * b); }),
          operation("tanh", [](auto a, auto b) { return tanh(a - b); }),
          operation("sin", [](auto a, auto b) { return sin(a) * cos(b); }),
          operation("abs", [](auto a, auto b) { return abs(a - b) + fabs(b - a) * a; }),
          operation("smooth_positive", [](auto a, auto b) { return smooth_positive(a - 2.0 * b, 0.3); }),
          operation("smooth_abs", [](auto a, auto b) { return smooth_abs(a - b, 0.2); }),
          operation("ramp", [](auto a, auto b) { return ramp(a - 0.2 * b, 4.0); })};
}

// A central difference with a step of cbrt(epsilon) is good to about 1e-10 of the slope's scale.
constexpr double kStep = 6e-6, kDifferenceError = 2e-9;

TEST(Dual, EveryOperationHasTheSlopeOfItsFiniteDifference) {
  for (const auto& [a, b] : std::vector<std::pair<double, double>>{{1.3, 0.7}, {0.4, 2.1}, {3.0, 1.1}}) {
    for (const auto& op : operations()) {
      SCOPED_TRACE(op.name + " at " + std::to_string(a) + ", " + std::to_string(b));
      const D exact = op.duals(D::input(a, 0), D::input(b, 1));
      EXPECT_DOUBLE_EQ(exact.value, op.values(a, b));
      const double by_a = (op.values(a + kStep, b) - op.values(a - kStep, b)) / (2.0 * kStep);
      const double by_b = (op.values(a, b + kStep) - op.values(a, b - kStep)) / (2.0 * kStep);
      EXPECT_NEAR(exact.grad[0], by_a, kDifferenceError * (1.0 + std::abs(by_a)));
      EXPECT_NEAR(exact.grad[1], by_b, kDifferenceError * (1.0 + std::abs(by_b)));
    }
  }
}

TEST(Dual, ComparisonsLookAtTheValueOnly) {
  const D a = D::input(1.0, 0), b = D::input(1.0, 1);
  EXPECT_TRUE(a == b);
  EXPECT_FALSE(a < b);
  EXPECT_TRUE(a <= b && a >= b && a < 2.0 && 0.5 < a && a > 0.0);
}

TEST(Dual, SlopesAtZeroAreFiniteWhereTheyAreDeclaredSo) {
  const D zero = D::input(0.0, 0);
  EXPECT_EQ(sqrt(zero).grad[0], 0.0);
  EXPECT_EQ(cbrt(zero).grad[0], 0.0);
  EXPECT_EQ(pow(zero, 0.5).grad[0], 0.0);
}

TEST(Smooth, PositivePartIsAboveItsCornerAndPositiveFarBelowZero) {
  for (double x : {-1e9, -1e3, -1.0, -1e-3, 0.0, 1e-3, 1.0, 1e9}) {
    const double y = smooth_positive(x, 0.5);
    EXPECT_GT(y, 0.0) << x;
    EXPECT_GE(y, x);
    // y (y - x) = width^2 / 4 defines the curve
    EXPECT_NEAR(y * (y - x) / 0.0625, 1.0, x > 1e3 ? 1.0 : 1e-9) << x;
  }
  EXPECT_DOUBLE_EQ(smooth_positive(0.0, 0.5), 0.25);
}

TEST(Smooth, RampRunsFromZeroToOneWithoutACorner) {
  EXPECT_EQ(ramp(-1.0, 2.0), 0.0);
  EXPECT_EQ(ramp(0.0, 2.0), 0.0);
  EXPECT_DOUBLE_EQ(ramp(1.0, 2.0), 0.5);
  EXPECT_EQ(ramp(2.0, 2.0), 1.0);
  EXPECT_NEAR(ramp(Dual<1>::input(1e-9, 0), 2.0).grad[0], 0.0, 1e-8);
  EXPECT_NEAR(ramp(Dual<1>::input(2.0 - 1e-9, 0), 2.0).grad[0], 0.0, 1e-8);
  EXPECT_DOUBLE_EQ(ramp(Dual<1>::input(1.0, 0), 2.0).grad[0], 0.75);  // 6 s (1 - s) / width
}

}  // namespace
}  // namespace noonhouse
