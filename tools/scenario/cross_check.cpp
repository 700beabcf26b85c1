// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <numeric>
#include <string>

#include "tools/scenario/house_shape.hpp"
#include "tools/scenario/light_plan.hpp"
#include "tools/scenario/scenario.hpp"
#include "tools/scenario/scenario_fields.hpp"
#include "tools/scenario/site_forcing.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {
namespace {

std::string meters(double v) { return format_quantity(v, Dimension::length, UnitSystem::metric); }
constexpr double kLeastClear = 0.05;  ///< between a bench and one above it [m]
std::string side_words(WallSide side) {
  for (const auto& choice : side_choices())
    if (choice.value == side) return choice.word;
  return "";
}
std::string square(double v) { return format_quantity(v, Dimension::area, UnitSystem::metric); }

/// The checks of one plan, each a few lines; fail() names the place.
class CrossCheck {
 public:
  explicit CrossCheck(const PlanScenario& plan)
      : places_(plan.places), s_(plan.spec), shape_(shape_of(plan.spec.house)) {}
  void all() const {
    names();
    house();
    benches();
    obstacles();
    plants();
    openings();
    devices();
    people();
  }

 private:
  void require(bool right, ErrorKind kind, const std::string& path, const std::string& message) const {
    if (!right) places_.fail(kind, path, message);
  }
  void below_ridge(const std::string& path, double height) const {
    require(height >= 0.0 && height < shape_.top_m, ErrorKind::outside_house, path,
            "the house is " + meters(shape_.top_m) + " high at the ridge; give at least 0 m and less than that");
  }
  /// Nozzles that wet the roof from outside may hang above it; all others are inside.
  void line_height(const std::string& path, const MistSpec& line) const {
    constexpr double kAboveRidge = 3.0;
    if (line.wets != MistWets::roof) return below_ridge(path, line.height_m);
    require(line.height_m <= shape_.top_m + kAboveRidge, ErrorKind::outside_house, path,
            "the house is " + meters(shape_.top_m) + " high at the ridge; a line that wets the roof is at most " +
                meters(shape_.top_m + kAboveRidge) + " high");
  }

  /// Plans, controls and people call things by name alone, and so does the event log.
  void names() const {
    std::map<std::string, std::string> sort_of;
    for (const char* own :
         {"tank", "battery", "panel", "grower", "weather", "hazard", "forecast", "electrical loads", kOwnPump})
      sort_of[own] = "the program's own names";
    const auto take = [&](const char* sort, const auto& items) {
      for (const auto& item : items) {
        const auto [at, fresh] = sort_of.try_emplace(item.name, sort);
        require(
            fresh, ErrorKind::duplicate_key, std::string(sort) + "." + item.name,
            "the name \"" + item.name + "\" stands under " + at->second + " too; each thing needs a name of its own");
      }
    };
    take("openings", s_.openings);
    take("fans", s_.fans);
    take("mist_lines", s_.mist_lines);
    take("pads", s_.pads);
    take("drip_lines", s_.drip_lines);
    take("shades", s_.shades);
    take("benches", s_.benches);
    take("plants", s_.plants);
    take("sensors", s_.sensors);
    take("thermostats", s_.thermostats);
    take("humidistats", s_.humidistats);
    take("deficit_controls", s_.deficit_controls);
    take("staged_controls", s_.staged_controls);
    take("proportional_controls", s_.proportional_controls);
    take("timers", s_.timers);
    take("rules", s_.rules);
    take("gutters", s_.gutters);
    take("refills", s_.refills);
    take("pumps", s_.pumps);
    take("hazards", s_.hazards);
    take("faults", s_.faults);
  }

  void house() const {
    const HouseSpec& h = s_.house;
    require(h.bays.size() <= kMostBays, ErrorKind::does_not_fit, "house.bays",
            "a house has at most " + std::to_string(kMostBays) + " bays");
    if (h.form == HouseForm::flat_roof) {
      require(h.eaves_m == h.ridge_m, ErrorKind::does_not_fit, "house.ridge",
              "a flat roof has one height; give the same as the eaves, " + meters(h.eaves_m));
    } else {
      require(h.eaves_m < h.ridge_m, ErrorKind::does_not_fit, "house.ridge",
              "the ridge must be higher than the eaves, which are at " + meters(h.eaves_m));
    }
    require(h.form == HouseForm::hoop || h.eaves_m >= 0.3, ErrorKind::out_of_range, "house.eaves",
            "walls are at least 0.3 m high; only a hoop may stand on the ground");
    const double sum = std::accumulate(h.bays.begin(), h.bays.end(), 0.0,
                                       [](double a, const auto& bay) { return a + bay.value.share; });
    require(std::abs(sum - 1.0) < 1e-6, ErrorKind::does_not_fit, "house.bays",
            fmt::format("the bays' shares add up to {:.4g} %; they must make 100 %", 100.0 * sum));
  }

