// SPDX-License-Identifier: Apache-2.0
// Pots: walls in the sun, soil with its water, what drains and dries, the ways water takes into them.
#include <algorithm>
#include <cmath>

#include "models/envelope/heat_links.hpp"
#include "models/plants/plant_sides.hpp"
#include "models/properties/constants.hpp"
#include "models/water/catchment.hpp"
#include "models/water/drip.hpp"
#include "models/water/wet_mass.hpp"
#include "tools/scenario/assembler.hpp"

namespace noonhouse {
namespace {
constexpr double kPotHeight = 0.15;   ///< [m]; common practice, no source
constexpr double kPotToBench = 5.0;   ///< conductance under pots [W/(m2 K)]; common practice, no source
constexpr double kWallShare = 0.15;   ///< of the dry heat capacity that is walls; common practice, no source
constexpr double kWallArea = 1.5;     ///< walls that meet air and sun, over ground covered; common practice, no source
constexpr double kWallToSoil = 15.0;  ///< [W/(m2 K)] of wall: 3 cm of moist soil at 0.5 W/(m K); from memory
constexpr double kSoilOpen = 0.5;     ///< of the ground covered that is soil in pots; common practice, no source
std::size_t at(int i) { return static_cast<std::size_t>(i); }
}  // namespace

void Assembler::add_pots(const PlantGroupSpec& g, PlantParts& plant, NodeId ground) {
  const double full = g.pot_water_kg_m2 * g.area_m2, dry_heat = g.pot_dry_heat_j_m2_k * g.area_m2;
  const std::string pots = "pots of " + plant.name;
  const NodeId air = air_of(plant);
  plant.pot = graph_.node(pots, WetMass{(1.0 - kWallShare) * dry_heat}, {start_.air_k, 0.9 * full},
                          {kTemperatureUnit, 0.005 * full});
  plant.wall =
      graph_.node("walls of the " + pots, ThermalMass{kWallShare * dry_heat}, {start_.air_k}, {kTemperatureUnit});
  graph_.exchange(pots + " and their walls", "pots", Conductance{kWallToSoil * kWallArea * g.area_m2},
                  {plant.wall, plant.pot}, {{{plant.wall, plant.pot}}});
  if (!out_.places[at(plant.place_index)].hangs)
    graph_.exchange(pots + " on what they stand on", "pots", Conductance{kPotToBench * g.area_m2}, {plant.pot, ground},
                    {{{plant.pot, ground}}});
  graph_.exchange("heat between " + pots + " and the air beside them", "convection inside",
                  InsideConvection{kWallArea * g.area_m2, film_of(kPi / 2.0, kPotHeight, kPotHeight)},
                  {plant.wall, air}, {{{plant.wall, air}}});
  receive_sun("walls of the " + pots, plant.wall, table_->row().pots(out_.plants.size()));
  SoilDrying drying;
  drying.area_m2 = kSoilOpen * g.area_m2;
  drying.pressure_pa = out_.pressure_pa;
  drying.capacity_kg = full;
  graph_.exchange("vapour from the " + pots, "evaporation and condensation", drying,
                  {plant.pot, Input(plant.pot, 1), Input(air, 1)},
                  {{{End(plant.pot, 1), End(air, 1)}, {plant.pot, air}}});
  run_off(pots, plant.pot, full, End(ground, 1), ground);
  watering_[plant.name] = graph_.exchange("watering of " + plant.name, "hand watering", HandCarried{}, {out_.tank},
                                          {{{End(out_.tank, 1), End(plant.pot, 1)}, {out_.tank, plant.pot}}});
}

/// A line's water goes to its groups by the ground they cover.
void Assembler::add_drips() {
  for (const auto& line : spec_.drip_lines) {
    const ChannelId running = position_channel(line.name, "drip line");
    double all = 0.0;
    for (std::size_t i = 0; i < out_.plants.size(); ++i)
      if (waters(line.value, out_.plants[i].name)) all += spec_.plants[i].value.area_m2;
    for (std::size_t i = 0; i < out_.plants.size(); ++i) {
      if (!waters(line.value, out_.plants[i].name)) continue;
      const double share = spec_.plants[i].value.area_m2 / all;
      const NodeId pot = out_.plants[i].pot;
      graph_.exchange(line.name + " into the pots of " + out_.plants[i].name, "drip",
                      Drip{share * kWaterKgPerM3 * line.value.flow_m3_s}, {out_.tank, running},
                      {{{End(out_.tank, 1), End(pot, 1)}, {out_.tank, pot}}});
    }
  }
}

bool Assembler::waters(const DripSpec& line, const std::string& group) {
  return std::find(line.waters.begin(), line.waters.end(), group) != line.waters.end();
}

}  // namespace noonhouse
