// SPDX-License-Identifier: Apache-2.0
// Devices as they are switched: who calls them, what holds them back, what they need and draw, how they fail.
#include <algorithm>

#include "models/air/stirring.hpp"
#include "models/control/device.hpp"
#include "models/control/running_sum.hpp"
#include "models/properties/constants.hpp"
#include "tools/scenario/assembler.hpp"
#include "tools/scenario/supply_words.hpp"

namespace noonhouse {
namespace {
constexpr double kEddyShare = 0.1;      ///< size of eddies over the house's height; common practice, no source
constexpr double kJetSpeedShare = 0.9;  ///< C_v of a nozzle; common practice, no source

Heeds heeds_of(CallsHeeded heeded) {
  switch (heeded) {
    case CallsHeeded::all:
      return Heeds::all;
    case CallsHeeded::first:
      return Heeds::first;
    case CallsHeeded::any:
      break;
  }
  return Heeds::any;
}

}  // namespace

double line_flow_kg_s(const MistSpec& m) {
  return m.nozzles * kWaterKgPerM3 *
         nozzle_flow_m3_s(nozzle_constant(m.nozzle_flow_m3_s, m.rated_pressure_pa), m.pressure_pa);
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
    if (!sum.parts.empty()) add_agent<RunningSum>(std::move(sum));
}

/// One device in service: its agent, its part of the load, its failures.
void Assembler::add_device(const Sort& sort, const std::string& name, const SwitchingSpec& switching, Load load,
                           std::vector<Device::Need> needs, Device::Output position) {
  if (!plan_.uses(name)) return;
  Device::Parameters p;
  p.name = name;
  p.starts = sort.starts;
  p.stops = sort.stops;
  p.hand = hand_[name] = graph_.channel("hand on " + name, "1", 0.0);
  p.callers = callers_[name];
  p.needs = std::move(needs);
  p.outputs = {position};
  p.heeds = heeds_of(switching.heeds);
  p.graded = graded_.contains(name);
  p.forbids = forbids_[name];
  held_off_[name] = graph_.channel("held off by hand: " + name, "1", 0.0);
  p.forbids.push_back({held_off_[name], "by hand"});
  p.takes = ticks(switching.takes_s);
  p.fault = device_fault(name);
  p.stays_when_lacking = sort.stays;
  if (load.power_w > 0.0) loads_of_.push_back({position.channel, load.power_w, load.permit});
  const auto point = [&](FailureKind kind, DeviceFault fault, const char* words) {
    out_.fault_points.push_back({kind, name, p.fault, static_cast<double>(fault), 0.0, words});
  };
  point(FailureKind::stuck_off, sort.blown_off ? DeviceFault::taken_off : DeviceFault::stuck_off, sort.stuck_off);
  point(FailureKind::stuck_on, DeviceFault::stuck_on, sort.stuck_on);
  point(FailureKind::stuck_as_it_stands, DeviceFault::stuck_as_is, "is stuck as it stands");
  add_agent<Device>(std::move(p));
}

ChannelId Assembler::device_fault(const std::string& name) {
  const auto [at, fresh] = device_faults_.try_emplace(name);
  if (fresh) at->second = graph_.channel("fault of " + name, "1", 0.0);
  return at->second;
}

void Assembler::add_device_agents() {
  const auto power = [&](const std::string& device, const DrawSpec& draw) {
    const bool sheds = draw.sheds_at > spec_.power.cut_off;
    return Device::Need{power_permit_of(device, draw), sheds ? "its load is shed, the battery is low" : kBatteryCutOff,
                        sheds};
  };
  const auto load = [&](const std::string& device, double power_w, const DrawSpec& draw) {
    return power_w > 0.0 ? Load{power_w, power_permit_of(device, draw)} : Load{};
  };
  const auto water = [&](const std::string& device, const DrawSpec& draw) {
    const bool keeps = draw.keeps_back_m3 > spec_.tank.low_m3;
    return Device::Need{water_permit_of(device, draw),
                        keeps ? "the tank is down to what it leaves to other uses" : kPumpCutOut, keeps};
  };
  for (const auto& [name, o] : spec_.openings) {
    std::vector<Device::Need> needs;
    if (o.needs_power) needs.push_back({out_.power_permit, kBatteryCutOff});
    add_device({"opens", "shuts", "is stuck shut", "is stuck open", true}, name, o.switching, {}, std::move(needs),
               {position_channel(name, "opening"), 1.0, o.shut_share});
  }
  for (const auto& [name, f] : spec_.fans)
    add_device({"starts", "stops", "is dead", "is stuck on"}, name, f.switching, load(name, f.power_w, f.draw),
               {power(name, f.draw)}, {position_channel(name, "fan"), 1.0, 0.0});
  for (const auto& [name, m] : spec_.mist_lines)
    add_device({"starts", "stops", "is stuck off", "is stuck on"}, name, m.switching,
               load(name, m.pump_power_w.value_or(0.0), m.draw), {water(name, m.draw), power(name, m.draw)},
               {position_channel(name, "mist line"), 1.0, 0.0});
  for (const auto& [name, p] : spec_.pads)
    add_device({"is wetted", "dries", "is stuck off", "is stuck on"}, name, p.switching,
               load(name, p.pump_power_w, p.draw), {water(name, p.draw), power(name, p.draw)},
               {position_channel(name, "pad"), 1.0, 0.0});
  for (const auto& [name, d] : spec_.drip_lines) {
    std::vector<Device::Need> needs{water(name, d.draw)};
    if (d.pump_power_w > 0.0) needs.push_back(power(name, d.draw));
    add_device({"starts", "stops", "is stuck off", "is stuck on"}, name, d.switching,
               load(name, d.pump_power_w, d.draw), std::move(needs), {position_channel(name, "drip line"), 1.0, 0.0});
  }
  for (const auto& [name, s] : spec_.shades) {
    std::vector<Device::Need> needs;
    if (s.drive_power_w > 0.0) needs.push_back(power(name, s.draw));
    const bool loose = s.loose_kg_m2.has_value();
    const char* gone = loose ? "is blown off" : "is stuck drawn back";
    add_device({"is drawn", "is drawn back", gone, "is stuck drawn", true, loose}, name, s.switching,
               load(name, s.drive_power_w, s.draw), std::move(needs), {position_channel(name, "shade"), 1.0, 0.0});
  }
  add_stirring();
}

}  // namespace noonhouse
