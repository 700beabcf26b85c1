// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/weather_hints.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "tools/scenario/house_hints.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {
namespace {

/// Coldest and warmest outdoor air [K] of the rows that a run reads.
std::pair<double, double> outdoor_range_k(const PlanScenario& plan, const WeatherSeries& weather) {
  const std::chrono::duration<double> before = std::chrono::sys_days(plan.spec.run.start) - weather.start;
  const auto rows = static_cast<double>(weather.rows.size());
  const double first = std::floor(before.count() / weather.step_s) - 1.0;
  const double last = std::ceil((before.count() + plan.spec.run.length_s) / weather.step_s) + 1.0;
  const auto row = [&](double index) {
    return weather.rows.begin() + static_cast<std::ptrdiff_t>(std::clamp(index, 0.0, rows));
  };
  const auto [coldest, warmest] = std::minmax_element(
      row(first), row(last), [](const auto& a, const auto& b) { return a.temperature_k < b.temperature_k; });
  return {coldest->temperature_k, warmest->temperature_k};
}

/// Sentences in the order in which they were first said, with who said them.
class SaidBy {
 public:
  void add(const std::string& text, const std::string& plan) {
    const auto at = std::find_if(said_.begin(), said_.end(), [&](const auto& it) { return it.first == text; });
    if (at == said_.end()) {
      said_.push_back({text, {plan}});
    } else if (at->second.back() != plan) {
      at->second.push_back(plan);
    }
  }
  std::vector<std::string> told(std::size_t plans) const {
    std::vector<std::string> out;
    for (const auto& [text, by] : said_)
      out.push_back(by.size() == plans
                        ? text
                        : fmt::format("plan{} \"{}\": {}", by.size() == 1 ? "" : "s", fmt::join(by, "\", \""), text));
    return out;
  }

 private:
  std::vector<std::pair<std::string, std::vector<std::string>>> said_;
};

}  // namespace

std::vector<std::string> weather_hints(const PlanScenario& plan, const WeatherSeries& weather) {
  std::vector<std::string> out;
  const auto degrees = [](double k) { return format_quantity(k, Dimension::temperature, UnitSystem::metric); };
  const auto [coldest_k, warmest_k] = outdoor_range_k(plan, weather);
  const auto tell = [&, lowest = degrees(coldest_k), highest = degrees(warmest_k)](const std::string& rule,
                                                                                   const char* key, double limit_k) {
    out.push_back(
        fmt::format("{} of the rule {}, {}, is so all the time in this weather, which goes from {} to {}: as far as "
                    "this goes, the rule always holds",
                    key, rule, degrees(limit_k), lowest, highest));
  };
  for (const auto& [name, rule] : plan.spec.rules) {
    if (const auto& k = rule.outdoors_above_k; k && *k < coldest_k) tell(name, "outdoors_above", *k);
    if (const auto& k = rule.outdoors_below_k; k && *k > warmest_k) tell(name, "outdoors_below", *k);
    if (const auto& k = rule.forecast_above_k; k && *k < coldest_k) tell(name, "forecast_above", *k);
  }
  return out;
}

std::vector<std::string> further_hints(const Scenario& scenario, const PlanScenario& shown,
                                       const std::vector<std::vector<std::string>>& of_weather) {
  const auto in_tree = house_hints(shown);
  SaidBy said;
  for (std::size_t i = 0; i < scenario.plans.size(); ++i) {
    const PlanScenario& plan = scenario.plans[i];
    for (const std::string& slip : plan_slips(plan))
      if (std::find(in_tree.begin(), in_tree.end(), slip) == in_tree.end()) said.add(slip, plan.name);
    for (const std::string& hint : of_weather[i]) said.add(hint, plan.name);
  }
  return said.told(scenario.plans.size());
}

}  // namespace noonhouse
