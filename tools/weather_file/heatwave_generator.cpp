// SPDX-License-Identifier: Apache-2.0
#include "tools/weather_file/heatwave_generator.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/normal_distribution.hpp>
#include <cmath>
#include <string>

#include "models/properties/atmosphere.hpp"
#include "models/properties/constants.hpp"
#include "models/properties/irradiance.hpp"
#include "sim/core/errors.hpp"
#include "sim/core/tick.hpp"
#include "tools/weather_file/heatwave_shapes.hpp"
#include "tools/weather_file/invented_series.hpp"
#include "tools/weather_file/weather_shapes.hpp"

namespace noonhouse {
namespace {

constexpr double kWindMemory_s = 1800.0;         // of the wind's variation; own choice
constexpr double kDustForwardShare = 2.0 / 3.0;  // of what dust takes from the beam, sent on as diffuse; own choice

void require(bool holds, const std::string& message) {
  if (!holds) throw UserError(ErrorKind::out_of_range, "heatwave: " + message);
}

void check_calendar(const HeatwaveSettings& s) {
  require(s.start.ok(), "the start is no date");
  require(s.days >= 1 && s.days <= 366, fmt::format("days: read {}; allowed is 1 to 366", s.days));
  require(s.peak_day >= 1 && s.peak_day <= s.days,
          fmt::format("peak_day: read {}; allowed is 1 to the number of days, {}", s.peak_day, s.days));
  require(s.dust_day >= 0 && s.dust_day <= s.days,
          fmt::format("dust_day: read {}; allowed is 0 (none) to {}", s.dust_day, s.days));
  require(s.storm_day >= 0 && s.storm_day <= s.days,
          fmt::format("storm_day: read {}; allowed is 0 (none) to {}", s.storm_day, s.days));
  require(step_divides_day(s.step_s),
          fmt::format("step: read {} s; allowed are whole seconds from 60 to 3600 that divide a day", s.step_s));
  require(std::abs(s.latitude_deg) <= 66.0,
          fmt::format("latitude: read {} deg; allowed is -66 to 66, where the sun rises and sets", s.latitude_deg));
}

void check_weather(const HeatwaveSettings& s) {
  require(s.lowest_after_sunrise_h >= 0.0 && s.lowest_after_sunrise_h <= 2.0,
          fmt::format("lowest_after_sunrise: read {} h; allowed is 0 to 2", s.lowest_after_sunrise_h));
  require(s.highest_at_h >= 12.0 && s.highest_at_h <= 19.0,
          fmt::format("highest_at: read {} h; allowed is 12 to 19", s.highest_at_h));
  require(s.wind_day_m_s >= 0.0 && s.wind_night_m_s >= 0.0 && s.storm_gust_m_s >= 0.0, "wind: it cannot be negative");
  require(s.wind_variation >= 0.0 && s.wind_variation <= 1.0,
          fmt::format("wind_variation: read {}; allowed is 0 to 1", s.wind_variation));
  require(s.linke_turbidity >= 1.0 && s.linke_turbidity <= 10.0,
          fmt::format("linke_turbidity: read {}; allowed is 1 to 10", s.linke_turbidity));
  require(s.dust_strength >= 0.0 && s.dust_strength <= 5.0,
          fmt::format("dust_strength: read {}; allowed is 0 to 5", s.dust_strength));
  if (s.storm_day == 0) return;
  require(s.storm_minutes >= 5.0 && s.storm_start_h >= 0.0 && s.storm_start_h + s.storm_minutes / 60.0 <= 24.0,
          "storm: it must last 5 minutes or more and begin and end on its day");
  require(s.storm_rain_mm >= 0.0 && s.storm_drop_k >= 0.0, "storm: rain and fall of temperature cannot be negative");
}

/// Lows must be below the highs around them, or the waves between would run upside down.
void check_temperatures(const HeatwaveSettings& s, const HeatwaveShapes& shapes) {
  for (int day = 1; day <= s.days; ++day) {
    const double low_k = shapes.low_k(day), high_k = shapes.high_k(day);
    require(low_k < high_k, fmt::format("day {}: the lowest temperature {:.2f} K is not below the highest {:.2f} K",
                                        day, low_k, high_k));
  }
}

/// The sun through turbid air, dust and the storm's clouds at an instant.
SolarSplit sun_through(const HeatwaveSettings& settings, const HeatwaveShapes& shapes, double time_s,
                       double pressure_pa) {
  const SunPosition sun = shapes.sun(time_s);
  if (sun.elevation_rad <= 0.0) return {};
  const double sine = std::sin(sun.elevation_rad);
  const SolarSplit clear = clear_sky(sun.elevation_rad, pressure_pa, settings.linke_turbidity,
                                     extraterrestrial_normal_at_distance(sun.distance_au));
  const double through_dust = std::exp(-shapes.dust_optical_depth(time_s) * air_mass(kPi / 2.0 - sun.elevation_rad));
  const double beam = clear.beam_normal_w_m2 * through_dust;
  const double scattered = kDustForwardShare * (clear.beam_normal_w_m2 - beam) * sine;
  const double diffuse = clear.diffuse_w_m2 + scattered;
  return under_clouds(beam, diffuse, sine, shapes.cloud_share(time_s));
}

/// A correlated factor on the wind: log-normal, mean one, fading with kWindMemory_s.
class WindVariation {
 public:
  explicit WindVariation(const HeatwaveSettings& settings)
      : engine_(settings.seed),
        // Standard deviation of the logarithm for the relative one asked for.
        sigma_(std::sqrt(std::log1p(settings.wind_variation * settings.wind_variation))),
        memory_(std::exp(-settings.step_s / kWindMemory_s)),
        state_(normal_(engine_)) {}

