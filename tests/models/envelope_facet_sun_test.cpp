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
  const double angle = 60.0 * kRadiansPerDegree;
  EXPECT_NEAR(glass.beam_transmittance(angle), 0.768, 0.002);
  EXPECT_NEAR(glass.absorbed_w_m2({1000.0, 0.0, angle}), 85.0, 2.0);
}

TEST(Pane, NeverGivesMoreThanItGets) {
  for (int sheets : {1, 2, 3})
    for (double degrees : {0.0, 30.0, 60.0, 80.0, 89.9}) {
      const Pane pane(sheets, {1.586, 0.1});
      const PlaneSun sun{700.0, 300.0, degrees * kRadiansPerDegree};
      const double beam = pane.beam_transmittance(sun.incidence_rad), diffuse = pane.diffuse_transmittance();
      EXPECT_GE(beam, 0.0);
      EXPECT_GT(diffuse, 0.0);
      EXPECT_GT(pane.absorbed_w_m2(sun), 0.0);
      EXPECT_LT(700.0 * beam + 300.0 * diffuse + pane.absorbed_w_m2(sun), 1000.0);
    }
}

TEST(Pane, ShutsOutABeamThatGrazesAndPassesLessThroughMoreSheets) {
  const Pane one(1, {1.526, 0.05}), two(2, {1.526, 0.05});
  EXPECT_LT(one.beam_transmittance(0.5 * kPi - 1e-6), 1e-4);
  EXPECT_LT(two.beam_transmittance(0.5), one.beam_transmittance(0.5));
  EXPECT_LT(two.diffuse_transmittance(), one.diffuse_transmittance());
}

TEST(Pane, TakesUpNothingByNight) { EXPECT_EQ(Pane(1, {}).absorbed_w_m2({}), 0.0); }

}  // namespace
}  // namespace noonhouse
