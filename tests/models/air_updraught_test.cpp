// SPDX-License-Identifier: Apache-2.0
// The column of rising air, level by level, against the similarity solution of a plume.
#include <gtest/gtest.h>

#include <cmath>

#include "models/air/updraught.hpp"
#include "models/properties/constants.hpp"
#include "sim/core/dual.hpp"

namespace noonhouse {
namespace {

double rise(const ColumnLevel& level, double column_k, double air_k) {
  return column_rise(level, column_k, 0.0, air_k, 0.0, kStandardPressure);
}

// Morton, Taylor & Turner 1956, Proc. R. Soc. A 234, 1, top-hat profile (equations from memory): a point source of
// buoyancy B in still air of one density carries Q = (6 alpha / 5) (9 alpha / 10)^(1/3) pi^(2/3) B^(1/3) z^(5/3), as
// warm as g' = B / Q.
TEST(ColumnRise, IsThePlumeOfMortonTaylorAndTurnerAtEveryHeight) {
  const double air_k = 293.15;
  for (const double alpha : {0.08, 0.10, 0.13})
    for (const double buoyancy : {1e-3, 1e-2, 0.1})  // [m4/s3]; 1 kW is 0.028
      for (const double z : {0.5, 1.0, 3.0}) {
        const double constant = 6.0 * alpha / 5.0 * std::cbrt(9.0 * alpha / 10.0) * std::pow(kPi, 2.0 / 3.0);
        const double flow = constant * std::cbrt(buoyancy) * std::pow(z, 5.0 / 3.0);
        const double excess = buoyancy / flow * air_k / kGravity, b = 6.0 * alpha / 5.0 * z;
        const double mass = rise({kPi * b * b, z}, air_k + excess, air_k);
        // The rounding of the root, over a twentieth of a kelvin at most, takes less than (3/4) (e / excess)^2.
        const double rounding = 0.75 * std::pow(0.05 / excess, 2);
        EXPECT_NEAR(mass / dry_air_density(air_k + excess, 0.0, kStandardPressure), flow, (1e-9 + rounding) * flow)
            << alpha << ' ' << buoyancy << ' ' << z;
      }
}

TEST(ColumnRise, StandsStillWithoutExcessAndBeginsWithoutAJump) {
  const ColumnLevel level{2.0, 1.0};
  EXPECT_EQ(rise(level, 300.0, 300.0), 0.0);
  EXPECT_EQ(rise(level, 295.0, 300.0), 0.0);
  EXPECT_EQ(rise({0.0, 1.0}, 310.0, 300.0), 0.0) << "no column";
  using D = Dual<2>;
  double last = 0.0;
  for (const double excess : {1e-6, 1e-4, 1e-2, 0.1, 1.0, 10.0}) {
    const D m = column_rise(level, D::input(300.0 + excess, 0), D(0.0), D::input(300.0, 1), D(0.0), kStandardPressure);
    EXPECT_GT(m.value, last);
    EXPECT_GT(m.grad[0], 0.0);
    EXPECT_LT(m.grad[1], 0.0);
    EXPECT_LT(m.grad[0], 10.0) << "no root begins with an upright slope";
    last = m.value;
  }
}

TEST(ColumnRise, IsLiftedByMoistureToo) {
  const ColumnLevel level{2.0, 1.0};
  const double moist = column_rise(level, 300.0, 0.018, 300.0, 0.010, kStandardPressure);
  const double warm =
      column_rise(level, 300.0 * (1.0 + 0.608 * 0.018) / (1.0 + 0.608 * 0.010), 0.010, 300.0, 0.010, kStandardPressure);
  EXPECT_GT(moist, 0.1);
  EXPECT_NEAR(moist, warm, 0.01 * warm) << "by its virtual temperature, but for its own density";
}

TEST(ColumnRise, CarriesItsOwnAirUpward) {
  const ColumnRise law{{2.0, 1.0}, kStandardPressure};
  std::array<double, 3> q{};
  law.flux(std::array{303.0, 0.014, 300.0, 0.010}, q);
  EXPECT_GT(q[0], 0.0);
  EXPECT_DOUBLE_EQ(q[1], q[0] * 0.014);
  EXPECT_DOUBLE_EQ(q[2], q[0] * moist_air_enthalpy(303.0, 0.014));
}

TEST(ColumnIntake, TakesInWhatRisesMoreAboveThanBelowAndGivesUpWhatRisesLess) {
  const ColumnLevel low{1.0, 1.0}, high{3.0, 2.0};
  const auto vapour = [&](const ColumnIntake& law, double w_column, double w_air) {
    std::array<double, 2> q{};
    law.flux(std::array{302.0, w_column, 300.0, w_air, 302.0, 0.0, 300.0, 0.0}, q);
    return q[0];
  };
  const double above = column_rise(high, 302.0, 0.0, 300.0, 0.0, kStandardPressure), below = rise(low, 302.0, 300.0);
  ASSERT_GT(above, below);
  const ColumnIntake grows{high, low, kStandardPressure, 0.0}, shrinks{low, high, kStandardPressure, 0.0};
  constexpr double kTracer = 1e-6, kRound = 2e-3;  // [kg/s], the most that the corner between in and out is rounded by
  EXPECT_NEAR(vapour(grows, 0.0, kTracer) / kTracer, above - below, kRound);
  EXPECT_NEAR(vapour(grows, kTracer, 0.0) / kTracer, 0.0, kRound) << "gives up none of its own";
  EXPECT_NEAR(vapour(shrinks, kTracer, 0.0) / kTracer, -(above - below), kRound);
  EXPECT_NEAR(vapour(shrinks, 0.0, kTracer) / kTracer, 0.0, kRound);
}

TEST(ColumnIntake, AtTheRoofGivesUpAllThatRises) {
  const ColumnLevel below{1.0, 1.0};
  const ColumnIntake law{{}, below, kStandardPressure, 0.0};
  std::array<double, 2> q{};
  law.flux(std::array{302.0, 0.0, 300.0, 0.0, 304.0, 0.0, 300.0, 0.0}, q);
  const double up = rise(below, 304.0, 300.0);
  EXPECT_NEAR(q[1], -up * moist_air_enthalpy(302.0, 0.0), 1e-4 * up * moist_air_enthalpy(302.0, 0.0));
}

TEST(ColumnIntake, WithoutRiseTakesOnItsLayersState) {
  const ColumnIntake law{{1.0, 2.0}, {1.0, 1.0}, kStandardPressure, 0.05};
  std::array<double, 2> q{};
  law.flux(std::array{295.0, 0.008, 300.0, 0.010, 295.0, 0.008, 300.0, 0.010}, q);
  const double contrast = moist_air_enthalpy(300.0, 0.010) - moist_air_enthalpy(295.0, 0.008);
  constexpr double kRound = 2e-3;  // [kg/s], the most that the corner between in and out is rounded by
  EXPECT_NEAR(q[0], 0.05 * 0.002, kRound * 0.002) << "a column colder than its layer neither rises nor sinks";
  EXPECT_NEAR(q[1], 0.05 * contrast, kRound * contrast);
}

}  // namespace
}  // namespace noonhouse
