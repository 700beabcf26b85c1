// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>

#include "tests/tools/placing_answer_sample.hpp"
#include "tools/compare/comparison_layout.hpp"
#include "tools/placing/place_text.hpp"
#include "tools/placing/place_words.hpp"

namespace noonhouse {
namespace {

using testing::HasSubstr;
using testing::Not;

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

/// The `which`-th line that begins so, from 0.
std::string line_beginning(const std::string& text, const std::string& begin, int which = 0) {
  for (const std::string& line : lines_of(text))
    if (line.starts_with(begin) && which-- == 0) return line;
  return "no line begins with " + begin;
}

std::string ascii(const PlaceAnswer& answer, int width = 100, UnitSystem units = UnitSystem::metric) {
  return place_text(answer, units, width, false);
}

/// The text with its line breaks as spaces, for sentences that may be broken anywhere.
std::string flowing(std::string text) {
  std::replace(text.begin(), text.end(), '\n', ' ');
  while (text.find("  ") != std::string::npos) text.replace(text.find("  "), 2, " ");
  return text;
}

TEST(PlacingWords, ABandIsWhereTheTissueCameToTheLimits) {
  GroupShown group;
  group.harm_above_k = 307.0, group.harm_below_k = 275.0;
  const auto band = [&](double peak_k, double lowest_k) {
    DayFelt day;
    day.peak_k = peak_k, day.lowest_k = lowest_k;
    return band_of(group, day);
  };
  EXPECT_EQ(band(304.9, 277.1), DayBand::below);
  EXPECT_EQ(band(305.0, 290.0), DayBand::near_limit);  // 2 K below the limit
  EXPECT_EQ(band(307.0, 290.0), DayBand::near_limit);  // at the limit is not above it
  EXPECT_EQ(band(307.1, 290.0), DayBand::hot);
  EXPECT_EQ(band(300.0, 277.0), DayBand::near_limit);
  EXPECT_EQ(band(300.0, 274.9), DayBand::cold);
  DayFelt both;
  both.peak_k = 308.0, both.lowest_k = 270.0;
  EXPECT_EQ(band_of(group, both), DayBand::hot);
  both.cold_dose_s = 1.0;
  EXPECT_EQ(band_of(group, both), DayBand::cold);
  group.harm_above_k = group.harm_below_k = kNotHappened;
  EXPECT_EQ(band_of(group, both), DayBand::below) << "no limits";
}

TEST(PlacingWords, DaysJoinByWholeWeeksAndKeepTheWorst) {
  EXPECT_EQ(day_spans(14, 14).size(), 14U);
  EXPECT_EQ(day_spans(15, 14).size(), 3U);
  EXPECT_EQ(day_spans(365, 53).size(), 53U);
  EXPECT_EQ(day_spans(365, 53).back().to, 365U);
  EXPECT_EQ(day_spans(372, 53).size(), 27U) << "by 14 days";
  EXPECT_TRUE(day_spans(0, 14).empty());
  std::vector<DayFelt> days(3);
  days[0].peak_k = 300.0, days[1].peak_k = 310.0, days[2].peak_k = 305.0;
  days[0].lowest_k = 280.0, days[1].lowest_k = 285.0, days[2].lowest_k = 270.0;
  for (DayFelt& day : days) day.hot_s = 60.0;
  const DayFelt worst = worst_of(days, {0, 3});
  EXPECT_EQ(worst.peak_k, 310.0);
  EXPECT_EQ(worst.lowest_k, 270.0);
  EXPECT_EQ(worst.hot_s, 180.0);
  EXPECT_EQ(worst_of(days, {2, 9}).peak_k, 305.0);
}

TEST(PlacingWords, TheWorstHazardIsTheOneThatDecides) {
  const auto words = [](std::vector<HazardFelt> hazards) {
    PlaceFelt felt;
    felt.hazards = std::move(hazards);
    return worst_hazard_text(felt);
  };
  const double never = std::numeric_limits<double>::infinity();
  EXPECT_EQ(words({{"heat", 0.4, 3.0, 8.0}, {"cold", 0.1, 3.0, 8.0}}), "heat 0.4 of strain");
  EXPECT_EQ(words({{"heat", 0.999, 3.0, 8.0}}), "heat 0.99 of strain") << "not yet strained";
  EXPECT_EQ(words({{"heat", 1.5, 3.0, 8.0}}), "heat 0.5 of harm");
  EXPECT_EQ(words({{"heat", 4.0, 3.0, 8.0}}), "heat 0.5 of loss");
  EXPECT_EQ(words({{"dry air", 1.5, never, never}}), "dry air 1.5 of strain");
  // A dose of 2.5 that harms from 2 on is worse than one of 5 that only strains.
  EXPECT_EQ(words({{"cold", 5.0, 9.0, 20.0}, {"heat", 2.5, 2.0, 5.0}}), "heat 0.5 of loss");
  EXPECT_EQ(words({{"heat", 0.0001, 3.0, 8.0}}), "heat under 0.01 of strain");
  EXPECT_EQ(words({{"heat", 0.0, 3.0, 8.0}}), "none");
  EXPECT_EQ(words({}), "none");
}

TEST(PlacingWords, TheHeadlineCounts) {
  PlaceAnswer answer = invented::sample_answer();
  EXPECT_EQ(placing_headline(answer, UnitSystem::metric), "One group should move.");
  auto& plan = std::get<StandingPlan>(answer.standing);
  plan.changes.push_back({1, 0, 2, 1.0, 0.0});
  plan.moves = 2;
  EXPECT_EQ(placing_headline(answer, UnitSystem::metric), "Two groups should move.");
  plan.changes.push_back({1, kNowhere, 2, std::nullopt, 0.0});
  EXPECT_EQ(placing_headline(answer, UnitSystem::metric),
            "Two groups should move. One group that stands nowhere yet should be put up.");
  answer.problem.most_moves = 2;
  EXPECT_THAT(placing_headline(answer, UnitSystem::metric), HasSubstr("No more than two groups may move."));
  EXPECT_EQ(placing_headline(invented::settled_answer(), UnitSystem::metric), "All stand where they are harmed least.");
  answer.groups.clear();
  EXPECT_EQ(placing_headline(answer, UnitSystem::metric), "There are no plants.");
}

TEST(PlacingWords, SayWhomMovingDoesNotSave) {
  PlaceAnswer answer = invented::sample_answer();
  answer.groups[0].after.outcome = "lost";
  EXPECT_EQ(placing_headline(answer, UnitSystem::metric),
            "One group should move. One group is lost all the same, and moving does not save it.");
  EXPECT_THAT(standing_words(answer, answer.groups[0]), HasSubstr("should move: now")) << "it is not lost as it stands";
  answer.groups[0].before.outcome = "lost";
  EXPECT_THAT(standing_words(answer, answer.groups[0]), HasSubstr("should move, though it is lost either way: now"));
  answer.groups[1].after.outcome = "lost";
  EXPECT_THAT(placing_headline(answer, UnitSystem::metric),
              HasSubstr("Two groups are lost all the same, and moving does not save them."));
}

TEST(PlacingText, SaysWhoMovesWhyAndWhatItGains) {
  const std::string text = ascii(invented::sample_answer());
  EXPECT_EQ(lines_of(text)[0], "The long house, plan \"as built\"");
  EXPECT_EQ(lines_of(text)[1], "10 days from 2025-07-14 00:00");
  EXPECT_EQ(lines_of(text)[3], "One group should move.");
  const std::string flow = flowing(text);
  EXPECT_THAT(flow,
              HasSubstr("lettuce (crisp lettuce): should move: now on the high bench, better under the low bench. "
                        "On the high bench its leaves reach 36.0 degC."));
  EXPECT_THAT(flow, HasSubstr("Whole run: harmed, 9.5 h -> kept, 6.5 K to spare. Hottest tissue: 36.0 degC on "
                              "2025-07-16 14:20 -> 27.5 degC on 2025-07-16 14:20."));
  EXPECT_THAT(flow, HasSubstr("basil: stays on the high bench. Nowhere is it harmed less."));
  EXPECT_THAT(flow, HasSubstr("Whole run: kept, 1.0 K to spare. Hottest"));
  EXPECT_EQ(line_beginning(text, "kept  "), "kept                   1           2");
  EXPECT_EQ(line_beginning(text, "harmed  "), "harmed                 1           0");
  EXPECT_EQ(line_beginning(text, "water used"), "water used         123 L       110 L");
}

TEST(PlacingText, ShowsThePlacesByTheHourAsOftenAsTheWidthAllows) {
  const std::string wide = ascii(invented::sample_answer(), 140), narrow = ascii(invented::sample_answer(), 60);
  EXPECT_THAT(wide, HasSubstr("06:00 07:00 08:00"));
  EXPECT_THAT(narrow, Not(HasSubstr("06:00 07:00")));
  EXPECT_THAT(wide, HasSubstr("  120   140   160")) << "light at 6, 7 and 8 o'clock";
  EXPECT_THAT(wide, HasSubstr(" 1.06  1.07  1.08")) << "kPa in those hours";
}

TEST(PlacingText, ShowsWhatAGroupWouldFeelOnEachPlace) {
  const std::string text = ascii(invented::sample_answer(), 120);
  // Days 1 to 10 peak at 33.0 to 36.0 and 33.0 to 34.0: above 34.0 on days 4 to 7, by 1.5 h each.
  EXPECT_EQ(line_beginning(text, "o  on the high bench"),
            "o  on the high bench      harmed     36.0   6.0   5.0   2.5  12.5  14.0  heat 0.4 of loss");
  EXPECT_EQ(line_beginning(text, "x  under the low bench"),
            "x  under the low bench    kept       27.0   0.0   5.0   2.5  12.5  14.0  too little light 0.4 of strain");
  EXPECT_THAT(text, HasSubstr("hanging from the rail  cannot stand: the rail bears no pots"));
  EXPECT_THAT(text, HasSubstr("o stands there now, x should stand there."));
  EXPECT_THAT(text, HasSubstr("x stands and should stand there."));
  const std::string unicode = place_text(invented::sample_answer(), UnitSystem::metric, 100, true);
  EXPECT_THAT(unicode, HasSubstr("○ stands there now, ● should stand there."));
  EXPECT_THAT(unicode, HasSubstr("m²"));
  EXPECT_THAT(unicode, HasSubstr("°C"));
}

TEST(PlacingText, ShowsThePeakOfEachDayAndItsBand) {
  const std::string text = ascii(invented::sample_answer(), 140);
  EXPECT_THAT(line_beginning(text, "                          07-14"), HasSubstr("07-14  07-15 "));
  EXPECT_EQ(line_beginning(text, "o  on the high bench", 1),
            "o  on the high bench       33.0~  33.5~  34.0~  34.5!  35.0!  35.5!  36.0!  33.0~  33.5~  34.0~");
  EXPECT_THAT(
      text,
      HasSubstr("! above the harm limit (34.0 degC), ~ within 2 K of a limit, * below the cold limit (0.0 degC)."));
  EXPECT_THAT(text, HasSubstr("22.0*  22.5*")) << "basil is cold under the low bench";
}

TEST(PlacingText, JoinsTheDaysOfALongRun) {
  const std::string text = ascii(invented::sample_answer(30), 100);
  EXPECT_THAT(text, HasSubstr("Peak of its tissue in each 7 days from the date on, degC:"));
  EXPECT_THAT(line_beginning(text, "o  on the high bench", 1), HasSubstr("36.0!  36.0!  36.0!  36.0!  33.5~"));
}

TEST(PlacingText, ShowsThePlaces) {
  const std::string text = ascii(invented::sample_answer());
  EXPECT_EQ(line_beginning(text, "on the high bench"),
            "on the high bench       41.2   24.0  18.3   5.5       4 m2   0.80 m  west");
}

TEST(PlacingText, UsesTheUnitsAskedFor) {
  const std::string text = ascii(invented::sample_answer(), 100, UnitSystem::us);
  EXPECT_THAT(flowing(text), HasSubstr("its leaves reach 96.8 degF."));
  EXPECT_THAT(text, HasSubstr("above the harm limit (93.2 degF), ~ within 3.6 degF of"));
  EXPECT_THAT(line_beginning(text, "o  on the high bench"), HasSubstr(" 96.8 "));
  EXPECT_THAT(line_beginning(text, "water used"), HasSubstr("32.5 gal"));
  EXPECT_THAT(text, Not(HasSubstr("degC")));
}

TEST(PlacingText, NoLineIsWiderThanAskedFor) {
  PlaceAnswer answer = invented::sample_answer(40);
  answer.places[0].name = "on the shelf of seedlings along the wall between the two doors";
  answer.places[1].name = "under-the-one-with-a-name-without-any-space-in-it";
  answer.groups[1].name = "basil that was sown on the first fine day of the year";
  for (const int width : {40, 41, 57, 80, 100, 140})
    for (const bool unicode : {false, true})
      for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us})
        for (const PlaceAnswer& shown : {answer, invented::unhoused_answer()})
          for (const std::string& line : lines_of(place_text(shown, units, width, unicode)))
            EXPECT_LE(display_width(line), width) << line;
  EXPECT_EQ(ascii(answer, 10), ascii(answer, 40));
  EXPECT_EQ(ascii(answer, 500), ascii(answer, 140));
}

