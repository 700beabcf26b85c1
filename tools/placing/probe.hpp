// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "tools/placing/place_climate.hpp"

namespace noonhouse {

/// One thing a plant bears, as its dose over the mark at which it is strained: 1 is strained. `harmed` and `lost` are
/// the same marks for the next steps; infinite where it does not come to that.
struct HazardFelt {
  std::string what;  ///< "heat", "cold", "sunburn", "dry air" ...
  double most = 0.0, harmed = 0.0, lost = 0.0;
};

/// What a plant felt on one day of a place.
struct DayFelt {
  double peak_k = 0.0, peak_at_s = 0.0, lowest_k = 0.0;  ///< tissue, the worse side; time since midnight
  double peak_air_k = 0.0;
  double light_mol_m2 = 0.0, lit_s = 0.0;       ///< photosynthetic light on the level, length of the day
  double hot_s = 0.0, cold_s = 0.0;             ///< tissue beyond its harm limits
  double dry_s = 0.0, wet_s = 0.0;              ///< air drier than the kind likes; free water on it
  double heat_dose_s = 0.0, cold_dose_s = 0.0;  ///< taken up by themselves, nothing forgotten: of the day; of the
                                                ///< night that ends on it, from noon to noon
};

/// What a group of plants would feel on a place.
struct PlaceFelt {
  std::string outcome = "kept", reason;  ///< as a run says it
  double harm = 0.0;                     ///< points; see harm_points
  std::vector<HazardFelt> hazards;
  std::vector<DayFelt> days;
  std::vector<float> tissue_k;                        ///< sunlit side, one each HouseClimates::every
  double peak_k = 0.0, peak_s = 0.0, lowest_k = 0.0;  ///< tissue, the worse side
  double peak_wall_k = 0.0;                           ///< walls of the pots
};

/// How a place is harmful, to add up and to minimise: the worst hazard decides, near misses break ties.
///   fine: nothing, or 0.5 for a near miss (from three quarters of the mark on); strained 10 to 20; harmed 100 to 200,
///   or where nothing kills 100 and 50 for each tenfold of the dose; lost 1000 and 100 for each tenfold
/// and a hundredth of what the other hazards come to. Within a band of harm a straight line in the dose. So nothing is
/// moved for the sake of a harm that is far off.
double harm_points(const std::vector<HazardFelt>& hazards);

/// The hazard that decides: by its points, and among equals by its dose over the mark; null where there is none.
const HazardFelt* worst_hazard(const PlaceFelt& felt);

/// Why a kind cannot stand on a place, as in "the low bench has only 0.3 m above it ..."; empty where it can.
std::string too_low(const PlantKindSpec& kind, const PlaceClimate& place);

/// How the pots are watered while a plant is tried somewhere.
struct ProbeWatering {
  std::vector<double> visits_s;  ///< times of day at which pots are filled; none: never
  double fill_share = 0.95;
};

/// A group of plants in the climate of a place, by the same laws, doses and watches as in the house; what it would do
/// to that climate (shade, warm and moisten it) is left out, and its thermal radiation is exchanged with what the place
/// sees as if that were black. `used_to_w_m2` is the direct sun it comes from.
PlaceFelt feel_place(const PlantGroupSpec& group, const PlantKindSpec& kind, const PlaceClimate& place,
                     const HouseClimates& house, double used_to_w_m2, const ProbeWatering& watering);

}  // namespace noonhouse
