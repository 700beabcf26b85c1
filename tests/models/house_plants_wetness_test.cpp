// SPDX-License-Identifier: Apache-2.0
// Water on a plant and in damp air: wet bulb, dew, saturation; and what a plant does to the air of a shut box.
#include <gtest/gtest.h>

#include <cmath>

#include "models/properties/water.hpp"
#include "sim/graph/balance.hpp"
#include "tests/support/plant_in_air.hpp"

namespace noonhouse {
namespace {

constexpr double kPressure = PlantInAir::kPressure;

double saturated(double kelvin) { return saturation_humidity_ratio_fast(kelvin, kPressure); }

// Wholly wet, without sun and thermal radiation: the psychrometer. It rests near the thermodynamic wet bulb and below
// it, since vapour passes the film more readily than heat, by Le^(2/3) = 0.90, and since the film is reckoned with the
// heat of dry air: lambda (w_s - w) = 0.90 c_p D for the depression D, where the thermodynamic one has c_p + 1860 w.
// With sigma the slope of saturation (by w) and x = (c_p + 1860 w) / lambda that deepens it by the share
//   (1 - 0.90 c_p / (c_p + 1860 w)) x / (sigma + x), to first order,
// 3 to 4 %: 0.4 K of 10 K, so not within 0.3 K in dry air. Asked to a fifth for the second order and what is not
// wetted.
TEST(WetPlant, IsAtTheWetBulbOfItsAir) {
  for (const double celsius : {20.0, 30.0, 38.0}) {
    for (const double humidity : {0.3, 0.6, 0.9}) {
      PlantInAir plant;
      plant.all_at(kZeroCelsius + celsius);
      plant.humidity = humidity;
      plant.emissivity = 0.0;
      plant.pot_kg = 0.0;
      plant.held_kg = 0.01;
      plant.water_on_kg = 20.0;
      const auto rest = plant.run(6_h);
      const double w = plant.humidity_ratio_of_air(), bulb = wet_bulb_k(plant.air_k, w, kPressure);
      const double tissue = rest(rest.tissue[0]);
      ASSERT_GT(rest(Input(rest.tissue[0], 1)), 5.0) << "still wet";
      const double moist = kDryAirHeat + kVapourHeat * w, x = moist / latent_heat(bulb);
      const double slope = 0.5 * (saturated(bulb + 1.0) - saturated(bulb - 1.0));
      const double deeper = (1.0 - 0.90 * kDryAirHeat / moist) * x / (slope + x) * (plant.air_k - bulb);
      EXPECT_NEAR(bulb - tissue, deeper, 0.2 * deeper) << celsius << " " << humidity;
      if (humidity >= 0.6) {
        EXPECT_NEAR(tissue, bulb, 0.3);
      }
      const double lambda = vapour_enthalpy(tissue) - liquid_enthalpy(tissue);
      EXPECT_NEAR(plant.air_k - tissue, lambda * (saturated(tissue) - w) / (0.90 * kDryAirHeat),
                  0.005 * (plant.air_k - tissue));
    }
  }
}

// Saturated air takes no vapour from tissue as warm as itself or colder; on the colder tissue it leaves dew, whose heat
// keeps it warmer than it would be if dry.
TEST(WetPlant, SaturatedAirTakesNothingAndLeavesDewOnColderTissue) {
  PlantInAir plant;
  plant.all_at(293.15);
  plant.humidity = 1.0;
  plant.sides.front().light_w_m2 = 500.0;
  plant.emissivity = 0.0;
  const auto even = plant.run(6_h);
  EXPECT_NEAR(even(even.tissue[0]), 293.15, 1e-9);
  EXPECT_NEAR(even.carried("transpiration 0", 0), 0.0, 1e-12);
  EXPECT_NEAR(even(Input(even.tissue[0], 1)), 0.0, 1e-9);

  plant.emissivity = 0.95;
  plant.walls_k = 278.15;
  const auto damp = plant.run(6_h);
  EXPECT_EQ(damp.carried("transpiration 0", 0), 0.0);
  EXPECT_GT(damp(Input(damp.tissue[0], 1)), 0.05);
  EXPECT_NEAR(damp(Input(damp.tissue[0], 1)), -damp.carried("film 0", 0), 1e-9);
  plant.humidity = 0.3;
  plant.pot_kg = 0.0;
  const auto dry = plant.run(6_h);
  EXPECT_GT(damp(damp.tissue[0]), dry(dry.tissue[0]) + 0.5) << "dew warms";
  EXPECT_NEAR(dry(Input(dry.tissue[0], 1)), 0.0, 1e-6) << "none above the dew point";
}

// A plant in the sun in a box shut for heat and vapour: air and pot change by exactly what left them.
TEST(PlantInAShutBox, GivesTheAirTheWaterThatLeftThePotAndTakesItsHeatForIt) {
  PlantInAir plant;
  plant.all_at(303.15);
  plant.humidity = 0.3;
  plant.emissivity = 0.0;
  plant.boxed_air_kg = 30.0;
  plant.sides = {
      {.light_w_m2 = 500.0}};  // light enough to open, no heat in it: what the air gains is the plant's doing
  const auto rest = plant.run(3_h);
  const double left_kg = rest.start(Input(rest.pot, 1)) - rest(Input(rest.pot, 1));
  const double gained_kg = 30.0 * (rest(Input(rest.air, 1)) - rest.start(Input(rest.air, 1)));
  ASSERT_GT(left_kg, 0.05);
  EXPECT_NEAR(gained_kg, left_kg, 1e-9 * left_kg + 1e-11);
  EXPECT_LT(rest(rest.air), 303.15 - 3.0) << "cooled";
  // Sensible heat that air and tissue lost is the latent heat of what left, vapour at the air's end temperature from
  // water at the pot's: an equality of enthalpies.
  const double w0 = rest.start(Input(rest.air, 1)), w1 = rest(Input(rest.air, 1));
  const double air = 30.0 * (moist_air_enthalpy(rest(rest.air), w1) - moist_air_enthalpy(303.15, w0));
  const double tissue = plant.heat_j_k * (rest(rest.tissue[0]) - 303.15) +
                        kWaterHeat * rest(Input(rest.tissue[0], 1)) * (rest(rest.tissue[0]) - kZeroCelsius);
  EXPECT_NEAR(air + tissue, left_kg * liquid_enthalpy(303.15), 1e-9 * left_kg * kLatentHeatZero);
  const double cooled = 30.0 * (kDryAirHeat + kVapourHeat * w0) * (303.15 - rest(rest.air)) +
                        plant.heat_j_k * (303.15 - rest(rest.tissue[0]));
  const double latent = left_kg * (vapour_enthalpy(rest(rest.air)) - liquid_enthalpy(303.15));
  EXPECT_NEAR(cooled, latent, 1e-9 * latent);
}

// The house's own audit over plant, pot and air, by day and by night, with two sides, dew and thermal radiation.
TEST(PlantInAShutBox, KeepsWaterAndEnergy) {
  for (const bool day : {true, false}) {
    PlantInAir plant = PlantInAir::of_kind(*find_plant_kind("fruiting crop"));
    plant.all_at(295.15);
    plant.boxed_air_kg = 5.0;
    plant.walls_k = day ? 300.15 : 281.15;
    plant.humidity = 0.8;
    if (day)
      for (SideInSun& side : plant.sides) side.absorbed_w = 150.0, side.light_w_m2 = 300.0;
    const auto rest = plant.run(24_h);
    const auto audit =
        audit_balance(rest.plan.house, rest.plan.house.initial_amounts, rest.run.state.amounts, rest.run.state.carried);
    EXPECT_LT(audit.total(Quantity::energy).relative(), 1e-9);
    EXPECT_LT(std::abs(audit.total(Quantity::water).change), 1e-9) << "none crosses the boundary";
    double water = 0.0;
    for (const NodeId tissue : rest.tissue) water += rest(Input(tissue, 1)) - rest.start(Input(tissue, 1));
    water += rest(Input(rest.pot, 1)) - rest.start(Input(rest.pot, 1));
    water += 5.0 * (rest(Input(rest.air, 1)) - rest.start(Input(rest.air, 1)));
    EXPECT_NEAR(water, 0.0, 1e-9);
    const double drawn = rest.start(Input(rest.pot, 1)) - rest(Input(rest.pot, 1));
    const double on_leaves = rest(Input(rest.tissue[0], 1)) + rest(Input(rest.tissue[1], 1));
    if (day) {
      EXPECT_GT(drawn, 1e-3);
    } else {
      EXPECT_GT(on_leaves, 1e-3) << "dew";
    }
  }
}

}  // namespace
}  // namespace noonhouse
