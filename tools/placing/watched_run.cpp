// SPDX-License-Identifier: Apache-2.0
#include "tools/placing/watched_run.hpp"

#include <memory>

#include "tools/compare/plan_run.hpp"

namespace noonhouse {

WatchedRun watched_run(const Scenario& scenario, const PlanScenario& plan, Tick every,
                       const std::function<void(double)>& progress) {
  const WeatherSeries weather = weather_of(scenario, plan);
  const auto table = site_table(plan, weather);
  std::unique_ptr<PlaceWatcher> watcher;
  WatchedRun out;
  out.record = run_plan(scenario, plan, weather, table, progress, [&](const Assembly& assembly, Run& run) {
    watcher = std::make_unique<PlaceWatcher>(assembly, plan.spec, *table, every);
    run.add_observer(*watcher);
  });
  out.climates = watcher->take_climates();
  return out;
}

}  // namespace noonhouse
