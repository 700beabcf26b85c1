// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <chrono>
#include <limits>
#include <string>
#include <vector>

#include "models/weather/cloudburst.hpp"

namespace noonhouse {

inline constexpr double kUnknownWeather = std::numeric_limits<double>::quiet_NaN();

/// The weather of one interval, or (from WeatherSignal) of one instant. SI.
struct WeatherRow {
  double temperature_k = 288.15;
  double humidity_ratio = 0.0;  ///< [kg vapour / kg dry air]
  double pressure_pa = 101325.0;
  double beam_normal_w_m2 = 0.0;         ///< direct sun on a plane facing it
  double diffuse_horizontal_w_m2 = 0.0;  ///< from the sky on a level plane
  double global_horizontal_w_m2 = 0.0;   ///< beam and diffuse on a level plane
  double wind_m_s = 0.0;
  double wind_from_rad = 0.0;                   ///< where the wind comes from, clockwise from north, 0 .. 2 pi
  double rain_kg_m2_s = 0.0;                    ///< mean over the interval; 1 kg/m2 = 1 mm
  double longwave_down_w_m2 = kUnknownWeather;  ///< from the sky; NaN when unknown
  double cloud_share = kUnknownWeather;         ///< 0 clear .. 1 overcast; NaN when unknown
  friend bool operator==(const WeatherRow&, const WeatherRow&) = default;  ///< NaN differs from NaN
};

/// Weather at one place in rows of equal length, without gaps.
///
/// Time: `start` is a LOCAL STANDARD time label (no summer time, utc_offset_s ahead of UTC): the beginning of the
/// interval of row 0. Row i covers [start + i step, start + (i + 1) step).
/// Irradiance and rain are means over the interval. Temperature, humidity, pressure, wind, longwave and cloud belong to
/// one instant of the interval, `instant_share` of a step after its beginning: 0 for values read as it begins, 1 for
/// values read as it ends (hour-ending stamps), 0.5 for interval means.
/// WeatherSignal turns rows into values at instants and documents the rule per quantity.
struct WeatherSeries {
  std::string name;
  std::string origin;                              ///< where the numbers come from, in words
  bool invented = false;                           ///< made by a generator, measured by nobody
  double latitude_deg = 0.0, longitude_deg = 0.0;  ///< north and east positive
  double altitude_m = 0.0;
  double utc_offset_s = 0.0;  ///< local standard time minus UTC, east positive
  std::chrono::sys_seconds start{};
  double step_s = 3600.0;
  double instant_share = 1.0;
  double albedo =
      0.2;  ///< short-wave reflectance of the ground around; default: bare or grassy ground, common practice
  std::vector<WeatherRow> rows;
  std::vector<Cloudburst> cloudbursts;  ///< beside the rows, which know nothing of them

  double duration_s() const { return step_s * static_cast<double>(rows.size()); }
};

}  // namespace noonhouse
