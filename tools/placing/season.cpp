// SPDX-License-Identifier: Apache-2.0
#include "tools/placing/season.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>

#include "tools/compare/in_parallel.hpp"
#include "tools/placing/probe.hpp"
#include "tools/placing/watched_run.hpp"
#include "tools/units/nearest.hpp"

namespace noonhouse {
namespace {

constexpr Tick kLookedAtEvery = 15_min;
constexpr double kLeastDays = 330.0, kWholeYear = 360.0;
constexpr double kShareOfRun = 0.3;  ///< of all work, for the progress bar
constexpr double kWateredAt = 7.5 * 3600.0;

/// A group on trial: a few pots, as usual as they come (common practice, no source).
PlantGroupSpec trial_group() {
  PlantGroupSpec group;
  group.area_m2 = 0.25;
  group.pot_water_kg_m2 = 12.0;
  group.pot_dry_heat_j_m2_k = 40e3;
  group.pot_absorptance = 0.75;
  group.dry_at = 0.05;
  return group;
}

struct TriedKind {
  std::string name;
  PlantKindSpec kind;
};

/// The scenario's own kinds and those of the library, or the wanted ones of them.
std::vector<TriedKind> kinds_of(const PlanScenario& plan, const std::vector<std::string>& wanted) {
  std::vector<TriedKind> all;
  for (const auto& own : plan.spec.plant_kinds) all.push_back({own.name, own.value});
  for (const PlantKind& kind : plant_kinds())
    if (std::none_of(all.begin(), all.end(), [&](const TriedKind& k) { return k.name == kind.name; }))
      all.push_back({kind.name, library_kind(kind.name)});
  if (wanted.empty()) return all;
  std::vector<std::string> names;
  for (const TriedKind& kind : all) names.push_back(kind.name);
  std::vector<TriedKind> out;
  for (const std::string& name : wanted) {
    const auto found = std::find(names.begin(), names.end(), name);
    if (found == names.end())
      throw UserError(ErrorKind::unknown_name,
                      fmt::format("--kind: neither the library nor the scenario has a kind of plants \"{}\"{}; {}",
                                  name, did_you_mean(name, names), allowed_words(names)));
    out.push_back(all[static_cast<std::size_t>(found - names.begin())]);
  }
  return out;
}

void add_day(PlaceSeason& season, const DayFelt& day, int number, const PlantKindSpec& kind) {
  if (day.peak_k > season.hottest_k) {
    season.hottest_k = day.peak_k;
    season.hottest_day = number;
  }
  if (season.safe.never()) return;
  const bool hot = day.heat_dose_s >= kind.strain_after_s, dim = day.light_mol_m2 < kind.least_light_mol_m2;
  const bool bright = kind.most_light_mol_m2 && day.light_mol_m2 > *kind.most_light_mol_m2;
  season.hot_days += hot ? 1 : 0;
  season.dim_days += dim ? 1 : 0;
  season.bright_days += bright ? 1 : 0;
  season.good_days += hot || dim || bright ? 0 : 1;
}

PlaceSeason season_of(const PlaceFelt& felt, const PlantKindSpec& kind, const std::string& place, bool cyclic) {
  PlaceSeason out;
  out.place = place;
  const int days = static_cast<int>(felt.days.size());
  std::vector<bool> safe;
  for (const DayFelt& day : felt.days) safe.push_back(day.cold_dose_s < kind.cold_strain_after_s);
  out.safe = longest_stretch(safe, cyclic);
  out.coldest_k = 1e9;
  for (int d = 0; d < days; ++d) {
    const DayFelt& day = felt.days[static_cast<std::size_t>(d)];
    if (day.lowest_k < out.coldest_k) {
      out.coldest_k = day.lowest_k;
      out.coldest_day = d;
    }
    if (out.safe.never() || (d - out.safe.first_day + days) % days < out.safe.days) add_day(out, day, d, kind);
  }
  return out;
}

std::size_t best_of(const std::vector<PlaceSeason>& places) {
  const auto better = [](const PlaceSeason& a, const PlaceSeason& b) {
    if (a.too_low != b.too_low) return b.too_low;
    if (a.good_days != b.good_days) return a.good_days > b.good_days;
    return a.safe.days > b.safe.days;
  };
  return static_cast<std::size_t>(std::min_element(places.begin(), places.end(), better) - places.begin());
}

void note_outdoors(const RunRecord& record, SeasonAnswer& out) {
  for (const RecordSeries& series : record.series) {
    if (series.name != "outdoor_temperature") continue;
    out.coldest_outdoors_k = *std::min_element(series.values.begin(), series.values.end());
    out.hottest_outdoors_k = *std::max_element(series.values.begin(), series.values.end());
  }
}

}  // namespace

SafeStretch longest_stretch(const std::vector<bool>& safe, bool cyclic) {
  const int n = static_cast<int>(safe.size());
  if (n > 0 && std::all_of(safe.begin(), safe.end(), [](bool s) { return s; })) return {0, n, true};
  SafeStretch best;
  int length = 0;
  for (int i = 0; i < (cyclic ? 2 * n : n); ++i) {
    length = safe[static_cast<std::size_t>(i % n)] ? length + 1 : 0;
    if (length > best.days) best = {(i - length + 1) % n, length, false};
  }
  return best;
}

SeasonAnswer answer_season(const Scenario& scenario, const PlanScenario& plan, const SeasonQuestion& question) {
  const double days = plan.spec.run.length_s / 86400.0;
  if (days < kLeastDays)
    plan.places.fail(
        ErrorKind::does_not_fit, "run.length",
        fmt::format("a season needs a year of weather: at least {:.0f} d, and 365 d to go round", kLeastDays));
  const std::vector<TriedKind> kinds = kinds_of(plan, question.kinds);
  const auto tell = [&](double share) {
    if (question.progress) question.progress(share);
  };
  const WatchedRun run = watched_run(scenario, plan, kLookedAtEvery, [&](double share) { tell(kShareOfRun * share); });
  SeasonAnswer out{plan.spec.title, plan.name, plan.spec.run.start, static_cast<int>(days), 0.0, 0.0, {}};
  note_outdoors(run.record, out);
  const auto& places = run.climates.places;
  for (const TriedKind& kind : kinds)
    out.kinds.push_back(
        {kind.name, kind.kind.harm_below_k, kind.kind.harm_above_k, std::vector<PlaceSeason>(places.size()), 0});
  std::atomic<std::size_t> done{0};
  const std::size_t all = kinds.size() * places.size();
  in_parallel(
      all, question.threads,
      [&](std::size_t job) {
        const std::size_t k = job / places.size(), p = job % places.size();
        const PlaceFelt felt = feel_place(trial_group(), kinds[k].kind, places[p], run.climates, places[p].used_to_w_m2,
                                          {{kWateredAt}, 0.95});
        PlaceSeason season = season_of(felt, kinds[k].kind, places[p].place.name, days >= kWholeYear);
        season.too_low = !too_low(kinds[k].kind, places[p]).empty();
        out.kinds[k].places[p] = std::move(season);
        ++done;
      },
      [&] { tell(kShareOfRun + (1.0 - kShareOfRun) * static_cast<double>(done.load()) / static_cast<double>(all)); });
  for (KindSeason& kind : out.kinds) kind.best = best_of(kind.places);
  return out;
}

}  // namespace noonhouse
