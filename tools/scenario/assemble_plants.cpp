// SPDX-License-Identifier: Apache-2.0
// Benches with pots, plant tissue, and the watch over each group.
#include <algorithm>

#include "models/envelope/heat_links.hpp"
#include "models/plants/leaf_boundary.hpp"
#include "models/plants/plant_watch.hpp"
#include "models/plants/pot_watch.hpp"
#include "models/plants/tissue.hpp"
#include "models/properties/constants.hpp"
#include "models/water/catchment.hpp"
#include "models/water/wet_mass.hpp"
#include "tools/scenario/assembler.hpp"

namespace noonhouse {
namespace {
constexpr double kHeldOnBench = 0.3;    ///< [kg/m2]; common practice, no source
constexpr double kBelowBench = 0.05;    ///< where the air beneath a bench is looked for [m]
constexpr double kPotHeight = 0.15;     ///< [m]; common practice, no source
constexpr double kTissueHeat = 3800.0;  ///< [J/(kg K)], fresh tissue, nine parts water; from memory
constexpr double kPotToBench = 5.0;     ///< conductance under pots [W/(m2 K)]; common practice, no source
std::size_t at(int i) { return static_cast<std::size_t>(i); }
}  // namespace

const BenchSpec& Assembler::bench(const std::string& name) const {
  const auto it =
      std::find_if(spec_.benches.begin(), spec_.benches.end(), [&](const auto& b) { return b.name == name; });
  NOON_ASSERT(it != spec_.benches.end());
  return it->value;
}

/// Share of a bench's top that plants on it cover.
double Assembler::bench_cover_share(const std::string& name) const {
  double covered = 0.0;
  for (const auto& group : spec_.plants)
    if (group.value.place == name && !group.value.under) covered += group.value.area_m2;
  return std::min(1.0, covered / (bench(name).length_m * bench(name).width_m));
}

void Assembler::add_benches() {
  for (std::size_t i = 0; i < spec_.benches.size(); ++i) {
    const auto& item = spec_.benches[i];
    const BenchSpec& b = item.value;
    const int bay = out_.shape.bay_index(b.bay);
    const BayParts& parts = out_.bays[at(bay)];
    const double area = b.length_m * b.width_m;
    const NodeId node = film_node(item.name, area * b.heat_capacity_j_m2_k, start_.air_k);
    bench_nodes_[item.name] = node;
    const double length = area / (2.0 * (b.length_m + b.width_m));
    touch_air({item.name, node, area, film_of(0.0, length, b.width_m), 0.2 * kHeldOnBench * area, bay},
              air_at(bay, b.height_m));
    touch_air({"underside of the " + item.name, node, area, film_of(kPi, length, b.width_m), 1.0, -1, false},
              air_at(bay, std::max(0.0, b.height_m - kBelowBench)));
    receive_sun(item.name, node, table_->row().bench(i));
    run_off(item.name, node, kHeldOnBench * area, End(parts.floor, 1), parts.floor);
  }
}

void Assembler::add_plants() {
  for (std::size_t i = 0; i < spec_.plants.size(); ++i) add_plant_group(i);
}

void Assembler::add_plant_group(std::size_t index) {
  const Named<PlantGroupSpec>& group = spec_.plants[index];
  const PlantGroupSpec& g = group.value;
  const auto kind_at =
      std::find_if(spec_.plant_kinds.begin(), spec_.plant_kinds.end(), [&](const auto& k) { return k.name == g.kind; });
  NOON_ASSERT(kind_at != spec_.plant_kinds.end());
  const PlantKindSpec& kind = kind_at->value;
  const BenchSpec& b = bench(g.place);
  const int bay = out_.shape.bay_index(b.bay);
  const BayParts& parts = out_.bays[at(bay)];
  const double height = g.under ? 0.0 : b.height_m;
  const NodeId air = air_at(bay, height + 0.05);
  PlantParts plant{group.name, g.kind, (g.under ? "under the " : "on the ") + g.place,
                   b.bay,      bay,    out_.shape.layer_at(height + 0.05),
                   height,     kind,   {},
                   {},         {}};

  plant.tissue = film_node(group.name, g.area_m2 * kind.tissue_kg_m2 * kTissueHeat, start_.air_k);
  const double leaf = leaf_conductance_m_s(kAirSpeedPastLeaves, kind.leaf_size_m);
  SurfaceFilm film = surface_film(kPi / 2.0, kind.leaf_size_m, 0.0, table_->mean_outdoor_k(), out_.pressure_pa);
  film.forced_cubed = std::pow(air_density_ * kDryAirHeat * leaf, 3);
  const double leaf_sides_m2 = 2.0 * kind.leaf_area_index * g.area_m2;
  touch_air({group.name, plant.tissue, leaf_sides_m2, film, 0.3 * kind.holds_film_kg_m2 * g.area_m2, bay}, air);
  receive_sun(group.name, plant.tissue, table_->row().plants(index));
  plant.light = graph_.channel("light on " + group.name, "W m-2", 0.0);
  out_.site.sunlight[table_->row().light(index)] = plant.light;
  const NodeId below = g.under ? parts.floor : bench_nodes_.at(g.place);
  run_off(group.name, plant.tissue, kind.holds_film_kg_m2 * g.area_m2, End(below, 1), below);

  add_pots(group, plant, below, air);
  add_transpiration(group, plant, leaf, air);
  add_watch(plant);
  add_pot_watch(plant, g);
  out_.plants.push_back(std::move(plant));
}

/// Pots of soil with their water, on a bench or the floor, and the way a watering can takes.
void Assembler::add_pots(const Named<PlantGroupSpec>& group, PlantParts& plant, NodeId below, NodeId air) {
  const PlantGroupSpec& g = group.value;
  const double full = g.pot_water_kg_m2 * g.area_m2;
  plant.pot = graph_.node("pots of " + group.name, WetMass{g.pot_dry_heat_j_m2_k * g.area_m2},
                          {start_.air_k, 0.9 * full}, {kTemperatureUnit, 0.005 * full});
  graph_.exchange("pots of " + group.name + " on what they stand on", "pots", Conductance{kPotToBench * g.area_m2},
                  {plant.pot, below}, {{{plant.pot, below}}});
  graph_.exchange("heat between pots of " + group.name + " and the air beside them", "convection inside",
                  InsideConvection{1.0 * g.area_m2, film_of(kPi / 2.0, kPotHeight, kPotHeight)}, {plant.pot, air},
                  {{{plant.pot, air}}});
  watering_[group.name] = graph_.exchange("watering of " + group.name, "hand watering", HandCarried{}, {out_.tank},
                                          {{{End(out_.tank, 1), End(plant.pot, 1)}, {out_.tank, plant.pot}}});
}

void Assembler::add_transpiration(const Named<PlantGroupSpec>& group, const PlantParts& plant, double leaf_m_s,
                                  NodeId air) {
  const PlantGroupSpec& g = group.value;
  const PlantKindSpec& kind = plant.limits;
  Transpiration law;
  law.leaf_area_m2 = kind.leaf_area_index * g.area_m2;
  law.dry_air_density_kg_m3 = air_density_;
  law.pressure_pa = out_.pressure_pa;
  law.boundary_conductance_m_s = leaf_m_s;
  law.least_conductance_m_s = kind.least_conductance_m_s;
  law.most_conductance_m_s = kind.most_conductance_m_s;
  law.half_light_w_m2 = kind.half_light_w_m2;
  law.half_deficit_pa = kind.half_deficit_pa;
  law.pot_capacity_kg = g.pot_water_kg_m2 * g.area_m2;
  law.rhythm = kind.rhythm;
  graph_.exchange("transpiration of " + group.name, "transpiration", law,
                  {plant.tissue, Input(plant.pot, 1), plant.pot, air, Input(air, 1), plant.light},
                  {{{End(plant.pot, 1), End(air, 1)}, {plant.pot, plant.tissue}, {plant.tissue, air}}});
}

/// Names of the openings, fans, mist lines and shades in this plan's service.
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
  PlantWatch::Parameters p;
  p.name = plant.name;
  p.tissue = plant.tissue;
  p.harm_above_k = kind.harm_above_k;
  p.lethal_above_k = kind.lethal_above_k;
  p.harm_below_k = kind.harm_below_k;
  p.lethal_below_k = kind.lethal_below_k;
  p.strained_after = ticks(kind.strain_after_s);
  p.harmed_after = ticks(kind.harm_after_s);
  p.lost_after = ticks(kind.lost_after_s);
  p.cooled_by = coolers_in_use();
  p.when_nothing_failed = p.cooled_by.empty()
                              ? "got too hot: nothing in this plan cools the house"
                              : "got too hot though no device has failed: what is in service cools too little";
  out_.plan.agents.push_back(std::make_unique<PlanOf<PlantWatch>>(std::move(p)));
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
  out_.plan.agents.push_back(std::make_unique<PlanOf<PotWatch>>(std::move(p)));
}

}  // namespace noonhouse
