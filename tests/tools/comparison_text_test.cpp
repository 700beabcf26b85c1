// SPDX-License-Identifier: Apache-2.0
#include "tools/compare/comparison_text.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>

#include "tests/support/invented_record.hpp"
#include "tools/compare/comparison.hpp"
#include "tools/compare/comparison_layout.hpp"
#include "tools/compare/comparison_words.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

TEST(ComparisonLayout, CountsColumnsNotBytes) {
  EXPECT_EQ(display_width("43.1 °C"), 7);
  EXPECT_EQ(display_width("cafe\u0301"), 4);  // a combining accent
  EXPECT_EQ(display_width("温室"), 4);        // wide characters
  EXPECT_EQ(display_width("\xff\xc3"), 2);    // not UTF-8: ends, and counts each byte
}

TEST(ComparisonLayout, WrapsBetweenWordsAndCutsWhatCannotFit) {
  EXPECT_THAT(wrap_text("one two three", 8), ElementsAre("one two", "three"));
  EXPECT_THAT(wrap_text("incomparable", 5), ElementsAre("incom", "parab", "le"));
  EXPECT_THAT(wrap_text("", 5), ElementsAre(""));
  EXPECT_THAT(wrap_text("  in deep", 6), ElementsAre("  in", "  deep"));
  EXPECT_THAT(wrap_text("at " + unbroken("day 7 15:00"), 12), ElementsAre("at", "day 7 15:00"));
}

TEST(ComparisonLayout, TakesTerminalCommandsOutOfNames) {
  for (const std::string& line : wrap_text("a\x1b[2J\tb\n\xc2\x9b"
                                           "c",
                                           40)) {
    EXPECT_EQ(line.find('\x1b'), std::string::npos);
    EXPECT_EQ(line.find("\xc2\x9b"), std::string::npos);
  }
}

TEST(ComparisonWords, ClockCountsCalendarDays) {
  RunRecord record;
  record.start = "2025-07-14 18:30:00";
  EXPECT_EQ(clock_text(record, 0.0), "day 1 18:30");
  EXPECT_EQ(clock_text(record, 5.5 * 3600.0), "day 2 00:00");
  EXPECT_EQ(clock_text(record, 5.5 * 3600.0 - 1.0), "day 1 23:59");
  EXPECT_EQ(clock_text(record, kNotHappened), "-");
  record.start = "2025-07-14T06:00";
  EXPECT_EQ(clock_text(record, 60.0), "day 1 06:01");
  record.start = "unknown";
  EXPECT_EQ(clock_text(record, 60.0), "day 1 00:01");
}

TEST(ComparisonWords, AFailureIsFollowedByItsCausesOnce) {
  const RunRecord record = invented::make_record();
  const FailureOutcome failure{3600.0, "failure", "mist", "mist stopped", {"mist stopped", "pump cut out", "no rain"}};
  EXPECT_EQ(failure_text(record, failure, "<-", UnitSystem::metric),
            "mist stopped, " + unbroken("day 1 01:00") + " <- pump cut out <- no rain");
}

TEST(ComparisonWords, TheFirstFailureIsByTime) {
  RunRecord record;
  EXPECT_EQ(first_failure(record), nullptr);
  record.failures = {{9.0, "failure", "b", "late", {}}, {3.0, "failure", "a", "early", {}}};
  EXPECT_EQ(first_failure(record)->what, "early");
}

TEST(ComparisonWords, AirChangesAreCountedAnHour) {
  RunRecord record = invented::make_record();
  EXPECT_EQ(air_changes_text(record.airing), "45.0 on the mean, 0.50 to 120, 96.5 when hottest");
  record.airing = {};
  EXPECT_EQ(air_changes_text(record.airing), "-");
}

TEST(ComparisonWords, WaterAndChargeOutlook) {
  RunRecord record;
  EXPECT_EQ(water_outlook(record), "not used");
  EXPECT_EQ(charge_outlook(record), "not used");
  record.water.misted_kg = 5.0, record.water.days_left = 4.25;
  record.energy.loads_j = 5.0, record.energy.days_left = 2.0;
  EXPECT_EQ(water_outlook(record), "lasts 4.2 days more");
  EXPECT_EQ(charge_outlook(record), "lasts 2.0 days without sun");
  record.water.first_dry_s = 2 * 86400.0, record.energy.first_cut_off_s = 86400.0;
  EXPECT_EQ(water_outlook(record), "pump cut out on day 3 00:00");
  EXPECT_EQ(charge_outlook(record), "cut off on day 2 00:00");
}

