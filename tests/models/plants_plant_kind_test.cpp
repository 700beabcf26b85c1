// SPDX-License-Identifier: Apache-2.0
// Long because every figure of every kind is held to its range and its published value.
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <regex>
#include <set>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "models/plants/plant_kind.hpp"
#include "sim/core/tick.hpp"

namespace noonhouse {
namespace {

/// A figure by the name it has in the header, with the span that is sensible for it in SI.
struct Figure {
  const char* name;
  SourcedValue PlantKind::*field;
  double least, most;
  bool may_be_none = false;
};

// Spans in SI that a slip of unit leaves: degC for K, mm for m, h or d for s, kPa for Pa, mm/s for m/s, % for a share.
// Temperatures within what vascular plants bear at all (-15 to 70 degC).
constexpr auto kFigures = std::to_array<Figure>({
    {"leaf_area_index", &PlantKind::leaf_area_index, 0.2, 6.0},
    {"tissue", &PlantKind::tissue_kg_m2, 0.1, 60.0},
    {"leaf_size", &PlantKind::leaf_size_m, 0.003, 0.3},
    {"thickness", &PlantKind::thickness_m, 0.1e-3, 0.2},
    {"height", &PlantKind::height_m, 0.02, 3.0},
    {"absorptance", &PlantKind::absorptance, 0.3, 0.9},
    {"holds_film", &PlantKind::holds_film_kg_m2, 0.01, 1.0},
    {"most_conductance", &PlantKind::most_conductance_m_s, 0.5e-3, 20e-3},
    {"least_conductance", &PlantKind::least_conductance_m_s, 0.005e-3, 1e-3},
    {"faces_with_stomata", &PlantKind::faces_with_stomata, 1.0, 2.0},
    {"half_light", &PlantKind::half_light_w_m2, 5.0, 300.0},
    {"half_deficit", &PlantKind::half_deficit_pa, 300.0, 5000.0},
    {"best_stomata", &PlantKind::best_stomata_k, 278.0, 313.0},
    {"stomata_spread", &PlantKind::stomata_spread_k, 4.0, 25.0},
    {"pot_share_unhindered", &PlantKind::pot_share_unhindered, 0.05, 0.9},
    {"harm_above", &PlantKind::harm_above_k, 303.0, 338.0},
    {"lethal_above", &PlantKind::lethal_above_k, 308.0, 343.0},
    {"heat_tenfold", &PlantKind::heat_tenfold_k, 2.0, 8.0},
    {"harm_below", &PlantKind::harm_below_k, 258.0, 288.0},
    {"lethal_below", &PlantKind::lethal_below_k, 258.0, 283.0},
    {"cold_tenfold", &PlantKind::cold_tenfold_k, 0.5, 8.0},
    {"strained_after", &PlantKind::strained_after_s, 600.0, kSecondsPerDay},
    {"harmed_after", &PlantKind::harmed_after_s, kSecondsPerHour, 3.0 * kSecondsPerDay},
    {"lost_after", &PlantKind::lost_after_s, 600.0, kSecondsPerDay},
    {"cold_strained_after", &PlantKind::cold_strained_after_s, 600.0, 2.0 * kSecondsPerDay},
    {"cold_harmed_after", &PlantKind::cold_harmed_after_s, 3600.0, 10.0 * kSecondsPerDay},
    {"recovers_in", &PlantKind::recovers_in_s, 0.5 * kSecondsPerDay, 60.0 * kSecondsPerDay},
    {"air_harm_above", &PlantKind::air_harm_above_k, 298.0, 323.0, true},
    {"air_harm_below", &PlantKind::air_harm_below_k, 268.0, 293.0, true},
    {"air_harms_after", &PlantKind::air_harms_after_s, kSecondsPerHour, 60.0 * kSecondsPerDay, true},
    {"burns_above", &PlantKind::burns_above_k, 298.0, 333.0},
    {"bears_direct", &PlantKind::bears_direct_w_m2, 30.0, 800.0},
    {"burn_light", &PlantKind::burn_light_w_m2, 30.0, 800.0},
    {"burn_after", &PlantKind::burn_after_s, 600.0, kSecondsPerDay},
    {"thirst_harms_after", &PlantKind::thirst_harms_after_s, kSecondsPerHour, 200.0 * kSecondsPerDay},
    {"thirst_kills_after", &PlantKind::thirst_kills_after_s, 6.0 * kSecondsPerHour, 400.0 * kSecondsPerDay},
    {"dry_air_above", &PlantKind::dry_air_above_pa, 500.0, 6000.0, true},
    {"dry_air_harms_after", &PlantKind::dry_air_harms_after_s, kSecondsPerHour, 60.0 * kSecondsPerDay, true},
    {"damp_air_below", &PlantKind::damp_air_below_pa, 20.0, 600.0, true},
    {"damp_air_harms_after", &PlantKind::damp_air_harms_after_s, 6.0 * kSecondsPerHour, 60.0 * kSecondsPerDay, true},
    {"wet_harms_after", &PlantKind::wet_harms_after_s, 2.0 * kSecondsPerHour, 30.0 * kSecondsPerDay, true},
    {"least_light", &PlantKind::least_light_mol_m2, 0.5, 30.0, true},
    {"most_light", &PlantKind::most_light_mol_m2, 3.0, 65.0, true},
    {"light_harms_after", &PlantKind::light_harms_after_s, kSecondsPerDay, 120.0 * kSecondsPerDay},
    {"shortest_day", &PlantKind::shortest_day_s, 4.0 * kSecondsPerHour, 20.0 * kSecondsPerHour, true},
    {"longest_day", &PlantKind::longest_day_s, 6.0 * kSecondsPerHour, 23.0 * kSecondsPerHour, true},
    {"roots_harm_above", &PlantKind::roots_harm_above_k, 298.0, 328.0},
});

// Every figure of the header stands in the list above: a new one must be given its span.
static_assert(sizeof(PlantKind) == 2 * sizeof(const char*) + 2 * sizeof(int) + kFigures.size() * sizeof(SourcedValue));

const PlantKind& kind(std::string_view name) {
  const PlantKind* found = find_plant_kind(name);
  if (found == nullptr) throw std::runtime_error("no kind " + std::string(name));
  return *found;
}

bool set(const SourcedValue& figure) { return figure.value != kNoLimit; }

/// Time at a heat at which a plant that is lost after lost_after at its lethal limit is lost [s].
double lost_after_s(const PlantKind& plant, double celsius) {
  const double beyond = celsius + 273.15 - plant.lethal_above_k.value;
  return plant.lost_after_s.value * std::pow(10.0, -beyond / plant.heat_tenfold_k.value);
}

TEST(PlantKinds, AreTheTenInTheirOrder) {
  std::vector<std::string> names;
  for (const PlantKind& plant : plant_kinds()) names.emplace_back(plant.name);
  EXPECT_EQ(names,
            (std::vector<std::string>{"sun succulent", "shade succulent", "leafy crop", "fruiting crop", "fern",
                                      "forest epiphyte", "orchid", "citrus in a tub", "seedling", "unrooted cutting"}));
}

TEST(PlantKinds, AreFoundByNameOnly) {
  for (const PlantKind& plant : plant_kinds()) EXPECT_EQ(find_plant_kind(plant.name), &plant);
  EXPECT_EQ(find_plant_kind("succulent"), nullptr);
  EXPECT_EQ(find_plant_kind("Orchid"), nullptr);
  EXPECT_EQ(find_plant_kind(""), nullptr);
}

TEST(PlantKinds, SayWhereEachFigureComesFrom) {
  const std::regex year(R"(\b(19|20)\d\d\b)");
  for (const PlantKind& plant : plant_kinds()) {
    EXPECT_GT(std::string_view(plant.about).size(), 20U) << plant.name;
    for (const Figure& figure : kFigures) {
      const char* text = (plant.*figure.field).source;
      ASSERT_NE(text, nullptr) << plant.name << ' ' << figure.name;
      const std::string source(text);
      EXPECT_TRUE(std::regex_search(source, year) || source.find("from memory") != std::string::npos ||
                  source.find("common practice, no source") != std::string::npos)
          << plant.name << ' ' << figure.name << ": " << source;
    }
  }
}

TEST(PlantKinds, AreInSiUnits) {
  for (const PlantKind& plant : plant_kinds()) {
    for (const Figure& figure : kFigures) {
      const double value = (plant.*figure.field).value;
      if (figure.may_be_none && value == kNoLimit) continue;
      EXPECT_GE(value, figure.least) << plant.name << ' ' << figure.name;
      EXPECT_LE(value, figure.most) << plant.name << ' ' << figure.name;
    }
  }
}

// Pairs that must both be set or both be none, for one says nothing without the other.
TEST(PlantKinds, LimitsAndTheirTimesComeTogether) {
  for (const PlantKind& plant : plant_kinds()) {
    EXPECT_EQ(set(plant.dry_air_above_pa), set(plant.dry_air_harms_after_s)) << plant.name;
    EXPECT_EQ(set(plant.damp_air_below_pa), set(plant.damp_air_harms_after_s)) << plant.name;
  }
}

TEST(PlantKinds, HaveTheirLimitsInOrder) {
  using Field = SourcedValue PlantKind::*;
  for (const auto& [low, high] : {
           std::pair<Field, Field>{&PlantKind::lethal_below_k, &PlantKind::harm_below_k},
           {&PlantKind::harm_below_k, &PlantKind::best_stomata_k},
           {&PlantKind::best_stomata_k, &PlantKind::harm_above_k},
           {&PlantKind::harm_above_k, &PlantKind::lethal_above_k},
           {&PlantKind::burns_above_k, &PlantKind::lethal_above_k},
           {&PlantKind::air_harm_below_k, &PlantKind::air_harm_above_k},
           {&PlantKind::air_harm_above_k, &PlantKind::lethal_above_k},
           {&PlantKind::lethal_below_k, &PlantKind::air_harm_below_k},
           {&PlantKind::least_conductance_m_s, &PlantKind::most_conductance_m_s},
           {&PlantKind::strained_after_s, &PlantKind::harmed_after_s},
           {&PlantKind::thirst_harms_after_s, &PlantKind::thirst_kills_after_s},
           {&PlantKind::damp_air_below_pa, &PlantKind::dry_air_above_pa},
           {&PlantKind::least_light_mol_m2, &PlantKind::most_light_mol_m2},
           {&PlantKind::shortest_day_s, &PlantKind::longest_day_s},
           {&PlantKind::thickness_m, &PlantKind::height_m},
       }) {
    for (const PlantKind& plant : plant_kinds()) {
      if (!set(plant.*low) || !set(plant.*high)) continue;
      EXPECT_LT((plant.*low).value, (plant.*high).value) << plant.name << ": " << (plant.*low).source;
    }
  }
}

// A plant is harmed before it is lost: at the lethal limit the dose that harms is full before the lethal one is.
TEST(PlantKinds, AreHarmedBeforeTheyAreLost) {
  for (const PlantKind& plant : plant_kinds()) {
    const double heat = (plant.lethal_above_k.value - plant.harm_above_k.value) / plant.heat_tenfold_k.value;
    const double cold = (plant.harm_below_k.value - plant.lethal_below_k.value) / plant.cold_tenfold_k.value;
    EXPECT_LT(plant.harmed_after_s.value * std::pow(10.0, -heat), plant.lost_after_s.value) << plant.name;
    EXPECT_LT(plant.harmed_after_s.value * std::pow(10.0, -cold), plant.lost_after_s.value) << plant.name;
  }
}

// A slab of fresh tissue, 900 kg/m3, weighs its one side times its thickness; a column or ball has half to a third of
// that by half its surface, and stalks and stems come on top of blades.
TEST(PlantKinds, WeighWhatTheirShapeHolds) {
  for (const PlantKind& plant : plant_kinds()) {
    const double slab = 900.0 * plant.leaf_area_index.value * plant.thickness_m.value;
    const double share = plant.tissue_kg_m2.value / slab;
    EXPECT_GT(share, plant.body == PlantBody::one_body ? 0.33 : 0.8) << plant.name;
    EXPECT_LT(share, plant.body == PlantBody::one_body ? 1.1 : 2.0) << plant.name;
    if (plant.body == PlantBody::one_body) {
      EXPECT_GE(plant.thickness_m.value, 0.01) << plant.name;
    } else {
      EXPECT_GE(plant.thickness_m.value, 0.2e-3) << plant.name;
      EXPECT_LE(plant.thickness_m.value, 2e-3) << plant.name;
    }
  }
  const PlantKind& sun = kind("sun succulent");
  EXPECT_GE(sun.thickness_m.value, 0.06);
  EXPECT_LE(sun.thickness_m.value, 0.08);
}

// Dickinson 1984 (from memory): at most 0.2 kg of water on a square metre of leaf.
TEST(PlantKinds, HoldNoMoreWaterThanLeavesDo) {
  for (const PlantKind& plant : plant_kinds())
    EXPECT_LE(plant.holds_film_kg_m2.value, 0.2 * plant.leaf_area_index.value) << plant.name;
}

// Crassulacean: cacti and succulents, and Phalaenopsis (Guo, Lin & Lee 2012, J. Am. Soc. Hort. Sci. 137, 465).
TEST(PlantKinds, OpenByNightIfCrassulacean) {
  const std::set<std::string> night{"sun succulent", "shade succulent", "orchid"};
  const std::set<std::string> one_body{"sun succulent", "shade succulent"};
  for (const PlantKind& plant : plant_kinds()) {
    EXPECT_EQ(plant.rhythm == StomataRhythm::night, night.count(plant.name) == 1) << plant.name;
    EXPECT_EQ(plant.body == PlantBody::one_body, one_body.count(plant.name) == 1) << plant.name;
  }
}

TEST(PlantKinds, OfTheShadeBearLessSunAndBurnEarlier) {
  for (const auto& [shade, sun] : {std::pair{"shade succulent", "sun succulent"},
                                   {"fern", "leafy crop"},
                                   {"fern", "fruiting crop"},
                                   {"fern", "citrus in a tub"},
                                   {"forest epiphyte", "leafy crop"},
                                   {"forest epiphyte", "fruiting crop"},
                                   {"forest epiphyte", "citrus in a tub"},
                                   {"orchid", "leafy crop"},
                                   {"orchid", "fruiting crop"},
                                   {"orchid", "citrus in a tub"},
                                   {"unrooted cutting", "seedling"},
                                   {"seedling", "fruiting crop"}}) {
    const PlantKind &low = kind(shade), &high = kind(sun);
    EXPECT_LT(low.bears_direct_w_m2.value, high.bears_direct_w_m2.value) << shade << ", " << sun;
    EXPECT_LT(low.burns_above_k.value, high.burns_above_k.value) << shade << ", " << sun;
    EXPECT_LE(low.burn_after_s.value, high.burn_after_s.value) << shade << ", " << sun;
    EXPECT_LE(low.burn_light_w_m2.value, high.burn_light_w_m2.value) << shade << ", " << sun;
    EXPECT_LT(low.least_light_mol_m2.value, high.least_light_mol_m2.value) << shade << ", " << sun;
  }
}

TEST(PlantKinds, WithLeavesLoseMoreThroughTheSkinThanSucculents) {
  for (const char* succulent : {"sun succulent", "shade succulent"}) {
    for (const PlantKind& plant : plant_kinds()) {
      if (plant.body == PlantBody::one_body) continue;
      EXPECT_LT(kind(succulent).least_conductance_m_s.value, plant.least_conductance_m_s.value) << plant.name;
      EXPECT_GT(kind(succulent).thirst_kills_after_s.value, plant.thirst_kills_after_s.value) << plant.name;
    }
  }
}

TEST(PlantKinds, OfTheTropicsAreMoreTender) {
  for (const char* tender : {"orchid", "forest epiphyte", "fern"}) {
    for (const char* hardy : {"leafy crop", "citrus in a tub", "sun succulent", "fruiting crop"}) {
      EXPECT_GT(kind(tender).harm_below_k.value, kind(hardy).harm_below_k.value) << tender << ", " << hardy;
      EXPECT_GT(kind(tender).lethal_below_k.value, kind(hardy).lethal_below_k.value) << tender << ", " << hardy;
    }
  }
  EXPECT_GT(kind("fruiting crop").lethal_below_k.value, kind("leafy crop").lethal_below_k.value);
  EXPECT_LT(kind("leafy crop").lethal_below_k.value, kind("citrus in a tub").lethal_below_k.value) << "hardened salads";
}

// An hour of heat that half the cells of cacti outlive: 64 degC, mean of 18 of the desert, and 55 degC for one of the
// forest (Nobel & De la Barrera 2002, Biotropica 34, 225, abstract); 53 degC for an Opuntia not hardened, which bears
// an hour at -7 degC (Nobel 1983, in Effects of Stress on Photosynthesis, 165, abstract).
TEST(PlantKinds, LoseSucculentsWithinTheHeatAndColdOfCacti) {
  EXPECT_GT(lost_after_s(kind("sun succulent"), 53.0), kSecondsPerHour);
  EXPECT_LT(lost_after_s(kind("sun succulent"), 64.0), kSecondsPerHour);
  EXPECT_LT(lost_after_s(kind("shade succulent"), 55.0), kSecondsPerHour);
  for (const char* name : {"sun succulent", "shade succulent"})
    EXPECT_GT(kind(name).lethal_below_k.value, 273.15 - 7.0) << name;
}

// A quarter of an hour that halves photosystem II of 147 tropical forest kinds: 47.8 to 52.5 degC (5 and 95 %), and at
// which it begins to suffer: 43.5 to 49.7 (Slot et al. 2021, doi 10.1111/pce.14060, abstract).
TEST(PlantKinds, LoseTropicalLeavesWithinTheHeatMeasured) {
  for (const char* name : {"forest epiphyte", "orchid", "citrus in a tub"}) {
    EXPECT_GT(lost_after_s(kind(name), 43.5), 0.25 * kSecondsPerHour) << name;
    EXPECT_LT(lost_after_s(kind(name), 52.5), 0.25 * kSecondsPerHour) << name;
  }
}

// Phalaenopsis: uptake full at 200 umol/(m2 s) by 12 h, photosystem II suffers above 325 (Guo, Lin & Lee 2012, J. Am.
// Soc. Hort. Sci. 137, 465, abstract). A joule of sunlight holds 2.0 to 2.1 umol (4.57 umol/J of photosynthetic light,
// McCree 1972, times 0.45, from memory).
TEST(PlantKinds, GiveTheOrchidTheLightMeasured) {
  const PlantKind& orchid = kind("orchid");
  const double full = 200e-6 * 12.0 * kSecondsPerHour, suffers = 325e-6 * 12.0 * kSecondsPerHour;
  EXPECT_LT(orchid.least_light_mol_m2.value, full);
  EXPECT_GT(orchid.most_light_mol_m2.value, full);
  EXPECT_LE(orchid.most_light_mol_m2.value, suffers);
  EXPECT_LE(orchid.bears_direct_w_m2.value, 325.0 / (4.57 * 0.45));
}

// Grange & Hand 1987, J. Hort. Sci. 62, 125, abstract: vapour pressure deficits of 0.2 to 1.0 kPa do crops no harm.
TEST(PlantKinds, LetCropsLiveInTheAirThatHarmsNone) {
  for (const char* name : {"leafy crop", "fruiting crop", "citrus in a tub", "seedling"}) {
    EXPECT_LE(kind(name).damp_air_below_pa.value, 200.0) << name;
    EXPECT_GE(kind(name).dry_air_above_pa.value, 1000.0) << name;
  }
}

// Sato, Peet & Thomas 2000, Plant Cell Environ. 23, 719, abstract: fruit set at 28 degC by day, hardly any at 32.
TEST(PlantKinds, SetNoFruitInLongHeat) {
  const SourcedValue& limit = kind("fruiting crop").air_harm_above_k;
  EXPECT_GT(limit.value, 273.15 + 28.0);
  EXPECT_LE(limit.value, 273.15 + 32.0);
}

}  // namespace
}  // namespace noonhouse
