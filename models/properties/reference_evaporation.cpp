// SPDX-License-Identifier: Apache-2.0
#include "models/properties/reference_evaporation.hpp"

#include <cmath>

#include "models/properties/combination.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/properties/saturation.hpp"
#include "models/properties/sky.hpp"

namespace noonhouse {
namespace {

/// Eqs. (6) and (53), which differ in the factor [kg K s/(kPa m3)] alone.
ReferenceEvaporation reference_evaporation(double available_j_m2, double factor, const ReferenceAir& air) {
  const double warmth = air.temperature_k - kZeroCelsius + 273.0;
  CombinationTerms<double> terms{.slope_pa_k = tetens_slope_pa_per_k(air.temperature_k),
                                 .psychrometric_pa_k = psychrometric_constant_pa_per_k(air.pressure_pa),
                                 .available = kFaoEvaporationPerJoule * available_j_m2,
                                 .aerodynamic_factor = factor / 1000.0 / warmth * air.wind_2m_m_s,
                                 .deficit_pa = 0.0,
                                 .vapour_share = 1.0 / (1.0 + 0.34 * air.wind_2m_m_s)};
  ReferenceEvaporation evaporated;
  evaporated.by_radiation_kg_m2 = combination(terms);
  terms.available = 0.0;
  terms.deficit_pa = air.deficit_pa;
  evaporated.by_dry_air_kg_m2 = combination(terms);
  return evaporated;
}

}  // namespace

double fao_wind_at_2m_m_s(double wind_m_s, double height_m) {
  return wind_m_s * 4.87 / std::log(67.8 * height_m - 5.42);
}

double fao_saturation_of_day_pa(double coldest_k, double warmest_k) {
  return 0.5 * (tetens_pressure_pa(coldest_k) + tetens_pressure_pa(warmest_k));
}

double fao_vapour_pressure_pa(double coldest_k, double warmest_k, double dampest_humidity, double driest_humidity) {
  return 0.5 * (tetens_pressure_pa(coldest_k) * dampest_humidity + tetens_pressure_pa(warmest_k) * driest_humidity);
}

double fao_vapour_pressure_of_mean_pa(double coldest_k, double warmest_k, double mean_humidity) {
  return mean_humidity * fao_saturation_of_day_pa(coldest_k, warmest_k);
}

double fao_vapour_pressure_of_psychrometer_pa(double dry_bulb_k, double wet_bulb_k, double pressure_pa) {
  return tetens_pressure_pa(wet_bulb_k) - 0.000662 * pressure_pa * (dry_bulb_k - wet_bulb_k);
}

double fao_hour_angle_rad(int day_of_year, double clock_h, double longitude_east_rad, double zone_meridian_east_rad) {
  const double east_deg = (longitude_east_rad - zone_meridian_east_rad) / kRadiansPerDegree;
  return kPi / 12.0 * (clock_h + 0.06667 * east_deg + fao_seasonal_correction_h(day_of_year) - 12.0);
}

double fao_seasonal_correction_h(int day_of_year) {
  const double b = 2.0 * kPi * (day_of_year - 81) / 364.0;
  return 0.1645 * std::sin(2.0 * b) - 0.1255 * std::cos(b) - 0.025 * std::sin(b);
}

double fao_net_longwave_hourly(double temperature_k, double vapour_pressure_pa, double clearness_ratio) {
  return fao_net_longwave_daily(temperature_k, temperature_k, vapour_pressure_pa, clearness_ratio) / 24.0;
}

double fao_soil_heat_of_month(double month_before_k, double month_after_k) {
  return 0.07e6 * (month_after_k - month_before_k);
}

double fao_soil_heat_of_month_so_far(double month_before_k, double month_k) {
  return 0.14e6 * (month_k - month_before_k);
}

ReferenceEvaporation reference_evaporation_daily(double net_radiation_j_m2, double soil_heat_j_m2,
                                                 const ReferenceAir& air) {
  return reference_evaporation(net_radiation_j_m2 - soil_heat_j_m2, 900.0, air);
}

ReferenceEvaporation reference_evaporation_hourly(double net_radiation_j_m2, double soil_heat_j_m2,
                                                  const ReferenceAir& air) {
  return reference_evaporation(net_radiation_j_m2 - soil_heat_j_m2, 37.0, air);
}

}  // namespace noonhouse
