// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

#include "models/air/fan_curve.hpp"
#include "models/air/opening_flow.hpp"
#include "models/properties/atmosphere.hpp"
#include "sim/core/dual.hpp"
#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

constexpr double kStandard = kFanStandardDensity;
constexpr QuadraticFan kFan{0.5, 60.0, 0.7};

TEST(QuadraticFan, GoesThroughFreeFlowAndShutOff) {
  EXPECT_NEAR(kFan.flow_m3_s(0.0, kStandard, 1.0), 0.5, 1e-8);
  EXPECT_EQ(kFan.flow_m3_s(60.0, kStandard, 1.0), 0.0);
  EXPECT_EQ(kFan.pressure_pa(0.5, kStandard, 1.0), 0.0);
  EXPECT_EQ(kFan.pressure_pa(0.0, kStandard, 1.0), 60.0);
  // By hand at half the free flow: 60 (1 - 0.3 / 2 - 0.7 / 4) = 40.5 Pa.
  EXPECT_NEAR(kFan.pressure_pa(0.25, kStandard, 1.0), 40.5, 1e-12);
  EXPECT_NEAR(kFan.flow_m3_s(40.5, kStandard, 1.0), 0.25, 1e-7);
}

TEST(QuadraticFan, HasFlowAndPressureThatUndoEachOther) {
  for (const double bend : {0.0, 0.3, 0.7, 1.0}) {
    const QuadraticFan fan{0.5, 60.0, bend};
    for (const double flow : {-0.4, -0.05, 0.1, 0.45, 0.9}) {
      for (const double speed : {0.3, 1.0}) {
        const double dp = fan.pressure_pa(flow, 1.0, speed);
        EXPECT_NEAR(fan.flow_m3_s(dp, 1.0, speed), flow, 1e-4 * std::abs(flow)) << bend << ' ' << flow;
      }
    }
  }
}

TEST(QuadraticFan, ErrsByNoMoreThanItsSoftnessIsSaidToCost) {
  const double y = 0.01, exact = 0.5 * 2.0 * y / (0.3 + std::sqrt(0.09 + 2.8 * y));
  const double share = 1.0 - kFan.flow_m3_s(60.0 * (1.0 - y), kStandard, 1.0) / exact;
  EXPECT_GE(share, 0.0);
  EXPECT_LE(share, 1e-8 / (4.0 * y * y));
  const double slope = kFan.flow_m3_s(Dual<3>::input(60.0, 0), Dual<3>(kStandard), Dual<3>(1.0)).grad[0];
  EXPECT_NEAR(slope, -0.5 / (0.3 * 60.0), 0.7e-4 / 0.09 * 0.5 / (0.3 * 60.0));
}

TEST(QuadraticFan, FallsWithPressureAndHasTheDerivativesThatDifferencesShow) {
  double last = kFan.flow_m3_s(-100.0, kStandard, 1.0);
  for (double dp = -99.5; dp < 200.0; dp += 0.5) {
    const double now = kFan.flow_m3_s(dp, kStandard, 1.0);
    EXPECT_LT(now, last);
    last = now;
  }
  const double h = 1e-6;
  for (const double dp : {-20.0, 10.0, 45.0, 60.0, 90.0}) {
    const Dual<3> q = kFan.flow_m3_s(Dual<3>::input(dp, 0), Dual<3>::input(1.1, 1), Dual<3>::input(0.9, 2));
    const auto at = [](double p, double rho, double n) { return kFan.flow_m3_s(p, rho, n); };
    EXPECT_NEAR(q.grad[0], (at(dp + h, 1.1, 0.9) - at(dp - h, 1.1, 0.9)) / (2.0 * h), 1e-8);
    EXPECT_NEAR(q.grad[1], (at(dp, 1.1 + h, 0.9) - at(dp, 1.1 - h, 0.9)) / (2.0 * h), 1e-7);
    EXPECT_NEAR(q.grad[2], (at(dp, 1.1, 0.9 + h) - at(dp, 1.1, 0.9 - h)) / (2.0 * h), 1e-7);
  }
}

