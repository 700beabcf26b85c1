// SPDX-License-Identifier: Apache-2.0
#include "models/plants/plant_kind_parts.hpp"

namespace noonhouse::plant_kind_parts {
namespace {

constexpr const char* kCropHeat =
    "crops of cool and warm seasons: Larcher 2003, Physiological Plant Ecology; from memory, round figure";
constexpr const char* kCropCold =
    "Levitt 1980, Responses of Plants to Environmental Stresses 1; from memory, round figure";
constexpr const char* kPollen =
    "Sato, Peet & Thomas 2000, Plant Cell Environ. 23, 719, abstract: four of five tomatoes set no fruit at 32 degC by "
    "day and 26 by night";
constexpr const char* kColdPollen = "tomatoes set little fruit below 10 degC: common practice, no source";
constexpr const char* kCitrusCold =
    "Yelenosky 1985, Hort. Rev. 7, 201, lemon and lime not hardened; from memory, round";
constexpr const char* kCitrusHeat =
    "between crops and the leaves of tropical trees, half of whose photosystem II fails by 15 min at 47.8 to 52.5 degC "
    "(Slot et al. 2021, doi 10.1111/pce.14060, abstract); from memory, round figure";
constexpr const char* kDampCrop =
    "Grange & Hand 1987, J. Hort. Sci. 62, 125, abstract: below 0.2 kPa disease and disorders";
constexpr const char* kDampTime =
    "shorter than the 28 days at 0.1 kPa that cost tomatoes leaf area (Holder & Cockshull 1990, J. Hort. Sci. 65, 31, "
    "abstract), for grey mould; from memory, round figure";
constexpr const char* kGreyMould = "grey mould and blights need some hours of wet leaves: from memory, round figure";
constexpr const char* kCropWarmth =
    "Jarvis 1976, Phil. Trans. R. Soc. B 273, 593, form; wide, since warm air is dry and the deficit's answer has that "
    "already: a bell of 26 and 11 K spared fogged peppers 4 % of their water where 20 % were measured (Katsoulas et "
    "al. "
    "2007, abstract); figures from memory, round";
constexpr const char* kFruitScald =
    "pepper scalds at 40 to 42 degC, cucumber at 38 to 40 in sun: Rabinowitch et al. 1986, Sci. Hortic. 29; from "
    "memory";

}  // namespace

constinit const PlantKind kLeafyCrop{
    .name = "leafy crop",
    .about = "salads, spinach and young vegetables",
    .body = PlantBody::leaves,
    .rhythm = StomataRhythm::day,
    .leaf_area_index = {2.5, kRound},
    .tissue_kg_m2 = {2.0, "blades of 0.6 mm and their ribs: from memory, round figure"},
    .leaf_size_m = {80.0 * kMillimetre, kRound},
    .thickness_m = {0.6 * kMillimetre, kRound},
    .height_m = {0.2, kRound},
    .absorptance = {0.5, kAbsorbed},
    .holds_film_kg_m2 = {0.25, kFilm},
    .most_conductance_m_s = {8e-3, kOpen},
    .least_conductance_m_s = {0.25e-3, kSkin},
    .faces_with_stomata = {2.0, "lettuce, tomato, cucumber and their kin have them on both faces; from memory"},
    .half_light_w_m2 = {80.0, kRound},
    .half_deficit_pa =
        {4000.0,
         "leaves of watered crops stay the cooler below dry air the drier it is (Idso 1982, Agric. Meteorol. 27, 59, "
         "lines of tomato and lettuce; from memory), which asks for 3 to 5 kPa; round figure"},
    .best_stomata_k = {from_celsius(28.0), kWarmth},
    .stomata_spread_k = {18.0, kWarmth},
    .pot_share_unhindered = {0.4, kRound},
    .harm_above_k = {from_celsius(38.0), kCropHeat},
    .lethal_above_k = {from_celsius(46.0), kCropHeat},
    .heat_tenfold_k = {4.0, kDose},
    .harm_below_k = {from_celsius(-2.0), kCropCold},
    .lethal_below_k = {from_celsius(-6.0), kCropCold},
    .cold_tenfold_k = {1.5, kFrostDose},
    .strained_after_s = {1.0 * kHour, kRound},
    .harmed_after_s = {4.0 * kHour, kRound},
    .cold_strained_after_s = {2.0 * kHour, kFrostHours},
    .cold_harmed_after_s = {8.0 * kHour, kFrostHours},
    .lost_after_s = {1.0 * kHour, kRound},
    .recovers_in_s = {3.0 * kDay, kRecovery},
    .air_harm_above_k = {kNoLimit, "bolting and bitterness are not counted: from memory"},
    .air_harm_below_k = {kNoLimit, kNoAir},
    .air_harms_after_s = {kNoLimit, kNoAir},
    .burns_above_k = {from_celsius(38.0), kSunscald},
    .bears_direct_w_m2 = {350.0, kUnused},
    .burn_light_w_m2 = {300.0, kRound},
    .burn_after_s = {2.0 * kHour, kRound},
    .thirst_harms_after_s = {1.0 * kDay, kRound},
    .thirst_kills_after_s = {3.0 * kDay, kRound},
    .dry_air_above_pa = {2500.0, kHumidity},
    .dry_air_harms_after_s = {3.0 * kDay, kRound},
    .damp_air_below_pa = {200.0, kDampCrop},
    .damp_air_harms_after_s = {5.0 * kDay, kDampTime},
    .wet_harms_after_s = {24.0 * kHour, kGreyMould},
    .least_light_mol_m2 = {8.0, kLight},
    .most_light_mol_m2 = {40.0, kLight},
    .light_harms_after_s = {7.0 * kDay, kRound},
    .shortest_day_s = {kNoLimit, kNoDayLength},
    .longest_day_s = {16.0 * kHour,
                      "lettuce and spinach bolt in long days, by sort from 13 h: from memory, round figure"},
    .roots_harm_above_k = {from_celsius(40.0), kRoots},
};

constinit const PlantKind kFruitingCrop{
    .name = "fruiting crop",
    .about = "tomatoes, peppers, cucumbers and their like in flower and fruit",
    .body = PlantBody::leaves,
    .rhythm = StomataRhythm::day,
    .leaf_area_index = {3.0, kRound},
    .tissue_kg_m2 = {1.5, "blades of 0.35 mm and young stems, without fruit: from memory, round figure"},
    .leaf_size_m = {60.0 * kMillimetre, kRound},
    .thickness_m = {0.35 * kMillimetre, kRound},
    .height_m = {1.5, kRound},
    .absorptance = {0.5, kAbsorbed},
    .holds_film_kg_m2 = {0.3, kFilm},
    .most_conductance_m_s =
        {12e-3, "82 s/m, tomato: Stanghellini 1987, Transpiration of greenhouse crops, thesis; from memory"},
    .least_conductance_m_s =
        {0.25e-3,
         "nights of 120 to 200 g/m2 of a cucumber (Medrano et al. 2005, Sci. Hortic., abstract) ask for it; 500 to "
         "2000 s/m by night in vegetables (Seginer et al. 1990, abstract) would be more"},
    .faces_with_stomata = {2.0, "lettuce, tomato, cucumber and their kin have them on both faces; from memory"},
    .half_light_w_m2 = {100.0, kRound},
    .half_deficit_pa =
        {3000.0,
         "leaves of watered crops stay the cooler below dry air the drier it is (Idso 1982, Agric. Meteorol. 27, 59, "
         "lines of tomato and lettuce; from memory), which asks for 3 to 5 kPa; round figure"},
    .best_stomata_k = {from_celsius(30.0), kCropWarmth},
    .stomata_spread_k = {18.0, kCropWarmth},
    .pot_share_unhindered = {0.4, kRound},
    .harm_above_k = {from_celsius(41.0), kCropHeat},
    .lethal_above_k = {from_celsius(48.0), kCropHeat},
    .heat_tenfold_k = {4.0, kDose},
    .harm_below_k = {from_celsius(4.0), kCropCold},
    .lethal_below_k = {from_celsius(-1.0), kCropCold},
    .cold_tenfold_k = {2.5, kChillDose},
    .strained_after_s = {1.0 * kHour, kRound},
    .harmed_after_s = {4.0 * kHour, kRound},
    .cold_strained_after_s = {12.0 * kHour, kChillDays},
    .cold_harmed_after_s = {72.0 * kHour, kChillDays},
    .lost_after_s = {1.0 * kHour, kRound},
    .recovers_in_s = {3.0 * kDay, kRecovery},
    .air_harm_above_k = {from_celsius(32.0), kPollen},
    .air_harm_below_k = {from_celsius(10.0), kColdPollen},
    .air_harms_after_s = {48.0 * kHour, "some days of hot or cold hours in a row; from memory, round figure"},
    .burns_above_k = {from_celsius(40.0), kFruitScald},
    .bears_direct_w_m2 = {400.0, kUnused},
    .burn_light_w_m2 = {300.0, kRound},
    .burn_after_s = {2.0 * kHour, kRound},
    .thirst_harms_after_s = {1.0 * kDay, kRound},
    .thirst_kills_after_s = {4.0 * kDay, kRound},
    .dry_air_above_pa = {2500.0, kHumidity},
    .dry_air_harms_after_s = {3.0 * kDay, kRound},
    .damp_air_below_pa = {200.0, kDampCrop},
    .damp_air_harms_after_s = {5.0 * kDay, kDampTime},
    .wet_harms_after_s = {12.0 * kHour, kGreyMould},
    .least_light_mol_m2 = {12.0, kLight},
    .most_light_mol_m2 = {kNoLimit, kFullSun},
    .light_harms_after_s = {10.0 * kDay, kRound},
    .shortest_day_s = {8.0 * kHour, kRound},
    .longest_day_s = {18.0 * kHour, "tomato leaves yellow in light without a night: from memory, round figure"},
    .roots_harm_above_k = {from_celsius(41.0), kRoots},
};

constinit const PlantKind kCitrus{
    .name = "citrus in a tub",
    .about = "lemons and other hard-leaved small trees in tubs",
    .body = PlantBody::leaves,
    .rhythm = StomataRhythm::day,
    .leaf_area_index = {2.0, kRound},
    .tissue_kg_m2 = {1.0, "leaves of 0.35 mm and twigs, without trunk and fruit: from memory, round figure"},
    .leaf_size_m = {50.0 * kMillimetre, kRound},
    .thickness_m = {0.35 * kMillimetre, kRound},
    .height_m = {0.8, "a young or trained tree: from memory, round figure"},
    .absorptance = {0.55, kThickAbsorbed},
    .holds_film_kg_m2 = {0.2, kFilm},
    .most_conductance_m_s = {4e-3, kOpen},
    .least_conductance_m_s = {0.08e-3, kSkin},
    .faces_with_stomata = {1.0, "on the lower face, as most woody plants and ferns; from memory"},
    .half_light_w_m2 = {100.0, kRound},
    .half_deficit_pa = {1500.0, kDeficit},
    .best_stomata_k = {from_celsius(30.0), kWarmth},
    .stomata_spread_k = {18.0, kWarmth},
    .pot_share_unhindered = {0.3, kRound},
    .harm_above_k = {from_celsius(44.0), kCitrusHeat},
    .lethal_above_k = {from_celsius(50.0), kCitrusHeat},
    .heat_tenfold_k = {4.0, kDose},
    .harm_below_k = {from_celsius(-1.0), kCitrusCold},
    .lethal_below_k = {from_celsius(-4.0), kCitrusCold},
    .cold_tenfold_k = {1.5, kFrostDose},
    .strained_after_s = {1.0 * kHour, kRound},
    .harmed_after_s = {6.0 * kHour, kRound},
    .cold_strained_after_s = {2.0 * kHour, kFrostHours},
    .cold_harmed_after_s = {8.0 * kHour, kFrostHours},
    .lost_after_s = {1.0 * kHour, kRound},
    .recovers_in_s = {5.0 * kDay, kRecovery},
    .air_harm_above_k = {kNoLimit, "the drop of young fruit in heat is not counted: from memory"},
    .air_harm_below_k = {kNoLimit, kNoAir},
    .air_harms_after_s = {kNoLimit, kNoAir},
    .burns_above_k = {from_celsius(46.0), kSunscald},
    .bears_direct_w_m2 = {400.0, kUnused},
    .burn_light_w_m2 = {300.0, kRound},
    .burn_after_s = {2.0 * kHour, kRound},
    .thirst_harms_after_s = {4.0 * kDay, kRound},
    .thirst_kills_after_s = {12.0 * kDay, kRound},
    .dry_air_above_pa = {3500.0, kHumidity},
    .dry_air_harms_after_s = {7.0 * kDay, kRound},
    .damp_air_below_pa = {150.0, kHumidity},
    .damp_air_harms_after_s = {14.0 * kDay, kRound},
    .wet_harms_after_s = {72.0 * kHour, kRound},
    .least_light_mol_m2 = {10.0, kLight},
    .most_light_mol_m2 = {kNoLimit, kFullSun},
    .light_harms_after_s = {30.0 * kDay, kRound},
    .shortest_day_s = {kNoLimit, kNoDayLength},
    .longest_day_s = {kNoLimit, kNoDayLength},
    .roots_harm_above_k = {from_celsius(44.0), kRoots},
};

}  // namespace noonhouse::plant_kind_parts
