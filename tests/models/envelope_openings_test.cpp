// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "models/envelope/openings.hpp"

namespace noonhouse {
namespace {

// Continuous roof vent: A 10 m2, height 0.7 m, dT 5 K, T 300 K, V 2 m/s, C_d 0.644, C_w 0.09: 2.08 m3/s; stack alone
// 0.77, wind alone 1.93; 1 %. Boulard & Baille 1995, J. Agric. Eng. Res. 61, 145 (coefficients from memory).
TEST(OpeningExchange, IsBoulardAndBailles) {
  const OpeningExchange vent{10.0, 0.7};
  EXPECT_NEAR(vent.volume_flow(305.0, 300.0, 2.0, 1.0), 2.08, 0.01 * 2.08);
  EXPECT_NEAR(vent.volume_flow(305.0, 300.0, 0.0, 1.0), 0.77, 0.01 * 0.77);
  EXPECT_NEAR(vent.volume_flow(300.0, 300.0, 2.0, 1.0), 1.93, 0.01 * 1.93);
}

TEST(OpeningExchange, IsTheSameForAColdHouseAndInProportionToItsOpening) {
  const OpeningExchange vent{10.0, 0.7};
  EXPECT_DOUBLE_EQ(vent.volume_flow(295.0, 300.0, 2.0, 1.0), vent.volume_flow(305.0, 300.0, 2.0, 1.0));
  EXPECT_DOUBLE_EQ(vent.volume_flow(305.0, 300.0, 2.0, 0.25), 0.25 * vent.volume_flow(305.0, 300.0, 2.0, 1.0));
  EXPECT_EQ(vent.volume_flow(305.0, 300.0, 2.0, 0.0), 0.0);
}

TEST(OpeningExchange, IsNearlyStillWithoutStackAndWind) {
  // What is left at rest is the width of the rounding, 0.05 K: a tenth of the flow of 5 K.
  const OpeningExchange vent{10.0, 0.7};
  EXPECT_NEAR(vent.volume_flow(300.0, 300.0, 0.0, 1.0), 0.1 * vent.volume_flow(305.0, 300.0, 0.0, 1.0), 1e-4);
}

TEST(OpeningExchange, CarriesVapourAndEnthalpyOfTheAirThatItChanges) {
  const OpeningExchange vent{10.0, 0.7, 1.15};
  std::array<double, 2> q{};
  vent.flux(std::array{305.0, 0.014, 300.0, 0.009, 2.0, 1.0}, q);
  const double m = 1.15 * vent.volume_flow(305.0, 300.0, 2.0, 1.0);
  EXPECT_NEAR(q[0], m * 0.005, 1e-12);
  EXPECT_NEAR(q[1], m * (moist_air_enthalpy(305.0, 0.014) - moist_air_enthalpy(300.0, 0.009)), 1e-6);
}

TEST(Leakage, IsWhatItIsNamedAfterAtFourMetresPerSecondAndAQuarterInStillAir) {
  const Leakage law{0.03};
  std::array<double, 2> q{};
  law.flux(std::array{305.0, 0.014, 300.0, 0.009, 4.0}, q);
  EXPECT_NEAR(q[0], 0.03 * 0.005, 1e-15);
  law.flux(std::array{305.0, 0.014, 300.0, 0.009, 0.0}, q);
  EXPECT_NEAR(q[0], 0.25 * 0.03 * 0.005, 1e-15);
}

}  // namespace
}  // namespace noonhouse
