// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "models/properties/counterflow.hpp"

namespace noonhouse {
namespace {

using Two = std::array<double, 2>;

Two carried(double m, double t_a, double w_a, double t_b, double w_b) {
  Two q{};
  counterflow(m, t_a, w_a, t_b, w_b, q);
  return q;
}

// Dry air at 30 and 20 degC: 1.006 kJ/(kg K) times 10 K. Moist air at 0.010 kg/kg: 25.01 + 0.558 kJ/kg more at 30 degC
// (ASHRAE Handbook of Fundamentals 2017, ch. 1, eq. (30): h = 1.006 t + w (2501 + 1.86 t)).
TEST(Counterflow, CarriesTheDifferencesOfVapourAndEnthalpy) {
  const Two dry = carried(2.0, 303.15, 0.0, 293.15, 0.0);
  EXPECT_EQ(dry[0], 0.0);
  EXPECT_NEAR(dry[1], 2.0 * 10060.0, 1e-6);
  const Two moist = carried(2.0, 303.15, 0.010, 293.15, 0.0);
  EXPECT_NEAR(moist[0], 0.020, 1e-15);
  EXPECT_NEAR(moist[1] - dry[1], 2.0 * (25010.0 + 558.0), 1e-6);
}

TEST(Counterflow, ReversesWithItsEndsAndRestsBetweenEqualSides) {
  const Two there = carried(0.3, 310.0, 0.016, 300.0, 0.009), back = carried(0.3, 300.0, 0.009, 310.0, 0.016);
  EXPECT_DOUBLE_EQ(there[0], -back[0]);
  EXPECT_DOUBLE_EQ(there[1], -back[1]);
  EXPECT_EQ(carried(5.0, 300.0, 0.01, 300.0, 0.01), (Two{0.0, 0.0}));
}

}  // namespace
}  // namespace noonhouse
