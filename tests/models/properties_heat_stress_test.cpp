// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>

#include "models/properties/constants.hpp"
#include "models/properties/heat_stress.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/properties/sky.hpp"
#include "models/properties/surface_film.hpp"
#include "tests/support/printed_units.hpp"

namespace noonhouse {
namespace {

/// Shade between walls as warm as the air.
HeatSurroundings shade(double air_c, double humidity_share, double speed_m_s) {
  HeatSurroundings around;
  around.air_k = around.radiant_k = kelvin(air_c);
  around.humidity_ratio = humidity_ratio(humidity_share * saturation_pressure_pa(around.air_k), around.pressure_pa);
  around.speed_m_s = speed_m_s;
  return around;
}

// HAZ-05. ISO 7243:1989, Table A.1; exact.
TEST(Wbgt, ReferenceValuesOfTheStandard) {
  const double acclimatised[5][2] = {{33, 33}, {30, 30}, {28, 28}, {25, 26}, {23, 25}};
  const double not_acclimatised[5][2] = {{32, 32}, {29, 29}, {26, 26}, {22, 23}, {18, 20}};
  for (int rate = 0; rate < 5; ++rate)
    for (int moving = 0; moving < 2; ++moving) {
      const auto reference = [&](bool used) {
        return wbgt_reference_k({static_cast<WorkRate>(rate), used, moving == 1});
      };
      EXPECT_EQ(reference(true), kelvin(acclimatised[rate][moving])) << rate;
      EXPECT_EQ(reference(false), kelvin(not_acclimatised[rate][moving])) << rate;
    }
}

// HAZ-06. ISO 7243:1989, eqs. (2) and (1); half a unit of the last digit.
TEST(Wbgt, WeighsItsThreeThermometers) {
  EXPECT_NEAR(wbgt_in_sun_k(kelvin(24.0), kelvin(45.0), kelvin(36.0)), kelvin(29.4), 1e-9);
  EXPECT_NEAR(wbgt_without_sun_k(kelvin(24.0), kelvin(36.0)), kelvin(27.6), 1e-9);
  EXPECT_NEAR(wbgt_in_sun_k(kelvin(30.0), kelvin(30.0), kelvin(30.0)), kelvin(30.0), 1e-9);
}

// HAZ-07. ISO 7243:1989, Table A.1, with its watts for 1.8 m2 of skin.
TEST(Wbgt, ClassesOfWork) {
  const double limits_w_m2[] = {65.0, 130.0, 200.0, 260.0}, limits_w[] = {117.0, 234.0, 360.0, 468.0};
  for (int i = 0; i < 4; ++i) {
    EXPECT_EQ(work_rate(limits_w_m2[i]), static_cast<WorkRate>(i));
    EXPECT_EQ(work_rate(limits_w_m2[i] + 0.01), static_cast<WorkRate>(i + 1));
    EXPECT_NEAR(limits_w_m2[i] * kSkinArea_m2, limits_w[i], 0.5);
  }
  EXPECT_EQ(work_rate(0.0), WorkRate::resting);
  EXPECT_EQ(work_rate(1000.0), WorkRate::very_high);
}

TEST(Wbgt, WorkIsUnwiseBeyondTheReference) {
  const Worker new_here{WorkRate::moderate, false, false}, used_to_it{WorkRate::moderate, true, false};
  EXPECT_FALSE(unwise_to_work(kelvin(26.0), new_here));
  EXPECT_TRUE(unwise_to_work(kelvin(26.01), new_here));
  EXPECT_FALSE(unwise_to_work(kelvin(27.9), used_to_it));
  EXPECT_TRUE(unwise_to_work(kelvin(28.1), used_to_it));
}

TEST(Globe, IsAsWarmAsTheAirBetweenWallsAsWarm) {
  for (const double speed : {0.0, 0.5, 5.0})
    EXPECT_NEAR(globe_temperature_k(shade(30.0, 0.5, speed)), kelvin(30.0), 1e-9);
}

// The globe's balance written for the mean radiant temperature, ISO 7726:1998, annex B (from memory):
//   forced: T_r = [(t_g + 273)^4 + 1.1e8 V^0.6 / (0.95 D^0.4) (t_g - t_a)]^(1/4) - 273
// Globe 313 K, air 303 K, 0.5 m/s, its own rounded constant in place of 6.3 / sigma: 0.1 K.
TEST(Globe, GivesBackTheMeanRadiantTemperatureOfTheStandard) {
  HeatSurroundings around = shade(29.85, 0.5, 0.5);
  around.radiant_k =
      std::pow(std::pow(313.0, 4) + 1.1e8 * std::pow(0.5, 0.6) / (0.95 * std::pow(0.15, 0.4)) * 10.0, 0.25);
  EXPECT_NEAR(globe_temperature_k(around), 313.0, 0.1);
}

// By hand: a sphere shows a quarter of its skin to the sun and half of a level plane's light falls on it from a dome.
TEST(Globe, GathersSunlightAsASphereDoes) {
  HeatSurroundings around;
  around.beam_normal_w_m2 = 800.0;
  EXPECT_DOUBLE_EQ(sphere_sunlight_w_m2(around), 200.0);
  around.diffuse_level_w_m2 = 100.0;
  around.reflected_level_w_m2 = 60.0;
  EXPECT_DOUBLE_EQ(sphere_sunlight_w_m2(around), 280.0);
  const double light_only_k = std::pow(280.0 / kStefanBoltzmann, 0.25);
  around.radiant_k = 0.0;
  around.air_k = light_only_k;  // no film: radiation alone is in balance
  EXPECT_NEAR(globe_temperature_k(around), light_only_k, 1e-9);
}

TEST(Globe, StandsOutOverTheAirInTheSunLessInWind) {
  HeatSurroundings around = shade(35.0, 0.4, 0.5);
  around.beam_normal_w_m2 = 850.0;
  around.diffuse_level_w_m2 = 120.0;
  around.reflected_level_w_m2 = 150.0;
  const double still_air_k = globe_temperature_k(around);
  around.speed_m_s = 4.0;
  const double windy_k = globe_temperature_k(around);
  EXPECT_GT(still_air_k, kelvin(47.0));  // 12 to 22 K over the air are common in sun (from memory)
  EXPECT_LT(still_air_k, kelvin(57.0));
  EXPECT_GT(windy_k, kelvin(35.0));
  EXPECT_LT(windy_k, still_air_k - 5.0);
}

TEST(NaturalWetBulb, IsTheAirsWhenSaturatedAndInTheShade) {
  EXPECT_NEAR(natural_wet_bulb_k(shade(30.0, 1.0, 1.0)), kelvin(30.0), 1e-6);
}

// A ventilated wet bulb in the shade is the thermodynamic one, nearly: Lewis' relation. Slow air: warmer, by the walls'
// radiation.
TEST(NaturalWetBulb, ComesToTheThermodynamicOneInFastAir) {
  for (const double air_c : {15.0, 25.0, 35.0, 45.0})
    for (const double humidity : {0.2, 0.5, 0.8}) {
      const HeatSurroundings fast = shade(air_c, humidity, 5.0), slow = shade(air_c, humidity, 0.3);
      const double bulb_k = wet_bulb_k(fast.air_k, fast.humidity_ratio, fast.pressure_pa);
      EXPECT_NEAR(natural_wet_bulb_k(fast), bulb_k, 0.2) << air_c << " " << humidity;
      EXPECT_GT(natural_wet_bulb_k(slow), natural_wet_bulb_k(fast));
      EXPECT_NEAR(natural_wet_bulb_k(slow), bulb_k, 1.3) << air_c << " " << humidity;
    }
}

TEST(NaturalWetBulb, IsWarmedByTheSunByAFewKelvin) {
  HeatSurroundings around = shade(35.0, 0.4, 1.0);
  const double in_shade_k = natural_wet_bulb_k(around);
  around.beam_normal_w_m2 = 850.0;
  around.diffuse_level_w_m2 = 120.0;
  around.reflected_level_w_m2 = 150.0;
  const double warmed = natural_wet_bulb_k(around) - in_shade_k;
  EXPECT_GT(warmed, 0.5);  // 1 to 3 K in a breeze (from memory)
  EXPECT_LT(warmed, 3.5);
}

TEST(Wbgt, OfSurroundingsTakesTheFormThatFits) {
  HeatSurroundings around = shade(36.0, 0.4, 0.5);
  EXPECT_DOUBLE_EQ(wbgt_k(around), wbgt_without_sun_k(natural_wet_bulb_k(around), globe_temperature_k(around)));
  around.beam_normal_w_m2 = 500.0;
  EXPECT_DOUBLE_EQ(wbgt_k(around),
                   wbgt_in_sun_k(natural_wet_bulb_k(around), globe_temperature_k(around), around.air_k));
}

/// How far a level surface cools below the air on a clear night [K]: longwave to the sky against the film, on one side
/// or both (its underside sees ground as warm as the air).
double below_air_k(double air_k, double length_m, double speed_m_s, bool both_sides) {
  const double sky_k = air_k - 15.0;
  const auto film = [&](double tilt_rad) {
    return surface_film(tilt_rad, length_m / 4.0, speed_m_s, air_k, 101325.0, length_m);
  };
  double low = air_k - 15.0, high = air_k;
  for (int i = 0; i < 60; ++i) {
    const double surface_k = 0.5 * (low + high), difference_k = surface_k - air_k;
    double gain =
        0.95 * (blackbody_emission(sky_k) - blackbody_emission(surface_k)) - film(0.0).at(difference_k) * difference_k;
    if (both_sides)
      gain += 0.95 * (blackbody_emission(air_k) - blackbody_emission(surface_k)) -
              film(kPi).at(difference_k) * difference_k;
    (gain > 0.0 ? low : high) = surface_k;
  }
  return air_k - 0.5 * (low + high);
}

// HAZ-08. Clear calm night, sky 15 K below the air: exposed surfaces are 2 to 5 K below the air [FAO, Frost Protection,
// 2005, ch. 3; from memory], with the films and the longwave of this project. A leaf of 10 cm in the 0.3 to 0.5 m/s of
// a calm night, and a sheet that is warmed from one side alone.
TEST(RadiationFrost, ExposedSurfacesAreColderThanTheAir) {
  for (const double speed : {0.3, 0.5}) {
    EXPECT_GT(below_air_k(kelvin(2.0), 0.1, speed, true), 2.0) << speed;
    EXPECT_LT(below_air_k(kelvin(2.0), 0.1, speed, true), 5.0) << speed;
  }
  EXPECT_GT(below_air_k(kelvin(2.0), 0.2, 1.5, false), 2.0);
  EXPECT_LT(below_air_k(kelvin(2.0), 0.2, 1.5, false), 5.0);
  EXPECT_LT(below_air_k(kelvin(2.0), 0.1, 10.0, true), 1.0) << "wind keeps frost off";
}

}  // namespace
}  // namespace noonhouse
