// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>

#include "models/hazard/wind_load.hpp"
#include "models/properties/constants.hpp"

namespace noonhouse {
namespace {

// HAZ-01. ASCE 7-16, eq. (26.10-1.si), all factors one; 0.2 %.
TEST(VelocityPressure, OfTheLoadStandard) {
  const double rows[][2] = {{10.0, 61.3}, {20.0, 245.0}, {30.0, 552.0}, {40.0, 981.0}};
  for (const auto& [speed, pressure] : rows)
    EXPECT_NEAR(velocity_pressure_pa(speed), pressure, 0.002 * pressure) << speed;
  EXPECT_EQ(velocity_pressure_pa(0.0), 0.0);
  EXPECT_EQ(velocity_pressure_pa(-10.0), velocity_pressure_pa(10.0));
}

TEST(VelocityPressure, FollowsTheDensityOfTheAir) {
  EXPECT_NEAR(velocity_pressure_in_air_pa(20.0, 1.226), velocity_pressure_pa(20.0), 1e-9);
  EXPECT_DOUBLE_EQ(velocity_pressure_in_air_pa(20.0, 0.9), 180.0);  // 0.9/2 times 400
}

// HAZ-02. Balance of weight and suction at a net coefficient of -0.6; 2 %.
TEST(LooseCover, LiftsAtThePublishedSpeed) {
  const double rows[][2] = {{0.3, 2.8}, {1.5, 6.3}, {5.0, 11.5}};
  for (const auto& [mass, speed] : rows) EXPECT_NEAR(lift_off_speed_m_s(mass, -0.6), speed, 0.02 * speed) << mass;
}

TEST(LooseCover, IsInBalanceAtTheSpeedThatLiftsIt) {
  for (const double mass : {0.05, 1.0, 20.0}) {
    const double speed = lift_off_speed_m_s(mass, -1.1);
    EXPECT_NEAR(net_uplift_pa(speed, mass, -1.1), 0.0, 1e-9);
    EXPECT_GT(net_uplift_pa(1.01 * speed, mass, -1.1), 0.0);
    EXPECT_LT(net_uplift_pa(0.99 * speed, mass, -1.1), 0.0);
  }
  EXPECT_EQ(lift_off_speed_m_s(0.0, -0.6), 0.0);
}

TEST(LooseCover, IsNotLiftedByWindThatPressesItOn) {
  EXPECT_TRUE(std::isinf(lift_off_speed_m_s(1.0, 0.4)));
  EXPECT_TRUE(std::isinf(lift_off_speed_m_s(1.0, 0.0)));
  EXPECT_NEAR(net_uplift_pa(10.0, 1.0, 0.5), -0.5 * 61.3 - kGravity, 1e-9);
}

// By hand: 25 m/s is 383.1 Pa; of it 0.6 on 20 m2 lifts 4597.5 N, half as much again 703.2 kg; the cloth is 6 kg.
TEST(Ballast, HoldsTheGustWithItsSafety) {
  const BallastNeed need{25.0, 20.0, -0.6, 0.3, 1.5};
  EXPECT_NEAR(ballast_kg(need), 697.2, 0.05);
  EXPECT_NEAR(ballast_kg_m(need, 18.0), 697.2 / 18.0, 0.005);
}

TEST(Ballast, IsNothingBelowTheSpeedThatLiftsAndBalancesWithoutSafety) {
  BallastNeed need{2.0, 20.0, -0.6, 0.3, 1.0};
  EXPECT_EQ(ballast_kg(need), 0.0);
  need.gust_m_s = 15.0;
  const double held = need.mass_kg_m2 + ballast_kg(need) / need.area_m2;
  EXPECT_NEAR(lift_off_speed_m_s(held, need.net_coefficient), 15.0, 1e-9);
  need.net_coefficient = 0.6;
  EXPECT_EQ(ballast_kg(need), 0.0);
}

}  // namespace
}  // namespace noonhouse
