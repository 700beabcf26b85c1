// SPDX-License-Identifier: Apache-2.0
// What is odd, though allowed, in the limits and hours of controls.
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

#include "tools/scenario/house_hints.hpp"
#include "tools/units/clock_text.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {
namespace {

std::string warmth(double kelvin) { return format_quantity(kelvin, Dimension::temperature, UnitSystem::metric); }

class ControlHints {
 public:
  explicit ControlHints(const PlanScenario& plan) : plan_(plan), s_(plan.spec) {}
  std::vector<std::string> all() {
    against_cold();
    hours(s_.thermostats);
    hours(s_.humidistats);
    hours(s_.deficit_controls);
    hours(s_.staged_controls);
    hours(s_.proportional_controls);
    hours(s_.timers);
    for (const auto& rule : s_.rules) whole_day("the rule " + rule.name, rule.value);
    for (const auto& window : s_.grower.present) whole_day("the grower's presence", window);
    return std::move(out_);
  }

 private:
  /// Those of a control's devices in service that cool: a fan that only moves air around may serve against cold.
  std::vector<std::string> coolers(const std::vector<std::string>& drives) const {
    std::vector<std::string> out;
    const auto take = [&](const auto& devices, const auto& cools) {
      for (const auto& device : devices)
        if (plan_.uses(device.name) && cools(device.value) &&
            std::find(drives.begin(), drives.end(), device.name) != drives.end())
          out.push_back(device.name);
    };
    const auto always = [](const auto&) { return true; };
    take(s_.openings, always);
    take(s_.fans, [](const FanSpec& fan) { return fan.moves != FanMoves::air_around; });
    take(s_.mist_lines, always);
    take(s_.pads, always);
    return out;
  }

  void against_cold() {
    const auto tell = [&](const std::string& name, const std::vector<std::string>& drives, const std::string& limits,
                          const char* otherwise) {
      const auto cooling = coolers(drives);
      if (plan_.uses(name) && !cooling.empty())
        out_.push_back(fmt::format("{} {}, so it calls {} against cold; against heat {}", name, limits,
                                   fmt::join(cooling, ", "), otherwise));
    };
    for (const auto& [name, t] : s_.thermostats)
      if (t.stops_at > t.starts_at)
        tell(name, t.drives, fmt::format("starts at {} and stops at {}", warmth(t.starts_at), warmth(t.stops_at)),
             "stops_at is below starts_at");
    for (const auto& [name, p] : s_.proportional_controls)
      if (p.full_k < p.begins_k)
        tell(name, p.drives, fmt::format("begins at {} and is full at {}", warmth(p.begins_k), warmth(p.full_k)),
             "full_at is above begins_at");
  }

  template <class Controls>
  void hours(const Controls& controls) {
    for (const auto& control : controls)
      if (plan_.uses(control.name)) whole_day(control.name, control.value);
  }

  /// Hours that end where they begin are a whole day: see DailyWindow.
  template <class Spec>
  void whole_day(const std::string& name, const Spec& spec) {
    if (spec.from_s == spec.until_s)
      out_.push_back(
          fmt::format("{} is from {} until the same time, which means the whole day; if that is meant, from "
                      "00:00 until 24:00 says it",
                      name, format_time_of_day(spec.from_s)));
  }

  const PlanScenario& plan_;
  const ScenarioSpec& s_;
  std::vector<std::string> out_;
};

}  // namespace

std::vector<std::string> control_hints(const PlanScenario& plan) { return ControlHints(plan).all(); }

}  // namespace noonhouse
