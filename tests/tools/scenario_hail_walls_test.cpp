// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <utility>

#include "tests/support/small_day.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

constexpr const char* kFrontWall = "front wall of the house bay";

/// Hail at three in the afternoon upon the small house, when the invented wind blows from where its front looks.
Scenario hailed_house(const std::string& wind, const std::string& walls, const std::string& more = "") {
  std::string text = small_faults::kText;
  const auto put = [&text](const std::string& before, const std::string& what) {
    text.replace(text.find(before), before.size(), what + before);
  };
  put("  layers: 2\n",
      "  faces: 225 deg\n  cover: { roof: { material: twin-wall polycarbonate 10 mm }, walls: { material: " + walls +
          " } }\n");
  put("dew_point: 8 degC", "wind_by_day: " + wind + ", ");
  text += "hazards:\n  storm: { kind: hail, day: 1, at: \"15:00\", lasts: 10 min, stone: 40 mm, hits: 0.005 }\n" + more;
  return read_scenario_text(text, "hailed_house.yaml");
}

TEST(HailOnWalls, BreaksTheWindwardWallAndNoOther) {
  small_faults::SmallDay day(hailed_house("26 m/s", "clear glass 3 mm"));
  day.run();
  EXPECT_THAT(day.said_by(kFrontWall),
              ElementsAre(HasSubstr("is broken by hail"),
                          testing::ContainsRegex("hail is over: [1-9][0-9]? % of it is broken")));
  for (const char* spared : {"back wall", "first end", "last end"})
    EXPECT_THAT(day.said_by(spared), IsEmpty()) << spared;
}

TEST(HailOnWalls, OfCalmAirOrOnThickWallsBreaksNone) {
  for (const auto& [wind, walls] : {std::pair{"0 m/s", "clear glass 3 mm"}, std::pair{"26 m/s", "brick wall"}}) {
    small_faults::SmallDay day(hailed_house(wind, walls));
    day.run();
    EXPECT_THAT(day.said_by(kFrontWall), IsEmpty()) << wind << ", " << walls;
  }
}

TEST(HailOnWalls, IsKeptOffByANetOverAllAndNotByOneOverTheRoof) {
  for (const char* over : {"all", "roof"}) {
    small_faults::SmallDay day(
        hailed_house("26 m/s", "clear glass 3 mm",
                     std::string("shades:\n  net: { over: ") + over +
                         ", hangs: outside, transmits: 75 %, absorbs: 15 %, stops_hail: 20 J }\n" +
                         "timers:\n  net over: { from: \"14:00\", until: \"16:00\", drives: [net] }\n"));
    day.run();
    if (std::string(over) == "all")
      EXPECT_THAT(day.said_by(kFrontWall), ElementsAre(HasSubstr("held the hail")));
    else
      EXPECT_THAT(day.said_by(kFrontWall), ElementsAre(HasSubstr("is broken by hail"), HasSubstr("hail is over")));
  }
}

}  // namespace
}  // namespace noonhouse