  void benches() const {
    const auto stand = bench_shapes(s_.benches, shape_);
    for (std::size_t i = 0; i < stand.size(); ++i) {
      const BenchSpec& b = s_.benches[i].value;
      const std::string path = "benches." + s_.benches[i].name;
      const int bay_index = shape_.bay_index(b.bay);
      const BayShape& bay = shape_.bays[static_cast<std::size_t>(bay_index)];
      below_ridge(path + ".height", b.height_m);
      require(b.length_m <= bay.length_m, ErrorKind::outside_house, path + ".length",
              "the " + bay.name + " bay is " + meters(bay.length_m) + " long");
      require(b.width_m <= s_.house.width_m, ErrorKind::outside_house, path + ".width",
              "the house is " + meters(s_.house.width_m) + " wide");
      const double begins = shape_.bay_begins_m(bay_index);
      require(stand[i].x_high_m <= begins + 1e-9 && stand[i].x_low_m >= begins - bay.length_m - 1e-9,
              ErrorKind::outside_house, path + ".from_first_end",
              "with its length the bench would reach beyond the " + bay.name + " bay, which is " +
                  meters(bay.length_m) + " long");
      const auto across = shape_.across_at(b.height_m);
      require(stand[i].y_high_m <= across.front_m + 1e-9 && stand[i].y_low_m >= across.back_m - 1e-9,
              ErrorKind::outside_house, path + (b.from_front_m ? ".from_front" : ".width"),
              "at " + meters(b.height_m) + " the house is " + meters(across.front_m - across.back_m) +
                  " wide; there the bench would reach through the cover");
      for (std::size_t j = 0; j < i; ++j)
        require(!stand[i].overlaps(stand[j]) || std::abs(stand[i].z_m - stand[j].z_m) >= kLeastClear,
                ErrorKind::does_not_fit, path + (b.from_front_m ? ".from_front" : ""),
                "stands where the " + s_.benches[j].name + " stands, at about the same height; move one of them with " +
                    "from_front and from_first_end");
    }
  }

  void obstacles() const {
    for (const auto& item : s_.obstacles) {
      const std::string path = "obstacles." + item.name;
      if (const auto* crown = std::get_if<CrownSpec>(&item.value.what))
        require(crown->bottom_m < crown->height_m, ErrorKind::does_not_fit, path + ".height",
                "the crown's top must be higher than its bottom, which is at " + meters(crown->bottom_m));
    }
  }

  /// The groups at a place, beneath it or not, take no more than there is of it.
  void fits_place(const std::string& place, bool under, double room_m2, const std::string& where,
                  const std::string& what_there_is) const {
    double taken = 0.0;
    std::string last;
    for (const auto& group : s_.plants)
      if (group.value.place == place && group.value.under == under) {
        taken += group.value.area_m2;
        last = group.name;
      }
    require(taken <= room_m2 * (1.0 + 1e-9), ErrorKind::does_not_fit, "plants." + last + ".area",
            "plants " + where + " take " + square(taken) + " in all; " + what_there_is);
  }

  void plants() const {
    const LightScene scene = light_scene(s_, shape_, 1);
    const auto area = [&](int surface) { return scene.surfaces()[static_cast<std::size_t>(surface)].area_m2; };
    const auto places = standing_places(s_, shape_);
    const auto room_beneath = [&](const StandingPlace& place, const std::string& bench) {
      return place.of == StandingPlace::Of::under && s_.benches[static_cast<std::size_t>(place.bench)].name == bench;
    };
    for (const auto& [name, group] : s_.plants)
      require(!group.under || std::any_of(places.begin(), places.end(),
                                          [&, &at = group.place](const auto& p) { return room_beneath(p, at); }),
              ErrorKind::does_not_fit, "plants." + name + ".under",
              "nothing stands under the " + group.place +
                  ": plants stand under benches of 15 cm and higher; on a bay's floor they stand by the bay's name, " +
                  "such as place: " + shape_.bays.front().name);
    for (int i = 0; i < static_cast<int>(s_.benches.size()); ++i) {
      const auto& [name, bench] = s_.benches[static_cast<std::size_t>(i)];
      const double top = bench.length_m * bench.width_m, beneath = area(scene.floor_beneath(i));
      fits_place(name, false, top, "on the " + name, "it has " + square(top));
      fits_place(name, true, top, "under the " + name, "it has " + square(top));
      fits_place(name, true, beneath, "under the " + name,
                 "of the floor beneath it " + square(beneath) + " are not under a lower bench as well");
    }
    for (int b = 0; b < static_cast<int>(shape_.bays.size()); ++b) {
      const std::string& name = shape_.bays[static_cast<std::size_t>(b)].name;
      const double open = area(scene.floor_surface(b));
      fits_place(name, false, open, "on the floor of the " + name + " bay",
                 square(open) + " of it are not under benches");
    }
  }

