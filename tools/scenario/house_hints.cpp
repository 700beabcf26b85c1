// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/house_hints.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "tools/scenario/standing_place.hpp"

namespace noonhouse {
namespace {

bool holds(const std::vector<std::string>& names, const std::string& name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

/// The hints of one plan, each a few lines.
class Hints {
 public:
  explicit Hints(const PlanScenario& plan) : plan_(plan), s_(plan.spec) {}
  std::vector<std::string> slips() {
    uncalled(s_.openings);
    uncalled(s_.fans);
    uncalled(s_.mist_lines);
    uncalled(s_.pads);
    uncalled(s_.drip_lines);
    uncalled(s_.shades);
    idle(s_.thermostats);
    idle(s_.humidistats);
    idle(s_.deficit_controls);
    idle(s_.proportional_controls);
    idle(s_.timers);
    idle_stages();
    add(control_hints(plan_));
    add(supply_hints(plan_));
    dry_plants();
    tall_plants();
    clock();
    strong_fans();
    return out_;
  }
  std::vector<std::string> all() {
    slips();
    hands();
    shut_house();
    return std::move(out_);
  }

 private:
  template <class Controls>
  bool driven_by(const Controls& controls, const std::string& device) const {
    return std::any_of(controls.begin(), controls.end(), [&](const auto& control) {
      return plan_.uses(control.name) && holds(control.value.drives, device);
    });
  }

  bool called(const std::string& device) const {
    const auto& visits = s_.grower.visits;
    const auto& responses = s_.grower.responses;
    return driven_by(s_.thermostats, device) || driven_by(s_.timers, device) || driven_by(s_.humidistats, device) ||
           driven_by(s_.deficit_controls, device) || driven_by(s_.proportional_controls, device) ||
           std::any_of(s_.staged_controls.begin(), s_.staged_controls.end(),
                       [&](const auto& c) {
                         return plan_.uses(c.name) &&
                                std::any_of(c.value.stages.begin(), c.value.stages.end(),
                                            [&](const auto& stage) { return holds(stage.drives, device); });
                       }) ||
           std::any_of(s_.rules.begin(), s_.rules.end(),
                       [&](const auto& rule) { return holds(rule.value.calls, device); }) ||
           std::any_of(responses.begin(), responses.end(),
                       [&](const auto& r) { return holds(r.value.opens, device); }) ||
           std::any_of(visits.begin(), visits.end(), [&](const auto& v) { return holds(v.value.opens, device); });
  }

  template <class Devices>
  void uncalled(const Devices& devices) {
    for (const auto& device : devices)
      if (plan_.uses(device.name) && !called(device.name))
        out_.push_back(
            fmt::format("{} is in service, but no control in service and no visit ever calls it", device.name));
  }

  void add(const std::vector<std::string>& hints) { out_.insert(out_.end(), hints.begin(), hints.end()); }

  void idle_control(const std::string& name, const std::vector<std::string>& drives) {
    if (plan_.uses(name) &&
        std::none_of(drives.begin(), drives.end(), [&](const auto& device) { return plan_.uses(device); }))
      out_.push_back(fmt::format("{} is in service, but all it drives is at rest: {}", name, fmt::join(drives, ", ")));
  }
  template <class Controls>
  void idle(const Controls& controls) {
    for (const auto& control : controls) idle_control(control.name, control.value.drives);
  }
  void idle_stages() {
    for (const auto& control : s_.staged_controls) {
      std::vector<std::string> drives;
      for (const auto& stage : control.value.stages)
        drives.insert(drives.end(), stage.drives.begin(), stage.drives.end());
      idle_control(control.name, drives);
    }
  }

  void hands() {
    for (const auto& visit : s_.grower.visits)
      for (const std::string& device : visit.value.opens)
        if (!plan_.uses(device))
          out_.push_back(fmt::format("the visit {} opens {}, which this plan leaves at rest", visit.name, device));
  }

  /// Local standard time follows the longitude, an hour each 15 degrees, to two hours or so.
  void clock() {
    constexpr double kSecondsPerRadian = 86400.0 / (2.0 * std::numbers::pi), kMostApart = 2.5 * 3600.0;
    const double sun_s = s_.site.longitude_rad * kSecondsPerRadian;
    if (std::abs(sun_s - s_.site.utc_offset_s) > kMostApart)
      out_.push_back(
          fmt::format("the clock is {:.1f} h off the sun at this longitude: is utc_offset right, and is east positive?",
                      std::abs(sun_s - s_.site.utc_offset_s) / 3600.0));
  }

  /// Small axial fans move some 10 to 50 m3/h for each watt (common practice, no source).
  void strong_fans() {
    for (const auto& fan : s_.fans)
      if (fan.value.flow_m3_s * 3600.0 > 150.0 * std::max(fan.value.power_w, 0.1))
        out_.push_back(fmt::format("{} moves {:.0f} m3/h with {:.0f} W, far more than fans of that power do", fan.name,
                                   fan.value.flow_m3_s * 3600.0, fan.value.power_w));
  }

  void dry_plants() {
    const auto& visits = s_.grower.visits;
    const auto places = standing_places(s_, shape_of(s_.house));
    for (const auto& group : s_.plants) {
      const auto waters = [&](const auto& item) { return holds(item.value.waters, group.name); };
      const auto drips = [&](const auto& line) { return plan_.uses(line.name) && waters(line); };
      if (std::any_of(visits.begin(), visits.end(), waters)) continue;
      if (std::any_of(s_.drip_lines.begin(), s_.drip_lines.end(), drips)) continue;
      out_.push_back(fmt::format("{} {} are watered by no visit{}", group.name,
                                 places[static_cast<std::size_t>(place_of(group.value, places, s_))].name,
                                 s_.drip_lines.empty() ? "" : " and no drip line in service"));
    }
  }

  void tall_plants() {
    const HouseShape shape = shape_of(s_.house);
    const auto places = standing_places(s_, shape);
    for (const auto& group : s_.plants) {
      const StandingPlace& place = places[static_cast<std::size_t>(place_of(group.value, places, s_))];
      const auto kind = std::find_if(s_.plant_kinds.begin(), s_.plant_kinds.end(),
                                     [&](const auto& k) { return k.name == group.value.kind; });
      const double needs = kPotHeight + kind->value.height_m, room = headroom_m(place, s_, shape);
      if (needs > room + 1e-9)
        out_.push_back(fmt::format("{} are {:.2f} m high with their pots; {} there are {:.2f} m", group.name, needs,
                                   place.name, room));
    }
  }

  void shut_house() {
    const auto in_service = [&](const auto& item) { return plan_.uses(item.name); };
    if (std::any_of(s_.openings.begin(), s_.openings.end(), in_service)) return;
    const bool fan = std::any_of(s_.fans.begin(), s_.fans.end(), in_service);
    out_.emplace_back(fan ? "no opening is in service: beside leakage, air comes in by the fans' inlets alone"
                          : "no opening and no fan is in service: the house breathes by leakage alone");
  }

  const PlanScenario& plan_;
  const ScenarioSpec& s_;
  std::vector<std::string> out_;
};

}  // namespace

std::vector<std::string> house_hints(const PlanScenario& plan) { return Hints(plan).all(); }

std::vector<std::string> plan_slips(const PlanScenario& plan) { return Hints(plan).slips(); }

}  // namespace noonhouse
