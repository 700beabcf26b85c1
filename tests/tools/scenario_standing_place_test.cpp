// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/small_scenario.hpp"
#include "tools/scenario/standing_place.hpp"

namespace noonhouse {
namespace {

using small_scenario::kText;
using small_scenario::with;
using testing::ElementsAre;
using testing::HasSubstr;

/// The small house with a bench that lets pots stand beneath it, a board on the floor and a rail.
std::string furnished(const std::string& plants = "  ferns:\n    kind: fern\n    place: long bench\n    area: 2 m2\n") {
  std::string text = with(kText, "    width: 90 cm\n",
                          "    width: 90 cm\n"
                          "  board:\n    bay: east\n    height: 10 cm\n    length: 1 m\n    width: 80 cm\n"
                          "  rail:\n    bay: east\n    hangs: true\n    height: 1.7 m\n    length: 2 m\n"
                          "    width: 30 cm\n    from_front: 20 cm\n    from_first_end: 20 cm\n");
  text = with(text, "    height: 10 cm\n", "    height: 10 cm\n    from_front: 2 m\n");
  text = with(text, "waters: [ferns]", "waters: []");
  return with(text, "  ferns:\n    kind: fern\n    place: long bench\n    area: 2 m2\n", plants);
}

ScenarioSpec spec_of(const std::string& text) { return small_scenario::read(text).plans.front().spec; }

std::vector<std::string> names(const std::vector<StandingPlace>& places) {
  std::vector<std::string> out;
  for (const StandingPlace& place : places) out.push_back(place.name);
  return out;
}

TEST(StandingPlaces, AreOnAndUnderEachBenchThenTheFloors) {
  const ScenarioSpec spec = spec_of(furnished());
  const auto places = standing_places(spec, shape_of(spec.house));
  EXPECT_THAT(names(places),
              ElementsAre("on the long bench", "under the long bench", "on the board", "hanging from the rail",
                          "on the floor of the west bay", "on the floor of the east bay"));
}

TEST(StandingPlaces, KnowTheirBayAndHeight) {
  const ScenarioSpec spec = spec_of(furnished());
  const auto places = standing_places(spec, shape_of(spec.house));
  ASSERT_EQ(places.size(), 6U);
  using Of = StandingPlace::Of;
  const Of of[] = {Of::on, Of::under, Of::on, Of::on, Of::floor, Of::floor};
  const int bays[] = {0, 0, 1, 1, 0, 1}, benches[] = {0, 0, 1, 2, -1, -1};
  const double heights[] = {0.8, 0.0, 0.1, 1.7, 0.0, 0.0};
  for (std::size_t i = 0; i < places.size(); ++i) {
    EXPECT_EQ(places[i].of, of[i]) << i;
    EXPECT_EQ(places[i].bay, bays[i]) << i;
    EXPECT_EQ(places[i].bench, benches[i]) << i;
    EXPECT_DOUBLE_EQ(places[i].height_m, heights[i]) << i;
    EXPECT_EQ(places[i].hangs, i == 3) << i;
  }
}

TEST(StandingPlaces, OfGroupsAreFoundByWhatTheyName) {
  const ScenarioSpec spec =
      spec_of(furnished("  ferns: {kind: fern, place: long bench, area: 1 m2}\n"
                        "  low: {kind: fern, place: long bench, under: true, area: 1 m2}\n"
                        "  high: {kind: fern, place: rail, area: 0.5 m2}\n"
                        "  ground: {kind: fern, place: east, area: 1 m2}\n"));
  const auto places = standing_places(spec, shape_of(spec.house));
  std::vector<std::string> found;
  for (const auto& group : spec.plants)
    found.push_back(places[static_cast<std::size_t>(place_of(group.value, places, spec))].name);
  EXPECT_THAT(found, ElementsAre("on the long bench", "under the long bench", "hanging from the rail",
                                 "on the floor of the east bay"));
}

std::string complaint(const std::string& text) {
  try {
    spec_of(text);
  } catch (const UserError& error) {
    return error.what();
  }
  return "";
}

TEST(StandingPlaces, ThatAreNotThereAreRefused) {
  EXPECT_THAT(complaint(furnished("  low: {kind: fern, place: rail, under: true, area: 0.5 m2}\n")), HasSubstr("rail"))
      << "nothing stands under a rail";
  EXPECT_THAT(complaint(furnished("  low: {kind: fern, place: board, under: true, area: 0.5 m2}\n")),
              HasSubstr("board"))
      << "nor under a board on the floor";
  EXPECT_THAT(complaint(furnished("  low: {kind: fern, place: east, under: true, area: 0.5 m2}\n")), HasSubstr("east"));
  EXPECT_THAT(complaint(furnished("  low: {kind: fern, place: roof, area: 0.5 m2}\n")), HasSubstr("roof"));
}

}  // namespace
}  // namespace noonhouse
