// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <functional>

#include "tools/placing/place_climate.hpp"
#include "tools/record/run_record.hpp"

namespace noonhouse {

/// A run of a plan with the climates of its places, seen every so often.
struct WatchedRun {
  RunRecord record;
  HouseClimates climates;
};
WatchedRun watched_run(const Scenario& scenario, const PlanScenario& plan, Tick every,
                       const std::function<void(double)>& progress);

}  // namespace noonhouse
