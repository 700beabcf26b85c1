// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <fmt/core.h>

#include <cmath>
#include <string>
#include <type_traits>

#include "tools/record/record_layout.hpp"

namespace noonhouse {

/// Sets every listed field of a struct to a value of its own: counted numbers, texts that name the field.
template <class Struct>
Struct filled(int& counter) {
  Struct value;
  for_each_field<Struct>([&](const auto& field) {
    using Value = std::decay_t<decltype(value.*field.member)>;
    ++counter;
    if constexpr (std::is_same_v<Value, std::string>) {
      value.*field.member = fmt::format("{} {}", field.name, counter);
    } else {
      value.*field.member = static_cast<Value>(counter) + static_cast<Value>(0.1);
    }
  });
  return value;
}

/// The tables and blocks of outcomes, every field with a value of its own; then the awkward values.
inline void add_sample_outcomes(RunRecord& r) {
  int counter = 100;
  for_each_entry(kRecordTables, [&](const auto& table) {
    using Row = typename std::decay_t<decltype(r.*table.rows)>::value_type;
    for (int k = 0; k < 3; ++k) (r.*table.rows).push_back(filled<Row>(counter));
  });
  for_each_entry(kRecordBlocks, [&](const auto& block) {
    r.*block.member = filled<std::decay_t<decltype(r.*block.member)>>(counter);
  });
  r.plants[0].name = "ferns, north";
  r.plants[1].name = "moss \u00e9 \"wet\"";
  r.plants[1].reason = "";
  r.plants[0].peak_tissue_time_s = 50400.0;
  r.plants[1].peak_tissue_time_s = kNotHappened;
  r.water.first_dry_s = kNotHappened;
  r.energy.first_cut_off_s = 84000.0;
  r.failures[0].chain = {"tank at low mark", "no rain since day 1"};
  r.failures[2].chain = {"dry"};
  r.events = {{1, -1, 0.0, "weather", "sky", "no rain"},
              {2, 1, 83999.999, "warning", "tank", "at low mark"},
              {7'000'000'000, 2, 84000.0, "failure", "mist pump", ""}};
}

/// A small record in which every field holds something and awkward values occur.
inline RunRecord sample_record() {
  RunRecord r;
  r.scenario = "two bays";
  r.title = "Two bays in a hot week";
  r.plan = "mist at noon";
  r.about = "Does the tank last?\nA second line, with \u00b0C and \u65e5.";
  r.start = "2025-07-14 00:00:00";
  r.utc_offset = "-07:00";
  r.latitude_deg = 33.4;
  r.longitude_deg = -112.1;
  r.altitude_m = 331.0;
  r.duration_s = 86400.0;
  for (int k = 0; k < 145; ++k) r.time_s.push_back(600.0 * k);
  r.axes = {{"level", "air layer, counted from the floor", {"floor", "middle", "ridge"}, {0.25, 1.0, 1.75}, "m"},
            {"bay", "bay of the house", {"west", "east"}, {}, ""}};
  RecordSeries air{"air_temperature", "air temperature", "K", "air_temperature", "time: point", {"level", "bay"}, {}};
  RecordSeries tank{"tank_mass", "water in the tank", "kg", "", "time: point", {}, {}};
  for (std::size_t row = 0; row < r.time_s.size(); ++row) {
    for (int k = 0; k < 6; ++k)
      air.values.push_back(290.0 + 10.0 * std::sin(0.05 * static_cast<double>(row)) + 0.1 * k);
    tank.values.push_back(row == 7 ? kNotHappened : 250.0 - 0.1 * static_cast<double>(row));
  }
  r.series = {air, tank};
  add_sample_outcomes(r);
  r.provenance.version = "0.1.0";
  r.scenario_text = "house:\n  bays: 2\n";
  r.cautions = {"Do not work in the house above 30 degC WBGT.", "Ballast the cover."};
  r.notes = {"The battery lives about 9 years.", "The front gutter overshot.", "Three of them."};
  return r;
}

}  // namespace noonhouse
