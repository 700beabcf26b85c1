// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/plan_words.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "tools/scenario/scenario_fields.hpp"

namespace noonhouse {
namespace {

/// A path as people read it; only its first part is a key with underscores, the rest are names.
std::string place_words(const std::string& path) {
  const std::size_t dot = std::min(path.find('.'), path.size());
  return key_words(path.substr(0, dot)) + (dot < path.size() ? shown_path(path.substr(dot)) : "");
}

/// Of more assumed values in a line than this only the count stands there, but for what a kind of plants bears; the
/// list below the tree has them all.
constexpr std::ptrdiff_t kMostAssumed = 4;

std::string defaults_text(std::size_t count) { return fmt::format("{} default{}", count, count == 1 ? "" : "s"); }

/// Whether a value was assumed and leaves a device, control, store or rule as if its key did not exist.
bool does_nothing(const Fact& fact) {
  static const std::set<std::string> kOf{"fans",
                                         "mist_lines",
                                         "pads",
                                         "drip_lines",
                                         "shades",
                                         "sensors",
                                         "thermostats",
                                         "humidistats",
                                         "deficit_controls",
                                         "staged_controls",
                                         "proportional_controls",
                                         "timers",
                                         "rules",
                                         "gutters",
                                         "refills",
                                         "pumps",
                                         "tank",
                                         "power",
                                         "grower",
                                         "hazards",
                                         "faults",
                                         "prices"};
  static const std::set<std::string> kNothing{"none", "no", "any", "any time", "00:00", "24:00", "0"};
  if (!fact.assumed || !kOf.contains(fact.group.substr(0, fact.group.find('.')))) return false;
  return kNothing.contains(fact.text) || fact.text.starts_with("0 ");
}

std::string value_words(const Fact& fact) { return key_words(fact.key) + " " + unbroken(fact.text); }

}  // namespace

PlanWords::PlanWords(const PlanScenario& plan, UnitSystem system)
    : plan_(plan), system_(system), facts_(facts_of(plan.spec, system, plan.places)) {}

std::string PlanWords::listed(const std::string& path, const Keys& keys) const {
  std::vector<const Fact*> wanted;
  std::size_t folded = 0;
  for (const Fact& fact : facts_) {
    if (fact.group != path || fact.text.empty()) continue;
    if (!keys.empty() && std::find(keys.begin(), keys.end(), fact.key) == keys.end()) continue;
    if (does_nothing(fact)) {
      ++folded;
    } else {
      wanted.push_back(&fact);
    }
  }
  const auto assumed = std::count_if(wanted.begin(), wanted.end(), [](auto* f) { return f->assumed; });
  const bool all = wanted.size() > 1 && assumed == static_cast<std::ptrdiff_t>(wanted.size());
  if (!all && assumed > kMostAssumed && !path.starts_with("plant_kinds."))
    folded += std::erase_if(wanted, [](auto* f) { return f->assumed; });
  std::vector<std::string> parts;
  for (const Fact* fact : wanted)
    parts.push_back(value_words(*fact) + (fact->assumed && !all ? unbroken(" (assumed)") : ""));
  std::string out = fmt::format("{}{}", fmt::join(parts, ", "), all ? unbroken(" (all assumed)") : "");
  if (folded > 0) out += fmt::format("{}{}", out.empty() ? "" : " and ", defaults_text(folded));
  return out;
}

std::string PlanWords::given_beside(const std::string& path, const Keys& keys) const {
  std::string out;
  for (const Fact& fact : facts_)
    if (fact.group == path && !fact.assumed && !fact.text.empty() &&
        std::find(keys.begin(), keys.end(), fact.key) == keys.end())
      out += ", " + value_words(fact);
  return out;
}

std::string PlanWords::air(double volume_m3) const {
  const bool us = system_ == UnitSystem::us;
  const double shown_volume = us ? volume_m3 / known_quantity("1 ft3", Dimension::volume) : volume_m3;
  return unbroken(fmt::format("air {:.{}f} {}", shown_volume,
                              shown_volume < 10    ? 2
                              : shown_volume < 100 ? 1
                                                   : 0,
                              us ? "ft³" : "m³"));
}

std::string PlanWords::devices(const std::vector<std::string>& names) const {
  std::vector<std::string> parts;
  for (const std::string& name : names) parts.push_back(name + (plan_.uses(name) ? "" : " (at rest)"));
  return fmt::format("{}", fmt::join(parts, ", "));
}

std::string PlanWords::assumptions() const {
  std::vector<std::pair<std::string, std::string>> by_group;  // path, values
  std::size_t count = 0, folded = 0;
  for (const Fact& fact : facts_) {
    if (!fact.assumed || fact.text.empty()) continue;
    if (does_nothing(fact)) {
      ++folded;
      continue;
    }
    ++count;
    if (by_group.empty() || by_group.back().first != fact.group) by_group.emplace_back(fact.group, "");
    std::string& values = by_group.back().second;
    values += (values.empty() ? "" : ", ") + value_words(fact);
  }
  if (count + folded == 0) return "\nnothing was assumed: the scenario gives every value\n";
  std::vector<std::pair<std::string, std::string>> lines;  // places in words, values
  std::map<std::pair<std::string, std::string>, std::size_t> line_of;
  for (const auto& [path, values] : by_group) {
    const std::size_t dot = path.rfind('.');
    const auto parent = std::make_pair(path.substr(0, dot == std::string::npos ? 0 : dot), values);
    const auto [at, fresh] = line_of.emplace(parent, lines.size());
    if (fresh) {
      lines.emplace_back(place_words(path), values);
    } else {
      lines[at->second].first += ", " + path.substr(dot == std::string::npos ? 0 : dot + 1);
    }
  }
  std::vector<Branch> branches;
  for (const auto& [place, values] : lines) branches.push_back({fmt::format("{}: {}", place, values)});
  if (folded > 0)
    branches.push_back({defaults_text(folded) + " that do nothing, such as 0 s, none or any time, not listed"});
  return fmt::format("\nassumed, because the scenario does not say ({} values)\n", count) +
         tree_text(branches, kTextWidth);
}

Branch or_none(Branch branch) {
  if (branch.children.empty()) branch.text += ": none";
  return branch;
}

}  // namespace noonhouse
