// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "models/ground/ground_temperature.hpp"
#include "sim/core/tick.hpp"
#include "tools/scenario/house_shape.hpp"
#include "tools/scenario/scenario_spec.hpp"

namespace noonhouse {

/// A layer of floor or soil as one node holds it.
struct GroundLayer {
  std::string name;  ///< "gravel", "soil layer 2"
  double thickness_m = 0.0, conductivity_w_m_k = 0.0, heat_capacity_j_m3_k = 0.0;
  double resistance_m2_k_w() const { return thickness_m / conductivity_w_m_k; }
};

/// From the floor's surface down: a thin skin, the rest of the courses cut into slices, then the soil, whose layers
/// thicken downward to the stated depth of the ground.
std::vector<GroundLayer> ground_layers(const FloorSpec& floor);

/// How deep the layers reach [m].
double ground_depth_m(const std::vector<GroundLayer>& layers);

/// Resistance from the middle of one layer to the middle of the next [m2 K/W].
double resistance_between(const GroundLayer& upper, const GroundLayer& lower);

/// The ground that no house disturbs, by the site's yearly wave and the floor's soil.
UndisturbedGround undisturbed_ground(const ScenarioSpec& spec);

/// Days from the beginning of the run's first year to an instant of the run [d].
double day_of_run_year(const RunSpec& run, Tick t);

/// Undisturbed ground at a depth [m] and a day from the beginning of the year [d], by the site [K].
double deep_ground_k(const ScenarioSpec& spec, double day, double depth_m);

/// Heat that leaves a bay's ground sideways to outdoors [W/K], from just below its floor: the stated edge loss along
/// its outer walls; if none is stated, what EN ISO 13370 gives the whole floor beyond what goes straight down.
double edge_conductance_w_k(const HouseSpec& house, const HouseShape& shape, int bay);

/// Where the layers below the skin come to rest [K] between a floor's mean temperature, the deep ground and, from the
/// first layer below the skin by its edge, outdoors.
struct GroundRest {
  double floor_k = 0.0, deep_k = 0.0, outdoor_k = 0.0, edge_w_m2_k = 0.0;
};
std::vector<double> ground_at_rest(const std::vector<GroundLayer>& layers, const GroundRest& rest);

}  // namespace noonhouse
