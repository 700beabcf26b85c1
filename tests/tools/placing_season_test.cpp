// SPDX-License-Identifier: Apache-2.0
// Stretches of safe days, and what is refused. Whole years are in placing_season_slow_test.cpp.
#include <gtest/gtest.h>

#include "sim/core/errors.hpp"
#include "tests/support/small_scenario.hpp"
#include "tools/placing/season_text.hpp"

namespace noonhouse {
namespace {

std::vector<bool> days(const std::string& text) {
  std::vector<bool> out;
  for (const char c : text) out.push_back(c == 's');
  return out;
}

void expect_stretch(const std::string& text, bool cyclic, int first, int length) {
  const SafeStretch found = longest_stretch(days(text), cyclic);
  EXPECT_EQ(found.first_day, first) << text;
  EXPECT_EQ(found.days, length) << text;
}

TEST(SafeStretch, IsTheLongestAndTheFirstOfEquals) {
  expect_stretch("..sss..ss.", false, 2, 3);
  expect_stretch("ss..ss", false, 0, 2);
  expect_stretch("......", false, 0, 0);
  EXPECT_TRUE(longest_stretch(days("......"), true).never());
}

TEST(SafeStretch, GoesOverTheEndOfAWholeYearOnly) {
  expect_stretch("ss....sss", false, 6, 3);
  expect_stretch("ss....sss", true, 6, 5);
  expect_stretch("s.........", true, 0, 1);
}

TEST(SafeStretch, IsAllYearWhereEveryDayIsSafe) {
  const SafeStretch all = longest_stretch(days("sssss"), true);
  EXPECT_TRUE(all.all_year);
  EXPECT_EQ(all.days, 5);
}

TEST(Season, AsksForAYear) {
  const Scenario scenario = small_scenario::read();
  try {
    static_cast<void>(answer_season(scenario, scenario.plans.front(), {}));
    FAIL() << "two days are no year";
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::does_not_fit);
    EXPECT_NE(std::string(error.what()).find("small.yaml:4"), std::string::npos) << error.what();
    EXPECT_NE(std::string(error.what()).find("330 d"), std::string::npos) << error.what();
  }
}

SeasonAnswer sample() {
  SeasonAnswer answer;
  answer.house = "A house";
  answer.plan = "vents";
  answer.start = std::chrono::year{2025} / 1 / 1;
  answer.days = 365;
  answer.coldest_outdoors_k = 263.15;
  answer.hottest_outdoors_k = 303.15;
  const auto season = [](const char* place, SafeStretch safe, int hot_days, int dim_days) {
    PlaceSeason out;
    out.place = place;
    out.safe = safe;
    out.hot_days = hot_days;
    out.dim_days = dim_days;
    out.coldest_k = 270.15;
    out.hottest_k = 311.15;
    return out;
  };
  PlaceSeason low = season("under the bench", {350, 30, false}, 0, 7);
  low.too_low = true;
  answer.kinds.push_back({"fern", 279.15, 308.15, {season("on the bench", {100, 50, false}, 3, 4), low}, 0});
  answer.kinds.push_back({"cactus", 275.15, 323.15, {season("on the bench", {0, 365, true}, 0, 0)}, 0});
  answer.kinds.push_back({"orchid", 283.15, 312.15, {season("on the bench", {0, 0, false}, 0, 0)}, 0});
  return answer;
}

TEST(SeasonText, SaysFromWhenToWhenAndWhereAndFitsTheWidth) {
  for (const int width : {72, 100, 140}) {
    const std::string text = season_text(sample(), UnitSystem::metric, width);
    EXPECT_NE(text.find("11 Apr to 30 May"), std::string::npos) << text;
    EXPECT_NE(text.find("17 Dec to 15 Jan"), std::string::npos) << "over the year's end\n" << text;
    EXPECT_NE(text.find("all year"), std::string::npos);
    EXPECT_NE(text.find("never"), std::string::npos);
    std::string unwrapped = text;
    std::replace(unwrapped.begin(), unwrapped.end(), '\n', ' ');
    EXPECT_NE(unwrapped.find("Safe from cold all year: cactus. For a part of the year: fern. Never: orchid."),
              std::string::npos)
        << text;
    EXPECT_NE(text.find("height)"), std::string::npos) << text;
    std::size_t longest = 0, at = 0;
    for (std::size_t end = text.find('\n'); end != std::string::npos; at = end + 1, end = text.find('\n', at)) {
      std::size_t characters = 0;
      for (std::size_t i = at; i < end; ++i) characters += (static_cast<unsigned char>(text[i]) & 0xC0U) != 0x80U;
      longest = std::max(longest, characters);
    }
    EXPECT_LE(longest, static_cast<std::size_t>(width));
  }
  EXPECT_NE(season_text(sample(), UnitSystem::us, 100).find("°F"), std::string::npos);
}

}  // namespace
}  // namespace noonhouse
