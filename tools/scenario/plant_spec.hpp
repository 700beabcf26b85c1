// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <optional>
#include <string>

#include "models/plants/plant_kind.hpp"

/// The plants' part of a scenario: where they stand, what they are, what they bear. SI inside; defaults stand in the
/// field lists.
namespace noonhouse {

/// A bench, shelf or rail with room on it, and beneath it unless plants hang from it.
struct BenchSpec {
  std::string bay;
  bool hangs = false;  ///< a rail or hooks: plants hang in the air, nothing stands under them
  double height_m = 0.0, length_m = 0.0, width_m = 0.0, heat_capacity_j_m2_k = 0.0, absorptance = 0.0;
  double lets_through = 0.0;
  std::optional<double> from_first_end_m, from_front_m;
};

/// A kind of plant as a scenario has it; PlantKind says what each figure means.
struct PlantKindSpec {
  std::string like, about;
  PlantBody body = PlantBody::leaves;
  StomataRhythm rhythm = StomataRhythm::day;
  double leaf_area_index = 0.0, tissue_kg_m2 = 0.0, leaf_size_m = 0.0, thickness_m = 0.0, height_m = 0.0;
  double absorptance = 0.0, holds_film_kg_m2 = 0.0;
  double most_conductance_m_s = 0.0, least_conductance_m_s = 0.0, half_deficit_pa = 0.0, half_light_w_m2 = 0.0;
  int faces_with_stomata = 1;
  double best_stomata_k = 0.0, stomata_spread_k = 0.0, pot_share_unhindered = 0.0;
  double harm_above_k = 0.0, lethal_above_k = 0.0, heat_tenfold_k = 0.0;
  double harm_below_k = 0.0, lethal_below_k = 0.0, cold_tenfold_k = 0.0;
  double cold_strain_after_s = 0.0, cold_harm_after_s = 0.0;
  double strain_after_s = 0.0, harm_after_s = 0.0, lost_after_s = 0.0, recovers_in_s = 0.0;
  std::optional<double> air_harm_above_k, air_harm_below_k;
  double air_harms_after_s = 0.0;
  double burns_above_k = 0.0, bears_direct_w_m2 = 0.0, burn_light_w_m2 = 0.0, burn_after_s = 0.0;
  double thirst_harms_after_s = 0.0, thirst_kills_after_s = 0.0;
  std::optional<double> dry_air_above_pa;
  double dry_air_harms_after_s = 0.0;
  std::optional<double> damp_air_below_pa;
  double damp_air_harms_after_s = 0.0;
  std::optional<double> wet_harms_after_s;
  double least_light_mol_m2 = 0.0, light_harms_after_s = 0.0;
  std::optional<double> most_light_mol_m2;
  std::optional<double> shortest_day_s, longest_day_s;
  double roots_harm_above_k = 0.0;
};

/// Share of roots that lies along the pots' walls: their temperature is that of walls and soil so mixed; common
/// practice, no source.
inline constexpr double kWallOfRoots = 0.5;

struct PlantGroupSpec {
  std::string kind, place;
  bool under = false;
  bool may_move = true;
  double area_m2 = 0.0, pot_water_kg_m2 = 0.0, pot_dry_heat_j_m2_k = 0.0, pot_absorptance = 0.0, dry_at = 0.0;
  std::optional<double> used_to_direct_w_m2;
};

}  // namespace noonhouse
