// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstdint>
#include <string>
#include <vector>

#include "tools/record/supply_outcomes.hpp"

namespace noonhouse {

/// One axis of the recorded series beside time: a list of labels, with coordinates where it has them.
struct RecordAxis {
  std::string name;                 ///< such as "level"
  std::string long_name;            ///< such as "air layer, counted from the floor"
  std::vector<std::string> labels;  ///< one per entry, never empty
  std::vector<double> coordinates;  ///< one per entry, or empty where the axis is only labels
  std::string units;                ///< of the coordinates, UDUNITS text; empty without coordinates
};

/// One recorded series: values over time and over the named axes.
struct RecordSeries {
  std::string name;  ///< such as "air_temperature"
  std::string long_name;
  std::string units;              ///< UDUNITS text; "1" for shares
  std::string standard_name;      ///< CF standard name, or empty where none exists
  std::string cell_methods;       ///< such as "time: point"
  std::vector<std::string> axes;  ///< names of axes after time, outermost first
  std::vector<double> values;     ///< row-major [time][axes...]
};

/// One line of the event log. The cause is the id of an earlier event, or -1.
struct RecordEvent {
  std::int64_t id = 0;
  std::int64_t cause = -1;
  double time_s = 0.0;  ///< since the start of the run [s]
  std::string kind;     ///< "action", "weather", "people", "warning", "failure", "harm"
  std::string subject;  ///< device, plant or place by its scenario name
  std::string what;     ///< in words
};

/// What one plant group went through.
struct PlantOutcome {
  std::string name, kind, place, bay;
  double height_m = 0.0;
  double harm_above_k = kNotHappened;    ///< tissue above this is harmed; not a number where none is stated [K]
  double lethal_above_k = kNotHappened;  ///< tissue above this dies [K]
  double harm_below_k = kNotHappened;    ///< tissue below this is harmed [K]
  std::string outcome;                   ///< "kept", "strained", "harmed" or "lost"
  std::string reason;                    ///< in words; empty when kept
  double hours_beyond = 0.0;             ///< leaves or roots beyond their limits of heat or cold [h]
  double degree_hours_beyond = 0.0;      ///< integral of the excess above the harm limit [K h]
  double longest_spell_h = 0.0;          ///< longest single time beyond [h]
  double hours_lethal = 0.0;             ///< tissue beyond its lethal limit, hot or cold [h]
  double peak_tissue_k = 0.0, peak_tissue_time_s = kNotHappened;
  double lowest_tissue_k = 0.0;
  double peak_air_k = 0.0;
  double hours_dry_air = 0.0;       ///< vapour pressure deficit above the kind's limit [h]
  double hours_wet = 0.0;           ///< free water on the tissue [h]
  double daily_light_mol_m2 = 0.0;  ///< mean photosynthetic light a day at the place [mol/m2]
  double sunburn_share = 0.0;       ///< highest dose of sunburn over the one that marks it
  double peak_wall_k = 0.0;         ///< highest temperature of its pots' walls
  double transpired_kg = 0.0;       ///< water that left through its leaves
  double day_length_h = 0.0;        ///< mean time a day with light enough to count as day [h]
  int days_long_enough = 0;         ///< days as long and as short as the kind wants
  int days_of_wrong_length = 0;     ///< the others; 0 of both where it does not matter to the kind
};

struct LevelOutcome {
  std::string bay;
  int level = 0;
  double height_m = 0.0;  ///< middle of the layer above the floor [m]
  double peak_k = 0.0, peak_time_s = kNotHappened, mean_k = 0.0;
};

/// How often the house changes its air, over its own dry air; what comes in counts, seen every five minutes.
struct AiringOutcome {
  double mean_1_s = kNotHappened;  ///< over the run [1/s]
  double least_1_s = kNotHappened, least_time_s = kNotHappened;
  double most_1_s = kNotHappened, most_time_s = kNotHappened;
  double hottest_1_s = kNotHappened;  ///< when the air of a layer was hottest
};

/// What a way through the cover does on the mean of the run: an opening, a fan, the cracks of a bay's side.
struct WayOutcome {
  std::string name;
  double in_1_s = 0.0, out_1_s = 0.0;  ///< air that comes in and goes out, in air changes of the house [1/s]
};

/// A failure or harm, and the chain of events that led to it, newest first.
struct FailureOutcome {
  double time_s = 0.0;
  std::string kind, subject, what;
  std::vector<std::string> chain;
};

struct DeviceOutcome {
  std::string name;
  int starts = 0;
  double hours_on = 0.0;
};

/// One line of the balance of one node: what its store gained against what its exchanges brought.
struct BalanceLine {
  std::string node, quantity;  ///< quantity: "energy" [J], "water" [kg] or "charge" [J]
  double change = 0.0, inflow = 0.0, residual = 0.0;
};

/// One path of the balance: how much crossed one kind of exchange between two nodes over the run.
struct PathLine {
  std::string path, from, to, quantity;
  double amount = 0.0;
};

struct ClosureOutcome {
  double energy_relative = 0.0;  ///< |stored change - net inflow| over the energy that crossed the boundary
  double water_relative = 0.0;
  double charge_relative = 0.0;
  double energy_crossed_j = 0.0, water_crossed_kg = 0.0, charge_crossed_j = 0.0;
};

/// Where the heat went in one hour that the sun brought [J]. Positive: it left, was bound in vapour or is kept;
/// negative: it came back. The sun is the sum of the others.
struct LedgerHour {
  double begin_s = 0.0, end_s = 0.0;  ///< since the start of the run; the last hour may be shorter [s]
  double sun_j = 0.0;
  double vents_j = 0.0, mist_j = 0.0, surfaces_j = 0.0, transpiration_j = 0.0;
  double cover_j = 0.0, sky_j = 0.0, ground_j = 0.0, water_j = 0.0, kept_j = 0.0;
};

struct Provenance {
  std::string version, scenario_file, scenario_digest, weather_digest;
  std::int64_t seed = 0;
};

struct StepCounts {
  std::int64_t steps = 0, rejected = 0, events = 0;
};

/// All that one run leaves behind. Written by the recorder as one file, read by compare and report.
struct RunRecord {
  std::string scenario, title, plan, about;
  std::string start;       ///< local standard time of second 0, "2025-07-14 00:00:00"
  std::string utc_offset;  ///< such as "-07:00"
  std::string calendar = "proleptic_gregorian";
  double latitude_deg = 0.0, longitude_deg = 0.0, altitude_m = 0.0;
  double duration_s = 0.0;
  std::vector<double> time_s;  ///< record instants since the start [s]
  std::vector<RecordAxis> axes;
  std::vector<RecordSeries> series;
  std::vector<RecordEvent> events;
  std::vector<PlantOutcome> plants;
  std::vector<LevelOutcome> levels;
  std::vector<DeviceOutcome> devices;
  WaterOutcome water;
  EnergyOutcome energy;
  CostOutcome cost;
  AiringOutcome airing;
  std::vector<WayOutcome> ways;
  std::vector<WorkHeatOutcome> work_heat;  ///< bay by bay
  std::vector<FailureOutcome> failures;
  ClosureOutcome closure;
  std::vector<BalanceLine> balances;
  std::vector<PathLine> paths;
  std::vector<LedgerHour> ledger;  ///< hour by hour, without gaps
  StepCounts counts;
  Provenance provenance;
  std::string scenario_text;          ///< as read, defaults expanded
  std::vector<std::string> cautions;  ///< safety notes that apply to this house
  std::vector<std::string> notes;     ///< what this run wears out, overloads or calls for, in sentences
};

}  // namespace noonhouse
