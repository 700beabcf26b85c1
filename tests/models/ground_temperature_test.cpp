// SPDX-License-Identifier: Apache-2.0
#include "models/ground/ground_temperature.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "models/properties/constants.hpp"
#include "sim/core/tick.hpp"

namespace noonhouse {
namespace {

const UndisturbedGround kSite{285.15, 11.0, 30.0 * kSecondsPerDay, 0.6e-6};

// Damping depths of de Vries's diffusivities (0.19; 0.99; 0.10; 0.45; 0.12e-6 m2/s), worked out apart from this
// program: of a day 0.072; 0.165; 0.052; 0.111; 0.057 m and of a year 1.38; 3.15; 1.00; 2.13; 1.10 m. Tolerance 1 %.
TEST(DampingDepth, OfADayAndAYear) {
  const double rows[][3] = {{0.19e-6, 0.072, 1.38},
                            {0.99e-6, 0.165, 3.15},
                            {0.10e-6, 0.052, 1.00},
                            {0.45e-6, 0.111, 2.13},
                            {0.12e-6, 0.057, 1.10}};
  for (const auto& [diffusivity, day, year] : rows) {
    EXPECT_NEAR(damping_depth_m(diffusivity, kSecondsPerDay), day, 0.01 * day) << diffusivity;
    EXPECT_NEAR(damping_depth_m(diffusivity, kGroundYearS), year, 0.01 * year) << diffusivity;
  }
}

TEST(UndisturbedGround, IsColdestAtTheSurfaceWhenSaid) {
  EXPECT_NEAR(kSite.temperature_k(0.0, kSite.coldest_s), 285.15 - 11.0, 1e-9);
  EXPECT_NEAR(kSite.temperature_k(0.0, kSite.coldest_s + kGroundYearS / 2.0), 285.15 + 11.0, 1e-9);
  EXPECT_NEAR(kSite.temperature_k(0.0, kSite.coldest_s + kGroundYearS / 4.0), 285.15, 1e-9);
  EXPECT_NEAR(kSite.temperature_k(100.0, 0.0), 285.15, 1e-9) << "deep down it is the mean, always";
}

TEST(UndisturbedGround, IsTheSameEveryYear) {
  for (const double depth : {0.0, 0.7, 3.0})
    EXPECT_NEAR(kSite.temperature_k(depth, 1e6), kSite.temperature_k(depth, 1e6 + kGroundYearS), 1e-9);
}

// The law as printed, in days and metres squared a day, beside the one in seconds.
TEST(UndisturbedGround, IsThePrintedFormInDays) {
  const double alpha = 0.6e-6 * kSecondsPerDay;
  for (const double z : {0.0, 0.5, 2.0, 5.0})
    for (const double t : {0.0, 45.0, 170.0, 300.0}) {
      const double printed =
          285.15 - 11.0 * std::exp(-z * std::sqrt(kPi / (365.0 * alpha))) *
                       std::cos(2.0 * kPi / 365.0 * (t - 30.0 - z / 2.0 * std::sqrt(365.0 / (kPi * alpha))));
      EXPECT_NEAR(kSite.temperature_k(z, t * kSecondsPerDay), printed, 1e-9) << z << ", " << t;
      EXPECT_NEAR(kSite.lag_s(z) / kSecondsPerDay, z / 2.0 * std::sqrt(365.0 / (kPi * alpha)), 1e-9);
    }
}

TEST(UndisturbedGround, DecaysAndLagsByItsDampingDepth) {
  const double d = damping_depth_m(kSite.diffusivity_m2_s, kGroundYearS);
  const double coldest = kSite.coldest_s + kSite.lag_s(d);
  EXPECT_NEAR(285.15 - kSite.temperature_k(d, coldest), 11.0 * std::exp(-1.0), 1e-9);
  EXPECT_GT(kSite.temperature_k(d, coldest - kSecondsPerDay), kSite.temperature_k(d, coldest));
  EXPECT_GT(kSite.temperature_k(d, coldest + kSecondsPerDay), kSite.temperature_k(d, coldest));
  EXPECT_NEAR(kSite.lag_s(d), kGroundYearS / (2.0 * kPi), 1.0) << "1 rad, 58 days";
  EXPECT_NEAR(kSite.lag_s(kPi * d), kGroundYearS / 2.0, 1.0) << "winter meets summer at pi damping depths";
}

// dT/dt = alpha d2T/dz2 by central differences; their error falls as the square of the step, and at these it is below
// 1e-5 of the largest rate.
TEST(UndisturbedGround, ObeysTheEquationOfHeat) {
  const double hour = 3600.0, dz = 0.005;
  const double fastest = 11.0 * 2.0 * kPi / kGroundYearS;
  for (const double z : {0.1, 0.9, 2.5, 6.0})
    for (double t = 0.0; t < kGroundYearS; t += kGroundYearS / 11.0) {
      const double rate = (kSite.temperature_k(z, t + hour) - kSite.temperature_k(z, t - hour)) / (2.0 * hour);
      const double bend =
          (kSite.temperature_k(z + dz, t) - 2.0 * kSite.temperature_k(z, t) + kSite.temperature_k(z - dz, t)) /
          (dz * dz);
      ASSERT_NEAR(rate, kSite.diffusivity_m2_s * bend, 1e-5 * fastest) << z << ", " << t;
    }
}

TEST(UndisturbedGround, SendsHeatDownTheGradient) {
  const double k = 1.2, dz = 1e-4;
  for (const double z : {0.01, 0.5, 3.0})
    for (double t = 0.0; t < kGroundYearS; t += kGroundYearS / 9.0) {
      const double slope = (kSite.temperature_k(z + dz, t) - kSite.temperature_k(z - dz, t)) / (2.0 * dz);
      ASSERT_NEAR(kSite.flux_down_w_m2(z, t, k), -k * slope, 1e-6);
    }
  EXPECT_LT(kSite.flux_down_w_m2(0.0, kSite.coldest_s, k), 0.0) << "in the cold the ground gives";
  EXPECT_GT(kSite.flux_down_w_m2(0.0, kSite.coldest_s + kGroundYearS / 2.0, k), 0.0);
}

// A year's wave gives back what it took; at the surface it peaks an eighth of a year before the temperature.
TEST(UndisturbedGround, GivesBackWithinAYearWhatItTook) {
  double sum = 0.0, most = 0.0, when = 0.0;
  for (int day = 0; day < 365; ++day) {
    const double flux = kSite.flux_down_w_m2(0.0, (day + 0.5) * kSecondsPerDay, 1.2);
    sum += flux;
    if (flux > most) {
      most = flux;
      when = (day + 0.5) * kSecondsPerDay;
    }
  }
  EXPECT_NEAR(sum, 0.0, 1e-9);
  EXPECT_NEAR(when, kSite.coldest_s + kGroundYearS * (0.5 - 0.125), kSecondsPerDay);
}

/// A slab of one metre of perimeter ratio P/A [1/m], walls 0.3 m, bare, on clay.
GroundSlab clay_slab(double perimeter_by_area) { return {100.0, 100.0 * perimeter_by_area, 0.3, 0.0, 1.5}; }

// Transmittance of uninsulated solid floors on clay, walls 0.3 m, by perimeter over area: the table worked out by
// EN ISO 13370 in the building regulations of England, Approved Document L1 (2002), Table C1 (from memory). Half the
// last printed digit.
TEST(GroundSlab, HasTheTabulatedTransmittance) {
  const double rows[][2] = {{0.05, 0.13}, {0.10, 0.22}, {0.15, 0.30}, {0.20, 0.37}, {0.25, 0.44},
                            {0.30, 0.49}, {0.35, 0.55}, {0.40, 0.60}, {0.45, 0.65}, {0.50, 0.70},
                            {0.55, 0.74}, {0.60, 0.78}, {0.65, 0.82}, {0.70, 0.86}, {0.75, 0.89},
                            {0.80, 0.93}, {0.85, 0.96}, {0.90, 0.99}, {0.95, 1.02}, {1.00, 1.05}};
  for (const auto& [ratio, transmittance] : rows)
    EXPECT_NEAR(slab_on_ground_transmittance_w_m2_k(clay_slab(ratio)), transmittance, 0.005) << ratio;
}

// With much insulation the ground counts for nothing: U goes to 1 / R_f. The two forms of the law meet within 1 %.
TEST(GroundSlab, IsItsInsulationAloneInTheLimit) {
  GroundSlab slab = clay_slab(0.5);
  slab.floor_resistance_m2_k_w = 1000.0;
  EXPECT_NEAR(slab_on_ground_transmittance_w_m2_k(slab) * 1000.0, 1.0, 0.01);
  const double meeting = (4.0 - 0.3) / 1.5 - 0.21;  // d_t = B' = 4 m
  slab.floor_resistance_m2_k_w = meeting * (1.0 - 1e-9);
  const double below = slab_on_ground_transmittance_w_m2_k(slab);
  slab.floor_resistance_m2_k_w = meeting * (1.0 + 1e-9);
  EXPECT_NEAR(slab_on_ground_transmittance_w_m2_k(slab) / below, 1.0, 0.01);
}

TEST(GroundSlab, LosesAtItsEdgeWhatItLosesInAll) {
  const GroundSlab slab{12.0, 14.0, 0.05, 0.0, 2.0};
  EXPECT_NEAR(slab_edge_loss_w_m_k(slab) * 14.0, slab_on_ground_transmittance_w_m2_k(slab) * 12.0, 1e-12);
  GroundSlab wide = slab;
  wide.area_m2 *= 4.0;
  wide.perimeter_m *= 2.0;
  EXPECT_LT(slab_edge_loss_w_m_k(wide), 2.0 * slab_edge_loss_w_m_k(slab)) << "the middle loses less";
  EXPECT_GT(slab_edge_loss_w_m_k(wide), slab_edge_loss_w_m_k(slab));
  GroundSlab warm = slab;
  warm.floor_resistance_m2_k_w = 1.0;
  EXPECT_LT(slab_edge_loss_w_m_k(warm), slab_edge_loss_w_m_k(slab));
}

TEST(GroundSlabDeathTest, RefusesASlabWithoutSize) {
  EXPECT_DEATH(slab_on_ground_transmittance_w_m2_k({0.0, 10.0}), "broken invariant");
}

}  // namespace
}  // namespace noonhouse
