// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <chrono>

namespace noonhouse {

struct WeatherRow;

/// Rain that falls on top of a series' own, and the dark sky that brings it: what a house and a tank would have met,
/// had it come then. A series carries its cloudbursts beside its rows, WeatherSignal adds them; they may last seconds.
///
/// Rain rises straight from nothing to twice its mean rate in the middle and falls back. The sky darkens straight over
/// the first minute, or the first quarter of a shorter one, and clears over as long before the end.
/// Does not model: the gusts and the cold air that come with it, wet surfaces outside, hail.
struct Cloudburst {
  std::chrono::sys_seconds begin{};  ///< local standard time label, as in WeatherSeries
  double duration_s = 600.0;
  double depth_kg_m2 = 0.0;   ///< 1 kg/m2 = 1 mm
  double light_share = 0.15;  ///< of the global light, that is left and all diffuse; common practice, no source

  /// Times since its begin [s], in order from zero to its length, between which light is straight and rain at most
  /// straight.
  std::array<double, 7> bends_s() const;
  /// Depth fallen up to a time since its begin [kg/m2]; rate at that time [kg/(m2 s)], nothing outside it.
  double fallen_kg_m2(double since_s) const;
  double rain_kg_m2_s(double since_s) const;
  /// How dark it is at a time since its begin: 0 outside, 1 when light_share is left.
  double dark_share(double since_s) const;
  /// The light and the sky's radiation of a row under it at a time since its begin. An overcast sky (cloud 1) radiates
  /// e' = 1 - 0.16 (1 - e_clear), after cloudy_emissivity of models/properties; unknown longwave stays unknown.
  void darken(double since_s, WeatherRow& row) const;
};

}  // namespace noonhouse
