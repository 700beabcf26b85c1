// SPDX-License-Identifier: Apache-2.0
#include "tools/compare/cautions.hpp"

#include <algorithm>

namespace noonhouse {
namespace {

template <class Items>
bool any_used(const PlanScenario& plan, const Items& items) {
  return std::any_of(items.begin(), items.end(), [&](const auto& item) { return plan.uses(item.name); });
}

}  // namespace

std::vector<std::string> cautions_for(const PlanScenario& plan) {
  std::vector<std::string> out;
  out.emplace_back(
      "These are computed answers from stated assumptions, not a guarantee: keep watching the plants and the weather.");
  out.emplace_back(
      "Work in a house this hot can bring heat stroke: stay out in the hottest hours, drink, work with somebody near. "
      "ISO 7243 gives limits of heat for work (wet-bulb globe temperature); your occupational rules come first.");
  const bool wet = any_used(plan, plan.spec.mist_lines) || any_used(plan, plan.spec.pads);
  if (wet)
    out.emplace_back(
        "Stored water that gets warm and is sprayed as fine mist can carry Legionella: keep it cool and dark, flush "
        "and clean tank, line and nozzles, do not breathe the spray; follow your health authority's guidance.");
  if (wet || any_used(plan, plan.spec.fans))
    out.emplace_back(
        "Electricity near spray: use extra-low voltage or a residual-current device, fittings rated for spray, and a "
        "licensed electrician where your code asks for one.");
  out.emplace_back(
      "Batteries can burn and give off gas: fuse them at the terminal, ventilate, keep them out of sun and spray, and "
      "follow the maker's limits and local rules.");
  if (any_used(plan, plan.spec.shades))
    out.emplace_back(
        "Loose cloth in a gust becomes a sail: tie and weigh it down, and take it off before a storm. What ballast or "
        "anchors must hold is for a structural engineer and the local code.");
  out.emplace_back(
      "Rain water off a roof is not drinking water, and off treated timber, lead or other metal it can harm plants "
      "too; local rules may limit collecting or using it. A mains supply to the tank needs backflow protection.");
  return out;
}

}  // namespace noonhouse