TEST(QuadraticFan, AtRestIsAnOpening) {
  EXPECT_EQ(kFan.flow_m3_s(0.0, kStandard, 0.0), 0.0);
  EXPECT_NEAR(kFan.flow_m3_s(-20.0, kStandard, 0.0), 0.5 * std::sqrt(20.0 / (60.0 * 0.7)), 1e-6);
  EXPECT_DOUBLE_EQ(kFan.flow_m3_s(-20.0, kStandard, 0.0), -kFan.flow_m3_s(20.0, kStandard, 0.0));
  EXPECT_TRUE(std::isfinite(kFan.flow_m3_s(Dual<3>::input(0.0, 0), Dual<3>(kStandard), Dual<3>(0.0)).grad[0]));
}

const std::vector<TabulatedFan::Point> kSheet{{0.0, 0.50}, {20.0, 0.44}, {40.0, 0.30}, {50.0, 0.0}};

TEST(TabulatedFan, GoesThroughItsPointsWithoutOvershootOrCorner) {
  const TabulatedFan fan(kSheet);
  for (const auto& [dp, q] : kSheet) EXPECT_NEAR(fan.flow_m3_s(dp, kStandard, 1.0), q, 1e-12);
  double last = fan.flow_m3_s(-30.0, kStandard, 1.0);
  for (double dp = -29.9; dp < 80.0; dp += 0.1) {
    const double now = fan.flow_m3_s(dp, kStandard, 1.0);
    EXPECT_LT(now, last);
    last = now;
  }
  for (const auto& [dp, q] : kSheet) {
    const double before = fan.flow_m3_s(Dual<3>::input(dp - 1e-9, 0), Dual<3>(kStandard), Dual<3>(1.0)).grad[0];
    const double after = fan.flow_m3_s(Dual<3>::input(dp + 1e-9, 0), Dual<3>(kStandard), Dual<3>(1.0)).grad[0];
    EXPECT_NEAR(before, after, 1e-9) << dp;
  }
}

TEST(TabulatedFan, HasTheWeightedHarmonicMeanOfItsSecantsAsSlope) {
  // Secants -0.003, -0.007, -0.03 over 20, 20, 10 Pa [Fritsch & Butland 1984]. At 20 Pa 2 ab / (a + b) = -0.0042; at
  // 40 Pa with weights 2*10 + 20 = 40 and 10 + 2*20 = 50: 90 / (40 / -0.007 + 50 / -0.03) = -0.01219355.
  const TabulatedFan fan(kSheet);
  const auto slope = [&](double dp) {
    return fan.flow_m3_s(Dual<3>::input(dp, 0), Dual<3>(kStandard), Dual<3>(1.0)).grad[0];
  };
  EXPECT_NEAR(slope(20.0), -0.0042, 1e-12);
  EXPECT_NEAR(slope(40.0), -0.01219355, 5e-9);
  EXPECT_NEAR(slope(-5.0), -0.003, 1e-12);
  EXPECT_NEAR(slope(60.0), -0.03, 1e-12);
}

TEST(TabulatedFan, IsAStraightLineThroughPointsOfOne) {
  const TabulatedFan fan({{0.0, 0.5}, {10.0, 0.4}, {40.0, 0.1}});
  for (const double dp : {-10.0, 3.0, 10.0, 25.0, 60.0}) {
    EXPECT_NEAR(fan.flow_m3_s(dp, kStandard, 1.0), 0.5 - 0.01 * dp, 1e-12);
  }
}

TEST(TabulatedFan, HasTheDerivativesThatDifferencesShow) {
  const TabulatedFan fan(kSheet);
  const double h = 1e-6;
  for (const double dp : {-5.0, 7.0, 33.0, 44.0, 70.0}) {
    const Dual<3> q = fan.flow_m3_s(Dual<3>::input(dp, 0), Dual<3>::input(1.1, 1), Dual<3>::input(0.9, 2));
    const auto at = [&](double p, double rho, double n) { return fan.flow_m3_s(p, rho, n); };
    EXPECT_NEAR(q.grad[0], (at(dp + h, 1.1, 0.9) - at(dp - h, 1.1, 0.9)) / (2.0 * h), 1e-8);
    EXPECT_NEAR(q.grad[1], (at(dp, 1.1 + h, 0.9) - at(dp, 1.1 - h, 0.9)) / (2.0 * h), 1e-6);
    EXPECT_NEAR(q.grad[2], (at(dp, 1.1, 0.9 + h) - at(dp, 1.1, 0.9 - h)) / (2.0 * h), 1e-6);
  }
}

