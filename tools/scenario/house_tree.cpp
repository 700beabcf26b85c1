// SPDX-License-Identifier: Apache-2.0
// Long because it is one walk over every group of a scenario, in the order people read it.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <functional>
#include <map>
#include <set>
#include <utility>

#include "tools/scenario/field_facts.hpp"
#include "tools/scenario/house_hints.hpp"
#include "tools/scenario/house_shape.hpp"
#include "tools/scenario/scenario.hpp"
#include "tools/scenario/scenario_fields.hpp"
#include "tools/scenario/standing_place.hpp"
#include "tools/scenario/tree_text.hpp"

namespace noonhouse {
namespace {

constexpr double kPlantsAbove = 0.05;  ///< their place: whose air is around plants, as the assembly takes it [m]

/// A path as people read it; only its first part is a key with underscores, the rest are names.
std::string place_words(const std::string& path) {
  const std::size_t dot = std::min(path.find('.'), path.size());
  return key_words(path.substr(0, dot)) + (dot < path.size() ? shown_path(path.substr(dot)) : "");
}

using Keys = std::vector<std::string>;

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

class HouseTree {
 public:
  HouseTree(const PlanScenario& plan, UnitSystem system)
      : plan_(plan),
        s_(plan.spec),
        system_(system),
        shape_(shape_of(plan.spec.house)),
        places_(standing_places(s_, shape_)),
        facts_(facts_of(plan.spec, system, plan.places)) {}

  std::string text() const {
    std::string out = paragraph(s_.title) + paragraph(s_.about);
    out += paragraph("plan: " + plan_.name + (plan_.about.empty() ? "" : " (" + plan_.about + ")")) + "\n";
    std::vector<Branch> all{group("run", "run"),
                            group("site", "site"),
                            group("weather", "weather"),
                            house(),
                            obstacles(),
                            shades(),
                            drips(),
                            kinds(),
                            controls(),
                            water(),
                            group("power", "power"),
                            grower()};
    add_named(all, "hazards", "hazards", s_.hazards);
    add_named(all, "failures", "faults", s_.faults);
    if (!s_.prices.parts.empty()) all.push_back(group("prices", "prices"));
    add_named(all, "prices of parts", "prices.parts", s_.prices.parts);
    all.push_back(service());
    if (!plan_.rules_at_rest.empty())
      all.push_back({fmt::format("rules at rest in this plan: {}", fmt::join(plan_.rules_at_rest, ", "))});
    out += tree_text(all, kTextWidth);
    if (const auto hints = house_hints(plan_); !hints.empty()) {
      out += "\nworth a look\n";
      std::vector<Branch> branches;
      for (const std::string& hint : hints) branches.push_back({hint});
      out += tree_text(branches, kTextWidth);
    }
    return out + assumptions();
  }

 private:
  static std::string paragraph(const std::string& text) {
    const auto lines = wrapped(text, kTextWidth);
    return lines.front().empty() ? "" : fmt::format("{}\n", fmt::join(lines, "\n"));
  }

