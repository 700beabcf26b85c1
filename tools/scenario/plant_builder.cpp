// SPDX-License-Identifier: Apache-2.0
// A group of plants: a sunlit and a shaded side, with what they exchange with the air and with one another; pots with
// walls in the sun, soil with its water, what drains and dries.
#include "tools/scenario/plant_builder.hpp"

#include <algorithm>

#include "models/envelope/heat_links.hpp"
#include "models/plants/leaf_radiation.hpp"
#include "models/plants/plant_sides.hpp"
#include "models/properties/constants.hpp"
#include "models/water/drip.hpp"
#include "models/water/wet_mass.hpp"
#include "models/water/wet_surface.hpp"
#include "tools/scenario/error_units.hpp"

namespace noonhouse {
namespace {
constexpr double kTissueHeat = 3800.0;  ///< [J/(kg K)], fresh tissue, nine parts water; from memory
/// Emissive share of a leaf's area that faces leaves of the other side (half of it, at 0.9); common practice, no
/// source.
constexpr double kLeafToLeaf = 0.45;
constexpr double kPotToBench = 5.0;   ///< conductance under pots [W/(m2 K)]; common practice, no source
constexpr double kWallShare = 0.15;   ///< of the dry heat capacity that is walls; common practice, no source
constexpr double kWallArea = 1.5;     ///< walls that meet air and sun, over ground covered; common practice, no source
constexpr double kWallToSoil = 15.0;  ///< [W/(m2 K)] of wall: 3 cm of moist soil at 0.5 W/(m K); from memory
constexpr double kSoilOpen = 0.3;     ///< of the ground covered that is soil in pots; common practice, no source
}  // namespace

void PlantBuilder::build(const PlantGroupSpec& g, PlantParts& plant) {
  const PlantKindSpec& kind = plant.limits;
  const PlantSides sides = sides_of(kind);
  const double heat_j_k = g.area_m2 * kind.tissue_kg_m2 * kTissueHeat;
  plant.tissue = film_node(plant.name, sides.sunlit_area * heat_j_k);
  plant.shaded = film_node("shaded side of " + plant.name, (1.0 - sides.sunlit_area) * heat_j_k);
  add_pots(g, plant);
  add_side(g, plant, {plant.name, plant.tissue, sides.sunlit_area, s_.sunlit_gain, s_.light});
  add_side(g, plant,
           {"the shaded side of " + plant.name, plant.shaded, 1.0 - sides.sunlit_area, s_.shaded_gain, s_.soft});
  join_sides(g, plant);
  add_doses(g, plant);
}

/// A surface with a water film, dry at the start.
NodeId PlantBuilder::film_node(const std::string& name, double dry_heat_j_k) {
  return graph_.node(name, WetMass{dry_heat_j_k}, {s_.start_k, 0.0}, {kTemperatureUnit, kFilmUnit});
}

void PlantBuilder::take_sun(const std::string& name, NodeId node, ChannelId gain) {
  graph_.exchange("sun on " + name, "sunlight absorbed", GivenPower{}, {gain}, {{{s_.sun, node}}});
}

void PlantBuilder::run_off(const std::string& name, NodeId from, double held_kg) {
  graph_.exchange("run-off from " + name, "run-off", Runoff{held_kg}, {from, Input(from, 1)},
                  {{{End(from, 1), s_.ground_water}, {from, s_.ground_heat}}});
}

void PlantBuilder::add_pots(const PlantGroupSpec& g, PlantParts& plant) {
  const double full = g.pot_water_kg_m2 * g.area_m2, dry_heat = g.pot_dry_heat_j_m2_k * g.area_m2;
  const std::string pots = "pots of " + plant.name;
  plant.pot = graph_.node(pots, WetMass{(1.0 - kWallShare) * dry_heat}, {s_.start_k, 0.9 * full},
                          {kTemperatureUnit, 0.005 * full});
  plant.wall =
      graph_.node("walls of the " + pots, ThermalMass{kWallShare * dry_heat}, {s_.start_k}, {kTemperatureUnit});
  graph_.exchange(pots + " and their walls", "pots", Conductance{kWallToSoil * kWallArea * g.area_m2},
                  {plant.wall, plant.pot}, {{{plant.wall, plant.pot}}});
  if (!s_.hangs)
    graph_.exchange(pots + " on what they stand on", "pots", Conductance{kPotToBench * g.area_m2},
                    {plant.pot, s_.ground}, {{{plant.pot, s_.ground_heat}}});
  graph_.exchange("heat between " + pots + " and the air beside them", "convection inside",
                  InsideConvection{kWallArea * g.area_m2,
                                   surface_film(kPi / 2.0, kPotHeight, kAirSpeedAtRest, s_.mean_air_k, s_.pressure_pa)},
                  {plant.wall, s_.air}, {{{plant.wall, s_.air_heat}}});
  take_sun("walls of the " + pots, plant.wall, s_.pots_gain);
  SoilDrying drying;
  drying.area_m2 = kSoilOpen * g.area_m2;
  drying.pressure_pa = s_.pressure_pa;
  drying.capacity_kg = full;
  graph_.exchange("vapour from the " + pots, "evaporation and condensation", drying,
                  {plant.pot, Input(plant.pot, 1), s_.vapour},
                  {{{End(plant.pot, 1), s_.air_vapour}, {plant.pot, s_.air_heat}}});
  run_off(pots, plant.pot, full);
}

/// What one side takes from the sun, and gives to the air and to what the plants stand on.
void PlantBuilder::add_side(const PlantGroupSpec& g, const PlantParts& plant, const Side& side) {
  const PlantKindSpec& kind = plant.limits;
  const double leaf_m2 = side.share * kind.leaf_area_index * g.area_m2;
  const double held_kg = side.share * kind.holds_film_kg_m2 * g.area_m2;
  const TissueFilm film = tissue_film(kind.leaf_size_m, s_.air_density_kg_m3, s_.mean_air_k, s_.pressure_pa);
  const std::string to = side.name + " and the air beside it";
  graph_.exchange("heat between " + to, "convection inside", TissueConvection{2.0 * leaf_m2, film},
                  {side.node, s_.air, s_.draught, s_.stirring},
                  {{{side.node, s_.air_heat}, {side.node, s_.column_heat}}});
  graph_.exchange("vapour between " + to, "evaporation and condensation",
                  WetTissue{2.0 * leaf_m2, s_.pressure_pa, 0.3 * held_kg, film},
                  {side.node, Input(side.node, 1), s_.air, s_.vapour, s_.draught, s_.stirring},
                  {{{End(side.node, 1), s_.air_vapour}, {side.node, s_.air_heat}}});
  take_sun(side.name, side.node, side.gain);
  run_off(side.name, side.node, held_kg);

  Transpiration law;
  law.leaf_area_m2 = leaf_m2;
  law.dry_air_density_kg_m3 = s_.air_density_kg_m3;
  law.pressure_pa = s_.pressure_pa;
  law.film = film;
  law.stomata = {kind.least_conductance_m_s,    kind.most_conductance_m_s, kind.half_light_w_m2,
                 kind.half_deficit_pa,          kind.best_stomata_k,       kind.stomata_spread_k,
                 g.pot_water_kg_m2 * g.area_m2, kind.pot_share_unhindered, kind.rhythm};
  law.faces = kind.faces_with_stomata;
  graph_.exchange("transpiration of " + side.name, "transpiration", law,
                  {side.node, Input(plant.pot, 1), plant.pot, s_.air, s_.vapour, side.light, s_.draught, s_.stirring},
                  {{{End(plant.pot, 1), s_.air_vapour}, {plant.pot, side.node}, {side.node, s_.air_heat}}});
}

/// Through one thick body heat is conducted; leaves of their own face one another.
void PlantBuilder::join_sides(const PlantGroupSpec& g, const PlantParts& plant) {
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
