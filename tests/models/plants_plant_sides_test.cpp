// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "models/plants/plant_sides.hpp"

namespace noonhouse {
namespace {

// The same canopy in thin layers, each of which meets the beam and the soft light that are left: leaves the beam meets
// count as sunlit in the share of it that is left, and take up soft light as the shaded beside them do.
PlantSides layer_by_layer(double leaf_area_index) {
  constexpr int kLayers = 20000;
  const double each = leaf_area_index / kLayers;
  double sunlit = 0.0, soft_sunlit = 0.0, soft = 0.0;
  for (int i = 0; i < kLayers; ++i) {
    const double left = std::exp(-kLeafExtinction * each * (i + 0.5));
    sunlit += each * left;
    soft += each * left;
    soft_sunlit += each * left * left;
  }
  return {sunlit / leaf_area_index, soft_sunlit / soft};
}

TEST(PlantSides, AreWhatLayersOfLeavesComeTo) {
  for (const double index : {0.1, 1.0, 3.0, 8.0}) {
    const PlantSides sides = sides_of_leaves(index), layers = layer_by_layer(index);
    EXPECT_NEAR(sides.sunlit_area, layers.sunlit_area, 1e-6) << index;
    EXPECT_NEAR(sides.sunlit_takes_soft, layers.sunlit_takes_soft, 1e-6) << index;
  }
}

TEST(PlantSides, HaveNoShadeInAFewLeaves) {
  const PlantSides none = sides_of_leaves(0.0), few = sides_of_leaves(1e-5);
  EXPECT_EQ(none.sunlit_area, 1.0);
  EXPECT_EQ(none.sunlit_takes_soft, 1.0);
  EXPECT_NEAR(few.sunlit_area, 1.0, 1e-5);
  EXPECT_NEAR(few.sunlit_takes_soft, 1.0, 1e-5);
}

// In a deep canopy 1 / k of leaves per ground stand in the sun, and every pair of depths shares soft light in halves.
TEST(PlantSides, KeepOneBeamsWorthOfLeavesInTheSunHoweverDeepTheCanopy) {
  EXPECT_NEAR(20.0 * sides_of_leaves(20.0).sunlit_area, 1.0 / kLeafExtinction, 1e-4);
  EXPECT_NEAR(sides_of_leaves(20.0).sunlit_takes_soft, 0.5, 1e-4);
}

TEST(PlantSides, ShareLessSunTheDenserTheLeaves) {
  PlantSides before = sides_of_leaves(0.0);
  for (const double index : {0.5, 1.0, 2.0, 4.0, 8.0}) {
    const PlantSides now = sides_of_leaves(index);
    EXPECT_LT(now.sunlit_area, before.sunlit_area) << index;
    EXPECT_LT(now.sunlit_takes_soft, before.sunlit_takes_soft) << index;
    EXPECT_GT(now.sunlit_takes_soft, now.sunlit_area) << "those on top get more of the sky than their area";
    before = now;
  }
}

TEST(PlantSides, OfOneBodyAreItsHalves) {
  EXPECT_EQ(sides_of_one_body().sunlit_area, 0.5);
  EXPECT_EQ(sides_of_one_body().sunlit_takes_soft, 0.5);
}

// Nine parts of water, 0.60 W/(m K) at 20 degC [CRC Handbook], and a tenth of what conducts less.
TEST(PlantSides, OfABodyExchangeThroughHalfItsThickness) {
  EXPECT_NEAR(between_sides_w_m2_k(0.04), 27.5, 1e-9);
  EXPECT_NEAR(between_sides_w_m2_k(0.02), 2.0 * between_sides_w_m2_k(0.04), 1e-9);
  EXPECT_LT(between_sides_w_m2_k(1.0) * 0.5, 0.60);
}

// The two streams integrated in thin layers from below: layers of leaves that meet k dL of what comes and send half of
// what they scatter to each side, added one by one (Stokes' sums), over black ground.
TEST(CanopyLight, IsManyThinLayersOfLeaves) {
  for (const double index : {0.1, 1.0, 3.0, 6.0})
    for (const double a : {0.3, 0.5, 0.85}) {
      const int layers = 20000;
      const double meets = kLeafExtinction * index / layers, throws = meets * (1.0 - a) / 2.0;
      double reflects = 0.0, passes = 1.0;
      for (int i = 0; i < layers; ++i) {
        const double through = 1.0 - meets + throws, again = 1.0 / (1.0 - throws * reflects);
        passes *= through * again;
        reflects = throws + through * through * reflects * again;
      }
      const CanopyLight found = canopy_light(a, index);
      EXPECT_NEAR(found.passes, passes, 2e-4) << index << ' ' << a;
      EXPECT_NEAR(found.takes, 1.0 - passes - reflects, 2e-4) << index << ' ' << a;
    }
}

TEST(CanopyLight, IsThatOfItsLeavesWhereItIsThinAndOfBlackOnesWhereTheyAreBlack) {
  const CanopyLight thin = canopy_light(0.5, 1e-3);
  EXPECT_NEAR(thin.takes, 0.5 * kLeafExtinction * 1e-3, 1e-6);
  EXPECT_NEAR(thin.first_hit, 1.0, 1e-3);
  const CanopyLight black = canopy_light(1.0, 2.0);
  EXPECT_NEAR(black.passes, std::exp(-1.4), 1e-12);
  EXPECT_NEAR(black.takes, 1.0 - std::exp(-1.4), 1e-12);
  EXPECT_NEAR(black.first_hit, 1.0, 1e-12);
  const CanopyLight white = canopy_light(0.0, 2.0);
  EXPECT_EQ(white.takes, 0.0);
  EXPECT_GT(white.passes, 0.0);
  EXPECT_LT(white.passes, 1.0);
}

}  // namespace
}  // namespace noonhouse
