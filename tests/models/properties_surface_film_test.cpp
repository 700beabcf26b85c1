// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "models/properties/atmosphere.hpp"
#include "models/properties/constants.hpp"
#include "models/properties/convection.hpp"
#include "models/properties/surface_film.hpp"
#include "sim/core/dual.hpp"

namespace noonhouse {
namespace {

constexpr double kUp = 0.0, kUpright = kPi / 2.0, kDown = kPi;
constexpr double kHundredKilopascal = 1e5, kAirK = 300.0;

/// Films that stand for all: each tilt, small and large, still and draughty.
std::vector<SurfaceFilm> all_films() {
  std::vector<SurfaceFilm> films;
  for (const double tilt : {kUp, 0.02, 0.4, kPi / 4.0, 1.3, kUpright, 2.0, 3.0, kDown})
    for (const double length : {0.05, 0.5, 3.0})
      for (const double speed : {0.0, 0.1, 1.0})
        films.push_back(surface_film(tilt, length, speed, kAirK, kHundredKilopascal));
  return films;
}

// Incropera & DeWitt, Example 9.3: a duct 0.75 m wide and 0.3 m high, 45 degC in air of 15 degC at 1 atm. Top 5.47,
// underside 2.07, sides 4.23 W/(m2 K). Tolerance 1.5 % for the book's rounded properties (which are those of 1 bar); at
// the sides the film also leaves out the conduction of 0.68 in a Nusselt number of 47.8, which is 1.4 % more.
TEST(SurfaceFilm, IsTheWorkedDuct) {
  const double film_k = 303.15, rise = 30.0;
  EXPECT_NEAR(surface_film(kUp, 0.375, 0.0, film_k, kHundredKilopascal).at(rise), 5.47, 0.015 * 5.47);
  EXPECT_NEAR(surface_film(kDown, 0.375, 0.0, film_k, kHundredKilopascal).at(rise), 2.07, 0.015 * 2.07);
  EXPECT_NEAR(surface_film(kUpright, 0.3, 0.0, film_k, kHundredKilopascal).at(rise), 4.23, 0.029 * 4.23);
}

// Away from the rounded meeting of two laws the film is the Nusselt number's own, but for the upright plate's 0.68.
TEST(SurfaceFilm, IsThePublishedLaws) {
  const auto coefficient = [](double nusselt, double length) {
    return coefficient_from_nusselt(nusselt, length, kAirK);
  };
  for (const double length : {0.03, 0.1, 1.0, 3.0})
    for (const double difference : {0.3, 3.0, 30.0}) {
      const double ra = rayleigh_number(difference, length, kAirK, kHundredKilopascal);
      const SurfaceFilm up = surface_film(kUp, length, 0.0, kAirK, kHundredKilopascal);
      const SurfaceFilm down = surface_film(kDown, length, 0.0, kAirK, kHundredKilopascal);
      const double stable = coefficient(horizontal_plate_stable_nusselt(ra), length);
      EXPECT_NEAR(up.at(-difference), stable, 1e-9 * stable);
      EXPECT_NEAR(down.at(difference), stable, 1e-3 * stable) << "sin(pi) is not quite 0";
      if (ra < 1e6 || ra > 2e7) {
        const double unstable = coefficient(horizontal_plate_unstable_nusselt(ra), length);
        EXPECT_NEAR(up.at(difference), unstable, 1e-9 * unstable);
        EXPECT_NEAR(down.at(-difference), unstable, 1e-9 * unstable);
      }
      if (ra < 1e8) {
        const double upright = coefficient(vertical_plate_laminar_nusselt(ra, 0.7074) - 0.68, length);
        EXPECT_NEAR(surface_film(kUpright, length, 0.0, kAirK, kHundredKilopascal).at(difference), upright,
                    1e-3 * upright);
      }
    }
}

/// The law of Raithby & Hollands 1998, Handbook of Heat Transfer, 3rd ed., ch. 4, for an upright plate in air (from
/// memory): laminar 2 / ln(1 + 2 / (0.515 Ra^(1/4))), turbulent 0.103 Ra^(1/3) / (1 + 1.4e9 Pr / Ra), joined by sixth
/// powers.
double handbook_upright_nusselt(double rayleigh) {
  const double laminar = 2.0 / std::log(1.0 + 2.0 / (0.515 * std::pow(rayleigh, 0.25)));
  const double turbulent = 0.103 * std::cbrt(rayleigh) / (1.0 + 1.4e9 * 0.71 / rayleigh);
  return std::pow(std::pow(laminar, 6.0) + std::pow(turbulent, 6.0), 1.0 / 6.0);
}

// Two published laws for the upright plate over all Ra differ by up to 30 % about Ra 1e9. The film, cheaper than both,
// must lie between them: the upper is Churchill & Chu's; below the lower it may fall by what it leaves out, conduction
// (1 in Nu) and the third digit of 0.103 (3 %).
TEST(SurfaceFilm, LiesBetweenTwoLawsOfTheUprightPlate) {
  for (const double length : {0.05, 0.1, 0.3, 1.0, 2.5, 4.0})
    for (const double difference : {0.5, 2.0, 8.0, 30.0}) {
      const double ra = rayleigh_number(difference, length, kAirK, kHundredKilopascal);
      const double nusselt = surface_film(kUpright, length, 0.0, kAirK, kHundredKilopascal).at(difference) /
                             coefficient_from_nusselt(1.0, length, kAirK);
      EXPECT_LT(nusselt, vertical_plate_nusselt(ra, 0.71)) << ra;
      EXPECT_GT(nusselt, 0.97 * handbook_upright_nusselt(ra) - 1.0) << ra;
    }
}

// EN ISO 6946:2017, annex C (from memory): 0.7 W/(m2 K) where heat flows down, 5.0 where it flows up, for rooms. The
// order is what can agree: the standard knows neither length nor difference.
TEST(SurfaceFilm, KeepsWarmAirOverAColdFloorApart) {
  const SurfaceFilm floor = surface_film(kUp, 2.0, 0.0, 290.0, kHundredKilopascal);
  EXPECT_GT(floor.at(-5.0), 0.7 / 1.5);
  EXPECT_LT(floor.at(-5.0), 0.7 * 1.5);
  EXPECT_GT(floor.at(5.0), 3.0 * floor.at(-5.0));
  EXPECT_LT(floor.at(20.0), 5.0 * 1.2);
  EXPECT_GT(floor.at(20.0), 5.0 / 1.5);
  const SurfaceFilm ceiling = surface_film(kDown, 2.0, 0.0, 290.0, kHundredKilopascal);
  EXPECT_NEAR(ceiling.at(5.0), floor.at(-5.0), 1e-3) << "the mirror image";
  EXPECT_NEAR(ceiling.at(-5.0), floor.at(5.0), 1e-9);
}

TEST(SurfaceFilm, IsTheSameOnBothSidesOfAnUprightPlate) {
  const SurfaceFilm wall = surface_film(kUpright, 2.0, 0.3, kAirK, kHundredKilopascal);
  for (const double x : {0.001, 0.04, 0.3, 10.0}) EXPECT_NEAR(wall.at(x), wall.at(-x), 1e-12);
}

// A plate leant by 30 degrees from upright: the film that clings to it falls by cos(30)^(1/4) = 0.9647, and with any
// tilt the film goes over continuously.
TEST(SurfaceFilm, GoesContinuouslyFromUprightToLying) {
  const double upright = surface_film(kUpright, 0.5, 0.0, kAirK, kHundredKilopascal).at(-2.0);
  EXPECT_NEAR(surface_film(kPi / 3.0, 0.5, 0.0, kAirK, kHundredKilopascal).at(-2.0) / upright, 0.9647, 0.5e-4);
  for (const double x : {-8.0, -1.0, 1.0, 8.0})
    for (double tilt = 0.01; tilt < kPi; tilt += 0.01) {
      const double here = surface_film(tilt, 1.0, 0.0, kAirK, kHundredKilopascal).at(x);
      const double next = surface_film(tilt + 1e-6, 1.0, 0.0, kAirK, kHundredKilopascal).at(x);
      ASSERT_NEAR(next / here, 1.0, 1e-4) << tilt;
    }
}

// The draught alone is the flat plate's: h_F at a vanishing difference, along the run where one is given.
TEST(SurfaceFilm, AddsADraughtByCubes) {
  const double length = 0.5, speed = 1.5;
  const double re = reynolds_number(speed, length, kAirK, kHundredKilopascal);
  const double forced = coefficient_from_nusselt(flat_plate_nusselt(re, 0.7074), length, kAirK);
  const SurfaceFilm still = surface_film(kUp, length, 0.0, kAirK, kHundredKilopascal);
  const SurfaceFilm windy = surface_film(kUp, length, speed, kAirK, kHundredKilopascal);
  for (const double x : {-6.0, -0.02, 0.0, 0.02, 6.0})
    EXPECT_NEAR(windy.at(x), mixed_nusselt(forced, still.at(x)), 1e-4 * forced) << x;
  const SurfaceFilm longer = surface_film(kUp, length, speed, kAirK, kHundredKilopascal, 4.0 * length);
  EXPECT_NEAR(longer.forced_cubed / windy.forced_cubed, 1.0 / 8.0, 1e-12) << "half the coefficient along four times";
  EXPECT_EQ(longer.warm.turbulent_cubed, windy.warm.turbulent_cubed);
}

// Turbulent films go by p^(2/3), laminar ones by p^(1/2): Ra goes by the square of the density. At 2000 m less heat.
TEST(SurfaceFilm, WeakensInThinAir) {
  const double high = standard_pressure_pa(2000.0), ratio = high / kStandardPressure;
  const auto at = [](double pressure_pa, double x) { return surface_film(kUp, 1.0, 0.0, kAirK, pressure_pa).at(x); };
  EXPECT_NEAR(at(high, 10.0) / at(kStandardPressure, 10.0), std::pow(ratio, 2.0 / 3.0), 1e-9);
  EXPECT_NEAR(at(high, -10.0) / at(kStandardPressure, -10.0), std::sqrt(ratio), 1e-9);
}

TEST(SurfaceFilm, ChangesLittleWithTheTemperatureOfItsAir) {
  const auto at = [](double kelvin, double x) { return surface_film(kUp, 1.0, 0.0, kelvin, kHundredKilopascal).at(x); };
  EXPECT_NEAR(at(320.0, 10.0) / at(300.0, 10.0), 0.95, 0.01);
  EXPECT_NEAR(at(320.0, -10.0) / at(300.0, -10.0), 0.98, 0.01);
}

TEST(SurfaceFilm, IsPositiveAndGrowsWithTheDifference) {
  for (const SurfaceFilm& film : all_films()) {
    ASSERT_GT(film.at(0.0), 0.0);
    for (const double sign : {-1.0, 1.0})
      for (double x = kFilmBlendK; x < 60.0; x *= 1.1) ASSERT_GT(film.at(sign * 1.1 * x), film.at(sign * x));
  }
}

// Heat itself, h times the difference, always rises with the difference: no second rest, no runaway in the blend.
TEST(SurfaceFilm, CarriesMoreHeatForMoreDifference) {
  for (const SurfaceFilm& film : all_films())
    for (double x = -0.2; x < 0.2; x += 0.001) ASSERT_GT(film.at(x + 0.001) * (x + 0.001), film.at(x) * x) << x;
}

TEST(SurfaceFilm, HasTheSlopeOfItsValuesEverywhere) {
  const double step = 1e-6;
  for (const SurfaceFilm& film : all_films())
    for (const double x : {-40.0, -7.0, -0.5, -0.06, -0.049, -0.03, -0.001, 0.0, 0.02, 0.04, 0.051, 0.2, 3.0, 25.0}) {
      const Dual<2> y = film.at(Dual<2>::input(x, 1));
      const double difference = (film.at(x + step) - film.at(x - step)) / (2.0 * step);
      ASSERT_EQ(y.value, film.at(x));
      ASSERT_EQ(y.grad[0], 0.0);
      ASSERT_NEAR(y.grad[1], difference, 1e-5 * (std::abs(difference) + 1.0)) << x;
    }
}

// Across the seams – the ends of the blend, zero, both ends of each rounded meeting – neither value nor slope jumps.
TEST(SurfaceFilm, HasNoCornerAtItsSeams) {
  for (const SurfaceFilm& film : all_films()) {
    std::vector<double> seams{-kFilmBlendK, 0.0, kFilmBlendK};
    for (const auto& [branch, sign] : {std::pair{film.warm, 1.0}, std::pair{film.cold, -1.0}})
      for (const double side : {1.0 - FreeFilm::kCorner, 1.0 + FreeFilm::kCorner})
        if (branch.turbulent_cubed > 0.0)
          seams.push_back(sign * std::pow(side * branch.laminar_cubed / branch.turbulent_cubed, 4.0));
    for (const double seam : seams) {
      const double step = 1e-9 * std::max(1.0, std::abs(seam));
      const Dual<1> before = film.at(Dual<1>::input(seam - step, 0)), after = film.at(Dual<1>::input(seam + step, 0));
      ASSERT_NEAR(before.value, after.value, 1e-6 * after.value) << seam;
      ASSERT_NEAR(before.grad[0], after.grad[0], 1e-5 * (std::abs(after.grad[0]) + std::abs(after.value))) << seam;
    }
  }
}

TEST(SurfaceFilmDeathTest, RefusesWhatIsNoSurface) {
  EXPECT_DEATH(surface_film(kUp, 0.0, 0.0, kAirK, kHundredKilopascal), "broken invariant");
  EXPECT_DEATH(surface_film(-0.1, 1.0, 0.0, kAirK, kHundredKilopascal), "broken invariant");
}

}  // namespace
}  // namespace noonhouse
