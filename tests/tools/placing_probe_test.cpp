// SPDX-License-Identifier: Apache-2.0
// A plant tried in the climate that a place had must feel what the same plant felt there in the house itself, and other
// places must differ as a grower expects.
#include <gtest/gtest.h>

#include <cmath>

#include "models/properties/constants.hpp"
#include "tests/support/small_scenario.hpp"
#include "tools/placing/probe.hpp"
#include "tools/placing/watched_run.hpp"

namespace noonhouse {
namespace {

/// The small house with a shelf under its roof, a rail, and its plants as a test wants them.
Scenario house_with(const std::string& plants) {
  std::string text =
      small_scenario::with(small_scenario::kText, "plant_kinds:\n",
                           "  high shelf: { bay: west, height: 1.7 m, length: 2 m, width: 40 cm, "
                           "from_front: 2.2 m }\n"
                           "  rail: { bay: east, hangs: true, height: 1.6 m, length: 1 m, width: 50 cm }\n"
                           "plant_kinds:\n");
  text =
      small_scenario::with(text, "plants:\n  ferns:\n    kind: fern\n    place: long bench\n    area: 2 m2\n", plants);
  return small_scenario::read(text);
}

const WatchedRun& misted() {
  static const Scenario scenario = house_with("plants:\n  ferns: { kind: fern, place: long bench, area: 0.6 m2 }\n");
  static const WatchedRun run = watched_run(scenario, scenario.plan("vent and mist"), 2_min, {});
  return run;
}

const PlaceClimate& place(const WatchedRun& run, const std::string& name) {
  for (const PlaceClimate& climate : run.climates.places)
    if (climate.place.name == name) return climate;
  ADD_FAILURE() << name;
  return run.climates.places.front();
}

const RecordSeries& series(const RunRecord& record, const std::string& name) {
  for (const RecordSeries& it : record.series)
    if (it.name == name) return it;
  ADD_FAILURE() << name;
  return record.series.front();
}

PlantGroupSpec group_of(double area_m2) {
  PlantGroupSpec group;
  group.area_m2 = area_m2;
  group.pot_water_kg_m2 = 12.0;
  group.pot_dry_heat_j_m2_k = 40e3;
  group.pot_absorptance = 0.75;
  return group;
}

PlaceFelt felt(const WatchedRun& run, const std::string& where, const PlantKindSpec& kind, double used_to = 100.0) {
  return feel_place(group_of(0.6), kind, place(run, where), run.climates, used_to, {{7 * 3600.0}, 0.95});
}

// The trial leaves out what the plants do to the air and to what they see; both are small for a small group. What it
// must not miss is mist that lands, sun, draught, thermal radiation: each is worth more than the band.
TEST(Probe, FeelsWhatThePlantItselfFeltInTheHouse) {
  static const Scenario scenario = house_with("plants:\n  ferns: { kind: fern, place: long bench, area: 0.6 m2 }\n");
  const PlantKindSpec kind = scenario.plans.front().spec.plant_kinds.front().value;
  const PlaceFelt tried = felt(misted(), "on the long bench", kind);
  const auto& inside = series(misted().record, "tissue_temperature").values;
  const auto& times = misted().record.time_s;
  double sum = 0.0, worst = 0.0, count = 0.0;
  for (std::size_t k = 0; k < times.size(); ++k) {
    if (times[k] < 3600.0) continue;  // the house starts warmed up, the trial does not
    const double off = inside[k] - static_cast<double>(tried.tissue_k[static_cast<std::size_t>(times[k] / 120.0)]);
    sum += std::abs(off);
    worst = std::max(worst, std::abs(off));
    count += 1.0;
  }
  EXPECT_LT(sum / count, 0.4);
  EXPECT_LT(worst, 2.5);
  EXPECT_NEAR(tried.peak_k, misted().record.plants[0].peak_tissue_k, 0.8);
  EXPECT_NEAR(tried.lowest_k, misted().record.plants[0].lowest_tissue_k, 0.8);
}

TEST(Probe, KnowsEveryPlaceWithRoom) {
  std::vector<std::string> names;
  for (const PlaceClimate& climate : misted().climates.places) names.push_back(climate.place.name);
  EXPECT_EQ(names, (std::vector<std::string>{"on the long bench", "under the long bench", "on the high shelf",
                                             "under the high shelf", "hanging from the rail",
                                             "on the floor of the west bay", "on the floor of the east bay"}));
  for (const PlaceClimate& climate : misted().climates.places) {
    EXPECT_EQ(climate.moments.size(), 2U * 720U + 1U);
    EXPECT_GT(climate.room_m2, 0.0);
  }
  EXPECT_NEAR(place(misted(), "on the long bench").room_m2, 2.7, 1e-6);
  EXPECT_NEAR(place(misted(), "under the long bench").headroom_m, 0.8, 1e-9);
  EXPECT_LT(place(misted(), "on the high shelf").headroom_m, 1.0);
}

TEST(Probe, FindsItDimmerAndCoolerUnderTheBenchThanOnIt) {
  const PlantKindSpec kind = library_kind("shade succulent");
  const PlaceFelt on = felt(misted(), "on the long bench", kind), under = felt(misted(), "under the long bench", kind);
  EXPECT_LT(under.days[0].light_mol_m2, 0.6 * on.days[0].light_mol_m2);
  EXPECT_LT(under.peak_k, on.peak_k - 1.0);
  EXPECT_LT(under.lowest_k, on.lowest_k + 3.0);
}

TEST(Probe, IsSprayedOnlyWhereMistLands) {
  const auto sprayed_kg_m2 = [](const std::string& where) {
    double sum = 0.0;
    for (const PlaceMoment& moment : place(misted(), where).moments) sum += 120.0 * moment.spray_kg_m2_s;
    return sum;
  };
  EXPECT_GT(sprayed_kg_m2("on the long bench"), 1e-3);
  EXPECT_EQ(sprayed_kg_m2("under the long bench"), 0.0);
  // What lands on the bench in the house, plants and boards together, over the bench's ground.
  double landed = 0.0;
  for (const PathLine& line : misted().record.paths)
    if (line.path == "mist that lands" && line.quantity == "water" &&
        (line.to == "ferns" || line.to == "long bench" || line.to == "shaded side of ferns" ||
         line.to == "pots of ferns"))
      landed += line.amount;
  EXPECT_NEAR(sprayed_kg_m2("on the long bench") * 2.7, landed, 0.02 * landed);
}

TEST(Probe, BurnsWhatComesFromTheShadeAndSparesWhatIsUsedToTheSun) {
  PlantKindSpec kind = library_kind("shade succulent");
  kind.burns_above_k = 300.0;
  kind.bears_direct_w_m2 = 50.0;
  kind.burn_light_w_m2 = 900.0;
  const auto dose = [&](double used_to) {
    for (const HazardFelt& hazard : felt(misted(), "on the long bench", kind, used_to).hazards)
      if (hazard.what == "sunburn") return hazard.most;
    return -1.0;
  };
  EXPECT_GT(dose(0.0), 0.3);
  EXPECT_LT(dose(300.0), 0.1 * dose(0.0));
}

TEST(Probe, DriesOutWhereNobodyWaters) {
  const PlantKindSpec kind = library_kind("leafy crop");
  PlantGroupSpec group = group_of(0.6);
  group.pot_water_kg_m2 = 3.0;
  const auto& here = place(misted(), "on the long bench");
  const PlaceFelt dry = feel_place(group, kind, here, misted().climates, 100.0, {{}, 0.95});
  const PlaceFelt watered = feel_place(group, kind, here, misted().climates, 100.0,
                                       {{7 * 3600.0, 10 * 3600.0, 13 * 3600.0, 16 * 3600.0}, 0.95});
  EXPECT_GT(dry.days[1].peak_k, watered.days[1].peak_k + 1.0) << "a dry plant cannot cool itself";
}

// By hand from the marks: nothing, a near miss, half-way from strained to harmed, half-way from harmed to lost, lost.
TEST(HarmPoints, RiseByBandsAndByTheDoseWithin) {
  EXPECT_EQ(harm_points({{"heat", 0.74, 4.0, 40.0}}), 0.0);
  EXPECT_EQ(harm_points({{"heat", 0.76, 4.0, 40.0}}), 0.5);
  EXPECT_NEAR(harm_points({{"heat", 2.5, 4.0, 40.0}}), 15.0, 1e-12);
  EXPECT_NEAR(harm_points({{"heat", 22.0, 4.0, 40.0}}), 150.0, 1e-12);
  EXPECT_EQ(harm_points({{"heat", 40.0, 4.0, 40.0}}), 1000.0);
  EXPECT_NEAR(harm_points({{"heat", 40.0, 4.0, 40.0}, {"dry air", 2.5, 4.0, 40.0}}), 1000.15, 1e-9);
}

}  // namespace
}  // namespace noonhouse
