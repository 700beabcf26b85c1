// SPDX-License-Identifier: Apache-2.0
// What controls, hazards, failures and prices say of one another.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "tools/scenario/scenario.hpp"
#include "tools/units/nearest.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {
namespace {

class SupplyCheck {
 public:
  explicit SupplyCheck(const PlanScenario& plan) : places_(plan.places), s_(plan.spec) {}
  void all() const {
    on_off();
    by_degrees();
    rules();
    times();
    faults();
    prices();
  }

 private:
  void require(bool right, ErrorKind kind, const std::string& path, const std::string& message) const {
    if (!right) places_.fail(kind, path, message);
  }
  const SensorSpec* sensor(const std::string& name) const {
    const auto found =
        std::find_if(s_.sensors.begin(), s_.sensors.end(), [&](const auto& item) { return item.name == name; });
    return found == s_.sensors.end() ? nullptr : &found->value;
  }
  std::string sensors_of(Measures measures) const {
    std::vector<std::string> names;
    for (const auto& item : s_.sensors)
      if (item.value.measures == measures) names.push_back(item.name);
    return allowed_words(names);
  }
  /// Limits of a rule's reading are for a sensor that measures just that.
  void needs(const std::string& path, const std::string& name, Measures measures, const char* quantity) const {
    require(name != "none", ErrorKind::missing_key, path,
            fmt::format("limits of a reading need the sensor that they are for; {}", sensors_of(measures)));
    const SensorSpec* found = sensor(name);
    require(found != nullptr && found->measures == measures, ErrorKind::wrong_type, path,
            fmt::format("these limits need a sensor that measures {}; {}", quantity, sensors_of(measures)));
  }

  template <class T>
  void on_off(const char* group, const std::vector<Named<T>>& items) const {
    for (const auto& item : items) {
      const std::string path = std::string(group) + "." + item.name;
      require(item.value.starts_at != item.value.stops_at, ErrorKind::out_of_range, path + ".stops_at",
              "must differ from starts_at, or it would switch without end");
      require((item.value.pulse_on_s > 0.0) == (item.value.pulse_off_s > 0.0), ErrorKind::does_not_fit,
              path + ".pulse_off", "pulses need both their length and their pause");
    }
  }
  void on_off() const {
    on_off("thermostats", s_.thermostats);
    on_off("humidistats", s_.humidistats);
    on_off("deficit_controls", s_.deficit_controls);
  }

  void by_degrees() const {
    for (const auto& item : s_.staged_controls) {
      const std::string path = "staged_controls." + item.name;
      const StageSpec* before = nullptr;
      for (std::size_t i = 0; i < item.value.stages.size(); ++i) {
        const StageSpec& stage = item.value.stages[i];
        const std::string at = path + ".stages." + std::to_string(i + 1);
        require(stage.stops_at_k < stage.starts_at_k, ErrorKind::out_of_range, at + ".stops_at",
                "must be below starts_at");
        require(
            before == nullptr || (before->starts_at_k <= stage.starts_at_k && before->stops_at_k <= stage.stops_at_k),
            ErrorKind::out_of_range, at + ".starts_at", "later stages join and leave no lower than earlier ones");
        before = &stage;
      }
    }
    for (const auto& item : s_.proportional_controls) {
      const std::string path = "proportional_controls." + item.name;
      require(item.value.begins_k != item.value.full_k, ErrorKind::out_of_range, path + ".full_at",
              "must differ from begins_at");
    }
  }

  void rules() const {
    for (const auto& item : s_.rules) {
      const std::string path = "rules." + item.name;
      const RuleSpec& r = item.value;
      const bool temperature = r.warmer_k || r.colder_k, humidity = r.damper || r.drier_than,
                 deficit = r.deficit_above_pa || r.deficit_below_pa;
      if (temperature) needs(path + ".sensor", r.sensor, Measures::temperature, "temperature");
      if (humidity) needs(path + ".sensor", r.sensor, Measures::humidity, "humidity");
      if (deficit) needs(path + ".sensor", r.sensor, Measures::deficit, "deficit");
      const bool outdoors = r.raining || r.wind_above_m_s || r.outdoors_above_k || r.outdoors_below_k ||
                            r.forecast_above_k || r.sun_above_w_m2 || r.sun_below_w_m2 || r.tank_below_m3 ||
                            r.charge_below || !r.wet_leaves.empty();
      const bool some_hours = std::fmod(r.until_s - r.from_s, 86400.0) != 0.0;
      require(temperature || humidity || deficit || outdoors || some_hours || r.during != PartOfDay::any,
              ErrorKind::missing_key, path,
              "has no condition and would always hold; give one, such as warmer_than, gusts_above, raining, or hours");
      for (const std::string& device : r.forbids)
        require(std::find(r.calls.begin(), r.calls.end(), device) == r.calls.end(), ErrorKind::does_not_fit,
                path + ".calls", "\"" + device + "\" is called and forbidden by one rule; forbidding would always win");
    }
  }

