// SPDX-License-Identifier: Apache-2.0
#pragma once
#include "models/plants/plant_kind.hpp"
#include "models/properties/constants.hpp"
#include "models/properties/sourced_value.hpp"

namespace noonhouse {

/// What the files of the library of plant kinds share; nobody else includes it. "Abstract" in a
/// source: that was read, and what it says stands there; where the figure is set beside it, that is said.
namespace plant_kind_parts {

inline constexpr double kHour = 3600.0;
inline constexpr double kDay = 24.0 * kHour;
inline constexpr double kMillimetre = 1e-3;

/// [K] of a temperature given in degC.
constexpr double from_celsius(double temperature_c) { return temperature_c + kZeroCelsius; }

inline constexpr const char* kRound = "from memory, round figure";
inline constexpr const char* kNoAir = "only the tissue counts: from memory";
inline constexpr const char* kNoDayLength = "no harm by day length known: from memory";
inline constexpr const char* kFullSun = "none: grows in the open; common practice, no source";
inline constexpr const char* kAbsorbed =
    "Gates 1980, Biophysical Ecology, about half of sunlight by a leaf; from memory";
inline constexpr const char* kThickAbsorbed =
    "Gates 1980, Biophysical Ecology, thick leaves pass none and absorb more; from memory, round figure";
inline constexpr const char* kFilm = "0.1 kg on a square metre of leaf; Dickinson 1984 allows 0.2 (from memory)";
inline constexpr const char* kWaxyFilm = "half that of leaves that wet: waxy; from memory, round figure";
inline constexpr const char* kSkin =
    "Kerstiens 1996, J. Exp. Bot. 47, 1813, survey of least conductances; figure from memory, round";
inline constexpr const char* kOpen = "Korner 1995, in Schulze & Caldwell, survey of greatest conductances; from memory";
inline constexpr const char* kDeficit =
    "Leuning 1995, Plant Cell Environ. 18, 339, order of 1.5 kPa; figure from memory, round";
inline constexpr const char* kWarmth = "Jarvis 1976, Phil. Trans. R. Soc. B 273, 593, form; figures from memory, round";
inline constexpr const char* kDose =
    "time falls with temperature exponentially and adds up: Faber, Orsted & Ehlers 2024, J. Exp. Bot. 75, 3467, "
    "abstract; 3 to 5 K for tenfold from memory";
inline constexpr const char* kFrostDose =
    "as for heat (Faber, Orsted & Ehlers 2024, J. Exp. Bot. 75, 3467, abstract), steeper: ice either forms or not; "
    "from memory, round figure";
inline constexpr const char* kChillDose = "chilling works over hours to days: Levitt 1980, from memory, round figure";
inline constexpr const char* kFrostHours = "frost acts within hours; from memory, round figure";
inline constexpr const char* kChillDays = "chilling acts over days, frost lies lower; from memory, round figure";
inline constexpr const char* kRecovery =
    "days after heat: Larcher 2003, Physiological Plant Ecology; from memory, round";
inline constexpr const char* kHumidity =
    "Grange & Hand 1987, J. Hort. Sci. 62, 125, abstract: 0.2 to 1.0 kPa have little effect; beyond it by kind, from "
    "memory, round figure";
inline constexpr const char* kRoots =
    "Handreck & Black 1984, as restated: roots die after more than 4 h at 40 to 45 degC; set by kind, from memory";
inline constexpr const char* kLight =
    "daily light by crop as in tables of greenhouse light (Faust 2001); from memory, round figure";
inline constexpr const char* kTropicalHeat =
    "Slot et al. 2021, doi 10.1111/pce.14060, abstract: photosystem II of 147 tropical kinds halved by 15 min "
    "at 49.9 (47.8 to 52.5) degC, begins to suffer at 46.7 (43.5 to 49.7); set lower for plants of the shade";
inline constexpr const char* kSunscald =
    "Schrader, Zhang & Duplaga 2001, Plant Health Progress, abstract: apple browns in sun at 46 to 49 degC and dies at "
    "52 degC; leaves not hardened set lower, from memory";
inline constexpr const char* kUnused =
    "Felicetti & Schrader 2008, J. Am. Soc. Hort. Sci. 133: shaded apples put in the sun bleach even below 31 degC "
    "(abstract; authors and year from memory); figure by kind from memory, round";

/// The kinds, each defined with its likes.
extern const PlantKind kSunSucculent, kShadeSucculent;
extern const PlantKind kFern, kForestEpiphyte, kOrchid;
extern const PlantKind kLeafyCrop, kFruitingCrop, kCitrus;
extern const PlantKind kSeedling, kCutting;

}  // namespace plant_kind_parts
}  // namespace noonhouse