  /// The values of a group in words, all of them or those of some keys, what was assumed marked; defaults that do
  /// nothing only counted.
  std::string listed(const std::string& path, const Keys& keys = {}) const {
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
  static std::string value_words(const Fact& fact) { return key_words(fact.key) + " " + unbroken(fact.text); }
  Branch group(const std::string& name, const std::string& path) const { return {name, {{listed(path)}}}; }
  std::string shown(double si, Dimension dimension) const { return unbroken(format_quantity(si, dimension, system_)); }
  /// A volume of air [m3], never in the units of liquids.
  std::string air(double volume_m3) const {
    const bool us = system_ == UnitSystem::us;
    const double shown_volume = us ? volume_m3 / known_quantity("1 ft3", Dimension::volume) : volume_m3;
    return unbroken(fmt::format("air {:.{}f} {}", shown_volume,
                                shown_volume < 10    ? 2
                                : shown_volume < 100 ? 1
                                                     : 0,
                                us ? "ft³" : "m³"));
  }
  std::string resting(const std::string& device) const { return plan_.uses(device) ? "" : "; at rest in this plan"; }

  /// Names with what this plan leaves at rest marked.
  std::string devices(const std::vector<std::string>& names) const {
    std::vector<std::string> parts;
    for (const std::string& name : names) parts.push_back(name + (plan_.uses(name) ? "" : " (at rest)"));
    return fmt::format("{}", fmt::join(parts, ", "));
  }

  Branch house() const {
    double volume = 0.0, cover = 0.0;
    for (const BayShape& bay : shape_.bays) volume += bay.volume_m3;
    for (const Facet& facet : shape_.facets) cover += facet.area_m2;
    Branch out{"house: " + listed("house"), {}};
    out.children.push_back({fmt::format("floor {}, {}, cover {}", shown(shape_.plan_area_m2(), Dimension::area),
                                        air(volume), shown(cover, Dimension::area))});
    out.children.push_back({"roof cover: " + listed("house.cover.roof")});
    out.children.push_back({"wall cover: " + listed("house.cover.walls")});
    for (const auto& part : s_.house.cover.parts)
      out.children.push_back({"cover of the " + part.name + ": " + listed("house.cover.parts." + part.name)});
    for (const auto& course : s_.house.floor.courses)
      out.children.push_back({"floor course " + course.name + ": " + listed("house.floor.courses." + course.name)});
    out.children.push_back({"floor and soil: " + listed("house.floor")});
    for (std::size_t b = 0; b < shape_.bays.size(); ++b) out.children.push_back(bay(static_cast<int>(b)));
    return out;
  }

  Branch bay(int index) const {
    const BayShape& bay = shape_.bays[static_cast<std::size_t>(index)];
    Branch out{
        fmt::format("{} bay: {}, length {}, floor {}, {}", bay.name, listed("house.bays." + bay.name),
                    shown(bay.length_m, Dimension::length), shown(bay.floor_m2, Dimension::area), air(bay.volume_m3)),
        {}};
    std::vector<std::string> sides;
    for (const Facet& facet : shape_.facets)
      if (facet.bay == index)
        sides.push_back(facet.name.substr(0, facet.name.find(" of the ")) + " " +
                        shown(facet.area_m2, Dimension::area));
    out.children.push_back({fmt::format("cover: {}", fmt::join(sides, ", "))});
    for (int i = static_cast<int>(bay.layers.size()) - 1; i >= 0; --i) out.children.push_back(layer(index, i));
    return out;
  }

  Branch layer(int bay_index, int index) const {
    const BayShape& bay = shape_.bays[static_cast<std::size_t>(bay_index)];
    const LayerShape& layer = bay.layers[static_cast<std::size_t>(index)];
    Branch out{
        fmt::format("layer {}, {} to {} above the floor, {}", index + 1, shown(layer.bottom_m, Dimension::length),
                    shown(layer.top_m, Dimension::length), air(layer.volume_m3)),
        {}};
    const auto here = [&](const std::string& in_bay, double height_m) {
      return in_bay == bay.name && shape_.layer_at(height_m) == index;
    };
    add_openings(out, here);
    add_devices(out, here);
    add_benches(out, here);
    add_sensors(out, here);
    return out;
  }

  using Here = std::function<bool(const std::string& bay, double height_m)>;

  void add_openings(Branch& out, const Here& here) const {
    for (const auto& it : s_.openings)
      if (here(it.value.bay, it.value.centre_m))
        out.children.push_back({fmt::format(
            "opening {}: {}{}", it.name,
            listed("openings." + it.name, {"side", "area", "height", "centre", "open_when_shut"}), resting(it.name))});
  }

  void add_devices(Branch& out, const Here& here) const {
    for (const auto& it : s_.fans) {
      if (here(it.value.bay, it.value.height_m))
        out.children.push_back({fmt::format("fan {}: {}{}", it.name,
                                            listed("fans." + it.name, {"height", "flow", "power"}), resting(it.name))});
      if (here(it.value.inlet_bay, it.value.inlet_height_m))
        out.children.push_back({fmt::format("inlet of fan {}: {}{}", it.name,
                                            listed("fans." + it.name, {"inlet_height"}), resting(it.name))});
    }
    for (const auto& it : s_.pads)
      if (here(it.value.bay, it.value.centre_m))
        out.children.push_back({fmt::format("wet pad {}: {}{}", it.name, listed("pads." + it.name), resting(it.name))});
    for (const auto& it : s_.mist_lines)
      if (std::any_of(it.value.bays.begin(), it.value.bays.end(),
                      [&](const std::string& in) { return here(in, it.value.height_m); }))
        out.children.push_back(
            {fmt::format("mist line {}: {}{}", it.name, listed("mist_lines." + it.name), resting(it.name))});
  }

  void add_benches(Branch& out, const Here& here) const {
    for (std::size_t i = 0; i < s_.benches.size(); ++i) {
      const auto& [name, bench] = s_.benches[i];
      if (here(bench.bay, bench.height_m))
        out.children.push_back(
            {fmt::format("{} {}: {}", bench.hangs ? "rail" : "bench", name,
                         listed("benches." + name, {"height", "length", "width", "from_first_end", "from_front",
                                                    "lets_through", "heat_capacity", "absorptance"}))});
      add_plants(out, here, static_cast<int>(i));
    }
    add_plants(out, here, -1);
  }

  /// The groups of a bench; of the floor for -1.
  void add_plants(Branch& out, const Here& here, int bench) const {
    for (const auto& [name, group] : s_.plants) {
      const StandingPlace& place = places_[static_cast<std::size_t>(place_of(group, places_, s_))];
      const std::string& bay = shape_.bays[static_cast<std::size_t>(place.bay)].name;
      if (place.bench != bench || !here(bay, place.height_m + kPlantsAbove)) continue;
      out.children.push_back(
          {fmt::format("plants {}: {} {}, {}", name, group.kind, place.name,
                       listed("plants." + name, {"area", "pot_water", "pot_heat_capacity", "pot_absorptance"}))});
    }
  }

  void add_sensors(Branch& out, const Here& here) const {
    for (const auto& it : s_.sensors)
      if (here(it.value.bay, it.value.height_m)) out.children.push_back({sensor(it)});
  }

  /// What hangs there; of the rest what the file says.
  std::string sensor(const Named<SensorSpec>& it) const {
    std::string out =
        fmt::format("sensor {}: {}", it.name, listed("sensors." + it.name, {"measures", "height", "time_constant"}));
    for (const Fact& fact : facts_)
      if (fact.group == "sensors." + it.name && !fact.assumed && !fact.text.empty() && fact.key != "measures" &&
          fact.key != "height" && fact.key != "time_constant" && fact.key != "bay")
        out += ", " + value_words(fact);
    if (!it.value.sprayed_by.empty()) out += fmt::format("; in the spray of {}", fmt::join(it.value.sprayed_by, ", "));
    return out;
  }

  Branch obstacles() const {
    Branch out{"obstacles", {}};
    for (const auto& it : s_.obstacles) out.children.push_back({it.name + ": " + listed("obstacles." + it.name)});
    return or_none(std::move(out));
  }

  Branch shades() const {
    Branch out{"shades", {}};
    for (const auto& it : s_.shades)
      out.children.push_back({it.name + ": " + listed("shades." + it.name) + resting(it.name)});
    return or_none(std::move(out));
  }

  Branch drips() const {
    Branch out{"drip lines", {}};
    for (const auto& it : s_.drip_lines)
      out.children.push_back({it.name + ": " + listed("drip_lines." + it.name) + resting(it.name),
                              {{fmt::format("waters {}", fmt::join(it.value.waters, ", "))}}});
    return or_none(std::move(out));
  }

  Branch kinds() const {
    Branch out{"plant kinds", {}};
    for (const auto& it : s_.plant_kinds) {
      const std::string path = "plant_kinds." + it.name;
      Branch kind{
          fmt::format("{}, like {}{}", it.name, it.value.like, it.value.about.empty() ? "" : ": " + it.value.about),
          {}};
      kind.children.push_back(
          {"limits: " +
           listed(path, {"harm_above", "lethal_above", "heat_tenfold", "harm_below", "lethal_below", "cold_tenfold",
                         "strained_after", "harmed_after", "lost_after", "recovers_in", "roots_harm_above"})});
      kind.children.push_back(
          {"air: " + listed(path, {"air_harm_above", "air_harm_below", "air_harms_after", "dry_air_above",
                                   "dry_air_harms_after", "damp_air_below", "damp_air_harms_after"})});
      kind.children.push_back(
          {"water: " + listed(path, {"thirst_harms_after", "thirst_kills_after", "wet_harms_after"})});
      kind.children.push_back(
          {"light: " + listed(path, {"burns_above", "bears_direct_sun", "burning_sun", "burns_after", "least_light",
                                     "most_light", "light_harms_after", "shortest_day", "longest_day"})});
      kind.children.push_back({"leaves: " + listed(path, {"body", "leaf_area_index", "tissue", "leaf_size", "thickness",
                                                          "height", "absorptance", "holds_film"})});
      kind.children.push_back(
          {"stomata: " + listed(path, {"stomata_open", "most_conductance", "least_conductance", "half_deficit",
                                       "half_light", "opens_best_at", "opens_half_within", "drinks_freely_above"})});
      out.children.push_back(std::move(kind));
    }
    return or_none(std::move(out));
  }

  template <class T>
  void add_controls(Branch& out, const char* sort, const char* group, const std::vector<Named<T>>& items) const {
    for (const auto& it : items)
      out.children.push_back(
          {fmt::format("{} {}: {}{}", sort, it.name, listed(std::string(group) + "." + it.name), resting(it.name)),
           {{"drives " + devices(it.value.drives)}}});
  }

  Branch controls() const {
    Branch out{"controls", {}};
    add_controls(out, "thermostat", "thermostats", s_.thermostats);
    add_controls(out, "humidistat", "humidistats", s_.humidistats);
    add_controls(out, "deficit control", "deficit_controls", s_.deficit_controls);
    for (const auto& it : s_.staged_controls) {
      Branch staged{"staged control " + it.name + ": " + listed("staged_controls." + it.name) + resting(it.name), {}};
      for (std::size_t i = 0; i < it.value.stages.size(); ++i)
        staged.children.push_back(
            {fmt::format("stage {}: {}", i + 1, listed(fmt::format("staged_controls.{}.stages.{}", it.name, i + 1))),
             {{"drives " + devices(it.value.stages[i].drives)}}});
      out.children.push_back(std::move(staged));
    }
    add_controls(out, "proportional control", "proportional_controls", s_.proportional_controls);
    add_controls(out, "timer", "timers", s_.timers);
    for (const auto& it : s_.rules) {
      Branch rule{"rule " + it.name + ": " + listed("rules." + it.name), {}};
      if (!it.value.forbids.empty()) rule.children.push_back({"forbids " + devices(it.value.forbids)});
      if (!it.value.calls.empty()) rule.children.push_back({"calls " + devices(it.value.calls)});
      out.children.push_back(std::move(rule));
    }
    return or_none(std::move(out));
  }

  /// Items of a mapping, a line each; nothing where there are none.
  template <class T>
  void add_named(std::vector<Branch>& out, const char* words, const char* group,
                 const std::vector<Named<T>>& items) const {
    if (items.empty()) return;
    Branch branch{words, {}};
    for (const auto& it : items)
      branch.children.push_back({it.name + ": " + listed(std::string(group) + "." + it.name)});
    out.push_back(std::move(branch));
  }

  Branch water() const {
    Branch out{"tank: " + listed("tank"), {}};
    add_named(out.children, "gutters", "gutters", s_.gutters);
    add_named(out.children, "refills", "refills", s_.refills);
    add_named(out.children, "pumps", "pumps", s_.pumps);
    return out;
  }

  Branch grower() const {
    Branch out{"grower: " + listed("grower"), {}};
    for (const auto& it : s_.grower.visits) {
      Branch visit{"visit " + it.name + ": " + listed("grower.visits." + it.name), {}};
      const VisitSpec& v = it.value;
      if (!v.waters.empty()) visit.children.push_back({fmt::format("waters {}", fmt::join(v.waters, ", "))});
      if (!v.opens.empty()) visit.children.push_back({"opens " + devices(v.opens)});
      if (!v.shuts.empty()) visit.children.push_back({"shuts " + devices(v.shuts)});
      out.children.push_back(std::move(visit));
    }
    if (out.children.empty()) out.children.push_back({"no visits"});
    for (const auto& it : s_.grower.responses) {
      Branch response{"on " + it.value.sign + ", " + it.name + ": " + listed("grower.responses." + it.name), {}};
      if (!it.value.opens.empty()) response.children.push_back({"opens or starts " + devices(it.value.opens)});
      if (!it.value.shuts.empty()) response.children.push_back({"shuts or stops " + devices(it.value.shuts)});
      out.children.push_back(std::move(response));
    }
    return out;
  }

  Branch service() const {
    Branch out{"in service", {}};
    for (const std::string& name : plan_.in_service) out.children.push_back({name});
    return or_none(std::move(out));
  }

  static Branch or_none(Branch branch) {
    if (branch.children.empty()) branch.text += ": none";
    return branch;
  }

  /// What was assumed, by group; groups of one mapping that assume the same stand on one line.
  std::string assumptions() const {
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

  const PlanScenario& plan_;
  const ScenarioSpec& s_;
  UnitSystem system_;
  HouseShape shape_;
  std::vector<StandingPlace> places_;
  std::vector<Fact> facts_;
};

}  // namespace

std::string house_tree(const PlanScenario& plan, UnitSystem system) { return HouseTree(plan, system).text(); }

}  // namespace noonhouse