  void openings() const {
    std::map<std::pair<int, WallSide>, double> taken;
    for (const auto& item : s_.openings) {
      const std::string path = "openings." + item.name;
      const OpeningSpec& o = item.value;
      const int bay = shape_.bay_index(o.bay);
      const int f = shape_.facet_index(bay, o.side, o.centre_m);
      require(f >= 0, ErrorKind::outside_house, path + ".side", "the " + o.bay + " bay has no such side");
      const HouseShape::Side side = shape_.side_of(bay, o.side);
      const double half = 0.5 * opening_rise_m(o, shape_.facets[static_cast<std::size_t>(f)]);
      const std::string side_name = side_words(o.side) + " of the " + o.bay + " bay";
      require(o.centre_m - half >= side.bottom_m - 1e-9 && o.centre_m + half <= side.top_m + 1e-9,
              ErrorKind::outside_house, path + ".centre",
              "the " + side_name + " reaches from " + meters(side.bottom_m) + " to " + meters(side.top_m) +
                  ", and the opening rises " + meters(2.0 * half));
      double& sum = taken[{bay, o.side}];
      sum += o.area_m2;
      require(sum <= side.area_m2, ErrorKind::does_not_fit, path + ".area",
              "openings in the " + side_name + " take " + square(sum) + ", but it has " + square(side.area_m2));
    }
    for (const auto& pad : s_.pads) fits_bay("pads." + pad.name + ".area", pad.value.bay, pad.value.area_m2);
    for (const auto& fan : s_.fans)
      if (fan.value.inlet_area_m2)
        fits_bay("fans." + fan.name + ".inlet_area", fan.value.inlet_bay, *fan.value.inlet_area_m2);
  }

  /// What sits in some wall of a bay is no larger than its largest wall.
  void fits_bay(const std::string& path, const std::string& bay, double area_m2) const {
    double largest = 0.0;
    for (const Facet& facet : shape_.facets)
      if (facet.bay == shape_.bay_index(bay)) largest = std::max(largest, facet.area_m2);
    require(area_m2 <= largest, ErrorKind::does_not_fit, path,
            "the largest wall of the " + bay + " bay has " + square(largest));
  }

  void devices() const {
    for (const auto& fan : s_.fans) {
      below_ridge("fans." + fan.name + ".height", fan.value.height_m);
      below_ridge("fans." + fan.name + ".inlet_height", fan.value.inlet_height_m);
    }
    for (const auto& pad : s_.pads) below_ridge("pads." + pad.name + ".centre", pad.value.centre_m);
    for (const auto& line : s_.mist_lines) line_height("mist_lines." + line.name + ".height", line.value);
    for (const auto& sensor : s_.sensors) below_ridge("sensors." + sensor.name + ".height", sensor.value.height_m);
    for (const auto& [name, shade] : s_.shades) {
      const std::string path = "shades." + name;
      require(shade.transmits + shade.absorbs <= 1.0, ErrorKind::out_of_range, path + ".absorbs",
              "what it lets through and what it absorbs add up to more than 100 %");
      require(shade.straight <= shade.transmits, ErrorKind::out_of_range, path + ".straight",
              "what passes straight is part of what it lets through, so it cannot be more");
      require(shade.infrared_passes + shade.emissivity <= 1.0, ErrorKind::out_of_range, path + ".infrared_passes",
              "thermal radiation let through and emissivity add up to more than 100 %");
    }
    const auto over = [](const ShadeSpec& s, bool roof) {
      return s.over == ShadeOver::all || (s.over == ShadeOver::roof) == roof;
    };
    for (std::size_t i = 0; i < s_.shades.size(); ++i)
      for (std::size_t j = 0; j < i; ++j)
        for (const bool roof : {true, false})
          require(!over(s_.shades[i].value, roof) || !over(s_.shades[j].value, roof), ErrorKind::does_not_fit,
                  "shades." + s_.shades[i].name + ".over",
                  "the " + std::string(roof ? "roof already carries the " : "walls already carry the ") +
                      s_.shades[j].name + "; one cloth on each part is what this version can compute");
  }

  void people() const {
    const auto check = [&](const std::string& path, const auto& does, bool more, const std::string& with) {
      require(more || !does.opens.empty() || !does.shuts.empty(), ErrorKind::missing_key, path,
              "nothing is done; say what with " + with + ", or take it out");
      for (const std::string& name : does.shuts)
        require(std::count(does.opens.begin(), does.opens.end(), name) == 0, ErrorKind::does_not_fit, path + ".shuts",
                "the " + name + " stands under opens too; take it out of one of the two");
    };
    const auto given = [&](const Place* place) { return place != nullptr && !place->defaulted; };
    for (const auto& [name, visit] : s_.grower.visits)
      check("grower.visits." + name, visit, given(places_.at("grower.visits." + name + ".waters")),
            "waters, opens or shuts (waters: [] only looks)");
    for (const auto& it : s_.grower.responses) check("grower.responses." + it.name, it.value, false, "opens or shuts");
  }

  const Places& places_;
  const ScenarioSpec& s_;
  HouseShape shape_;
};

}  // namespace

void cross_check(const PlanScenario& plan) {
  CrossCheck(plan).all();
  cross_check_kinds(plan);
  cross_check_stores(plan);
  cross_check_supply(plan);
}

}  // namespace noonhouse
