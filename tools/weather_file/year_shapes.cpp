// SPDX-License-Identifier: Apache-2.0
#include "tools/weather_file/year_shapes.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "models/properties/constants.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/properties/sun.hpp"
#include "sim/core/errors.hpp"
#include "sim/core/tick.hpp"

namespace noonhouse {
namespace {

constexpr double kKnot_s = kSecondsPerDay / YearDays::kKnotsPerDay;
constexpr double kCloudsAround_s = kSecondsPerHour;  // before and after rain; own choice
constexpr double kWindTurn_deg = 50.0;               // standard deviation of a day's bearing; own choice
constexpr int kMargin_days = 2;

int day_of(double time_s) { return static_cast<int>(std::floor(time_s / kSecondsPerDay)); }

/// Mean of a year's wave over the month about its peak, over the peak: sin(x) / x for half a month's angle.
double mean_about_peak() {
  const double half_month = kPi / 12.0;
  return std::sin(half_month) / half_month;
}

/// Standard deviation of the daily means of straight lines between noons, over that of the noons: the mean takes 3/4 of
/// its own noon and 1/8 of each neighbour's.
double deviation_of_daily_mean(double memory_days) {
  const double c = std::exp(-1.0 / memory_days);
  return std::sqrt(9.0 / 16.0 + 2.0 / 64.0 + 3.0 / 8.0 * c + c * c / 32.0);
}

}  // namespace

YearShapes::YearShapes(const YearSettings& settings)
    : settings_(settings),
      first_day_(static_cast<int>(std::chrono::sys_days{settings.start}.time_since_epoch().count()) - kMargin_days),
      last_day_(first_day_ + settings.days - 1 + 2 * kMargin_days),
      season_amplitude_k_(0.5 * (settings.warmest_month_mean_k - settings.coldest_month_mean_k) / mean_about_peak()),
      departure_k_(settings.weather_swing_k / deviation_of_daily_mean(YearDays::kMemory_days)),
      wind_sigma_(std::sqrt(std::log1p(settings.wind_variation * settings.wind_variation))),
      days_(settings, first_day_ - 1, last_day_ + 1) {
  put_daylight();
  put_turns();
  put_dawns();
}

void YearShapes::put_daylight() {
  const double latitude = settings_.latitude_deg * kRadiansPerDegree,
               longitude = settings_.longitude_deg * kRadiansPerDegree;
  const auto local_s = [this](double julian_day) {
    return (julian_day - kUnixEpochJulianDay) * kSecondsPerDay + settings_.utc_offset_s;
  };
  for (int day = first_day_; day <= last_day_; ++day) {
    const double midday = kUnixEpochJulianDay + day + 0.5 - settings_.utc_offset_s / kSecondsPerDay;
    const std::optional<SunTimes> sun = sun_times(midday, latitude, longitude);
    NOON_ASSERT(sun.has_value());  // within the latitudes that are allowed it rises and sets every day
    daylight_.push_back({local_s(sun->sunrise_julian_day), local_s(sun->sunset_julian_day)});
  }
}

void YearShapes::put_turns() {
  for (int day = first_day_; day <= last_day_; ++day) {
    const double low_s = daylight_[static_cast<std::size_t>(day - first_day_)].sunrise_s +
                         settings_.lowest_after_sunrise_h * kSecondsPerHour;
    const double high_s = day * kSecondsPerDay + settings_.highest_at_h * kSecondsPerHour;
    const double below = mean_share_of_wave((high_s - low_s) / kSecondsPerDay);
    turns_.push_back({low_s, -below * 0.5 * (daily_swing_k(day - 1) + daily_swing_k(day)), false});
    turns_.push_back({high_s, (1.0 - below) * daily_swing_k(day), true});
  }
}

void YearShapes::put_dawns() {
  for (int day = first_day_; day <= last_day_; ++day) {
    const double time_s = turns_[2 * static_cast<std::size_t>(day - first_day_)].time_s;
    const double gap_k = by_season(time_s, settings_.summer_dew_gap_k, settings_.winter_dew_gap_k);
    dawns_.push_back({time_s, temperature_k(time_s) - gap_k * days_.day(day).dew_gap_share});
  }
}

double YearShapes::by_season(double time_s, double summer, double winter) const {
  const double cold = std::cos(2.0 * kPi * share_of_year(time_s, settings_.latitude_deg));
  return 0.5 * (summer + winter) + 0.5 * (winter - summer) * cold;
}

double YearShapes::season_mean_k(double time_s) const {
  return 0.5 * (settings_.warmest_month_mean_k + settings_.coldest_month_mean_k) +
         by_season(time_s, season_amplitude_k_, -season_amplitude_k_);
}

double YearShapes::between_noons(double time_s, double YearDay::*value) const {
  const double noons = time_s / kSecondsPerDay - 0.5;
  const int day = static_cast<int>(std::floor(noons));
  const double a = days_.day(day).*value, b = days_.day(day + 1).*value;
  return a + (b - a) * (noons - day);
}

double YearShapes::slow_temperature_k(double time_s) const {
  return season_mean_k(time_s) + departure_k_ * between_noons(time_s, &YearDay::departure);
}

double YearShapes::spell_cover(int day) const {
  return days_.day(day).cloudy ? settings_.cloudy_cover : settings_.clear_cover;
}

double YearShapes::daily_swing_k(int day) const {
  const double clear_k =
      by_season((day + 0.5) * kSecondsPerDay, settings_.summer_daily_swing_k, settings_.winter_daily_swing_k);
  const double light = light_through_clouds(spell_cover(day)) / light_through_clouds(settings_.clear_cover);
  return clear_k * light * light;
}

double YearShapes::temperature_k(double time_s) const {
  return slow_temperature_k(time_s) + temperature_between(turns_, time_s);
}

double YearShapes::humidity_ratio(double time_s, double pressure_pa) const {
  const auto after = std::upper_bound(dawns_.begin() + 1, dawns_.end() - 1, time_s,
                                      [](double t, const Dawn& dawn) { return t < dawn.time_s; });
  const Dawn& a = *(after - 1);
  const double dew_k = ramp(time_s, a.time_s, after->time_s, a.dew_point_k, after->dew_point_k);
  return saturation_humidity_ratio(std::min(dew_k, temperature_k(time_s)), pressure_pa);
}

double YearShapes::rain_cover(double time_s) const {
  double cover = 0.0;
  for (int day = day_of(time_s) - 1; day <= day_of(time_s) + 1; ++day) {
    const YearDay& made = days_.day(day);
    if (made.rain_mm <= 0.0) continue;
    const double begin_s = day * kSecondsPerDay + made.rain_begin_s, end_s = begin_s + made.rain_length_s;
    cover = std::max(cover, std::min(ramp(time_s, begin_s - kCloudsAround_s, begin_s, 0.0, 1.0),
                                     ramp(time_s, end_s, end_s + kCloudsAround_s, 1.0, 0.0)));
  }
  return cover;
}

double YearShapes::cloud_share(double time_s) const {
  // Cover varies most where it is half, and not at all where the sky is clear or overcast for good; own choice.
  const auto at_knot = [this](std::int64_t knot) {
    const double spell = spell_cover(day_of((static_cast<double>(knot) + 0.5) * kKnot_s));
    return std::clamp(spell + spell * (1.0 - spell) * days_.cover_variation(knot), 0.0, 1.0);
  };
  const double knots = time_s / kKnot_s;
  const auto knot = static_cast<std::int64_t>(std::floor(knots));
  const double a = at_knot(knot), b = at_knot(knot + 1);
  return std::max(a + (b - a) * (knots - static_cast<double>(knot)), rain_cover(time_s));
}

double YearShapes::wind_m_s(double time_s) const {
  const double level = settings_.wind_night_m_s +
                       (settings_.wind_day_m_s - settings_.wind_night_m_s) * daily_wave(time_s, settings_.highest_at_h);
  const double knots = time_s / kKnot_s;
  const auto knot = static_cast<std::int64_t>(std::floor(knots));
  const double a = days_.wind_variation(knot), b = days_.wind_variation(knot + 1);
  const double z = a + (b - a) * (knots - static_cast<double>(knot));
  return level * std::exp(wind_sigma_ * z - 0.5 * wind_sigma_ * wind_sigma_);
}

double YearShapes::wind_from_rad(double time_s) const {
  const double from_deg = settings_.wind_from_deg + kWindTurn_deg * between_noons(time_s, &YearDay::wind_turn);
  return (from_deg - 360.0 * std::floor(from_deg / 360.0)) * kRadiansPerDegree;
}

double YearShapes::rain_kg_m2(double begin_s, double end_s) const {
  double rain = 0.0;
  for (int day = day_of(begin_s); day <= day_of(end_s); ++day) {
    const YearDay& made = days_.day(day);
    const double rain_begin_s = day * kSecondsPerDay + made.rain_begin_s;
    const auto fallen = [&](double time_s) { return fallen_share((time_s - rain_begin_s) / made.rain_length_s); };
    rain += made.rain_mm * std::max(0.0, fallen(end_s) - fallen(begin_s));
  }
  return rain;
}

SunPosition YearShapes::sun_position_at(double time_s) const {
  return sun_position(kUnixEpochJulianDay + (time_s - settings_.utc_offset_s) / kSecondsPerDay,
                      settings_.latitude_deg * kRadiansPerDegree, settings_.longitude_deg * kRadiansPerDegree);
}

bool YearShapes::by_day(double time_s) const {
  // A day of sun may pass midnight where the clock is far from the sun's.
  const auto at = daylight_.begin() + (day_of(time_s) - first_day_);
  return std::any_of(at - 1, at + 2,
                     [&](const Daylight& day) { return time_s >= day.sunrise_s && time_s <= day.sunset_s; });
}

SolarSplit YearShapes::sun(double time_s, double pressure_pa) const {
  if (!by_day(time_s)) return {};
  const SunPosition sun = sun_position_at(time_s);
  if (sun.elevation_rad <= 0.0) return {};
  const SolarSplit clear = clear_sky(sun.elevation_rad, pressure_pa, settings_.linke_turbidity,
                                     extraterrestrial_normal_at_distance(sun.distance_au));
  return under_clouds(clear.beam_normal_w_m2, clear.diffuse_w_m2, std::sin(sun.elevation_rad), cloud_share(time_s));
}

}  // namespace noonhouse
