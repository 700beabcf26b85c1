// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <array>
#include <cmath>

#include "models/air/opening_flow.hpp"
#include "sim/core/dual.hpp"

namespace noonhouse {
namespace {

TEST(Orifice, IsBernoullisSquareRootWithinTheStatedCost) {
  // dp = 10 d: too small by d^2 / (4 dp^2) = 0.25 %; 100 d: 0.0025 %. The bound is met and not overstated by half.
  for (const double ratio : {10.0, 100.0}) {
    const double dp = ratio * kOrificeSoftness, exact = 0.6 * 2.0 * std::sqrt(2.0 * dp / 1.2);
    const double missing = 1.0 - orifice_flow(dp, 0.6, 2.0, 1.2) / exact;
    EXPECT_LE(missing, 0.25 / (ratio * ratio));
    EXPECT_GE(missing, 0.5 * 0.25 / (ratio * ratio));
  }
}

TEST(Orifice, IsOddRisesAndHasAFiniteSlopeAtZero) {
  EXPECT_EQ(orifice_flow(0.0, 0.6, 2.0, 1.2), 0.0);
  EXPECT_DOUBLE_EQ(orifice_flow(-3.0, 0.6, 2.0, 1.2), -orifice_flow(3.0, 0.6, 2.0, 1.2));
  double last = orifice_flow(-1.0, 0.6, 2.0, 1.2);
  for (double dp = -0.9995; dp <= 1.0; dp += 5e-4) {
    const double now = orifice_flow(dp, 0.6, 2.0, 1.2);
    EXPECT_GT(now, last);
    last = now;
  }
  const Dual<3> at_rest = orifice_flow(Dual<3>::input(0.0, 0), 0.6, 2.0, Dual<3>(1.2));
  EXPECT_DOUBLE_EQ(at_rest.grad[0], 0.6 * 2.0 / std::sqrt(0.5 * 1.2 * kOrificeSoftness));
  EXPECT_TRUE(std::isfinite(orifice_flow(1e9, 0.6, 2.0, 1.2)));
}

TEST(Orifice, HasTheDerivativesThatDifferencesShow) {
  for (const double dp : {-2.0, -1e-3, 0.0, 4e-4, 0.03, 5.0}) {
    const Dual<3> q = orifice_flow(Dual<3>::input(dp, 0), 0.6, 2.0, Dual<3>::input(1.2, 1));
    const double h = 1e-7;
    const double by_dp = (orifice_flow(dp + h, 0.6, 2.0, 1.2) - orifice_flow(dp - h, 0.6, 2.0, 1.2)) / (2.0 * h);
    const double by_rho = (orifice_flow(dp, 0.6, 2.0, 1.2 + h) - orifice_flow(dp, 0.6, 2.0, 1.2 - h)) / (2.0 * h);
    EXPECT_NEAR(q.grad[0], by_dp, 1e-6 * std::abs(by_dp) + 1e-7);
    EXPECT_NEAR(q.grad[1], by_rho, 1e-6 * std::abs(by_rho) + 1e-7);
  }
}

TEST(Orifice, PassesTheStackFlowOfTheHandbook) {
  // The column between opening and neutral level presses by rho_i g dH (T_i - T_o) / T_i on air of density rho_i.
  const double rho = 1.15, dp = rho * kGravity * 1.5 * 5.0 / 308.15;
  EXPECT_NEAR(orifice_flow(dp, 0.65, 0.5, rho), stack_flow(0.65, 0.5, 1.5, 308.15, 303.15), 1e-6);
}

// Q = C_d A sqrt(2 g dH (T_i - T_o) / T_i), ASHRAE Handbook of Fundamentals, ventilation chapter. The numbers are
// worked out from the printed equation with g = 9.81 m/s2, the last digit as shown: C_d 0.65; A 0.5 m2, 1.5 m, 35 / 30
// degC: 0.2246 m3/s; A 1 m2, 2 m, 35 / 25 degC: 0.7335 m3/s.
TEST(StackFlow, IsTheHandbooks) {
  const double gravity = std::sqrt(kGravity / 9.81);
  EXPECT_NEAR(stack_flow(0.65, 0.5, 1.5, 308.15, 303.15), 0.2246 * gravity, 5e-5);
  EXPECT_NEAR(stack_flow(0.65, 1.0, 2.0, 308.15, 298.15), 0.7335 * gravity, 5e-5);
  EXPECT_EQ(stack_flow(0.65, 1.0, 2.0, 300.0, 300.0), 0.0);
  EXPECT_DOUBLE_EQ(stack_flow(0.65, 1.0, 2.0, 298.15, 308.15), -stack_flow(0.65, 1.0, 2.0, 308.15, 298.15));
}

// Continuous roof vent: A 10 m2, height 0.7 m, dT 5 K, T 300 K, U 2 m/s, C_d 0.644, C_w 0.09: 2.08 m3/s; stack alone
// 0.77, wind alone 1.93. Boulard & Baille 1995, J. Agric. Eng. Res. 61, 145 (coefficients from memory); last digits.
TEST(VentExchange, IsBoulardAndBailles) {
  const auto vent = [](double inside_k, double speed_m_s) {
    return vent_exchange_flow(0.644, 0.09, 10.0, 0.7, inside_k, 300.0, speed_m_s);
  };
  EXPECT_NEAR(vent(305.0, 2.0), 2.08, 0.005);
  EXPECT_NEAR(vent(305.0, 0.0), 0.77, 0.005);
  EXPECT_NEAR(vent(300.0, 2.0), 1.93, 0.005);
  EXPECT_EQ(vent(300.0, 0.0), 0.0);
  EXPECT_DOUBLE_EQ(vent(295.0, 2.0), vent(305.0, 2.0)) << "a cold house exchanges as a warm one";
}

TEST(Crack, FollowsItsPowerLawBothWays) {
  for (const double n : {0.5, 0.65, 1.0}) {
    EXPECT_NEAR(crack_flow(4.0, 0.01, n), 0.01 * std::pow(4.0, n), 1e-9);
    EXPECT_DOUBLE_EQ(crack_flow(-4.0, 0.01, n), -crack_flow(4.0, 0.01, n));
    EXPECT_EQ(crack_flow(0.0, 0.01, n), 0.0);
    const double slope = crack_flow(Dual<3>::input(0.0, 0), 0.01, n).grad[0];
    EXPECT_NEAR(slope, 0.01 * std::pow(kOrificeSoftness, n - 1.0), 1e-12);
    const double h = 1e-7;
    EXPECT_NEAR(crack_flow(Dual<3>::input(0.002, 0), 0.01, n).grad[0],
                (crack_flow(0.002 + h, 0.01, n) - crack_flow(0.002 - h, 0.01, n)) / (2.0 * h), 1e-7);
  }
}

TEST(Crack, OfExponentOneHalfIsAnOrifice) {
  const double c = 0.6 * 0.02 * std::sqrt(2.0 / 1.2);
  for (const double dp : {-1.0, 2e-4, 0.5})
    EXPECT_NEAR(crack_flow(dp, c, 0.5), orifice_flow(dp, 0.6, 0.02, 1.2), 1e-15);
}

/// The softened integrand by Simpson's rule: independent of the closed form.
double mean_root_by_sum(double p0, double p1, double d) {
  const auto root = [&](int i, int n) {
    const double p = p0 + (p1 - p0) * i / n;
    return std::sqrt(0.5 * (p + std::hypot(p, d)));
  };
  const int n = 20000;
  double sum = root(0, n) + root(n, n);
  for (int i = 1; i < n; ++i) sum += (i % 2 == 1 ? 4.0 : 2.0) * root(i, n);
  return sum / (3.0 * n);
}

TEST(MeanRoot, IsTheIntegralOverTheHeight) {
  using Pair = std::array<double, 2>;
  for (const auto& [p0, p1] : {Pair{1.0, 0.2}, Pair{0.7, -0.4}, Pair{-0.4, 0.7}, Pair{-0.5, -0.1}, Pair{0.3, 0.3},
                               Pair{0.0, 0.0}, Pair{0.5, 0.0}, Pair{0.0, -0.5}}) {
    EXPECT_NEAR(mean_root_of_positive(p0, p1, 1e-3), mean_root_by_sum(p0, p1, 1e-3), 1e-10) << p0 << ' ' << p1;
  }
  // Ends that almost meet: the mean moves by half the way of one end, 1e-9 / (4 sqrt(p)), with no digit lost.
  const double moved = mean_root_of_positive(0.3, 0.3 + 1e-9, 1e-4) - mean_root_of_positive(0.3, 0.3, 1e-4);
  EXPECT_NEAR(moved, 1e-9 / (4.0 * std::sqrt(0.3)), 4e-16);
  EXPECT_NEAR(mean_root_of_positive(1e9, 1e9, 1e-4), std::sqrt(1e9), 1e-6);
  const double shut = mean_root_of_positive(-1e9, -1e9, 1e-4);  // d / (2 sqrt(|p|))
  EXPECT_NEAR(shut, 0.5e-4 / std::sqrt(1e9), 1e-15);
}

constexpr TallOpening kDoor{0.9, 2.0, 0.6};

TEST(TallOpening, ExchangesAsBrownAndSolvasonAtItsMiddleNeutralLevel) {
  // Q = (C_d / 3) W H sqrt(g H drho / rho), from the source's integral; density and flow each of its own side.
  const double a = 1.14, b = 1.20, middle = 0.5 * kGravity * 2.0 * (a - b);
  const auto f = kDoor.flow(middle, a, b, 1e-7);
  const double volume = 0.6 / 3.0 * 0.9 * 2.0 * std::sqrt(kGravity * 2.0 * (b - a));
  EXPECT_NEAR(f.a_to_b_kg_s, volume * std::sqrt(a), 1e-6 * volume);
  EXPECT_NEAR(f.b_to_a_kg_s, volume * std::sqrt(b), 1e-6 * volume);
  const auto usual = kDoor.flow(middle, a, b);  // the softness in use costs 1.5 d / dp at the edge: 0.025 %
  EXPECT_NEAR(usual.a_to_b_kg_s, f.a_to_b_kg_s, 3e-4 * f.a_to_b_kg_s);
  EXPECT_NEAR(neutral_level_m(middle, a, b), 1.0, 1e-12);
}

TEST(TallOpening, FollowsTheExactIntegralWhereverTheNeutralLevelIs) {
  // Int sqrt(max(dp0 - s z, 0)) dz = 2 / (3 s) [max(dp0, 0)^1.5 - max(dp0 - s H, 0)^1.5]
  const double a = 1.22, b = 1.15, s = kGravity * (a - b);
  const auto part = [](double p) { return std::pow(std::max(p, 0.0), 1.5); };
  for (const double neutral : {-1.5, -0.01, 0.0, 0.3, 1.0, 1.99, 2.0, 2.01, 5.0}) {
    const double p0 = s * neutral, ph = p0 - s * 2.0;
    const auto f = kDoor.flow(p0, a, b, 1e-9);
    EXPECT_NEAR(f.a_to_b_kg_s, 0.6 * 0.9 * std::sqrt(2.0 * a) * 2.0 / (3.0 * s) * (part(p0) - part(ph)), 1e-7);
    EXPECT_NEAR(f.b_to_a_kg_s, 0.6 * 0.9 * std::sqrt(2.0 * b) * 2.0 / (3.0 * s) * (part(-ph) - part(-p0)), 1e-7);
    EXPECT_NEAR(neutral_level_m(p0, a, b), neutral, 1e-12);
  }
}

TEST(TallOpening, IsAnOrificeBetweenEqualColumns) {
  for (const double dp : {-3.0, 0.2, 8.0}) {
    const double orifice = 1.2 * orifice_flow(dp, 0.6, 1.8, 1.2);
    // d / (2 |dp|) is the stated cost of softness on the net flow, and the counterflow that is left.
    EXPECT_NEAR(kDoor.flow(dp, 1.2, 1.2).net(), orifice, 1e-4 / (2.0 * std::abs(dp)) * std::abs(orifice) * 1.1);
  }
  const auto rest = kDoor.flow(0.0, 1.2, 1.2);
  EXPECT_EQ(rest.net(), 0.0);
  EXPECT_NEAR(rest.a_to_b_kg_s / (1.2 * 0.6 * 1.8), std::sqrt(2.0 * 0.5e-4 / 1.2), 1e-12);  // 9 mm/s
}

TEST(TallOpening, GivesOneSideWhatTheOtherLoses) {
  // Seen from the other side the two flows change places.
  for (const double dp : {-0.4, 0.0, 0.3, 6.0}) {
    const auto here = kDoor.flow(dp, 1.22, 1.15), there = kDoor.flow(-dp, 1.15, 1.22);
    EXPECT_DOUBLE_EQ(here.a_to_b_kg_s, there.b_to_a_kg_s);
    EXPECT_DOUBLE_EQ(here.b_to_a_kg_s, there.a_to_b_kg_s);
    EXPECT_DOUBLE_EQ(here.net(), -there.net());
  }
}

TEST(TallOpening, RisesWithPressureAndIsSmoothAsTheNeutralLevelPassesTheEdges) {
  const double a = 1.22, b = 1.15, s = kGravity * (a - b);
  const auto slope = [&](double dp) { return kDoor.flow(Dual<3>::input(dp, 0), Dual<3>(a), Dual<3>(b)).net().grad[0]; };
  double last = kDoor.flow(-0.5, a, b).net();
  for (double dp = -0.499; dp < 2.5; dp += 1e-3) {
    const double now = kDoor.flow(dp, a, b).net();
    EXPECT_GT(now, last);
    last = now;
  }
  for (const double edge : {0.0, 2.0 * s}) {  // the slope moves little over a tenth of the softness: no corner
    EXPECT_NEAR(slope(edge - 1e-5), slope(edge + 1e-5), 0.02 * slope(edge));
    EXPECT_TRUE(std::isfinite(slope(edge)));
  }
}

TEST(TallOpening, HasTheDerivativesThatDifferencesShow) {
  const double a = 1.22, b = 1.15, h = 1e-7;
  for (const double dp : {-0.3, 0.0, 1e-4, 0.7, kGravity * (a - b) * 2.0, 4.0}) {
    const auto f = kDoor.flow(Dual<3>::input(dp, 0), Dual<3>::input(a, 1), Dual<3>::input(b, 2));
    const auto close = [](double exact, double forward, double backward, double step) {
      EXPECT_NEAR(exact, (forward - backward) / (2.0 * step), 2e-5 * std::abs(exact) + 1e-6);
    };
    close(f.a_to_b_kg_s.grad[0], kDoor.flow(dp + h, a, b).a_to_b_kg_s, kDoor.flow(dp - h, a, b).a_to_b_kg_s, h);
    close(f.b_to_a_kg_s.grad[0], kDoor.flow(dp + h, a, b).b_to_a_kg_s, kDoor.flow(dp - h, a, b).b_to_a_kg_s, h);
    close(f.net().grad[1], kDoor.flow(dp, a + h, b).net(), kDoor.flow(dp, a - h, b).net(), h);
    close(f.net().grad[2], kDoor.flow(dp, a, b + h).net(), kDoor.flow(dp, a, b - h).net(), h);
  }
  const auto rest =
      kDoor.flow(Dual<3>::input(0.0, 0), Dual<3>(1.2), Dual<3>(1.2)).net();  // sqrt(2 rho) A C_d / sqrt(2 d)
  EXPECT_NEAR(rest.grad[0], 0.6 * 1.8 * std::sqrt(2.0 * 1.2) / std::sqrt(2e-4), 1e-9 * rest.grad[0]);
}

// Openings of 0.5 and 0.3 m2: 0.2572 m2, BS 5925:1991, openings in series (from memory); last digit.
TEST(Series, AddsOpeningsAsTheStandardDoes) {
  const double area = area_in_series_m2(std::array{0.5, 0.3});
  EXPECT_NEAR(area, 0.2572, 5e-5);
  const double q = orifice_flow(4.0, 0.6, area, 1.2, 1e-9);
  const double over_large = 0.6 * q * q / std::pow(0.6 * 0.5, 2), over_small = 0.6 * q * q / std::pow(0.6 * 0.3, 2);
  EXPECT_NEAR(over_large + over_small, 4.0, 1e-9);  // the two take the whole pressure, the smaller one the more
  EXPECT_GT(over_small, over_large);
  EXPECT_EQ(area_in_series_m2(std::array{0.5, 0.0}), 0.0);
  EXPECT_DOUBLE_EQ(area_in_series_m2(std::array{0.5}), 0.5);
  EXPECT_NEAR(area_in_series_m2(std::array{0.5, 1e9}), 0.5, 1e-12);
}

// Insect screens N50, N32 and N24: discharge coefficients 0.411, 0.520, 0.547; pressure drop quadratic in the approach
// speed. Kamaruddin, Bailey & Douglass 2000, J. Trop. Agric. Food Sci. 28, abstract. Their porosities are not printed
// there, so the measured coefficient is the input, and Bernoulli's pressure of a measured flow is what must come out.
TEST(Screen, OfAMeasuredDischargeIsQuadraticAndInSeriesWithItsOpening) {
  for (const double measured : {0.411, 0.520, 0.547}) {
    const ScreenResistance screen = screen_of_discharge(measured, 1.2);
    EXPECT_NEAR(screen.pressure_pa(0.6) / screen.pressure_pa(0.3), 4.0, 1e-12);
    EXPECT_NEAR(screen.pressure_pa(measured), 0.6, 1e-12);
    const double q = screened_flow(5.0, 0.6, 2.0, 2.0, screen, 1.2, 1e-6);
    EXPECT_NEAR(0.6 * std::pow(q / (0.6 * 2.0), 2) + screen.pressure_pa(q / 2.0), 5.0, 1e-9);
    EXPECT_NEAR(q, orifice_flow(5.0, discharge_in_series(0.6, measured), 2.0, 1.2, 1e-6), 1e-9);
  }
}

TEST(Screen, ByBaileyIsMoreOpenWithPorosityAndSpeed) {
  // Re = 1 by hand: 18 + 0.75 / log10(2.25) + 0 = 20.1296, times (1 - 0.25) / 0.25 = 3.
  EXPECT_NEAR(bailey_screen_loss(0.5, 1.0), 60.389, 5e-4);
  EXPECT_EQ(bailey_screen_loss(1.0, 10.0), 0.0);
  EXPECT_GT(bailey_screen_loss(0.3, 5.0), bailey_screen_loss(0.4, 5.0));
  EXPECT_GT(bailey_screen_loss(0.4, 5.0), bailey_screen_loss(0.4, 20.0));
  const double u = 0.4, rho = 1.19, mu = 1.82e-5, thread = 2.5e-4;
  const ScreenResistance screen = bailey_screen(0.4, thread, u, rho, mu);
  const double loss = bailey_screen_loss(0.4, u * thread * rho / mu);
  EXPECT_NEAR(screen.pressure_pa(u), loss * 0.5 * rho * u * u, 1e-12);
  EXPECT_NEAR(screen.pressure_pa(-u), -screen.pressure_pa(u), 1e-15);
}

TEST(Screen, ByForchheimerIsViscousWhenSlowAndQuadraticWhenFast) {
  // K = 3.44e-9 e^1.6, Y = 4.3e-2 e^-2.13 (Miguel, van de Braak & Bot 1997) at e = 1 leave the bare constants.
  const ScreenResistance open = forchheimer_screen(1.0, 1e-3, 1.2, 1.8e-5);
  EXPECT_NEAR(open.viscous_pa_s_m, 1e-3 * 1.8e-5 / 3.44e-9, 1e-12);
  EXPECT_NEAR(open.quadratic_pa_s2_m2, 1e-3 * 1.2 * 0.043 / std::sqrt(3.44e-9), 1e-12);
  // At e = 0.5 by hand: 0.5^1.6 = 0.329877, K = 1.134777e-9 m2; 0.5^-2.13 = 4.37717, Y = 0.188218; last digit.
  const ScreenResistance half = forchheimer_screen(0.5, 1e-3, 1.2, 1.8e-5);
  EXPECT_NEAR(half.viscous_pa_s_m, 15.8622, 1e-4);
  EXPECT_NEAR(half.quadratic_pa_s2_m2, 6.7048, 1e-4);
  const ScreenResistance dense = forchheimer_screen(0.4, 5e-4, 1.2, 1.8e-5);
  EXPECT_NEAR(dense.pressure_pa(2e-6) / dense.pressure_pa(1e-6), 2.0, 1e-5);
  EXPECT_NEAR(dense.pressure_pa(2e6) / dense.pressure_pa(1e6), 4.0, 1e-4);
}

TEST(Screen, AndOpeningTakeThePressureTogetherAndSmoothly) {
  const ScreenResistance screen = forchheimer_screen(0.35, 4e-4, 1.2, 1.8e-5);
  for (const double dp : {0.05, 1.0, 20.0, 1e5}) {  // a screen box three times the opening
    const double q = screened_flow(dp, 0.65, 0.8, 2.4, screen, 1.2);
    EXPECT_NEAR(0.6 * std::pow(q / (0.65 * 0.8), 2) + screen.pressure_pa(q / 2.4), dp, 3e-5 * dp);
    EXPECT_LT(q, orifice_flow(dp, 0.65, 0.8, 1.2));
    EXPECT_GT(q, screened_flow(dp, 0.65, 0.8, 0.8, screen, 1.2));
    EXPECT_DOUBLE_EQ(screened_flow(-dp, 0.65, 0.8, 2.4, screen, 1.2), -q);
  }
  const double h = 1e-7;
  for (const double dp : {-0.5, 0.0, 1e-3, 3.0}) {
    const double by_dp = screened_flow(Dual<3>::input(dp, 0), 0.65, 0.8, 2.4, screen, Dual<3>(1.2)).grad[0];
    const double forward = screened_flow(dp + h, 0.65, 0.8, 2.4, screen, 1.2);
    const double backward = screened_flow(dp - h, 0.65, 0.8, 2.4, screen, 1.2);
    EXPECT_NEAR(by_dp, (forward - backward) / (2.0 * h), 1e-6 * by_dp + 1e-8);
  }
}

TEST(SingleSided, StackIsTheTallOpeningsOwn) {
  // Boussinesq's mean density against the two real ones: half the contrast, 1 %, at 6 K.
  const double inside = 303.15, outside = 297.15, rho_i = 353.0 / inside, rho_o = 353.0 / outside;
  const TallOpening window{1.0, 1.2, 0.6};
  const auto f = window.flow(0.5 * kGravity * 1.2 * (rho_i - rho_o), rho_i, rho_o, 1e-7);
  EXPECT_NEAR(single_sided_stack_flow(0.6, 1.2, 1.2, inside, outside), f.a_to_b_kg_s / rho_i, 0.01 * f.a_to_b_kg_s);
  EXPECT_DOUBLE_EQ(single_sided_stack_flow(0.6, 1.2, 1.2, outside, inside),
                   single_sided_stack_flow(0.6, 1.2, 1.2, inside, outside));
}

// 1 m2, 3 m/s: 0.075 m3/s (0.025 A U), BS 5925:1991 (from memory).
TEST(SingleSided, WindIsTheStandards) { EXPECT_NEAR(single_sided_wind_flow(1.0, 3.0), 0.075, 5e-4); }

TEST(CrossWind, IsTheOrificeUnderTheWindsPressure) {
  const double u = 3.5, dcp = 1.2, dp = 0.5 * 1.2 * u * u * dcp;
  EXPECT_NEAR(cross_wind_flow(0.61, 0.4, u, dcp), orifice_flow(dp, 0.61, 0.4, 1.2), 1e-7);
  EXPECT_DOUBLE_EQ(cross_wind_flow(0.61, 0.4, u, -dcp), -cross_wind_flow(0.61, 0.4, u, dcp));
  EXPECT_EQ(cross_wind_flow(0.61, 0.4, u, 0.0), 0.0);
}

}  // namespace
}  // namespace noonhouse
