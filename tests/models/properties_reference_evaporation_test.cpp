// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include "models/properties/atmosphere.hpp"
#include "models/properties/constants.hpp"
#include "models/properties/irradiance.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/properties/reference_evaporation.hpp"
#include "models/properties/saturation.hpp"
#include "models/properties/sky.hpp"
#include "models/properties/sun.hpp"
#include "tests/support/printed_units.hpp"

// The worked examples of Allen et al. 1998, FAO-56. Unless a line says otherwise, a tolerance is half a unit of the
// last printed digit, and every step is fed with what the steps before it gave, not with the printed number.
namespace noonhouse {
namespace {

constexpr double kMega = 1e6;
// Example 14, and the factor 0.748 of Annex 2, Table 2.9 for 10 m.
TEST(ReferenceWind, IsBroughtToTwoMetres) {
  EXPECT_NEAR(fao_wind_at_2m_m_s(3.2, 10.0), 2.4, 0.05);
  EXPECT_NEAR(fao_wind_at_2m_m_s(1.0, 10.0), 0.748, 0.0005);
  EXPECT_NEAR(fao_wind_at_2m_m_s(1.0, 2.0), 1.0, 0.001) << "wind at 2 m is left as it is";
}

// Examples 3, 4 and 5: kPa, tolerance 0.01 for the two that the pages print from rounded tables.
TEST(ReferenceHumidity, OfTheDayAndOfThePsychrometer) {
  EXPECT_NEAR(fao_saturation_of_day_pa(kelvin(15.0), kelvin(24.5)), 2390.0, 5.0);
  EXPECT_NEAR(fao_vapour_pressure_of_psychrometer_pa(kelvin(25.6), kelvin(19.5), fao_pressure_pa(1200.0)), 1910.0, 5.0);
  EXPECT_NEAR(fao_vapour_pressure_pa(kelvin(18.0), kelvin(25.0), 0.82, 0.54), 1700.0, 10.0);
  EXPECT_NEAR(fao_vapour_pressure_of_mean_pa(kelvin(18.0), kelvin(25.0), 0.68), 1780.0, 10.0);
}

// Example 13: March 14.1, April 16.1, May 18.8 degC; 0.33 MJ/m2 a day, or 0.13 mm. With May unknown, eq. (44) by hand:
// 0.14 (16.1 - 14.1) = 0.28.
TEST(SoilHeat, OfAMonth) {
  const double april = fao_soil_heat_of_month(kelvin(14.1), kelvin(18.8));
  EXPECT_NEAR(april / kMega, 0.33, 0.005);
  EXPECT_NEAR(kFaoEvaporationPerJoule * april, 0.13, 0.005);
  EXPECT_NEAR(fao_soil_heat_of_month_so_far(kelvin(14.1), kelvin(16.1)) / kMega, 0.28, 0.005);
  EXPECT_LT(fao_soil_heat_of_month(kelvin(18.8), kelvin(14.1)), 0.0) << "in autumn the soil gives heat back";
}

// Example 17: Bangkok, 13.73 N, 2 m, April. The steps beyond R_s, R_n, G and the result are from memory. The
// psychrometric constant is that of the printed 101.3 kPa; 0.0001.
TEST(ReferenceEvaporation, OfAMonthInBangkok) {
  const double latitude = 13.73 * kDeg, cold = kelvin(25.6), warm = kelvin(34.8), vapour = 2850.0;
  const double mean = 0.5 * (cold + warm);
  EXPECT_NEAR(tetens_slope_pa_per_k(mean) / 1000.0, 0.246, 0.0005);
  const double pressure = fao_pressure_pa(2.0);
  EXPECT_NEAR(pressure / 1000.0, 101.3, 0.05);
  EXPECT_NEAR(psychrometric_constant_pa_per_k(pressure) / 1000.0, 0.0674, 0.0001);
  const double saturation = fao_saturation_of_day_pa(cold, warm);
  EXPECT_NEAR(tetens_pressure_pa(warm) / 1000.0, 5.56, 0.005);
  EXPECT_NEAR(tetens_pressure_pa(cold) / 1000.0, 3.28, 0.005);
  EXPECT_NEAR(saturation / 1000.0, 4.42, 0.005);
  const double outside = extraterrestrial_daily(latitude, 105), day_h = daylight_h(latitude, fao_declination_rad(105));
  EXPECT_NEAR(outside / kMega, 38.06, 0.005);
  EXPECT_NEAR(day_h, 12.31, 0.005);
  const double solar = angstrom_radiation(8.5, day_h, outside), clear = fao_clear_sky(2.0, outside);
  EXPECT_NEAR(solar / kMega, 22.65, 0.005);
  EXPECT_NEAR(clear / kMega, 28.54, 0.005);
  EXPECT_NEAR(fao_net_shortwave(solar) / kMega, 17.44, 0.005);
  const double longwave = fao_net_longwave_daily(cold, warm, vapour, solar / clear);
  EXPECT_NEAR(longwave / kMega, 3.11, 0.005);
  const double net = fao_net_shortwave(solar) - longwave;
  EXPECT_NEAR(net / kMega, 14.33, 0.005);
  const double soil = fao_soil_heat_of_month_so_far(kelvin(29.2), mean);
  EXPECT_NEAR(soil / kMega, 0.14, 0.005);
  const ReferenceEvaporation evaporated = reference_evaporation_daily(
      net, soil,
      {.temperature_k = mean, .deficit_pa = saturation - vapour, .wind_2m_m_s = 2.0, .pressure_pa = pressure});
  EXPECT_NEAR(evaporated.by_radiation_kg_m2, 3.97, 0.005);
  EXPECT_NEAR(evaporated.by_dry_air_kg_m2, 1.75, 0.005);
  EXPECT_NEAR(evaporated.total_kg_m2(), 5.72, 0.005);
}

// Example 18: Uccle, 50.80 N, 100 m, 6 July. The page takes 1.431 kPa for the saturation at 12.3 degC, which eq. (11)
// gives as 1.4303, so vapour pressures hold to 0.001 kPa; radiation, from rounded steps, to 0.01 MJ/m2; wind, from the
// rounded 2.78 m/s, to 0.001 m/s.
TEST(ReferenceEvaporation, OfADayInUccle) {
  const double latitude = 50.80 * kDeg, cold = kelvin(12.3), warm = kelvin(21.5), mean = 0.5 * (cold + warm);
  const double pressure = fao_pressure_pa(100.0);
  EXPECT_NEAR(pressure / 1000.0, 100.1, 0.05);
  EXPECT_NEAR(psychrometric_constant_pa_per_k(pressure) / 1000.0, 0.0666, 0.00005);
  EXPECT_NEAR(tetens_slope_pa_per_k(mean) / 1000.0, 0.122, 0.0005);
  EXPECT_NEAR(tetens_pressure_pa(cold) / 1000.0, 1.431, 0.001);
  EXPECT_NEAR(tetens_pressure_pa(warm) / 1000.0, 2.564, 0.0005);
  const double saturation = fao_saturation_of_day_pa(cold, warm);
  const double vapour = fao_vapour_pressure_pa(cold, warm, 0.84, 0.63);
  EXPECT_NEAR(saturation / 1000.0, 1.997, 0.001);
  EXPECT_NEAR(vapour / 1000.0, 1.409, 0.001);
  EXPECT_NEAR((saturation - vapour) / 1000.0, 0.589, 0.001);
  const double wind = fao_wind_at_2m_m_s(10.0 / 3.6, 10.0);
  EXPECT_NEAR(wind, 2.078, 0.001);
  const double outside = extraterrestrial_daily(latitude, 187), day_h = daylight_h(latitude, fao_declination_rad(187));
  EXPECT_NEAR(outside / kMega, 41.09, 0.005);
  EXPECT_NEAR(day_h, 16.1, 0.05);
  const double solar = angstrom_radiation(9.25, day_h, outside), clear = fao_clear_sky(100.0, outside);
  EXPECT_NEAR(solar / kMega, 22.07, 0.01);
  EXPECT_NEAR(clear / kMega, 30.90, 0.005);
  EXPECT_NEAR(fao_net_shortwave(solar) / kMega, 17.00, 0.01);
  const double longwave = fao_net_longwave_daily(cold, warm, vapour, solar / clear);
  EXPECT_NEAR(longwave / kMega, 3.71, 0.01);
  const double net = fao_net_shortwave(solar) - longwave;
  EXPECT_NEAR(net / kMega, 13.28, 0.01);
  const ReferenceEvaporation evaporated = reference_evaporation_daily(
      net, 0.0,
      {.temperature_k = mean, .deficit_pa = saturation - vapour, .wind_2m_m_s = wind, .pressure_pa = pressure});
  EXPECT_NEAR(evaporated.by_radiation_kg_m2, 2.81, 0.005);
  EXPECT_NEAR(evaporated.by_dry_air_kg_m2, 1.07, 0.005);
  EXPECT_NEAR(evaporated.total_kg_m2(), 3.88, 0.005);
}

/// Example 19: N'Diaye, 16.217 N, 16.25 W in the zone of 15 W, 8 m, 1 October.
struct HourAtNDiaye {
  double celsius, humidity, wind, solar_mj;
  bool sun_is_up;
  double clearness;  ///< of the late afternoon, for the night
  double vapour() const { return humidity * tetens_pressure_pa(kelvin(celsius)); }
  double longwave() const { return fao_net_longwave_hourly(kelvin(celsius), vapour(), clearness); }
  double net() const { return fao_net_shortwave(solar_mj * kMega) - longwave(); }
  double soil() const { return fao_soil_heat_hourly(net(), sun_is_up); }
  ReferenceEvaporation evaporated() const {
    return reference_evaporation_hourly(net(), soil(),
                                        {.temperature_k = kelvin(celsius),
                                         .deficit_pa = tetens_pressure_pa(kelvin(celsius)) - vapour(),
                                         .wind_2m_m_s = wind,
                                         .pressure_pa = fao_pressure_pa(8.0)});
  }
};

// The sun of Example 19; by night it stands below the horizon.
TEST(ReferenceEvaporation, HasTheSunOfTheHoursAtNDiaye) {
  const double west = -16.25 * kDeg, zone = -15.0 * kDeg, latitude = 16.217 * kDeg;
  EXPECT_NEAR(fao_declination_rad(274), -0.0753, 0.00005);
  EXPECT_NEAR(fao_seasonal_correction_h(274), 0.1889, 0.00005);
  const double day = fao_hour_angle_rad(274, 14.5, west, zone);
  EXPECT_NEAR(day, 0.682, 0.0005);
  EXPECT_NEAR(day - kPi / 24.0, 0.5512, 0.00005);
  EXPECT_NEAR(day + kPi / 24.0, 0.8130, 0.00005);
  const double outside = extraterrestrial_hourly(latitude, 274, day - kPi / 24.0, day + kPi / 24.0);
  EXPECT_NEAR(outside / kMega, 3.543, 0.0005);
  EXPECT_NEAR(fao_clear_sky(8.0, outside) / kMega, 2.658, 0.0005);
  const double night = fao_hour_angle_rad(274, 2.5, west, zone);
  EXPECT_NEAR(night, -2.46, 0.005);
  EXPECT_EQ(extraterrestrial_hourly(latitude, 274, night - kPi / 24.0, night + kPi / 24.0), 0.0);
}

// Example 19, 14 to 15 h. R_n - G and what follows from rounded steps: 0.001.
TEST(ReferenceEvaporation, OfAnHourByDayAtNDiaye) {
  const HourAtNDiaye hour{
      .celsius = 38.0, .humidity = 0.52, .wind = 3.3, .solar_mj = 2.450, .sun_is_up = true, .clearness = 0.922};
  EXPECT_NEAR(tetens_slope_pa_per_k(kelvin(38.0)) / 1000.0, 0.358, 0.0005);
  EXPECT_NEAR(psychrometric_constant_pa_per_k(fao_pressure_pa(8.0)) / 1000.0, 0.0673, 0.00005);
  EXPECT_NEAR(tetens_pressure_pa(kelvin(38.0)) / 1000.0, 6.625, 0.0005);
  EXPECT_NEAR(hour.vapour() / 1000.0, 3.445, 0.0005);
  EXPECT_NEAR(fao_net_shortwave(2.450), 1.887, 0.0006);
  EXPECT_NEAR(hour.longwave() / kMega, 0.137, 0.0005);
  EXPECT_NEAR(hour.net() / kMega, 1.749, 0.001);
  EXPECT_NEAR(hour.soil() / kMega, 0.175, 0.0005);
  EXPECT_NEAR((hour.net() - hour.soil()) / kMega, 1.574, 0.001);
  EXPECT_NEAR(hour.evaporated().by_radiation_kg_m2, 0.46, 0.005);
  EXPECT_NEAR(hour.evaporated().by_dry_air_kg_m2, 0.17, 0.005);
  EXPECT_NEAR(hour.evaporated().total_kg_m2(), 0.63, 0.005);
}

// Example 19, 2 to 3 h: what the sky draws from the crop is nearly what the dry air gives. The page prints 0.01 mm for
// the part of the dry air, where its own steps, 0.0673 * 37 / 301 * 1.9 * 0.378 / (0.220 + 0.0673 * 1.646), make 0.018.
TEST(ReferenceEvaporation, OfAnHourByNightAtNDiaye) {
  const HourAtNDiaye hour{
      .celsius = 28.0, .humidity = 0.90, .wind = 1.9, .solar_mj = 0.0, .sun_is_up = false, .clearness = 0.8};
  EXPECT_NEAR(tetens_slope_pa_per_k(kelvin(28.0)) / 1000.0, 0.220, 0.0005);
  EXPECT_NEAR(tetens_pressure_pa(kelvin(28.0)) / 1000.0, 3.780, 0.0005);
  EXPECT_NEAR(hour.vapour() / 1000.0, 3.402, 0.0005);
  EXPECT_NEAR(hour.longwave() / kMega, 0.100, 0.0005);
  EXPECT_NEAR(hour.net() / kMega, -0.100, 0.0005);
  EXPECT_NEAR(hour.soil() / kMega, -0.050, 0.0005);
  EXPECT_NEAR(hour.evaporated().by_radiation_kg_m2, -0.01, 0.005);
  EXPECT_NEAR(hour.evaporated().by_dry_air_kg_m2, 0.018, 0.0005);
  EXPECT_NEAR(hour.evaporated().total_kg_m2(), 0.0, 0.005);
}

}  // namespace
}  // namespace noonhouse
