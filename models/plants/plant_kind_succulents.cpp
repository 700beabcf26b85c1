// SPDX-License-Identifier: Apache-2.0
#include "models/plants/plant_kind_parts.hpp"

namespace noonhouse::plant_kind_parts {
namespace {

constexpr const char* kNobel = "Nobel 1988, Environmental Biology of Agaves and Cacti; from memory, round figure";
constexpr const char* kCactusHeat =
    "Nobel & De la Barrera 2002, Biotropica 34, 225, abstract: half the cells live after 1 h at 64 degC, mean of 18 "
    "desert cacti; Nobel 1983, in Effects of Stress on Photosynthesis, 165, abstract: 53 degC for Opuntia bigelovii "
    "not hardened, its night uptake halved by 44; set between";
constexpr const char* kForestCactusHeat =
    "Nobel & De la Barrera 2002, Biotropica 34, 225, abstract: half the cells of a forest cactus live after 1 h at 55 "
    "degC, necrosis after weeks of 40 degC days; set lower";
constexpr const char* kCactusCold =
    "Nobel 1983, in Effects of Stress on Photosynthesis, 165, abstract: Opuntia bigelovii half lives 1 h at -7 degC, "
    "its night uptake halved by -4; kinds of frostless deserts set warmer, from memory";
constexpr const char* kNoDryAir = "none: dry air only costs water; from memory";

}  // namespace

constinit const PlantKind kSunSucculent{
    .name = "sun succulent",
    .about = "cacti and thick-leaved kinds of open ground, as barrels, columns or rosettes of 60 mm, used to sun",
    .body = PlantBody::one_body,
    .rhythm = StomataRhythm::night,
    .leaf_area_index = {0.8, "balls or columns that cover half the bench: from memory, round figure"},
    .tissue_kg_m2 = {24.0, "half the surface times half the thickness (column) of water; from memory"},
    .leaf_size_m = {60.0 * kMillimetre, kRound},
    .thickness_m = {60.0 * kMillimetre, kRound},
    .height_m = {0.2, kRound},
    .absorptance = {0.6, kThickAbsorbed},
    .holds_film_kg_m2 = {0.04, kWaxyFilm},
    .most_conductance_m_s = {2e-3, kNobel},
    .least_conductance_m_s = {0.03e-3, kNobel},
    .faces_with_stomata = {2.0, "all over the stem, whose half surface counts; from memory"},
    .half_light_w_m2 = {50.0, kRound},
    .half_deficit_pa = {2000.0, kDeficit},
    .best_stomata_k = {from_celsius(15.0), kNobel},
    .stomata_spread_k = {12.0, kNobel},
    .pot_share_unhindered = {0.15, "drawn on its own water besides: from memory, round figure"},
    .harm_above_k = {from_celsius(53.0), kCactusHeat},
    .lethal_above_k = {from_celsius(60.0), kCactusHeat},
    .heat_tenfold_k = {4.0, kDose},
    .harm_below_k = {from_celsius(2.0), kCactusCold},
    .lethal_below_k = {from_celsius(-2.0), kCactusCold},
    .cold_tenfold_k = {2.0, kFrostDose},
    .strained_after_s = {1.0 * kHour, kRound},
    .harmed_after_s = {6.0 * kHour, kRound},
    .cold_strained_after_s = {3.0 * kHour, kFrostHours},
    .cold_harmed_after_s = {12.0 * kHour, kFrostHours},
    .lost_after_s = {1.0 * kHour, "the time that the limits of heat are stated for: Nobel 1988, from memory"},
    .recovers_in_s = {7.0 * kDay, kRecovery},
    .air_harm_above_k = {kNoLimit, kNoAir},
    .air_harm_below_k = {kNoLimit, kNoAir},
    .air_harms_after_s = {kNoLimit, kNoAir},
    .burns_above_k = {from_celsius(48.0), kSunscald},
    .bears_direct_w_m2 = {450.0, kUnused},
    .burn_light_w_m2 = {300.0, kRound},
    .burn_after_s = {2.0 * kHour, kRound},
    .thirst_harms_after_s = {40.0 * kDay, kRound},
    .thirst_kills_after_s = {90.0 * kDay, kRound},
    .dry_air_above_pa = {kNoLimit, kNoDryAir},
    .dry_air_harms_after_s = {kNoLimit, kNoDryAir},
    .damp_air_below_pa = {300.0, kHumidity},
    .damp_air_harms_after_s = {10.0 * kDay, kRound},
    .wet_harms_after_s = {48.0 * kHour, "rots and black spots where it stays wet: common practice, no source"},
    .least_light_mol_m2 = {10.0, kLight},
    .most_light_mol_m2 = {kNoLimit, kFullSun},
    .light_harms_after_s = {30.0 * kDay, kRound},
    .shortest_day_s = {kNoLimit, kNoDayLength},
    .longest_day_s = {kNoLimit, kNoDayLength},
    .roots_harm_above_k = {from_celsius(50.0), kRoots},
};

constinit const PlantKind kShadeSucculent{
    .name = "shade succulent",
    .about = "small rosettes and forest cacti that grow under shrubs, with leaves of 20 mm",
    .body = PlantBody::one_body,
    .rhythm = StomataRhythm::night,
    .leaf_area_index = {1.0, kRound},
    .tissue_kg_m2 = {12.0, "half the surface times 0.6 of the thickness (tapering leaves) of water; from memory"},
    .leaf_size_m = {20.0 * kMillimetre, kRound},
    .thickness_m = {20.0 * kMillimetre, kRound},
    .height_m = {0.1, kRound},
    .absorptance = {0.65, kThickAbsorbed},
    .holds_film_kg_m2 = {0.05, kWaxyFilm},
    .most_conductance_m_s = {1.5e-3, kNobel},
    .least_conductance_m_s = {0.04e-3, kNobel},
    .faces_with_stomata = {2.0, "all over the stem, whose half surface counts; from memory"},
    .half_light_w_m2 = {25.0, kRound},
    .half_deficit_pa = {1500.0, kDeficit},
    .best_stomata_k = {from_celsius(17.0), kNobel},
    .stomata_spread_k = {11.0, kNobel},
    .pot_share_unhindered = {0.2, "draws on its own water besides: from memory, round figure"},
    .harm_above_k = {from_celsius(45.0), kForestCactusHeat},
    .lethal_above_k = {from_celsius(52.0), kForestCactusHeat},
    .heat_tenfold_k = {4.0, kDose},
    .harm_below_k = {from_celsius(3.0), kCactusCold},
    .lethal_below_k = {from_celsius(-1.0), kCactusCold},
    .cold_tenfold_k = {2.0, kFrostDose},
    .strained_after_s = {1.0 * kHour, kRound},
    .harmed_after_s = {6.0 * kHour, kRound},
    .cold_strained_after_s = {3.0 * kHour, kFrostHours},
    .cold_harmed_after_s = {12.0 * kHour, kFrostHours},
    .lost_after_s = {1.0 * kHour, "the time that the limits of heat are stated for: Nobel 1988, from memory"},
    .recovers_in_s = {7.0 * kDay, kRecovery},
    .air_harm_above_k = {kNoLimit, kNoAir},
    .air_harm_below_k = {kNoLimit, kNoAir},
    .air_harms_after_s = {kNoLimit, kNoAir},
    .burns_above_k = {from_celsius(40.0), kSunscald},
    .bears_direct_w_m2 = {200.0, kUnused},
    .burn_light_w_m2 = {200.0, kRound},
    .burn_after_s = {1.0 * kHour, kRound},
    .thirst_harms_after_s = {25.0 * kDay, kRound},
    .thirst_kills_after_s = {60.0 * kDay, kRound},
    .dry_air_above_pa = {kNoLimit, kNoDryAir},
    .dry_air_harms_after_s = {kNoLimit, kNoDryAir},
    .damp_air_below_pa = {200.0, kHumidity},
    .damp_air_harms_after_s = {14.0 * kDay, kRound},
    .wet_harms_after_s = {48.0 * kHour, "rots where it stays wet: common practice, no source"},
    .least_light_mol_m2 = {4.0, kLight},
    .most_light_mol_m2 = {20.0, kLight},
    .light_harms_after_s = {30.0 * kDay, kRound},
    .shortest_day_s = {kNoLimit, kNoDayLength},
    .longest_day_s = {kNoLimit, kNoDayLength},
    .roots_harm_above_k = {from_celsius(45.0), kRoots},
};

}  // namespace noonhouse::plant_kind_parts
