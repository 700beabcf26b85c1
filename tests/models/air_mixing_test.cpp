// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "models/air/mixing.hpp"
#include "sim/core/dual.hpp"

namespace noonhouse {
namespace {

constexpr double kPerKelvinPerMetre = kGravity / 300.0;  // N^2 of 1 K/m at 300 K

TEST(MixingLength, IsThatOfTheNearerBoundAndCapped) {
  EXPECT_EQ(mixing_length_m(0.0, 3.0, 1.0), 0.0);
  EXPECT_EQ(mixing_length_m(3.0, 3.0, 1.0), 0.0);
  EXPECT_NEAR(mixing_length_m(0.5, 3.0, 1.0), 0.2, 1e-15);
  EXPECT_NEAR(mixing_length_m(2.5, 3.0, 1.0), 0.2, 1e-15);
  EXPECT_EQ(mixing_length_m(1.5, 3.0, 0.3), 0.3);
  EXPECT_EQ(mixing_length_m(3.2, 3.0, 0.3), 0.0);
}

TEST(Stratification, IsOneKelvinsAndTurnsWithTheLayers) {
  EXPECT_NEAR(stratification_1_s2(299.5, 0.0, 300.5, 0.0, 1.0), kPerKelvinPerMetre, 1e-12);
  EXPECT_NEAR(stratification_1_s2(299.0, 0.0, 301.0, 0.0, 2.0), kPerKelvinPerMetre, 1e-12);
  EXPECT_EQ(stratification_1_s2(301.0, 0.01, 299.0, 0.02, 1.3), -stratification_1_s2(299.0, 0.02, 301.0, 0.01, 1.3));
  EXPECT_GT(stratification_1_s2(300.0, 0.005, 300.0, 0.015, 1.0), 0.0) << "moist air above is lighter";
}

TEST(Diffusivity, IsStillAirsWithoutStirringOrWarmthBelow) {
  const StillAirDiffusivity air{0.4};
  EXPECT_EQ(air.diffusivity_m2_s(0.0, 0.0), 2.2e-5);
  EXPECT_EQ(air.diffusivity_m2_s(5.0 * kPerKelvinPerMetre, 0.0), 2.2e-5);
  EXPECT_EQ((StillAirDiffusivity{}.diffusivity_m2_s(-1.0, 1.0)), 2.2e-5) << "at the floor itself";
}

// l^2 sqrt(-N^2), short by 0.75 (d / N^2)^2 at most.
TEST(Diffusivity, FallsFreelyOverAMixingLengthWhereWarmAirLiesBelow) {
  const StillAirDiffusivity air{0.4, 0.0, 1.0};
  for (double kelvin_m : {0.1, 1.0, 20.0}) {
    const double free_fall = 0.16 * std::sqrt(kelvin_m * kPerKelvinPerMetre);
    const double ratio = StillAirDiffusivity::kStratificationSoftness / (kelvin_m * kPerKelvinPerMetre);
    EXPECT_NEAR(air.diffusivity_m2_s(-kelvin_m * kPerKelvinPerMetre, 0.0) / free_fall, 1.0, 0.75 * ratio * ratio);
  }
}

// Priestley 1954, free convection over open land: K = h z^2 sqrt(-N^2), h 0.9 to 1.4 (from memory).
TEST(Diffusivity, IsThatOfFreeConvectionOverOpenLand) {
  const StillAirDiffusivity air{mixing_length_m(1.5, 1000.0, 1000.0)};
  const double h = air.diffusivity_m2_s(-kPerKelvinPerMetre, 0.0) / (1.5 * 1.5 * std::sqrt(kPerKelvinPerMetre));
  EXPECT_GT(h, 0.9);
  EXPECT_LT(h, 1.4);
}

// (1 + 10/3 Ri)^(-3/2) of Munk & Anderson 1948 (from memory) in l u_t: Ri = 0.3 makes 2^(-3/2), Ri = 2.4 makes 1/27.
TEST(Diffusivity, OfStirringIsDampedByLayering) {
  const StillAirDiffusivity air{0.3, 0.0};
  const double speed = 0.2, ri_of_one = speed * speed / (0.3 * 0.3);
  EXPECT_NEAR(air.diffusivity_m2_s(0.0, speed), 0.06, 1e-6);
  EXPECT_NEAR(air.diffusivity_m2_s(0.3 * ri_of_one, speed), 0.06 / std::sqrt(8.0), 1e-6);
  EXPECT_NEAR(air.diffusivity_m2_s(2.4 * ri_of_one, speed), 0.06 / 27.0, 1e-6);
  EXPECT_LT(air.diffusivity_m2_s(1e4, speed), 1e-5);
}

TEST(Diffusivity, NeverRisesWithLayeringNorFallsWithStirring) {
  const StillAirDiffusivity air{0.35};
  for (double speed : {0.0, 1e-4, 1e-3, 0.02, 0.3})
    for (double n2 = -0.5; n2 < 0.5; n2 += 1e-3) {
      ASSERT_GE(air.diffusivity_m2_s(n2, speed), air.diffusivity_m2_s(n2 + 1e-3, speed)) << n2 << ' ' << speed;
      ASSERT_LE(air.diffusivity_m2_s(n2, speed), air.diffusivity_m2_s(n2, 1.1 * speed + 1e-5)) << n2 << ' ' << speed;
      ASSERT_GE(air.diffusivity_m2_s(n2, speed), air.still_m2_s);
    }
}

// Slopes exist and agree with differences on both sides of zero layering and at zero stirring.
TEST(Diffusivity, IsSmoothAtZero) {
  const StillAirDiffusivity air{0.35};
  using D = Dual<2>;
  for (double n2 : {-1e-2, -1e-4, -1e-6, 0.0, 1e-6, 1e-4, 1e-2})
    for (double speed : {1e-5, 1e-3, 0.1}) {
      const D k = air.diffusivity_m2_s(D::input(n2, 0), D::input(speed, 1));
      const auto value = [&](double dn, double du) { return air.diffusivity_m2_s(n2 + dn, speed + du); };
      EXPECT_NEAR(k.grad[0], (value(1e-10, 0.0) - value(-1e-10, 0.0)) / 2e-10, 1e-3 * std::abs(k.grad[0]) + 1e-3) << n2;
      EXPECT_NEAR(k.grad[1], (value(0.0, 1e-8) - value(0.0, -1e-8)) / 2e-8, 1e-3 * std::abs(k.grad[1]) + 1e-6) << n2;
    }
  const D still = air.diffusivity_m2_s(D::input(0.0, 0), D::input(0.0, 1));
  EXPECT_EQ(still.grad[0], 0.0);
  EXPECT_EQ(still.grad[1], 0.0);
}

/// Temperature of the lower layer for which a law carries a flux density [W/m2] of dry air upwards to 300 K: bisection.
double lower_for_flux_k(const LayerExchange& law, double flux_w_m2, double stirring_m_s) {
  double cold = 280.0, hot = 600.0;
  for (int k = 0; k < 60; ++k) {
    const double lower = 0.5 * (cold + hot);
    std::array<double, 2> q{};
    law.flux(std::array{lower, 0.0, 300.0, 0.0, stirring_m_s}, q);
    (q[1] < flux_w_m2 * law.area_m2 ? cold : hot) = lower;
  }
  return 0.5 * (cold + hot);
}

/// Difference of temperature [K] across 0.25 to 1.25 m over the floor, cut into n layers, for a flux upwards.
double difference_k(int n, double flux_w_m2, double stirring_m_s) {
  double sum = 0.0;
  const double spacing = 1.0 / n;
  for (int k = 0; k < n; ++k) {
    const double section = 0.25 + (k + 0.5) * spacing;
    const LayerExchange law{1.0, spacing, 1.2, mixing_length_m(section, 10.0, 10.0), 0.0, 1.0};
    sum += lower_for_flux_k(law, flux_w_m2, stirring_m_s) - 300.0;
  }
  return sum;
}

// A constant heat through unstable air: F = rho c_p l^2 sqrt(g/T) |dT/dz|^(3/2) with l = 0.4 z has the profile
// (F / (0.16 rho c_p))^(2/3) (T/g)^(1/3) 3 (z_1^(-1/3) - z_2^(-1/3)), the -4/3 power of Priestley's free convection.
TEST(LayerExchange, ConvergesToTheProfileOfFreeConvectionAtSecondOrder) {
  const double flux = 100.0, per_kelvin = 1.2 * kDryAirHeat;
  const double exact = std::pow(flux / (0.16 * per_kelvin), 2.0 / 3.0) * std::cbrt(300.0 / kGravity) * 3.0 *
                       (std::cbrt(1.0 / 0.25) - std::cbrt(1.0 / 1.25));
  const double coarse = difference_k(4, flux, 0.0) - exact, fine = difference_k(8, flux, 0.0) - exact,
               finer = difference_k(64, flux, 0.0) - exact;
  EXPECT_NEAR(coarse / fine, 4.0, 0.5);
  // What is left at 64 layers: the mean of two layers instead of 300 K in N^2 (T rises by 1 %), and the softness.
  EXPECT_NEAR(finer / exact, 0.0, 0.003);
}

// In stably layered, stirred air the flux downwards comes to one value as well: 0.2 m/s, some K/m.
TEST(LayerExchange, ConvergesInLayeredAir) {
  const auto difference = [](int n) { return -difference_k(n, -2.0, 0.2); };
  const double a = difference(8), b = difference(16), c = difference(32);
  EXPECT_GT(a, 0.01);
  EXPECT_NEAR((a - b) / (b - c), 4.0, 0.5);
}

TEST(LayerExchange, MovesAllAirsAtTheDiffusivityOverTheSpacing) {
  const LayerExchange law{20.0, 0.8, 1.15, 0.3};
  std::array<double, 2> q{};
  law.flux(std::array{300.0, 0.011, 300.0, 0.010, 0.1}, q);
  const double n2 = stratification_1_s2(300.0, 0.011, 300.0, 0.010, 0.8);
  const double velocity = StillAirDiffusivity{0.3}.diffusivity_m2_s(n2, 0.1) / 0.8;
  EXPECT_NEAR(q[0], 1.15 * 20.0 * velocity * 0.001, 1e-12);
  EXPECT_NEAR(q[1], q[0] * vapour_enthalpy(300.0), 1e-6);
}

}  // namespace
}  // namespace noonhouse
