// SPDX-License-Identifier: Apache-2.0
// From tallies and the event log to outcomes.
#include <algorithm>
#include <set>

#include "models/properties/irradiance.hpp"
#include "sim/core/tick.hpp"
#include "tools/compare/comparison_words.hpp"
#include "tools/compare/run_recorder.hpp"

namespace noonhouse {
namespace {

/// The word a harm event begins with, and how grave it is.
int gravity(const std::string& word) {
  static const std::vector<std::string> kWords{"kept", "strained", "harmed", "lost"};
  const auto it = std::find(kWords.begin(), kWords.end(), word);
  return it == kWords.end() ? 0 : static_cast<int>(it - kWords.begin());
}

/// What the first flux of the exchange of that name carried.
double carried_by(const House& house, const RunResult& result, const std::string& name) {
  const auto exchange = house.find_exchange(name);
  if (!exchange) return 0.0;
  return result.state
      .carried[static_cast<std::size_t>(house.exchanges[static_cast<std::size_t>(exchange->index)].first_flux)];
}

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
    out.hours_beyond = tally.beyond_s / kSecondsPerHour;
    out.degree_hours_beyond = tally.degree_s / kSecondsPerHour;
    out.longest_spell_h = tally.longest_spell_s / kSecondsPerHour;
    out.hours_lethal = tally.lethal_s / kSecondsPerHour;
    out.peak_tissue_k = tally.peak_k;
    out.peak_tissue_time_s = tally.peak_s;
    out.lowest_tissue_k = tally.lowest_k;
    out.peak_air_k = tally.peak_air_k;
    out.hours_dry_air = tally.dry_s / kSecondsPerHour;
    out.hours_wet = tally.wet_s / kSecondsPerHour;
    const double days = std::max(samples_s_, 1.0) / 86400.0;
    out.daily_light_mol_m2 = par_from_global(tally.light_j_m2) / days;
    out.sunburn_share = tally.burnt_s / plant.limits.burn_after_s;
    out.peak_wall_k = tally.peak_wall_k;
    out.transpired_kg = carried_by(assembly_.plan.house, result, "transpiration of " + plant.name) +
                        carried_by(assembly_.plan.house, result, "transpiration of the shaded side of " + plant.name);
    out.day_length_h = tally.lit_s / kSecondsPerHour / std::max(1, tally.days);
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
