// SPDX-License-Identifier: Apache-2.0
#include "models/plants/plant_kind_parts.hpp"
#include "models/properties/sourced_value.hpp"

namespace noonhouse::plant_kind_parts {
namespace {

constexpr const char* kShadeOpen =
    "Korner 1995, in Schulze & Caldwell, shade plants less than half of crops; from memory, round figure";
constexpr const char* kTightSkin =
    "Helbsing, Riederer & Zotz 2000, Ann. Bot. 86, 765: epiphytes have tight skins; from memory, round figure";
constexpr const char* kTropicalCold =
    "chilled above freezing: Larcher 2003, Physiological Plant Ecology; from memory, round figure";
constexpr const char* kFernHeat =
    "lower than trees of wet forests, which begin to suffer at 43.5 to 49.7 degC (Slot et al. 2021, "
    "doi 10.1111/pce.14060, abstract); from memory, round figure";
constexpr const char* kOrchidLight =
    "Guo, Lin & Lee 2012, J. Am. Soc. Hort. Sci. 137, 465, abstract: Phalaenopsis needs 125 to 200 umol/(m2 s) and "
    "suffers above 325";
constexpr const char* kOrchidWarmth =
    "Pollet et al. 2011, Ann. Appl. Biol. (authors and year from memory), abstract: 17.1 to 19.9 degC by night serve a "
    "Phalaenopsis; spread from memory, round figure";
constexpr const char* kOrchidHeat =
    "at home 28 to 35 degC by day (Lopez et al. 2007, Orchids, Growing the Best Phalaenopsis 3); leaves of "
    "night-openers half fail at 50 to 51 degC in light (Krause et al., abstract; year 2016 from memory); set lower";
constexpr const char* kLikesDamp = "none: grows in damp air; common practice, no source";
constexpr const char* kLikesWet = "none: rained on daily at home; common practice, no source";

}  // namespace

constinit const PlantKind kFern{
    .name = "fern",
    .about = "ferns of the warm forest floor, with thin fronds",
    .body = PlantBody::leaves,
    .rhythm = StomataRhythm::day,
    .leaf_area_index = {2.0, kRound},
    .tissue_kg_m2 = {0.6, "blades of 0.25 mm and their stalks: from memory, round figure"},
    .leaf_size_m = {20.0 * kMillimetre, kRound},
    .thickness_m = {0.25 * kMillimetre, kRound},
    .height_m = {0.35, kRound},
    .absorptance = {0.5, kAbsorbed},
    .holds_film_kg_m2 = {0.2, kFilm},
    .most_conductance_m_s = {3e-3, kShadeOpen},
    .least_conductance_m_s = {0.2e-3, kSkin},
    .faces_with_stomata = {1.0, "on the lower face, as most woody plants and ferns; from memory"},
    .half_light_w_m2 = {30.0, kRound},
    .half_deficit_pa = {1500.0, kDeficit},
    .best_stomata_k = {from_celsius(26.0), kWarmth},
    .stomata_spread_k = {18.0, kWarmth},
    .pot_share_unhindered = {0.4, kRound},
    .harm_above_k = {from_celsius(35.0), kFernHeat},
    .lethal_above_k = {from_celsius(43.0), kFernHeat},
    .heat_tenfold_k = {4.0, kDose},
    .harm_below_k = {from_celsius(6.0), kTropicalCold},
    .lethal_below_k = {from_celsius(1.0), kTropicalCold},
    .cold_tenfold_k = {3.0, kChillDose},
    .strained_after_s = {1.0 * kHour, kRound},
    .harmed_after_s = {5.0 * kHour, kRound},
    .cold_strained_after_s = {8.0 * kHour, kChillDays},
    .cold_harmed_after_s = {48.0 * kHour, kChillDays},
    .lost_after_s = {1.0 * kHour, kRound},
    .recovers_in_s = {4.0 * kDay, kRecovery},
    .air_harm_above_k = {kNoLimit, kNoAir},
    .air_harm_below_k = {kNoLimit, kNoAir},
    .air_harms_after_s = {kNoLimit, kNoAir},
    .burns_above_k = {from_celsius(33.0), kSunscald},
    .bears_direct_w_m2 = {100.0, kUnused},
    .burn_light_w_m2 = {200.0, kRound},
    .burn_after_s = {1.0 * kHour, kRound},
    .thirst_harms_after_s = {1.5 * kDay, kRound},
    .thirst_kills_after_s = {4.0 * kDay, kRound},
    .dry_air_above_pa = {2000.0, kHumidity},
    .dry_air_harms_after_s = {2.0 * kDay, kRound},
    .damp_air_below_pa = {kNoLimit, kLikesDamp},
    .damp_air_harms_after_s = {kNoLimit, kLikesDamp},
    .wet_harms_after_s = {kNoLimit, kLikesWet},
    .least_light_mol_m2 = {2.0, kLight},
    .most_light_mol_m2 = {10.0, kLight},
    .light_harms_after_s = {14.0 * kDay, kRound},
    .shortest_day_s = {kNoLimit, kNoDayLength},
    .longest_day_s = {kNoLimit, kNoDayLength},
    .roots_harm_above_k = {from_celsius(38.0), kRoots},
};

constinit const PlantKind kForestEpiphyte{
    .name = "forest epiphyte",
    .about = "leathery plants that grow on trees of wet forests and open their stomata by day",
    .body = PlantBody::leaves,
    .rhythm = StomataRhythm::day,
    .leaf_area_index = {2.0, kRound},
    .tissue_kg_m2 = {1.2, "leathery blades of 0.6 mm: from memory, round figure"},
    .leaf_size_m = {40.0 * kMillimetre, kRound},
    .thickness_m = {0.6 * kMillimetre, kRound},
    .height_m = {0.3, kRound},
    .absorptance = {0.55, kThickAbsorbed},
    .holds_film_kg_m2 = {0.2, kFilm},
    .most_conductance_m_s = {2.5e-3, kShadeOpen},
    .least_conductance_m_s = {0.06e-3, kTightSkin},
    .faces_with_stomata = {1.0, "on the lower face, as most woody plants and ferns; from memory"},
    .half_light_w_m2 = {40.0, kRound},
    .half_deficit_pa = {1200.0, kDeficit},
    .best_stomata_k = {from_celsius(27.0), kWarmth},
    .stomata_spread_k = {18.0, kWarmth},
    .pot_share_unhindered = {0.3, kRound},
    .harm_above_k = {from_celsius(39.0), kTropicalHeat},
    .lethal_above_k = {from_celsius(46.0), kTropicalHeat},
    .heat_tenfold_k = {4.0, kDose},
    .harm_below_k = {from_celsius(7.0), kTropicalCold},
    .lethal_below_k = {from_celsius(1.0), kTropicalCold},
    .cold_tenfold_k = {3.0, kChillDose},
    .strained_after_s = {1.0 * kHour, kRound},
    .harmed_after_s = {6.0 * kHour, kRound},
    .cold_strained_after_s = {8.0 * kHour, kChillDays},
    .cold_harmed_after_s = {48.0 * kHour, kChillDays},
    .lost_after_s = {1.0 * kHour, kRound},
    .recovers_in_s = {5.0 * kDay, kRecovery},
    .air_harm_above_k = {kNoLimit, kNoAir},
    .air_harm_below_k = {kNoLimit, kNoAir},
    .air_harms_after_s = {kNoLimit, kNoAir},
    .burns_above_k = {from_celsius(36.0), kSunscald},
    .bears_direct_w_m2 = {150.0, kUnused},
    .burn_light_w_m2 = {200.0, kRound},
    .burn_after_s = {1.0 * kHour, kRound},
    .thirst_harms_after_s = {7.0 * kDay, kRound},
    .thirst_kills_after_s = {20.0 * kDay, kRound},
    .dry_air_above_pa = {1500.0, kHumidity},
    .dry_air_harms_after_s = {2.0 * kDay, kRound},
    .damp_air_below_pa = {kNoLimit, kLikesDamp},
    .damp_air_harms_after_s = {kNoLimit, kLikesDamp},
    .wet_harms_after_s = {kNoLimit, kLikesWet},
    .least_light_mol_m2 = {3.0, kLight},
    .most_light_mol_m2 = {12.0, kLight},
    .light_harms_after_s = {21.0 * kDay, kRound},
    .shortest_day_s = {kNoLimit, kNoDayLength},
    .longest_day_s = {kNoLimit, kNoDayLength},
    .roots_harm_above_k = {from_celsius(40.0), kRoots},
};

constinit const PlantKind kOrchid{
    .name = "orchid",
    .about = "moth orchids and the like: thick leaves of warm shade, stomata open by night",
    .body = PlantBody::leaves,
    .rhythm = StomataRhythm::night,
    .leaf_area_index = {1.5, kRound},
    .tissue_kg_m2 = {3.0, "leaves of 2 mm: from memory, round figure"},
    .leaf_size_m = {80.0 * kMillimetre, kRound},
    .thickness_m = {2.0 * kMillimetre, kRound},
    .height_m = {0.2, "of the leaves: from memory, round figure"},
    .absorptance = {0.6, kThickAbsorbed},
    .holds_film_kg_m2 = {0.08, kWaxyFilm},
    .most_conductance_m_s = {1.2e-3, "night-openers open little: Nobel 1988; from memory, round figure"},
    .least_conductance_m_s = {0.05e-3, kTightSkin},
    .faces_with_stomata = {1.0, "on the lower face, as most woody plants and ferns; from memory"},
    .half_light_w_m2 = {30.0, kRound},
    .half_deficit_pa = {1500.0, kDeficit},
    .best_stomata_k = {from_celsius(19.0), kOrchidWarmth},
    .stomata_spread_k = {9.0, kOrchidWarmth},
    .pot_share_unhindered = {0.25, kRound},
    .harm_above_k = {from_celsius(39.0), kOrchidHeat},
    .lethal_above_k = {from_celsius(46.0), kOrchidHeat},
    .heat_tenfold_k = {4.0, kDose},
    .harm_below_k = {from_celsius(8.0), kTropicalCold},
    .lethal_below_k = {from_celsius(2.0), kTropicalCold},
    .cold_tenfold_k = {3.0, kChillDose},
    .strained_after_s = {1.0 * kHour, kRound},
    .harmed_after_s = {6.0 * kHour, kRound},
    .cold_strained_after_s = {12.0 * kHour, kChillDays},
    .cold_harmed_after_s = {72.0 * kHour, kChillDays},
    .lost_after_s = {1.0 * kHour, kRound},
    .recovers_in_s = {5.0 * kDay, kRecovery},
    .air_harm_above_k = {kNoLimit, kNoAir},
    .air_harm_below_k = {kNoLimit, kNoAir},
    .air_harms_after_s = {kNoLimit, kNoAir},
    .burns_above_k = {from_celsius(36.0), kSunscald},
    .bears_direct_w_m2 = {150.0, kOrchidLight},
    .burn_light_w_m2 = {200.0, kRound},
    .burn_after_s = {1.0 * kHour, kCommonPractice},
    .thirst_harms_after_s = {10.0 * kDay, kRound},
    .thirst_kills_after_s = {30.0 * kDay, kRound},
    .dry_air_above_pa = {2000.0, kHumidity},
    .dry_air_harms_after_s = {5.0 * kDay, kRound},
    .damp_air_below_pa = {150.0, kHumidity},
    .damp_air_harms_after_s = {10.0 * kDay, kRound},
    .wet_harms_after_s = {12.0 * kHour, "dry by nightfall, lest the crown rots: common practice, no source"},
    .least_light_mol_m2 = {4.0, kOrchidLight},
    .most_light_mol_m2 = {14.0, kOrchidLight},
    .light_harms_after_s = {21.0 * kDay, kRound},
    .shortest_day_s = {kNoLimit, kNoDayLength},
    .longest_day_s = {kNoLimit, kNoDayLength},
    .roots_harm_above_k = {from_celsius(41.0), kRoots},
};

}  // namespace noonhouse::plant_kind_parts