TEST(ComparisonWords, AKeptPlantSaysHowCloseItCame) {
  PlantOutcome plant;
  plant.outcome = "kept";
  EXPECT_EQ(outcome_text(plant, UnitSystem::metric), "kept");
  plant.harm_above_k = 308.15;
  EXPECT_EQ(outcome_text(plant, UnitSystem::metric), "kept") << "no tissue temperature is known";
  plant.peak_tissue_k = 307.65;
  EXPECT_EQ(outcome_text(plant, UnitSystem::metric), "kept, 0.5 K to spare");
  EXPECT_EQ(outcome_text(plant, UnitSystem::us), "kept, 0.9 °F to spare");
  plant.hours_beyond = 0.1;
  EXPECT_EQ(outcome_text(plant, UnitSystem::metric), "kept, 0.1 h beyond") << "not in the heat: in the cold";
  plant.peak_tissue_k = 308.45;
  EXPECT_EQ(outcome_text(plant, UnitSystem::metric), "kept, 0.1 h beyond, 0.3 K too hot");
  plant.outcome = "harmed";
  EXPECT_EQ(outcome_text(plant, UnitSystem::metric), "harmed, 0.1 h");
}

TEST(ComparisonWords, TemperaturesOfTheLogAreShownInTheUnitsAskedFor) {
  const auto us = [](std::string_view text) { return text_in_units(text, UnitSystem::us); };
  EXPECT_EQ(us("above 38 degC for 10 min, 38.4 degC at that moment"),
            "above " + unbroken("100 °F") + " for 10 min, " + unbroken("101.1 °F") + " at that moment");
  EXPECT_EQ(us("-40.0 degC"), unbroken("-40.0 °F"));
  EXPECT_EQ(us("in degC"), "in degC");
  EXPECT_EQ(us("x degC, 0 degC"), "x degC, " + unbroken("32 °F"));
  EXPECT_EQ(us("1.2.3 degC"), "1.2.3 degC");
  EXPECT_EQ(us(""), "");
  EXPECT_EQ(text_in_units("at 34.0 degC, then -2 degC", UnitSystem::metric),
            "at " + unbroken("34.0 °C") + ", then " + unbroken("-2 °C"));
}

TEST(ComparisonWords, HeightsHaveTwoDecimals) {
  EXPECT_EQ(height_text(0.975, UnitSystem::metric), "0.98 m");
  EXPECT_EQ(height_text(1.625, UnitSystem::metric), "1.63 m");
  EXPECT_EQ(height_text(kNotHappened, UnitSystem::metric), "-");
}

TEST(ComparisonLayout, RepairsTextThatIsNotUtf8) {
  EXPECT_THAT(wrap_text("caf\xe9 x", 40), ElementsAre("caf\uFFFD x"));
}

TEST(ComparisonWords, StoresMoneyAndHeatForPeople) {
  EXPECT_EQ(carry_text(12.34, 8.06), "12.3 days, " + unbroken("8.1 at worst"));
  EXPECT_EQ(carry_text(250.0, kNotHappened), "250 days");
  EXPECT_EQ(carry_text(kNotHappened, kNotHappened), "-");
  EXPECT_EQ(money_text(1240.4, "EUR"), "1240 EUR");
  EXPECT_EQ(money_text(96.2, "EUR"), "96 EUR");
  EXPECT_EQ(money_text(3.5, ""), "3.50");
  EXPECT_EQ(money_text(kNotHappened, "EUR"), "-");
  RunRecord record;
  EXPECT_EQ(work_heat_text(record, UnitSystem::metric), "-");
  record.start = "2025-07-14 00:00:00";
  record.work_heat = {{"west", 3.0, 305.15, 46800.0}, {"east", 4.5, 304.35, 50400.0}};
  EXPECT_EQ(work_heat_text(record, UnitSystem::metric), unbroken("4.5 h") + " above " + unbroken("28.0 °C WBGT") +
                                                            ", at most " + unbroken("31.2 °C") + ", " +
                                                            unbroken("day 1 14:00"));
}

