// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <tuple>
#include <type_traits>
#include <vector>

#include "tools/record/record_plant_fields.hpp"
#include "tools/record/record_supply_fields.hpp"
#include "tools/record/record_system_fields.hpp"

namespace noonhouse {

/// The run file, in prose. Version 2.
///
/// An HDF5 file that netCDF-4 tools open as a CF-1.10 data set. Numbers are float64, int32 or int64, little-endian;
/// text is variable-length UTF-8. Objects carry no times, so equal records are equal bytes.
///
///   /              attributes: Conventions, record_version, title, source, comment (what the run is about), scenario,
///                  plan, start (local standard time of second 0) and utc_offset; optional ones are absent when empty
///     time         unlimited dimension, "seconds since <start> <utc_offset>"
///     <axis>       a further dimension: its coordinates (float64), beside them <axis>_label; or, for an axis without
///                  coordinates, its labels themselves
///     <series>     (time, axes...), float64 with NaN where there is no value
///     latitude, longitude, altitude, duration   single values
///   /events        one entry an event over the dimension `event`, which is the event's identifier
///   /metrics       tables /metrics/plants (over plant), levels (layer), devices (device), ways (way), work_heat (bay),
///                  failures (failure); single values in water, energy, cost, airing and steps. The chains of the
///                  failures are one list `chain` over `link`; `chain_length` says how many of them belong to each
///                  failure, in turn
///   /notes         `text` over note: what the run wears out, overloads or calls for
///   /balance       tables nodes (node_line) and paths (path_line); single values in closure
///   /ledger        table over `hour`: where the sun's heat went in each hour of the run
///   /scenario      `text`, as read with defaults expanded; `cautions` over caution
///   /provenance    version, files' digests, seed
///   after the end  one line of text outside of HDF5, a checksum of the file (record_seal.hpp)
///
/// Every variable of a table is named, with unit and meaning, in record_plant_fields.hpp, record_supply_fields.hpp and
/// record_system_fields.hpp.
/// Does not hold: text with NUL characters (cut there).

inline constexpr int kRecordVersion = 3;
inline constexpr const char* kRecordVersionName = "record_version";
inline constexpr const char* kLabelSuffix = "_label";

/// A text of the record that is an attribute of the file.
struct RecordText {
  const char* name;
  std::string RunRecord::*member;
};
inline constexpr RecordText kRecordTexts[] = {
    {"title", &RunRecord::title}, {"comment", &RunRecord::about}, {"scenario", &RunRecord::scenario},
    {"plan", &RunRecord::plan},   {"start", &RunRecord::start},   {"utc_offset", &RunRecord::utc_offset},
};

/// A single number of the record that is a variable of the root group.
struct RecordNumber {
  const char* name;
  double RunRecord::*member;
  const char* units;
  const char* standard_name;
  const char* long_name;
};
inline constexpr RecordNumber kRecordNumbers[] = {
    {"latitude", &RunRecord::latitude_deg, "degrees_north", "latitude", "latitude of the house"},
    {"longitude", &RunRecord::longitude_deg, "degrees_east", "longitude", "longitude of the house"},
    {"altitude", &RunRecord::altitude_m, "m", "altitude", "height of the house above sea level"},
    {"duration", &RunRecord::duration_s, "s", "", "simulated time"},
};

static_assert(field_count<RunRecord>() == 34, "a field of RunRecord was added: write, read and compare it");
static_assert(field_count<RecordAxis>() == 5, "a field of RecordAxis was added: write, read and compare it");
static_assert(field_count<RecordSeries>() == 7, "a field of RecordSeries was added: write, read and compare it");
/// The chain of a failure is kept as a ragged array, outside its list.
template <class Struct>
inline constexpr std::size_t kUnlisted = std::is_same_v<Struct, FailureOutcome> ? 1 : 0;

/// A table: its group, its dimension (a field of that name is the dimension's own labels) and the list it holds.
template <class Row>
struct RecordTable {
  static_assert(listed_count<Row>() + kUnlisted<Row> == field_count<Row>(), "RecordFields<Row> misses a field");
  const char* group;
  const char* dimension;
  std::vector<Row> RunRecord::*rows;
  bool growable = false;
};
/// A block of single values: its group and where it lives.
template <class Struct>
struct RecordBlock {
  static_assert(listed_count<Struct>() == field_count<Struct>(), "RecordFields<Struct> misses a field");
  const char* group;
  Struct RunRecord::*member;
};

inline constexpr std::tuple kRecordTables{
    RecordTable<RecordEvent>{"events", "event", &RunRecord::events, true},
    RecordTable<PlantOutcome>{"metrics/plants", "plant", &RunRecord::plants},
    RecordTable<LevelOutcome>{"metrics/levels", "layer", &RunRecord::levels},
    RecordTable<DeviceOutcome>{"metrics/devices", "device", &RunRecord::devices},
    RecordTable<WayOutcome>{"metrics/ways", "way", &RunRecord::ways},
    RecordTable<WorkHeatOutcome>{"metrics/work_heat", "bay", &RunRecord::work_heat},
    RecordTable<FailureOutcome>{"metrics/failures", "failure", &RunRecord::failures},
    RecordTable<BalanceLine>{"balance/nodes", "node_line", &RunRecord::balances},
    RecordTable<PathLine>{"balance/paths", "path_line", &RunRecord::paths},
    RecordTable<LedgerHour>{"ledger", "hour", &RunRecord::ledger},
};
inline constexpr std::tuple kRecordBlocks{
    RecordBlock<WaterOutcome>{"metrics/water", &RunRecord::water},
    RecordBlock<EnergyOutcome>{"metrics/energy", &RunRecord::energy},
    RecordBlock<CostOutcome>{"metrics/cost", &RunRecord::cost},
    RecordBlock<AiringOutcome>{"metrics/airing", &RunRecord::airing},
    RecordBlock<StepCounts>{"metrics/steps", &RunRecord::counts},
    RecordBlock<ClosureOutcome>{"balance/closure", &RunRecord::closure},
    RecordBlock<Provenance>{"provenance", &RunRecord::provenance},
};

/// Calls visit(entry) for every entry of a tuple of tables or blocks, in order.
template <class Entries, class Visit>
constexpr void for_each_entry(const Entries& entries, Visit&& visit) {
  std::apply([&](const auto&... entry) { (visit(entry), ...); }, entries);
}

}  // namespace noonhouse
