// SPDX-License-Identifier: Apache-2.0
#include "models/weather/hazard_weather.hpp"

#include <algorithm>
#include <cmath>

#include "models/properties/constants.hpp"
#include "models/properties/irradiance.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/properties/sky.hpp"
#include "models/properties/sun.hpp"
#include "sim/core/errors.hpp"
#include "sim/core/tick.hpp"

namespace noonhouse {
namespace {

constexpr double kRecovery_s = 10800.0;  // after dawn; common practice, no source
constexpr double kCalmWind_m_s = 0.5;

double label_s(const WeatherSeries& series, std::chrono::sys_seconds when) {
  return static_cast<double>((when - series.start).count());
}

/// The instant that row i's states belong to, and the middle of its interval, in seconds from the start.
double instant_s(const WeatherSeries& series, std::size_t i) {
  return (static_cast<double>(i) + series.instant_share) * series.step_s;
}
double middle_s(const WeatherSeries& series, std::size_t i) { return (static_cast<double>(i) + 0.5) * series.step_s; }

/// How far a frost night is on its way down (0 to 1) or back.
double cold_weight(double t_s, const NightSpan& night, double coldest_at_s) {
  if (t_s <= night.dusk_s || t_s >= coldest_at_s + kRecovery_s) return 0.0;
  if (t_s <= coldest_at_s) return 0.5 * (1.0 - std::cos(kPi * (t_s - night.dusk_s) / (coldest_at_s - night.dusk_s)));
  return 0.5 * (1.0 + std::cos(kPi * (t_s - coldest_at_s) / kRecovery_s));
}

void clear_and_calm(WeatherRow& row) {
  const double clear_w_m2 =
      brunt_emissivity(vapour_pressure_pa(row.humidity_ratio, row.pressure_pa)) * blackbody_emission(row.temperature_k);
  row.cloud_share = 0.0;
  row.wind_m_s = std::min(row.wind_m_s, kCalmWind_m_s);
  if (std::isfinite(row.longwave_down_w_m2)) row.longwave_down_w_m2 = std::min(row.longwave_down_w_m2, clear_w_m2);
}

/// The air mass [-] at the height of the sun that a row's own light implies.
double implied_air_mass(const WeatherRow& row) {
  const double level = row.global_horizontal_w_m2 - row.diffuse_horizontal_w_m2;
  return air_mass(std::acos(std::clamp(level / row.beam_normal_w_m2, 0.0, 1.0)));
}

}  // namespace

std::optional<NightSpan> night_after(const WeatherSeries& series, std::chrono::sys_days evening) {
  const double latitude = series.latitude_deg * kRadiansPerDegree, longitude = series.longitude_deg * kRadiansPerDegree;
  const double start_days = static_cast<double>(series.start.time_since_epoch().count()) - series.utc_offset_s;
  const double start_julian = kUnixEpochJulianDay + start_days / kSecondsPerDay;
  const double midday_julian = start_julian + label_s(series, evening) / kSecondsPerDay + 0.5;
  const auto today = sun_times(midday_julian, latitude, longitude);
  const auto tomorrow = sun_times(midday_julian + 1.0, latitude, longitude);
  if (!today || !tomorrow) return std::nullopt;
  return NightSpan{(today->sunset_julian_day - start_julian) * kSecondsPerDay,
                   (tomorrow->sunrise_julian_day - start_julian) * kSecondsPerDay};
}

WeatherSeries with_frost_night(WeatherSeries series, const FrostNight& frost) {
  const auto night = night_after(series, frost.evening);
  NOON_ASSERT(night.has_value());
  series.invented = true;
  // The row whose instant is nearest to dawn has the coldest air.
  const double coldest_row = std::round(night->dawn_s / series.step_s - series.instant_share);
  const double coldest_at_s = (coldest_row + series.instant_share) * series.step_s;
  for (std::size_t i = 0; i < series.rows.size(); ++i) {
    WeatherRow& row = series.rows[i];
    const double t_s = instant_s(series, i), weight = cold_weight(t_s, *night, coldest_at_s);
    if (middle_s(series, i) > night->dusk_s && middle_s(series, i) < night->dawn_s) row.rain_kg_m2_s = 0.0;
    if (weight <= 0.0) continue;
    row.temperature_k -= weight * std::max(0.0, row.temperature_k - frost.coldest_k);
    row.humidity_ratio = std::min(row.humidity_ratio, saturation_humidity_ratio(row.temperature_k, row.pressure_pa));
    if (t_s <= std::max(night->dawn_s, coldest_at_s)) clear_and_calm(row);
  }
  return series;
}

WeatherSeries with_dust(WeatherSeries series, const DustDays& dust) {
  NOON_ASSERT(dust.optical_depth >= 0.0 && dust.forward_share >= 0.0 && dust.forward_share <= 1.0);
  const double begin_s = label_s(series, dust.first);
  const double end_s = begin_s + dust.days * kSecondsPerDay;
  series.invented = true;
  for (std::size_t i = 0; i < series.rows.size(); ++i) {
    WeatherRow& row = series.rows[i];
    if (middle_s(series, i) <= begin_s || middle_s(series, i) >= end_s || row.beam_normal_w_m2 <= 0.0) continue;
    const double lost = -std::expm1(-dust.optical_depth * implied_air_mass(row));
    const double level = std::max(0.0, row.global_horizontal_w_m2 - row.diffuse_horizontal_w_m2) * lost;
    row.beam_normal_w_m2 *= 1.0 - lost;
    row.diffuse_horizontal_w_m2 += dust.forward_share * level;
    row.global_horizontal_w_m2 -= (1.0 - dust.forward_share) * level;
  }
  return series;
}

}  // namespace noonhouse
