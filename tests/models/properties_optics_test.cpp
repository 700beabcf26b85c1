// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <array>
#include <cmath>

#include "models/properties/constants.hpp"
#include "models/properties/optics.hpp"
#include "tests/support/printed_units.hpp"

namespace noonhouse {
namespace {

constexpr Sheet kClearGlass{.refractive_index = 1.526, .optical_depth = 0.0};

// Duffie & Beckman, Example 5.1.1 (from memory, recomputed from the equation): glass of 1.526. 0.0005; 0.05 deg.
TEST(Fresnel, OneSurface) {
  EXPECT_NEAR(fresnel_reflectance(0.0, 1.526).mean(), 0.0434, 0.0005);
  EXPECT_NEAR(refraction_angle_rad(60.0 * kDeg, 1.526) / kDeg, 34.58, 0.05);
  const FresnelReflectance slanted = fresnel_reflectance(60.0 * kDeg, 1.526);
  EXPECT_NEAR(slanted.perpendicular, 0.185, 0.0005);
  EXPECT_NEAR(slanted.parallel, 0.001, 0.0005);
  EXPECT_NEAR(slanted.mean(), 0.093, 0.0005);
}

// Fresnel's equations: no parallel reflection where the tangent of the incidence is the index. 1e-6.
TEST(Fresnel, BrewsterAngle) {
  const double angle = std::atan(1.526);
  EXPECT_NEAR(angle / kDeg, 56.76, 0.005);
  EXPECT_NEAR(fresnel_reflectance(angle, 1.526).parallel, 0.0, 1e-6);
}

TEST(Fresnel, TotalAtGrazingAndNothingWithoutContrast) {
  EXPECT_NEAR(fresnel_reflectance(90.0 * kDeg, 1.526).mean(), 1.0, 1e-12);
  for (double angle = 0.0; angle < 89.0; angle += 5.0) {
    ASSERT_NEAR(fresnel_reflectance(angle * kDeg, 1.0).mean(), 0.0, 1e-12) << angle;
  }
}

// Duffie & Beckman, Example 5.1.2 (from memory, recomputed from the equation): reflection only. 0.003.
TEST(Sheets, ReflectionOnly) {
  EXPECT_NEAR(parallel_sheets_optics(0.0, 1, kClearGlass).transmittance, 0.917, 0.003);
  EXPECT_NEAR(parallel_sheets_optics(0.0, 2, kClearGlass).transmittance, 0.847, 0.003);  // printed 0.85
  EXPECT_NEAR(parallel_sheets_optics(60.0 * kDeg, 1, kClearGlass).transmittance, 0.842, 0.003);
  EXPECT_NEAR(parallel_sheets_optics(60.0 * kDeg, 2, kClearGlass).transmittance, 0.759,
              0.003);  // printed 0.76
}

// Duffie & Beckman, eq. (5.1.8): N clear sheets pass, by polarisation, (1 - r) / (1 + (2 N - 1) r).
TEST(Sheets, ClosedFormOfManyClearSheets) {
  for (int count = 1; count <= 6; ++count) {
    for (double angle = 0.0; angle < 90.0; angle += 7.5) {
      const FresnelReflectance r = fresnel_reflectance(angle * kDeg, 1.526);
      const auto passed = [&](double one) { return (1.0 - one) / (1.0 + (2.0 * count - 1.0) * one); };
      const SheetOptics stack = parallel_sheets_optics(angle * kDeg, count, kClearGlass);
      ASSERT_NEAR(stack.transmittance, 0.5 * (passed(r.perpendicular) + passed(r.parallel)), 1e-12) << count << angle;
      ASSERT_NEAR(stack.absorptance, 0.0, 1e-12);
    }
  }
}

// Duffie & Beckman, Example 5.3.1 (from memory, recomputed from the equation): K 32 /m, 2.3 mm, 60 deg. 0.002.
TEST(Sheets, OneAbsorbingSheet) {
  const Sheet sheet{.refractive_index = 1.526, .optical_depth = 32.0 * 0.0023};
  EXPECT_NEAR(absorption_transmittance(60.0 * kDeg, sheet), 0.914, 0.002);
  const SheetOptics optics = sheet_optics(60.0 * kDeg, sheet);
  EXPECT_NEAR(optics.transmittance, 0.768, 0.002);
  EXPECT_NEAR(optics.reflectance, 0.147, 0.002);
  EXPECT_NEAR(optics.absorptance, 0.085, 0.002);
  EXPECT_NEAR(optics.transmittance + optics.reflectance + optics.absorptance, 1.0, 1e-15);
}

// Duffie & Beckman, eq. (5.3.3): absorptance of a sheet by polarisation, (1 - a)(1 - r) / (1 - r a).
TEST(Sheets, AbsorptanceMatchesItsOwnEquation) {
  const Sheet sheet{.refractive_index = 1.59, .optical_depth = 0.2};
  for (double angle = 0.0; angle < 90.0; angle += 10.0) {
    const FresnelReflectance r = fresnel_reflectance(angle * kDeg, 1.59);
    const double a = absorption_transmittance(angle * kDeg, sheet);
    const auto kept = [&](double one) { return (1.0 - a) * (1.0 - one) / (1.0 - one * a); };
    ASSERT_NEAR(sheet_optics(angle * kDeg, sheet).absorptance, 0.5 * (kept(r.perpendicular) + kept(r.parallel)), 1e-12);
  }
}

TEST(Sheets, SharesAreSharesAtEveryAngleAndOrder) {
  const std::array<Sheet, 3> forward{Sheet{1.526, 0.05}, Sheet{1.586, 0.3}, Sheet{1.49, 0.0}};
  const std::array<Sheet, 3> backward{forward[2], forward[1], forward[0]};
  for (double angle = 0.0; angle <= 90.0; angle += 1.0) {
    const SheetOptics one_way = stack_optics(angle * kDeg, forward);
    const SheetOptics other_way = stack_optics(angle * kDeg, backward);
    ASSERT_NEAR(one_way.transmittance, other_way.transmittance, 1e-14) << angle;  // reciprocity
    for (const double share : {one_way.transmittance, one_way.reflectance, one_way.absorptance}) {
      ASSERT_GE(share, 0.0) << angle;
      ASSERT_LE(share, 1.0) << angle;
    }
    ASSERT_NEAR(one_way.transmittance + one_way.reflectance + one_way.absorptance, 1.0, 1e-12);
  }
  EXPECT_NEAR(stack_optics(90.0 * kDeg, forward).transmittance, 0.0, 1e-6);
}

TEST(Sheets, NoSheetPassesAll) {
  EXPECT_EQ(parallel_sheets_optics(0.7, 0, kClearGlass).transmittance, 1.0);
  EXPECT_EQ(parallel_sheets_optics(0.7, 0, kClearGlass).reflectance, 0.0);
}

TEST(Sheets, MoreSheetsOrThickerOnesPassLess) {
  for (int count = 1; count < 6; ++count) {
    ASSERT_LT(parallel_sheets_optics(0.5, count + 1, kClearGlass).transmittance,
              parallel_sheets_optics(0.5, count, kClearGlass).transmittance);
  }
  for (double depth = 0.0; depth < 2.0; depth += 0.1) {
    ASSERT_LT(sheet_optics(0.5, Sheet{1.526, depth + 0.1}).transmittance,
              sheet_optics(0.5, Sheet{1.526, depth}).transmittance);
  }
}

// Brandemuehl & Beckman 1980, Solar Energy 24, 511; Duffie & Beckman, eqs. (5.4.1)-(5.4.2) (from memory). 0.1 deg.
TEST(EquivalentAngle, SkyAndGround) {
  const double rows[][3] = {{0.0, 59.7, 90.0}, {45.0, 56.5, 69.4}, {60.0, 56.8, 65.0}, {90.0, 59.3, 59.7}};
  for (const auto& [slope, sky, ground] : rows) {
    EXPECT_NEAR(sky_equivalent_angle_rad(slope * kDeg) / kDeg, sky, 0.1) << slope;
    EXPECT_NEAR(ground_equivalent_angle_rad(slope * kDeg) / kDeg, ground, 0.1) << slope;
  }
}

// The equivalent angle of a level plane was fitted so that the beam there passes as diffuse does: two independent
// ways to one number, within the fit's 0.01 (from memory).
TEST(EquivalentAngle, AgreesWithTheIntegralOverTheHemisphere) {
  for (const double depth : {0.0, 0.0125, 0.0370}) {
    for (const int count : {1, 2}) {
      const std::array<Sheet, 2> sheets{Sheet{1.526, depth}, Sheet{1.526, depth}};
      const std::span<const Sheet> used(sheets.data(), static_cast<std::size_t>(count));
      const double beam = stack_optics(sky_equivalent_angle_rad(0.0), used).transmittance;
      EXPECT_NEAR(diffuse_stack_optics(used).transmittance, beam, 0.015) << depth << ' ' << count;
    }
  }
}

TEST(DiffuseOptics, IntegratesTheHemisphereFinely) {
  const std::array<Sheet, 1> sheet{Sheet{1.526, 0.03}};
  double transmitted = 0.0;
  const int steps = 20000;
  for (int i = 0; i < steps; ++i) {
    transmitted += stack_optics(std::asin(std::sqrt((i + 0.5) / steps)), sheet).transmittance / steps;
  }
  const SheetOptics diffuse = diffuse_stack_optics(sheet);
  EXPECT_NEAR(diffuse.transmittance, transmitted, 2e-4);
  EXPECT_NEAR(diffuse.transmittance + diffuse.reflectance + diffuse.absorptance, 1.0, 1e-12);
}

// Abramowitz & Stegun 1964, Handbook of Mathematical Functions, Table 5.4 (from memory): E3. Half the last digit.
TEST(EvenLayer, IsTwiceTheThirdExponentialIntegral) {
  EXPECT_EQ(even_layer_diffuse_transmittance(0.0), 1.0);
  EXPECT_NEAR(even_layer_diffuse_transmittance(0.5), 2.0 * 0.2216044, 1e-7);
  EXPECT_NEAR(even_layer_diffuse_transmittance(1.0), 2.0 * 0.1096920, 1e-7);
}

// The same by adding up directions: the mean of exp(-depth / cosine) over sin^2.
TEST(EvenLayer, IsTheMeanOverTheHemisphere) {
  double sum = 0.0;
  const int steps = 20000;
  for (int i = 0; i < steps; ++i) sum += std::exp(-0.3 / std::sqrt(1.0 - (i + 0.5) / steps)) / steps;
  EXPECT_NEAR(even_layer_diffuse_transmittance(0.3), sum, 1e-6);
}

TEST(EvenLayer, DepthGoesBackToTheShare) {
  EXPECT_EQ(even_layer_optical_depth(1.0), 0.0);
  for (const double share : {0.999999, 0.99, 0.9, 0.5, 0.1, 0.001}) {
    EXPECT_NEAR(even_layer_diffuse_transmittance(even_layer_optical_depth(share)) / share, 1.0, 1e-12) << share;
  }
}

}  // namespace
}  // namespace noonhouse
