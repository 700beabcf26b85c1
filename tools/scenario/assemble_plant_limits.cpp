// SPDX-License-Identifier: Apache-2.0
// What a plant group bears: its doses, and the watches over them.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "models/plants/day_watch.hpp"
#include "models/plants/dose.hpp"
#include "models/plants/plant_watch.hpp"
#include "models/plants/pot_watch.hpp"
#include "models/properties/constants.hpp"
#include "tools/scenario/assembler.hpp"

namespace noonhouse {
namespace {
constexpr double kDay_s = 86400.0;
constexpr double kDoseUnit = 0.001;          ///< of the dose that strains: what the error norm calls one
constexpr double kTemperatureEdge = 1.0;     ///< width of a spell's rounding [K]
constexpr double kDeficitEdge = 100.0;       ///< [Pa]
constexpr double kWetFilm = 0.05;            ///< of the film held that counts as wet; common practice, no source
constexpr double kDryAgain = 2.0 * 3600.0;   ///< in which dried leaves forget half of a wet spell; common practice
constexpr double kAirAgain = 12.0 * 3600.0;  ///< in which half a spell of dry or damp air is forgotten; the same
constexpr double kFarBeyond = 2.0;           ///< a dose ends at so many times the last mark
constexpr double kJoulesPerUnit = 1e4;       ///< of light received [J/m2]
std::size_t at(int i) { return static_cast<std::size_t>(i); }

std::string degrees(double kelvin) { return fmt::format("{:.0f} degC", kelvin - kZeroCelsius); }
std::string as_much(const char* what, double limit_k) {
  return fmt::format("{}, as much as % at {} does", what, degrees(limit_k));
}

/// Dose at the harm limit that kills: what lost_after at the lethal limit comes to.
double lethal_dose_s(double lost_after_s, double beyond_k, double tenfold_k) {
  return lost_after_s * std::pow(10.0, beyond_k / tenfold_k);
}

DayWatch::Parameters daily_light_of(const PlantParts& plant) {
  const PlantKindSpec& kind = plant.limits;
  DayWatch::Parameters days;
  days.name = plant.name;
  days.light_sum = plant.doses.light_sum;
  days.mol_per_j = kParShare * kParPerJoule;
  days.least_j_m2 = kind.least_light_mol_m2 / days.mol_per_j;
  days.most_j_m2 = kind.most_light_mol_m2.value_or(1e9) / days.mol_per_j;
  days.harmed_after_days = std::max(1, static_cast<int>(std::lround(kind.light_harms_after_s / kDay_s)));
  return days;
}
}  // namespace

NodeId Assembler::dose(const std::string& name, double start, double unit) {
  out_.not_warmed_up.push_back(graph_.node(name, Reading{}, {start}, {unit}));
  return out_.not_warmed_up.back();
}

/// Mean over the first day of the direct sun on a place, all cloths away [W/m2].
double Assembler::first_day_direct(int place) const {
  const auto a_day = std::min<std::size_t>(at(static_cast<int>(kDay.ms / table_->spacing().ms)),
                                           at(static_cast<int>(ticks(spec_.run.length_s).ms / table_->spacing().ms)));
  double sum = 0.0;
  for (std::size_t k = 0; k < a_day; ++k) sum += table_->sunlight(k, 0)[table_->row().direct(at(place))];
  return a_day > 0 ? sum / static_cast<double>(a_day) : 0.0;
}

void Assembler::add_doses(const PlantGroupSpec& group, PlantParts& plant) {
  const PlantKindSpec& kind = plant.limits;
  const auto thermal = [&](const std::string& what, bool heat, double limit_k, double tenfold_k, double most_s,
                           const Input& first, const Input& second) {
    const NodeId node = dose(what + " borne by " + plant.name, 0.0, kDoseUnit * kind.strain_after_s);
    graph_.exchange(what + " of " + plant.name, "instruments",
                    ThermalDose{limit_k, tenfold_k, heat, {kind.recovers_in_s, kFarBeyond * most_s}},
                    {first, second, node}, {{{instruments_, node}}});
    return node;
  };
  const double lost_hot =
      lethal_dose_s(kind.lost_after_s, kind.lethal_above_k - kind.harm_above_k, kind.heat_tenfold_k);
  const double lost_cold =
      lethal_dose_s(kind.lost_after_s, kind.harm_below_k - kind.lethal_below_k, kind.cold_tenfold_k);
  plant.doses.heat = thermal("heat", true, kind.harm_above_k, kind.heat_tenfold_k,
                             std::max(kind.harm_after_s, lost_hot), plant.tissue, plant.shaded);
  plant.doses.cold = thermal("cold", false, kind.harm_below_k, kind.cold_tenfold_k,
                             std::max(kind.harm_after_s, lost_cold), plant.tissue, plant.shaded);
  plant.doses.hot_roots = thermal("heat at the roots", true, kind.roots_harm_above_k, kind.heat_tenfold_k,
                                  kind.harm_after_s, plant.wall, plant.pot);
  add_sunburn(group, plant);
  add_spells(group, plant);
}

void Assembler::add_sunburn(const PlantGroupSpec& group, PlantParts& plant) {
  const PlantKindSpec& kind = plant.limits;
  const ChannelId direct = out_.light[at(plant.place_index)].direct;
  const double used_to = group.used_to_direct_w_m2.value_or(first_day_direct(plant.place_index));
  plant.doses.used_to = dose("direct sun that " + plant.name + " are used to", used_to, 2.0);
  graph_.exchange("habit of light of " + plant.name, "instruments", LightHabit{}, {direct, plant.doses.used_to},
                  {{{instruments_, plant.doses.used_to}}});
  plant.doses.sunburn = dose("sunburn borne by " + plant.name, 0.0, kDoseUnit * kind.burn_after_s / 3.0);
  graph_.exchange("sunburn of " + plant.name, "instruments",
                  SunburnDose{kind.burns_above_k,
                              kind.heat_tenfold_k,
                              kind.bears_direct_w_m2,
                              kind.burn_light_w_m2,
                              {kind.recovers_in_s, kFarBeyond * kind.burn_after_s}},
                  {plant.tissue, direct, plant.doses.used_to, plant.doses.sunburn},
                  {{{instruments_, plant.doses.sunburn}}});
  plant.doses.light_sum = dose("light received by " + plant.name, 0.0, kJoulesPerUnit);
  plant.doses.day_sum = dose("time with light for " + plant.name, 0.0, 60.0);
  graph_.exchange("light received by " + plant.name, "instruments", LightSum{}, {plant.light},
                  {{{instruments_, plant.doses.light_sum}, {instruments_, plant.doses.day_sum}}});
}

void Assembler::add_spells(const PlantGroupSpec& group, PlantParts& plant) {
  const PlantKindSpec& kind = plant.limits;
  const NodeId air = air_of(plant);
  const auto spell = [&](const std::string& what, double harms_after_s, double half_life_s, double limit, double width,
                         bool above) {
    const NodeId node = dose(what + " borne by " + plant.name, 0.0, kDoseUnit * harms_after_s);
    return std::pair(node, SpellOf{limit, width, above, half_life_s, kFarBeyond * harms_after_s});
  };
  const auto of_value = [&](const std::string& what, const std::pair<NodeId, SpellOf>& it, const Input& value) {
    graph_.exchange(what + " of " + plant.name, "instruments", ValueSpell{it.second}, {value, it.first},
                    {{{instruments_, it.first}}});
    return it.first;
  };
  const auto of_air = [&](const std::string& what, const std::pair<NodeId, SpellOf>& it) {
    graph_.exchange(what + " of " + plant.name, "instruments", DeficitSpell{it.second, out_.pressure_pa},
                    {air, Input(air, 1), it.first}, {{{instruments_, it.first}}});
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
        air);
  if (kind.air_harm_below_k)
    plant.doses.cold_air = of_value(
        "cold air",
        spell("cold air", kind.air_harms_after_s, kind.recovers_in_s, *kind.air_harm_below_k, kTemperatureEdge, false),
        air);
  if (!kind.wet_harms_after_s) return;
  const double wet_kg = kWetFilm * sides_of(kind).sunlit_area * kind.holds_film_kg_m2 * group.area_m2;
  plant.doses.wet =
      of_value("free water", spell("free water", *kind.wet_harms_after_s, kDryAgain, wet_kg, wet_kg, true),
               Input(plant.tissue, 1));
}

/// Names of what cools or shades in this plan's service.
std::vector<std::string> Assembler::coolers_in_use() const {
  std::vector<std::string> out;
  const auto add = [&](const auto& devices) {
    for (const auto& device : devices)
      if (plan_.uses(device.name)) out.push_back(device.name);
  };
  add(spec_.openings);
  add(spec_.fans);
  add(spec_.mist_lines);
  add(spec_.pads);
  add(spec_.shades);
  return out;
}

void Assembler::add_watch(const PlantParts& plant) {
  const PlantKindSpec& kind = plant.limits;
  const PlantDoses& doses = plant.doses;
  const auto coolers = coolers_in_use();
  const std::string hot = coolers.empty()
                              ? "got too hot: nothing in this plan cools the house"
                              : "got too hot though no device has failed: what is in service cools too little";
  const std::string cold = "got too cold: nothing heats the house";  // so cold is nobody's failure
  const double lost_hot =
      lethal_dose_s(kind.lost_after_s, kind.lethal_above_k - kind.harm_above_k, kind.heat_tenfold_k);
  const double lost_cold =
      lethal_dose_s(kind.lost_after_s, kind.harm_below_k - kind.lethal_below_k, kind.cold_tenfold_k);
  PlantWatch::Parameters p;
  p.name = plant.name;
  const NodeId air = air_of(plant);
  const auto add = [&](const std::string& what, NodeId node, std::array<double, 3> marks, const Input& temperature,
                       const std::vector<std::string>& failed_by, const std::string& otherwise) {
    if (node.valid()) p.hazards.push_back({what, node, marks, {}, temperature, failed_by, otherwise});
  };
  constexpr double kNot = Hazard::kNever;
  const double strain = kind.strain_after_s, harm = kind.harm_after_s;
  add(as_much("heat", kind.harm_above_k), doses.heat, {strain, harm, lost_hot}, plant.tissue, coolers, hot);
  p.hazards.back().when_lost = {as_much("heat", kind.lethal_above_k), kind.lost_after_s};
  add(as_much("cold", kind.harm_below_k), doses.cold, {strain, harm, lost_cold}, plant.tissue, {}, cold);
  p.hazards.back().when_lost = {as_much("cold", kind.lethal_below_k), kind.lost_after_s};
  add(as_much("hot pot walls", kind.roots_harm_above_k), doses.hot_roots, {strain, harm, kNot}, plant.wall, coolers,
      hot);
  add("sunburn, as much as % of burning sun does", doses.sunburn, {kind.burn_after_s / 3.0, kind.burn_after_s, kNot},
      plant.tissue, coolers, "stands in more direct sun than it is used to");
  const auto half = [](double harms_after_s) {
    return std::array<double, 3>{0.5 * harms_after_s, harms_after_s, kNot};
  };
  if (kind.air_harm_above_k)
    add("air above " + degrees(*kind.air_harm_above_k) + " for %", doses.hot_air, half(kind.air_harms_after_s), air,
        coolers, hot);
  if (kind.air_harm_below_k)
    add("air below " + degrees(*kind.air_harm_below_k) + " for %", doses.cold_air, half(kind.air_harms_after_s), air,
        {}, cold);
  if (kind.dry_air_above_pa)
    add("dry air for %", doses.dry_air, half(kind.dry_air_harms_after_s), air, coolers,
        "stands in air that is too dry");
  if (kind.damp_air_below_pa)
    add("damp air for %", doses.damp_air, half(kind.damp_air_harms_after_s), air, {}, "stands in air that stays damp");
  if (kind.wet_harms_after_s)
    add("free water on it for %", doses.wet, half(*kind.wet_harms_after_s), plant.tissue, {}, "stays wet for too long");
  out_.plan.agents.push_back(std::make_unique<PlanOf<PlantWatch>>(std::move(p)));

  out_.plan.agents.push_back(std::make_unique<PlanOf<DayWatch>>(daily_light_of(plant)));
}

void Assembler::add_pot_watch(const PlantParts& plant, const PlantGroupSpec& group) {
  PotWatch::Parameters p;
  p.name = plant.name;
  p.pot_water = Input(plant.pot, 1);
  p.dry_below_kg = group.dry_at * group.pot_water_kg_m2 * group.area_m2;
  p.harmed_after = ticks(plant.limits.thirst_harms_after_s);
  p.lost_after = ticks(plant.limits.thirst_kills_after_s);
  for (const auto& visit : spec_.grower.visits)
    if (std::find(visit.value.waters.begin(), visit.value.waters.end(), plant.name) != visit.value.waters.end())
      p.watered_by.push_back("grower, " + visit.name);
  for (const auto& line : spec_.drip_lines)
    if (plan_.uses(line.name) && waters(line.value, plant.name)) p.watered_by.push_back(line.name);
  out_.plan.agents.push_back(std::make_unique<PlanOf<PotWatch>>(std::move(p)));
}

}  // namespace noonhouse
