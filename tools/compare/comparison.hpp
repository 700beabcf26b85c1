// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstddef>
#include <string>
#include <vector>

#include "tools/record/run_record.hpp"

namespace noonhouse {

/// What one plan's run comes to, counted for ranking.
struct PlanTally {
  int plants = 0, kept = 0, strained = 0, harmed = 0, lost = 0;
  /// Distinct root causes of failures of devices or supplies: what fails again for the same reason counts once, and
  /// harm to plants is counted above.
  int failures = 0;
  double water_used_kg = 0.0;           ///< by devices and people, with what cuts and leaks lost [kg]
  double energy_used_j = 0.0;           ///< drawn by the loads [J]
  double hours_beyond = 0.0;            ///< plant hours too hot or too cold, summed over the plants [h]
  double cost_a_season = kNotHappened;  ///< in the scenario's currency; no number where it is not known
};

/// One plan's place in the order.
struct RankedPlan {
  int rank = 0;           ///< 1 is best; plans that differ in name alone share a rank
  std::size_t index = 0;  ///< into the records given
  PlanTally tally;
};

/// What one run comes to. Throws UserError(results_unreadable) at an outcome other than kept, strained,
/// harmed or lost.
PlanTally tally_plan(const RunRecord& record);

/// The records in the order of ranking_rule(), best first. The same records in any order of reading
/// rank the same way. Throws UserError(usage) when there are none.
std::vector<RankedPlan> rank_plans(const std::vector<RunRecord>& records);

/// The rule by which plans are ranked, as one sentence.
///
/// Plant hours too hot or too cold count in whole hours, water in whole litres, charge in whole watt-hours and money in
/// whole units: a smaller difference is not a reason to prefer a plan, and the order stays a strict one (rounded values
/// compare transitively). Cost counts where all plans know theirs in one currency; else it is left out for all of them.
std::string ranking_rule();

/// Why these runs should not be compared as they are (different scenario, weather, length, start or
/// version); empty when they may be. Each is one sentence.
std::vector<std::string> comparison_warnings(const std::vector<RunRecord>& records);

/// The answer in one or two sentences: which plan is first, how many plants it keeps, and by what it
/// stands before the next.
std::string headline(const std::vector<RunRecord>& records, const std::vector<RankedPlan>& ranked);

/// The first thing in ranking order by which `better` stands before `worse`, such as "it keeps more
/// plants"; empty when they differ in name alone.
std::string deciding_reason(const PlanTally& better, const PlanTally& worse);

}  // namespace noonhouse
