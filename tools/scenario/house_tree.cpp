// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <functional>
#include <utility>

#include "tools/scenario/control_branches.hpp"
#include "tools/scenario/house_hints.hpp"
#include "tools/scenario/house_shape.hpp"
#include "tools/scenario/plan_words.hpp"
#include "tools/scenario/scenario.hpp"
#include "tools/scenario/standing_place.hpp"
#include "tools/scenario/tree_text.hpp"

namespace noonhouse {
namespace {

constexpr double kPlantsAbove = 0.05;  ///< their place: whose air is around plants, as the assembly takes it [m]

class HouseTree {
 public:
  HouseTree(const PlanScenario& plan, UnitSystem system)
      : plan_(plan),
        s_(plan.spec),
        words_(plan, system),
        shape_(shape_of(plan.spec.house)),
        places_(standing_places(s_, shape_)) {}

  std::string text() const {
    std::string out = paragraph(s_.title) + paragraph(s_.about);
    out += paragraph("plan: " + plan_.name + (plan_.about.empty() ? "" : " (" + plan_.about + ")")) + "\n";
    std::vector<Branch> all{words_.group("run", "run"),
                            words_.group("site", "site"),
                            words_.group("weather", "weather"),
                            house(),
                            obstacles(),
                            shades(),
                            drips(),
                            kinds(),
                            controls_branch(s_, words_),
                            water_branch(s_, words_),
                            words_.group("power", "power"),
                            grower_branch(s_, words_)};
    words_.add_named(all, "hazards", "hazards", s_.hazards);
    words_.add_named(all, "failures", "faults", s_.faults);
    if (!s_.prices.parts.empty()) all.push_back(words_.group("prices", "prices"));
    words_.add_named(all, "prices of parts", "prices.parts", s_.prices.parts);
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
    return out + words_.assumptions();
  }

 private:
  static std::string paragraph(const std::string& text) {
    const auto lines = wrapped(text, kTextWidth);
    return lines.front().empty() ? "" : fmt::format("{}\n", fmt::join(lines, "\n"));
  }

  Branch house() const {
    double volume = 0.0, cover = 0.0;
    for (const BayShape& bay : shape_.bays) volume += bay.volume_m3;
    for (const Facet& facet : shape_.facets) cover += facet.area_m2;
    Branch out{"house: " + words_.listed("house"), {}};
    out.children.push_back({fmt::format("floor {}, {}, cover {}", words_.shown(shape_.plan_area_m2(), Dimension::area),
                                        words_.air(volume), words_.shown(cover, Dimension::area))});
    out.children.push_back({"roof cover: " + words_.listed("house.cover.roof")});
    out.children.push_back({"wall cover: " + words_.listed("house.cover.walls")});
    for (const auto& part : s_.house.cover.parts)
      out.children.push_back({"cover of the " + part.name + ": " + words_.listed("house.cover.parts." + part.name)});
    for (const auto& course : s_.house.floor.courses)
      out.children.push_back(
          {"floor course " + course.name + ": " + words_.listed("house.floor.courses." + course.name)});
    out.children.push_back({"floor and soil: " + words_.listed("house.floor")});
    for (std::size_t b = 0; b < shape_.bays.size(); ++b) out.children.push_back(bay(static_cast<int>(b)));
    return out;
  }

  Branch bay(int index) const {
    const BayShape& bay = shape_.bays[static_cast<std::size_t>(index)];
    Branch out{fmt::format("{} bay: {}, length {}, floor {}, {}", bay.name, words_.listed("house.bays." + bay.name),
                           words_.shown(bay.length_m, Dimension::length), words_.shown(bay.floor_m2, Dimension::area),
                           words_.air(bay.volume_m3)),
               {}};
    std::vector<std::string> sides;
    for (const Facet& facet : shape_.facets)
      if (facet.bay == index)
        sides.push_back(facet.name.substr(0, facet.name.find(" of the ")) + " " +
                        words_.shown(facet.area_m2, Dimension::area));
    Branch cover{fmt::format("cover: {}", fmt::join(sides, ", ")), {}};
    for (const auto& it : s_.mist_lines)
      if (it.value.wets == MistWets::roof && std::count(it.value.bays.begin(), it.value.bays.end(), bay.name) > 0)
        cover.children.push_back(mist_line(it));
    out.children.push_back(std::move(cover));
    for (int i = static_cast<int>(bay.layers.size()) - 1; i >= 0; --i) out.children.push_back(layer(index, i));
    return out;
  }

