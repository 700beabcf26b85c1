// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <chrono>
#include <optional>
#include <string>
#include <vector>

#include "models/weather/weather_series.hpp"
#include "tools/scenario/scenario.hpp"

namespace noonhouse {

/// Minutes of a day.
inline constexpr int kMinutesOfHour = 60, kMinutesOfDay = 24 * kMinutesOfHour;

/// The light of one day at one place in the house, minute by minute; values belong to each minute's middle.
struct PlaceLight {
  std::string name;  ///< "on the west low bench", "1.6 m up in the west bay"
  std::string bay;
  double height_m = 0.0;            ///< above the floor
  std::vector<double> sunlit;       ///< share of the place in direct sun, 0 to 1
  std::vector<double> direct_w_m2;  ///< on the level place, straight from the sun
  std::vector<double> soft_w_m2;    ///< on the level place, all else: sky, scattered, reflected
};

/// One day's light on and in a house. Times are local standard time.
struct DayLight {
  std::string house, plan;
  std::chrono::year_month_day date;
  bool clear_sky = false;  ///< a clear sky was assumed, else the light is that of the scenario's weather
  double latitude_rad = 0.0;
  std::optional<int> sunrise_minute, sunset_minute;  ///< on a flat horizon
  std::vector<double> outdoors_w_m2;                 ///< global irradiance on the level outdoors
  std::vector<PlaceLight> places;
};

}  // namespace noonhouse