TEST(PlacingText, NamesTheColumnsThatANarrowSheetLeavesOut) {
  EXPECT_THAT(flowing(ascii(invented::sample_answer(), 40)),
              HasSubstr("Left out, for want of width: Dry h, Wet h, DLI mol, Day h, Worst."));
  const std::string wide = ascii(invented::sample_answer(), 80);
  EXPECT_THAT(wide, HasSubstr("DLI   Day  Worst"));
  EXPECT_THAT(wide, Not(HasSubstr("Left out"))) << "80 columns hold all";
}

TEST(PlacingText, IsAsciiWhereAskedForButForNames) {
  PlaceAnswer answer = invented::sample_answer();
  for (const char c : ascii(answer)) EXPECT_LT(static_cast<unsigned char>(c), 0x80U);
  answer.places[0].name = "på hylla";
  EXPECT_THAT(ascii(answer), HasSubstr("på hylla"));
}

TEST(PlacingText, SaysWhyPlantsCannotBeHousedAndWhatHappensAsTheyStand) {
  const std::string text = ascii(invented::unhoused_answer());
  EXPECT_THAT(flowing(text),
              HasSubstr("The lettuce need 6 m2: the high bench has 4 m2; the space under the low bench has "
                        "2.5 m2; the rail has 1 m2. lettuce (crisp lettuce): stands on the high bench."));
  EXPECT_THAT(flowing(text), HasSubstr("Whole run: harmed, 9.5 h. Hottest tissue: 36.0 degC on 2025-07-16 14:20."));
  EXPECT_THAT(text, HasSubstr("The whole run, as they stand"));
  EXPECT_THAT(text, Not(HasSubstr("->")));
  EXPECT_EQ(line_beginning(text, "kept  "), "kept                   1");
}

TEST(PlacingText, WhereNothingMovesOneColumnOfCountsIsEnough) {
  const std::string text = ascii(invented::settled_answer());
  EXPECT_THAT(text, HasSubstr("All stand where they are harmed least."));
  EXPECT_EQ(line_beginning(text, "kept  "), "kept                   2");
  EXPECT_THAT(text, Not(HasSubstr("What moving gains")));
}

TEST(PlacingText, OneDayIsOneDayAndNoDaysAreNoTable) {
  EXPECT_THAT(ascii(invented::sample_answer(1)), HasSubstr("1 day from 2025-07-14"));
  EXPECT_THAT(ascii(invented::sample_answer(0)), Not(HasSubstr("Peak of its tissue")));
}

TEST(PlacingText, NamesCarryNoTerminalCommands) {
  PlaceAnswer answer = invented::sample_answer();
  answer.house = "house\x1b[2J";
  answer.places[0].name = "on the\x1b[31m bench";
  EXPECT_THAT(ascii(answer), Not(HasSubstr("\x1b")));
}

}  // namespace
}  // namespace noonhouse
