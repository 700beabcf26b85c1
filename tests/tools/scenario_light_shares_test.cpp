// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "models/properties/constants.hpp"
#include "tools/scenario/light_shares.hpp"

namespace noonhouse {
namespace {

/// 6 m by 3 m, eaves 1.8 m, ridge 2.6 m, two equal bays, front to the south.
HouseSpec garden_house() {
  HouseSpec house;
  house.length_m = 6.0;
  house.width_m = 3.0;
  house.eaves_m = 1.8;
  house.ridge_m = 2.6;
  house.faces_rad = kPi;
  house.layers = 4;
  house.bays = {{"west", {0.5}}, {"east", {0.5}}};
  return house;
}

SunPosition sun_at(double elevation_deg, double azimuth_deg) {
  SunPosition sun;
  sun.elevation_rad = elevation_deg * kRadiansPerDegree;
  sun.azimuth_rad = azimuth_deg * kRadiansPerDegree;
  return sun;
}

double share(const HouseShape& shape, const std::vector<double>& shares, int bay, int of_bay, WallSide side) {
  return shares[static_cast<std::size_t>(bay) * shape.facets.size() +
                static_cast<std::size_t>(shape.facet_index(of_bay, side))];
}

TEST(LightShares, EveryBaysSharesAddUpToOneWhileTheSunIsUp) {
  const HouseShape shape = shape_of(garden_house());
  const LightShares shares(shape, kPi);
  const auto sum = [&](const std::vector<double>& all, std::size_t bay) {
    const auto begin = all.begin() + static_cast<std::ptrdiff_t>(bay * shape.facets.size());
    return std::accumulate(begin, begin + static_cast<std::ptrdiff_t>(shape.facets.size()), 0.0);
  };
  for (std::size_t bay : {0U, 1U}) {
    EXPECT_NEAR(sum(shares.diffuse(), bay), 1.0, 1e-12);
    for (double elevation : {2.0, 20.0, 45.0, 89.0})
      for (double azimuth = 0.0; azimuth < 360.0; azimuth += 30.0)
        EXPECT_NEAR(sum(shares.beam(sun_at(elevation, azimuth)), bay), 1.0, 1e-12);
    EXPECT_EQ(sum(shares.beam(sun_at(-1.0, 180.0)), bay), 0.0);
  }
}

TEST(LightShares, TheHighestSunComesHalfThroughEachRoofSlope) {
  const HouseShape shape = shape_of(garden_house());
  const auto beam = LightShares(shape, kPi).beam(sun_at(90.0, 180.0));
  EXPECT_NEAR(share(shape, beam, 0, 0, WallSide::roof_front), 0.5, 1e-12);
  EXPECT_NEAR(share(shape, beam, 0, 0, WallSide::roof_back), 0.5, 1e-12);
}

/// Sun from due south at 45 degrees: a ray from a point a metres behind the front wall meets it a metres up, so the
/// front 1.8 m of the 3 m floor are lit through the wall: grid middles at 0.25, 0.75, 1.25, 1.75 of 0.25 .. 2.75.
TEST(LightShares, ASouthSunReachesTheFrontOfTheFloorThroughTheFrontWall) {
  const HouseShape shape = shape_of(garden_house());
  const auto beam = LightShares(shape, kPi).beam(sun_at(45.0, 180.0));
  for (int bay : {0, 1}) {
    EXPECT_NEAR(share(shape, beam, bay, bay, WallSide::front), 4.0 / 6.0, 1e-12);
    EXPECT_NEAR(share(shape, beam, bay, bay, WallSide::roof_front), 2.0 / 6.0, 1e-12);
  }
}

TEST(LightShares, AWestSunComesThroughTheWestEndAndCrossesTheWestBay) {
  const HouseShape shape = shape_of(garden_house());
  const LightShares shares(shape, kPi);
  const auto beam = shares.beam(sun_at(10.0, 270.0));
  EXPECT_NEAR(share(shape, beam, 0, 0, WallSide::first_end), 1.0, 1e-12);
  EXPECT_GT(share(shape, beam, 1, 0, WallSide::first_end), 0.9);
  EXPECT_EQ(share(shape, beam, 0, 1, WallSide::last_end), 0.0);
  const auto morning = shares.beam(sun_at(10.0, 90.0));
  EXPECT_NEAR(share(shape, morning, 1, 1, WallSide::last_end), 1.0, 1e-12);
}

}  // namespace
}  // namespace noonhouse
