// SPDX-License-Identifier: Apache-2.0
#include "tools/weather_file/irradiance_completion.hpp"

#include <algorithm>
#include <cmath>

#include "models/properties/constants.hpp"
#include "models/properties/irradiance.hpp"
#include "models/properties/sun.hpp"
#include "sim/core/errors.hpp"
#include "sim/core/tick.hpp"

namespace noonhouse {
namespace {

constexpr int kSamples = 12;
const double kLowestSine = std::sin(3.0 * kRadiansPerDegree);

SunPosition sun_in(const WeatherSeries& series, std::size_t row, double share) {
  const double utc_s = static_cast<double>(series.start.time_since_epoch().count()) - series.utc_offset_s +
                       (static_cast<double>(row) + share) * series.step_s;
  return sun_position(kUnixEpochJulianDay + utc_s / kSecondsPerDay, series.latitude_deg * kRadiansPerDegree,
                      series.longitude_deg * kRadiansPerDegree);
}

void complete_row(WeatherRow& row, const IrradianceGiven& given, double sine, double extraterrestrial_w_m2) {
  double& beam = row.beam_normal_w_m2;
  double& diffuse = row.diffuse_horizontal_w_m2;
  double& global = row.global_horizontal_w_m2;
  if (given.beam && given.diffuse) {
    global = beam * sine + diffuse;
  } else if (given.beam) {
    diffuse = std::max(0.0, global - beam * sine);
  } else if (given.diffuse) {
    beam = sine < kLowestSine ? 0.0 : std::clamp((global - diffuse) / sine, 0.0, extraterrestrial_w_m2);
  } else {
    const SolarSplit split = split_global(global, std::asin(std::clamp(sine, 0.0, 1.0)), extraterrestrial_w_m2);
    beam = split.beam_normal_w_m2;
    diffuse = split.diffuse_w_m2;
  }
}

}  // namespace

double mean_sine_elevation(const WeatherSeries& series, std::size_t row) {
  double sum = 0.0;
  for (int k = 0; k < kSamples; ++k) {
    sum += std::max(0.0, std::sin(sun_in(series, row, (k + 0.5) / kSamples).elevation_rad));
  }
  return sum / kSamples;
}

void complete_irradiance(WeatherSeries& series, const IrradianceGiven& given) {
  if (given.beam && given.diffuse && given.global) return;
  if (!given.global && !(given.beam && given.diffuse)) {
    throw UserError(ErrorKind::weather_format, series.name +
                                                   ": the sun is missing: give global irradiance, or beam_normal and "
                                                   "diffuse, or all three");
  }
  for (std::size_t i = 0; i < series.rows.size(); ++i) {
    const double extraterrestrial_w_m2 = extraterrestrial_normal_at_distance(sun_in(series, i, 0.5).distance_au);
    complete_row(series.rows[i], given, mean_sine_elevation(series, i), extraterrestrial_w_m2);
  }
}

}  // namespace noonhouse
