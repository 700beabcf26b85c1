// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>

#include "models/air/louvre.hpp"
#include "models/properties/constants.hpp"
#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

double louvre_at(double degrees) { return louvre_discharge(degrees * kRadiansPerDegree); }

// Iqbal et al. 2023, E3S Web Conf. 396: 0.80, 0.62, 0.41 at sash angles of 0, 15, 30 degrees, plain window 0.60;
// half a unit of the last digit.
TEST(Louvre, DischargesAsMeasured) {
  EXPECT_NEAR(louvre_at(0.0), 0.80, 0.005);
  EXPECT_NEAR(louvre_at(15.0), 0.62, 0.005);
  EXPECT_NEAR(louvre_at(30.0), 0.41, 0.005);
  EXPECT_NEAR(kPlainWindowDischarge, 0.60, 0.005);
}

TEST(Louvre, LosesWithItsAngleAllTheWay) {
  for (double degrees = 0.0; degrees < 30.0; degrees += 0.5) {
    EXPECT_GT(louvre_at(degrees), louvre_at(degrees + 0.5));
    EXPECT_LT(louvre_at(degrees) - louvre_at(degrees + 0.5), 0.01) << "no jump";
  }
}

TEST(Louvre, SaysNothingBeyondWhatWasMeasured) {
  EXPECT_THROW(louvre_at(-1.0), UserError);
  EXPECT_THROW(louvre_at(31.0), UserError);
  EXPECT_THROW(louvre_at(std::nan("")), UserError);
}

TEST(HingedFlap, OpensFromNothingInProportionToItsAngle) {
  const HingedFlap flap{1.2, 0.7};
  EXPECT_EQ(flap.effective_area_m2(0.0), 0.0);
  const double small = 1e-4;  // two triangles and the chord: (W + h) h phi
  EXPECT_NEAR(flap.effective_area_m2(small) / ((1.2 + 0.7) * 0.7 * small), 1.0, 1e-6);
}

TEST(HingedFlap, GrowsWithItsAngleAndStaysBelowTheOpening) {
  const HingedFlap open_sides{1.2, 0.7}, closed_sides{1.2, 0.7, true};
  for (double angle = 0.02; angle < 0.5 * kPi; angle += 0.02) {
    EXPECT_GT(open_sides.effective_area_m2(angle + 0.02), open_sides.effective_area_m2(angle));
    EXPECT_GT(open_sides.effective_area_m2(angle), closed_sides.effective_area_m2(angle));
    EXPECT_LT(open_sides.effective_area_m2(angle), 1.2 * 0.7);
  }
}

// At a right angle the chord is sqrt(2) h: without its sides the gap is sqrt(2) of the opening, in series sqrt(2/3).
TEST(HingedFlap, AtARightAngleLeavesTheDiagonal) {
  const HingedFlap flap{2.0, 0.5, true};
  EXPECT_NEAR(flap.gap_m2(0.5 * kPi), std::sqrt(2.0), 1e-12);
  EXPECT_NEAR(flap.effective_area_m2(0.5 * kPi), std::sqrt(2.0 / 3.0), 1e-12);
  EXPECT_NEAR((HingedFlap{2.0, 0.5}.gap_m2(0.5 * kPi)), std::sqrt(2.0) + 0.25, 1e-12);
}

}  // namespace
}  // namespace noonhouse
