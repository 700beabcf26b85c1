// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "models/plants/tissue.hpp"
#include "models/properties/combination.hpp"
#include "models/properties/constants.hpp"

namespace noonhouse {
namespace {

/// A film of one coefficient [W/(m2 K)], whatever the air does.
TissueFilm film_of(double w_m2_k) { return {w_m2_k * w_m2_k * w_m2_k, {}, 1.0}; }

/// A watered plant in light, its stomata at their best temperature; each test changes what it is about.
struct Plant {
  Plant() { boundary(0.006); }
  Transpiration law{.leaf_area_m2 = 5.0,
                    .dry_air_density_kg_m3 = 1.15,
                    .film = {},
                    .stomata = {.least_m_s = 0.0001,
                                .most_m_s = 0.005,
                                .half_light_w_m2 = 100.0,
                                .half_deficit_pa = 1500.0,
                                .best_k = 300.0,
                                .spread_k = 20.0,
                                .pot_capacity_kg = 20.0}};
  double leaf_k = 300.0, pot_kg = 20.0, pot_k = 296.0, air_k = 301.0, w = 0.010, light = 500.0;
  double through_m_s = 0.0, stirring_m_s = 0.0;
  /// Gives the still air at the leaf a conductance for vapour [m/s], by the film it means for heat.
  void boundary(double vapour_m_s) { law.film = film_of(vapour_m_s * 1.15 * kDryAirHeat * kLewisTwoThirds); }
  std::array<double, 3> fluxes() const {
    std::array<double, 3> q{};
    law.flux(std::array{leaf_k, pot_kg, pot_k, air_k, w, light, through_m_s, stirring_m_s}, q);
    return q;
  }
  double water() const { return fluxes()[0]; }
  /// Conductance from the stomata's inside to the air [m/s], from what flows.
  double conductance() const {
    return water() / (5.0 * 1.15 * (saturation_humidity_ratio_fast(leaf_k, law.pressure_pa) - w));
  }
  /// Leaves the stomata's own answer to what the test is about alone: no skin, no film, no answer to dry air.
  void bare_stomata() {
    law.stomata.least_m_s = 0.0;
    law.stomata.half_deficit_pa = 1e12;
    boundary(1e6);
  }
};

TEST(Transpiration, IsTheSkinsAloneInTheDark) {
  Plant plant;
  plant.light = 0.0;
  EXPECT_NEAR(plant.conductance(), 1.0 / (1.0 / 0.0001 + 1.0 / 0.006), 1e-12);
}

TEST(Transpiration, NeverPassesTheStillAirAtTheLeaf) {
  Plant plant;
  plant.boundary(1e-9);
  EXPECT_LT(plant.conductance(), 1e-9);
  plant.boundary(1e3);
  EXPECT_LE(plant.conductance(), 0.005);
}

// A film on each face that has stomata, side by side; the stomata's conductance already counts both faces.
TEST(Transpiration, PassesAFilmOnEachFaceWithStomata) {
  for (const double faces : {1.0, 2.0}) {
    Plant plant;
    plant.bare_stomata();
    plant.boundary(0.006);
    plant.law.faces = faces;
    plant.light = 1e9;
    EXPECT_NEAR(plant.conductance(), 1.0 / (1.0 / 0.005 + 1.0 / (faces * 0.006)), 1e-8) << faces;
  }
}

TEST(Transpiration, StopsWithADryPotAndInSaturatedAir) {
  Plant plant;
  plant.pot_kg = 0.0;
  EXPECT_EQ(plant.water(), 0.0);
  plant.pot_kg = -1e-9;
  EXPECT_EQ(plant.water(), 0.0);
  Plant damp;
  damp.w = saturation_humidity_ratio_fast(damp.leaf_k, damp.law.pressure_pa);
  EXPECT_EQ(damp.water(), 0.0);
  damp.leaf_k = 290.0;  // colder than the dew point: dew is another law's
  EXPECT_EQ(damp.water(), 0.0);
}

TEST(Transpiration, IsUnhinderedWhileThePotIsMoreThanItsDryShare) {
  Plant full, enough, dry;
  enough.pot_kg = 0.3 * 20.0;
  dry.pot_kg = 0.15 * 20.0;
  EXPECT_EQ(full.water(), enough.water());
  EXPECT_LT(dry.water(), 0.6 * full.water());
}

// Vapour-deficit form: the opening halves where D = D0. Leuning 1995, Plant Cell Environ. 18, 339. D from the
// published meaning: saturation pressure at the leaf less the air's vapour pressure.
TEST(Transpiration, HalvesItsOpeningAtTheDeficitThatIsNamedForIt) {
  Plant plant;
  plant.bare_stomata();
  const double open = plant.conductance();
  plant.law.stomata.half_deficit_pa = saturation_pressure_pa(plant.leaf_k) - vapour_pressure_pa(plant.w, 101325.0);
  EXPECT_NEAR(plant.conductance(), 0.5 * open, 1e-4 * open);
}

TEST(Transpiration, IsHalfOpenAtHalfLightByDayAndAsMuchShutByNightOpeners) {
  Plant plant;
  plant.bare_stomata();
  plant.light = 100.0;
  EXPECT_NEAR(plant.conductance(), 0.5 * 0.005, 1e-8);
  plant.law.stomata.rhythm = StomataRhythm::night;
  EXPECT_NEAR(plant.conductance(), 0.5 * 0.005, 1e-8);
  plant.light = 0.0;
  EXPECT_NEAR(plant.conductance(), 0.005, 1e-8);
}

TEST(Transpiration, OpensWidestAtItsTemperatureAndHalfAsWideOneSpreadFromIt) {
  Plant plant;
  plant.bare_stomata();
  plant.law.stomata.half_light_w_m2 = 1e-9;
  plant.w = 0.001;  // vapour is drawn at every temperature here
  EXPECT_NEAR(plant.conductance(), 0.005, 1e-8);
  for (const double away_k : {-20.0, 20.0}) {
    plant.leaf_k = 300.0 + away_k;
    EXPECT_NEAR(plant.conductance(), 0.5 * 0.005, 1e-8) << away_k;
  }
  plant.leaf_k = 360.0;
  EXPECT_NEAR(plant.conductance(), 0.1 * 0.005, 1e-8) << "three spreads: 1 / (1 + 3^2)";
}

TEST(Transpiration, LosesByItsSkinAloneHoweverDryTheAirIs) {
  Plant plant;
  plant.boundary(1e6);
  plant.law.stomata.half_deficit_pa = 1e-6;
  EXPECT_NEAR(plant.conductance(), 0.0001, 1e-9);
}

// Tissue and air at one temperature, so that only the air's own speed makes the film: fourfold speed, half the layer.
TEST(Transpiration, FeelsTheAirThatIsDrawnPastItAndStirred) {
  for (double Plant::*moves : {&Plant::through_m_s, &Plant::stirring_m_s}) {
    Plant plant;
    plant.bare_stomata();
    plant.law.stomata.most_m_s = 1e3;  // the layer alone counts
    plant.law.film = {1e3, {}, 0.0};
    plant.air_k = plant.leaf_k;
    plant.*moves = 0.5;
    const double slow = plant.conductance();
    plant.*moves = 2.0;
    EXPECT_NEAR(plant.conductance() / slow, 2.0, 1e-3);
  }
}

TEST(Transpiration, TakesItsLatentHeatFromTheTissue) {
  const Plant plant;
  const auto q = plant.fluxes();
  ASSERT_GT(q[0], 0.0);
  EXPECT_NEAR(q[1], q[0] * liquid_enthalpy(296.0), 1e-9);
  EXPECT_NEAR(q[2] - q[1], q[0] * (vapour_enthalpy(300.0) - liquid_enthalpy(296.0)), 1e-6);
  EXPECT_GT(q[2] - q[1], q[0] * 2.4e6) << "about the latent heat of vaporisation";
}

// A leaf that keeps a given radiation comes to rest where the combination equation says, with a secant for its slope:
// heat from both sides by the film, vapour from one by film and stomata. The law takes humidity ratios, that equation
// vapour pressures: p / (p - e_s) less. What is left is the latent heat of the air's temperature for the leaf's: 1 %.
TEST(Transpiration, IsTheCombinationOfPenmanAndMonteith) {
  constexpr double kFilm = 12.0, kAir = 303.15, kOpen = 0.005, kVapour = 1500.0;
  Plant plant;
  plant.air_k = kAir;
  plant.w = humidity_ratio(kVapour, kStandardPressure);
  plant.law.leaf_area_m2 = 1.0;
  plant.law.dry_air_density_kg_m3 = (kStandardPressure - kVapour) / (kGasConstantDryAir * kAir);
  plant.law.film = film_of(kFilm);
  plant.law.stomata.half_deficit_pa = 1e12;
  plant.law.stomata.half_light_w_m2 = 1e-9;
  plant.law.stomata.spread_k = 1e6;
  for (const double radiation : {50.0, 300.0, 600.0}) {
    double low = 270.0, high = 340.0;
    const auto latent = [&](double kelvin) {
      plant.leaf_k = plant.pot_k = kelvin;
      return plant.fluxes()[2] - plant.fluxes()[1];
    };
    for (int i = 0; i < 60; ++i) {
      const double middle = 0.5 * (low + high);
      (2.0 * kFilm * (middle - kAir) + latent(middle) < radiation ? low : high) = middle;
    }
    const double to_heat = 2.0 * kFilm / air_heat_capacity_j_m3_k(kAir, kStandardPressure);
    const double by_film = 0.5 * to_heat / kLewisTwoThirds;
    const double as_ratio = kStandardPressure / (kStandardPressure - saturation_pressure_pa(low));
    const CombinationSurface<double> leaf{.available_w_m2 = radiation,
                                          .air_k = kAir,
                                          .deficit_pa = saturation_pressure_pa(kAir) - kVapour,
                                          .heat_conductance_m_s = to_heat,
                                          .vapour_share = as_ratio * kOpen * by_film / (kOpen + by_film) / to_heat,
                                          .pressure_pa = kStandardPressure};
    const double secant = (saturation_pressure_pa(low) - saturation_pressure_pa(kAir)) / (low - kAir);
    const double combined = combination_latent_heat_w_m2(leaf, secant);
    EXPECT_NEAR(latent(low), combined, 0.01 * combined) << radiation;
    EXPECT_NEAR(low, leaf_temperature_k(leaf, combined), 0.01 * combined / (2.0 * kFilm)) << radiation;
  }
}

/// What the tissue of 10 m2 gives beside itself and to the column, at 5 W/(m2 K).
std::array<double, 2> heat_from(double tissue_k, double air_k) {
  const TissueConvection law{10.0, film_of(5.0)};
  std::array<double, 2> q{};
  law.flux(std::array{tissue_k, air_k, 0.0, 0.0}, q);
  return q;
}

TEST(TissueConvection, GoesToTheColumnWhereTissueIsTheWarmerAndToTheLayerWhereColder) {
  const auto warm = heat_from(303.0, 300.0), cold = heat_from(297.0, 300.0), slight = heat_from(300.25, 300.0);
  EXPECT_NEAR(warm[1], 10.0 * 5.0 * 3.0, 1e-9);
  EXPECT_NEAR(warm[0], 0.0, 1e-9);
  EXPECT_NEAR(cold[0], -10.0 * 5.0 * 3.0, 1e-9);
  EXPECT_EQ(cold[1], 0.0);
  EXPECT_NEAR(slight[0] + slight[1], 10.0 * 5.0 * 0.25, 1e-9);
  EXPECT_NEAR(slight[0], slight[1], 1e-9) << "halfway";
}

// Lewis: vapour passes a film by h / (c_p Le^(2/3)), whatever the film is of.
TEST(WetTissue, DriesAndDewsByTheFilmOfItsTissue) {
  const WetTissue law{10.0, 101325.0, 0.1, film_of(5.0)};
  const auto flux = [&](double tissue_k, double water_kg, double w) {
    std::array<double, 2> q{};
    law.flux(std::array{tissue_k, water_kg, 300.0, w, 0.0, 0.0}, q);
    return q;
  };
  const double by_film = 10.0 * 5.0 / (kDryAirHeat * kLewisTwoThirds);
  const double saturated = saturation_humidity_ratio_fast(295.0, 101325.0);
  EXPECT_NEAR(flux(295.0, 1e6, 0.010)[0], by_film * (saturated - 0.010), 1e-9) << "soaked";
  EXPECT_NEAR(flux(295.0, 0.1, 0.010)[0], 0.5 * by_film * (saturated - 0.010), 1e-12) << "half wet";
  EXPECT_EQ(flux(295.0, 0.0, 0.010)[0], 0.0);
  const auto dew = flux(295.0, 0.0, saturated + 0.002);
  EXPECT_NEAR(dew[0], -by_film * 0.002, 1e-12) << "dew needs no water that lies there";
  EXPECT_NEAR(dew[1], dew[0] * vapour_enthalpy(295.0), 1e-9);
}

}  // namespace
}  // namespace noonhouse
