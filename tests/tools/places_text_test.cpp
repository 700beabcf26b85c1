// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>

#include "tests/support/invented_day_light.hpp"
#include "tools/places/light_text.hpp"
#include "tools/places/light_words.hpp"
#include "tools/scenario/tree_text.hpp"

namespace noonhouse {
namespace {

using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

std::string ascii_text(const DayLight& day, int width = 80) {
  return light_text(day, UnitSystem::metric, width, false);
}

/// The `which`-th line that begins so, from 0.
std::string line_beginning(const std::string& text, const std::string& begin, int which = 0) {
  for (const std::string& line : lines_of(text))
    if (line.starts_with(begin) && which-- == 0) return line;
  return "no line begins with " + begin;
}

/// One bench, lit softly from 06:00 to 18:00 with sun on all of it from 10:00 to 14:00: a day easy to draw on paper.
DayLight plain_day() {
  DayLight day = invented::polar_night();
  day.date = std::chrono::year(2025) / 3 / 20;
  PlaceLight bench = invented::dark_place("bench");
  for (std::size_t m = 360; m < 1080; ++m) {
    const bool sunny = m >= 600 && m < 840;
    day.outdoors_w_m2[m] = 500.0;
    bench.soft_w_m2[m] = 100.0;
    bench.direct_w_m2[m] = sunny ? 200.0 : 0.0;
    bench.sunlit[m] = sunny ? 1.0 : 0.0;
  }
  day.sunrise_minute = 360, day.sunset_minute = 1080;
  day.places = {bench};
  return day;
}

TEST(LightWords, HorizonSaysWhatTheSunDoes) {
  DayLight day = plain_day();
  EXPECT_EQ(horizon_text(day), "sun above a flat horizon from 06:00 to 18:00");
  day.sunset_minute.reset();
  EXPECT_EQ(horizon_text(day), "sunrise at 06:00, no sunset");
  EXPECT_EQ(horizon_text(invented::polar_night()), "the sun does not rise");
  day.sunrise_minute.reset();
  day.outdoors_w_m2.assign(kMinutesOfDay, 10.0);
  EXPECT_EQ(horizon_text(day), "the sun does not set");
}

TEST(LightText, ThePictureIsThatDrawnOnPaper) {
  const std::string text = ascii_text(plain_day(), 60);  // 50 columns beside the names: 48 of 15 minutes
  EXPECT_THAT(text, HasSubstr("Light from 06:00 to 18:00, one mark for each 15 minutes:\n"));
  EXPECT_THAT(text, HasSubstr("\n          06  07  08  09  10  11  12  13  14  15  16  17\n"));
  EXPECT_THAT(text, HasSubstr("\nbench     ================################================\n"));
}

TEST(LightText, AMarkIsLongerWhereThereIsLessRoom) {
  EXPECT_THAT(ascii_text(plain_day(), 140), HasSubstr("each 10 minutes"));
  EXPECT_THAT(ascii_text(plain_day(), 57), HasSubstr("each 20 minutes"));
  EXPECT_THAT(ascii_text(plain_day(), 45), HasSubstr("each\n30 minutes"));
}

TEST(LightText, TheFiguresAreThoseOnPaper) {
  const std::string text = ascii_text(plain_day());
  // 0.45 x 4.57 umol/J x (12 h of 100 W/m2 and 4 h of 200 W/m2) = 14.8 mol/m2; 12 of those 20 parts are soft.
  EXPECT_THAT(line_beginning(text, "bench", 1), "bench     14.8   4.0   8.0  10:00  13:59    60       0   300");
  // 100 W/m2 is 206 umol/m2/s, 300 W/m2 is 617.
  EXPECT_THAT(line_beginning(text, "bench", 2), "bench     = 206 = 206 = 206 = 206 # 617 # 617");
  EXPECT_THAT(line_beginning(text, "outdoors", 0), "outdoors   1028  1028  1028  1028  1028  1028");
}

TEST(LightText, EveryKindOfLightIsDrawnAndExplained) {
  const std::string text = ascii_text(invented::clear_day());
  EXPECT_THAT(line_beginning(text, "on the west low bench"), HasSubstr("=#"));
  EXPECT_THAT(line_beginning(text, "on the west low bench"), HasSubstr("#%"));
  EXPECT_THAT(line_beginning(text, "under the east middle bench"), HasSubstr("_%%%%%_"));
  EXPECT_THAT(line_beginning(text, "in the seed cupboard"), HasSubstr(" ......"));
  for (const char* item : {"# full sun", "% sun flecks: ", "= soft light", "_ dim: below 5 %", ". dark"})
    EXPECT_THAT(text, HasSubstr(item));
}

TEST(LightText, SaysWhichDayAndSky) {
  DayLight day = invented::clear_day();
  EXPECT_THAT(ascii_text(day), StartsWith("The long house, plan \"base\"\n2025-06-21, clear sky assumed, "));
  EXPECT_THAT(ascii_text(day), HasSubstr("(45.8 degrees north,"));  // 0.8 rad
  day.clear_sky = false, day.latitude_rad = -0.8;
  EXPECT_THAT(ascii_text(day), HasSubstr("sky of the scenario's weather"));
  EXPECT_THAT(ascii_text(day), HasSubstr("(45.8 degrees south,"));
}

TEST(LightText, WithoutUnicodeAllIsAscii) {
  for (const char c : ascii_text(invented::clear_day())) EXPECT_LT(static_cast<unsigned char>(c), 0x80);
  const std::string full = light_text(invented::clear_day(), UnitSystem::metric, 80, true);
  EXPECT_THAT(full, HasSubstr("▄█"));
  EXPECT_THAT(full, HasSubstr("µmol/m²/s"));
}

TEST(LightText, ANarrowSheetNamesWhatItLeavesOut) {
  EXPECT_THAT(ascii_text(invented::clear_day(), 80), Not(HasSubstr("Left out")));
  const std::string narrow = ascii_text(invented::clear_day(), 60);
  EXPECT_THAT(narrow, HasSubstr("Left out, for want of\nwidth: Most W/m2."));
  EXPECT_THAT(narrow, Not(HasSubstr("Most: ")));
}

TEST(LightText, ADayWithoutLightSaysSo) {
  const std::string text = ascii_text(invented::polar_night());
  EXPECT_THAT(text, HasSubstr("the sun does not rise"));
  EXPECT_THAT(text, HasSubstr("No light on this day.\n"));
}

class LightTextWidth : public testing::TestWithParam<int> {};

TEST_P(LightTextWidth, NoLineIsWiderOrEndsInSpacesAndEveryHourIsThere) {
  DayLight day = invented::clear_day();
  day.places.push_back(invented::soft_place("a_name_of_one_word_that_is_longer_than_most_sheets_are_wide_at_all", 0.1));
  DayLight midsummer = day;
  midsummer.outdoors_w_m2.assign(kMinutesOfDay, 100.0);
  for (const DayLight& shown : {day, midsummer}) {
    for (const bool unicode : {false, true}) {
      const std::string text = light_text(shown, UnitSystem::us, GetParam(), unicode);
      for (const std::string& line : lines_of(text)) {
        EXPECT_LE(static_cast<int>(characters(line)), std::clamp(GetParam(), kNarrowestLightText, kWidestLightText))
            << line;
        EXPECT_FALSE(line.ends_with(' ')) << '"' << line << '"';
      }
      for (int hour = 6; hour < 20; ++hour) EXPECT_THAT(text, HasSubstr(minute_text(60 * hour)));
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Terminals, LightTextWidth, testing::Values(10, 40, 47, 60, 80, 100, 120, 140, 300));

TEST(LightText, AHouseWithoutPlacesOrWithShortNamesIsShown) {
  DayLight day = plain_day();
  day.places.clear();
  EXPECT_THAT(ascii_text(day), HasSubstr("outdoors"));
}

}  // namespace
}  // namespace noonhouse
