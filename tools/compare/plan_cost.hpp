// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "tools/record/run_record.hpp"
#include "tools/scenario/scenario.hpp"

namespace noonhouse {

/// Water that refills brought over a run.
struct WaterBrought {
  double visits_price = 0.0;  ///< price of each visit times the visits, in the prices' currency
  double volume_m3 = 0.0;
};

/// The priced parts that a plan has, in the prices' order: devices and controls in service, rules that act on them or
/// make the grower act, sensors that such a control or rule reads, pumps of lines in service; gutters, tank, panel and
/// battery in every plan.
std::vector<const Named<PriceSpec>*> priced_parts(const PlanScenario& plan);

/// What a plan costs, in the prices' currency: to buy it, and a season, each part worn evenly over the seasons it
/// lasts.
///   capital = sum buys;  a season = sum (upkeep + buys / lasts) + (visits + water price x volume) season / run
/// Common practice, no source. No numbers where the scenario prices nothing. Does not model: interest, what is left of
/// a part when its plan ends, the grower's hours, plants that are lost.
CostOutcome plan_cost(const PlanScenario& plan, const WaterBrought& brought);

}  // namespace noonhouse
