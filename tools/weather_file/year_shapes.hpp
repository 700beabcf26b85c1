// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <vector>

#include "models/properties/irradiance.hpp"
#include "models/properties/sun.hpp"
#include "tools/weather_file/weather_shapes.hpp"
#include "tools/weather_file/year_days.hpp"

namespace noonhouse {

/// An invented year as functions of the time since 1970-01-01 [s], local standard time, within the days asked for.
/// The settings are taken as checked.
class YearShapes {
 public:
  explicit YearShapes(const YearSettings& settings);

  /// Air temperature [K].
  double temperature_k(double time_s) const;
  /// Humidity ratio, at most saturation, over ice below the triple point [kg/kg dry air].
  double humidity_ratio(double time_s, double pressure_pa) const;
  /// Share of the sky under clouds, 0 .. 1.
  double cloud_share(double time_s) const;
  double wind_m_s(double time_s) const;
  double wind_from_rad(double time_s) const;
  /// Rain fallen between two times [kg/m2].
  double rain_kg_m2(double begin_s, double end_s) const;
  /// Beam, diffuse and global under the clouds [W/m2].
  SolarSplit sun(double time_s, double pressure_pa) const;

 private:
  struct Daylight {
    double sunrise_s, sunset_s;
  };
  struct Dawn {
    double time_s, dew_point_k;
  };
  double by_season(double time_s, double summer, double winter) const;
  double season_mean_k(double time_s) const;
  double between_noons(double time_s, double YearDay::*value) const;
  double slow_temperature_k(double time_s) const;
  double spell_cover(int day) const;
  double daily_swing_k(int day) const;
  double rain_cover(double time_s) const;
  bool by_day(double time_s) const;
  SunPosition sun_position_at(double time_s) const;
  void put_daylight();
  void put_turns();
  void put_dawns();

  YearSettings settings_;
  int first_day_, last_day_;  ///< two more than asked for at each end
  double season_amplitude_k_, departure_k_, wind_sigma_;
  YearDays days_;
  std::vector<Daylight> daylight_;
  std::vector<TemperatureTurn> turns_;  ///< lows and highs in turn, as differences from slow_temperature_k
  std::vector<Dawn> dawns_;
};

}  // namespace noonhouse
