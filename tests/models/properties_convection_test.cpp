// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>

#include "models/properties/constants.hpp"
#include "models/properties/convection.hpp"
#include "models/properties/sky.hpp"

namespace noonhouse {
namespace {

constexpr double kFilmK = 303.15;  // surface 45 degC, air 15 degC
constexpr double kDuctRise = 30.0;

// Incropera & DeWitt, Example 9.3: a duct 0.75 m wide and 0.3 m high, 45 degC in air of 15 degC at 1 atm. Top 5.47,
// underside 2.07, sides 4.23 W/(m2 K). Tolerance 1.5 %: the book's properties are rounded (nu 16.2e-6, alpha 22.9e-6).
TEST(FreeConvection, IsTheWorkedDuct) {
  // The book's own properties are those of its Table A.4, which is of 1 bar (see the test of air transport).
  const double half = 0.375, height = 0.3, pressure = 1e5;
  const double lying = rayleigh_number(kDuctRise, half, kFilmK, pressure);
  const double side = rayleigh_number(kDuctRise, height, kFilmK, pressure);
  EXPECT_NEAR(coefficient_from_nusselt(horizontal_plate_unstable_nusselt(lying), half, kFilmK), 5.47, 0.015 * 5.47);
  EXPECT_NEAR(coefficient_from_nusselt(horizontal_plate_stable_nusselt(lying), half, kFilmK), 2.07, 0.015 * 2.07);
  EXPECT_NEAR(coefficient_from_nusselt(vertical_plate_laminar_nusselt(side, 0.71), height, kFilmK), 4.23, 0.015 * 4.23);
}

// Incropera & DeWitt, Example 9.2 (from memory): a fire screen of Ra 1.813e9 and Pr 0.690 has Nu 147. Half a digit.
TEST(FreeConvection, IsTheWorkedScreen) { EXPECT_NEAR(vertical_plate_nusselt(1.813e9, 0.690), 147.0, 0.5); }

// Incropera & DeWitt, Example 9.4 (from memory): a pipe of Ra 5.073e6 and Pr 0.697 has Nu 23.3. The printed value comes
// out when the bracket, 1.206, is rounded to 1.20 on the way; that moves Nu by 1 %, which is the tolerance.
TEST(FreeConvection, IsTheWorkedPipe) { EXPECT_NEAR(horizontal_cylinder_nusselt(5.073e6, 0.697), 23.3, 0.01 * 23.3); }

TEST(FreeConvection, IsConductionAtRest) {
  EXPECT_EQ(rayleigh_number(0.0, 0.3, 300.0, 1e5), 0.0);
  EXPECT_NEAR(vertical_plate_nusselt(0.0, 0.71), 0.825 * 0.825, 1e-12);
  EXPECT_EQ(vertical_plate_laminar_nusselt(0.0, 0.71), 0.68);
  EXPECT_NEAR(horizontal_cylinder_nusselt(0.0, 0.71), 0.36, 1e-12);
  EXPECT_EQ(horizontal_plate_unstable_nusselt(0.0), 0.0);
  EXPECT_EQ(horizontal_plate_stable_nusselt(0.0), 0.0);
}

// A difference has the same Rayleigh number either way; three times the length has 27 times, thin air less by p^2.
TEST(FreeConvection, FollowsTheGroupsOfTheRayleighNumber) {
  const double ra = rayleigh_number(5.0, 1.0, 300.0, 1e5);
  EXPECT_EQ(rayleigh_number(-5.0, 1.0, 300.0, 1e5), ra);
  EXPECT_NEAR(rayleigh_number(5.0, 3.0, 300.0, 1e5) / ra, 27.0, 1e-9);
  EXPECT_NEAR(rayleigh_number(5.0, 1.0, 300.0, 0.8e5) / ra, 0.64, 1e-12);
}

// For a very high Ra the full law goes as the cube root; with the two limits of the bracket, Pr to infinity and 0.71:
// 0.387^2 = 0.1498 and 0.1498 / 1.8126^(16/27).
TEST(FreeConvection, GoesByTheCubeRootWhenTurbulent) {
  EXPECT_NEAR(vertical_plate_nusselt(1e30, 1e12) / 1e10, 0.387 * 0.387, 1e-4);
  const double bracket = 1.0 + std::exp(9.0 / 16.0 * std::log(0.492 / 0.71));
  EXPECT_NEAR(vertical_plate_nusselt(1e30, 0.71) / 1e10, 0.387 * 0.387 * std::exp(-16.0 / 27.0 * std::log(bracket)),
              1e-4);
  EXPECT_NEAR(vertical_plate_laminar_nusselt(8.1e9, 0.71) / vertical_plate_laminar_nusselt(1e8, 0.71), 3.0, 0.03)
      << "the laminar law by the fourth root, but for its conduction";
}

TEST(FreeConvection, FallsOnAnInclinedPlateByItsShareOfGravity) {
  const double upright = vertical_plate_laminar_nusselt(1e8, 0.71);
  EXPECT_EQ(inclined_plate_nusselt(1e8, 0.71, 0.0), upright);
  EXPECT_NEAR(inclined_plate_nusselt(1e8, 0.71, kPi / 3.0) - 0.68, (upright - 0.68) * std::exp(-0.25 * std::log(2.0)),
              1e-9);
  EXPECT_NEAR(inclined_plate_nusselt(1e8, 0.71, kPi / 2.0), 0.68, 0.01) << "nothing drives along a lying plate";
}

// The two laws of the plate that faces up: 32.3 against 30.4 where they meet, printed apart by 6 %.
TEST(FreeConvection, KeepsThePublishedMeetingOfTwoLaws) {
  const double below = horizontal_plate_unstable_nusselt(1e7 * (1.0 - 1e-12));
  const double above = horizontal_plate_unstable_nusselt(1e7);
  EXPECT_NEAR(below, 30.4, 0.05);
  EXPECT_NEAR(above, 32.3, 0.05);
}

// Incropera & DeWitt, Example 7.1 (from memory): Re 9597, Pr 0.687, Nu 57.4. Half a digit.
TEST(ForcedConvection, IsTheWorkedPlate) { EXPECT_NEAR(flat_plate_nusselt(9597.0, 0.687), 57.4, 0.05); }

TEST(ForcedConvection, JoinsLaminarAndTurbulentPlates) {
  const double below = flat_plate_nusselt(5e5 * (1.0 - 1e-9), 0.71), above = flat_plate_nusselt(5e5, 0.71);
  EXPECT_NEAR(above / below, 1.0, 1e-3);
  EXPECT_EQ(flat_plate_nusselt(0.0, 0.71), 0.0);
  EXPECT_LT(flat_plate_nusselt(2e6, 0.71), flat_plate_turbulent_nusselt(2e6, 0.71)) << "its front part is laminar";
  EXPECT_NEAR(flat_plate_nusselt(1e8, 0.71) / flat_plate_turbulent_nusselt(1e8, 0.71), 1.0, 0.01);
  EXPECT_NEAR(flat_plate_turbulent_nusselt(3.2e6, 1.0) / flat_plate_turbulent_nusselt(1e5, 1.0), 16.0, 1e-9);
}

// Churchill & Bernstein 1977: Re 4000, Pr 0.71 gives Nu 32.7 (worked out apart from this program), 0.1. Incropera &
// DeWitt, Example 7.4 (from memory): 12.7 mm in 10 m/s, Re 6071, Pr 0.70, Nu 40.6, half a digit.
TEST(ForcedConvection, IsTheWorkedCylinder) {
  EXPECT_NEAR(cylinder_crossflow_nusselt(4000.0, 0.71), 32.7, 0.1);
  EXPECT_NEAR(cylinder_crossflow_nusselt(6071.0, 0.70), 40.6, 0.05);
  EXPECT_EQ(cylinder_crossflow_nusselt(0.0, 0.71), 0.3);
}

// Air of 350 K (Incropera & DeWitt, Table A.4: nu 20.92e-6 m2/s) past that cylinder; 2 % is the viscosity law's own.
TEST(ForcedConvection, HasTheReynoldsNumberOfTheWorkedCylinder) {
  EXPECT_NEAR(reynolds_number(10.0, 0.0127, 350.0, 1e5), 6071.0, 0.02 * 6071.0);
}

// Ranz & Marshall 1952: 2 at rest; Re 1.6, Pr 0.71 gives 2.68 (worked out apart from this program). 0.01.
TEST(ForcedConvection, IsASphere) {
  EXPECT_EQ(sphere_nusselt(0.0, 0.71), 2.0);
  EXPECT_NEAR(sphere_nusselt(1.6, 0.71), 2.68, 0.01);
}

TEST(MixedConvection, IsTheLargerFarApartAndMoreThanBothBetween) {
  EXPECT_NEAR(mixed_nusselt(100.0, 1.0), 100.0, 1e-3);
  EXPECT_NEAR(mixed_nusselt(0.0, 7.0), 7.0, 1e-12);
  EXPECT_NEAR(mixed_nusselt(3.0, 4.0), std::exp(std::log(91.0) / 3.0), 1e-12);
  EXPECT_EQ(mixed_nusselt(3.0, 4.0), mixed_nusselt(4.0, 3.0));
}

// McAdams 1954 (with longwave, to 5 m/s) and Watmuff, Charters & Proctor 1977 (from memory); exact.
TEST(WindConvection, IsAsPublished) {
  const double rows[][3] = {{0.0, 5.7, 2.8}, {1.0, 9.5, 5.8}, {3.0, 17.1, 11.8}, {5.0, 24.7, 17.8}};
  for (const auto& [speed, mcadams, watmuff] : rows) {
    EXPECT_NEAR(mcadams_wind_coefficient(speed), mcadams, 1e-12) << speed;
    EXPECT_NEAR(watmuff_wind_coefficient(speed), watmuff, 1e-12) << speed;
  }
}

// EN ISO 6946:2017, Table 7 and annex C (from memory): the printed resistances follow from the printed coefficients as
// R = 1 / (h_c + 0.9 * 4 sigma T^3), inside at 20 degC, outside at 10 degC in 4 m/s; half the last printed digit.
TEST(Iso6946, DerivesItsOwnResistances) {
  EXPECT_EQ(iso6946_inside_resistance(HeatFlow::up), 0.10);
  EXPECT_EQ(iso6946_inside_resistance(HeatFlow::horizontal), 0.13);
  EXPECT_EQ(iso6946_inside_resistance(HeatFlow::down), 0.17);
  EXPECT_EQ(kIso6946OutsideResistance, 0.04);
  for (const HeatFlow flow : {HeatFlow::up, HeatFlow::horizontal, HeatFlow::down}) {
    const double film = iso6946_inside_coefficient(flow) + 0.9 * radiative_coefficient(293.15);
    EXPECT_NEAR(1.0 / film, iso6946_inside_resistance(flow), 0.005);
  }
  EXPECT_EQ(iso6946_inside_coefficient(HeatFlow::up), 5.0);
  EXPECT_EQ(iso6946_inside_coefficient(HeatFlow::horizontal), 2.5);
  EXPECT_EQ(iso6946_inside_coefficient(HeatFlow::down), 0.7);
  EXPECT_EQ(iso6946_outside_coefficient(0.0), 4.0);
  EXPECT_EQ(iso6946_outside_coefficient(4.0), 20.0);
  EXPECT_NEAR(1.0 / (iso6946_outside_coefficient(4.0) + 0.9 * radiative_coefficient(283.15)), 0.04, 0.005);
}

}  // namespace
}  // namespace noonhouse