  double next() {
    const double factor = std::exp(sigma_ * state_ - 0.5 * sigma_ * sigma_);
    state_ = memory_ * state_ + std::sqrt(1.0 - memory_ * memory_) * normal_(engine_);
    return factor;
  }

 private:
  boost::random::mt19937 engine_;
  boost::random::normal_distribution<double> normal_;
  double sigma_, memory_, state_;
};

}  // namespace

WeatherSeries make_heatwave(const HeatwaveSettings& settings) {
  check_calendar(settings);
  check_weather(settings);
  const HeatwaveShapes shapes(settings);
  check_temperatures(settings, shapes);
  WeatherSeries series =
      invented_series(settings, fmt::format("invented heatwave, {} days, seed {}", settings.days, settings.seed),
                      "invented by the project's own heatwave generator; measured by nobody");
  WindVariation variation(settings);
  const double pressure_pa = standard_pressure_pa(settings.altitude_m);
  const auto rows = static_cast<std::size_t>(std::lround(settings.days * kSecondsPerDay / settings.step_s));
  for (std::size_t i = 0; i < rows; ++i) {
    const double begin_s = static_cast<double>(i) * settings.step_s;
    WeatherRow row;
    row.pressure_pa = pressure_pa;
    row.temperature_k = shapes.temperature_k(begin_s);
    row.humidity_ratio = shapes.humidity_ratio(begin_s, pressure_pa);
    row.wind_m_s = std::max(shapes.wind_m_s(begin_s) * variation.next(), shapes.gust_m_s(begin_s));
    row.wind_from_rad = shapes.wind_from_rad(begin_s);
    row.rain_kg_m2_s = shapes.rain_kg_m2(begin_s, begin_s + settings.step_s) / settings.step_s;
    row.cloud_share = shapes.cloud_share(begin_s);
    put_mean_sun(
        begin_s, settings.step_s, [&](double time_s) { return sun_through(settings, shapes, time_s, pressure_pa); },
        row);
    series.rows.push_back(row);
  }
  return series;
}

}  // namespace noonhouse
