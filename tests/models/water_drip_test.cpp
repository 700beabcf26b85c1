// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "models/water/drip.hpp"

namespace noonhouse {
namespace {

TEST(Drip, LetsItsFlowThroughWithTheTanksHeat) {
  const Drip law{0.002};
  std::array<double, 2> q{};
  law.flux(std::array{300.0, 1.0}, q);
  EXPECT_NEAR(q[0], 0.002, 1e-15);
  // 26.85 K above 0 degC at 4186 J/(kg K) [ASHRAE Handbook of Fundamentals 2017, ch. 1: liquid enthalpy 4.186 t].
  EXPECT_NEAR(q[1], 0.002 * 4186.0 * 26.85, 0.1);
  law.flux(std::array{300.0, 0.25}, q);
  EXPECT_NEAR(q[0], 0.0005, 1e-15);
  law.flux(std::array{300.0, 0.0}, q);
  EXPECT_EQ(q[0], 0.0);
  EXPECT_EQ(q[1], 0.0);
}

/// Pots of 30 kg over 3 m2, moist down to 18 kg.
SoilDrying pots() { return {3.0, 101325.0, 30.0, 0.6, 3.0}; }
std::array<double, 2> dries(double soil_k, double water_kg, double w) {
  std::array<double, 2> q{};
  pots().flux(std::array{soil_k, water_kg, w}, q);
  return q;
}

// Moist soil dries as open water under the same film: 3 W/(m2 K) over (c_p Le^(2/3)) is 3.3
// g/(m2 s) for each kg/kg. Soil of 25 degC: saturation 0.02017 kg/kg [ASHRAE 2017, ch. 1, table 2], air at half of it.
TEST(SoilDrying, IsAsOpenWaterWhileMoist) {
  const double by_hand = 3.0 * 3.0 / (1006.0 * 0.90) * (0.02017 - 0.010);
  EXPECT_NEAR(dries(298.15, 25.0, 0.010)[0], by_hand, 0.01 * by_hand) << "enhancement factor and fit: 1 %";
  EXPECT_EQ(dries(298.15, 18.0, 0.010)[0], dries(298.15, 30.0, 0.010)[0]);
}

TEST(SoilDrying, SlowsAsItDriesAndStopsWhenDry) {
  const double moist = dries(298.15, 18.0, 0.010)[0];
  EXPECT_NEAR(dries(298.15, 9.0, 0.010)[0], 0.5 * moist, 1e-12);
  EXPECT_LT(dries(298.15, 3.0, 0.010)[0], 0.1 * moist);
  EXPECT_EQ(dries(298.15, 0.0, 0.010)[0], 0.0);
  EXPECT_EQ(dries(298.15, -1e-9, 0.010)[0], 0.0);
}

TEST(SoilDrying, TakesDewHoweverDry) {
  EXPECT_LT(dries(285.0, 0.0, 0.014)[0], 0.0);
  EXPECT_EQ(dries(285.0, 0.0, 0.014)[0], dries(285.0, 25.0, 0.014)[0]);
}

TEST(SoilDrying, CarriesTheVapoursHeat) {
  const auto q = dries(298.15, 25.0, 0.010);
  EXPECT_NEAR(q[1] / q[0], 2547e3, 1e3) << "vapour of 25 degC [ASHRAE 2017, ch. 1, table 3: 2546.5 kJ/kg]";
}

}  // namespace
}  // namespace noonhouse
