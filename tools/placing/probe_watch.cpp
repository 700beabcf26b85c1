// SPDX-License-Identifier: Apache-2.0
#include "tools/placing/probe_watch.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "models/plants/dose.hpp"
#include "models/properties/irradiance.hpp"
#include "models/properties/psychrometrics.hpp"
#include "tools/scenario/plant_builder.hpp"

namespace noonhouse {
namespace {

constexpr double kNot = std::numeric_limits<double>::infinity();
constexpr double kWetShare = 0.05;  ///< of the film the tissue holds that counts as wet; common practice, no source

int gravity(const std::string& word) { return word == "lost" ? 3 : word == "harmed" ? 2 : word == "strained" ? 1 : 0; }

DayFelt fresh_day() {
  DayFelt day;
  day.lowest_k = 1e9;
  return day;
}

}  // namespace

ProbeWatch::ProbeWatch(const House& house, const PlantParts& plant, const PlantGroupSpec& group,
                       const PlaceClimate& place, const HouseClimates& climates)
    : house_(house),
      plant_(plant),
      climates_(climates),
      air_(climates.air_at(place, canopy_height_m(place.place, plant.limits))),
      next_(climates.every),
      day_(fresh_day()) {
  dry_kg_ = group.dry_at * group.pot_water_kg_m2 * group.area_m2;
  wet_kg_ = kWetShare * sides_of(plant.limits).sunlit_area * plant.limits.holds_film_kg_m2 * group.area_m2;
  felt_.lowest_k = 1e9;
  watch_hazards(plant.limits);
}

void ProbeWatch::watch(const std::string& what, NodeId dose, double strained_s, double harmed_s, double lost_s) {
  if (!dose.valid()) return;
  watched_.push_back({dose, strained_s});
  felt_.hazards.push_back({what, 0.0, harmed_s / strained_s, lost_s / strained_s});
}

void ProbeWatch::watch_hazards(const PlantKindSpec& kind) {
  for (const PlantMarks& marks : plant_marks(plant_))
    watch(marks.name, marks.dose, marks.at[0], marks.at[1], marks.at[2]);
  thirst_ = felt_.hazards.size();
  felt_.hazards.push_back(
      {"dry pots", 0.0, 1.0, kind.thirst_kills_after_s / std::max(60.0, kind.thirst_harms_after_s)});
  // Days with too little and too much light: their counts are added up as days close.
  const double days = std::max(1.0, std::round(kind.light_harms_after_s / 86400.0));
  for (const char* what : {"too little light", "too much light"})
    felt_.hazards.push_back({what, 0.0, days / std::max(1.0, std::floor((days + 2.0) / 3.0)), kNot});
}

void ProbeWatch::see_stretch(const Stretch& stretch) {
  for (; next_ <= stretch.end(); next_ = next_ + climates_.every) sample(stretch, next_);
}

void ProbeWatch::sample(const Stretch& stretch, Tick when) {
  const auto p = stretch.potentials_at(when);
  const PlantKindSpec& kind = plant_.limits;
  const double sunlit = at(p, plant_.tissue), shaded = at(p, plant_.shaded);
  const double hot = std::max(sunlit, shaded), cold = std::min(sunlit, shaded);
  const bool hot_side = hot - 293.15 > 293.15 - cold;  // the worse side of a day and of a night
  felt_.tissue_k.push_back(static_cast<float>(hot_side ? hot : cold));
  felt_.peak_wall_k = std::max(felt_.peak_wall_k, at(p, plant_.wall));
  const LayerMoment& here = air_[std::min(moment_++, air_.size() - 1)];
  if (hot > felt_.peak_k) {
    felt_.peak_k = hot;
    felt_.peak_s = seconds(when);
  }
  felt_.lowest_k = std::min(felt_.lowest_k, cold);
  if (hot > day_.peak_k) {
    day_.peak_k = hot;
    day_.peak_at_s = seconds(Tick{when.ms % kDay.ms});
  }
  day_.lowest_k = std::min(day_.lowest_k, cold);
  day_.peak_air_k = std::max(day_.peak_air_k, here.air_k);
  const double weight = when.ms > 0 ? seconds(climates_.every) : 0.0;
  if (hot > kind.harm_above_k) day_.hot_s += weight;
  if (cold < kind.harm_below_k) day_.cold_s += weight;
  day_.heat_dose_s += weight * thermal_dose_rate(hot - kind.harm_above_k, kind.heat_tenfold_k);
  night_cold_s_ += weight * thermal_dose_rate(kind.harm_below_k - cold, kind.cold_tenfold_k);
  const double deficit = vapour_pressure_deficit_pa(here.air_k, here.humidity_ratio, climates_.pressure_pa);
  if (kind.dry_air_above_pa && deficit > *kind.dry_air_above_pa) day_.dry_s += weight;
  if (at(p, Input(plant_.tissue, 1)) > wet_kg_) day_.wet_s += weight;
  if (when.ms % kDay.ms == kDay.ms / 2) {
    day_.cold_dose_s = night_cold_s_;
    night_cold_s_ = 0.0;
  }
  dry_s_ = at(p, Input(plant_.pot, 1)) < dry_kg_ ? dry_s_ + weight : 0.0;
  HazardFelt& thirst = felt_.hazards[thirst_];
  thirst.most = std::max(thirst.most, dry_s_ / std::max(60.0, kind.thirst_harms_after_s));
  for (std::size_t i = 0; i < watched_.size(); ++i)
    felt_.hazards[i].most = std::max(felt_.hazards[i].most, at(p, watched_[i].dose) / watched_[i].strained_s);
  light_now_ = at(p, plant_.doses.light_sum);
  lit_now_ = at(p, plant_.doses.day_sum);
  if (when.ms > 0 && when.ms % kDay.ms == 0) close_day();
}

void ProbeWatch::close_day() {
  day_.light_mol_m2 = par_from_global(light_now_ - light_before_);
  day_.lit_s = lit_now_ - lit_before_;
  light_before_ = light_now_;
  lit_before_ = lit_now_;
  felt_.days.push_back(day_);
  day_ = fresh_day();
}

void ProbeWatch::see_event(const LogEntry& entry) {
  if (entry.kind != EventKind::harm) return;
  const auto colon = entry.what.find(':');
  const std::string word = entry.what.substr(0, colon);
  if (gravity(word) <= gravity(felt_.outcome)) return;
  felt_.outcome = word;
  felt_.reason = colon == std::string::npos ? entry.what : entry.what.substr(colon + 2);
}

PlaceFelt ProbeWatch::finish() {
  const PlantKindSpec& kind = plant_.limits;
  const double strained_after = std::max(1.0, std::floor((std::round(kind.light_harms_after_s / 86400.0) + 2.0) / 3.0));
  double dim = 0.0, bright = 0.0;
  HazardFelt &dimmest = felt_.hazards[felt_.hazards.size() - 2], &brightest = felt_.hazards.back();
  for (const DayFelt& day : felt_.days) {
    dim = day.light_mol_m2 < kind.least_light_mol_m2 ? dim + 1.0 : std::max(0.0, dim - 1.0);
    bright = kind.most_light_mol_m2 && day.light_mol_m2 > *kind.most_light_mol_m2 ? bright + 1.0
                                                                                  : std::max(0.0, bright - 1.0);
    dimmest.most = std::max(dimmest.most, dim / strained_after);
    brightest.most = std::max(brightest.most, bright / strained_after);
  }
  felt_.harm = harm_points(felt_.hazards);
  return std::move(felt_);
}

}  // namespace noonhouse
