// SPDX-License-Identifier: Apache-2.0
// Plant tissue: a sunlit and a shaded side for each group, with what they exchange with the air and with one another.
#include "models/envelope/heat_links.hpp"
#include "models/plants/leaf_radiation.hpp"
#include "models/plants/tissue.hpp"
#include "models/properties/constants.hpp"
#include "tools/scenario/assembler.hpp"

namespace noonhouse {
namespace {
constexpr double kTissueHeat = 3800.0;  ///< [J/(kg K)], fresh tissue, nine parts water; from memory
constexpr double kLeafToLeaf = 0.45;  ///< emissive share of a leaf's area that faces leaves of the other side (half of
                                      ///< it, at 0.9); common practice, no source
std::size_t at(int i) { return static_cast<std::size_t>(i); }
}  // namespace

void Assembler::add_plants() {
  for (std::size_t i = 0; i < spec_.plants.size(); ++i) add_plant_group(i);
}

NodeId Assembler::ground_of(const StandingPlace& place) const {
  if (place.of == StandingPlace::Of::on) return bench_nodes_.at(spec_.benches[at(place.bench)].name);
  return out_.bays[at(place.bay)].floor;
}

NodeId Assembler::air_of(const PlantParts& plant) const { return out_.bays[at(plant.bay_index)].air[at(plant.layer)]; }
NodeId Assembler::draught_of(const PlantParts& plant) const {
  return out_.bays[at(plant.bay_index)].draught.at(plant.layer);
}

void Assembler::add_plant_group(std::size_t index) {
  const PlantGroupSpec& g = spec_.plants[index].value;
  const int place_index = place_of(g, out_.places, spec_);
  const StandingPlace& place = out_.places[at(place_index)];
  PlantParts plant;
  plant.name = spec_.plants[index].name;
  plant.kind = g.kind;
  plant.place = place.name;
  plant.bay = out_.shape.bays[at(place.bay)].name;
  plant.bay_index = place.bay;
  plant.layer = out_.shape.layer_at(place.height_m + kPlantsAbove);
  plant.place_index = place_index;
  plant.height_m = place.height_m;
  plant.limits = kind_of(g, spec_);
  plant.light = out_.light[at(place_index)].all;

  const PlantKindSpec& kind = plant.limits;
  const PlantSides sides = sides_of(kind);
  const double heat_j_k = g.area_m2 * kind.tissue_kg_m2 * kTissueHeat;
  plant.tissue = film_node(plant.name, sides.sunlit_area * heat_j_k, start_.air_k);
  plant.shaded = film_node("shaded side of " + plant.name, (1.0 - sides.sunlit_area) * heat_j_k, start_.air_k);
  const NodeId ground = ground_of(place);
  add_pots(g, plant, ground);
  const PlaceChannels& light = out_.light[at(place_index)];
  add_side(g, plant, {plant.name, plant.tissue, sides.sunlit_area, table_->row().sunlit(index), light.all}, ground);
  add_side(g, plant,
           {"the shaded side of " + plant.name, plant.shaded, 1.0 - sides.sunlit_area, table_->row().shaded(index),
            light.soft},
           ground);
  join_sides(g, plant);
  add_doses(g, plant);
  add_watch(plant);
  add_pot_watch(plant, g);
  out_.plants.push_back(std::move(plant));
}

/// What one side takes from the sun, and gives to the air and to what the plants stand on.
void Assembler::add_side(const PlantGroupSpec& g, const PlantParts& plant, const Side& side, NodeId ground) {
  const PlantKindSpec& kind = plant.limits;
  const NodeId air = air_of(plant), draught = draught_of(plant);
  const ChannelId stirring = stirring_[at(plant.bay_index)];
  const double leaf_m2 = side.share * kind.leaf_area_index * g.area_m2;
  const double held_kg = side.share * kind.holds_film_kg_m2 * g.area_m2;
  const TissueFilm film = tissue_film(kind.leaf_size_m, air_density_, table_->mean_outdoor_k(), out_.pressure_pa);
  const std::string to = side.name + " and the air beside it";
  graph_.exchange("heat between " + to, "convection inside", TissueConvection{2.0 * leaf_m2, film},
                  {side.node, air, draught, stirring},
                  {{{side.node, air}, {side.node, out_.bays[at(plant.bay_index)].column[at(plant.layer)]}}});
  graph_.exchange("vapour between " + to, "evaporation and condensation",
                  WetTissue{2.0 * leaf_m2, out_.pressure_pa, 0.3 * held_kg, film},
                  {side.node, Input(side.node, 1), air, Input(air, 1), draught, stirring},
                  {{{End(side.node, 1), End(air, 1)}, {side.node, air}}});
  receive_sun(side.name, side.node, side.sun_row);
  run_off(side.name, side.node, held_kg, End(ground, 1), ground);

  Transpiration law;
  law.leaf_area_m2 = leaf_m2;
  law.dry_air_density_kg_m3 = air_density_;
  law.pressure_pa = out_.pressure_pa;
  law.film = film;
  law.stomata = {kind.least_conductance_m_s,    kind.most_conductance_m_s, kind.half_light_w_m2,
                 kind.half_deficit_pa,          kind.best_stomata_k,       kind.stomata_spread_k,
                 g.pot_water_kg_m2 * g.area_m2, kind.pot_share_unhindered, kind.rhythm};
  graph_.exchange("transpiration of " + side.name, "transpiration", law,
                  {side.node, Input(plant.pot, 1), plant.pot, air, Input(air, 1), side.light, draught, stirring},
                  {{{End(plant.pot, 1), End(air, 1)}, {plant.pot, side.node}, {side.node, air}}});
}

/// Through one thick body heat is conducted; leaves of their own face one another.
void Assembler::join_sides(const PlantGroupSpec& g, const PlantParts& plant) {
  const PlantKindSpec& kind = plant.limits;
  const std::string name = "heat between both sides of " + plant.name;
  const double one_side_m2 = kind.leaf_area_index * g.area_m2;
  if (kind.body == PlantBody::one_body) {
    graph_.exchange(name, "tissue", Conductance{between_sides_w_m2_k(kind.thickness_m) * one_side_m2},
                    {plant.tissue, plant.shaded}, {{{plant.tissue, plant.shaded}}});
    return;
  }
  const double sunlit = sides_of(kind).sunlit_area, smaller = std::min(sunlit, 1.0 - sunlit);
  graph_.exchange(name, "longwave inside", LeafRadiation{2.0 * kLeafToLeaf * smaller * one_side_m2},
                  {plant.tissue, plant.shaded}, {{{plant.tissue, plant.shaded}}});
}

}  // namespace noonhouse
