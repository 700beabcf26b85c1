// SPDX-License-Identifier: Apache-2.0
// What tank, battery, pumps and refills say of one another.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "models/power/battery.hpp"
#include "models/properties/constants.hpp"
#include "models/properties/water.hpp"
#include "models/water/line_flows.hpp"
#include "tools/scenario/as_written.hpp"
#include "tools/scenario/each_draw.hpp"
#include "tools/scenario/scenario.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {
namespace {

constexpr double kLiftedWaterK = 293.15;  ///< at which a pump's water is weighed

class StoreCheck {
 public:
  explicit StoreCheck(const PlanScenario& plan) : places_(plan.places), s_(plan.spec) {}
  void all() const {
    tank();
    battery();
    lines();
    for (const auto& pump : s_.pumps) lifts(pump);
    draws();
  }

 private:
  void require(bool right, ErrorKind kind, const std::string& path, const std::string& message) const {
    if (!right) places_.fail(kind, path, message);
  }
  std::string volume_like(const std::string& path, double m3) const {
    return in_unit_of(places_, path, m3, Dimension::volume);
  }
  /// The tank's capacity in the unit of the value at a path.
  std::string brim_like(const std::string& path) const { return volume_like(path, s_.tank.capacity_m3); }

  void tank() const {
    const TankSpec& t = s_.tank;
    require(t.start_m3 <= t.capacity_m3, ErrorKind::does_not_fit, "tank.starts_with",
            "is more than the tank holds, " + brim_like("tank.starts_with"));
    require(
        t.low_m3 < t.restart_m3, ErrorKind::out_of_range, "tank.restart_mark",
        "must be above " + key_and_value(places_, "tank.low_mark", t.low_m3, Dimension::volume, "tank.restart_mark"));
    require(t.restart_m3 <= t.capacity_m3, ErrorKind::does_not_fit, "tank.restart_mark",
            "is above the tank's brim, " + brim_like("tank.restart_mark"));
    for (const auto& item : s_.refills) {
      const std::string path = "refills." + item.name + ".called_at";
      require(item.value.called_at_m3 < t.capacity_m3, ErrorKind::does_not_fit, path,
              "must be below the tank's brim, " + brim_like(path));
    }
  }

  void battery() const {
    const PowerSpec& p = s_.power;
    const std::string off = "power.cut_off_at", on = "power.reconnect_at";
    if (p.cut_off >= p.reconnect && to_blame(places_, on, off) == off)
      places_.fail(ErrorKind::out_of_range, off,
                   "must be below " + key_and_value(places_, on, p.reconnect, Dimension::share, off));
    require(p.cut_off < p.reconnect, ErrorKind::out_of_range, on,
            "must be above " + key_and_value(places_, off, p.cut_off, Dimension::share, on));
    require(
        p.reconnect <= kFillsTo, ErrorKind::out_of_range, on,
        fmt::format("charging tapers off over the last {:.0f} %, so loads would never come back; give at most {:.0f} %",
                    100.0 * kTapersOver, 100.0 * kFillsTo));
  }

  void lines() const {
    for (const auto& line : s_.mist_lines)
      require(
          line.value.pump_power_w || line.value.pump != kOwnPump, ErrorKind::missing_key, "mist_lines." + line.name,
          "pump_power is missing; a line with a pump of its own says what it draws (a line on one of the pumps need "
          "not)");
    for (const auto& pump : s_.pumps) {
      const auto fed = std::count_if(s_.mist_lines.begin(), s_.mist_lines.end(),
                                     [&](const auto& line) { return line.value.pump == pump.name; });
      require(fed <= static_cast<std::ptrdiff_t>(LineFlows::kMostLines), ErrorKind::does_not_fit, "pumps." + pump.name,
              fmt::format("feeds {} lines; a pump feeds {} at most", fed, LineFlows::kMostLines));
    }
  }

  /// A pump whose pressure at no flow does not carry the water up to the nozzles never gives any.
  void lifts(const Named<PumpSpec>& pump) const {
    const std::string path = "pumps." + pump.name + ".shut_off", lift = "pumps." + pump.name + ".lift";
    const double pa_per_m = water_density_kg_m3(kLiftedWaterK) * kGravity;
    const double needed_pa = pa_per_m * pump.value.lift_m;
    if (pump.value.shut_off_pa > needed_pa) return;
    places_.fail(
        ErrorKind::does_not_fit, path,
        fmt::format("its nozzles never get any water, because the {}, takes {}; allowed: above that, or a lift "
                    "below {}",
                    key_and_value(places_, lift, pump.value.lift_m, Dimension::length, lift),
                    in_unit_of(places_, path, three_digits_up(needed_pa), Dimension::pressure),
                    format_quantity(pump.value.shut_off_pa / pa_per_m, Dimension::length, UnitSystem::metric)));
  }
  /// The next value above one that is positive which has three significant digits.
  static double three_digits_up(double value) {
    const double last = std::pow(10.0, std::floor(std::log10(value)) - 2.0);
    return last * std::ceil(value / last);
  }

  void draw(const std::string& path, const DrawSpec& d, bool water) const {
    const double gap_m3 = s_.tank.restart_m3 - s_.tank.low_m3;
    const std::string keeps = path + ".keeps_back";
    if (water)
      require(d.keeps_back_m3 + gap_m3 <= s_.tank.capacity_m3, ErrorKind::does_not_fit, keeps,
              "leaves nothing of the tank to draw, which holds " + brim_like(keeps) + "; give at most " +
                  volume_like(keeps, s_.tank.capacity_m3 - gap_m3));
    require(d.sheds_at + kShedGap <= kFillsTo || d.sheds_at <= s_.power.cut_off, ErrorKind::out_of_range,
            path + ".sheds_at",
            fmt::format("loads come back {:.0f} % above it and charging tapers off at {:.0f} %; give at most {:.0f} %",
                        100.0 * kShedGap, 100.0 * kFillsTo, 100.0 * (kFillsTo - kShedGap)));
  }
  void draws() const {
    each_draw(s_, [this](const std::string& section, const std::string& name, const DrawSpec& d, bool water) {
      draw(section + "." + name, d, water);
    });
    for (const auto& visit : s_.grower.visits) {
      const std::string path = "grower.visits." + visit.name + ".keeps_back";
      require(visit.value.keeps_back_m3 < s_.tank.capacity_m3, ErrorKind::does_not_fit, path,
              "leaves nothing of the tank to draw, which holds " + brim_like(path));
    }
  }

  const Places& places_;
  const ScenarioSpec& s_;
};

}  // namespace

void cross_check_stores(const PlanScenario& plan) { StoreCheck(plan).all(); }

}  // namespace noonhouse
