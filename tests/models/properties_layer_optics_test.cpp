// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <array>
#include <cmath>

#include "models/properties/constants.hpp"
#include "models/properties/layer_optics.hpp"
#include "models/properties/optics.hpp"

namespace noonhouse {
namespace {

constexpr LayerOptics kNothing{};
constexpr LayerOptics kMirror{.transmittance = 0.0, .reflectance_front = 1.0, .reflectance_back = 1.0};
constexpr LayerOptics kBlack{.transmittance = 0.0};
constexpr LayerOptics kTwoFaced{.transmittance = 0.5, .reflectance_front = 0.3, .reflectance_back = 0.1};
constexpr LayerOptics kHazy{.transmittance = 0.7, .reflectance_front = 0.05, .reflectance_back = 0.25};

void expect_same(const LayerOptics& a, const LayerOptics& b, double tolerance) {
  EXPECT_NEAR(a.transmittance, b.transmittance, tolerance);
  EXPECT_NEAR(a.reflectance_front, b.reflectance_front, tolerance);
  EXPECT_NEAR(a.reflectance_back, b.reflectance_back, tolerance);
}

TEST(LayerPair, NothingChangesNothing) {
  expect_same(couple(kNothing, kTwoFaced).whole, kTwoFaced, 0.0);
  expect_same(couple(kTwoFaced, kNothing).whole, kTwoFaced, 0.0);
  EXPECT_EQ(couple(kNothing, kTwoFaced).first_absorbs, 0.0);
  EXPECT_EQ(couple(kTwoFaced, kNothing).second_absorbs, 0.0);
}

TEST(LayerPair, MirrorAndBlackBehindALayer) {
  // By hand: 0.5 gets in, comes back, and 0.1 of it stays between the faces at every turn.
  const LayerPair mirrored = couple(kTwoFaced, kMirror);
  EXPECT_EQ(mirrored.whole.transmittance, 0.0);
  EXPECT_NEAR(mirrored.whole.reflectance_front, 0.3 + 0.5 * 0.5 / (1.0 - 0.1), 1e-15);
  EXPECT_NEAR(mirrored.first_absorbs, 0.2 + 0.5 * 0.4 / (1.0 - 0.1), 1e-15);
  EXPECT_EQ(mirrored.second_absorbs, 0.0);
  const LayerPair blackened = couple(kTwoFaced, kBlack);
  EXPECT_NEAR(blackened.second_absorbs, 0.5, 1e-15);
  EXPECT_NEAR(blackened.whole.reflectance_front, 0.3, 1e-15);
}

TEST(LayerPair, TwoMirrorsReturnEverything) {
  const LayerPair pair = couple(kMirror, kMirror);
  EXPECT_EQ(pair.whole.transmittance, 0.0);
  EXPECT_EQ(pair.whole.reflectance_front, 1.0);
  EXPECT_EQ(pair.whole.reflectance_back, 1.0);
  EXPECT_EQ(pair.first_absorbs + pair.second_absorbs, 0.0);
}

TEST(LayerPair, SumsTheBouncesOneByOne) {
  double inside = kTwoFaced.transmittance;
  double passed = 0.0;
  double returned = kTwoFaced.reflectance_front;
  double kept_first = kTwoFaced.absorptance_front();
  double kept_second = 0.0;
  for (int bounce = 0; bounce < 60; ++bounce) {
    passed += inside * kHazy.transmittance;
    kept_second += inside * kHazy.absorptance_front();
    inside *= kHazy.reflectance_front;
    returned += inside * kTwoFaced.transmittance;
    kept_first += inside * kTwoFaced.absorptance_back();
    inside *= kTwoFaced.reflectance_back;
  }
  const LayerPair pair = couple(kTwoFaced, kHazy);
  EXPECT_NEAR(pair.whole.transmittance, passed, 1e-15);
  EXPECT_NEAR(pair.whole.reflectance_front, returned, 1e-15);
  EXPECT_NEAR(pair.first_absorbs, kept_first, 1e-15);
  EXPECT_NEAR(pair.second_absorbs, kept_second, 1e-15);
}

TEST(LayerPair, TurnedRoundItIsTheSamePair) {
  const auto turned = [](const LayerOptics& a) {
    return LayerOptics{a.transmittance, a.reflectance_back, a.reflectance_front};
  };
  const LayerPair pair = couple(kTwoFaced, kHazy);
  const LayerPair back = couple(turned(kHazy), turned(kTwoFaced));
  expect_same(pair.whole, turned(back.whole), 1e-15);
  EXPECT_NEAR(pair.first_absorbs_back, back.second_absorbs, 1e-15);
  EXPECT_NEAR(pair.second_absorbs_back, back.first_absorbs, 1e-15);
}

TEST(LayerPair, GroupingDoesNotMatter) {
  const LayerOptics left = couple(couple(kTwoFaced, kHazy).whole, kTwoFaced).whole;
  const LayerOptics right = couple(kTwoFaced, couple(kHazy, kTwoFaced).whole).whole;
  expect_same(left, right, 1e-15);
}

TEST(LayerPair, ClosesToRoundingForEveryLayer) {
  const auto layers = [](int i) {
    const double t = 0.1 * (i % 11);
    return LayerOptics{t, (1.0 - t) * 0.1 * (i / 11 % 11), (1.0 - t) * 0.1 * (i / 121 % 11)};
  };
  for (int i = 0; i < 1331; i += 7) {
    for (int j = 0; j < 1331; j += 13) {
      const LayerPair p = couple(layers(i), layers(j));
      ASSERT_NEAR(p.whole.transmittance + p.whole.reflectance_front + p.first_absorbs + p.second_absorbs, 1.0, 2e-15);
      ASSERT_NEAR(p.whole.transmittance + p.whole.reflectance_back + p.first_absorbs_back + p.second_absorbs_back, 1.0,
                  2e-15);
      ASSERT_GE(std::fmin(p.first_absorbs, p.second_absorbs), -2e-15);
    }
  }
}

// Duffie & Beckman, 4th ed., eqs. (5.3.7)-(5.3.8): for light of one polarisation at normal incidence two clear sheets
// are the pair of one and one. Two independent ways to one number.
TEST(LayerPair, IsTheStackOfSheetsAtNormalIncidence) {
  const Sheet sheet{.refractive_index = 1.526, .optical_depth = 0.05};
  const SheetOptics one = sheet_optics(0.0, sheet);
  const LayerOptics layer{one.transmittance, one.reflectance, one.reflectance};
  const std::array<Sheet, 2> two{sheet, sheet};
  const SheetOptics stack = stack_optics(0.0, two);
  EXPECT_NEAR(couple(layer, layer).whole.transmittance, stack.transmittance, 1e-14);
  EXPECT_NEAR(couple(layer, layer).whole.reflectance_front, stack.reflectance, 1e-14);
}

TEST(SideBySide, IsTheMeanByArea) {
  expect_same(side_by_side(1.0, kTwoFaced, kHazy), kTwoFaced, 0.0);
  expect_same(side_by_side(0.0, kTwoFaced, kHazy), kHazy, 0.0);
  const LayerOptics mixed = side_by_side(0.25, kTwoFaced, kHazy);
  EXPECT_NEAR(mixed.transmittance, 0.65, 1e-15);
  EXPECT_NEAR(mixed.reflectance_front, 0.1125, 1e-15);
  EXPECT_NEAR(mixed.reflectance_back, 0.2125, 1e-15);
}

}  // namespace
}  // namespace noonhouse
