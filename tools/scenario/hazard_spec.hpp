// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <optional>
#include <string>
#include <variant>

#include "sim/core/tick.hpp"

/// Bad weather and failures that a scenario puts into its run. SI inside; defaults stand in the field lists.
namespace noonhouse {

struct HailSpec {
  int day = 0;
  double at_s = 0.0, lasts_s = 0.0, stone_m = 0.0;
  std::optional<double> hits_m2_s;
};
struct GustsSpec {
  int day = 0;
  double at_s = 0.0, lasts_s = 0.0, speed_m_s = 0.0;
};
struct CloudburstSpec {
  int day = 0;
  double at_s = 0.0, lasts_s = 0.0, rain_m = 0.0;
};
/// When weather that has its hours begins and ends, since the run's start.
template <class Hazard>
Tick begin_of(const Hazard& hazard) {
  return kDay * (hazard.day - 1) + ticks(hazard.at_s);
}
template <class Hazard>
Tick end_of(const Hazard& hazard) {
  return begin_of(hazard) + ticks(hazard.lasts_s);
}
struct FrostNightSpec {
  int day = 0;
  double lowest_k = 0.0;
};
struct HazeSpec {
  int day = 0, days = 0;
  double strength = 0.0;
};
struct WeatherHazardSpec {
  std::variant<HailSpec, GustsSpec, CloudburstSpec, FrostNightSpec, HazeSpec> what;
};

/// One failure at a stated time.
enum class FailureKind {
  stuck_off,
  stuck_on,
  stuck_as_it_stands,
  line_cut,
  reads_low,
  reads_high,
  reads_frozen,
  in_the_spray,
  radio_lost,
  reboots,
  cell_dead,
  panel_covered,
  tank_leaks,
  grower_away
};
struct FaultSpec {
  FailureKind what = FailureKind::stuck_off;
  std::string of;
  int day = 1;
  double at_s = 0.0, lasts_s = 0.0, by_k = 0.0, leak_m3_s = 0.0, share = 0.0;
};

}  // namespace noonhouse
