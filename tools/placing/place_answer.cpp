// SPDX-License-Identifier: Apache-2.0
#include "tools/placing/place_answer.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <cmath>
#include <limits>

#include "models/properties/irradiance.hpp"
#include "models/properties/psychrometrics.hpp"
#include "sim/core/index.hpp"
#include "tools/compare/in_parallel.hpp"
#include "tools/compare/plan_run.hpp"
#include "tools/placing/place_reason.hpp"
#include "tools/placing/watched_run.hpp"
#include "tools/units/nearest.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {
namespace {

constexpr Tick kEvery = 2_min;
constexpr double kCountsAsSun =
    120.0;  ///< [W/m2]; sunshine by WMO No. 8, Guide to Instruments, ch. 8 (of the beam there)
constexpr double kShareOfRuns = 0.3;  ///< of all work that one run of the house is, for the progress bar

int climate_of(const PlantGroupSpec& group, const HouseClimates& climates, const ScenarioSpec& spec) {
  std::vector<StandingPlace> places;
  for (const PlaceClimate& climate : climates.places) places.push_back(climate.place);
  return place_of(group, places, spec);
}

PlaceShown shown(const PlaceClimate& climate, const HouseClimates& climates) {
  const Tick every = climates.every;
  const LayerSeries& air = climates.air_at(climate, climate.place.height_m + kPotHeight);
  PlaceShown out;
  out.name = climate.place.name;
  out.bay = climate.bay;
  out.height_m = climate.place.height_m;
  out.room_m2 = climate.room_m2;
  double sum_k = 0.0, light = 0.0, sun = 0.0, peak = 0.0, by_day = 0.0;
  const std::size_t a_day = static_cast<std::size_t>(kDay.ms / every.ms);
  for (std::size_t k = 0; k < climate.moments.size(); ++k) {
    const PlaceMoment& now = climate.moments[k];
    sum_k += air[k].air_k;
    peak = std::max(peak, air[k].air_k);
    out.peak_air_k = std::max(out.peak_air_k, air[k].air_k);
    by_day += now.light_w_m2 * seconds(every);
    if (now.direct_w_m2 > kCountsAsSun) sun += seconds(every);
    if (k == 0 || k % a_day != 0) continue;
    out.peak_air_by_day_k.push_back(peak);
    out.light_by_day_mol_m2.push_back(par_from_global(by_day));
    light += by_day;
    peak = by_day = 0.0;
  }
  const double days = std::max(1.0, static_cast<double>(out.light_by_day_mol_m2.size()));
  out.mean_air_k = sum_k / static_cast<double>(climate.moments.size());
  out.light_mol_m2 = par_from_global(light) / days;
  out.direct_h = sun / 3600.0 / days;
  return out;
}

/// The day on which the air of the house is hottest; a run shorter than a day has only the first.
std::size_t hottest_day(const HouseClimates& climates) {
  const std::size_t a_day = static_cast<std::size_t>(kDay.ms / climates.every.ms);
  std::size_t day = 0;
  double most = 0.0;
  for (const auto& bay : climates.air)
    for (const LayerSeries& layer : bay)
      for (std::size_t k = 0; k + 1 < layer.size(); ++k)
        if (layer[k].air_k > most) {
          most = layer[k].air_k;
          day = k / a_day;
        }
  return day;
}

/// A place's hours on a day.
void put_hours(const PlaceClimate& climate, const HouseClimates& climates, std::size_t day, PlaceShown& out) {
  const LayerSeries& air = climates.air_at(climate, climate.place.height_m + kPotHeight);
  const auto an_hour = static_cast<std::size_t>((1_h).ms / climates.every.ms);
  for (std::size_t hour = 0; hour < 24; ++hour) {
    const std::size_t from = (24 * day + hour) * an_hour;
    if (from + an_hour > air.size()) return;
    double sum_k = 0.0, deficit = 0.0, light = 0.0;
    for (std::size_t k = from; k < from + an_hour; ++k) {
      sum_k += air[k].air_k;
      deficit += vapour_pressure_deficit_pa(air[k].air_k, air[k].humidity_ratio, climates.pressure_pa);
      light += climate.moments[k].light_w_m2;
    }
    const double share = 1.0 / static_cast<double>(an_hour);
    out.hour_air_k.push_back(share * sum_k);
    out.hour_deficit_pa.push_back(share * deficit);
    out.hour_par_mol_m2_s.push_back(par_from_global(share * light));
  }
}

/// Times of day at which a group's pots are filled: the grower's visits, and drip lines by their clocks.
ProbeWatering watering_of(const std::string& group, const PlanScenario& plan) {
  const auto holds = [&](const std::vector<std::string>& names, const std::string& name) {
    return std::find(names.begin(), names.end(), name) != names.end();
  };
  ProbeWatering out;
  out.fill_share = plan.spec.grower.pours_to;
  for (const auto& visit : plan.spec.grower.visits)
    if (holds(visit.value.waters, group)) out.visits_s.push_back(visit.value.at_s);
  for (const auto& line : plan.spec.drip_lines)
    for (const auto& timer : plan.spec.timers)
      if (plan.uses(line.name) && plan.uses(timer.name) && holds(line.value.waters, group) &&
          holds(timer.value.drives, line.name))
        out.visits_s.push_back(timer.value.from_s);
  return out;
}

bool is_to_stay(const std::string& group, const PlantGroupSpec& spec, const PlaceQuestion& question) {
  return !spec.may_move || std::find(question.keep.begin(), question.keep.end(), group) != question.keep.end();
}

void require_known(const std::vector<std::string>& groups, const PlanScenario& plan) {
  std::vector<std::string> known;
  for (const auto& group : plan.spec.plants) known.push_back(group.name);
  for (const std::string& name : groups)
    if (std::find(known.begin(), known.end(), name) == known.end())
      throw UserError(ErrorKind::unknown_name, fmt::format("--keep: the scenario has no group of plants \"{}\"{}; {}",
                                                           name, did_you_mean(name, known), allowed_words(known)));
}

GroupShown group_shown(const PlanScenario& plan, const PlaceQuestion& question, const WatchedRun& now, std::size_t g) {
  const auto& spec = plan.spec.plants[g];
  const PlantKindSpec& kind = kind_of(spec.value, plan.spec);
  GroupShown group;
  group.name = spec.name;
  group.kind = spec.value.kind;
  group.harm_above_k = kind.harm_above_k;
  group.harm_below_k = kind.harm_below_k;
  group.least_light_mol_m2 = kind.least_light_mol_m2;
  group.stands_on = climate_of(spec.value, now.climates, plan.spec);
  for (const PlaceClimate& climate : now.climates.places) group.cannot.push_back(too_low(kind, climate));
  group.cannot[at(group.stands_on)].clear();  // it does stand there
  group.before = group.after = now.record.plants[g];
  group.stays = is_to_stay(spec.name, spec.value, question);
  return group;
}

void try_everywhere(const PlanScenario& plan, const HouseClimates& climates, const PlaceQuestion& question,
                    PlaceAnswer& answer) {
  const std::size_t places = climates.places.size(), all = places * answer.groups.size();
  for (GroupShown& group : answer.groups) group.felt.resize(places);
  std::atomic<std::size_t> done{0};
  in_parallel(
      all, question.threads,
      [&](std::size_t job) {
        const std::size_t g = job / places, p = job % places;
        GroupShown& group = answer.groups[g];
        const auto& spec = plan.spec.plants[g];
        const double used_to =
            spec.value.used_to_direct_w_m2.value_or(climates.places[at(group.stands_on)].used_to_w_m2);
        group.felt[p] = feel_place(spec.value, kind_of(spec.value, plan.spec), climates.places[p], climates, used_to,
                                   watering_of(spec.name, plan));
        ++done;
      },
      [&] {
        const double share = static_cast<double>(done.load()) / static_cast<double>(std::max<std::size_t>(all, 1));
        if (question.progress) question.progress(kShareOfRuns + (1.0 - 2.0 * kShareOfRuns) * share);
      });
}

StandingProblem problem_of(const PlanScenario& plan, const PlaceQuestion& question, const PlaceAnswer& answer) {
  StandingProblem problem;
  problem.most_moves = question.most_moves;
  for (const PlaceShown& place : answer.places) problem.places.push_back({place.name, place.room_m2});
  for (std::size_t g = 0; g < answer.groups.size(); ++g) {
    const GroupShown& group = answer.groups[g];
    const PlantGroupSpec& spec = plan.spec.plants[g].value;
    problem.groups.push_back({group.name, spec.area_m2, group.stands_on, group.stays, {}});
    std::vector<StandingHarm> row;
    for (std::size_t p = 0; p < answer.places.size(); ++p) {
      const bool can = group.cannot[p].empty() || static_cast<int>(p) == group.stands_on;
      row.push_back({can ? group.felt[p].harm : std::numeric_limits<double>::infinity(), group.cannot[p]});
    }
    problem.harm.push_back(std::move(row));
  }
  return problem;
}

/// The plan with its groups where they should stand.
PlanScenario rearranged(const PlanScenario& plan, const HouseClimates& climates, const std::vector<int>& places) {
  PlanScenario out = plan;
  for (std::size_t g = 0; g < places.size(); ++g) {
    const StandingPlace& to = climates.places[at(places[g])].place;
    PlantGroupSpec& group = out.spec.plants[g].value;
    // What it is used to goes with it.
    if (!group.used_to_direct_w_m2)
      group.used_to_direct_w_m2 = climates.places[at(climate_of(group, climates, plan.spec))].used_to_w_m2;
    group.under = to.of == StandingPlace::Of::under;
    group.place = to.of == StandingPlace::Of::floor ? plan.spec.house.bays[at(to.bay)].name
                                                    : plan.spec.benches[at(to.bench)].name;
  }
  return out;
}

}  // namespace

