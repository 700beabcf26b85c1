// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <chrono>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "models/air/tracer.hpp"
#include "tools/airing/air_streams.hpp"
#include "tools/scenario/scenario.hpp"

/// What the air of a house does at an instant of a run. All flows are dry air [kg/s]; an air change is the house's own
/// dry air, which its layers keep at all temperatures. Divided by the density that fills them, both are volumes.
namespace noonhouse {

/// One way through the cover with all its pieces, however many layers it touches.
struct AirFlow {
  std::string name;
  AirWayKind kind = AirWayKind::opening;
  int bay = 0;
  double in_kg_s = 0.0, out_kg_s = 0.0;
};

/// A layer, and what passes the level at its top; nothing does under the roof.
struct LayerAir {
  int bay = 0;
  std::size_t layer = 0;
  double height_m = 0.0;  ///< of its middle
  AirState air, column;
  double column_up_kg_s = 0.0;            ///< in the column of warm air
  double up_kg_s = 0.0, down_kg_s = 0.0;  ///< beside it, by rise and by mixing
};

struct BayAir {
  std::string name;
  double dry_air_kg = 0.0, in_kg_s = 0.0, out_kg_s = 0.0;  ///< from outdoors and to there
  double to_next_kg_s = 0.0, from_next_kg_s = 0.0;         ///< through the section to the bay after it
  /// Height at which the air inside presses as much as the air outdoors would without wind [m]; none where it presses
  /// more, or less, at all heights of the house.
  std::optional<double> neutral_m;
  double excess_at_floor_pa = 0.0;  ///< inside less outside without wind
};

/// The flows of the instant frozen, and a tracer in them that fills the house evenly at first.
struct TracerCheck {
  double network_1_s = 0.0;  ///< outdoor air drawn in over the house's air
  double decay_1_s = 0.0;    ///< mean rate of the tracer's decay over one nominal time
  double slowest_1_s = 0.0;  ///< its rate in the end
  double mean_age_s = 0.0;   ///< of the house's air
  double efficiency = 0.0;   ///< 0.5 if all is mixed, less where air short-circuits
};

struct Airing {
  std::string house, plan;
  Tick when;    ///< since the run's start
  int day = 1;  ///< of the run, which that instant belongs to: the one that begins at midnight, but for the run's end
  std::chrono::year_month_day date;
  AirState outdoors;
  double pressure_pa = 0.0, dry_air_kg_m3 = 0.0, wind_m_s = 0.0, wind_from_rad = 0.0;
  std::vector<AirFlow> flows;  ///< openings and fans in the scenario's order, then cracks
  std::vector<BayAir> bays;
  std::vector<LayerAir> layers;       ///< bay by bay, from the floor up
  std::optional<TracerCheck> tracer;  ///< none where so much air is alike that streams cannot be told apart
  /// Air changes of the house on the instant's calendar day, mean of each hour [1/s]; not a number where the run does
  /// not reach.
  std::vector<double> hourly_1_s;

  double dry_air_kg() const;
  double in_kg_s() const;
  double out_kg_s() const;
};

/// The instant of "day 4 15:00", day 1 being that of the run's start. Throws UserError (usage) for other text and for
/// an instant beyond the run's end.
Tick instant_of(const std::string& text, const PlanScenario& plan);

/// Runs the plan as far as the end of the instant's day and looks at its air. Throws UserError of weather and run.
Airing airing_at(const Scenario& scenario, const PlanScenario& plan, Tick when);

/// The pieces of each way through the cover together, in the order of their first.
std::vector<AirFlow> through_the_cover(const AirStreams& house, const std::vector<TwoWayAir>& streams);

/// The zones of the house with given streams between them, as a tracer sees them; volumes at the density given.
FlushedZones flushed_zones(const AirStreams& house, const std::vector<TwoWayAir>& streams, double dry_air_kg_m3);

/// Outdoor air drawn in through all ways [kg/s].
double drawn_in_kg_s(const AirStreams& house, const std::vector<TwoWayAir>& streams);

}  // namespace noonhouse
