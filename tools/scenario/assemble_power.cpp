// SPDX-License-Identifier: Apache-2.0
// Panel, battery and loads, and who guards them.
#include <fmt/format.h>

#include "models/control/running_sum.hpp"
#include "models/power/battery.hpp"
#include "models/power/battery_guard.hpp"
#include "models/power/battery_kind.hpp"
#include "models/power/cell_loss.hpp"
#include "models/power/panel.hpp"
#include "tools/scenario/assembler.hpp"

namespace noonhouse {
namespace {
constexpr double kBatteryHeight = 0.1;    ///< of its middle above the floor [m]; common practice, no source
constexpr double kBatteryVolts = 12.8;    ///< over the panel's best 17.5 V with a switching control; from memory
constexpr double kPanelBestVolts = 17.5;  ///< of a panel for 12 V batteries, warm; from memory
}  // namespace

double controller_efficiency(const PowerSpec& p) {
  return p.charge_control == ChargeControl::tracking ? kTrackingControllerEfficiency
                                                     : switching_controller_efficiency(kBatteryVolts, kPanelBestVolts);
}

void Assembler::add_power() {
  const PowerSpec& p = spec_.power;
  const BatteryKind& kind = *find_battery_kind(p.battery_kind);
  out_.battery = graph_.node("battery", ChargeStore{}, {p.battery_start * p.battery_j}, {1e-4 * p.battery_j});
  const Input air = p.battery_stands == "outdoors"
                        ? Input(out_.site.outdoor)
                        : Input(air_at(out_.shape.bay_index(p.battery_stands), kBatteryHeight));
  cells_ = graph_.channel("working cells of the battery", "1", 1.0);
  uncovered_ = graph_.channel("uncovered share of the panel", "1", 1.0);
  out_.charge_scale = {p.battery_j, kind.cold(), air, cells_};
  BatteryBus bus = battery_bus(kind, p.battery_j, controller_efficiency(p));
  bus.charge_efficiency = p.charge_efficiency;
  bus.discharge_efficiency = p.discharge_efficiency;
  graph_.exchange("panel, battery and loads", "power", bus,
                  {out_.battery, Input(out_.site.panel), Input(out_.load), air, Input(cells_), Input(uncovered_)},
                  {{{panel_energy_, loads_},
                    {panel_energy_, out_.battery},
                    {out_.battery, loads_},
                    {out_.battery, losses_},
                    {out_.battery, losses_}}});
  lost_with_cells_ = graph_.exchange("charge lost with dead cells", "dead cells", LostWithCells{}, {out_.battery},
                                     {{{out_.battery, graph_.account("dead cells", Quantity::charge)}}});
}

/// The permit of a device that draws power: the cut-off of all loads, or a level at which it is shed before. None for
/// one that is not in service: a level that nothing hangs on would speak of loads that nobody sheds.
ChannelId Assembler::power_permit_of(const std::string& device, const DrawSpec& draw) {
  if (!plan_.uses(device)) return {};
  if (draw.sheds_at <= spec_.power.cut_off) return out_.power_permit;
  const auto [at, fresh] = power_levels_.try_emplace(draw.sheds_at);
  if (fresh) at->second = graph_.channel(fmt::format("loads may draw above {:.4g} %", 100.0 * at->first), "1", 1.0);
  return at->second;
}

/// A channel above nothing while the charge is at least at a share of what can be used; it comes back 5 % above.
ChannelId Assembler::charge_above(double share) {
  const auto [at, fresh] = charge_signs_.try_emplace(share);
  if (fresh) at->second = graph_.channel(fmt::format("charge is above {:.4g} %", 100.0 * share), "1", 1.0);
  return at->second;
}

void Assembler::add_battery_agents() {
  const PowerSpec& p = spec_.power;
  const ChannelId lost = graph_.channel("charge lost with dead cells", "J", 0.0);
  add_agent<CellLoss>(CellLoss::Parameters{"battery", out_.battery, cells_, lost_with_cells_, lost});
  BatteryGuard::Parameters guard;
  guard.name = "battery";
  guard.charge = out_.battery;
  guard.capacity_j = p.battery_j;
  for (auto level = power_levels_.rbegin(); level != power_levels_.rend(); ++level)
    guard.levels.push_back({level->second, level->first, std::min(kFillsTo, level->first + kShedGap),
                            fmt::format("what is shed at {:.4g} %", 100.0 * level->first)});
  for (const auto& [share, above] : charge_signs_)
    guard.levels.push_back({above, share, share + kRuleChargeGap, "", BatteryGuard::Act::tells});
  guard.levels.push_back({out_.power_permit, p.cut_off, p.reconnect, "all loads", BatteryGuard::Act::cuts_off});
  guard.cold = out_.charge_scale.cold;
  guard.temperature = out_.charge_scale.temperature;
  guard.cells = cells_;
  guard.lost_with_cells = lost;
  guard.drained_by = {"panel", "battery"};
  for (const auto& [name, fault] : spec_.faults)
    if (fault.of == "panel" || fault.of == "battery") guard.drained_by.push_back(name);
  add_agent<BatteryGuard>(std::move(guard));
  out_.fault_points.push_back({FailureKind::cell_dead, "battery", cells_, 0.25, 1.0, "loses cells"});
  out_.fault_points.push_back({FailureKind::panel_covered, "panel", uncovered_, 0.0, 1.0, "is covered"});
}

/// The electrical load: devices as they run, pumps, what is always on.
void Assembler::add_loads() {
  const PowerSpec& p = spec_.power;
  RunningSum::Parameters loads{
      "electrical loads", {}, p.standby_w + p.inverter_standby_w, out_.power_permit, out_.load};
  for (const auto& [running, watts, permit] : loads_of_)
    loads.parts.push_back({running, watts / p.inverter_efficiency, permit});
  add_agent<RunningSum>(std::move(loads));
}

}  // namespace noonhouse
