// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <vector>

#include "models/properties/sun.hpp"
#include "tools/weather_file/heatwave_generator.hpp"
#include "tools/weather_file/weather_shapes.hpp"

namespace noonhouse {

/// The smooth parts of an invented heatwave as functions of the time since local midnight of day 1 [s].
/// The settings are taken as checked.
class HeatwaveShapes {
 public:
  explicit HeatwaveShapes(const HeatwaveSettings& settings);

  /// Highest and lowest temperature of a day (1 = first) before any storm [K]. Days beyond either end are as the end.
  double high_k(int any_day) const;
  double low_k(int day) const;

  /// Air temperature, storm included [K].
  double temperature_k(double time_s) const;
  /// Humidity ratio, storm included, at most saturation over liquid water [kg/kg dry air].
  double humidity_ratio(double time_s, double pressure_pa) const;
  /// Wind without its seeded variation and without the storm's gust [m/s], and where it comes from [rad].
  double wind_m_s(double time_s) const;
  double wind_from_rad(double time_s) const;
  /// The storm's gust front [m/s]; zero away from it.
  double gust_m_s(double time_s) const;
  /// Share of the sky under the storm's clouds, 0 .. 1.
  double cloud_share(double time_s) const;
  /// Vertical optical depth of the dust [-].
  double dust_optical_depth(double time_s) const;
  /// Rain fallen between two times [kg/m2].
  double rain_kg_m2(double begin_s, double end_s) const;
  SunPosition sun(double time_s) const;

 private:
  double storm_cooling(double time_s) const;
  double calm_temperature_k(double time_s) const;

  HeatwaveSettings settings_;
  double julian_day_start_;  ///< of local midnight of day 1, UT
  double storm_begin_s_, storm_end_s_;
  std::vector<TemperatureTurn>
      turns_;  ///< lows and highs in turn, from the evening before day 1 to the morning after the last
};

}  // namespace noonhouse
