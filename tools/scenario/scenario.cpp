// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/scenario.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <type_traits>
#include <variant>

#include "tools/scenario/field_tools.hpp"
#include "tools/scenario/located_overlay.hpp"
#include "tools/scenario/located_yaml.hpp"
#include "tools/scenario/scenario_fields.hpp"
#include "tools/units/nearest.hpp"

namespace noonhouse {
namespace {

std::vector<std::string> switchable_names(const ScenarioSpec& s) {
  std::vector<std::string> out;
  const auto add = [&out](const auto& items) {
    for (const auto& item : items) out.push_back(item.name);
  };
  add(s.openings);
  add(s.fans);
  add(s.mist_lines);
  add(s.pads);
  add(s.drip_lines);
  add(s.shades);
  add(s.thermostats);
  add(s.humidistats);
  add(s.deficit_controls);
  add(s.staged_controls);
  add(s.proportional_controls);
  add(s.timers);
  return out;
}

/// Takes an entry out of a mapping; an empty node when it is not there.
LocatedNode take_entry(LocatedNode& mapping, std::string_view key) {
  const auto it = std::find_if(mapping.entries.begin(), mapping.entries.end(),
                               [&](const LocatedEntry& entry) { return entry.key == key; });
  if (it == mapping.entries.end()) return {};
  LocatedNode out = std::move(it->value);
  mapping.entries.erase(it);
  return out;
}

/// Kinds of the library that groups name without the scenario's describing them.
void add_library_kinds(ScenarioSpec& spec) {
  for (const auto& group : spec.plants) {
    const auto named = [&](const auto& kind) { return kind.name == group.value.kind; };
    if (std::none_of(spec.plant_kinds.begin(), spec.plant_kinds.end(), named))
      spec.plant_kinds.push_back({group.value.kind, library_kind(group.value.kind)});
  }
}

PlanScenario make_plan(const LocatedNode& root, std::string name) {
  PlanScenario plan;
  plan.name = std::move(name);
  auto loaded = load_fields<ScenarioSpec>(root, {"plans"});
  loaded.places.check_names();
  plan.spec = std::move(loaded.value);
  add_library_kinds(plan.spec);
  plan.places = std::move(loaded.places);
  plan.root = root;
  return plan;
}

/// Refuses what is not known of a list of names under a plan's key; `missing` says what there is not in that plan.
void check_listed(const Places& places, const std::string& key, const std::vector<std::string>& listed,
                  const std::vector<std::string>& known, const std::string& missing) {
  for (std::size_t i = 0; i < listed.size(); ++i)
    if (std::find(known.begin(), known.end(), listed[i]) == known.end())
      places.fail(ErrorKind::unknown_name, key + "." + std::to_string(i + 1),
                  fmt::format("{}{}; {}", missing, did_you_mean(listed[i], known), allowed_words(known)));
}

/// Takes a plan's rules at rest out of it, and what the grower does on them. Rules are safeguards: they hold where a
/// plan does not say otherwise, so that none is forgotten. To be done when all is checked: a rule at rest is checked
/// like any other, and its name is known to be nobody else's.
void lay_to_rest(PlanScenario& plan) {
  ScenarioSpec& spec = plan.spec;
  const auto rests = [&rules = plan.rules_at_rest](const std::string& rule) {
    return std::find(rules.begin(), rules.end(), rule) != rules.end();
  };
  std::erase_if(spec.rules, [&](const auto& rule) { return rests(rule.name); });
  std::erase_if(spec.grower.responses, [&](const auto& response) { return rests(response.value.sign); });
  std::erase_if(spec.prices.parts, [&](const auto& part) { return rests(part.name); });
}

/// The words of a plan beside its changes; names of devices and rules must exist.
void read_plan_words(const LocatedNode& words, PlanScenario& plan) {
  auto loaded = load_fields<PlanSpec>(words, {"change"});
  plan.about = loaded.value.about;
  plan.in_service = loaded.value.in_service;
  std::vector<std::string> rules;
  for (const auto& rule : plan.spec.rules) rules.push_back(rule.name);
  check_listed(loaded.places, "in_service", plan.in_service, switchable_names(plan.spec),
               fmt::format("in plan \"{}\" the house has no such device or control", plan.name));
  check_listed(loaded.places, "rules_at_rest", loaded.value.rules_at_rest, rules,
               fmt::format("in plan \"{}\" the scenario has no such rule", plan.name));
  plan.rules_at_rest = std::move(loaded.value.rules_at_rest);
}

Scenario from_root(LocatedNode root, const std::filesystem::path& file) {
  Scenario out;
  out.file = file;
  out.name = file.stem().string();
  if (root.kind != LocatedNode::Kind::mapping)
    fail_at(ErrorKind::wrong_type, root.position, "a scenario is a mapping of keys, not " + describe(root));
  LocatedNode plans = take_entry(root, "plans");
  if (plans.kind == LocatedNode::Kind::nothing) {
    PlanScenario plan = make_plan(root, "base");
    plan.in_service = switchable_names(plan.spec);
    out.plans.push_back(std::move(plan));
  } else if (plans.kind != LocatedNode::Kind::mapping || plans.entries.empty()) {
    fail_at(ErrorKind::wrong_type, plans.position, "plans are a mapping from a plan's name to what it changes");
  }
  const NamedItems named = named_items(named_patterns<ScenarioSpec>());
  for (LocatedEntry& entry : plans.entries) {
    LocatedNode change = take_entry(entry.value, "change");
    PlanScenario plan =
        make_plan(change.kind == LocatedNode::Kind::nothing ? root : overlay(root, change, named), entry.key);
    read_plan_words(entry.value, plan);
    out.plans.push_back(std::move(plan));
  }
  for (const PlanScenario& plan : out.plans) cross_check(plan);
  for (PlanScenario& plan : out.plans) lay_to_rest(plan);
  return out;
}

}  // namespace

PlantKindSpec library_kind(const std::string& name) {
  LocatedNode like;
  like.kind = LocatedNode::Kind::scalar;
  like.text = name;
  LocatedNode root;
  root.kind = LocatedNode::Kind::mapping;
  root.entries.push_back({"like", {}, std::move(like)});
  return load_fields<PlantKindSpec>(root).value;
}

bool PlanScenario::uses(const std::string& device) const {
  return std::find(in_service.begin(), in_service.end(), device) != in_service.end();
}

const PlanScenario& Scenario::plan(const std::string& wanted) const {
  std::vector<std::string> names;
  for (const PlanScenario& plan : plans) {
    if (plan.name == wanted) return plan;
    names.push_back(plan.name);
  }
  std::string message = file.string() + ": no plan is named \"" + wanted + "\"; its plans are";
  for (const std::string& known : names) message += (known == names.front() ? " \"" : ", \"") + known + "\"";
  throw UserError(ErrorKind::unknown_name, message + did_you_mean(wanted, names));
}

Scenario read_scenario(const std::filesystem::path& file) { return from_root(read_yaml_file(file), file); }

Scenario read_scenario_text(const std::string& text, const std::filesystem::path& file) {
  return from_root(read_yaml_text(text, file.string()), file);
}

}  // namespace noonhouse
