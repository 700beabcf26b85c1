// SPDX-License-Identifier: Apache-2.0
// Floor and soil.
#include <algorithm>
#include <cmath>

#include "models/air/air_exchange.hpp"
#include "models/envelope/heat_links.hpp"
#include "sim/core/index.hpp"
#include "tools/scenario/assembler.hpp"
#include "tools/scenario/ground_plan.hpp"

namespace noonhouse {

void Assembler::add_ground() {
  const GroundLayer skin = ground_layers(spec_.house.floor).front();
  for (int b = 0; b < static_cast<int>(out_.bays.size()); ++b) {
    BayParts& parts = out_.bays[at(b)];
    const BayShape& bay = out_.shape.bays[at(b)];
    const std::string name = "floor of the " + parts.name + " bay";
    parts.floor = film_node(name, bay.floor_m2 * skin.thickness_m * skin.heat_capacity_j_m3_k, start_.air_k);
    const double width = out_.shape.width_m, length = bay.length_m;
    const SurfaceFilm film = film_of(0.0, bay.floor_m2 / (2.0 * (width + length)), std::min(width, length));
    touch_air({name, parts.floor, bay.floor_m2, film, 0.2 * spec_.house.floor.holds_kg_m2 * bay.floor_m2, b},
              parts.air.front());
    run_off(name, parts.floor, spec_.house.floor.holds_kg_m2 * bay.floor_m2, drained_water_, drained_heat_);
    for (std::size_t i = 0; i < parts.air.size(); ++i) {
      const NodeId air = parts.air[i];
      graph_.exchange("fog from layer " + std::to_string(i + 1) + " of the " + parts.name + " bay", "fog settling",
                      FogSettling{bay.layers[i].volume_m3 * air_density_, out_.pressure_pa}, {air, Input(air, 1)},
                      {{{End(air, 1), End(parts.floor, 1)}, {air, parts.floor}}});
    }
    receive_sun(name, parts.floor, table_->row().floor(at(b)));
    add_soil(b);
  }
}

/// Courses and soil from below the floor's skin to the undisturbed ground, and the way out beside the walls.
void Assembler::add_soil(int b) {
  BayParts& parts = out_.bays[at(b)];
  const double area = out_.shape.bays[at(b)].floor_m2;
  const auto layers = ground_layers(spec_.house.floor);
  NodeId above = parts.floor;
  double depth = layers.front().thickness_m;
  for (std::size_t i = 1; i < layers.size(); ++i) {
    const double middle = depth + 0.5 * layers[i].thickness_m;
    depth += layers[i].thickness_m;
    const std::string name = layers[i].name + " under the " + parts.name + " bay";
    const NodeId layer =
        graph_.node(name, ThermalMass{area * layers[i].thickness_m * layers[i].heat_capacity_j_m3_k},
                    {deep_ground_k(spec_, day_of_run_year(spec_.run, Tick{0}), middle)}, {kTemperatureUnit});
    graph_.exchange("into the " + name, "into the soil",
                    Conductance{area / resistance_between(layers[i - 1], layers[i])}, {above, layer},
                    {{{above, layer}}});
    parts.soil.push_back(layer);
    above = layer;
  }
  graph_.exchange("deep soil under the " + parts.name + " bay", "into the soil",
                  Conductance{area / (0.5 * layers.back().resistance_m2_k_w())}, {above, out_.site.deep_soil},
                  {{{above, deep_soil_}}});
  const double edge = edge_conductance_w_k(spec_.house, out_.shape, b);
  if (edge > 0.0)
    graph_.exchange("edge of the floor of the " + parts.name + " bay", "into the soil", Conductance{edge},
                    {parts.soil.front(), out_.site.outdoor}, {{{parts.soil.front(), outdoor_heat_}}});
}

}  // namespace noonhouse
