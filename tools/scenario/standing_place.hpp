// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "tools/scenario/house_shape.hpp"
#include "tools/scenario/scenario_spec.hpp"

namespace noonhouse {

/// Height of pots [m]; common practice, no source.
inline constexpr double kPotHeight = 0.15;

/// Where plants can stand: on or under a bench, hanging from a rail, or on a bay's open floor.
struct StandingPlace {
  enum class Of { on, under, floor };
  Of of = Of::on;
  int bench = -1;  ///< of on and under; -1 on the floor
  int bay = 0;
  double height_m = 0.0;  ///< of what the pots stand on, above the floor
  bool hangs = false;
  std::string name;  ///< "on the low bench", "on the floor of the west bay"
};

/// Every place of a house, used or not: of each bench its top and what is beneath, then each bay's open floor. A rail
/// has nothing beneath, nor has a board on the floor.
std::vector<StandingPlace> standing_places(const ScenarioSpec& spec, const HouseShape& shape);

/// Where the middle of plants of a kind is when they stand on a place, above the floor [m]: their air is that of this
/// height.
double canopy_height_m(const StandingPlace& place, const PlantKindSpec& kind);

/// How high pots and plants together may be on a place [m]: to the bench above, the roof over both edges of a bench or
/// rail; on a bay's floor to the ridge.
double headroom_m(const StandingPlace& place, const ScenarioSpec& spec, const HouseShape& shape);

/// The place that a group stands on: an index into standing_places.
int place_of(const PlantGroupSpec& group, const std::vector<StandingPlace>& places, const ScenarioSpec& spec);

}  // namespace noonhouse
