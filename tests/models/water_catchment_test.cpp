// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "models/water/catchment.hpp"

namespace noonhouse {
namespace {

std::array<double, 2> caught(double area_m2, double coefficient, double rain_kg_m2_s, double air_k = 288.15) {
  std::array<double, 2> q{};
  RoofCatchment{area_m2, coefficient}.flux(std::array{rain_kg_m2_s, air_k}, q);
  return q;
}

// A depth of 1 mm over 1 m2 is 1 L: definition.
TEST(RoofCatchment, CatchesALitreOfAMillimetreOverASquareMetre) { EXPECT_DOUBLE_EQ(caught(1.0, 1.0, 1.0)[0], 1.0); }

// 12 mm on 24 m2 with yield coefficient 0.80: 230.4 L, with a filter of 0.90 behind it 207.4 L, to 0.1. Method of
// BS EN 16941-1; here the filter is part of the coefficient.
TEST(RoofCatchment, YieldsAStormAsTheStandardReckons) {
  const double hour_s = 3600.0, rain = 12.0 / hour_s;
  EXPECT_NEAR(hour_s * caught(24.0, 0.80, rain)[0], 230.4, 0.1);
  EXPECT_NEAR(hour_s * caught(24.0, 0.80 * 0.90, rain)[0], 207.4, 0.1);
}

// 75 mm/h on 20 m2: 0.417 L/s, rational formula.
TEST(RoofCatchment, RunsOffACloudburst) { EXPECT_NEAR(caught(20.0, 1.0, 75.0 / 3600.0)[0], 0.417, 0.0005); }

TEST(RoofCatchment, BringsRainOfTheAirsTemperature) {
  const auto q = caught(20.0, 0.9, 0.01, 291.15);
  EXPECT_NEAR(q[1], q[0] * kWaterHeat * 18.0, 1e-9);
}

TEST(HandCarried, FlowsByHandOnly) {
  std::array<double, 2> q{1.0, 1.0};
  HandCarried{}.flux(std::array{300.0}, q);
  EXPECT_EQ(q[0], 0.0);
  EXPECT_EQ(q[1], 0.0);
}

}  // namespace
}  // namespace noonhouse
