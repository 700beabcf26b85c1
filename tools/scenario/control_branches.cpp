// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/control_branches.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <utility>

namespace noonhouse {
namespace {

template <class T>
void add_controls(Branch& out, const PlanWords& words, const char* sort, const char* group,
                  const std::vector<Named<T>>& items) {
  for (const auto& it : items)
    out.children.push_back({fmt::format("{} {}: {}{}", sort, it.name, words.listed(std::string(group) + "." + it.name),
                                        words.resting(it.name)),
                            {{"drives " + words.devices(it.value.drives)}}});
}

}  // namespace

Branch controls_branch(const ScenarioSpec& spec, const PlanWords& words) {
  Branch out{"controls", {}};
  add_controls(out, words, "thermostat", "thermostats", spec.thermostats);
  add_controls(out, words, "humidistat", "humidistats", spec.humidistats);
  add_controls(out, words, "deficit control", "deficit_controls", spec.deficit_controls);
  for (const auto& it : spec.staged_controls) {
    Branch staged{
        "staged control " + it.name + ": " + words.listed("staged_controls." + it.name) + words.resting(it.name), {}};
    for (std::size_t i = 0; i < it.value.stages.size(); ++i)
      staged.children.push_back({fmt::format("stage {}: {}", i + 1,
                                             words.listed(fmt::format("staged_controls.{}.stages.{}", it.name, i + 1))),
                                 {{"drives " + words.devices(it.value.stages[i].drives)}}});
    out.children.push_back(std::move(staged));
  }
  add_controls(out, words, "proportional control", "proportional_controls", spec.proportional_controls);
  add_controls(out, words, "timer", "timers", spec.timers);
  for (const auto& it : spec.rules) {
    Branch rule{"rule " + it.name + ": " + words.listed("rules." + it.name), {}};
    if (!it.value.forbids.empty()) rule.children.push_back({"forbids " + words.devices(it.value.forbids)});
    if (!it.value.calls.empty()) rule.children.push_back({"calls " + words.devices(it.value.calls)});
    out.children.push_back(std::move(rule));
  }
  return or_none(std::move(out));
}

Branch water_branch(const ScenarioSpec& spec, const PlanWords& words) {
  Branch out{"tank: " + words.listed("tank"), {}};
  words.add_named(out.children, "gutters", "gutters", spec.gutters);
  words.add_named(out.children, "refills", "refills", spec.refills);
  words.add_named(out.children, "pumps", "pumps", spec.pumps);
  return out;
}

Branch grower_branch(const ScenarioSpec& spec, const PlanWords& words) {
  Branch out{"grower: " + words.listed("grower"), {}};
  for (const auto& it : spec.grower.visits) {
    Branch visit{"visit " + it.name + ": " + words.listed("grower.visits." + it.name), {}};
    const VisitSpec& v = it.value;
    if (!v.waters.empty()) visit.children.push_back({fmt::format("waters {}", fmt::join(v.waters, ", "))});
    if (!v.opens.empty()) visit.children.push_back({"opens " + words.devices(v.opens)});
    if (!v.shuts.empty()) visit.children.push_back({"shuts " + words.devices(v.shuts)});
    out.children.push_back(std::move(visit));
  }
  if (out.children.empty()) out.children.push_back({"no visits"});
  for (const auto& it : spec.grower.responses) {
    Branch response{"on " + it.value.sign + ", " + it.name + ": " + words.listed("grower.responses." + it.name), {}};
    if (!it.value.opens.empty()) response.children.push_back({"opens or starts " + words.devices(it.value.opens)});
    if (!it.value.shuts.empty()) response.children.push_back({"shuts or stops " + words.devices(it.value.shuts)});
    out.children.push_back(std::move(response));
  }
  return out;
}

}  // namespace noonhouse
