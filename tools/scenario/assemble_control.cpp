// SPDX-License-Identifier: Apache-2.0
// Who calls for what: on/off, staged and proportional controls, timers, rules; and the weather's diary.
#include <algorithm>

#include "models/control/on_off_control.hpp"
#include "models/control/proportional_control.hpp"
#include "models/control/pulse_timer.hpp"
#include "models/control/script.hpp"
#include "models/control/staged_control.hpp"
#include "models/control/weather_diary.hpp"
#include "models/properties/figure_text.hpp"
#include "tools/scenario/assembler.hpp"

namespace noonhouse {
namespace {

WhenLost when_lost(IfLost lost) {
  switch (lost) {
    case IfLost::holds:
      return WhenLost::holds;
    case IfLost::runs:
      return WhenLost::runs;
    case IfLost::stops:
      break;
  }
  return WhenLost::stops;
}

std::string plain(double value) { return number_text(value, value < 10.0 ? 1 : 0); }

std::string joined(const std::vector<std::string>& names) {
  std::string out;
  for (const std::string& name : names) out += (out.empty() ? "" : ", ") + name;
  return out;
}

}  // namespace

const SensorParts& Assembler::sensor(const std::string& name) const {
  return *std::find_if(out_.sensors.begin(), out_.sensors.end(), [&](const SensorParts& s) { return s.name == name; });
}

/// A demand channel that calls the devices; heeded by its hours where a device listens to the first on duty.
ChannelId Assembler::demand_of(const std::string& control, const std::vector<std::string>& drives) {
  const ChannelId demand = graph_.channel("call of " + control, "1", 0.0);
  out_.demands.push_back({control, demand, drives});
  for (const std::string& device : drives) callers_[device].emplace_back(demand, duty_of(control));
  return demand;
}

/// What every control stands under; a dead one is a failure that can be put into a run.
ControlTerms Assembler::terms_of(const std::string& control, const std::string& sensor_name, double from_s,
                                 double until_s, IfLost lost) {
  ControlTerms terms;
  terms.hours = {ticks(from_s), ticks(until_s)};
  terms.good = sensor(sensor_name).good;
  terms.when_lost = when_lost(lost);
  terms.fault = graph_.channel("fault of " + control, "1", 0.0);
  out_.fault_points.push_back({FailureKind::reboots, control, terms.fault, 1.0, 0.0, "reboots and is dead meanwhile"});
  if (!terms.hours.whole_day()) hours_[control] = terms.hours;
  return terms;
}

void Assembler::add_on_off(const std::string& name, const ThermostatSpec& t, std::string (*words)(double)) {
  if (!plan_.uses(name)) return;
  OnOffControl::Parameters p;
  p.name = name;
  p.sensor_name = t.sensor;
  p.sensor = sensor(t.sensor).told;
  p.limits = {t.starts_at, t.stops_at};
  p.least_on = ticks(t.least_on_s);
  p.least_off = ticks(t.least_off_s);
  p.terms = terms_of(name, t.sensor, t.from_s, t.until_s, t.if_lost);
  p.pulse_on = ticks(t.pulse_on_s);
  p.pulse_off = ticks(t.pulse_off_s);
  p.calls_for = words == celsius_text ? (t.starts_at > t.stops_at ? "cooling" : "warmth") : joined(t.drives);
  p.words = words;
  p.demand = demand_of(name, t.drives);
  add_agent<OnOffControl>(std::move(p));
}

void Assembler::add_staged(const std::string& name, const StagedSpec& s) {
  if (!plan_.uses(name)) return;
  StagedControl::Parameters p;
  p.name = name;
  p.sensor_name = s.sensor;
  p.sensor = sensor(s.sensor).told;
  p.terms = terms_of(name, s.sensor, s.from_s, s.until_s, s.if_lost);
  for (std::size_t i = 0; i < s.stages.size(); ++i) {
    const StageSpec& stage = s.stages[i];
    const ChannelId demand = graph_.channel("call of stage " + std::to_string(i + 1) + " of " + name, "1", 0.0);
    out_.demands.push_back({name, demand, stage.drives});
    for (const std::string& device : stage.drives) callers_[device].emplace_back(demand, duty_of(name));
    p.stages.push_back({"stage " + std::to_string(i + 1) + ", " + joined(stage.drives),
                        demand,
                        {stage.starts_at_k, stage.stops_at_k},
                        ticks(s.delay_s),
                        ticks(s.least_on_s),
                        ticks(s.least_off_s)});
  }
  add_agent<StagedControl>(std::move(p));
}

void Assembler::add_proportional(const std::string& name, const ProportionalSpec& s) {
  if (!plan_.uses(name)) return;
  ProportionalControl::Parameters p;
  p.name = name;
  p.sensor_name = s.sensor;
  p.sensor = sensor(s.sensor).told;
  p.from = s.begins_k;
  p.to = s.full_k;
  p.every = ticks(s.every_s);
  p.dead_step = s.dead_step;
  p.terms = terms_of(name, s.sensor, s.from_s, s.until_s, s.if_lost);
  p.calls_for = s.full_k > s.begins_k ? "cooling" : "warmth";
  p.demand = demand_of(name, s.drives);
  graded_.insert(s.drives.begin(), s.drives.end());
  add_agent<ProportionalControl>(std::move(p));
}

void Assembler::add_controls() {
  add_weather_diary();
  for (const auto& item : spec_.thermostats) add_on_off(item.name, item.value, celsius_text);
  for (const auto& item : spec_.humidistats) add_on_off(item.name, item.value, percent_text);
  for (const auto& item : spec_.deficit_controls) add_on_off(item.name, item.value, kilopascal_text);
  for (const auto& item : spec_.staged_controls) add_staged(item.name, item.value);
  for (const auto& item : spec_.proportional_controls) add_proportional(item.name, item.value);
  for (const auto& item : spec_.timers) {
    if (!plan_.uses(item.name)) continue;
    const TimerSpec& t = item.value;
    hours_[item.name] = {ticks(t.from_s), ticks(t.until_s)};
    add_agent<PulseTimer>(PulseTimer::Parameters{item.name,
                                                 demand_of(item.name, t.drives),
                                                 {ticks(t.from_s), ticks(t.until_s)},
                                                 ticks(t.on_s),
                                                 ticks(t.every_s)});
  }
  add_rules();
  add_spares();
  add_device_agents();
  add_pumps();
  add_loads();
  add_tank_agents();
  add_battery_agents();
  add_people();
  add_spare_alarms();
  add_hazards();
  add_faults();
}

/// The channel that says whether a control is within its hours; none for one that always is.
ChannelId Assembler::duty_of(const std::string& control) {
  const auto hours = hours_.find(control);
  if (hours == hours_.end()) return {};
  const auto [at, fresh] = duties_.try_emplace(control);
  if (!fresh) return at->second;
  at->second = graph_.channel("hours of " + control, "1", hours->second.holds(Tick{0}) ? 1.0 : 0.0);
  Script::Parameters script{"hours of " + control, {}};
  for (Tick t{0}; t < ticks(spec_.run.length_s); t = hours->second.next_edge(t))
    script.lines.push_back({t, "", EventKind::action, {{at->second, hours->second.holds(t) ? 1.0 : 0.0}}});
  add_agent<Script>(std::move(script));
  return at->second;
}

/// Rain spells with their depth from the grid's own rain, and the dusty day that the scenario's generator put in.
void Assembler::add_weather_diary() {
  WeatherDiary::Parameters p;
  p.raining = raining_;
  const RunGrid& grid = table_->grid();
  const Tick end = ticks(spec_.run.length_s);
  bool raining = false;
  double fallen = 0.0;
  for (std::size_t k = 0; k + 1 < grid.size(); ++k) {
    const double rain = table_->instant(k).rain_kg_m2_s;
    const Tick when = grid.when(k);
    if (rain > 0.0 && !raining) p.notes.push_back({when, "rain begins", 1.0});
    if (rain <= 0.0 && raining) {
      p.notes.push_back({when, "rain ends: " + plain(fallen) + " mm", 0.0});
      fallen = 0.0;
    }
    raining = rain > 0.0;
    fallen += rain * seconds(std::min(grid.when(k + 1), end) - when);
  }
  if (raining) p.notes.push_back({end, "it still rains as the run ends: " + plain(fallen) + " mm", 0.0});
  if (const auto* made = std::get_if<InventedHeatwave>(&spec_.weather.source); made != nullptr && made->dust_day > 0)
    p.notes.push_back({kDay * (made->dust_day - 1), "a day with a dust-hazy sky begins", -1.0});
  std::stable_sort(p.notes.begin(), p.notes.end(), [](const auto& a, const auto& b) { return a.when < b.when; });
  add_agent<WeatherDiary>(std::move(p));
}

}  // namespace noonhouse
