// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <filesystem>
#include <string>
#include <string_view>

#include "sim/core/errors.hpp"
#include "tools/scenario/scenario.hpp"

/// A small valid scenario for tests: an invented house of two bays, with one of everything that most tests need.
namespace noonhouse::small_scenario {

inline constexpr const char* kText = R"(title: A small house
run:
  start: 2025-07-14
  length: 2 d
site:
  latitude: 35 deg
  longitude: -106.6 deg
  altitude: 1600 m
  utc_offset: "-07:00"
  deep_soil: 16 degC
weather:
  kind: invented heatwave
  peak_day: 2
house:
  length: 6 m
  width: 3 m
  eaves: 2 m
  ridge: 2.8 m
  bays:
    west:
      share: 60 %
    east:
      share: 40 %
openings:
  ridge vent:
    bay: west
    side: back roof
    area: 0.8 m2
    height: 0.4 m
    centre: 2.6 m
mist_lines:
  high mist:
    bays: [west, east]
    height: 2.2 m
    nozzles: 6
    nozzle_flow: 5 L/h
    pump_power: 60 W
benches:
  long bench:
    bay: west
    height: 80 cm
    length: 3 m
    width: 90 cm
plant_kinds:
  fern:
    leaf_area_index: 2
    tissue: 1.5 kg/m2
    harm_above: 36 degC
    lethal_above: 42 degC
    harm_below: 4 degC
    lethal_below: 0 degC
plants:
  ferns:
    kind: fern
    place: long bench
    area: 2 m2
sensors:
  bench sensor:
    bay: west
    height: 1 m
thermostats:
  heat watch:
    sensor: bench sensor
    starts_at: 32 degC
    stops_at: 29 degC
    drives: [ridge vent, high mist]
tank:
  capacity: 300 L
  starts_with: 250 L
  low_mark: 20 L
  restart_mark: 40 L
power:
  panel_area: 1 m2
  battery: 600 Wh
grower:
  visits:
    morning:
      at: 07:00
      waters: [ferns]
plans:
  nothing runs:
    in_service: []
  vent and mist:
    about: cooled by one thermostat
    in_service: [ridge vent, high mist, heat watch]
    change:
      thermostats:
        heat watch:
          starts_at: 31 degC
)";

/// The text with one part replaced, which must be there exactly once.
inline std::string with(std::string text, std::string_view from, std::string_view to) {
  const std::size_t at = text.find(from);
  NOON_ASSERT(at != std::string::npos && text.find(from, at + 1) == std::string::npos);
  return text.replace(at, from.size(), to);
}

/// The scenario of a text that is not in a file.
inline Scenario read(const std::string& text = kText) { return read_scenario_text(text, "small.yaml"); }

}  // namespace noonhouse::small_scenario
