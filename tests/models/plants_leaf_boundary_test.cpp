// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "models/plants/leaf_boundary.hpp"
#include "models/properties/constants.hpp"

namespace noonhouse {
namespace {

// Leuning et al. 1995, Plant Cell Environ. 18, 1183: 0.003 sqrt(u / w) is 0.019926 m/s for one side of a leaf of
// 0.068 m in 3 m/s.
TEST(LeafBoundary, IsAsPublished) { EXPECT_NEAR(leaf_conductance_m_s(3.0, 0.068), 0.019926, 1e-5); }

TEST(LeafBoundary, DoublesInFourfoldWindAndHalvesOnAFourfoldLeaf) {
  const double g = leaf_conductance_m_s(kAirSpeedAtRest, 0.05);
  EXPECT_NEAR(leaf_conductance_m_s(4.0 * kAirSpeedAtRest, 0.05), 2.0 * g, 1e-15);
  EXPECT_NEAR(leaf_conductance_m_s(kAirSpeedAtRest, 0.2), 0.5 * g, 1e-15);
  EXPECT_EQ(leaf_conductance_m_s(0.0, 0.05), 0.0);
}

constexpr double kDensity = 1.15, kAirK = 300.0;

TissueFilm leaf(double width_m) { return tissue_film(width_m, kDensity, kAirK, kStandardPressure); }

// Tissue as warm as the air has no free convection but for the rounding within 0.05 K of it.
TEST(TissueFilm, IsTheForcedLayerOfALeafWhereTissueIsAsWarmAsAir) {
  for (const double speed : {0.3, 1.0, 3.0}) {
    const double expected = kDensity * kDryAirHeat * leaf_conductance_m_s(std::hypot(kAirSpeedAtRest, speed), 0.068);
    EXPECT_NEAR(leaf(0.068).at(0.0, speed, 0.0), expected, 2e-3 * expected) << speed;
  }
}

TEST(TissueFilm, IsFreeConvectionInStillAir) {
  TissueFilm film = leaf(0.068);
  film.rest_m_s = 0.0;
  const SurfaceFilm upright = surface_film(kPi / 2.0, 0.068, 0.0, kAirK, kStandardPressure);
  for (const double warmer_k : {-8.0, -1.0, 1.0, 8.0})
    EXPECT_NEAR(film.at(warmer_k, 0.0, 0.0), upright.at(warmer_k), 1e-12) << warmer_k;
  // 1.42 (8 K / 0.068 m)^(1/4) = 4.68 W/(m2 K): the short form for upright plates in air near 300 K.
  // [McAdams 1954, Heat Transmission, 3rd ed., ch. 7; from memory] The property tables' spread: 10 %.
  EXPECT_NEAR(film.at(8.0, 0.0, 0.0), 4.68, 0.47);
}

TEST(TissueFilm, AddsFreeAndForcedByTheirCubes) {
  TissueFilm film = leaf(0.05);
  film.rest_m_s = 0.0;
  const double free = film.at(10.0, 0.0, 0.0);
  const double forced = kDensity * kDryAirHeat * leaf_conductance_m_s(0.4, 0.05);
  EXPECT_NEAR(std::pow(film.at(10.0, 0.4, 0.0), 3), std::pow(free, 3) + std::pow(forced, 3), 1e-9);
}

TEST(TissueFilm, AddsSpeedsBySquaresWhicheverTheyAre) {
  TissueFilm film = leaf(0.05);
  film.rest_m_s = 0.0;
  const double five = film.at(2.0, 0.5, 0.0);
  EXPECT_NEAR(film.at(2.0, 0.0, 0.5), five, 1e-12);
  EXPECT_NEAR(film.at(2.0, 0.3, 0.4), five, 1e-12) << "3, 4, 5";
  film.rest_m_s = 0.3;
  EXPECT_NEAR(film.at(2.0, 0.4, 0.0), five, 1e-12) << "so does the air of a house at rest";
  EXPECT_NEAR(film.at(2.0, -0.4, 0.0), five, 1e-12) << "either way";
}

}  // namespace
}  // namespace noonhouse
