// SPDX-License-Identifier: Apache-2.0
#include "tools/compare/supply_tally.hpp"

#include <algorithm>
#include <cmath>

#include "models/properties/water.hpp"
#include "sim/core/tick.hpp"
#include "tools/compare/carry_days.hpp"
#include "tools/compare/plan_cost.hpp"
#include "tools/scenario/each_draw.hpp"

namespace noonhouse {
namespace {

/// What the tank gives up in a day without rain: all use, and what evaporates.
FluxSum leaves_the_tank(const House& house) {
  FluxSum sum = water_used(house);
  sum.add(house, "tank evaporation", 0);
  return sum;
}

/// The levels at which the first of the plan's draws leaves off.
struct FirstLeavesOff {
  double content_m3, charge_share;
};

FirstLeavesOff first_leaves_off(const PlanScenario& plan) {
  FirstLeavesOff out{plan.spec.tank.low_m3, plan.spec.power.cut_off};
  each_draw(plan.spec, [&](const std::string&, const std::string& name, const DrawSpec& draw, bool takes_water) {
    if (!plan.uses(name)) return;
    if (takes_water) out.content_m3 = std::max(out.content_m3, draw.keeps_back_m3);
    out.charge_share = std::max(out.charge_share, draw.sheds_at);
  });
  for (const auto& visit : plan.spec.grower.visits)
    if (!visit.value.waters.empty()) out.content_m3 = std::max(out.content_m3, visit.value.keeps_back_m3);
  return out;
}

}  // namespace

SupplyTally::SupplyTally(const Assembly& assembly, const PlanScenario& plan)
    : assembly_(assembly),
      plan_(plan),
      water_(leaves_the_tank(assembly.plan.house)),
      loads_(loads_drawn(assembly.plan.house)) {}

void SupplyTally::sample(Tick when, std::span<const double> p, double weight_s) {
  lowest_tank_kg_ = std::min(lowest_tank_kg_, at(p, Input(assembly_.tank, 1)));
  const double charge = at(p, assembly_.battery);
  lowest_charge_j_ = std::min(lowest_charge_j_, charge);
  const double share = assembly_.charge_scale.usable([&](const Input& input) { return at(p, input); }).share_of(charge);
  if (share < lowest_share_) {
    lowest_share_ = share;
    lowest_share_s_ = seconds(when);
  }
  charge_.look(charge);
  if (when.ms > 0 && when.ms % kDay.ms == 0) {
    charge_.end_day();
    charge_.look(charge);
  }
  const double battery_k = at(p, assembly_.charge_scale.temperature);
  samples_s_ += weight_s;
  battery_sum_k_s_ += battery_k * weight_s;
  battery_peak_k_ = std::max(battery_peak_k_, battery_k);
  battery_lowest_k_ = std::min(battery_lowest_k_, battery_k);
  strongest_gust_m_s_ = std::max(strongest_gust_m_s_, at(p, assembly_.site.gust));
}

void SupplyTally::end_day(std::span<const double> carried) {
  water_.end_day(carried);
  loads_.end_day(carried);
}

void SupplyTally::put(RunRecord& record, const RunResult& result, const std::vector<LogEntry>& log) {
  end_day(result.state.carried);
  put_water(record.water, result);
  put_energy(record.energy, result);
  put_cost(record, result);
  for (const LogEntry& entry : log) {
    if (entry.kind != EventKind::failure) continue;
    double* first = entry.subject == "tank"      ? &record.water.first_dry_s
                    : entry.subject == "battery" ? &record.energy.first_cut_off_s
                                                 : nullptr;
    if (first != nullptr && std::isnan(*first)) *first = seconds(entry.when);
  }
}

void SupplyTally::put_water(WaterOutcome& w, const RunResult& result) const {
  const House& house = assembly_.plan.house;
  const TankSpec& tank = plan_.spec.tank;
  const auto carried = [&](const char* path, int flux) {
    return FluxSum().add(house, path, flux).of(result.state.carried);
  };
  w.capacity_kg = kWaterKgPerM3 * tank.capacity_m3;
  w.start_kg = amount(assembly_.tank, 1, house.initial_amounts);
  w.end_kg = amount(assembly_.tank, 1, result.state.amounts);
  w.lowest_kg = std::min(lowest_tank_kg_, w.end_kg);
  w.rain_caught_kg = carried("rain", 0);
  w.rain_lost_kg = carried("rain", 2) + carried("rain", 4);
  w.overflow_kg = carried("overflow", 0);
  w.evaporated_kg = carried("tank evaporation", 0);
  w.mist_evaporated_kg = carried("mist", 0);
  w.misted_kg =
      w.mist_evaporated_kg + carried("mist that lands", 0) + carried("wet pad", 3) - carried("back to the tank", 0);
  w.hand_watered_kg = carried("hand watering", 0);
  w.dripped_kg = carried("drip", 0);
  w.spilt_kg = carried("spilt from a line", 0);
  w.leaked_kg = carried("leak", 0);
  w.brought_kg = carried("refill", 0);
  for (const RefillParts& refill : assembly_.refills)
    w.deliveries += static_cast<int>(std::lround(result.channels[static_cast<std::size_t>(refill.deliveries.index)]));
  const DayUse use{water_.total() * kSecondsPerDay / plan_.spec.run.length_s, water_.heaviest()};
  TankSpec first_held_back = tank;  // the days end where the first of the draws has to leave off
  first_held_back.low_m3 = first_leaves_off(plan_).content_m3;
  const CarryDays left = tank_days(w.end_kg, first_held_back, use),
                  full = tank_days(w.capacity_kg, first_held_back, use);
  w.thirstiest_day_kg = use.heaviest;
  w.days_left = left.at_mean;
  w.days_left_thirsty = left.at_heaviest;
  w.days_full = full.at_mean;
  w.days_full_thirsty = full.at_heaviest;
  w.overflows_to = tank.overflows_to;
  w.storage_rule = kStorageRule;
}

void SupplyTally::put_energy(EnergyOutcome& e, const RunResult& result) const {
  const House& house = assembly_.plan.house;
  const PowerSpec& power = plan_.spec.power;
  const auto carried = [&](int flux, const char* path = "power") {
    return FluxSum().add(house, path, flux).of(result.state.carried);
  };
  e.capacity_j = power.battery_j;
  e.start_j = amount(assembly_.battery, 0, house.initial_amounts);
  e.end_j = amount(assembly_.battery, 0, result.state.amounts);
  e.lowest_j = std::min(lowest_charge_j_, e.end_j);
  e.lowest_share = lowest_share_;
  e.lowest_time_s = lowest_share_s_;
  const double charged = carried(1), gave = carried(2), lost = carried(3);
  e.panel_j = carried(0) + charged;
  e.loads_j = carried(0) + gave;
  e.self_discharge_j = carried(4);
  e.dead_cells_j = carried(0, "dead cells");
  e.losses_j = lost + e.self_discharge_j + e.dead_cells_j;
  // Of the losses, those of charging never were in the battery.
  e.full_cycles = (gave + lost - (1.0 - power.charge_efficiency) * charged) / power.battery_j;
  e.daily_depth = charge_.mean() / power.battery_j;
  e.mean_k = samples_s_ > 0.0 ? battery_sum_k_s_ / samples_s_ : battery_peak_k_;
  e.peak_k = battery_peak_k_;
  e.lowest_k = battery_lowest_k_;
  BatteryDay day;
  day.loads = {loads_.total() * kSecondsPerDay / plan_.spec.run.length_s, loads_.heaviest()};
  day.coldest_k = e.lowest_k;
  day.mean_k = e.mean_k;
  const ChannelId cells = assembly_.charge_scale.cells;
  if (cells.valid()) day.cells = result.channels[static_cast<std::size_t>(cells.index)];  // as the run leaves them
  PowerSpec first_shed = power;
  first_shed.cut_off = first_leaves_off(plan_).charge_share;
  const CarryDays left = battery_days(e.end_j, first_shed, day),
                  full = battery_days(day.cells * e.capacity_j, first_shed, day);
  e.heaviest_day_j = day.loads.heaviest;
  e.days_left = left.at_mean;
  e.days_left_heavy = left.at_heaviest;
  e.days_full = full.at_mean;
  e.days_full_heavy = full.at_heaviest;
}

void SupplyTally::put_cost(RunRecord& record, const RunResult& result) const {
  WaterBrought brought;
  brought.volume_m3 = record.water.brought_kg / kWaterKgPerM3;
  for (const RefillParts& refill : assembly_.refills)
    brought.visits_price += refill.price * result.channels[static_cast<std::size_t>(refill.deliveries.index)];
  record.cost = plan_cost(plan_, brought);
}

}  // namespace noonhouse
