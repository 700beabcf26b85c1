// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>

#include "models/properties/constants.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/properties/wet_bulb_fast.hpp"

namespace noonhouse {
namespace {

double humidity_at(double temperature_k, double share, double pressure_pa) {
  return humidity_ratio(share * saturation_pressure_pa(temperature_k), pressure_pa);
}

// Against the search that knows ice, wherever it ends above freezing. 0.001 K is what the header states.
TEST(WetBulbFast, IsTheWetBulbAboveFreezing) {
  int compared = 0;
  for (const double pressure : {101325.0, 83000.0}) {
    for (double celsius = 0.0; celsius < 60.5; celsius += 2.0) {
      for (double share = 0.0; share < 1.001; share += 0.05) {
        const double t = celsius + kZeroCelsius, w = humidity_at(t, share, pressure);
        const double bulb = wet_bulb_k(t, w, pressure);
        if (bulb > 273.2) {
          EXPECT_NEAR(wet_bulb_fast_k(t, w, pressure), bulb, 0.001) << celsius << " " << share;
          ++compared;
        }
      }
    }
  }
  EXPECT_GT(compared, 900);
}

TEST(WetBulbFast, HasTheSlopesOfItsValues) {
  using D = Dual<3>;
  struct State {
    double t, w, water;
  };
  for (const State& s :
       {State{310, 0.008, 290}, State{280, 0.004, 300}, State{330, 0.002, 285}, State{300, 0.03, 300}}) {
    const D bulb = wet_bulb_fast_k(D::input(s.t, 0), D::input(s.w, 1), kStandardPressure);
    const D end =
        saturated_by_water_fast_k(D::input(s.t, 0), D::input(s.w, 1), D::input(s.water, 2), kStandardPressure);
    const auto slope = [](const auto& law, double h) { return (law(h) - law(-h)) / (2.0 * h); };
    EXPECT_NEAR(bulb.grad[0], slope([&](double h) { return wet_bulb_fast_k(s.t + h, s.w, kStandardPressure); }, 1e-3),
                1e-6);
    EXPECT_NEAR(bulb.grad[1], slope([&](double h) { return wet_bulb_fast_k(s.t, s.w + h, kStandardPressure); }, 1e-6),
                0.01);
    EXPECT_NEAR(
        end.grad[0],
        slope([&](double h) { return saturated_by_water_fast_k(s.t + h, s.w, s.water, kStandardPressure); }, 1e-3),
        1e-6);
    EXPECT_NEAR(
        end.grad[1],
        slope([&](double h) { return saturated_by_water_fast_k(s.t, s.w + h, s.water, kStandardPressure); }, 1e-6),
        0.01);
    EXPECT_NEAR(
        end.grad[2],
        slope([&](double h) { return saturated_by_water_fast_k(s.t, s.w, s.water + h, kStandardPressure); }, 1e-2),
        1e-7);
  }
}

TEST(WetBulbFast, MeetsTheAirAtSaturationAndGoesOnBeyond) {
  for (const double t : {275.15, 300.0, 325.0}) {
    const double saturated = saturation_humidity_ratio_fast(t, kStandardPressure);
    EXPECT_NEAR(wet_bulb_fast_k(t, saturated, kStandardPressure), t, 1e-9);
    EXPECT_NEAR(saturated_by_water_fast_k(t, saturated, 290.0, kStandardPressure), t, 1e-9);
    EXPECT_GT(wet_bulb_fast_k(t, 1.1 * saturated, kStandardPressure), t);
    EXPECT_LT(wet_bulb_fast_k(t, 0.9 * saturated, kStandardPressure), t);
  }
}

TEST(DryingDifference, IsNothingBelowZeroAndAlmostAllFarAbove) {
  EXPECT_EQ(drying_difference_k(-1.0, 0.02), 0.0);
  EXPECT_EQ(drying_difference_k(0.0, 0.02), 0.0);
  EXPECT_EQ(drying_difference_k(Dual<1>::input(0.0, 0), 0.02).grad[0], 0.0);
  for (const double d : {0.001, 0.1, 1.0, 20.0}) {
    EXPECT_GT(drying_difference_k(d, 0.02), 0.0);
    EXPECT_LT(drying_difference_k(d, 0.02), d);
    EXPECT_GT(drying_difference_k(d, 0.02), d - 0.02);
  }
}

}  // namespace
}  // namespace noonhouse
