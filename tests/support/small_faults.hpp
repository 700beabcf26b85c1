// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cmath>
#include <string>

#include "tools/scenario/scenario.hpp"

/// A house small enough to run a thousand times: one bay, two layers, one group of plants, one hot day, mist on a
/// thermostat and a vent that a second one opens.
namespace noonhouse::small_faults {

inline constexpr const char* kText = R"(title: A house to fail in
run: { start: 2025-07-14, length: 1 d, warm_up: 0 s, tolerance: 0.002 K }
site: { latitude: 38 deg, longitude: 0 deg, altitude: 100 m, utc_offset: "+00:00", deep_soil: 17 degC }
weather: { kind: invented heatwave, first_day_high: 39 degC, peak_high: 39 degC, peak_day: 1, last_day_high: 39 degC,
           dew_point: 8 degC }
house:
  length: 3 m
  width: 2.5 m
  eaves: 1.8 m
  ridge: 2.4 m
  layers: 2
  floor: { layers: 2 }
  bays: { house: { share: 100 % } }
openings:
  vent: { bay: house, side: back roof, area: 0.8 m2, height: 0.5 m, centre: 2.1 m }
mist_lines:
  mist: { bays: [house], height: 1.7 m, nozzles: 5, nozzle_flow: 3 L/h, pump_power: 40 W }
benches:
  bench: { bay: house, height: 0.7 m, length: 2 m, width: 0.8 m }
plants:
  ferns: { kind: fern, place: bench, area: 1.2 m2 }
sensors:
  thermometer: { bay: house, height: 1 m }
thermostats:
  vent opener: { sensor: thermometer, starts_at: 27 degC, stops_at: 25 degC, drives: [vent] }
  mist control: { sensor: thermometer, starts_at: 31 degC, stops_at: 29 degC, drives: [mist] }
tank: { capacity: 400 L, starts_with: 380 L, low_mark: 20 L, restart_mark: 40 L }
power: { panel_area: 0.5 m2, battery: 500 Wh }
)";

inline Scenario read(const std::string& more = "") { return read_scenario_text(kText + more, "small_faults.yaml"); }

/// Everything in service, with one failure at a time of day [s].
inline Scenario failing(const std::string& what, const std::string& of, double at_s) {
  const auto minute = std::lround(at_s / 60.0);
  const auto two = [](long n) { return std::string(n < 10 ? "0" : "") + std::to_string(n); };
  const std::string clock = two(minute / 60) + ":" + two(minute % 60);
  return read("faults:\n  failure: { what: " + what + ", of: " + of + ", day: 1, at: \"" + clock + "\" }\n");
}

}  // namespace noonhouse::small_faults
