// SPDX-License-Identifier: Apache-2.0
#include "tools/compare/run_notes.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cstdlib>
#include <iterator>
#include <string_view>

#include "models/hazard/wind_load.hpp"
#include "models/power/battery_kind.hpp"
#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

constexpr double kWorthTelling_kg = 0.5;

bool covers(const ShadeSpec& shade, const Facet& facet) {
  return shade.over == ShadeOver::all || (shade.over == ShadeOver::roof) == facet.roof();
}

double cover_area_m2(const ShadeSpec& shade, const HouseShape& shape) {
  double sum = 0.0;
  for (const Facet& facet : shape.facets)
    if (covers(shade, facet)) sum += facet.area_m2;
  return sum;
}

/// What of the water past a gutter's tank its filter turned away [kg].
double turned_away_kg(const PlanScenario& plan, const std::string& gutter, double stored_kg) {
  for (const auto& item : plan.spec.gutters)
    if (item.name == gutter && item.value.filter_passes > 0.0)
      return stored_kg * (1.0 - item.value.filter_passes) / item.value.filter_passes;
  return 0.0;
}

constexpr std::string_view kHailOver = "hail is over: ";
constexpr std::size_t kMostPartsNamed = 3;

/// What broke at one minute for one cause.
struct Damage {
  std::int64_t minute = 0;
  bool hail = false;
  std::string what;  ///< as the first of them said it
  std::vector<std::string> parts;
  std::vector<double> percent;  ///< of each part, where hail broke it
};

bool is_damage(const LogEntry& entry) {
  const auto says = [&](std::string_view words) { return entry.what.find(words) != std::string::npos; };
  return says(kHailOver) || says("is blown off: ") || says("is torn open by the wind");
}

/// 63 of "hail is over: 63 % of it is broken".
double percent_broken(const std::string& what) { return std::strtod(what.c_str() + kHailOver.size(), nullptr); }

std::string damage_words(const Damage& damage) {
  if (damage.hail && damage.parts.size() > kMostPartsNamed) {
    const auto [least, most] = std::minmax_element(damage.percent.begin(), damage.percent.end());
    return fmt::format("hail is over: {}{:.0f} % of each of {} parts of the cover is broken",
                       *least == *most ? "" : fmt::format("{:.0f} to ", *least), *most, damage.parts.size());
  }
  return fmt::format("{}", fmt::join(damage.parts, "; "));
}

}  // namespace

std::string battery_note(const EnergyOutcome& energy, const PowerSpec& power, double run_s) {
  const BatteryKind* kind = find_battery_kind(power.battery_kind);
  NOON_ASSERT(kind != nullptr);
  BatteryUse use;
  use.full_cycles = energy.full_cycles;
  use.season_days = run_s / 86400.0;
  use.mean_depth = energy.daily_depth;
  use.mean_k = energy.mean_k;
  use.peak_k = energy.peak_k;
  return ageing_note(*kind, use);
}

std::vector<std::string> ballast_notes(const PlanScenario& plan, const HouseShape& shape, double strongest_gust_m_s) {
  std::vector<std::string> out;
  for (const auto& [name, shade] : plan.spec.shades) {
    if (!shade.loose_kg_m2 || !plan.uses(name)) continue;
    BallastNeed need;
    need.area_m2 = cover_area_m2(shade, shape);
    need.net_coefficient = -shade.uplift;
    need.mass_kg_m2 = *shade.loose_kg_m2;
    const auto at_gust = [&](double gust_m_s) {
      need.gust_m_s = gust_m_s;
      return ballast_kg(need);
    };
    out.push_back(fmt::format(
        "\"{}\" lies loose: gusts of {:.1f} m/s, the run's strongest, call for {:.0f} kg of ballast on it, gusts of "
        "{:.0f} m/s for {:.0f} kg, to hold {:g} times the wind's lift; it has {:.0f} kg. The gust at which it lifts in "
        "a run has no such factor.",
        name, strongest_gust_m_s, at_gust(strongest_gust_m_s), kGustToPlanFor_m_s, at_gust(kGustToPlanFor_m_s),
        need.safety_factor, shade.ballast_kg));
  }
  if (!out.empty()) out.emplace_back(kWindCaution);
  return out;
}

std::vector<std::string> vent_notes(const PlanScenario& plan, double strongest_gust_m_s) {
  std::vector<std::string> out;
  for (const auto& [name, opening] : plan.spec.openings)
    if (opening.withstands_m_s && plan.uses(name) && strongest_gust_m_s > *opening.withstands_m_s)
      out.push_back(fmt::format("\"{}\" bears gusts of {:.1f} m/s when open; the run's strongest had {:.1f} m/s.", name,
                                *opening.withstands_m_s, strongest_gust_m_s));
  return out;
}

std::vector<std::string> gutter_notes(const PlanScenario& plan, const House& house, const RunResult& result) {
  constexpr std::string_view kBefore = "rain by the ";
  std::vector<std::string> out;
  for (const ExchangeInfo& exchange : house.exchanges) {
    if (exchange.path != "rain" || exchange.fluxes < 5 || !exchange.name.starts_with(kBefore)) continue;
    const std::string gutter = exchange.name.substr(kBefore.size());
    const double* carried = result.state.carried.data() + exchange.first_flux;
    const double past_kg = carried[4] - turned_away_kg(plan, gutter, carried[0]);
    if (past_kg < kWorthTelling_kg) continue;
    out.push_back(fmt::format("The {} could not take all the rain: {:.0f} L went past it.", gutter, past_kg));
  }
  return out;
}

std::vector<std::string> damage_notes(const std::vector<LogEntry>& log) {
  std::vector<Damage> all;
  for (const LogEntry& entry : log) {
    if (!is_damage(entry)) continue;
    const std::int64_t minute = entry.when.ms / (1_min).ms;
    const bool hail = entry.what.starts_with(kHailOver);
    const auto like = [&](const Damage& d) { return d.minute == minute && (hail ? d.hail : d.what == entry.what); };
    const auto found = std::find_if(all.begin(), all.end(), like);
    Damage& damage = found != all.end() ? *found : all.emplace_back(Damage{minute, hail, entry.what, {}, {}});
    damage.parts.push_back(fmt::format("{}{} {}", entry.subject, hail ? "," : "", entry.what));
    if (hail) damage.percent.push_back(percent_broken(entry.what));
  }
  std::vector<std::string> out;
  for (const Damage& damage : all)
    out.push_back(fmt::format("Broken on day {} at {:02}:{:02}: {}.", damage.minute / 1440 + 1, damage.minute / 60 % 24,
                              damage.minute % 60, damage_words(damage)));
  if (std::any_of(all.begin(), all.end(), [](const Damage& d) { return d.hail; }))
    out.emplace_back("Air changes told of the whole run mix the time before the hail with that after it.");
  if (!all.empty()) out.emplace_back("The repair of what broke is in no price here.");
  return out;
}

std::vector<std::string> run_notes(const Assembly& assembly, const PlanScenario& plan, const RunResult& result,
                                   const EnergyOutcome& energy, double strongest_gust_m_s) {
  std::vector<std::string> out{battery_note(energy, plan.spec.power, plan.spec.run.length_s)};
  const auto add = [&](std::vector<std::string> more) {
    out.insert(out.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
  };
  add(ballast_notes(plan, assembly.shape, strongest_gust_m_s));
  add(vent_notes(plan, strongest_gust_m_s));
  add(gutter_notes(plan, assembly.plan.house, result));
  return out;
}

}  // namespace noonhouse
