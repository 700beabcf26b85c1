// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <span>
#include <string_view>

#include "models/plants/tissue.hpp"
#include "models/properties/sourced_value.hpp"

namespace noonhouse {

/// How a plant's surface in the sun hangs together with that in its own shade: leaves of their own, or the two sides of
/// one thick stem, pad or rosette through which heat passes.
enum class PlantBody { leaves, one_body };

/// Stands for "this kind has no such limit".
inline constexpr double kNoLimit = -1.0;

/// A kind of plant with the source of each figure; areas are over the ground it covers. Limits are those of plants in
/// good health; single sorts differ by several kelvin. Does not model: growth, varieties, rest in winter.
struct PlantKind {
  const char* name;  ///< in lower case, as a scenario says it
  const char* about;
  PlantBody body;
  StomataRhythm rhythm;
  // Shape.
  SourcedValue leaf_area_index;   ///< area of one side of leaves, or half the surface of stems
  SourcedValue tissue_kg_m2;      ///< fresh mass
  SourcedValue leaf_size_m;       ///< width of a leaf or stem along the air
  SourcedValue thickness_m;       ///< of a leaf or stem
  SourcedValue height_m;          ///< of the plants above their pots
  SourcedValue absorptance;       ///< of sunlight, all wavelengths
  SourcedValue holds_film_kg_m2;  ///< water held before it drips
  // Stomata.
  SourcedValue most_conductance_m_s;   ///< wide open, over leaf area (one side)
  SourcedValue least_conductance_m_s;  ///< shut: the skin
  SourcedValue faces_with_stomata;     ///< of a leaf: 1 or 2
  SourcedValue half_light_w_m2;        ///< sunlight, all wavelengths, at which they are half open
  SourcedValue half_deficit_pa;        ///< vapour pressure deficit that halves their opening
  SourcedValue best_stomata_k;         ///< tissue temperature at which they open widest
  SourcedValue stomata_spread_k;       ///< so far from it they open half as wide
  SourcedValue pot_share_unhindered;   ///< share of what the pots hold below which they begin to shut
  // Heat and cold of the tissue. An hour at `harm` counts one hour, at one `tenfold` beyond it ten.
  SourcedValue harm_above_k, lethal_above_k, heat_tenfold_k;
  SourcedValue harm_below_k, lethal_below_k, cold_tenfold_k;
  SourcedValue strained_after_s, harmed_after_s;            ///< at the harm limit
  SourcedValue cold_strained_after_s, cold_harmed_after_s;  ///< at the cold one: chilling is slower than heat
  SourcedValue lost_after_s;                                ///< at the lethal limit
  SourcedValue recovers_in_s;                               ///< in which half of a dose is forgotten
  // Air for long, such as pollen in heat; kNoLimit where only the tissue counts.
  SourcedValue air_harm_above_k, air_harm_below_k, air_harms_after_s;
  // Sunburn by direct sun on hot tissue.
  SourcedValue burns_above_k;      ///< tissue temperature at which burn_light burns in burn_after
  SourcedValue bears_direct_w_m2;  ///< direct sun on the level that plants used to none bear
  SourcedValue burn_light_w_m2;    ///< beyond what it bears, that makes the full rate
  SourcedValue burn_after_s;
  // Water: long in one spell.
  SourcedValue thirst_harms_after_s, thirst_kills_after_s;
  SourcedValue dry_air_above_pa, dry_air_harms_after_s;    ///< vapour pressure deficit of the air
  SourcedValue damp_air_below_pa, damp_air_harms_after_s;  ///< kNoLimit: bears damp air for ever
  SourcedValue wet_harms_after_s;                          ///< free water on the tissue; kNoLimit: likes it
  // Light by the day.
  SourcedValue least_light_mol_m2, most_light_mol_m2;  ///< photosynthetic light of a day on the level
  SourcedValue light_harms_after_s;                    ///< days with less or more, running mean
  SourcedValue shortest_day_s, longest_day_s;          ///< day length wanted; kNoLimit: does not matter
  SourcedValue roots_harm_above_k;                     ///< wall of the pot
};

/// The library, in the order to show it.
std::span<const PlantKind> plant_kinds();

/// The kind of that name, or null: the caller knows whom to ask again.
const PlantKind* find_plant_kind(std::string_view name);

}  // namespace noonhouse
