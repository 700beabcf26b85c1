// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <chrono>
#include <cmath>
#include <string>
#include <utility>

#include "models/weather/weather_series.hpp"

namespace noonhouse {

/// A series without rows at the place, start and step of a generator's settings, which have these fields alike; marked
/// as invented. `origin` says by which generator.
template <class Settings>
WeatherSeries invented_series(const Settings& settings, std::string name, std::string origin) {
  WeatherSeries series;
  series.name = std::move(name);
  series.origin = std::move(origin);
  series.invented = true;
  series.latitude_deg = settings.latitude_deg;
  series.longitude_deg = settings.longitude_deg;
  series.altitude_m = settings.altitude_m;
  series.utc_offset_s = settings.utc_offset_s;
  series.start = std::chrono::sys_days{settings.start};
  series.step_s = settings.step_s;
  series.instant_share = 0.0;
  series.albedo = settings.albedo;
  return series;
}

/// Whether a generator makes rows of this length: whole seconds, a minute to an hour, that divide a day.
inline bool step_divides_day(double step_s) {
  return step_s >= 60.0 && step_s <= 3600.0 && step_s == std::floor(step_s) && std::fmod(86400.0, step_s) == 0.0;
}

}  // namespace noonhouse
