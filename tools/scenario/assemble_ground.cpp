// SPDX-License-Identifier: Apache-2.0
// Floor, soil and the surroundings that surfaces of a bay see.
#include <algorithm>

#include "models/air/air_exchange.hpp"
#include "models/envelope/heat_links.hpp"
#include "models/ground/soil_grid.hpp"
#include "tools/scenario/assembler.hpp"

namespace noonhouse {
namespace {
constexpr double kFloorSkin = 0.02;        ///< thickness of the floor's surface node [m]
constexpr double kSoilGrowth = 1.5;        ///< of each soil layer over the one above it; common practice, no source
constexpr double kFloorEmissivity = 0.95;  ///< from memory
/// The centre of a bay's longwave star: all surfaces exchange with it, none with each other. It holds next to no
/// heat (its time constant is a fraction of a second), so what goes in comes out.
constexpr double kStarHeat = 50.0;
std::size_t at(int i) { return static_cast<std::size_t>(i); }
}  // namespace

void Assembler::add_ground() {
  for (int b = 0; b < static_cast<int>(out_.bays.size()); ++b) {
    BayParts& parts = out_.bays[at(b)];
    const BayShape& bay = out_.shape.bays[at(b)];
    const std::string name = "floor of the " + parts.name + " bay";
    parts.surroundings = graph_.node("surroundings seen in the " + parts.name + " bay", ThermalMass{kStarHeat},
                                     {start_.air_k}, {kTemperatureUnit * 5.0});
    parts.floor = film_node(name, bay.floor_m2 * kFloorSkin * spec_.house.floor.heat_capacity_j_m3_k, start_.air_k);
    touch_air({name, parts.floor, bay.floor_m2, {1.52, 1.0}, 0.2 * spec_.house.floor.holds_kg_m2 * bay.floor_m2, b},
              parts.air.front());
    graph_.exchange("longwave of the " + name, "longwave inside", RadiantExchange{bay.floor_m2 * kFloorEmissivity},
                    {parts.floor, parts.surroundings}, {{{parts.floor, parts.surroundings}}});
    run_off(name, parts.floor, spec_.house.floor.holds_kg_m2 * bay.floor_m2, drained_water_, drained_heat_);
    for (std::size_t i = 0; i < parts.air.size(); ++i) {
      const NodeId air = parts.air[i];
      graph_.exchange("fog from layer " + std::to_string(i + 1) + " of the " + parts.name + " bay", "fog settling",
                      FogSettling{bay.layers[i].volume_m3 * air_density_, out_.pressure_pa}, {air, Input(air, 1)},
                      {{{End(air, 1), End(parts.floor, 1)}, {air, parts.floor}}});
    }
    double taken = 0.0;
    for (const auto& item : spec_.benches)
      if (out_.shape.bay_index(item.value.bay) == b) taken += item.value.length_m * item.value.width_m;
    const double open = std::max(0.0, 1.0 - taken / bay.floor_m2) * spec_.house.floor.absorptance;
    receive_sun(name, parts.floor, b, open, open);
    add_soil(b);
  }
}

/// Layers that thicken downward, from the floor's surface node to the deep soil.
void Assembler::add_soil(int b) {
  BayParts& parts = out_.bays[at(b)];
  const FloorSpec& floor = spec_.house.floor;
  const double area = out_.shape.bays[at(b)].floor_m2;
  NodeId above = parts.floor;
  double above_half = kFloorSkin / 2.0, depth = 0.0;
  for (const double thickness : soil_layer_thicknesses_m(floor.depth_m, floor.layers, kSoilGrowth)) {
    const std::string number = std::to_string(parts.soil.size() + 1);
    // Straight line from the air's start to the deep soil.
    const double share = (depth + 0.5 * thickness) / floor.depth_m;
    const NodeId layer =
        graph_.node("soil layer " + number + " under the " + parts.name + " bay",
                    ThermalMass{area * thickness * floor.heat_capacity_j_m3_k},
                    {start_.air_k + share * (spec_.site.deep_soil_k - start_.air_k)}, {kTemperatureUnit});
    graph_.exchange("soil above layer " + number + " under the " + parts.name + " bay", "into the soil",
                    Conductance{area * floor.conductivity_w_m_k / (above_half + 0.5 * thickness)}, {above, layer},
                    {{{above, layer}}});
    parts.soil.push_back(layer);
    above = layer;
    above_half = 0.5 * thickness;
    depth += thickness;
  }
  graph_.exchange("deep soil under the " + parts.name + " bay", "into the soil",
                  Conductance{area * floor.conductivity_w_m_k / above_half}, {above, deep_soil_k_},
                  {{{above, deep_soil_}}});
}

}  // namespace noonhouse
