// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <array>
#include <functional>

#include "models/air/opening_flow.hpp"
#include "models/air/plume.hpp"
#include "sim/core/dual.hpp"

namespace noonhouse {
namespace {

// Equation of Morton, Taylor & Turner 1956 (as in Linden, Lane-Serff & Smeed 1990), from memory; 0.1 %.
TEST(RoundPlume, HasMortonTaylorAndTurnersConstant) {
  EXPECT_NEAR(round_plume_constant(0.10), 0.1154, 1e-3 * 0.1154);
  EXPECT_NEAR(round_plume_constant(0.12), 0.1471, 1e-3 * 0.1471);
}

// 1 kW in air of 1.2 kg/m3 and 293 K, alpha = 0.10: values worked out from the same equation with c_p = 1005 J/(kg K);
// 0.5 %.
TEST(RoundPlume, OfOneKilowattCarriesWhatTheEquationsGive) {
  const double b = buoyancy_flux(1000.0, 1.2, 293.0);
  EXPECT_NEAR(b, 0.02776, 0.005 * 0.02776);
  const double table[][3] = {{1.0, 0.0349, 23.7}, {2.0, 0.1109, 7.48}, {3.0, 0.2180, 3.80}};
  for (const auto& [height, flow, excess] : table) {
    EXPECT_NEAR(round_plume_flow(b, height), flow, 0.005 * flow) << height;
    EXPECT_NEAR(plume_excess_k(1000.0, round_plume_flow(b, height), 1.2), excess, 0.005 * excess) << height;
  }
}

// 0.005 P^(1/3) z^(5/3), P in watts, of fire and ventilation handbooks (from memory), has alpha 0.12 to 0.14.
TEST(RoundPlume, LiesAroundTheHandbooksOwnForm) {
  const double b = buoyancy_flux(1000.0, 1.2, 293.0);
  for (double height : {1.0, 2.0, 3.0}) {
    const double handbook = 0.005 * 10.0 * std::pow(height, 5.0 / 3.0);
    EXPECT_LT(round_plume_flow(b, height, 1, 0.12), handbook);
    EXPECT_GT(round_plume_flow(b, height, 1, 0.14), handbook);
  }
}

using Rates = std::function<std::array<double, 2>(double z, double flow, double momentum)>;

/// Flow at a height by Runge and Kutta's fourth order from a source that is almost none, in the logarithm of height.
double integrated_flow(const Rates& rates, double height) {
  const int steps = 20000;
  double at = std::log(1e-4), flow = 1e-9, momentum = 1e-9;
  const double step = (std::log(height) - at) / steps;
  const auto slope = [&](double s, double q, double m) {
    auto r = rates(std::exp(s), q, m);
    return std::array{r[0] * std::exp(s), r[1] * std::exp(s)};
  };
  for (int k = 0; k < steps; ++k, at += step) {
    const auto a = slope(at, flow, momentum);
    const auto b = slope(at + 0.5 * step, flow + 0.5 * step * a[0], momentum + 0.5 * step * a[1]);
    const auto c = slope(at + 0.5 * step, flow + 0.5 * step * b[0], momentum + 0.5 * step * b[1]);
    const auto d = slope(at + step, flow + step * c[0], momentum + step * c[1]);
    flow += step / 6.0 * (a[0] + 2.0 * b[0] + 2.0 * c[0] + d[0]);
    momentum += step / 6.0 * (a[1] + 2.0 * b[1] + 2.0 * c[1] + d[1]);
  }
  return flow;
}

// The equations of volume and momentum themselves, with B known: the start fades out as the plume rises; 0.2 %.
TEST(Plume, SolvesItsEquations) {
  const double b = 0.02, alpha = 0.11;
  const Rates round = [=](double, double q, double m) {
    return std::array{2.0 * alpha * std::sqrt(kPi * m), b * q / m};
  };
  const Rates line = [=](double, double q, double m) { return std::array{2.0 * alpha * m / q, b * q / m}; };
  const Rates wall = [=](double z, double q, double m) { return std::array{alpha * m / q, b * z * q / m}; };
  for (double height : {0.5, 2.0}) {
    EXPECT_NEAR(round_plume_flow(b, height, 1, alpha) / integrated_flow(round, height), 1.0, 0.002) << height;
    EXPECT_NEAR(line_plume_flow(b, height, alpha) / integrated_flow(line, height), 1.0, 0.002) << height;
    EXPECT_NEAR(wall_plume_flow(b, height, alpha) / integrated_flow(wall, height), 1.0, 0.002) << height;
  }
}

/// How much rising_power() says that a root at most loses by its softness.
double stated_cost(double reduced_gravity_m_s2) {
  const double ratio = kReducedGravitySoftness / reduced_gravity_m_s2;
  return 0.75 * ratio * ratio + 1e-8;
}

TEST(Plume, IsTheSameFromItsSourceAndFromItsOwnAir) {
  const double b = 0.03;
  for (double height : {0.4, 1.0, 2.5}) {
    const double round = round_plume_flow(b, height), line = line_plume_flow(b, height),
                 wall = wall_plume_flow(b, height);
    const double of_round = b / round, of_line = b / line, of_wall = b * height / wall;  // B = g' Q
    EXPECT_NEAR(local_round_plume_flow(of_round, height) / round, 1.0, stated_cost(of_round)) << height;
    EXPECT_NEAR(local_line_plume_flow(of_line, height) / line, 1.0, stated_cost(of_line)) << height;
    EXPECT_NEAR(local_wall_plume_flow(of_wall, height) / wall, 1.0, stated_cost(of_wall)) << height;
  }
}

TEST(Plume, RisesOnlyWhenWarmAndFromTheHeightOfItsSource) {
  for (double g : {0.0, -0.01, -1.0}) {
    EXPECT_EQ(local_round_plume_flow(g, 2.0), 0.0);
    EXPECT_EQ(local_line_plume_flow(g, 2.0), 0.0);
    EXPECT_EQ(local_wall_plume_flow(g, 2.0), 0.0);
    EXPECT_EQ(round_plume_flow(g, 2.0), 0.0);
  }
  EXPECT_EQ(round_plume_flow(0.02, 0.0), 0.0);
  EXPECT_EQ(local_round_plume_flow(0.3, 0.0), 0.0);
  EXPECT_GT(reduced_gravity(301.0, 300.0), 0.0);
  EXPECT_NEAR(reduced_gravity(299.0, 300.0), -kGravity / 300.0, 1e-12);
  EXPECT_LT(buoyancy_flux(-10.0, 1.2, 300.0), 0.0);
}

// From g' = 0 the slope starts at zero, and nowhere does it exceed that of the root at the softness.
TEST(Plume, BeginsSmoothly) {
  const double most = kPi * 0.12 * 0.12 * 1.0 * std::sqrt(0.75) / std::sqrt(kReducedGravitySoftness);
  double before = 0.0;
  for (double g = -2e-3; g < 0.5; g += 1e-4) {
    const Dual<1> flow = local_round_plume_flow(Dual<1>::input(g, 0), 1.0);
    const double h = 1e-7;
    const double difference = (local_round_plume_flow(g + h, 1.0) - local_round_plume_flow(g - h, 1.0)) / (2.0 * h);
    ASSERT_NEAR(flow.grad[0], difference, 1e-4 * most) << g;
    ASSERT_GE(flow.value, before) << g;
    ASSERT_LE(flow.grad[0], most) << g;
    before = flow.value;
  }
  EXPECT_EQ(local_round_plume_flow(Dual<1>::input(0.0, 0), 1.0).grad[0], 0.0);
  EXPECT_NEAR(local_round_plume_flow(1e-9, 1.0), 0.0, 1e-9 * most);
}

TEST(RoundPlume, OfAWideSourceIsAsWideAsItThere) {
  const double area = 0.09, alpha = 0.1;
  const double radius = 1.2 * alpha * virtual_origin_m(area, alpha);
  EXPECT_NEAR(kPi * radius * radius, area, 1e-12);
  EXPECT_EQ(virtual_origin_m(0.0), 0.0);
}

// Linden, Lane-Serff & Smeed 1990: n equal plumes of one total carry n^(2/3) times the flow of one.
TEST(RoundPlume, SharedOutCarriesMore) {
  const double one = round_plume_flow(0.02, 1.5);
  EXPECT_NEAR(round_plume_flow(0.02, 1.5, 8) / one, 4.0, 1e-6);
  EXPECT_NEAR(8.0 * round_plume_flow(0.02 / 8.0, 1.5) / one, 4.0, 1e-6);
}

TEST(WallPlume, OfAnEvenWallCarriesLessThanAllItsHeatAtTheFloor) {
  const double height = 2.0, per_area = 0.01, alpha = 0.07;
  // Half a free plume of twice the heat: q = alpha^(2/3) B^(1/3) z.
  const double all_below = 0.5 * line_plume_flow(2.0 * per_area * height, height, alpha);
  const double even = wall_plume_flow(per_area, height, alpha);
  EXPECT_NEAR(even / all_below, 0.75 * std::cbrt(0.8), 1e-6);
}

// Linden, Lane-Serff & Smeed 1990, J. Fluid Mech. 212, 309, equation from memory, alpha = 0.10; 0.005.
TEST(InterfaceHeight, IsLindensByOpenness) {
  const double table[][2] = {{0.005, 0.397}, {0.01, 0.504}, {0.02, 0.627}, {0.05, 0.800}, {0.10, 0.906}};
  for (const auto& [openness, share] : table) {
    EXPECT_NEAR(interface_height_share(openness * 9.0, 3.0), share, 0.005) << openness;
    EXPECT_NEAR(interface_height_share(4.0 * openness * 9.0, 3.0, 4), share, 0.005) << openness;
  }
}

TEST(InterfaceHeight, GoesFromTheFloorToTheRoof) {
  EXPECT_EQ(interface_height_share(0.0, 3.0), 0.0);
  EXPECT_LT(interface_height_share(1e-8, 3.0), 0.01);
  EXPECT_GT(interface_height_share(1e4, 3.0), 0.9999);
  double before = 0.0;
  for (double area = 1e-3; area < 10.0; area *= 1.3) {
    const double share = interface_height_share(area, 3.0);
    EXPECT_GT(share, before);
    EXPECT_LT(share, 1.0);
    before = share;
  }
}

// What it follows from: the plume brings to the interface what leaves above it, whatever the heat; 1e-6 by softness.
TEST(InterfaceHeight, IsWhereThePlumeBringsWhatTheOpeningsDraw) {
  const double height = 3.0, area = effective_opening_m2(0.3, 0.2);
  const double interface = height * interface_height_share(area, height);
  for (double b : {0.002, 0.02, 0.2}) {
    const double flow = round_plume_flow(b, interface);
    EXPECT_NEAR(area * std::sqrt(b / flow * (height - interface)) / flow, 1.0, 1e-6) << b;
  }
}

// The stack flow of the same openings in series, whose own test holds it to the handbook.
TEST(EffectiveOpening, IsTheStandardsSeries) {
  const double area = effective_opening_m2(0.5, 0.3);
  const std::array openings{0.5, 0.3};
  const double contrast = kGravity * 5.0 / 303.15;
  EXPECT_NEAR(area * std::sqrt(contrast * 2.0), stack_flow(0.6, area_in_series_m2(openings), 2.0, 303.15, 298.15),
              1e-9);
  EXPECT_NEAR(effective_opening_m2(0.5, 0.3, 0.6, 0.4), effective_opening_m2(0.5, 0.2), 1e-12);
  EXPECT_EQ(effective_opening_m2(0.0, 0.3), 0.0);
  EXPECT_NEAR(effective_opening_m2(1e9, 0.3), std::sqrt(2.0) * 0.6 * 0.3, 1e-9);
}

}  // namespace
}  // namespace noonhouse