TEST(ComparisonText, CostStandsThereWhereAPlanHasPrices) {
  std::vector<RunRecord> records = invented::three_plans();
  EXPECT_EQ(compare_text(records, UnitSystem::metric, 100).find("cost to buy"), std::string::npos);
  records[1].cost = {"EUR", 1240.0, 230.0};
  const std::string text = compare_text(records, UnitSystem::metric, 100);
  EXPECT_THAT(text, HasSubstr("cost to buy"));
  EXPECT_THAT(text, HasSubstr("1240 EUR"));
  EXPECT_THAT(text, Not(HasSubstr("brought, were all")));
}

TEST(ComparisonWords, ASeasonsCostSaysWhatOfItIsTheRunsRefillsScaled) {
  EXPECT_EQ(season_cost_text({"EUR", 1240.0, 230.0, 0.0, 120.0}), "230 EUR");
  EXPECT_EQ(season_cost_text({"EUR", 1240.0, 230.0, 90.0, 120.0}), "230 EUR, of it " + unbroken("90 EUR") +
                                                                       " for water brought, were all " +
                                                                       unbroken("120 days") + " like the run's");
  EXPECT_EQ(season_cost_text({}), "-");
}

TEST(ComparisonText, NotesStandUnderTheirPlan) {
  std::vector<RunRecord> records = invented::three_plans();
  EXPECT_EQ(compare_text(records, UnitSystem::metric, 100).find("What else to know"), std::string::npos);
  records[1].notes = {"Its battery was at 30 degC."};
  EXPECT_THAT(compare_text(records, UnitSystem::us, 100),
              HasSubstr("What else to know\n-----------------\nmist only\n    Its battery was at 86 °F.\n"));
}

class ComparisonWidth : public testing::TestWithParam<int> {};

TEST_P(ComparisonWidth, NoLineIsWiderOrEndsInSpaces) {
  std::vector<RunRecord> records = invented::three_plans();
  records.push_back(
      invented::make_record({"a plan with a much longer name, 温室, and_one_word_that_cannot_be_wrapped"}));
  for (const std::string& line : lines_of(compare_text(records, UnitSystem::us, GetParam()))) {
    EXPECT_LE(display_width(line), std::clamp(GetParam(), kNarrowestTable, kWidestTable)) << line;
    EXPECT_FALSE(line.ends_with(' ')) << '"' << line << '"';
  }
}

INSTANTIATE_TEST_SUITE_P(Terminals, ComparisonWidth, testing::Values(10, 40, 57, 80, 100, 250));

TEST(ComparisonText, SaysWhatAGrowerAsks) {
  const std::string text = compare_text(invented::three_plans(), UnitSystem::metric, 100);
  EXPECT_THAT(text, HasSubstr("\"shade and mist\" keeps all 5 plant groups."));
  EXPECT_THAT(text, HasSubstr("orchid (rail, 2.20 m, back bay): harmed, too hot for too long in the afternoons"));
  EXPECT_THAT(text, HasSubstr("pump cut out on"));
  EXPECT_THAT(text, HasSubstr("pump cut out, day 5 00:00 <- tank at its low mark <- no rain since day 1"));
  EXPECT_THAT(text, HasSubstr("2.20 m, back bay"));
  EXPECT_THAT(text, HasSubstr(ranking_rule().substr(0, 40)));
  EXPECT_THAT(text, testing::Not(HasSubstr("nan")));
}

TEST(ComparisonText, ShowsTheUnitsAskedFor) {
  const std::string text = compare_text(invented::three_plans(), UnitSystem::us, 100);
  EXPECT_THAT(text, HasSubstr("°F"));
  EXPECT_THAT(text, HasSubstr("gal"));
  EXPECT_THAT(text, testing::Not(HasSubstr("°C")));
}

TEST(ComparisonText, APlanWithoutDataIsStillShown) {
  RunRecord bare;
  bare.plan = "bare";
  const std::string text = compare_text({bare}, UnitSystem::metric, 80);
  EXPECT_THAT(text, HasSubstr("\"bare\" has no plants to keep."));
  EXPECT_THAT(text, HasSubstr("nothing failed"));
}

}  // namespace
}  // namespace noonhouse
