// SPDX-License-Identifier: Apache-2.0
#include "tools/compare/run_recorder.hpp"

#include <algorithm>

#include "models/properties/constants.hpp"
#include "models/properties/irradiance.hpp"
#include "models/properties/psychrometrics.hpp"
#include "tools/compare/run_notes.hpp"
#include "tools/compare/run_series.hpp"
#include "tools/units/clock_text.hpp"

namespace noonhouse {
namespace {
constexpr Tick kSampleEvery = 1_min;
/// Between looks at the streams of air, whose pressures have to be settled each time.
constexpr Tick kAirEvery = 5_min;
constexpr Tick kWorkHeatEvery = 10_min;
constexpr double kWetShare = 0.05;  ///< of the film the tissue holds that counts as wet; common practice, no source
}  // namespace

RunRecorder::RunRecorder(const Assembly& assembly, const PlanScenario& plan)
    : assembly_(assembly),
      plan_(plan),
      every_(ticks(plan.spec.run.record_every_s)),
      next_record_(every_),
      next_sample_(kSampleEvery),
      plants_(assembly.plants.size()),
      levels_(assembly.bays.size() * assembly.bays.front().air.size()),
      air_(assembly),
      supply_(assembly, plan),
      work_heat_(assembly, plan),
      device_on_(assembly.devices.size(), false) {
  for (PlannedSeries& planned : planned_series(assembly)) {
    series_.push_back(std::move(planned.series));
    sources_.push_back(std::move(planned.sources));
    made_.push_back(std::move(planned.made));
  }
  for (const DeviceParts& device : assembly.devices) devices_.push_back({device.name, 0, 0.0});
}

void RunRecorder::see_start(const Stretch& stretch) {
  const auto p = stretch.potentials_at(stretch.begin());
  record(stretch.begin(), p);
  sample(stretch.begin(), p, 0.0);
  count_devices(stretch, p);
}

void RunRecorder::see_stretch(const Stretch& stretch) {
  while (next_sample_ <= stretch.end() || next_record_ <= stretch.end()) {
    const Tick when = std::min(next_sample_, next_record_);
    const auto p = stretch.potentials_at(when);
    if (when == next_record_) {
      record(when, p);
      next_record_ = next_record_ + every_;
    }
    if (when == next_sample_) {
      sample(when, p, seconds(kSampleEvery));
      if (when.ms % kDay.ms == 0) supply_.end_day(stretch.carried_at(when));
      next_sample_ = next_sample_ + kSampleEvery;
    }
  }
  count_devices(stretch, stretch.potentials_at(stretch.end()));
}

void RunRecorder::record(Tick when, std::span<const double> p) {
  time_s_.push_back(seconds(when));
  const ValueOf value = [&](const Input& input) { return at(p, input); };
  for (std::size_t i = 0; i < series_.size(); ++i) {
    for (const Input& source : sources_[i]) series_[i].values.push_back(value(source));
    if (made_[i]) series_[i].values.push_back(made_[i](value));
  }
}

/// Positions hold between events, so a whole stretch counts with the position at its end. What runs by degrees counts
/// by its share, and starts from rest; vents count as open above one half.
void RunRecorder::count_devices(const Stretch& stretch, std::span<const double> p) {
  for (std::size_t i = 0; i < devices_.size(); ++i) {
    const double position = at(p, assembly_.devices[i].running);
    const bool vent = assembly_.devices[i].sort == "opening";
    const bool on = vent ? position > 0.5 : position > 0.0;
    if (on && !device_on_[i]) ++devices_[i].starts;
    if (on) devices_[i].hours_on += (vent ? 1.0 : position) * seconds(stretch.end() - stretch.begin()) / 3600.0;
    device_on_[i] = on;
  }
}

void RunRecorder::sample(Tick when, std::span<const double> p, double weight_s) {
  const double time_s = seconds(when);
  samples_s_ += weight_s;
  for (std::size_t i = 0; i < plants_.size(); ++i) {
    sample_plant(i, time_s, p, weight_s);
    if (when.ms > 0 && when.ms % kDay.ms == 0) close_day(i, p);
  }
  std::size_t k = 0;
  double hottest_k = 0.0;
  for (const BayParts& bay : assembly_.bays)
    for (NodeId layer : bay.air) {
      LevelTally& tally = levels_[k++];
      const double air = at(p, layer);
      tally.sum_k += air * weight_s;
      hottest_k = std::max(hottest_k, air);
      if (air > tally.peak_k) {
        tally.peak_k = air;
        tally.peak_s = time_s;
      }
    }
  if (when.ms % kAirEvery.ms == 0) air_.sample(time_s, p, weight_s > 0.0 ? seconds(kAirEvery) : 0.0, hottest_k);
  if (when.ms % kWorkHeatEvery.ms == 0) work_heat_.sample(when, p, weight_s > 0.0 ? seconds(kWorkHeatEvery) : 0.0);
  supply_.sample(when, p, weight_s);
}

void RunRecorder::sample_plant(std::size_t i, double time_s, std::span<const double> p, double weight_s) {
  const PlantParts& plant = assembly_.plants[i];
  const PlantKindSpec& kind = plant.limits;
  PlantTally& tally = plants_[i];
  const double tissue = at(p, plant.tissue);
  const NodeId layer =
      assembly_.bays[static_cast<std::size_t>(plant.bay_index)].air[static_cast<std::size_t>(plant.layer)];
  const double air = at(p, layer), humidity = at(p, Input(layer, 1));
  const double roots = kWallOfRoots * at(p, plant.wall) + (1.0 - kWallOfRoots) * at(p, plant.pot);
  const bool beyond = tissue > kind.harm_above_k || tissue < kind.harm_below_k || roots > kind.roots_harm_above_k;
  tally.spell_s = beyond ? tally.spell_s + weight_s : 0.0;
  tally.longest_spell_s = std::max(tally.longest_spell_s, tally.spell_s);
  if (beyond) tally.beyond_s += weight_s;
  tally.degree_s += std::max(0.0, tissue - kind.harm_above_k) * weight_s;
  if (tissue > kind.lethal_above_k || tissue < kind.lethal_below_k) tally.lethal_s += weight_s;
  if (tissue > tally.peak_k) {
    tally.peak_k = tissue;
    tally.peak_s = time_s;
  }
  tally.lowest_k = std::min(tally.lowest_k, tissue);
  tally.peak_air_k = std::max(tally.peak_air_k, air);
  if (kind.dry_air_above_pa &&
      vapour_pressure_deficit_pa(air, humidity, assembly_.pressure_pa) > *kind.dry_air_above_pa)
    tally.dry_s += weight_s;
  const auto& groups = plan_.spec.plants;
  const double held = kind.holds_film_kg_m2 * groups[i].value.area_m2;
  if (at(p, Input(plant.tissue, 1)) > kWetShare * held) tally.wet_s += weight_s;
  tally.light_j_m2 += at(p, plant.light) * weight_s;
  tally.burnt_s = std::max(tally.burnt_s, at(p, plant.doses.sunburn));
  tally.peak_wall_k = std::max(tally.peak_wall_k, at(p, plant.wall));
}

/// The length of the day that ends, against what the kind wants.
void RunRecorder::close_day(std::size_t i, std::span<const double> p) {
  const PlantKindSpec& kind = assembly_.plants[i].limits;
  PlantTally& tally = plants_[i];
  const double lit = at(p, assembly_.plants[i].doses.day_sum), day = lit - tally.lit_before_s;
  tally.lit_before_s = lit;
  tally.lit_s += day;
  ++tally.days;
  if (day >= kind.shortest_day_s.value_or(0.0) && day <= kind.longest_day_s.value_or(86400.0)) ++tally.right_days;
}

void RunRecorder::put_site(RunRecord& out) const {
  out.start = format_date(plan_.spec.run.start) + " 00:00:00";
  out.utc_offset = format_utc_offset(plan_.spec.site.utc_offset_s);
  out.latitude_deg = plan_.spec.site.latitude_rad / kRadiansPerDegree;
  out.longitude_deg = plan_.spec.site.longitude_rad / kRadiansPerDegree;
  out.altitude_m = plan_.spec.site.altitude_m;
}

RunRecord RunRecorder::finish(const RunResult& result) {
  RunRecord out;
  out.plan = plan_.name;
  out.about = plan_.about;
  out.title = plan_.spec.title;
  out.duration_s = plan_.spec.run.length_s;
  put_site(out);
  out.time_s = std::move(time_s_);
  out.axes = record_axes(assembly_);
  out.series = std::move(series_);
  put_events(out);
  put_plants(out, result);
  put_levels(out);
  for (std::size_t i = 0; i < devices_.size(); ++i)
    if (assembly_.devices[i].in_service) out.devices.push_back(devices_[i]);
  supply_.put(out, result, log_);
  air_.put(out);
  work_heat_.put(out);
  out.notes = run_notes(assembly_, plan_, result, out.energy, supply_.strongest_gust_m_s());
  const auto damage = damage_notes(log_);
  out.notes.insert(out.notes.begin(), damage.begin(), damage.end());
  put_failures(out);
  put_balances(out, assembly_.plan.house, result);
  out.counts = {result.steps, result.rejected, result.events};
  out.cautions = assembly_.cautions;
  return out;
}

}  // namespace noonhouse
