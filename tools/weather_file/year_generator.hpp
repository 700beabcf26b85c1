// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <chrono>
#include <cstdint>

#include "models/weather/weather_series.hpp"

namespace noonhouse {

/// The middle of the half year in which rain days are more frequent, as the place's own hemisphere has it.
enum class Season { winter, spring, summer, autumn };

/// What an invented year looks like. Defaults: a temperate place inland; invented, no station's record.
/// Summer and winter are those of the latitude's hemisphere: the coldest day is in the middle of January in the north
/// and of July in the south. Hours are local standard time. What a scenario can set has the defaults of its field list
/// (tests/tools/scenario_year_defaults_test.cpp).
struct YearSettings {
  std::chrono::year_month_day start{std::chrono::year{2025}, std::chrono::January, std::chrono::day{1}};
  int days = 365;
  double latitude_deg = 50.0, longitude_deg = 10.0, altitude_m = 300.0, utc_offset_s = 3600.0;
  double albedo = 0.25;

  double warmest_month_mean_k = 292.15;  ///< of July (January in the south), expected over many years
  double coldest_month_mean_k = 273.65;  ///< of January (July in the south)
  double summer_daily_swing_k = 13.0;    ///< highest less lowest of a day in a clear spell at midsummer
  double winter_daily_swing_k = 7.0;     ///< the same at midwinter
  double weather_swing_k = 3.5;          ///< standard deviation of a day's mean from its season's
  double summer_dew_gap_k = 2.5;         ///< dew point below the temperature at dawn, mean of days without rain
  double winter_dew_gap_k = 1.0;

  double rain_a_year_mm = 700.0;  ///< of each calendar year
  int rain_days_a_year = 120;     ///< with 1 mm or more
  Season wetter_season = Season::summer;
  double wetter_share = 0.55;  ///< of the rain days, in the half year about the middle of that season

  double cloudy_days = 0.6;  ///< share of the days of a calendar year that are in cloudy spells
  double clear_cover = 0.2;  ///< cloud cover of a clear spell, 0 .. 1
  double cloudy_cover = 0.9;

  double wind_day_m_s = 3.0, wind_night_m_s = 1.5;  ///< means around mid-afternoon, and before sunrise
  double wind_from_deg = 240.0;                     ///< about which it turns from day to day
  double wind_variation = 0.5;                      ///< relative standard deviation, 0 .. 1
  double linke_turbidity = 3.5;                     ///< air mass 2

  double highest_at_h = 15.0, lowest_after_sunrise_h = 0.5;
  double step_s = 1800.0;
  std::uint32_t seed = 1;
};

/// Invented weather of any days of any years: the same settings give the same bytes, and a day's weather depends on its
/// date and the seed alone, not on where the series starts or ends.
///
/// Temperature: the season's mean, one wave a year between the two months' means; departures of days that fade with 3
/// days, normal, straight lines between noons; and the day's wave, lowest shortly after sunrise, highest in
/// mid-afternoon, as the invented heatwave has it. The day's swing goes with the square of the light that its clouds
/// let through: R_s proportional to sqrt(T_max - T_min) [Hargreaves & Samani; Allen et al. 1998, FAO-56, eq. (50)].
/// Clouds: clear and cloudy spells by a fading score of days (2 days); within a day the cover varies about its spell's
/// every three hours. In each calendar year as many days are cloudy and rainy as asked, those of the highest score.
/// Light: a clear sky with Linke turbidity under that cover, by under_clouds in tools/weather_file.
/// Rain: one burst a rain day under full cover, always on cloudy days; 1 mm and an exponentially distributed rest
/// [Richardson 1981, Water Resour. Res. 17, 182; from memory], scaled so that each calendar year has what was asked.
/// Humidity: dew points of dawns, straight lines between; on dry days below the dawn's temperature by 0 to 2 times the
/// gap, on rain days at it. Never above saturation, over ice below freezing, so mild nights after warm days give dew.
/// Wind: levels of day and night times a log-normal factor of mean one that fades with 12 hours.
/// Does not model: snow (rain falls as water at any temperature), pressure, fronts that change wind, air and cloud
/// together, cloudier winters, showers of an hour within a fine day, years warmer or wetter than others.
/// Throws UserError(out_of_range) for settings that contradict each other.
WeatherSeries make_year(const YearSettings& settings);

}  // namespace noonhouse
