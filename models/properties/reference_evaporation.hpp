// SPDX-License-Identifier: Apache-2.0
#pragma once

/// Evapotranspiration of the reference crop, and the steps towards it that are found nowhere else here: Allen et al.
/// 1998, FAO-56, whose equation numbers stand in brackets. The reference is grass 0.12 m tall, well watered, with a
/// surface resistance of 70 s/m and an albedo of 0.23. Energy is J/m2 and water kg/m2 (1 kg/m2 is 1 mm), each over the
/// day or the hour that the function names. Relative humidity is a share, 1 = saturated.
namespace noonhouse {

/// Water that a joule evaporates [kg/J]: 0.408 mm for 1 MJ/m2.   [eq. (20)]
inline constexpr double kFaoEvaporationPerJoule = 0.408e-6;

/// Wind at 2 m above short grass [m/s] from wind at a height [m], above 0.1 m.
///   u_2 = u_z 4.87 / ln(67.8 z - 5.42)   [eq. (47)]
double fao_wind_at_2m_m_s(double wind_m_s, double height_m);

/// Saturation vapour pressure of a day [Pa]: the mean of those at its extremes [K].   [eq. (12)]
double fao_saturation_of_day_pa(double coldest_k, double warmest_k);

/// Vapour pressure of a day [Pa] from its extremes of temperature [K] and humidity, the dampest at the coldest.
///   e_a = (e(T_min) RH_max + e(T_max) RH_min) / 2   [eq. (17)]
double fao_vapour_pressure_pa(double coldest_k, double warmest_k, double dampest_humidity, double driest_humidity);

/// Vapour pressure of a day [Pa] from its mean humidity; less sure than from the extremes.   [eq. (19)]
double fao_vapour_pressure_of_mean_pa(double coldest_k, double warmest_k, double mean_humidity);

/// Vapour pressure [Pa] from a ventilated psychrometer.
///   e_a = e(T_wet) - 0.000662 p (T_dry - T_wet)   [eqs. (15), (16)]
double fao_vapour_pressure_of_psychrometer_pa(double dry_bulb_k, double wet_bulb_k, double pressure_pa);

/// Hour angle [rad] at a time of the clock [h], zero when the sun is highest, positive in the afternoon.
///   pi / 12 (t + 0.06667 h/deg (east of the zone's meridian) + S_c - 12)   [eq. (31)]
/// Longitudes are positive to the east.
double fao_hour_angle_rad(int day_of_year, double clock_h, double longitude_east_rad, double zone_meridian_east_rad);

/// Sun time less mean time [h], S_c: 0.1645 sin 2b - 0.1255 cos b - 0.025 sin b, b = 2 pi (J - 81) / 364.
///   [eqs. (32), (33)]
double fao_seasonal_correction_h(int day_of_year);

/// Sunlight that the reference crop keeps [unit of the argument]: (1 - 0.23) R_s.   [eq. (38)]
constexpr double fao_net_shortwave(double solar) { return (1.0 - 0.23) * solar; }

/// Net longwave loss of an hour [J/m2], positive upwards: eq. (39) with the temperature of the hour [K] and a 24th of
/// the day's Stefan-Boltzmann constant. By night the ratio of solar to clear-sky energy is that of the late afternoon.
double fao_net_longwave_hourly(double temperature_k, double vapour_pressure_pa, double clearness_ratio);

/// Heat into the soil of a month [J/m2 a day], positive downwards, from mean temperatures [K] of the months before and
/// after: 0.07 MJ/(m2 K).   [eq. (43)]
double fao_soil_heat_of_month(double month_before_k, double month_after_k);

/// The same while the next month is not yet known, from this month and the one before: 0.14 MJ/(m2 K).   [eq. (44)]
double fao_soil_heat_of_month_so_far(double month_before_k, double month_k);

/// Heat into the soil of an hour [unit of the argument]: 0.1 R_n by day, 0.5 R_n by night.   [eqs. (45), (46)]
constexpr double fao_soil_heat_hourly(double net_radiation, bool sun_is_up) {
  return (sun_is_up ? 0.1 : 0.5) * net_radiation;
}

/// Air over the reference crop.
struct ReferenceAir {
  double temperature_k = 0.0;  ///< mean of the hour; of a day, the mean of its extremes
  double deficit_pa = 0.0;
  double wind_2m_m_s = 0.0;
  double pressure_pa = 0.0;
};

/// Water evaporated in the two parts that worked examples print [kg/m2]; either may be negative.
struct ReferenceEvaporation {
  double by_radiation_kg_m2 = 0.0;
  double by_dry_air_kg_m2 = 0.0;
  double total_kg_m2() const { return by_radiation_kg_m2 + by_dry_air_kg_m2; }
};

/// Reference evapotranspiration of a day from that day's net radiation and heat into the soil [J/m2].
///   ET_0 = (0.408 s (R_n - G) + gamma 900 / (T + 273) u_2 D) / (s + gamma (1 + 0.34 u_2))   [eq. (6)]
/// The combination equation with r = 70 s/m / (208 s/m / u_2). Does not model: another crop, a dry soil, the sheltered
/// air of a house.
ReferenceEvaporation reference_evaporation_daily(double net_radiation_j_m2, double soil_heat_j_m2,
                                                 const ReferenceAir& air);

/// The same of an hour, with 37 in place of 900.   [eq. (53)]
ReferenceEvaporation reference_evaporation_hourly(double net_radiation_j_m2, double soil_heat_j_m2,
                                                  const ReferenceAir& air);

}  // namespace noonhouse
