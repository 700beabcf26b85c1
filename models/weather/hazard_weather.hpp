// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <chrono>
#include <optional>

#include "models/weather/weather_series.hpp"

/// Hazards of weather put into a series: what a house and a tank would have met, had this come on that day. Each
/// returns the series changed; rows outside its window keep their values. Rows stay physical: light closes (global is
/// level beam and diffuse), nothing is negative, no humidity is above saturation. `invented` is set.
///
/// Times are labels as in WeatherSeries. States go straight between rows (WeatherSignal): just outside a window they
/// change over the one row that leads to it. Light and rain belong to intervals and change within the window alone.
/// Cloudbursts are no rows: see Cloudburst.
namespace noonhouse {

/// Seconds from the series' start to a sunset and the sunrise after it; nothing where the sun does not set or rise.
struct NightSpan {
  double dusk_s = 0.0, dawn_s = 0.0;
};
std::optional<NightSpan> night_after(const WeatherSeries& series, std::chrono::sys_days evening);

/// A clear calm night with frost, from the dusk of a date to some hours after the next dawn.
struct FrostNight {
  std::chrono::sys_days evening{};
  double coldest_k = 271.15;
};

/// Temperature comes down to the coldest along half a cosine from dusk to dawn and back to the series' own along
/// another in the three hours after; the row nearest to dawn has the coldest. What is colder already stays.
///   T' = T - w max(0, T - T_min)
/// From dusk to dawn: no rain, cloud 0, wind 0.5 m/s at most, and longwave, where the series knows it, no more than the
/// clear sky's by brunt_emissivity. Humidity is cut to saturation (over ice in frost): dew and rime take it.
/// Real nights cool faster early on; the shape is this project's. The place must have that night (night_after).
WeatherSeries with_frost_night(WeatherSeries series, const FrostNight& night);

/// Whole days of dust or smoke of one optical depth for broadband light.
struct DustDays {
  std::chrono::sys_days first{};
  int days = 1;
  double optical_depth = 0.0;  ///< tau, on top of the air's own: 0.3 haze, 1 dust storm or near smoke (from memory)
  double forward_share = 0.7;  ///< of the light taken from the beam, that comes down diffuse (from memory: 0.6 to 0.8)
};

/// Beam falls by exp(-tau m) [Beer-Lambert], m the air mass [Kasten & Young 1989] at the height of the sun that the
/// row's own light implies, sin e = (global - diffuse) / beam. Of the level beam lost, forward_share becomes diffuse.
/// Does not model: dust that also dims the diffuse light, warms the air, radiates longwave or settles on covers.
WeatherSeries with_dust(WeatherSeries series, const DustDays& dust);

}  // namespace noonhouse
