// SPDX-License-Identifier: Apache-2.0
#include "tools/compare/comparison_json.hpp"

#include <cmath>

#include "tools/compare/comparison.hpp"
#include "tools/compare/heat_lines.hpp"
#include "tools/compare/work_heat.hpp"

namespace noonhouse {
namespace {

using Json = nlohmann::ordered_json;

Json number(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }

template <class Item, class Make>
Json list(const std::vector<Item>& items, Make make) {
  Json out = Json::array();
  for (const Item& item : items) out.push_back(make(item));
  return out;
}

Json tally_json(const PlanTally& t) {
  return {{"plants", t.plants},
          {"kept", t.kept},
          {"strained", t.strained},
          {"harmed", t.harmed},
          {"lost", t.lost},
          {"failures", t.failures},
          {"water_used_kg", number(t.water_used_kg)},
          {"energy_used_j", number(t.energy_used_j)},
          {"hours_beyond", number(t.hours_beyond)},
          {"cost_a_season", number(t.cost_a_season)}};
}

Json plant_json(const PlantOutcome& p) {
  return {{"name", p.name},
          {"kind", p.kind},
          {"place", p.place},
          {"bay", p.bay},
          {"height_m", number(p.height_m)},
          {"outcome", p.outcome},
          {"reason", p.reason},
          {"harm_above_k", number(p.harm_above_k)},
          {"lethal_above_k", number(p.lethal_above_k)},
          {"harm_below_k", number(p.harm_below_k)},
          {"hours_beyond", number(p.hours_beyond)},
          {"degree_hours_beyond_k_h", number(p.degree_hours_beyond)},
          {"longest_spell_h", number(p.longest_spell_h)},
          {"hours_lethal", number(p.hours_lethal)},
          {"peak_tissue_k", number(p.peak_tissue_k)},
          {"peak_tissue_time_s", number(p.peak_tissue_time_s)},
          {"lowest_tissue_k", number(p.lowest_tissue_k)},
          {"peak_air_k", number(p.peak_air_k)},
          {"hours_dry_air", number(p.hours_dry_air)},
          {"hours_wet", number(p.hours_wet)},
          {"daily_light_mol_m2", number(p.daily_light_mol_m2)},
          {"sunburn_share", number(p.sunburn_share)},
          {"peak_wall_k", number(p.peak_wall_k)},
          {"transpired_kg", number(p.transpired_kg)},
          {"day_length_h", number(p.day_length_h)},
          {"days_long_enough", p.days_long_enough},
          {"days_of_wrong_length", p.days_of_wrong_length}};
}

Json level_json(const LevelOutcome& l) {
  return {{"bay", l.bay},
          {"level", l.level},
          {"height_m", number(l.height_m)},
          {"peak_k", number(l.peak_k)},
          {"peak_time_s", number(l.peak_time_s)},
          {"mean_k", number(l.mean_k)}};
}

Json water_json(const WaterOutcome& w) {
  return {{"capacity_kg", number(w.capacity_kg)},
          {"start_kg", number(w.start_kg)},
          {"end_kg", number(w.end_kg)},
          {"lowest_kg", number(w.lowest_kg)},
          {"rain_caught_kg", number(w.rain_caught_kg)},
          {"overflow_kg", number(w.overflow_kg)},
          {"misted_kg", number(w.misted_kg)},
          {"hand_watered_kg", number(w.hand_watered_kg)},
          {"mist_evaporated_kg", number(w.mist_evaporated_kg)},
          {"days_left", number(w.days_left)},
          {"first_dry_s", number(w.first_dry_s)},
          {"rain_lost_kg", number(w.rain_lost_kg)},
          {"evaporated_kg", number(w.evaporated_kg)},
          {"dripped_kg", number(w.dripped_kg)},
          {"spilt_kg", number(w.spilt_kg)},
          {"leaked_kg", number(w.leaked_kg)},
          {"brought_kg", number(w.brought_kg)},
          {"deliveries", w.deliveries},
          {"thirstiest_day_kg", number(w.thirstiest_day_kg)},
          {"days_left_thirsty", number(w.days_left_thirsty)},
          {"days_full", number(w.days_full)},
          {"days_full_thirsty", number(w.days_full_thirsty)},
          {"overflows_to", w.overflows_to},
          {"storage_rule", w.storage_rule}};
}

Json energy_json(const EnergyOutcome& e) {
  return {{"capacity_j", number(e.capacity_j)},
          {"start_j", number(e.start_j)},
          {"end_j", number(e.end_j)},
          {"lowest_j", number(e.lowest_j)},
          {"lowest_share", number(e.lowest_share)},
          {"lowest_time_s", number(e.lowest_time_s)},
          {"panel_j", number(e.panel_j)},
          {"loads_j", number(e.loads_j)},
          {"losses_j", number(e.losses_j)},
          {"days_left", number(e.days_left)},
          {"first_cut_off_s", number(e.first_cut_off_s)},
          {"self_discharge_j", number(e.self_discharge_j)},
          {"dead_cells_j", number(e.dead_cells_j)},
          {"heaviest_day_j", number(e.heaviest_day_j)},
          {"days_left_heavy", number(e.days_left_heavy)},
          {"days_full", number(e.days_full)},
          {"days_full_heavy", number(e.days_full_heavy)},
          {"full_cycles", number(e.full_cycles)},
          {"daily_depth", number(e.daily_depth)},
          {"mean_k", number(e.mean_k)},
          {"peak_k", number(e.peak_k)},
          {"lowest_k", number(e.lowest_k)}};
}

/// Null where nothing is priced.
Json cost_json(const CostOutcome& c) {
  if (!c.known()) return nullptr;
  return {{"currency", c.currency},
          {"capital", number(c.capital)},
          {"per_season", number(c.per_season)},
          {"brought_per_season", number(c.brought)},  // the run's refills, scaled from the run to the season
          {"season_d", number(c.season_d)}};
}

Json work_heat_json(const WorkHeatOutcome& w) {
  return {{"bay", w.bay},
          {"unwise_h", number(w.unwise_h)},
          {"unwise_above_k", number(work_reference_k())},
          {"peak_k", number(w.peak_k)},
          {"peak_time_s", number(w.peak_time_s)}};
}

Json airing_json(const AiringOutcome& a) {
  return {{"mean_1_s", number(a.mean_1_s)},         {"least_1_s", number(a.least_1_s)},
          {"least_time_s", number(a.least_time_s)}, {"most_1_s", number(a.most_1_s)},
          {"most_time_s", number(a.most_time_s)},   {"hottest_1_s", number(a.hottest_1_s)}};
}

Json way_json(const WayOutcome& w) {
  return {{"name", w.name}, {"in_1_s", number(w.in_1_s)}, {"out_1_s", number(w.out_1_s)}};
}

Json failure_json(const FailureOutcome& f) {
  return {{"time_s", number(f.time_s)}, {"kind", f.kind}, {"subject", f.subject}, {"what", f.what}, {"chain", f.chain}};
}

Json device_json(const DeviceOutcome& d) {
  return {{"name", d.name}, {"starts", d.starts}, {"hours_on", number(d.hours_on)}};
}

Json closure_json(const ClosureOutcome& c) {
  return {{"energy_relative", number(c.energy_relative)},   {"water_relative", number(c.water_relative)},
          {"charge_relative", number(c.charge_relative)},   {"energy_crossed_j", number(c.energy_crossed_j)},
          {"water_crossed_kg", number(c.water_crossed_kg)}, {"charge_crossed_j", number(c.charge_crossed_j)}};
}

/// Sums over the run; null where the record has no hours.
Json heat_json(const RunRecord& r) {
  if (r.ledger.empty()) return nullptr;
  const HeatSum total = ledger_total(r);
  Json out{{"length_s", number(ledger_length_s(r))}, {"sun_j", number(total.sun_j)}};
  for (const HeatLineWords& words : kHeatLineWords) out[std::string(words.key) + "_j"] = number(total.of(words.line));
  return out;
}

Json plan_json(const RunRecord& r, const RankedPlan& place) {
  const Provenance& p = r.provenance;
  return {{"rank", place.rank},
          {"name", r.plan},
          {"about", r.about},
          {"tally", tally_json(place.tally)},
          {"plants", list(r.plants, plant_json)},
          {"levels", list(r.levels, level_json)},
          {"water", water_json(r.water)},
          {"energy", energy_json(r.energy)},
          {"cost", cost_json(r.cost)},
          {"airing", airing_json(r.airing)},
          {"ways", list(r.ways, way_json)},
          {"work_heat", list(r.work_heat, work_heat_json)},
          {"failures", list(r.failures, failure_json)},
          {"notes", r.notes},
          {"heat", heat_json(r)},
          {"closure", closure_json(r.closure)},
          {"devices", list(r.devices, device_json)},
          {"steps", {{"steps", r.counts.steps}, {"rejected", r.counts.rejected}, {"events", r.counts.events}}},
          {"provenance",
           {{"version", p.version},
            {"scenario_file", p.scenario_file},
            {"scenario_digest", p.scenario_digest},
            {"weather_digest", p.weather_digest},
            {"seed", p.seed}}}};
}

}  // namespace

nlohmann::ordered_json comparison_document(const std::vector<RunRecord>& records) {
  const std::vector<RankedPlan> ranked = rank_plans(records);
  const RunRecord& first = records[ranked.front().index];
  Json plans = Json::array();
  for (const RankedPlan& place : ranked) plans.push_back(plan_json(records[place.index], place));
  return {{"scenario", first.scenario},
          {"title", first.title},
          {"start", first.start},
          {"utc_offset", first.utc_offset},
          {"duration_s", number(first.duration_s)},
          {"rule", ranking_rule()},
          {"headline", headline(records, ranked)},
          {"warnings", comparison_warnings(records)},
          {"plans", plans}};
}

std::string compare_json(const std::vector<RunRecord>& records) {
  return comparison_document(records).dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace noonhouse
