// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "models/envelope/facet_sun.hpp"
#include "models/properties/constants.hpp"

namespace noonhouse {
namespace {

// Glass K 32 /m, 2.3 mm, n 1.526 at 60 deg: transmittance 0.768, absorptance 0.085, to 0.002. Duffie & Beckman,
// Example 5.3.1 (from memory, recomputed from the equation).
TEST(Pane, PassesAndAbsorbsABeamAsPublished) {
  const Pane glass(1, {1.526, 32.0 * 0.0023});
  const CoverSun out = glass.pass({1000.0, 0.0, 60.0 * kRadiansPerDegree});
  EXPECT_NEAR(out.beam_through, 768.0, 2.0);
  EXPECT_NEAR(out.absorbed, 85.0, 2.0);
  EXPECT_EQ(out.diffuse_through, 0.0);
}

TEST(Pane, NeverGivesMoreThanItGets) {
  for (int sheets : {1, 2, 3})
    for (double degrees : {0.0, 30.0, 60.0, 80.0, 89.9}) {
      const CoverSun out = Pane(sheets, {1.586, 0.1}).pass({700.0, 300.0, degrees * kRadiansPerDegree});
      EXPECT_GE(out.beam_through, 0.0);
      EXPECT_GT(out.diffuse_through, 0.0);
      EXPECT_GT(out.absorbed, 0.0);
      EXPECT_LT(out.beam_through + out.diffuse_through + out.absorbed, 1000.0);
    }
}

TEST(Pane, ShutsOutABeamThatGrazesAndPassesLessThroughMoreSheets) {
  const Pane one(1, {1.526, 0.05}), two(2, {1.526, 0.05});
  EXPECT_LT(one.pass({1000.0, 0.0, 0.5 * kPi - 1e-6}).beam_through, 0.1);
  const PlaneSun sun{600.0, 200.0, 0.5};
  EXPECT_LT(two.pass(sun).beam_through, one.pass(sun).beam_through);
  EXPECT_LT(two.pass(sun).diffuse_through, one.pass(sun).diffuse_through);
}

TEST(Pane, IsDarkByNight) {
  const CoverSun out = Pane(1, {}).pass({});
  EXPECT_EQ(out.beam_through + out.diffuse_through + out.absorbed, 0.0);
}

TEST(LandingShare, IsTheRunOverTheWayThatTheBeamFalls) {
  EXPECT_NEAR(landing_share(45.0 * kRadiansPerDegree, 1.0, 2.0), 0.5, 1e-12);
  EXPECT_EQ(landing_share(80.0 * kRadiansPerDegree, 3.0, 2.0), 1.0);
  EXPECT_EQ(landing_share(0.0, 3.0, 2.0), 0.0);
  EXPECT_EQ(landing_share(-0.2, 3.0, 2.0), 0.0);
  EXPECT_EQ(landing_share(0.3, 3.0, 0.0), 1.0);
}

}  // namespace
}  // namespace noonhouse
