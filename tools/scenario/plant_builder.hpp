// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "models/plants/dose.hpp"
#include "models/plants/plant_watch.hpp"
#include "models/plants/pot_watch.hpp"
#include "models/plants/tissue.hpp"
#include "sim/contract/agent.hpp"
#include "sim/graph/house_graph.hpp"
#include "tools/scenario/assemble.hpp"

namespace noonhouse {

/// What surrounds a group of plants: parts of a house, or channels and accounts where the climate of a place is given.
struct PlantSurroundings {
  Input air, vapour;                      ///< temperature [K] and humidity ratio
  Input draught, stirring;                ///< [m/s]
  End air_heat, air_vapour, column_heat;  ///< where heat and vapour go
  Input ground;                           ///< temperature of what the pots stand on [K]
  End ground_heat, ground_water;
  bool hangs = false;                             ///< the pots touch nothing
  ChannelId light, direct, soft;                  ///< on the level of the place [W/m2]
  ChannelId sunlit_gain, shaded_gain, pots_gain;  ///< sunlight taken up [W]
  AccountId sun, instruments;
  double start_k = 293.15;  ///< temperature at the start
  double air_density_kg_m3 = 1.2, pressure_pa = 101325.0, mean_air_k = 293.15;
  double used_to_w_m2 = 0.0;  ///< direct sun that plants standing here are used to
};

/// Puts one group of plants with its pots and what it bears into a graph.
class PlantBuilder {
 public:
  /// Readings that count from the run's start are added to `from_start`.
  PlantBuilder(HouseGraph& graph, const PlantSurroundings& surroundings, std::vector<NodeId>& from_start)
      : graph_(graph), s_(surroundings), from_start_(from_start) {}
  /// Adds tissue, pots and doses; name, kind and limits of `plant` are given, its nodes are filled in.
  void build(const PlantGroupSpec& group, PlantParts& plant);

 private:
  /// One side of the tissue: what it is of the whole.
  struct Side {
    std::string name;
    NodeId node;
    double share = 0.0;
    ChannelId gain, light;
  };
  // plant_builder.cpp
  void add_pots(const PlantGroupSpec& g, PlantParts& plant);
  void add_side(const PlantGroupSpec& g, const PlantParts& plant, const Side& side);
  void join_sides(const PlantGroupSpec& g, const PlantParts& plant);
  NodeId film_node(const std::string& name, double dry_heat_j_k);
  void take_sun(const std::string& name, NodeId node, ChannelId gain);
  void run_off(const std::string& name, NodeId from, double held_kg);
  // plant_limits.cpp
  void add_doses(const PlantGroupSpec& g, PlantParts& plant);
  void add_sunburn(const PlantGroupSpec& g, PlantParts& plant);
  void add_spells(const PlantGroupSpec& g, PlantParts& plant);
  NodeId dose(const std::string& name, double start, double unit);

  HouseGraph& graph_;
  const PlantSurroundings& s_;
  std::vector<NodeId>& from_start_;
};

/// What a group can come to harm by: a name, the reading that tells its dose, and the doses [s] that strain, harm and
/// kill (infinite where it does not come to that).
struct PlantMarks {
  std::string name, words;  ///< words: Hazard::what
  NodeId dose;
  std::array<double, 3> at{};
  Hazard::Loss when_lost;
  Input temperature;  ///< said with it; none: the air's
  enum class Cause { heat, cold, sun, dry, damp, wet } cause = Cause::heat;
};
std::vector<PlantMarks> plant_marks(const PlantParts& plant);

/// Who watches what a group bears: heat, cold, sun, spells, light by the day. `air` is the temperature beside it;
/// `coolers` are the devices in service whose failure lets it get too hot.
std::vector<std::unique_ptr<AgentPlan>> plant_agents(const PlantParts& plant, const Input& air,
                                                     const std::vector<std::string>& coolers);

/// The watch over a group's pots; whose failure leaves them dry is for the caller to add.
PotWatch::Parameters pot_watch_of(const PlantParts& plant, const PlantGroupSpec& group);

}  // namespace noonhouse
