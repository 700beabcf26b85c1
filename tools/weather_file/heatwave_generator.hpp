// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <chrono>
#include <cstdint>

#include "models/weather/weather_series.hpp"

namespace noonhouse {

/// What an invented heatwave looks like. Defaults: a hot dry high site in July; invented, no station's record.
/// Days count from 1; hours are local standard time.
/// What a scenario can set has the defaults of its field list (tests/tools/scenario_heatwave_defaults_test.cpp).
struct HeatwaveSettings {
  std::chrono::year_month_day start{std::chrono::year{2025}, std::chrono::July, std::chrono::day{14}};
  int days = 7;
  double latitude_deg = 35.0, longitude_deg = -106.6, altitude_m = 1600.0, utc_offset_s = -7.0 * 3600.0;
  double albedo = 0.25;

  double first_day_high_k = 306.15;  ///< highest temperature of day 1, when it comes before the peak
  double peak_high_k = 313.15;       ///< highest temperature of the peak day
  double last_day_high_k = 309.15;   ///< highest temperature of the last day, when it comes after the peak
  int peak_day = 5;
  double first_night_low_k = 289.15;  ///< lowest temperature of the morning of day 1
  double peak_night_low_k = 294.15;   ///< lowest temperature of the morning of the peak day
  double highest_at_h = 15.5;         ///< hour of the day's highest temperature
  double lowest_after_sunrise_h = 0.5;
  double dew_point_k = 279.15;

  double wind_day_m_s = 3.5, wind_night_m_s = 1.0;  ///< around mid-afternoon, and before sunrise
  double wind_from_day_deg = 225.0, wind_from_night_deg = 60.0;
  double wind_variation = 0.25;  ///< relative standard deviation of the seeded variation, 0 .. 1

  double linke_turbidity = 3.5;  ///< air mass 2, clear days
  int dust_day = 0;              ///< 0: none
  double dust_strength = 0.5;    ///< vertical optical depth of the dust at noon

  int storm_day = 0;  ///< 0: none
  double storm_start_h = 17.0, storm_minutes = 40.0, storm_rain_mm = 12.0, storm_gust_m_s = 16.0;
  double storm_drop_k = 9.0;  ///< fall of temperature under the storm

  double step_s = 600.0;
  std::uint32_t seed = 1;
};

/// Invented weather of a heatwave: the same settings give the same bytes.
///
/// Temperature: lowest shortly after sunrise, highest in mid-afternoon, half cosine waves between (the evening's wave
/// falls faster at first); highs and lows go straight from the first to the peak to the last day.
/// Humidity: the dew point's ratio at the place's pressure, limited to saturation.
/// Sun: a clear sky with Linke turbidity (clear_sky in models/properties); dust takes from the beam by
/// Bouguer's law and gives two thirds of what it takes to the diffuse sky (forward scattering; own assumption).
/// Storm: clouds come 30 min before the rain and go in the two hours after; a single rain burst whose sum is the one
/// asked for; the gust front is in the rows' wind; temperature falls and humidity rises as rain evaporates.
/// Wind: day and night levels with a seeded, correlated variation.
/// Does not model: fronts, passing fair-weather clouds, day-to-day change of pressure and humidity.
/// Throws UserError(out_of_range) for settings that contradict each other.
WeatherSeries make_heatwave(const HeatwaveSettings& settings);

}  // namespace noonhouse
