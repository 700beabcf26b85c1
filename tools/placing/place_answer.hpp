// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <functional>
#include <string>
#include <variant>
#include <vector>

#include "tools/placing/probe.hpp"
#include "tools/placing/standing_plan.hpp"
#include "tools/record/run_record.hpp"
#include "tools/scenario/scenario.hpp"

namespace noonhouse {

/// What is asked of a house: where its plants should stand.
struct PlaceQuestion {
  std::vector<std::string> keep;  ///< groups that stay where they are, beside those whose scenario says so
  int most_moves = -1;            ///< groups that may be moved; negative: any number
  int threads = 1;
  std::function<void(double)> progress;  ///< hears the share done; may be empty
};

/// A place as the answer shows it.
struct PlaceShown {
  std::string name, bay;
  double height_m = 0.0, room_m2 = 0.0;
  double peak_air_k = 0.0, mean_air_k = 0.0, light_mol_m2 = 0.0;  ///< over the run; light by the day
  double direct_h = 0.0;                                          ///< direct sun above 120 W/m2, hours a day
  std::vector<double> peak_air_by_day_k, light_by_day_mol_m2;
  /// Hour by hour on the house's hottest day: means of the air, of its dryness, and of photosynthetic light.
  std::vector<double> hour_air_k, hour_deficit_pa, hour_par_mol_m2_s;
};

/// One group: what it would feel on each place, and what became of it.
struct GroupShown {
  std::string name, kind;
  double harm_above_k = 0.0, harm_below_k = 0.0, least_light_mol_m2 = 0.0;
  int stands_on = -1, should_stand_on = -1;  ///< indices of places
  bool stays = false;                        ///< is to stay where it stands
  std::vector<PlaceFelt> felt;               ///< per place
  std::vector<std::string> cannot;           ///< per place: why it cannot stand there; empty where it can
  std::string why;                           ///< in words: why it should move, or why it may stay
  PlantOutcome before, after;                ///< of whole runs, as it stands and as it should
};

/// Where the plants of a house should stand in a plan's weather, and what moving them gains.
struct PlaceAnswer {
  std::string house, plan, start;  ///< start: "2025-07-14 00:00:00"
  double length_s = 0.0, every_s = 0.0;
  std::size_t hottest_day = 0;  ///< counted from 0: the one with the hottest air
  std::vector<PlaceShown> places;
  std::vector<GroupShown> groups;
  StandingProblem problem;
  std::variant<StandingPlan, Unhoused> standing;
  WaterOutcome water_before, water_after;
};

/// Runs the house as it stands, tries every group on every place in the climate that the place had, finds the standing
/// of least harm, and runs the house so. Deterministic on any number of threads. Throws UserError(unknown_name) for a
/// group that the plan does not have.
PlaceAnswer answer_place(const Scenario& scenario, const PlanScenario& plan, const PlaceQuestion& question);

}  // namespace noonhouse
