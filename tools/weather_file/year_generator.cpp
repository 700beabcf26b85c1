// SPDX-License-Identifier: Apache-2.0
#include "tools/weather_file/year_generator.hpp"

#include <fmt/format.h>

#include <cmath>
#include <string>

#include "models/properties/atmosphere.hpp"
#include "models/properties/constants.hpp"
#include "sim/core/errors.hpp"
#include "sim/core/tick.hpp"
#include "tools/weather_file/invented_series.hpp"
#include "tools/weather_file/weather_shapes.hpp"
#include "tools/weather_file/year_shapes.hpp"

namespace noonhouse {
namespace {

constexpr int kHalfYear_days = 182, kYear_days = 365;

void require_of_year(bool holds, const std::string& message) {
  if (!holds) throw UserError(ErrorKind::out_of_range, "invented year: " + message);
}

void require_share(const char* name, double value) {
  require_of_year(value >= 0.0 && value <= 1.0, fmt::format("{}: read {}; allowed is 0 to 1", name, value));
}

void check_calendar(const YearSettings& s) {
  require_of_year(s.start.ok(), "the start is no date");
  require_of_year(s.days >= 1 && s.days <= 3660, fmt::format("days: read {}; allowed is 1 to 3660", s.days));
  require_of_year(
      step_divides_day(s.step_s),
      fmt::format("step: read {} s; allowed are whole seconds from 60 to 3600 that divide a day", s.step_s));
  require_of_year(std::abs(s.latitude_deg) <= 65.0,
                  fmt::format("latitude: read {} deg; allowed is -65 to 65, where the sun rises and sets all year",
                              s.latitude_deg));
  require_of_year(
      std::abs(s.utc_offset_s / 3600.0 - s.longitude_deg / 15.0) <= 3.0,
      fmt::format("utc_offset: read {:.2f} h; at {} deg of longitude the sun keeps {:.2f} h, give one within 3 h of "
                  "it",
                  s.utc_offset_s / 3600.0, s.longitude_deg, s.longitude_deg / 15.0));
}

void check_temperatures(const YearSettings& s) {
  require_of_year(s.warmest_month_mean_k >= s.coldest_month_mean_k,
                  fmt::format("warmest_month_mean: read {:.2f} degC, which is below coldest_month_mean, {:.2f} degC",
                              s.warmest_month_mean_k - kZeroCelsius, s.coldest_month_mean_k - kZeroCelsius));
  require_of_year(s.coldest_month_mean_k >= 223.15 && s.warmest_month_mean_k <= 318.15,
                  "warmest_month_mean and coldest_month_mean: allowed is -50 to 45 degC");
  require_of_year(s.summer_daily_swing_k >= 0.0 && s.summer_daily_swing_k <= 30.0 && s.winter_daily_swing_k >= 0.0 &&
                      s.winter_daily_swing_k <= 30.0,
                  "summer_daily_swing and winter_daily_swing: allowed is 0 to 30 K");
  require_of_year(s.weather_swing_k >= 0.0 && s.weather_swing_k <= 10.0,
                  fmt::format("weather_swing: read {} K; allowed is 0 to 10", s.weather_swing_k));
  require_of_year(s.summer_dew_gap_k >= 0.0 && s.summer_dew_gap_k <= 20.0 && s.winter_dew_gap_k >= 0.0 &&
                      s.winter_dew_gap_k <= 20.0,
                  "summer_dew_gap and winter_dew_gap: allowed is 0 to 20 K");
  require_of_year(s.lowest_after_sunrise_h >= 0.0 && s.lowest_after_sunrise_h <= 1.0,
                  fmt::format("lowest_after_sunrise: read {} h; allowed is 0 to 1", s.lowest_after_sunrise_h));
  require_of_year(s.highest_at_h >= 15.0 && s.highest_at_h <= 19.0,
                  fmt::format("highest_at: read {} h; allowed is 15 to 19", s.highest_at_h));
}

void check_sky_and_wind(const YearSettings& s) {
  require_share("cloudy_days", s.cloudy_days);
  require_share("clear_cover", s.clear_cover);
  require_share("cloudy_cover", s.cloudy_cover);
  require_share("wind_variation", s.wind_variation);
  require_of_year(s.clear_cover <= s.cloudy_cover,
                  fmt::format("clear_cover: read {:.4g} %, which is above cloudy_cover, {:.4g} %",
                              100.0 * s.clear_cover, 100.0 * s.cloudy_cover));
  require_of_year(s.linke_turbidity >= 1.0 && s.linke_turbidity <= 10.0,
                  fmt::format("turbidity: read {}; allowed is 1 to 10", s.linke_turbidity));
  require_of_year(s.wind_day_m_s >= 0.0 && s.wind_night_m_s >= 0.0, "wind: it cannot be negative");
}

void check_rain(const YearSettings& s) {
  require_share("wetter_share", s.wetter_share);
  const int days = s.rain_days_a_year;
  require_of_year(days >= 0 && days <= kYear_days, fmt::format("rain_days_a_year: read {}; allowed is 0 to 365", days));
  const auto cloudy = static_cast<int>(std::lround(s.cloudy_days * kYear_days));
  require_of_year(
      days <= cloudy,
      fmt::format("rain_days_a_year: read {}, but it rains on cloudy days only and cloudy_days, {:.4g} %, makes {} of "
                  "them; give fewer rain days or more cloudy ones",
                  days, 100.0 * s.cloudy_days, cloudy));
  require_of_year(days > 0 || s.rain_a_year_mm == 0.0,
                  fmt::format("rain_a_year: read {:.4g} mm, but there are no rain days", s.rain_a_year_mm));
  require_of_year(
      s.rain_a_year_mm >= days - 1e-9,
      fmt::format("rain_a_year: read {:.4g} mm, but {} rain days of 1 mm or more have at least {} mm; give more rain "
                  "or fewer days",
                  s.rain_a_year_mm, days, days));
  const auto wetter = static_cast<int>(std::lround(s.wetter_share * days));
  require_of_year(std::max(wetter, days - wetter) <= kHalfYear_days,
                  fmt::format("wetter_share: {:.4g} % of {} rain days is {} and leaves {}, but half a year has {} days",
                              100.0 * s.wetter_share, days, wetter, days - wetter, kHalfYear_days));
}

}  // namespace

WeatherSeries make_year(const YearSettings& settings) {
  check_calendar(settings);
  check_temperatures(settings);
  check_sky_and_wind(settings);
  check_rain(settings);
  const YearShapes shapes(settings);
  WeatherSeries series =
      invented_series(settings, fmt::format("invented year, {} days, seed {}", settings.days, settings.seed),
                      "invented by the project's own generator of years; measured by nobody");
  const double pressure_pa = standard_pressure_pa(settings.altitude_m);
  const double start_s = static_cast<double>(series.start.time_since_epoch().count());
  const auto rows = static_cast<std::size_t>(std::lround(settings.days * kSecondsPerDay / settings.step_s));
  for (std::size_t i = 0; i < rows; ++i) {
    const double begin_s = start_s + static_cast<double>(i) * settings.step_s;  // whole seconds: exact from any start
    WeatherRow row;
    row.pressure_pa = pressure_pa;
    row.temperature_k = shapes.temperature_k(begin_s);
    row.humidity_ratio = shapes.humidity_ratio(begin_s, pressure_pa);
    row.wind_m_s = shapes.wind_m_s(begin_s);
    row.wind_from_rad = shapes.wind_from_rad(begin_s);
    row.rain_kg_m2_s = shapes.rain_kg_m2(begin_s, begin_s + settings.step_s) / settings.step_s;
    row.cloud_share = shapes.cloud_share(begin_s);
    put_mean_sun(
        begin_s, settings.step_s, [&](double time_s) { return shapes.sun(time_s, pressure_pa); }, row);
    series.rows.push_back(row);
  }
  return series;
}

}  // namespace noonhouse
