// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "models/properties/constants.hpp"
#include "models/water/tank_shape.hpp"

namespace noonhouse {
namespace {

/// A barrel of radius 0.5 m and height 1.2 m.
const TankShape kBarrel{TankShape::Plan::round, kPi * 0.25 * 1.2, 1.2};
/// A box of 1.2 m x 1.0 m and height 1.0 m, as containers of a cubic metre stand.
const TankShape kBox{TankShape::Plan::box, 1.2, 1.0, 1.2};

TEST(TankShape, HasTheAreasOfItsSolid) {
  EXPECT_NEAR(kBarrel.plan_area_m2(), kPi * 0.25, 1e-14);
  EXPECT_NEAR(kBarrel.wall_area_m2(), kPi * 1.0 * 1.2, 1e-14);
  EXPECT_NEAR(kBox.plan_area_m2(), 1.2, 1e-14);
  EXPECT_NEAR(kBox.perimeter_m(), 4.4, 1e-14);
  EXPECT_NEAR(kBox.wall_area_m2(), 4.4, 1e-14);
}

TEST(TankShape, StandsAsDeepAsItsContent) {
  EXPECT_NEAR(kBox.depth_m(600.0), 0.5, 1e-14);
  EXPECT_NEAR(kBox.wetted_wall_m2(600.0), 2.2, 1e-14);
  EXPECT_EQ(kBox.depth_m(0.0), 0.0);
  EXPECT_EQ(kBox.depth_m(-1e-6), 0.0);
  EXPECT_EQ(kBox.depth_m(1300.0), 1.0) << "no deeper than its brim";
}

TEST(TankShape, ShowsItsSideToALowSunAndItsTopToAHighOne) {
  EXPECT_NEAR(kBarrel.shown_to_sun_m2(0.0), 1.0 * 1.2, 1e-14) << "diameter times height";
  EXPECT_NEAR(kBarrel.shown_to_sun_m2(0.5 * kPi), kPi * 0.25, 1e-14);
  // A square seen from all sides: 4 / pi of its side on the mean, by integrating |cos| + |sin|.
  const TankShape square{TankShape::Plan::box, 1.0, 1.0};
  EXPECT_NEAR(square.shown_to_sun_m2(0.0), 4.0 / kPi, 1e-14);
  EXPECT_EQ(kBarrel.shown_to_sun_m2(-0.1), 0.0);
}

std::array<double, 2> dries(const WindEvaporation& law, double water_kg, double w) {
  std::array<double, 2> q{};
  law.flux(std::array{293.15, water_kg, w, 2.0}, q);
  return q;
}

// h = 2.8 + 3.0 x 2 = 8.8 W/(m2 K) [Watmuff, Charters & Proctor 1977]; water of 20 degC: 0.014758 kg/kg [ASHRAE 2017,
// ch. 1, table 2]; g = h / (1006 x 0.90). Over 1.2 m2 half open, into dry air: 1 % for the enhancement factor.
TEST(TankEvaporation, IsThatOfItsOpenShare) {
  const double by_hand = 0.6 * 8.8 / (1006.0 * 0.90) * 0.014758;
  EXPECT_NEAR(dries(tank_evaporation(kBox, 0.5, 101325.0), 900.0, 0.0)[0], by_hand, 0.01 * by_hand);
  EXPECT_EQ(dries(tank_evaporation(kBox, 0.0, 101325.0), 900.0, 0.0)[0], 0.0) << "under a lid";
}

TEST(TankEvaporation, StaysWetDownToItsFloor) {
  const auto law = tank_evaporation(kBox, 1.0, 101325.0);
  EXPECT_NEAR(dries(law, 120.0, 0.0)[0], dries(law, 1200.0, 0.0)[0], 0.01 * dries(law, 1200.0, 0.0)[0]) << "10 cm left";
  EXPECT_EQ(dries(law, 0.0, 0.0)[0], 0.0) << "a dry floor";
  EXPECT_LT(dries(law, 0.0, 0.020)[0], 0.0) << "dew";
}

}  // namespace
}  // namespace noonhouse
