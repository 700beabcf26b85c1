// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <numeric>

#include "models/ground/soil_grid.hpp"

namespace noonhouse {
namespace {

// Worked by hand: layers of 1, 1.5 and 2.25 parts of 4.75.
TEST(SoilGrid, DividesADepthByHand) {
  const auto d = soil_layer_thicknesses_m(0.95, 3, 1.5);
  ASSERT_EQ(d.size(), 3U);
  EXPECT_NEAR(d[0], 0.2, 1e-15);
  EXPECT_NEAR(d[1], 0.3, 1e-15);
  EXPECT_NEAR(d[2], 0.45, 1e-15);
}

TEST(SoilGrid, SumsToItsDepthAndThickensByItsGrowth) {
  for (const double growth : {0.8, 1.0, 1.0 + 1e-6, 1.5, 2.0})
    for (const int layers : {1, 2, 5, 12}) {
      const auto d = soil_layer_thicknesses_m(1.3, layers, growth);
      ASSERT_EQ(d.size(), static_cast<std::size_t>(layers));
      // Near a growth of 1 the closed form loses the digits that growth - 1 has lost.
      EXPECT_NEAR(std::accumulate(d.begin(), d.end(), 0.0), 1.3, 1e-9) << growth << ", " << layers;
      for (std::size_t i = 1; i < d.size(); ++i) EXPECT_NEAR(d[i] / d[i - 1], growth, 1e-12) << growth << ", " << i;
    }
}

TEST(SoilGrid, IsOneLayerOfTheWholeDepthOrEqualOnes) {
  EXPECT_DOUBLE_EQ(soil_layer_thicknesses_m(0.6, 1, 1.5).front(), 0.6);
  for (const double thickness : soil_layer_thicknesses_m(0.6, 4, 1.0)) EXPECT_DOUBLE_EQ(thickness, 0.15);
}

TEST(SoilGridDeathTest, RefusesWhatIsNoGrid) {
  EXPECT_DEATH(soil_layer_thicknesses_m(0.6, 0, 1.5), "broken invariant");
  EXPECT_DEATH(soil_layer_thicknesses_m(0.0, 3, 1.5), "broken invariant");
}

}  // namespace
}  // namespace noonhouse