  void in_run(const std::string& path, int day) const {
    const double days = s_.run.length_s / 86400.0;
    require(day - 1 < days, ErrorKind::out_of_range, path + ".day",
            fmt::format("the run has {:.5g} day{}; give {}", days, days == 1.0 ? "" : "s",
                        days <= 1.0 ? "1" : fmt::format("1 to {:.0f}", std::ceil(days))));
  }
  template <class T>
  void ends_in_run(const std::string& path, const T& hazard) const {
    if constexpr (requires { hazard.lasts_s; }) {
      const double over_s = 86400.0 * (hazard.day - 1) + hazard.at_s + hazard.lasts_s - s_.run.length_s;
      require(over_s <= 0.0, ErrorKind::does_not_fit, path + ".lasts",
              fmt::format("it would end {:.4g} min after the run does; let it begin earlier or lengthen the run",
                          over_s / 60.0));
    } else if constexpr (requires { hazard.days; }) {
      require(hazard.day - 1 + hazard.days <= std::ceil(s_.run.length_s / 86400.0), ErrorKind::does_not_fit,
              path + ".days", "it would last beyond the end of the run");
    }
  }
  void times() const {
    for (const auto& item : s_.hazards) {
      const std::string path = "hazards." + item.name;
      std::visit([&](const auto& hazard) { in_run(path, hazard.day); }, item.value.what);
      std::visit([&](const auto& hazard) { ends_in_run(path, hazard); }, item.value.what);
    }
    for (const auto& item : s_.faults) {
      const std::string path = "faults." + item.name;
      in_run(path, item.value.day);
      const double over_s = 86400.0 * (item.value.day - 1) + item.value.at_s - s_.run.length_s;
      require(over_s <= 0.0, ErrorKind::does_not_fit, path + ".at",
              fmt::format("the run ends {:.4g} min before; let it fail earlier or lengthen the run", over_s / 60.0));
    }
  }

  template <class T>
  static bool among(const std::vector<Named<T>>& items, const std::string& name) {
    return std::any_of(items.begin(), items.end(), [&](const auto& item) { return item.name == name; });
  }
  bool a_device(const std::string& n) const {
    return among(s_.openings, n) || among(s_.fans, n) || among(s_.mist_lines, n) || among(s_.pads, n) ||
           among(s_.drip_lines, n) || among(s_.shades, n);
  }
  bool a_control(const std::string& n) const {
    return among(s_.thermostats, n) || among(s_.humidistats, n) || among(s_.deficit_controls, n) ||
           among(s_.staged_controls, n) || among(s_.proportional_controls, n);
  }
  /// Whether a part can fail in that way, and which parts can.
  std::pair<bool, const char*> can_fail(const FaultSpec& f) const {
    switch (f.what) {
      case FailureKind::stuck_off:
      case FailureKind::stuck_on:
      case FailureKind::stuck_as_it_stands:
        return {a_device(f.of), "devices stick: an opening, fan, line, pad or shade"};
      case FailureKind::line_cut:
        return {among(s_.mist_lines, f.of), "mist lines are cut"};
      case FailureKind::reads_low:
      case FailureKind::reads_high: {
        const SensorSpec* it = sensor(f.of);
        return {it != nullptr && it->measures == Measures::temperature, "thermometers read low or high"};
      }
      case FailureKind::reads_frozen:
      case FailureKind::in_the_spray:
        return {among(s_.sensors, f.of), "sensors freeze or come to hang in the spray"};
      case FailureKind::radio_lost: {
        const SensorSpec* it = sensor(f.of);
        return {it != nullptr && it->polled_every_s > 0.0, "sensors that are polled lose their radio"};
      }
      case FailureKind::reboots:
        return {a_control(f.of), "controls reboot"};
      case FailureKind::cell_dead:
        return {f.of == "battery", "the battery loses cells"};
      case FailureKind::panel_covered:
        return {f.of == "panel", "the panel is covered"};
      case FailureKind::tank_leaks:
        return {f.of == "tank", "the tank leaks"};
      case FailureKind::grower_away:
        return {f.of == "grower", "the grower is away"};
    }
    return {false, ""};
  }
  void faults() const {
    for (const auto& item : s_.faults) {
      const auto [right, who] = can_fail(item.value);
      require(right, ErrorKind::does_not_fit, "faults." + item.name + ".of",
              "\"" + item.value.of + "\" cannot fail in this way; " + who);
    }
  }

  void prices() const {
    std::vector<std::string> known{"tank", "panel", "battery"};
    const auto add = [&](const auto& items) {
      for (const auto& item : items) known.push_back(item.name);
    };
    add(s_.openings), add(s_.fans), add(s_.mist_lines), add(s_.pads), add(s_.drip_lines), add(s_.shades);
    add(s_.sensors), add(s_.thermostats), add(s_.humidistats), add(s_.deficit_controls), add(s_.staged_controls);
    add(s_.proportional_controls), add(s_.timers), add(s_.rules), add(s_.pumps), add(s_.gutters);
    for (const auto& item : s_.prices.parts)
      require(std::find(known.begin(), known.end(), item.name) != known.end(), ErrorKind::unknown_name,
              "prices.parts." + item.name,
              fmt::format("the scenario has no such part{}; {}", did_you_mean(item.name, known), allowed_words(known)));
  }

  const Places& places_;
  const ScenarioSpec& s_;
};

}  // namespace

void cross_check_supply(const PlanScenario& plan) { SupplyCheck(plan).all(); }

}  // namespace noonhouse