PlaceAnswer answer_place(const Scenario& scenario, const PlanScenario& plan, const PlaceQuestion& question) {
  require_known(question.keep, plan);
  const auto tell = [&](double share) {
    if (question.progress) question.progress(share);
  };
  tell(0.0);
  const WatchedRun now = watched_run(scenario, plan, kEvery, {});
  tell(kShareOfRuns);
  PlaceAnswer answer;
  answer.house = plan.spec.title;
  answer.plan = plan.name;
  answer.start = now.record.start;
  answer.length_s = plan.spec.run.length_s;
  answer.every_s = seconds(kEvery);
  answer.hottest_day = hottest_day(now.climates);
  for (const PlaceClimate& climate : now.climates.places) {
    answer.places.push_back(shown(climate, now.climates));
    put_hours(climate, now.climates, answer.hottest_day, answer.places.back());
  }
  for (std::size_t g = 0; g < plan.spec.plants.size(); ++g)
    answer.groups.push_back(group_shown(plan, question, now, g));
  answer.water_before = answer.water_after = now.record.water;
  try_everywhere(plan, now.climates, question, answer);
  answer.problem = problem_of(plan, question, answer);
  answer.standing = plan_standing(answer.problem);
  if (const auto* standing = std::get_if<StandingPlan>(&answer.standing)) {
    for (std::size_t g = 0; g < answer.groups.size(); ++g) answer.groups[g].should_stand_on = standing->place[g];
    if (standing->moves > 0) {
      const PlanScenario moved = rearranged(plan, now.climates, standing->place);
      const WeatherSeries weather = weather_of(scenario, moved);
      const RunRecord then = run_plan(scenario, moved, weather, site_table(moved, weather));
      for (std::size_t g = 0; g < answer.groups.size(); ++g) answer.groups[g].after = then.plants[g];
      answer.water_after = then.water;
    }
  }
  for (GroupShown& group : answer.groups) group.why = place_reason(group, answer);
  tell(1.0);
  return answer;
}

}  // namespace noonhouse
