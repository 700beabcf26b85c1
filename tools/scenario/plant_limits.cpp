// SPDX-License-Identifier: Apache-2.0
// What a plant group bears: its doses, and the watches over them.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "models/plants/day_watch.hpp"
#include "models/plants/dose.hpp"
#include "models/plants/plant_watch.hpp"
#include "models/properties/constants.hpp"
#include "sim/core/tick.hpp"
#include "tools/scenario/plant_builder.hpp"

namespace noonhouse {
namespace {
constexpr double kDoseUnit = 0.001;          ///< of the dose that strains: what the error norm calls one
constexpr double kTemperatureEdge = 1.0;     ///< width of a spell's rounding [K]
constexpr double kDeficitEdge = 100.0;       ///< [Pa]
constexpr double kWetFilm = 0.05;            ///< of the film held that counts as wet; common practice, no source
constexpr double kDryAgain = 2.0 * 3600.0;   ///< in which dried leaves forget half of a wet spell; common practice
constexpr double kAirAgain = 12.0 * 3600.0;  ///< in which half a spell of dry or damp air is forgotten; the same
constexpr double kFarBeyond = 20.0;          ///< a dose ends at so many times the last mark: later by 3 % there
constexpr double kJoulesPerUnit = 1e4;       ///< of light received [J/m2]

std::string degrees(double kelvin) { return fmt::format("{:.0f} degC", kelvin - kZeroCelsius); }
std::string as_much(const char* what, double limit_k) {
  return fmt::format("{}, in all as harmful as % at {}", what, degrees(limit_k));
}

/// Dose at the harm limit that kills: what lost_after at the lethal limit comes to.
double lethal_dose_s(double lost_after_s, double beyond_k, double tenfold_k) {
  return lost_after_s * std::pow(10.0, beyond_k / tenfold_k);
}
}  // namespace

NodeId PlantBuilder::dose(const std::string& name, double start, double unit) {
  from_start_.push_back(graph_.node(name, Reading{}, {start}, {unit}));
  return from_start_.back();
}

void PlantBuilder::add_doses(const PlantGroupSpec& group, PlantParts& plant) {
  const PlantKindSpec& kind = plant.limits;
  const auto thermal = [&](const std::string& what, bool heat, double limit_k, double tenfold_k, double most_s,
                           const Input& first, const Input& second, double first_share = -1.0) {
    const double strain_s = heat ? kind.strain_after_s : kind.cold_strain_after_s;
    const NodeId node = dose(what + " borne by " + plant.name, 0.0, kDoseUnit * strain_s);
    graph_.exchange(what + " of " + plant.name, "instruments",
                    ThermalDose{limit_k, tenfold_k, heat, {kind.recovers_in_s, kFarBeyond * most_s}, first_share},
                    {first, second, node}, {{{s_.instruments, node}}});
    return node;
  };
  const double lost_hot =
      lethal_dose_s(kind.lost_after_s, kind.lethal_above_k - kind.harm_above_k, kind.heat_tenfold_k);
  const double lost_cold =
      lethal_dose_s(kind.lost_after_s, kind.harm_below_k - kind.lethal_below_k, kind.cold_tenfold_k);
  plant.doses.heat = thermal("heat", true, kind.harm_above_k, kind.heat_tenfold_k,
                             std::max(kind.harm_after_s, lost_hot), plant.tissue, plant.shaded);
  plant.doses.cold = thermal("cold", false, kind.harm_below_k, kind.cold_tenfold_k,
                             std::max(kind.cold_harm_after_s, lost_cold), plant.tissue, plant.shaded);
  plant.doses.hot_roots = thermal("heat at the roots", true, kind.roots_harm_above_k, kind.heat_tenfold_k,
                                  kind.harm_after_s, plant.wall, plant.pot, kWallOfRoots);
  add_sunburn(group, plant);
  add_spells(group, plant);
}

void PlantBuilder::add_sunburn(const PlantGroupSpec& group, PlantParts& plant) {
  const PlantKindSpec& kind = plant.limits;
  const double used_to = group.used_to_direct_w_m2.value_or(s_.used_to_w_m2);
  plant.doses.used_to = dose("direct sun that " + plant.name + " are used to", used_to, 2.0);
  graph_.exchange("habit of light of " + plant.name, "instruments", LightHabit{}, {s_.direct, plant.doses.used_to},
                  {{{s_.instruments, plant.doses.used_to}}});
  plant.doses.sunburn = dose("sunburn borne by " + plant.name, 0.0, kDoseUnit * kind.burn_after_s / 3.0);
  graph_.exchange("sunburn of " + plant.name, "instruments",
                  SunburnDose{kind.burns_above_k,
                              kind.heat_tenfold_k,
                              kind.bears_direct_w_m2,
                              kind.burn_light_w_m2,
                              {kind.recovers_in_s, kFarBeyond * kind.burn_after_s}},
                  {plant.tissue, s_.direct, plant.doses.used_to, plant.doses.sunburn},
                  {{{s_.instruments, plant.doses.sunburn}}});
  plant.doses.light_sum = dose("light received by " + plant.name, 0.0, kJoulesPerUnit);
  plant.doses.day_sum = dose("time with light for " + plant.name, 0.0, 60.0);
  graph_.exchange("light received by " + plant.name, "instruments", LightSum{}, {s_.light},
                  {{{s_.instruments, plant.doses.light_sum}, {s_.instruments, plant.doses.day_sum}}});
}

void PlantBuilder::add_spells(const PlantGroupSpec& group, PlantParts& plant) {
  const PlantKindSpec& kind = plant.limits;
  const auto spell = [&](const std::string& what, double harms_after_s, double half_life_s, double limit, double width,
                         bool above) {
    const NodeId node = dose(what + " borne by " + plant.name, 0.0, kDoseUnit * harms_after_s);
    return std::pair(node, SpellOf{limit, width, above, half_life_s, kFarBeyond * harms_after_s});
  };
  const auto of_value = [&](const std::string& what, const std::pair<NodeId, SpellOf>& it, const Input& value) {
    graph_.exchange(what + " of " + plant.name, "instruments", ValueSpell{it.second}, {value, it.first},
                    {{{s_.instruments, it.first}}});
    return it.first;
  };
  const auto of_air = [&](const std::string& what, const std::pair<NodeId, SpellOf>& it) {
    graph_.exchange(what + " of " + plant.name, "instruments", DeficitSpell{it.second, s_.pressure_pa},
                    {s_.air, s_.vapour, it.first}, {{{s_.instruments, it.first}}});
    return it.first;
  };
  if (kind.dry_air_above_pa)
    plant.doses.dry_air = of_air(
        "dry air", spell("dry air", kind.dry_air_harms_after_s, kAirAgain, *kind.dry_air_above_pa, kDeficitEdge, true));
  if (kind.damp_air_below_pa)
    plant.doses.damp_air = of_air("damp air", spell("damp air", kind.damp_air_harms_after_s, kAirAgain,
                                                    *kind.damp_air_below_pa, kDeficitEdge, false));
  if (kind.air_harm_above_k)
    plant.doses.hot_air = of_value(
        "hot air",
        spell("hot air", kind.air_harms_after_s, kind.recovers_in_s, *kind.air_harm_above_k, kTemperatureEdge, true),
        s_.air);
  if (kind.air_harm_below_k)
    plant.doses.cold_air = of_value(
        "cold air",
        spell("cold air", kind.air_harms_after_s, kind.recovers_in_s, *kind.air_harm_below_k, kTemperatureEdge, false),
        s_.air);
  if (!kind.wet_harms_after_s) return;
  const double wet_kg = kWetFilm * sides_of(kind).sunlit_area * kind.holds_film_kg_m2 * group.area_m2;
  plant.doses.wet =
      of_value("free water", spell("free water", *kind.wet_harms_after_s, kDryAgain, wet_kg, wet_kg, true),
               Input(plant.tissue, 1));
}

namespace {

using Cause = PlantMarks::Cause;

std::array<double, 3> strained_at_half(double harms_after_s) {
  return {0.5 * harms_after_s, harms_after_s, Hazard::kNever};
}

/// What the tissue and the roots themselves bear.
std::vector<PlantMarks> tissue_marks(const PlantParts& plant) {
  const PlantKindSpec& kind = plant.limits;
  const PlantDoses& doses = plant.doses;
  const double lost_hot =
      lethal_dose_s(kind.lost_after_s, kind.lethal_above_k - kind.harm_above_k, kind.heat_tenfold_k);
  const double lost_cold =
      lethal_dose_s(kind.lost_after_s, kind.harm_below_k - kind.lethal_below_k, kind.cold_tenfold_k);
  return {{"heat",
           as_much("heat", kind.harm_above_k),
           doses.heat,
           {kind.strain_after_s, kind.harm_after_s, lost_hot},
           {as_much("heat", kind.lethal_above_k), kind.lost_after_s},
           plant.tissue,
           Cause::heat},
          {"cold",
           as_much("cold", kind.harm_below_k),
           doses.cold,
           {kind.cold_strain_after_s, kind.cold_harm_after_s, lost_cold},
           {as_much("cold", kind.lethal_below_k), kind.lost_after_s},
           plant.tissue,
           Cause::cold},
          {"hot roots",
           as_much("hot roots", kind.roots_harm_above_k),
           doses.hot_roots,
           {kind.strain_after_s, kind.harm_after_s, Hazard::kNever},
           {},
           plant.wall,
           Cause::heat},
          {"sunburn",
           "sunburn, in all as harmful as % of burning sun",
           doses.sunburn,
           {kind.burn_after_s / 3.0, kind.burn_after_s, Hazard::kNever},
           {},
           plant.tissue,
           Cause::sun}};
}

}  // namespace

std::vector<PlantMarks> plant_marks(const PlantParts& plant) {
  const PlantKindSpec& kind = plant.limits;
  const PlantDoses& doses = plant.doses;
  std::vector<PlantMarks> out = tissue_marks(plant);
  const auto spell = [&](const char* name, const std::string& words, NodeId dose, double harms_after_s,
                         const Input& temperature, Cause cause) {
    if (dose.valid())
      out.push_back({name, words + " for % in all", dose, strained_at_half(harms_after_s), {}, temperature, cause});
  };
  const double never = Hazard::kNever;
  spell("hot air", "air above " + degrees(kind.air_harm_above_k.value_or(0.0)), doses.hot_air, kind.air_harms_after_s,
        {}, Cause::heat);
  spell("cold air", "air below " + degrees(kind.air_harm_below_k.value_or(0.0)), doses.cold_air, kind.air_harms_after_s,
        {}, Cause::cold);
  spell("dry air", "dry air", doses.dry_air, kind.dry_air_harms_after_s, {}, Cause::dry);
  spell("damp air", "damp air", doses.damp_air, kind.damp_air_harms_after_s, {}, Cause::damp);
  spell("free water", "free water on it", doses.wet, kind.wet_harms_after_s.value_or(never), plant.tissue, Cause::wet);
  return out;
}

namespace {

DayWatch::Parameters daily_light_of(const PlantParts& plant) {
  const PlantKindSpec& kind = plant.limits;
  DayWatch::Parameters days;
  days.name = plant.name;
  days.light_sum = plant.doses.light_sum;
  days.mol_per_j = kParShare * kParPerJoule;
  days.least_j_m2 = kind.least_light_mol_m2 / days.mol_per_j;
  days.most_j_m2 = kind.most_light_mol_m2.value_or(1e9) / days.mol_per_j;
  days.harmed_after_days = std::max(1, static_cast<int>(std::lround(kind.light_harms_after_s / kSecondsPerDay)));
  return days;
}

/// Why it can come to that although no device has failed.
const char* otherwise(PlantMarks::Cause cause, bool cooled) {
  switch (cause) {
    case PlantMarks::Cause::heat:
      return cooled ? "got too hot though no device has failed: what is in service cools too little"
                    : "got too hot: nothing in this plan cools the house";
    case PlantMarks::Cause::cold:
      return "got too cold: nothing heats the house";
    case PlantMarks::Cause::sun:
      return "stood in more direct sun than this group was used to";
    case PlantMarks::Cause::dry:
      return "stood in air that was too dry";
    case PlantMarks::Cause::damp:
      return "stood in air that stayed damp";
    case PlantMarks::Cause::wet:
      return "stayed wet for too long";
  }
  return "";
}

/// Whose temperature is told with it.
const char* temperature_of(const PlantMarks& marks, const PlantParts& plant) {
  if (!marks.temperature.node.valid()) return "air";
  return marks.temperature.node == plant.wall ? "pots' walls" : "tissue";
}

}  // namespace

std::vector<std::unique_ptr<AgentPlan>> plant_agents(const PlantParts& plant, const Input& air,
                                                     const std::vector<std::string>& coolers) {
  PlantWatch::Parameters p;
  p.name = plant.name;
  for (const PlantMarks& marks : plant_marks(plant)) {
    // Cold, damp and wet are nobody's failure: nothing heats or dries the house.
    const bool by_coolers = marks.cause == Cause::heat || marks.cause == Cause::sun || marks.cause == Cause::dry;
    const bool of_air = !marks.temperature.node.valid();
    p.hazards.push_back({marks.words, marks.dose, marks.at, marks.when_lost, of_air ? air : marks.temperature,
                         by_coolers ? coolers : std::vector<std::string>{}, otherwise(marks.cause, !coolers.empty()),
                         temperature_of(marks, plant)});
  }
  std::vector<std::unique_ptr<AgentPlan>> agents;
  agents.push_back(std::make_unique<PlanOf<PlantWatch>>(std::move(p)));
  agents.push_back(std::make_unique<PlanOf<DayWatch>>(daily_light_of(plant)));
  return agents;
}

PotWatch::Parameters pot_watch_of(const PlantParts& plant, const PlantGroupSpec& group) {
  PotWatch::Parameters p;
  p.name = plant.name;
  p.pot_water = Input(plant.pot, 1);
  p.dry_below_kg = group.dry_at * group.pot_water_kg_m2 * group.area_m2;
  p.harmed_after = ticks(plant.limits.thirst_harms_after_s);
  p.lost_after = ticks(plant.limits.thirst_kills_after_s);
  return p;
}

}  // namespace noonhouse
