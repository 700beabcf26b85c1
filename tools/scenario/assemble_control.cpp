// SPDX-License-Identifier: Apache-2.0
// Who switches what: thermostats, timers, devices with their needs, guards, the grower, the weather's diary.
#include <algorithm>

#include "models/air/stirring.hpp"
#include "models/control/device.hpp"
#include "models/control/grower.hpp"
#include "models/control/pulse_timer.hpp"
#include "models/control/running_sum.hpp"
#include "models/control/thermostat.hpp"
#include "models/control/weather_diary.hpp"
#include "models/control/words.hpp"
#include "models/power/battery_guard.hpp"
#include "models/properties/constants.hpp"
#include "models/water/tank_guard.hpp"
#include "tools/scenario/assembler.hpp"

namespace noonhouse {
namespace {

template <class A>
void add_agent(RunPlan& plan, typename A::Parameters parameters) {
  plan.agents.push_back(std::make_unique<PlanOf<A>>(std::move(parameters)));
}

constexpr double kEddyShare = 0.1;      ///< size of eddies over the house's height; common practice, no source
constexpr double kJetSpeedShare = 0.9;  ///< C_v of a nozzle; common practice, no source

/// Water of a whole line at its working pressure [kg/s].
double line_flow_kg_s(const MistSpec& m) {
  return m.nozzles * kWaterKgPerM3 *
         nozzle_flow_m3_s(nozzle_constant(m.nozzle_flow_m3_s, m.rated_pressure_pa), m.pressure_pa);
}

std::string plain(double value) { return number_text(value, value < 10.0 ? 1 : 0); }

}  // namespace

void Assembler::add_controls() {
  for (const auto& item : spec_.thermostats) {
    if (!plan_.uses(item.name)) continue;
    const ThermostatSpec& t = item.value;
    const ChannelId demand = graph_.channel("call of " + item.name, "1", 0.0);
    const auto sensor = std::find_if(out_.sensors.begin(), out_.sensors.end(),
                                     [&](const SensorParts& s) { return s.name == t.sensor; });
    add_agent<Thermostat>(out_.plan, {item.name,
                                      t.sensor,
                                      sensor->reading,
                                      demand,
                                      t.starts_at_k,
                                      t.stops_at_k,
                                      ticks(t.least_on_s),
                                      ticks(t.least_off_s),
                                      {ticks(t.from_s), ticks(t.until_s)}});
    for (const std::string& device : t.drives) callers_[device].push_back(demand);
  }
  for (const auto& item : spec_.timers) {
    if (!plan_.uses(item.name)) continue;
    const TimerSpec& t = item.value;
    const ChannelId demand = graph_.channel("call of " + item.name, "1", 0.0);
    add_agent<PulseTimer>(out_.plan,
                          {item.name, demand, {ticks(t.from_s), ticks(t.until_s)}, ticks(t.on_s), ticks(t.every_s)});
    for (const std::string& device : t.drives) callers_[device].push_back(demand);
  }
  add_weather_diary();
  add_agent<TankGuard>(out_.plan, {"tank", Input(out_.tank, 1), kWaterKgPerM3 * spec_.tank.low_m3,
                                   kWaterKgPerM3 * spec_.tank.restart_m3, out_.water_permit, raining_});
  add_agent<BatteryGuard>(out_.plan,
                          {"battery",
                           out_.battery,
                           spec_.power.battery_j,
                           {{out_.power_permit, spec_.power.cut_off, spec_.power.reconnect, "all loads", true}}});
  add_device_agents();
  add_people();
}

/// What stirs each bay's air: the jets of its mist lines and of the fans that move air around.
void Assembler::add_stirring() {
  std::vector<RunningSum::Parameters> sums;
  for (std::size_t b = 0; b < stirring_.size(); ++b) {
    // The powers of all jets add up, and their turbulence is that of the sum: speed of 1 W times its cube root.
    const double one_watt =
        turbulent_velocity_m_s(1.0, kEddyShare * out_.shape.top_m, out_.shape.bays[b].volume_m3 * reference_density_);
    sums.push_back({"stirring of the " + out_.bays[b].name + " bay", {}, 0.0, {}, stirring_[b], 1.0 / 3.0, one_watt});
  }
  const auto stir = [&](const std::string& device, ChannelId running, const std::string& bay_name, double jet_w) {
    const auto bay = static_cast<std::size_t>(out_.shape.bay_index(bay_name));
    if (!plan_.uses(device) || jet_w <= 0.0) return;
    sums[bay].parts.push_back({running, jet_w});
  };
  for (const auto& item : spec_.fans) {
    const FanSpec& f = item.value;
    if (f.moves == FanMoves::air_around)
      stir(item.name, position_channel(item.name, "fan"), f.bay,
           jet_power_w(f.flow_m3_s * reference_density_, f.flow_m3_s / (0.25 * kPi * f.width_m * f.width_m)));
  }
  for (const auto& item : spec_.mist_lines) {
    const MistSpec& m = item.value;
    if (m.wets != MistWets::air) continue;
    const double speed = nozzle_jet_speed_m_s(m.pressure_pa, kWaterKgPerM3, kJetSpeedShare);
    for (const std::string& bay : m.bays)
      stir(item.name, position_channel(item.name, "mist line"), bay,
           jet_power_w(line_flow_kg_s(m) / static_cast<double>(m.bays.size()), speed));
  }
  for (auto& sum : sums)
    if (!sum.parts.empty()) add_agent<RunningSum>(out_.plan, std::move(sum));
}

void Assembler::add_device_agents() {
  const Device::Need power{out_.power_permit, "the battery is cut off"};
  const Device::Need water{out_.water_permit, "the pump is cut out for a low tank"};
  RunningSum::Parameters loads{"electrical loads", {}, spec_.power.standby_w, out_.power_permit, out_.load};
  const auto add = [&](const std::string& name, Device::Parameters p, double power_w) {
    if (!plan_.uses(name)) return;
    p.name = name;
    p.callers.assign(callers_[name].begin(), callers_[name].end());
    const ChannelId hand = graph_.channel("hand on " + name, "1", 0.0);
    hand_[name] = hand;
    p.callers.push_back(hand);
    loads.parts.push_back({p.outputs.front().channel, power_w});
    add_agent<Device>(out_.plan, std::move(p));
  };
  for (const auto& item : spec_.openings)
    add(item.name,
        {"", "opens", "shuts", {}, {}, {{position_channel(item.name, "opening"), 1.0, item.value.shut_share}}}, 0.0);
  for (const auto& item : spec_.fans) {
    const FanSpec& f = item.value;
    const ChannelId running = position_channel(item.name, "fan");
    add(item.name, {"", "starts", "stops", {}, {power}, {{running, 1.0, 0.0}}}, f.power_w);
  }
  for (const auto& item : spec_.mist_lines) {
    const MistSpec& m = item.value;
    Device::Parameters p{"", "starts",       "stops",
                         {}, {water, power}, {{position_channel(item.name, "mist line"), 1.0, 0.0}}};
    p.outputs.push_back({mist_flow_.at(item.name), line_flow_kg_s(m), 0.0});
    add(item.name, std::move(p), m.pump_power_w);
  }
  for (const auto& item : spec_.pads)
    add(item.name, {"", "is wetted", "dries", {}, {water, power}, {{position_channel(item.name, "pad"), 1.0, 0.0}}},
        item.value.pump_power_w);
  for (const auto& item : spec_.drip_lines) {
    Device::Parameters p{"", "starts", "stops", {}, {water}, {{position_channel(item.name, "drip line"), 1.0, 0.0}}};
    if (item.value.pump_power_w > 0.0) p.needs.push_back(power);
    add(item.name, std::move(p), item.value.pump_power_w);
  }
  for (const auto& item : spec_.shades) {
    Device::Parameters p{"", "is drawn", "is drawn back", {}, {}, {{position_channel(item.name, "shade"), 1.0, 0.0}}};
    if (item.value.drive_power_w > 0.0) p.needs.push_back(power);
    add(item.name, std::move(p), item.value.drive_power_w);
  }
  add_agent<RunningSum>(out_.plan, std::move(loads));
  add_stirring();
}

void Assembler::add_people() {
  for (const auto& visit : spec_.grower.visits) {
    GrowerVisit::Parameters p;
    p.name = "grower, " + visit.name;
    p.at = ticks(visit.value.at_s);
    p.tank_water = Input(out_.tank, 1);
    p.tank_temperature = out_.tank;
    p.tank_reserve_kg =
        0.5 * kWaterKgPerM3 * spec_.tank.low_m3;  // a can reaches below the pump's mark (common practice, no source)
    p.water_permit = out_.water_permit;
    for (const std::string& name : visit.value.waters) {
      const auto group =
          std::find_if(spec_.plants.begin(), spec_.plants.end(), [&](const auto& g) { return g.name == name; });
      const auto parts =
          std::find_if(out_.plants.begin(), out_.plants.end(), [&](const auto& g) { return g.name == name; });
      p.waters.push_back({name, Input(parts->pot, 1), watering_.at(name),
                          spec_.grower.pours_to * group->value.pot_water_kg_m2 * group->value.area_m2});
    }
    const auto hands = [&](const std::vector<std::string>& names, std::vector<ChannelId>& out) {
      for (const std::string& name : names)
        if (plan_.uses(name)) out.push_back(hand_.at(name));
    };
    hands(visit.value.opens, p.opens);
    hands(visit.value.shuts, p.shuts);
    add_agent<GrowerVisit>(out_.plan, std::move(p));
  }
}

/// Rain spells with their depth from the grid's own rain, and the dusty day that the scenario's generator put in.
void Assembler::add_weather_diary() {
  WeatherDiary::Parameters p;
  p.raining = raining_;
  const auto count = static_cast<std::size_t>(ticks(spec_.run.length_s).ms / table_->spacing().ms);
  bool raining = false;
  double fallen = 0.0;
  for (std::size_t k = 0; k < count; ++k) {
    const double rain = table_->instant(k).rain_kg_m2_s;
    const Tick when = table_->spacing() * static_cast<std::int64_t>(k);
    if (rain > 0.0 && !raining) p.notes.push_back({when, "rain begins", 1.0});
    if (rain <= 0.0 && raining) {
      p.notes.push_back({when, "rain ends: " + plain(fallen) + " mm", 0.0});
      fallen = 0.0;
    }
    raining = rain > 0.0;
    fallen += rain * seconds(table_->spacing());
  }
  if (const auto* made = std::get_if<InventedHeatwave>(&spec_.weather.source); made != nullptr && made->dust_day > 0)
    p.notes.push_back({kDay * (made->dust_day - 1), "a day with a dust-hazy sky begins", -1.0});
  std::stable_sort(p.notes.begin(), p.notes.end(), [](const auto& a, const auto& b) { return a.when < b.when; });
  add_agent<WeatherDiary>(out_.plan, std::move(p));
}

}  // namespace noonhouse
