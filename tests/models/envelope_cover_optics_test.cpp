// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <vector>

#include "models/envelope/cover_optics.hpp"
#include "models/properties/constants.hpp"
#include "sim/core/dual.hpp"
#include "tests/support/printed_units.hpp"

namespace noonhouse {
namespace {

constexpr Sheet kGlass{.refractive_index = 1.526, .optical_depth = 0.04};
constexpr Sheet kFilm{.refractive_index = 1.51, .optical_depth = 0.01};

CoverMake film() { return {.sheet = kFilm, .haze = 0.3, .thrown_back = 0.03, .drops_return = kFilmDropsReturn}; }

/// Everything at once.
CoverMake weathered() {
  return {.sheets = 2,
          .sheet = kGlass,
          .haze = 0.3,
          .thrown_back = 0.1,
          .dirt = 0.12,
          .whitewash_transmits = 0.55,
          .whitewash_reflects = 0.38,
          .condensate_share = 0.6,
          .drops_return = 0.2,
          .frame_share = 0.08};
}

std::vector<CoverMake> makes() {
  CoverMake limed = film();
  limed.whitewash_transmits = whitewash(0.3).transmits;
  limed.whitewash_reflects = whitewash(0.3).reflects;
  CoverMake wet = film();
  wet.condensate_share = 1.0;
  return {{.sheet = kGlass}, film(), limed, wet, {.sheet = kGlass, .dirt = 0.2}, weathered(), {.opaque_reflects = 0.3}};
}

double mean_over_the_sky(const CoverOptics& cover, int steps = 4000) {
  double sum = 0.0;
  for (int i = 0; i < steps; ++i) sum += cover.at(std::asin(std::sqrt((i + 0.5) / steps))).transmittance / steps;
  return sum;
}

TEST(CoverOptics, CleanSheetsAreTheStackOfSheets) {
  for (const int count : {0, 1, 2, 3}) {
    const CoverOptics cover({.sheets = count, .sheet = kGlass});
    for (double angle = 0.0; angle <= 90.0; angle += 10.0) {
      const SheetOptics stack = parallel_sheets_optics(angle * kDeg, count, kGlass);
      ASSERT_NEAR(cover.at(angle * kDeg).transmittance, stack.transmittance, 1e-15);
      ASSERT_NEAR(cover.at(angle * kDeg).reflectance_front, stack.reflectance, 1e-15);
      ASSERT_EQ(cover.scattered_share_at(angle * kDeg), 0.0);
    }
    const std::vector<Sheet> sheets(static_cast<std::size_t>(count), kGlass);
    EXPECT_NEAR(cover.diffuse().transmittance, diffuse_stack_optics(sheets).transmittance, 1e-15);
  }
}

TEST(CoverOptics, SharesAreSharesAndCloseAtEveryAngle) {
  for (const CoverMake& make : makes()) {
    const CoverOptics cover(make);
    for (double angle = 0.0; angle <= 90.0; angle += 1.0) {
      const LayerOptics beam = cover.at(angle * kDeg);
      ASSERT_GE(beam.transmittance, 0.0) << angle;
      ASSERT_GE(beam.reflectance_front, 0.0) << angle;
      ASSERT_GE(beam.absorptance_front(), -1e-14) << angle;
      ASSERT_GE(cover.scattered_share_at(angle * kDeg), 0.0);
      ASSERT_LE(cover.scattered_share_at(angle * kDeg), 1.0 + 1e-15);
    }
    ASSERT_GE(cover.diffuse().absorptance_front(), -1e-14);
    ASSERT_GE(cover.diffuse().absorptance_back(), -1e-14);
  }
}

TEST(CoverOptics, WhatAbsorbsNothingReturnsOrPassesEverything) {
  const CoverOptics cover({.sheets = 2,
                           .sheet = {.refractive_index = 1.5, .optical_depth = 0.0},
                           .haze = 0.5,
                           .thrown_back = 0.2,
                           .whitewash_transmits = 0.6,
                           .whitewash_reflects = 0.4,
                           .condensate_share = 0.7,
                           .drops_return = 0.2});
  for (double angle = 0.0; angle < 90.0; angle += 5.0)
    ASSERT_NEAR(cover.at(angle * kDeg).absorptance_front(), 0.0, 1e-14);
  EXPECT_NEAR(cover.diffuse().absorptance_front(), 0.0, 1e-12);
  EXPECT_NEAR(cover.diffuse().absorptance_back(), 0.0, 1e-12);
}

// Diffuse light is light from everywhere: against 4000 angles, within what 30 leave, 4e-4.
TEST(CoverOptics, DiffuseIsTheMeanOverTheSky) {
  for (const CoverMake& make : makes()) {
    const CoverOptics cover(make);
    EXPECT_NEAR(mean_over_the_sky(cover), cover.diffuse().transmittance, 4e-4);
  }
}

// Where no layer knows direction but the sheets, the mean over the sky is also the pair of diffuse layers: lime before
// the sheets and drops behind them.
TEST(CoverOptics, IsThePairOfDiffuseLayersWhereLimeForgetsDirection) {
  const CoverMake sheets{.sheet = kGlass, .haze = 0.2, .thrown_back = 0.1};
  CoverMake limed = sheets;
  limed.whitewash_transmits = 0.5;
  limed.whitewash_reflects = 0.45;
  const LayerOptics lime{.transmittance = 0.5, .reflectance_front = 0.45, .reflectance_back = 0.45};
  const LayerOptics pair = couple(lime, CoverOptics(sheets).diffuse()).whole;
  EXPECT_NEAR(CoverOptics(limed).diffuse().transmittance, pair.transmittance, 1e-12);
  EXPECT_NEAR(CoverOptics(limed).diffuse().reflectance_front, pair.reflectance_front, 1e-12);
  EXPECT_NEAR(CoverOptics(limed).diffuse().reflectance_back, pair.reflectance_back, 1e-12);
  CoverMake wet = sheets;
  wet.condensate_share = 1.0;
  wet.drops_return = 0.2;
  const LayerOptics drops{.transmittance = 0.8, .reflectance_front = 0.2, .reflectance_back = 0.2};
  const LayerOptics dripping = couple(CoverOptics(sheets).diffuse(), drops).whole;
  EXPECT_NEAR(CoverOptics(wet).diffuse().transmittance, dripping.transmittance, 1e-12);
  EXPECT_NEAR(CoverOptics(wet).diffuse().reflectance_front, dripping.reflectance_front, 1e-12);
}

TEST(CoverOptics, OpaqueWallsAndFramesPassNothing) {
  const CoverOptics wall({.sheet = kGlass, .condensate_share = 1.0, .opaque_reflects = 0.25});
  EXPECT_EQ(wall.at(0.4).transmittance, 0.0);
  EXPECT_EQ(wall.at(0.4).reflectance_front, 0.25);
  EXPECT_EQ(wall.diffuse().reflectance_back, 0.25);
  EXPECT_EQ(wall.scattered_share(), 0.0);
  const CoverOptics frame({.sheet = kGlass, .frame_share = 1.0, .frame_reflects = 0.4});
  EXPECT_EQ(frame.diffuse().transmittance, 0.0);
  EXPECT_EQ(frame.at(0.0).reflectance_front, 0.4);
  const CoverOptics half({.sheet = kGlass, .frame_share = 0.5});
  EXPECT_NEAR(half.at(0.3).transmittance, 0.5 * CoverOptics({.sheet = kGlass}).at(0.3).transmittance, 1e-15);
}

TEST(CoverOptics, HazeScattersAndWhatIsThrownBackReturns) {
  const CoverOptics hazy({.sheet = kGlass, .haze = 0.35});
  EXPECT_NEAR(hazy.scattered_share(), 0.35, 1e-14);
  const SheetOptics clear = sheet_optics(0.0, kGlass);
  EXPECT_NEAR(hazy.at(0.0).transmittance, clear.transmittance, 1e-15);
  const CoverOptics opal({.sheet = kGlass, .thrown_back = 0.4});
  EXPECT_NEAR(opal.at(0.0).transmittance, 0.6 * clear.transmittance, 1e-15);
  EXPECT_NEAR(opal.at(0.0).reflectance_front, clear.reflectance + 0.4 * clear.transmittance, 1e-15);
  EXPECT_NEAR(opal.at(0.0).absorptance_front(), clear.absorptance, 1e-14);
}

TEST(CoverOptics, DirtTakesItsShareOfDiffuseLightAndMoreAtGrazing) {
  const CoverOptics dust({.sheets = 0, .dirt = 0.15});
  EXPECT_NEAR(dust.diffuse().transmittance, 0.85, 2e-4);  // of 30 angles
  EXPECT_NEAR(mean_over_the_sky(dust, 100000), 0.85, 1e-5);
  EXPECT_GT(dust.at(0.0).transmittance, 0.85);
  EXPECT_LT(dust.at(75.0 * kDeg).transmittance, 0.80);
  EXPECT_GT(dust.scattered_share_at(1.2), dust.scattered_share());
  double before = 1.0;
  for (double angle = 0.0; angle <= 90.0; angle += 2.0) {
    ASSERT_LT(dust.at(angle * kDeg).transmittance, before) << angle;
    before = dust.at(angle * kDeg).transmittance;
  }
}

// Lopez-Martinez et al. 2019, Int. J. Environ. Res. Public Health 16, 958 (abstract): above 0.50 kg/L the cover's
// transmissivity falls by more than half. One-sided; a litre that holds half as much must leave more than half.
TEST(Whitewash, HalfAKilogramALitreHalvesTheCover) {
  const double clean = CoverOptics(film()).at(0.0).transmittance;
  const auto left = [&](double kg_per_litre) {
    CoverMake limed = film();
    limed.whitewash_transmits = whitewash(kg_per_litre).transmits;
    limed.whitewash_reflects = whitewash(kg_per_litre).reflects;
    return CoverOptics(limed).at(0.0).transmittance / clean;
  };
  EXPECT_LT(left(0.5), 0.5);
  EXPECT_GT(left(0.4), 0.5);
  EXPECT_LT(left(0.6), left(0.5));
  EXPECT_EQ(left(0.0), 1.0);
}

TEST(Whitewash, ThinCoatsLetBeamsThroughAndThickOnesScatterAll) {
  double before = 0.0;
  for (const double kg_per_litre : {0.01, 0.05, 0.1, 0.25, 0.5, 1.0}) {
    const Whitewash coat = whitewash(kg_per_litre);
    EXPECT_NEAR(coat.transmits + coat.reflects, 1.0, 1e-15);
    const CoverOptics cover(
        {.sheet = kGlass, .whitewash_transmits = coat.transmits, .whitewash_reflects = coat.reflects});
    EXPECT_GT(cover.scattered_share(), before);
    before = cover.scattered_share();
  }
  EXPECT_GT(before, 0.99);
}

// Pollet & Pieters, Measuring facility for shortwave radiation transmission of condensation-covered greenhouse
// claddings (abstract): vertical, without run-off, normal incidence, about 22 % (polyethylene) and 3 % (glass) less.
// Tolerance: half the last digit, 0.5 %.
TEST(Drops, TakeAsMuchLightAsMeasured) {
  const auto fall = [](CoverMake make) {
    const double dry = CoverOptics(make).at(0.0).transmittance;
    make.condensate_share = 1.0;
    return 1.0 - CoverOptics(make).at(0.0).transmittance / dry;
  };
  EXPECT_NEAR(fall(film()), 0.22, 0.005);
  EXPECT_NEAR(fall({.sheet = kGlass, .drops_return = kGlassDropsReturn}), 0.03, 0.005);
}

TEST(Drops, WetShareIsByAreaAndScatters) {
  CoverMake make = film();
  const double dry = CoverOptics(make).at(0.7).transmittance;
  make.condensate_share = 1.0;
  const double wet = CoverOptics(make).at(0.7).transmittance;
  EXPECT_GT(CoverOptics(make).scattered_share(), kDropCover - 0.05);
  make.condensate_share = 0.25;
  EXPECT_NEAR(CoverOptics(make).at(0.7).transmittance, 0.25 * wet + 0.75 * dry, 1e-15);
}

// Hale & Querry 1973, Appl. Opt. 12, 555: 638 1/cm at 10 um (from memory); so 15.7 um of water take a ray to 1/e.
TEST(WetInfrared, FollowsBouguer) {
  EXPECT_NEAR(kWaterInfraredAbsorption_1_m / 100.0, 638.0, 0.5);
  const double n = 1.218;
  EXPECT_NEAR(kWaterInfraredSlant, 2.0 * n * n * (1.0 - std::sqrt(1.0 - 1.0 / (n * n))), 5e-4);
  const double e_folding_kg_m2 = 1000.0 / (kWaterInfraredAbsorption_1_m * kWaterInfraredSlant);
  EXPECT_NEAR(dry_share(e_folding_kg_m2, 1.0), std::exp(-1.0), 1e-12);
  EXPECT_NEAR(e_folding_kg_m2, 0.0123, 5e-5);
}

TEST(WetInfrared, LimitsAndSlope) {
  EXPECT_EQ(dry_share(0.0), 1.0);
  EXPECT_LT(dry_share(0.1, 1.0), 1e-3);  // a tenth of a millimetre as an even film
  EXPECT_NEAR(dry_share(1.0), 1.0 - kDropCover, 1e-12);
  EXPECT_NEAR(kDropCover, 1.0 - std::cbrt(0.016 / 1.5), 0.005);
  for (double film = 0.0; film < 0.2; film += 0.002) ASSERT_GT(dry_share(film), dry_share(film + 0.002));
  // At the first traces all water absorbs alike, however it gathers.
  const double slope = (dry_share(1e-6) - 1.0) / 1e-6;
  EXPECT_NEAR(slope, -kWaterInfraredAbsorption_1_m * kWaterInfraredSlant / 1000.0, 0.01);
}

TEST(WetInfrared, CarriesItsDerivative) {
  const auto dual = dry_share(Dual<1>::input(0.01, 0));
  EXPECT_DOUBLE_EQ(dual.value, dry_share(0.01));
  EXPECT_NEAR(dual.grad[0], (dry_share(0.01 + 1e-6) - dry_share(0.01 - 1e-6)) / 2e-6, 1e-6);
}

// Nijskens et al. 1984, Agric. For. Meteorol. 33; CIGR Handbook of Agricultural Engineering vol. II (from memory): dry
// polyethylene passes 0.70 to 0.80 of thermal radiation, wet falls towards 0 to 0.3.
TEST(WetInfrared, WetFilmBlocksAsMeasured) {
  for (const double dry : {0.70, 0.80}) {
    EXPECT_EQ(wet_infrared_transmittance(dry, 0.0), dry);
    EXPECT_LT(wet_infrared_transmittance(dry, 0.1), 0.3);
    EXPECT_GE(wet_infrared_transmittance(dry, 10.0), 0.0);
  }
}

}  // namespace
}  // namespace noonhouse
