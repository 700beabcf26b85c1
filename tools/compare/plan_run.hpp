// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <atomic>
#include <functional>
#include <memory>
#include <vector>

#include "tools/record/run_record.hpp"
#include "tools/scenario/assemble.hpp"

namespace noonhouse {

/// Runs one plan and returns its whole record. `progress` hears the share done, now and then; may be empty. `look_on`,
/// if given, may add observers that outlive this call; the assembly does not.
RunRecord run_plan(const Scenario& scenario, const PlanScenario& plan, const WeatherSeries& weather,
                   std::shared_ptr<const SiteTable> table, const std::function<void(double)>& progress = {},
                   const std::function<void(const Assembly&, Run&)>& look_on = {});

/// Runs plans on `threads` threads at most. The records come in the order of `plans` and do not depend on the
/// number of threads; plans with the same site and geometry share one table of sun and weather. When plans fail,
/// the first one's error in that order is thrown. `progress` hears the share of all runs from the calling thread.
/// Once `stop` is set, every run ends at its next step and UserError(interrupted) is thrown; no record is returned.
std::vector<RunRecord> run_plans(const Scenario& scenario, const std::vector<const PlanScenario*>& plans, int threads,
                                 const std::function<void(double)>& progress = {},
                                 const std::atomic<bool>* stop = nullptr);

}  // namespace noonhouse
