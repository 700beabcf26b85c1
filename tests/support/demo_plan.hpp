// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <memory>
#include <string>
#include <utility>

#include "sim/run/run.hpp"
#include "tools/scenario/assemble.hpp"
#include "tools/scenario/scenario.hpp"

namespace noonhouse {

/// A named plan of the demonstration scenario, ready to run. Throws UserError where there is no such plan.
inline RunPlan demo_plan(const std::string& name) {
  const Scenario scenario = read_scenario(NOONHOUSE_SOURCE_DIR "/scenarios/heatwave/heatwave.yaml");
  const PlanScenario& plan = scenario.plan(name);
  const WeatherSeries weather = weather_of(scenario, plan);
  return std::move(assemble(plan, site_table(plan, weather), weather).plan);
}

}  // namespace noonhouse
