// SPDX-License-Identifier: Apache-2.0
// From tallies and the event log to outcomes.
#include <algorithm>
#include <cmath>
#include <set>

#include "models/properties/irradiance.hpp"
#include "tools/compare/comparison_words.hpp"
#include "tools/compare/run_recorder.hpp"

namespace noonhouse {
namespace {

constexpr double kHour = 3600.0;

/// The word a harm event begins with, and how grave it is.
int gravity(const std::string& word) {
  static const std::vector<std::string> kWords{"kept", "strained", "harmed", "lost"};
  const auto it = std::find(kWords.begin(), kWords.end(), word);
  return it == kWords.end() ? 0 : static_cast<int>(it - kWords.begin());
}

/// What all fluxes of exchanges on one path carried, of one quantity, added up with their sign.
double carried_on(const House& house, const RunResult& result, const std::string& path, int flux) {
  double sum = 0.0;
  for (const ExchangeInfo& exchange : house.exchanges)
    if (exchange.path == path)
      sum += result.state.carried[static_cast<std::size_t>(exchange.first_flux) + static_cast<std::size_t>(flux)];
  return sum;
}

/// What the first flux of the exchange of that name carried.
double carried_by(const House& house, const RunResult& result, const std::string& name) {
  const auto exchange = house.find_exchange(name);
  if (!exchange) return 0.0;
  return result.state
      .carried[static_cast<std::size_t>(house.exchanges[static_cast<std::size_t>(exchange->index)].first_flux)];
}

double days_from(double store, double use_a_day) { return use_a_day > 1e-9 ? store / use_a_day : kNotHappened; }

}  // namespace

void RunRecorder::put_plants(RunRecord& record, const RunResult& result) const {
  for (std::size_t i = 0; i < plants_.size(); ++i) {
    const PlantParts& plant = assembly_.plants[i];
    const PlantTally& tally = plants_[i];
    PlantOutcome out;
    out.name = plant.name;
    out.kind = plant.kind;
    out.place = plant.place;
    out.bay = plant.bay;
    out.height_m = plant.height_m;
    out.outcome = "kept";
    for (const LogEntry& entry : log_) {
      if (entry.kind != EventKind::harm || entry.subject != plant.name) continue;
      const auto colon = entry.what.find(':');
      const std::string word = entry.what.substr(0, colon);
      if (gravity(word) <= gravity(out.outcome)) continue;
      out.outcome = word;
      out.reason = colon == std::string::npos ? entry.what : entry.what.substr(colon + 2);
    }
    out.hours_beyond = tally.beyond_s / kHour;
    out.degree_hours_beyond = tally.degree_s / kHour;
    out.longest_spell_h = tally.longest_spell_s / kHour;
    out.hours_lethal = tally.lethal_s / kHour;
    out.peak_tissue_k = tally.peak_k;
    out.peak_tissue_time_s = tally.peak_s;
    out.lowest_tissue_k = tally.lowest_k;
    out.peak_air_k = tally.peak_air_k;
    out.hours_dry_air = tally.dry_s / kHour;
    out.hours_wet = tally.wet_s / kHour;
    const double days = std::max(samples_s_, 1.0) / 86400.0;
    out.daily_light_mol_m2 = par_from_global(tally.light_j_m2) / days;
    out.sunburn_share = tally.burnt_s / plant.limits.burn_after_s;
    out.peak_wall_k = tally.peak_wall_k;
    out.transpired_kg = carried_by(assembly_.plan.house, result, "transpiration of " + plant.name) +
                        carried_by(assembly_.plan.house, result, "transpiration of the shaded side of " + plant.name);
    out.day_length_h = tally.lit_s / kHour / std::max(1, tally.days);
    if (plant.limits.shortest_day_s || plant.limits.longest_day_s) {
      out.days_long_enough = tally.right_days;
      out.days_of_wrong_length = tally.days - tally.right_days;
    }
    out.harm_above_k = plant.limits.harm_above_k;
    out.lethal_above_k = plant.limits.lethal_above_k;
    out.harm_below_k = plant.limits.harm_below_k;
    record.plants.push_back(std::move(out));
  }
}

void RunRecorder::put_levels(RunRecord& record) const {
  std::size_t k = 0;
  for (std::size_t b = 0; b < assembly_.bays.size(); ++b)
    for (std::size_t i = 0; i < assembly_.bays[b].air.size(); ++i, ++k)
      record.levels.push_back({assembly_.bays[b].name, static_cast<int>(i) + 1,
                               assembly_.shape.bays[b].layers[i].middle_m(), levels_[k].peak_k, levels_[k].peak_s,
                               levels_[k].sum_k / std::max(samples_s_, 1.0)});
}

void RunRecorder::put_stores(RunRecord& record, const RunResult& result) const {
  const House& house = assembly_.plan.house;
  const auto amount = [&](NodeId node, int which, const std::vector<double>& amounts) {
    return amounts[static_cast<std::size_t>(house.position(End(node, which)))];
  };
  const TankSpec& tank = plan_.spec.tank;
  const double days = plan_.spec.run.length_s / 86400.0;
  WaterOutcome& w = record.water;
  w.capacity_kg = 1000.0 * tank.capacity_m3;
  w.start_kg = amount(assembly_.tank, 1, house.initial_amounts);
  w.end_kg = amount(assembly_.tank, 1, result.state.amounts);
  w.lowest_kg = std::min(lowest_tank_kg_, w.end_kg);
  w.rain_caught_kg = carried_on(house, result, "rain", 0);
  w.overflow_kg = carried_on(house, result, "overflow", 0);
  w.mist_evaporated_kg = carried_on(house, result, "mist", 0);
  w.misted_kg = w.mist_evaporated_kg + carried_on(house, result, "mist that lands", 0) +
                carried_on(house, result, "wet pad", 3) - carried_on(house, result, "back to the tank", 0);
  w.hand_watered_kg = carried_on(house, result, "hand watering", 0);
  w.days_left = days_from(std::max(0.0, w.end_kg - 1000.0 * tank.low_m3), (w.misted_kg + w.hand_watered_kg) / days);
  const PowerSpec& power = plan_.spec.power;
  EnergyOutcome& e = record.energy;
  e.capacity_j = power.battery_j;
  e.start_j = amount(assembly_.battery, 0, house.initial_amounts);
  e.end_j = amount(assembly_.battery, 0, result.state.amounts);
  e.lowest_j = std::min(lowest_charge_j_, e.end_j);
  e.lowest_time_s = lowest_charge_s_;
  const double direct = carried_on(house, result, "power", 0);
  e.panel_j = direct + carried_on(house, result, "power", 1);
  e.loads_j = direct + carried_on(house, result, "power", 2);
  e.losses_j = carried_on(house, result, "power", 3);
  e.days_left = days_from(std::max(0.0, e.end_j - power.cut_off * power.battery_j) * power.discharge_efficiency,
                          e.loads_j / days);
  for (const LogEntry& entry : log_) {
    if (entry.kind != EventKind::failure) continue;
    if (entry.subject == "tank" && std::isnan(w.first_dry_s)) w.first_dry_s = seconds(entry.when);
    if (entry.subject == "battery" && std::isnan(e.first_cut_off_s)) e.first_cut_off_s = seconds(entry.when);
  }
}

void RunRecorder::put_events(RunRecord& record) const {
  for (const LogEntry& entry : log_)
    record.events.push_back({entry.id, entry.cause, seconds(entry.when), std::string(event_kind_name(entry.kind)),
                             entry.subject, entry.what});
}

/// Failures and harm that no other failure at the same instant already tells, each with its chain of causes.
void RunRecorder::put_failures(RunRecord& record) const {
  const auto counts = [](const LogEntry& e) { return e.kind == EventKind::failure || e.kind == EventKind::harm; };
  std::set<EventId> told;
  for (const LogEntry& entry : log_)
    if (counts(entry) && entry.cause != kNoEvent && log_[static_cast<std::size_t>(entry.cause)].when == entry.when)
      told.insert(entry.cause);
  for (const LogEntry& entry : log_) {
    if (!counts(entry) || told.contains(entry.id)) continue;
    FailureOutcome out{seconds(entry.when),
                       std::string(event_kind_name(entry.kind)),
                       entry.subject,
                       entry.subject + " " + entry.what,
                       {}};
    for (EventId id = entry.id; id != kNoEvent; id = log_[static_cast<std::size_t>(id)].cause) {
      const LogEntry& link = log_[static_cast<std::size_t>(id)];
      const bool same_time = link.when == entry.when;
      out.chain.push_back(link.subject + " " + link.what +
                          (same_time ? std::string() : ", " + clock_text(record, seconds(link.when))));
    }
    record.failures.push_back(std::move(out));
  }
}

}  // namespace noonhouse
