// SPDX-License-Identifier: Apache-2.0
#include "tools/weather_file/heatwave_shapes.hpp"

#include <algorithm>
#include <cmath>

#include "models/properties/constants.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/properties/sun.hpp"
#include "sim/core/tick.hpp"
#include "tools/weather_file/weather_humidity.hpp"

namespace noonhouse {
namespace {

constexpr double kCloudsBefore_s = 30.0 * kSecondsPerMinute, kCloudsAfter_s = 2.0 * kSecondsPerHour;
constexpr double kGustBefore_s = 20.0 * kSecondsPerMinute, kGustAfter_s = kSecondsPerHour, kGustAtEnd = 0.4;
constexpr double kCoolingRise_s = 20.0 * kSecondsPerMinute, kCoolingFade_s = 3.0 * kSecondsPerHour;
// Share of the storm's cooling that is rain evaporating into the air (the rest is colder air from aloft); own choice.
constexpr double kEvaporatedShare = 0.6;

}  // namespace

HeatwaveShapes::HeatwaveShapes(const HeatwaveSettings& settings) : settings_(settings) {
  const double local_midnight_s =
      static_cast<double>(std::chrono::sys_seconds{std::chrono::sys_days{settings.start}}.time_since_epoch().count());
  julian_day_start_ = kUnixEpochJulianDay + (local_midnight_s - settings.utc_offset_s) / kSecondsPerDay;
  storm_begin_s_ = (settings.storm_day - 1) * kSecondsPerDay + settings.storm_start_h * kSecondsPerHour;
  storm_end_s_ = storm_begin_s_ + settings.storm_minutes * kSecondsPerMinute;
  for (int day = 0; day <= settings.days + 1; ++day) {
    const double noon = julian_day_start_ + day - 0.5;
    // Beyond the polar circles' summer there may be no sunrise; six in the morning stands for it.
    const auto sun =
        sun_times(noon, settings.latitude_deg * kRadiansPerDegree, settings.longitude_deg * kRadiansPerDegree);
    const double sunrise_s = sun ? (sun->sunrise_julian_day - julian_day_start_) * kSecondsPerDay
                                 : (day - 1) * kSecondsPerDay + 6.0 * kSecondsPerHour;
    turns_.push_back({sunrise_s + settings.lowest_after_sunrise_h * kSecondsPerHour, low_k(day), false});
    turns_.push_back({(day - 1) * kSecondsPerDay + settings.highest_at_h * kSecondsPerHour, high_k(day), true});
  }
}

double HeatwaveShapes::high_k(int any_day) const {
  const HeatwaveSettings& s = settings_;
  const int day = std::clamp(any_day, 1, s.days);
  if (day <= s.peak_day) {
    return s.peak_day <= 1 ? s.peak_high_k : ramp(day, 1, s.peak_day, s.first_day_high_k, s.peak_high_k);
  }
  return ramp(day, s.peak_day, s.days, s.peak_high_k, s.last_day_high_k);
}

double HeatwaveShapes::low_k(int day) const {
  const HeatwaveSettings& s = settings_;
  const double rise_k = s.peak_high_k - s.first_day_high_k;
  const double heat = rise_k > 0.0 ? (high_k(day) - s.first_day_high_k) / rise_k : 1.0;
  return s.first_night_low_k + heat * (s.peak_night_low_k - s.first_night_low_k);
}

double HeatwaveShapes::calm_temperature_k(double time_s) const { return temperature_between(turns_, time_s); }

double HeatwaveShapes::storm_cooling(double time_s) const {
  if (settings_.storm_day == 0 || time_s <= storm_begin_s_) return 0.0;
  if (time_s <= storm_end_s_) return ramp(time_s, storm_begin_s_, storm_begin_s_ + kCoolingRise_s, 0.0, 1.0);
  return storm_cooling(storm_end_s_) * std::exp(-(time_s - storm_end_s_) / kCoolingFade_s);
}

double HeatwaveShapes::temperature_k(double time_s) const {
  return calm_temperature_k(time_s) - settings_.storm_drop_k * storm_cooling(time_s);
}

double HeatwaveShapes::humidity_ratio(double time_s, double pressure_pa) const {
  const double temperature = temperature_k(time_s);
  const double calm = ratio_at_saturation(settings_.dew_point_k, pressure_pa);
  const double evaporated =
      kEvaporatedShare * kDryAirHeat / kLatentHeatZero * settings_.storm_drop_k * storm_cooling(time_s);
  return std::min(calm + evaporated, ratio_at_saturation(temperature, pressure_pa));
}

double HeatwaveShapes::wind_m_s(double time_s) const {
  return settings_.wind_night_m_s + (settings_.wind_day_m_s - settings_.wind_night_m_s) * daily_wave(time_s, 15.0);
}

double HeatwaveShapes::wind_from_rad(double time_s) const {
  const double turn_deg = std::remainder(settings_.wind_from_day_deg - settings_.wind_from_night_deg, 360.0);
  const double from_deg = settings_.wind_from_night_deg + turn_deg * daily_wave(time_s, 15.0);
  return std::fmod(std::fmod(from_deg, 360.0) + 360.0, 360.0) * kRadiansPerDegree;
}

double HeatwaveShapes::gust_m_s(double time_s) const {
  if (settings_.storm_day == 0) return 0.0;
  double share = ramp(time_s, storm_begin_s_ - kGustBefore_s, storm_begin_s_, 0.0, 1.0);
  if (time_s > storm_begin_s_) share = ramp(time_s, storm_begin_s_, storm_end_s_, 1.0, kGustAtEnd);
  if (time_s > storm_end_s_) share = ramp(time_s, storm_end_s_, storm_end_s_ + kGustAfter_s, kGustAtEnd, 0.0);
  return settings_.storm_gust_m_s * share;
}

double HeatwaveShapes::cloud_share(double time_s) const {
  if (settings_.storm_day == 0) return 0.0;
  return std::min(ramp(time_s, storm_begin_s_ - kCloudsBefore_s, storm_begin_s_, 0.0, 1.0),
                  ramp(time_s, storm_end_s_, storm_end_s_ + kCloudsAfter_s, 1.0, 0.0));
}

double HeatwaveShapes::dust_optical_depth(double time_s) const {
  const double begin_s = (settings_.dust_day - 1) * kSecondsPerDay;
  if (settings_.dust_day == 0 || time_s < begin_s || time_s >= begin_s + kSecondsPerDay) return 0.0;
  return settings_.dust_strength * daily_wave(time_s, 12.0);
}

double HeatwaveShapes::rain_kg_m2(double begin_s, double end_s) const {
  if (settings_.storm_day == 0) return 0.0;
  const auto fallen = [this](double time_s) {
    return settings_.storm_rain_mm * fallen_share((time_s - storm_begin_s_) / (storm_end_s_ - storm_begin_s_));
  };
  return std::max(0.0, fallen(end_s) - fallen(begin_s));
}

SunPosition HeatwaveShapes::sun(double time_s) const {
  return sun_position(julian_day_start_ + time_s / kSecondsPerDay, settings_.latitude_deg * kRadiansPerDegree,
                      settings_.longitude_deg * kRadiansPerDegree);
}

}  // namespace noonhouse
