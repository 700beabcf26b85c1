// SPDX-License-Identifier: Apache-2.0
// One plant in given air, run by the engine to rest, against the combination of energy and dryness of the air (Penman
// 1948, Monteith 1965) solved apart from the engine with the same conductances.
#include <gtest/gtest.h>

#include <cmath>

#include "models/properties/combination.hpp"
#include "models/properties/sky.hpp"
#include "tests/support/plant_in_air.hpp"

namespace noonhouse {
namespace {

/// A watered plant of one side in dry air and sun.
PlantInAir in_sun() {
  PlantInAir plant;
  plant.all_at(303.15);
  plant.humidity = 0.3;
  plant.sides = {{.absorbed_w = 250.0, .light_w_m2 = 600.0}};
  return plant;
}
PlantInAir by_night() {
  PlantInAir plant;
  plant.all_at(291.15);
  plant.humidity = 0.7;
  plant.walls_k = 283.15;
  return plant;
}
PlantInAir in_hot_damp_air() {
  PlantInAir plant = in_sun();
  plant.all_at(311.15);
  plant.humidity = 0.7;
  plant.through_m_s = 1.0;
  return plant;
}

/// The plant's leaf as the combination has it, by area of one side: both sides give heat, one gives vapour.
struct Combined {
  double leaf_k = 0.0, latent_w = 0.0, water_kg_s = 0.0;
};

double heat_conductance_m_s(const PlantInAir& plant, double leaf_k) {
  const double h = plant.film().at(leaf_k - plant.air_k, plant.through_m_s, plant.stirring_m_s);
  return 2.0 * h / (plant.density() * kDryAirHeat);
}
double vapour_conductance_m_s(const PlantInAir& plant, double leaf_k) {
  const double layer = 0.5 * heat_conductance_m_s(plant, leaf_k) / 0.90;  // Le^(2/3)
  const double deficit =
      saturation_pressure_fast_pa(leaf_k) - vapour_pressure_pa(plant.humidity_ratio_of_air(), PlantInAir::kPressure);
  const double stomata = plant.stomata.conductance(leaf_k, plant.pot_kg, plant.sides.front().light_w_m2, deficit);
  return stomata * layer / (stomata + layer);
}
/// Radiation kept, by area of one side of leaves [W/m2]: that of the surroundings follows the leaf.
double available_w_m2(const PlantInAir& plant, double leaf_k) {
  return plant.sides.front().absorbed_w / plant.leaf_m2 +
         2.0 * plant.emissivity * (blackbody_emission(plant.walls_k) - blackbody_emission(leaf_k));
}

/// Solved by going round: conductances, thermal radiation and the secant of saturation from the last temperature. In
/// humidity ratios the combination is exact: gamma = c_p / lambda, and a wet surface as warm as the air gives
/// rho lambda g_a by unit of w.
Combined solved_with_secant(const PlantInAir& plant) {
  const double w = plant.humidity_ratio_of_air();
  const auto saturated = [](double kelvin) { return saturation_humidity_ratio_fast(kelvin, PlantInAir::kPressure); };
  double leaf_k = plant.air_k - 0.5;
  Combined out;
  for (int round = 0; round < 400; ++round) {
    const double lambda = vapour_enthalpy(leaf_k) - liquid_enthalpy(plant.pot_k);
    const double heat = heat_conductance_m_s(plant, leaf_k), vapour = vapour_conductance_m_s(plant, leaf_k);
    const double apart = leaf_k - plant.air_k;
    const double secant = std::abs(apart) > 1e-6 ? (saturated(leaf_k) - saturated(plant.air_k)) / apart : 1e-3;
    const double available = available_w_m2(plant, leaf_k);
    const double latent = combination(CombinationTerms<double>{.slope_pa_k = secant,
                                                               .psychrometric_pa_k = kDryAirHeat / lambda,
                                                               .available = available,
                                                               .aerodynamic_factor = plant.density() * lambda * heat,
                                                               .deficit_pa = saturated(plant.air_k) - w,
                                                               .vapour_share = vapour / heat});
    const double next = plant.air_k + (available - latent) / (plant.density() * kDryAirHeat * heat);
    out = {leaf_k, plant.leaf_m2 * latent, plant.leaf_m2 * latent / lambda};
    leaf_k += 0.3 * (next - leaf_k);
  }
  return out;
}

/// The form for users: pressures, tangent at the air's temperature; conductances and radiation as the engine has them.
Combined by_tangent(const PlantInAir& plant, double leaf_k) {
  const CombinationSurface<double> surface{
      .available_w_m2 = available_w_m2(plant, leaf_k),
      .air_k = plant.air_k,
      .deficit_pa = (1.0 - plant.humidity) * saturation_pressure_pa(plant.air_k),
      .heat_conductance_m_s = heat_conductance_m_s(plant, leaf_k),
      .vapour_share = vapour_conductance_m_s(plant, leaf_k) / heat_conductance_m_s(plant, leaf_k)};
  const double latent = combination_latent_heat_w_m2(surface);
  return {leaf_temperature_k(surface, latent), plant.leaf_m2 * latent, 0.0};
}

TEST(PlantAtRest, IsWhereTheCombinationWithItsSecantSays) {
  for (PlantInAir plant : {in_sun(), by_night(), in_hot_damp_air()}) {
    for (const double absorbed : {0.0, 250.0, 900.0}) {
      plant.sides.front().absorbed_w = absorbed;
      const auto rest = plant.run(12_h);
      const Combined wanted = solved_with_secant(plant);
      const double leaf_k = rest(rest.tissue[0]);
      EXPECT_NEAR(leaf_k, wanted.leaf_k, 1e-6 * std::abs(wanted.leaf_k - plant.air_k) + 1e-7);
      EXPECT_NEAR(rest.flux("transpiration 0", 0), wanted.water_kg_s, 1e-6 * wanted.water_kg_s);
      EXPECT_NEAR(rest.flux("transpiration 0", 2) - rest.flux("transpiration 0", 1), wanted.latent_w,
                  1e-6 * wanted.latent_w);
    }
  }
}

// The docstring of the tangent's form: too little by up to 5 % of latent and sensible heat together where the leaf is
// within 3 K of the air. Pressures in place of ratios and tables in place of the fit: 4 % more (w to p near 0.03).
TEST(PlantAtRest, IsWithinAFewPercentOfTheCombinationWithItsTangent) {
  for (const PlantInAir& plant : {in_sun(), by_night(), in_hot_damp_air()}) {
    const auto rest = plant.run(12_h);
    const double leaf_k = rest(rest.tissue[0]);
    const Combined tangent = by_tangent(plant, leaf_k);
    const double latent = rest.flux("transpiration 0", 2) - rest.flux("transpiration 0", 1);
    const double sensible = rest.flux("convection 0", 0) + rest.flux("convection 0", 1);
    EXPECT_NEAR(latent, tangent.latent_w, 0.09 * (std::abs(latent) + std::abs(sensible)));
    EXPECT_NEAR(leaf_k, tangent.leaf_k, 0.4) << "a few tenths of a kelvin";
  }
}

// Dry air and open stomata: leaves that take up 100 W between them (3 m2) are cooler than their air, by a kelvin or
// more; with stomata shut in the same sun they are hotter, by what film and radiation then carry: 17 W/m2 over about 11
// W/(m2 K) of each of two sides and more.
TEST(PlantAtRest, IsCoolerThanDryAirWhenOpenAndHotterWhenShut) {
  PlantInAir open = in_sun();
  open.sides.front().absorbed_w = 100.0;
  PlantInAir shut = open;
  shut.stomata.least_m_s = shut.stomata.most_m_s = 0.0;
  const auto cool = open.run(12_h), hot = shut.run(12_h);
  EXPECT_LT(cool(cool.tissue[0]), open.air_k - 1.0);
  EXPECT_GT(hot(hot.tissue[0]), shut.air_k + 1.0);
  EXPECT_LT(hot(hot.tissue[0]), shut.air_k + 2.5);
  EXPECT_EQ(hot.flux("transpiration 0", 0), 0.0);
  EXPECT_GT(cool.flux("transpiration 0", 0), 0.0);
  EXPECT_LT(cool.flux("convection 0", 0), 0.0) << "the air heats it";
}

// A pot without water: as hot as the dry balance says, 250 W = A [2 h (T - T_air) + 2 e sigma (T^4 - T_walls^4)],
// solved by halving here.
TEST(PlantAtRest, WithoutWaterIsAsHotAsTheDryBalanceSays) {
  PlantInAir plant = in_sun();
  plant.pot_kg = 0.0;
  const auto rest = plant.run(12_h);
  double low = plant.air_k, high = plant.air_k + 60.0;
  for (int i = 0; i < 60; ++i) {
    const double t = 0.5 * (low + high);
    const double leaves =
        plant.leaf_m2 * plant.density() * kDryAirHeat * heat_conductance_m_s(plant, t) * (t - plant.air_k);
    (leaves < plant.leaf_m2 * available_w_m2(plant, t) ? low : high) = t;
  }
  EXPECT_NEAR(rest(rest.tissue[0]), low, 1e-5);
  EXPECT_EQ(rest.carried("transpiration 0", 0), 0.0);
  EXPECT_NEAR(rest(Input(rest.pot, 1)), 0.0, 1e-15);
}

// In the dark only the skin lets water out, and the tissue rests between the air and colder surroundings.
TEST(PlantAtRest, InTheDarkIsBetweenAirAndSurroundingsAndLosesWaterBySkin) {
  const PlantInAir plant = by_night();
  const auto rest = plant.run(12_h);
  const double leaf_k = rest(rest.tissue[0]);
  EXPECT_LT(leaf_k, plant.air_k - 1.0);
  EXPECT_GT(leaf_k, plant.walls_k + 1.0);
  const double drive = saturation_humidity_ratio_fast(leaf_k, PlantInAir::kPressure) - plant.humidity_ratio_of_air();
  const double through_skin = plant.leaf_m2 * plant.density() * plant.stomata.least_m_s * drive;
  EXPECT_LE(rest.flux("transpiration 0", 0), through_skin);
  EXPECT_GT(rest.flux("transpiration 0", 0), 0.85 * through_skin)
      << "the still air adds a tenth to the skin's resistance";
}

// Without any wind the film is that of free convection alone: finite, of the laminar plate's Nusselt number,
// 0.514 Ra^(1/4) for air [Incropera & DeWitt, 5th ed., eq. (9.27) without 0.68, Pr 0.71], and the balance closes.
TEST(PlantAtRest, WithoutWindGivesItsHeatByFreeConvection) {
  PlantInAir plant = in_sun();
  plant.stomata.least_m_s = plant.stomata.most_m_s = 0.0;
  TissueFilm film = plant.film();
  film.rest_m_s = 0.0;
  const double apart = 8.0, still = film.at(apart, 0.0, 0.0);
  const double nu = 1.59e-5, alpha = 2.25e-5, k = 0.0263, l = plant.leaf_size_m;  // air at 300 K: ibid., table A.4
  const double rayleigh = kGravity / plant.air_k * apart * l * l * l / (nu * alpha);
  EXPECT_NEAR(still, 0.514 * std::pow(rayleigh, 0.25) * k / l, 0.06 * still);
  EXPECT_NEAR(film.at(0.0, 0.0, 0.0), 0.0, 2.0) << "and next to nothing where there is no difference";
  const auto rest = plant.run(12_h);
  EXPECT_NEAR(rest.flux("convection 0", 0) + rest.flux("convection 0", 1) + rest.flux("longwave 0", 0), 250.0, 1e-4);
}

// A storm ties the tissue to its air: 100 m/s leave less than a kelvin of 250 W over 6 m2, and each hundredfold speed
// a tenth of the difference (forced h with the root of the speed).
TEST(PlantAtRest, IsAsWarmAsTheAirInAHugeWind) {
  PlantInAir plant = in_sun();
  plant.emissivity = 0.0;
  plant.stomata.least_m_s = plant.stomata.most_m_s = 0.0;
  double apart[2] = {};
  for (const int i : {0, 1}) {
    plant.through_m_s = i == 0 ? 100.0 : 1e4;
    const auto rest = plant.run(2_h);
    apart[i] = rest(rest.tissue[0]) - plant.air_k;
  }
  EXPECT_GT(apart[0], 0.0);
  EXPECT_LT(apart[0], 0.5);
  EXPECT_NEAR(apart[0] / apart[1], 10.0, 0.01);
}

// The draught past the plant and what stirs the air count alike.
TEST(PlantAtRest, ComesCloserToTheAirInAnyDraught) {
  PlantInAir plant = in_sun();
  plant.stomata.least_m_s = plant.stomata.most_m_s = 0.0;
  const auto still = plant.run(6_h);
  plant.through_m_s = 0.8;
  const auto drawn = plant.run(6_h);
  std::swap(plant.through_m_s, plant.stirring_m_s);
  const auto stirred = plant.run(6_h);
  EXPECT_LT(drawn(drawn.tissue[0]), still(still.tissue[0]) - 1.0);
  EXPECT_GT(drawn(drawn.tissue[0]), plant.air_k);
  EXPECT_NEAR(stirred(stirred.tissue[0]), drawn(drawn.tissue[0]), 1e-9);
}

// Next to no leaves, and next to no mass: the tissue's temperature does not depend on how little there is of it, since
// all that it exchanges goes by its area, and it has no memory.
TEST(PlantAtRest, DoesNotDependOnHowLittleThereIsOfIt) {
  PlantInAir plant = in_sun();
  const auto all = plant.run(6_h);
  for (const double share : {1e-2, 1e-6}) {
    PlantInAir little = plant;
    little.leaf_m2 *= share;
    little.heat_j_k *= share;
    little.held_kg *= share;
    little.sides.front().absorbed_w *= share;
    const auto rest = little.run(6_h);
    EXPECT_NEAR(rest(rest.tissue[0]), all(all.tissue[0]), 1e-6);
    EXPECT_NEAR(rest.flux("transpiration 0", 0), share * all.flux("transpiration 0", 0),
                1e-6 * share * all.flux("transpiration 0", 0));
    little.heat_j_k *= 1e-3;
    const auto light = little.run(6_h);
    EXPECT_NEAR(light(light.tissue[0]), all(all.tissue[0]), 1e-6);
    EXPECT_LT(light.run.steps, 400);
  }
}

}  // namespace
}  // namespace noonhouse
