// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/ground_plan.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>

#include "models/ground/soil_grid.hpp"
#include "sim/core/errors.hpp"
#include "sim/core/index.hpp"
#include "sim/core/tick.hpp"

namespace noonhouse {
namespace {
constexpr double kSkin = 0.02;       ///< thickness of the floor's surface node [m]
constexpr double kSlice = 0.05;      ///< of a course, at most [m]
constexpr double kSoilGrowth = 1.5;  ///< of each soil layer over the one above it; common practice, no source

/// Length of a bay's walls that stand outdoors [m].
double outer_walls_m(const HouseShape& shape, int bay) {
  const double along = 2.0 * shape.bays[at(bay)].length_m;
  const int last = static_cast<int>(shape.bays.size()) - 1;
  return along + (bay == 0 ? shape.width_m : 0.0) + (bay == last ? shape.width_m : 0.0);
}

}  // namespace

std::vector<GroundLayer> ground_layers(const FloorSpec& floor) {
  std::vector<GroundLayer> out;
  double skin = kSkin;  // still to be taken off the top
  for (const auto& item : floor.courses) {
    const CourseSpec& c = item.value;
    double left = c.thickness_m;
    if (skin > 0.0) {
      const double taken = std::min(skin, left);
      out.push_back({"skin of the " + item.name, taken, c.conductivity_w_m_k, c.heat_capacity_j_m3_k});
      left -= taken;
      skin = 0.0;
    }
    const int slices = static_cast<int>(std::ceil(left / kSlice - 1e-9));
    for (int i = 0; i < slices; ++i)
      out.push_back({item.name + (slices > 1 ? " slice " + std::to_string(i + 1) : ""), left / slices,
                     c.conductivity_w_m_k, c.heat_capacity_j_m3_k});
  }
  if (skin > 0.0) out.push_back({"skin of the soil", skin, floor.conductivity_w_m_k, floor.heat_capacity_j_m3_k});
  int number = 0;
  for (const double thickness : soil_layer_thicknesses_m(floor.depth_m, floor.layers, kSoilGrowth))
    out.push_back(
        {"soil layer " + std::to_string(++number), thickness, floor.conductivity_w_m_k, floor.heat_capacity_j_m3_k});
  return out;
}

double ground_depth_m(const std::vector<GroundLayer>& layers) {
  double depth = 0.0;
  for (const GroundLayer& layer : layers) depth += layer.thickness_m;
  return depth;
}

double resistance_between(const GroundLayer& upper, const GroundLayer& lower) {
  return 0.5 * (upper.resistance_m2_k_w() + lower.resistance_m2_k_w());
}

UndisturbedGround undisturbed_ground(const ScenarioSpec& spec) {
  const FloorSpec& floor = spec.house.floor;
  return {spec.site.deep_soil_k, spec.site.soil_swing_k, (spec.site.coldest_day - 0.5) * kSecondsPerDay,
          floor.conductivity_w_m_k / floor.heat_capacity_j_m3_k};
}

double day_of_run_year(const RunSpec& run, Tick t) {
  using namespace std::chrono;
  const auto since = sys_days(run.start) - sys_days(run.start.year() / January / 1);
  return static_cast<double>(since.count()) + static_cast<double>(t.ms) / static_cast<double>(kDay.ms);
}

double deep_ground_k(const ScenarioSpec& spec, double day, double depth_m) {
  return undisturbed_ground(spec).temperature_k(depth_m, day * kSecondsPerDay);
}

double edge_conductance_w_k(const HouseSpec& house, const HouseShape& shape, int bay) {
  const double walls = outer_walls_m(shape, bay);
  if (house.floor.edge_loss_w_m_k) return *house.floor.edge_loss_w_m_k * walls;
  GroundSlab slab;
  slab.area_m2 = shape.plan_area_m2();
  slab.perimeter_m = 2.0 * (shape.length_m + shape.width_m);
  slab.ground_conductivity_w_m_k = house.floor.conductivity_w_m_k;
  for (const auto& course : house.floor.courses)
    slab.floor_resistance_m2_k_w += course.value.thickness_m / course.value.conductivity_w_m_k;
  double down = 0.0;
  for (const GroundLayer& layer : ground_layers(house.floor)) down += layer.resistance_m2_k_w();
  const double beyond = std::max(0.0, slab_on_ground_transmittance_w_m2_k(slab) - 1.0 / down);
  return beyond * slab.area_m2 / slab.perimeter_m * walls;
}

std::vector<double> ground_at_rest(const std::vector<GroundLayer>& layers, const GroundRest& rest) {
  // Tridiagonal, from the layer below the skin to the deep ground (Thomas's elimination).
  const std::size_t n = layers.size() - 1;
  std::vector<double> up(n), down(n), diagonal(n), right(n, 0.0);
  for (std::size_t i = 0; i < n; ++i) {
    up[i] = 1.0 / resistance_between(layers[i], layers[i + 1]);
    down[i] =
        1.0 / (i + 1 < n ? resistance_between(layers[i + 1], layers[i + 2]) : 0.5 * layers[i + 1].resistance_m2_k_w());
    diagonal[i] = up[i] + down[i];
  }
  right[0] += up[0] * rest.floor_k + rest.edge_w_m2_k * rest.outdoor_k;
  diagonal[0] += rest.edge_w_m2_k;
  right[n - 1] += down[n - 1] * rest.deep_k;
  for (std::size_t i = 1; i < n; ++i) {
    const double factor = up[i] / diagonal[i - 1];
    diagonal[i] -= factor * down[i - 1];
    right[i] += factor * right[i - 1];
  }
  std::vector<double> out(n);
  for (std::size_t i = n; i-- > 0;) out[i] = (right[i] + (i + 1 < n ? down[i] * out[i + 1] : 0.0)) / diagonal[i];
  return out;
}

}  // namespace noonhouse
