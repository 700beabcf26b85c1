// SPDX-License-Identifier: Apache-2.0
// Additions that a house does not have, put in but not fitted: a search for what would gain time fits them in a branch.
#include <algorithm>
#include <tuple>

#include "models/control/grower_response.hpp"
#include "models/control/on_off_control.hpp"
#include "models/control/proportional_control.hpp"
#include "models/control/sensor.hpp"
#include "tools/scenario/assembler.hpp"

namespace noonhouse {
namespace {
// Of additions as they are sold; common practice, no source.
constexpr double kThermometerSeconds = 60.0, kWaxSeconds = 600.0;
constexpr double kWaxBegins = 293.15, kWaxFull = 303.15;
constexpr double kAlarmAbove = 4.0;      ///< the highest reading at which a control starts [K]
constexpr double kAlarmIfNone = 313.15;  ///< where no control tells what is hot [K]
constexpr double kFloatShare = 1.5;      ///< of the pump's low mark at which a float calls
constexpr double kFloatMore = 0.02;      ///< and this more [m3]
}  // namespace

/// A wired, shielded thermometer of an addition.
NodeId Assembler::spare_thermometer(const std::string& name, int bay, double height_m, double time_constant_s) {
  const NodeId air = air_at(bay, height_m);
  const NodeId reading = graph_.node(name, Reading{}, {start_.air_k}, {kTemperatureUnit});
  graph_.exchange("what " + name + " follows", "instruments",
                  ThermometerLag{time_constant_s, SensorBody{out_.pressure_pa}},
                  {reading, air, Input(air, 1), Input(nothing_drawn_), Input(nothing_drawn_), Input(nothing_drawn_)},
                  {{{instruments_, reading}}});
  return reading;
}

void Assembler::add_spares() {
  if (!with_spares_) return;
  add_second_thermostats();
  add_wax_openers();
}

/// A second thermostat with a thermometer of its own beside each one in service.
void Assembler::add_second_thermostats() {
  const bool any = std::any_of(spec_.thermostats.begin(), spec_.thermostats.end(),
                               [&](const auto& item) { return plan_.uses(item.name); });
  if (!any) return;
  const ChannelId fitted = graph_.channel("a second thermostat is fitted", "1", 0.0);
  out_.spares.push_back({"a second thermostat", fitted, 1.0});
  for (const auto& [name, t] : spec_.thermostats) {
    if (!plan_.uses(name)) continue;
    const auto first = std::find_if(spec_.sensors.begin(), spec_.sensors.end(),
                                    [&, &wanted = t.sensor](const auto& s) { return s.name == wanted; });
    OnOffControl::Parameters p;
    p.name = "second " + name;
    p.sensor_name = "thermometer of the second " + name;
    p.sensor = spare_thermometer(p.sensor_name, out_.shape.bay_index(first->value.bay), first->value.height_m,
                                 kThermometerSeconds);
    p.limits = {t.starts_at, t.stops_at};
    p.least_on = ticks(t.least_on_s);
    p.least_off = ticks(t.least_off_s);
    p.terms.hours = {ticks(t.from_s), ticks(t.until_s)};
    p.demand = graph_.channel("call of the second " + name, "1", 0.0);
    const auto own = std::find_if(out_.demands.begin(), out_.demands.end(),
                                  [&, &wanted = name](const DemandParts& d) { return d.control == wanted; });
    for (const std::string& device : t.drives)
      for (Device::Caller& caller : callers_[device])
        if (caller.demand == own->demand) std::tie(caller.spare, caller.has_spare) = std::tie(p.demand, fitted);
    add_agent<OnOffControl>(std::move(p));
  }
}

/// Wax cylinders on the vents, one reading a bay.
void Assembler::add_wax_openers() {
  std::map<int, ChannelId> demands;
  ChannelId fitted;
  for (const auto& [name, opening] : spec_.openings) {
    if (!plan_.uses(name)) continue;
    if (!fitted.valid()) {
      fitted = graph_.channel("passive vent openers are fitted", "1", 0.0);
      out_.spares.push_back({"passive vent openers", fitted, 1.0});
    }
    const int bay = out_.shape.bay_index(opening.bay);
    const auto [at, fresh] = demands.try_emplace(bay);
    if (fresh) {
      ProportionalControl::Parameters p;
      p.name = "passive vent opener of the " + opening.bay + " bay";
      p.sensor_name = "wax in the " + opening.bay + " bay";
      p.sensor = spare_thermometer(p.sensor_name, bay, opening.centre_m, kWaxSeconds);
      p.demand = at->second = graph_.channel("call of the " + p.name, "1", 0.0);
      p.from = kWaxBegins;
      p.to = kWaxFull;
      p.every = 15_min;
      p.dead_step = 0.1;
      add_agent<ProportionalControl>(std::move(p));
    }
    callers_[name].emplace_back(at->second, fitted).beside = true;
    graded_.insert(name);
  }
}

/// Alarms that call the grower, who opens and starts by hand what there is.
void Assembler::add_spare_alarms() {
  if (!with_spares_) return;
  double hot = 0.0;
  for (const auto& [name, t] : spec_.thermostats)
    if (plan_.uses(name) && t.starts_at > t.stops_at) hot = std::max(hot, t.starts_at + kAlarmAbove);
  if (hot == 0.0) hot = kAlarmIfNone;
  const NodeId reading =
      spare_thermometer("thermometer of the heat alarm", 0, 0.5 * out_.shape.top_m, kThermometerSeconds);
  add_spare_alarm("a heat alarm", "hears the heat alarm", Input(reading), {hot, hot - 1.0});
  const double level = kWaterKgPerM3 * (kFloatShare * spec_.tank.low_m3 + kFloatMore);
  add_spare_alarm("a float alarm in the tank", "hears the float alarm", Input(out_.tank, 1),
                  {level, 1.1 * level + 1.0});
}

void Assembler::add_spare_alarm(const std::string& name, const std::string& sees, const Input& sign,
                                const TwoLimits& limits) {
  const ChannelId missing = graph_.channel(name + " is not fitted", "1", 1.0);
  out_.spares.push_back({name, missing, 0.0});
  GrowerResponse::Parameters p;
  p.name = "grower, " + name;
  p.sign = sign;
  p.limits = limits;
  p.sees = sees;
  p.does = "opens the vents, draws the cloths, starts the fans and the mist by hand";
  for (const auto& device : out_.devices)
    if (device.in_service) hands_on({device.name}, true, p.moves);
  p.presence = presence();
  p.away = away_;
  p.not_fitted = missing;
  p.reaction = ticks(spec_.grower.reaction_s);
  p.alarm = true;
  p.returns_within = ticks(spec_.grower.returns_within_s);
  p.stays = ticks(spec_.grower.stays_s);
  p.stays_until = stays_until_;
  add_agent<GrowerResponse>(std::move(p));
}

}  // namespace noonhouse