  Branch layer(int bay_index, int index) const {
    const BayShape& bay = shape_.bays[static_cast<std::size_t>(bay_index)];
    const LayerShape& layer = bay.layers[static_cast<std::size_t>(index)];
    Branch out{fmt::format("layer {}, {} to {} above the floor, {}", index + 1,
                           words_.shown(layer.bottom_m, Dimension::length),
                           words_.shown(layer.top_m, Dimension::length), words_.air(layer.volume_m3)),
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
        out.children.push_back(
            {fmt::format("opening {}: {}{}", it.name,
                         words_.listed("openings." + it.name, {"side", "area", "height", "centre", "open_when_shut"}),
                         words_.resting(it.name))});
  }

  void add_devices(Branch& out, const Here& here) const {
    for (const auto& it : s_.fans) {
      if (here(it.value.bay, it.value.height_m))
        out.children.push_back(
            {fmt::format("fan {}: {}{}", it.name, words_.listed("fans." + it.name, {"height", "flow", "power"}),
                         words_.resting(it.name))});
      if (here(it.value.inlet_bay, it.value.inlet_height_m))
        out.children.push_back(
            {fmt::format("inlet of fan {}: {}{}", it.name, words_.listed("fans." + it.name, {"inlet_height"}),
                         words_.resting(it.name))});
    }
    for (const auto& it : s_.pads)
      if (here(it.value.bay, it.value.centre_m))
        out.children.push_back(
            {fmt::format("wet pad {}: {}{}", it.name, words_.listed("pads." + it.name), words_.resting(it.name))});
    for (const auto& it : s_.mist_lines)
      if (it.value.wets != MistWets::roof &&
          std::any_of(it.value.bays.begin(), it.value.bays.end(),
                      [&](const std::string& in) { return here(in, it.value.height_m); }))
        out.children.push_back(mist_line(it));
  }
  Branch mist_line(const Named<MistSpec>& it) const {
    return {
        fmt::format("mist line {}: {}{}", it.name, words_.listed("mist_lines." + it.name), words_.resting(it.name))};
  }

  void add_benches(Branch& out, const Here& here) const {
    for (std::size_t i = 0; i < s_.benches.size(); ++i) {
      const auto& [name, bench] = s_.benches[i];
      if (here(bench.bay, bench.height_m))
        out.children.push_back(
            {fmt::format("{} {}: {}", bench.hangs ? "rail" : "bench", name,
                         words_.listed("benches." + name, {"height", "length", "width", "from_first_end", "from_front",
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
      out.children.push_back({fmt::format(
          "plants {}: {} {}, {}", name, group.kind, place.name,
          words_.listed("plants." + name, {"area", "pot_water", "pot_heat_capacity", "pot_absorptance"}))});
    }
  }

  void add_sensors(Branch& out, const Here& here) const {
    for (const auto& it : s_.sensors)
      if (here(it.value.bay, it.value.height_m)) out.children.push_back({sensor(it)});
  }

  /// What hangs there; of the rest what the file says.
  std::string sensor(const Named<SensorSpec>& it) const {
    const std::string path = "sensors." + it.name;
    std::string out =
        fmt::format("sensor {}: {}", it.name, words_.listed(path, {"measures", "height", "time_constant"}));
    out += words_.given_beside(path, {"measures", "height", "time_constant", "bay"});
    if (!it.value.sprayed_by.empty()) out += fmt::format("; in the spray of {}", fmt::join(it.value.sprayed_by, ", "));
    return out;
  }

  Branch obstacles() const {
    Branch out{"obstacles", {}};
    for (const auto& it : s_.obstacles)
      out.children.push_back({it.name + ": " + words_.listed("obstacles." + it.name)});
    return or_none(std::move(out));
  }

  Branch shades() const {
    Branch out{"shades", {}};
    for (const auto& it : s_.shades)
      out.children.push_back({it.name + ": " + words_.listed("shades." + it.name) + words_.resting(it.name)});
    return or_none(std::move(out));
  }

  Branch drips() const {
    Branch out{"drip lines", {}};
    for (const auto& it : s_.drip_lines)
      out.children.push_back({it.name + ": " + words_.listed("drip_lines." + it.name) + words_.resting(it.name),
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
          {"limits: " + words_.listed(path, {"harm_above", "lethal_above", "heat_tenfold", "harm_below", "lethal_below",
                                             "cold_tenfold", "strained_after", "harmed_after", "lost_after",
                                             "recovers_in", "roots_harm_above"})});
      kind.children.push_back(
          {"air: " + words_.listed(path, {"air_harm_above", "air_harm_below", "air_harms_after", "dry_air_above",
                                          "dry_air_harms_after", "damp_air_below", "damp_air_harms_after"})});
      kind.children.push_back(
          {"water: " + words_.listed(path, {"thirst_harms_after", "thirst_kills_after", "wet_harms_after"})});
      kind.children.push_back({"light: " + words_.listed(path, {"burns_above", "bears_direct_sun", "burning_sun",
                                                                "burns_after", "least_light", "most_light",
                                                                "light_harms_after", "shortest_day", "longest_day"})});
      kind.children.push_back({"leaves: " + words_.listed(path, {"body", "leaf_area_index", "tissue", "leaf_size",
                                                                 "thickness", "height", "absorptance", "holds_film"})});
      kind.children.push_back(
          {"stomata: " +
           words_.listed(path, {"stomata_open", "most_conductance", "least_conductance", "half_deficit", "half_light",
                                "opens_best_at", "opens_half_within", "drinks_freely_above"})});
      out.children.push_back(std::move(kind));
    }
    return or_none(std::move(out));
  }

  Branch service() const {
    Branch out{"in service", {}};
    for (const std::string& name : plan_.in_service) out.children.push_back({name});
    return or_none(std::move(out));
  }

  const PlanScenario& plan_;
  const ScenarioSpec& s_;
  PlanWords words_;
  HouseShape shape_;
  std::vector<StandingPlace> places_;
};

}  // namespace

std::string house_tree(const PlanScenario& plan, UnitSystem system) { return HouseTree(plan, system).text(); }

}  // namespace noonhouse
