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
  Tick horizon = kDay;     ///< how far each failure is followed for harm
  Tick told_day = kNever;  ///< midnight of the day whose hours are told; kNever for the hottest
  int threads = 1;
  std::function<void(double)> progress;     ///< share done, from the calling thread; may be empty
  const std::atomic<bool>* stop = nullptr;  ///< once set, UserError(interrupted) is thrown
};

/// Tries every failure of the catalogue through the run.
///   hours        on the day that is hottest outdoors: from midnight on, and where that does harm at each full hour;
///                reboots and readings that freeze, whose effect depends on what they meet, always at each full hour
///   day told     the same on the day whose hours are told, where that is another
///   other days   at about the hour that is worst there, followed no further than the least time left so far; where the
///                hottest day shows no harm, one failure from the start of the run on, and the day before its first
///                harm; of what does all it does within a day (vents, cloths, controls) the next hottest day instead;
///                then other days as above
///   refined      around the worst moment, to ten minutes
///   costs        a failure at the worst moment, followed for a day after its first harm
///   the house    what of it breaks: house_breaks says which moments are tried
///   additions    each fitted as the failure comes, at its worst moment, followed through the horizon and for at least
///                12 h beyond the harm without it
/// The same scenario gives the same sheet on any number of threads. "Worst" is the moment found by that search: a
/// shorter time between two of the moments tried is not seen.
FaultSheet search_faults(const Scenario& scenario, const PlanScenario& plan, const WeatherSeries& weather,
                         const FaultSearch& search);

}  // namespace noonhouse
