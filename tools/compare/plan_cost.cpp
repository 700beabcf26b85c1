// SPDX-License-Identifier: Apache-2.0
#include "tools/compare/plan_cost.hpp"

#include <algorithm>
#include <set>

#include "sim/core/tick.hpp"

namespace noonhouse {
namespace {

template <class Items>
void add_sensors(std::set<std::string>& read, const PlanScenario& plan, const Items& controls) {
  for (const auto& item : controls)
    if (plan.uses(item.name)) read.insert(item.value.sensor);
}

/// Whether a rule forbids or calls something in service, or is a sign on which the grower opens or shuts such a thing.
bool acts(const PlanScenario& plan, const Named<RuleSpec>& rule) {
  const auto any_used = [&](const std::vector<std::string>& devices) {
    return std::any_of(devices.begin(), devices.end(), [&](const std::string& device) { return plan.uses(device); });
  };
  const auto& responses = plan.spec.grower.responses;
  return any_used(rule.value.forbids) || any_used(rule.value.calls) ||
         std::any_of(responses.begin(), responses.end(), [&](const auto& r) {
           return r.value.sign == rule.name && (any_used(r.value.opens) || any_used(r.value.shuts));
         });
}

/// The sensors that something in service reads.
std::set<std::string> sensors_read(const PlanScenario& plan) {
  const ScenarioSpec& s = plan.spec;
  std::set<std::string> read;
  add_sensors(read, plan, s.thermostats);
  add_sensors(read, plan, s.humidistats);
  add_sensors(read, plan, s.deficit_controls);
  add_sensors(read, plan, s.staged_controls);
  add_sensors(read, plan, s.proportional_controls);
  for (const auto& rule : s.rules)
    if (acts(plan, rule)) read.insert(rule.value.sensor);
  return read;
}

/// All that a plan has, by name.
std::set<std::string> parts_of(const PlanScenario& plan) {
  std::set<std::string> out(plan.in_service.begin(), plan.in_service.end());
  out.insert({"tank", "panel", "battery"});
  for (const auto& gutter : plan.spec.gutters) out.insert(gutter.name);
  for (const auto& line : plan.spec.mist_lines)
    if (plan.uses(line.name)) out.insert(line.value.pump);
  for (const auto& rule : plan.spec.rules)
    if (acts(plan, rule)) out.insert(rule.name);
  out.merge(sensors_read(plan));
  return out;
}

bool prices_anything(const ScenarioSpec& s) {
  return !s.prices.parts.empty() || s.prices.water_m3 > 0.0 ||
         std::any_of(s.refills.begin(), s.refills.end(), [](const auto& refill) { return refill.value.price > 0.0; });
}

}  // namespace

std::vector<const Named<PriceSpec>*> priced_parts(const PlanScenario& plan) {
  const std::set<std::string> has = parts_of(plan);
  std::vector<const Named<PriceSpec>*> out;
  for (const auto& part : plan.spec.prices.parts)
    if (has.contains(part.name)) out.push_back(&part);
  return out;
}

CostOutcome plan_cost(const PlanScenario& plan, const WaterBrought& brought) {
  const PricesSpec& prices = plan.spec.prices;
  if (!prices_anything(plan.spec)) return {};
  CostOutcome out{prices.currency, 0.0, 0.0, 0.0, prices.season_s / kSecondsPerDay};
  for (const Named<PriceSpec>* part : priced_parts(plan)) {
    out.capital += part->value.buys;
    out.per_season += part->value.a_season + part->value.buys / part->value.lasts_seasons;
  }
  out.brought = (brought.visits_price + prices.water_m3 * brought.volume_m3) * prices.season_s / plan.spec.run.length_s;
  out.per_season += out.brought;
  return out;
}

}  // namespace noonhouse
