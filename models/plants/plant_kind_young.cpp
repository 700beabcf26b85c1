// SPDX-License-Identifier: Apache-2.0
#include "models/plants/plant_kind_parts.hpp"

namespace noonhouse::plant_kind_parts {
namespace {

constexpr const char* kYoungHeat = "tissue not yet hardened, below grown crops: from memory, round figure";
constexpr const char* kYoungCold = "warm-season kinds, mostly: Levitt 1980; from memory, round figure";
constexpr const char* kSeedlingLight =
    "Torres & Lopez 2011, HortScience 46, 282, abstract: 14 to 16 mol/(m2 d) give the best seedlings of 0.75 to 25; "
    "set around it; authors, year and span from memory";
constexpr const char* kCuttingLight =
    "Currey, Hutchinson & Lopez 2012, HortScience 47, 25, as reported: 8 to 10 mol/(m2 d) root best; set around it, "
    "less before roots, from memory";
constexpr const char* kMist = "none: kept under mist or a hood; common practice, no source";
constexpr const char* kUnrooted = "no roots bring water: from memory, round figure";

}  // namespace

constinit const PlantKind kSeedling{
    .name = "seedling",
    .about = "trays of young vegetables and flowers with their first leaves",
    .body = PlantBody::leaves,
    .rhythm = StomataRhythm::day,
    .leaf_area_index = {0.8, kRound},
    .tissue_kg_m2 = {0.25, "blades of 0.25 mm and stems: from memory, round figure"},
    .leaf_size_m = {20.0 * kMillimetre, kRound},
    .thickness_m = {0.25 * kMillimetre, kRound},
    .height_m = {0.06, kRound},
    .absorptance = {0.5, kAbsorbed},
    .holds_film_kg_m2 = {0.08, kFilm},
    .most_conductance_m_s = {7e-3, kOpen},
    .least_conductance_m_s = {0.3e-3, kSkin},
    .faces_with_stomata = {2.0, "lettuce, tomato, cucumber and their kin have them on both faces; from memory"},
    .half_light_w_m2 = {60.0, kRound},
    .half_deficit_pa =
        {2500.0,
         "leaves of watered crops stay the cooler below dry air the drier it is (Idso 1982, Agric. Meteorol. 27, 59, "
         "lines of tomato and lettuce; from memory), which asks for 3 to 5 kPa; round figure"},
    .best_stomata_k = {from_celsius(27.0), kWarmth},
    .stomata_spread_k = {18.0, kWarmth},
    .pot_share_unhindered = {0.5, kRound},
    .harm_above_k = {from_celsius(37.0), kYoungHeat},
    .lethal_above_k = {from_celsius(44.0), kYoungHeat},
    .heat_tenfold_k = {4.0, kDose},
    .harm_below_k = {from_celsius(3.0), kYoungCold},
    .lethal_below_k = {from_celsius(-1.0), kYoungCold},
    .cold_tenfold_k = {2.0, kChillDose},
    .strained_after_s = {0.5 * kHour, kRound},
    .harmed_after_s = {3.0 * kHour, kRound},
    .cold_strained_after_s = {6.0 * kHour, kChillDays},
    .cold_harmed_after_s = {36.0 * kHour, kChillDays},
    .lost_after_s = {1.0 * kHour, kRound},
    .recovers_in_s = {3.0 * kDay, kRecovery},
    .air_harm_above_k = {kNoLimit, kNoAir},
    .air_harm_below_k = {kNoLimit, kNoAir},
    .air_harms_after_s = {kNoLimit, kNoAir},
    .burns_above_k = {from_celsius(36.0), kSunscald},
    .bears_direct_w_m2 = {250.0, kUnused},
    .burn_light_w_m2 = {200.0, kRound},
    .burn_after_s = {1.0 * kHour, kRound},
    .thirst_harms_after_s = {8.0 * kHour, kRound},
    .thirst_kills_after_s = {36.0 * kHour, kRound},
    .dry_air_above_pa = {1500.0, kHumidity},
    .dry_air_harms_after_s = {12.0 * kHour, kRound},
    .damp_air_below_pa = {150.0, kHumidity},
    .damp_air_harms_after_s = {3.0 * kDay, "damping off: from memory, round figure"},
    .wet_harms_after_s = {24.0 * kHour, "damping off and mildew: from memory, round figure"},
    .least_light_mol_m2 = {6.0, kSeedlingLight},
    .most_light_mol_m2 = {25.0, kSeedlingLight},
    .light_harms_after_s = {4.0 * kDay, "draws out within days in the dark: from memory, round figure"},
    .shortest_day_s = {8.0 * kHour, kRound},
    .longest_day_s = {18.0 * kHour, "tomato leaves yellow in light without a night: from memory, round figure"},
    .roots_harm_above_k = {from_celsius(38.0), kRoots},
};

constinit const PlantKind kCutting{
    .name = "unrooted cutting",
    .about = "leafy cuttings without roots, kept in shade and damp air",
    .body = PlantBody::leaves,
    .rhythm = StomataRhythm::day,
    .leaf_area_index = {1.0, kRound},
    .tissue_kg_m2 = {0.45, "blades of 0.3 mm and stems: from memory, round figure"},
    .leaf_size_m = {30.0 * kMillimetre, kRound},
    .thickness_m = {0.3 * kMillimetre, kRound},
    .height_m = {0.1, kRound},
    .absorptance = {0.5, kAbsorbed},
    .holds_film_kg_m2 = {0.1, kFilm},
    .most_conductance_m_s = {3e-3, kUnrooted},
    .least_conductance_m_s = {0.3e-3, kSkin},
    .faces_with_stomata = {1.0, "on the lower face, as most woody plants and ferns; from memory"},
    .half_light_w_m2 = {60.0, kRound},
    .half_deficit_pa = {1500.0, kDeficit},
    .best_stomata_k = {from_celsius(27.0), kWarmth},
    .stomata_spread_k = {18.0, kWarmth},
    .pot_share_unhindered = {0.6, kUnrooted},
    .harm_above_k = {from_celsius(35.0), kYoungHeat},
    .lethal_above_k = {from_celsius(43.0), kYoungHeat},
    .heat_tenfold_k = {4.0, kDose},
    .harm_below_k = {from_celsius(5.0), kYoungCold},
    .lethal_below_k = {from_celsius(0.0), kYoungCold},
    .cold_tenfold_k = {2.5, kChillDose},
    .strained_after_s = {0.5 * kHour, kRound},
    .harmed_after_s = {3.0 * kHour, kRound},
    .cold_strained_after_s = {8.0 * kHour, kChillDays},
    .cold_harmed_after_s = {48.0 * kHour, kChillDays},
    .lost_after_s = {1.0 * kHour, kRound},
    .recovers_in_s = {4.0 * kDay, kRecovery},
    .air_harm_above_k = {kNoLimit, kNoAir},
    .air_harm_below_k = {kNoLimit, kNoAir},
    .air_harms_after_s = {kNoLimit, kNoAir},
    .burns_above_k = {from_celsius(33.0), kSunscald},
    .bears_direct_w_m2 = {100.0, kUnused},
    .burn_light_w_m2 = {150.0, kRound},
    .burn_after_s = {1.0 * kHour, kRound},
    .thirst_harms_after_s = {4.0 * kHour, kUnrooted},
    .thirst_kills_after_s = {24.0 * kHour, kUnrooted},
    .dry_air_above_pa = {800.0, "held below 0.8 kPa until rooted: common practice, no source"},
    .dry_air_harms_after_s = {4.0 * kHour, kUnrooted},
    .damp_air_below_pa = {kNoLimit, kMist},
    .damp_air_harms_after_s = {kNoLimit, kMist},
    .wet_harms_after_s = {kNoLimit, kMist},
    .least_light_mol_m2 = {4.0, kCuttingLight},
    .most_light_mol_m2 = {12.0, kCuttingLight},
    .light_harms_after_s = {5.0 * kDay, kRound},
    .shortest_day_s = {kNoLimit, kNoDayLength},
    .longest_day_s = {kNoLimit, kNoDayLength},
    .roots_harm_above_k = {from_celsius(36.0),
                           "of the base where roots form, held at 20 to 25 degC: from memory, round"},
};

}  // namespace noonhouse::plant_kind_parts
