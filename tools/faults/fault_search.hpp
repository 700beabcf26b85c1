// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <atomic>
#include <functional>

#include "models/weather/weather_series.hpp"
#include "tools/faults/fault_branches.hpp"
#include "tools/faults/fault_sheet.hpp"
#include "tools/scenario/assemble.hpp"

namespace noonhouse {

/// How a plan's failures are searched.
struct FaultSearch {
  Tick horizon = kDay;  ///< how far each failure is followed for harm
  int threads = 1;
  std::function<void(double)> progress;     ///< share done, from the calling thread; may be empty
  const std::atomic<bool>* stop = nullptr;  ///< once set, UserError(interrupted) is thrown
};

/// The failures that a plan's house can have, in the order to try them: of each device in service, of the sensors that
/// its controls read, of those controls, of the stores and of the grower.
std::vector<FaultPoint> fault_catalogue(const PlanScenario& plan, const Assembly& assembly);

/// Tries every failure of the catalogue through the run.
///   hours        on the day that is hottest outdoors: the time left from a failure at each full hour
///   other days   every third hour, each followed no further than the least time left so far; where the hottest day
///                shows no harm, one failure from the start of the run on, and then the day before its first harm
///   refined      around the worst full hour, to ten minutes
///   costs        a failure at the worst moment, to the end of the run
///   additions    each fitted at the midnight before, with the failure at its worst moment
/// The same scenario gives the same sheet on any number of threads. "Worst" is the moment found by that search: a
/// shorter time between two of the moments tried is not seen.
FaultSheet search_faults(const Scenario& scenario, const PlanScenario& plan, const WeatherSeries& weather,
                         const FaultSearch& search);

}  // namespace noonhouse