TEST(TabulatedFan, FollowsAQuadraticOneBetweenManyPoints) {
  std::vector<TabulatedFan::Point> points;
  for (int i = 40; i >= 0; --i) points.push_back({kFan.pressure_pa(0.0125 * i, kStandard, 1.0), 0.0125 * i});
  const TabulatedFan fan(points);
  for (double dp = 0.5; dp < 60.0; dp += 0.7) {  // a thousandth of free flow
    EXPECT_NEAR(fan.flow_m3_s(dp, kStandard, 1.0), kFan.flow_m3_s(dp, kStandard, 1.0), 5e-4);
  }
}

TEST(TabulatedFan, RefusesACurveThatHasNoOneFlowAtAPressure) {
  const auto refused = [](std::vector<TabulatedFan::Point> points) {
    try {
      TabulatedFan fan(std::move(points));
    } catch (const UserError& e) {
      EXPECT_EQ(e.kind(), ErrorKind::does_not_fit);
      return std::string(e.what());
    }
    return std::string();
  };
  EXPECT_NE(refused({{0.0, 0.5}, {20.0, 0.4}, {15.0, 0.3}}).find("point 3"), std::string::npos);
  EXPECT_NE(refused({{0.0, 0.5}, {20.0, 0.5}}).find("point 2"), std::string::npos);
  EXPECT_NE(refused({{0.0, 0.5}, {20.0, std::nan("")}}).find("point 2"), std::string::npos);
  EXPECT_NE(refused({{0.0, 0.5}}), "");
  EXPECT_EQ(refused(kSheet), "");
}

template <class Fan>
void expect_fan_laws(const Fan& fan) {
  // Same volume, pressure in proportion to density: 2000 m up, 25 degC against the standard's air.
  const double thin = standard_pressure_pa(2000.0) / (287.042 * 298.15);
  EXPECT_LT(thin, 0.8 * kStandard);
  for (const double dp : {5.0, 30.0, 48.0}) {
    const double rated = fan.flow_m3_s(dp, kStandard, 1.0);
    EXPECT_NEAR(fan.flow_m3_s(dp * thin / kStandard, thin, 1.0), rated, 1e-12);
    EXPECT_LT(fan.flow_m3_s(dp, thin, 1.0), rated);
    // Flow by speed, pressure by its square, power to the air by its cube.
    const double half = fan.flow_m3_s(0.25 * dp, kStandard, 0.5);
    EXPECT_NEAR(half, 0.5 * rated, 1e-4);
    EXPECT_NEAR(air_power_w(half, 0.25 * dp), 0.125 * air_power_w(rated, dp), 1e-4 * dp);
  }
  EXPECT_NEAR(fan.flow_m3_s(0.0, thin, 1.0), fan.flow_m3_s(0.0, kStandard, 1.0), 1e-12);  // free flow is a volume
}

TEST(FanLaws, HoldForBothKindsOfCurve) {
  expect_fan_laws(kFan);
  expect_fan_laws(TabulatedFan(kSheet));
}

TEST(Fan, MeetsItsOpeningWhereBothTakeOneFlow) {
  // Newton on the house's pressure with the exact slopes of both: what the fan blows out comes in.
  Dual<3> house = Dual<3>::input(0.0, 0);  // below the outdoor pressure [Pa]
  for (int i = 0; i < 20; ++i) {
    const Dual<3> gap = kFan.flow_m3_s(Dual<3>(-1.0 * house), Dual<3>(kStandard), Dual<3>(1.0)) -
                        orifice_flow(Dual<3>(-house), 0.6, 0.3, Dual<3>(kStandard));
    house = Dual<3>::input(house.value - gap.value / gap.grad[0], 0);
  }
  const double out = kFan.flow_m3_s(-house.value, kStandard, 1.0);
  EXPECT_NEAR(out, orifice_flow(-house.value, 0.6, 0.3, kStandard), 1e-12);
  EXPECT_LT(house.value, 0.0);
  EXPECT_GT(out, 0.0);
  EXPECT_LT(out, 0.5);
  // What the fan gives to the air is what the opening's jet spends.
  const double jet = out / (0.6 * 0.3);
  EXPECT_NEAR(air_power_w(out, -house.value), out * 0.5 * kStandard * jet * jet, 1e-6);
  EXPECT_DOUBLE_EQ(electric_power_w(9.0, 0.3), 30.0);
}

}  // namespace
}  // namespace noonhouse
