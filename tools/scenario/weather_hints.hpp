// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "models/weather/weather_series.hpp"
#include "tools/scenario/scenario.hpp"

namespace noonhouse {

/// Limits of a plan's rules that its weather keeps to all the time, so that they hold back nothing, a sentence each. A
/// limit that it never reaches is no slip: rules stand by for what may come.
std::vector<std::string> weather_hints(const PlanScenario& plan, const WeatherSeries& weather);

/// What the tree of one plan does not show: slips of the other plans, and the weather_hints of all, which stand in
/// their order; each once, with the plans that it holds for where those are not all.
std::vector<std::string> further_hints(const Scenario& scenario, const PlanScenario& shown,
                                       const std::vector<std::vector<std::string>>& of_weather);

}  // namespace noonhouse
