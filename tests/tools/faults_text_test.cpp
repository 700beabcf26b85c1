// SPDX-License-Identifier: Apache-2.0
#include "tools/faults/faults_text.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>

#include "tests/tools/faults_sample.hpp"
#include "tools/compare/comparison_layout.hpp"
#include "tools/faults/fault_advice.hpp"
#include "tools/faults/fault_words.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

constexpr double kMinute = 60.0, kHour = 3600.0;

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

/// The text with line breaks and indents made single spaces.
std::string flat(const std::string& text) {
  std::istringstream in(text);
  std::string out;
  for (std::string word; in >> word;) out += (out.empty() ? "" : " ") + word;
  return out;
}

std::string text_of(const FaultSheet& sheet, int width = 100) {
  return flat(faults_text(sheet, UnitSystem::metric, width));
}

TEST(FaultWords, TimeLeftIsRoundedDownAndNeverPromisesMore) {
  EXPECT_EQ(grace_text(59.9), "under 1 min");
  EXPECT_EQ(grace_text(60.0), "1 min");
  EXPECT_EQ(grace_text(46.0 * kMinute - 0.001), "45 min");
  EXPECT_EQ(grace_text(2.0 * kHour), "2 h");
  EXPECT_EQ(grace_text(2.0 * kHour + 10.0 * kMinute), "2 h 10 min");
  EXPECT_EQ(grace_text(3.0 * kHour - 0.001), "2 h 59 min");
  EXPECT_EQ(grace_text(3.0 * kHour + 59.0 * kMinute), "3 h 50 min");
  EXPECT_EQ(grace_text(24.0 * kHour - 0.001), "23 h 50 min");
  EXPECT_EQ(grace_text(31.9 * kHour), "31 h");
  EXPECT_EQ(grace_text(76.5 * kHour), "3 days 4 h");
  EXPECT_EQ(grace_text(kNotHappened), "-");
}

TEST(FaultWords, NarrowCellsHoldThreeCharacters) {
  EXPECT_EQ(short_grace_text(30.0), "<1m");
  EXPECT_EQ(short_grace_text(45.9 * kMinute), "45m");
  EXPECT_EQ(short_grace_text(100.0 * kMinute - 0.001), "99m");
  EXPECT_EQ(short_grace_text(100.0 * kMinute), "1½h");
  EXPECT_EQ(short_grace_text(2.0 * kHour), "2h");
  EXPECT_EQ(short_grace_text(14.9 * kHour), "14h");
  EXPECT_EQ(short_grace_text(kNotHappened), ".");
  for (double grace_s = 0.0; grace_s < 30.0 * 86400.0; grace_s = 1.1 * grace_s + 7.0)
    EXPECT_LE(display_width(short_grace_text(grace_s)), 3) << grace_s;
}

TEST(FaultWords, ShadesGoByTheTimeLeft) {
  const double bounds[] = {15.0 * kMinute, kHour, 3.0 * kHour, 8.0 * kHour};
  for (int i = 0; i < 4; ++i) {
    EXPECT_EQ(grace_step(bounds[i] - 0.001), 5 - i);
    EXPECT_EQ(grace_step(bounds[i]), 4 - i);
  }
  EXPECT_EQ(grace_step(kNotHappened), 0);
}

TEST(FaultWords, CostsNameTheLostFirst) {
  const FaultSheet sheet = invented::fault_sheet();
  EXPECT_EQ(fault_cost_text(sheet.faults[0]), "lost: ferns, mosses; harmed: salads");
  EXPECT_EQ(fault_cost_text(sheet.faults[3]), "-");
}

TEST(FaultWords, AnAdditionThatGainsSecondsIsNone) {
  FaultOutcome fault = invented::fault_sheet().faults[0];
  fault.additions = {{"a heat alarm", fault.worst_grace_s + 119.0}};
  EXPECT_EQ(longest_addition(fault), nullptr);
  EXPECT_EQ(best_addition_text(fault), "none");
  fault.additions[0].grace_s = fault.worst_grace_s + 121.0;
  ASSERT_NE(longest_addition(fault), nullptr);
  EXPECT_EQ(best_addition_text(fault), "a heat alarm: 48 min");
  fault.additions.clear();
  EXPECT_EQ(best_addition_text(fault), "-");
}

TEST(FaultWords, WhereNoHarmIsSeenNoTimeIsPromised) {
  const FaultSheet sheet = invented::fault_sheet();
  EXPECT_EQ(best_addition_text(sheet.faults[0]), "a second thermostat: no harm within 24 h");
  FaultOutcome late = sheet.faults[0];
  late.additions[0].followed_s = 5.5 * kHour;
  EXPECT_EQ(best_addition_text(late), "a second thermostat: no harm within 5 h 30 min") << "the run ends then";
  EXPECT_THAT(additions_text(late), HasSubstr("a second thermostat: no harm within 5 h 30 min;"));
  EXPECT_EQ(best_addition_text(sheet.faults[1]), "passive vent openers: 6 h");
  EXPECT_EQ(horizon_text(sheet), "24 h");
}

TEST(FaultWords, GainsAddUpOverFailuresToTheHorizon) {
  const auto gains = addition_gains(invented::fault_sheet());
  ASSERT_EQ(gains.size(), 3U);
  // By hand: 24 h less 2759 s; 6 h less 3 h 50 min, and 41 s; 7845 s less 2759 s, 60 s, and nothing beyond 30 h.
  EXPECT_EQ(gains[0].name, "a second thermostat");
  EXPECT_DOUBLE_EQ(gains[0].gained_s, 86400.0 - 2759.0);
  EXPECT_EQ(gains[0].lengthened, 1);
  EXPECT_EQ(gains[1].name, "passive vent openers");
  EXPECT_DOUBLE_EQ(gains[1].gained_s, 21600.0 - 13800.0 + 41.0);
  EXPECT_EQ(gains[1].lengthened, 1) << "41 s is no lengthening";
  EXPECT_DOUBLE_EQ(gains[2].gained_s, 7845.0 - 2759.0 + 60.0);
  EXPECT_EQ(gains[2].lengthened, 2);
}

TEST(FaultWords, ALongChainKeepsItsEnds) {
  FaultOutcome fault;
  for (int i = 0; i < 40; ++i) fault.chain.push_back("link " + std::to_string(i));
  const auto shown = shown_chain(fault, UnitSystem::metric);
  ASSERT_EQ(shown.size(), 13U);
  EXPECT_EQ(shown.front(), "link 0");
  EXPECT_EQ(shown[8], "link 8");
  EXPECT_EQ(shown[9], "(28 more between)");
  EXPECT_EQ(shown[10], "link 37");
  EXPECT_EQ(shown.back(), "link 39");
}

TEST(FaultWords, OfLinksAlikeOneIsShown) {
  FaultOutcome fault;
  fault.chain = {"a", "b", "b", "a"};
  EXPECT_THAT(shown_chain(fault, UnitSystem::metric), ElementsAre("a", "b", "a"));
}

TEST(FaultsText, AnswersFirst) {
  const std::string text = text_of(invented::fault_sheet());
  EXPECT_THAT(text,
              HasSubstr("heatwave, plan \"vents, mist and shade\": 5 failures tried The failure that leaves least "
                        "time: high mist is stuck off. At its worst moment, day 4 13:20, it leaves 45 min until "
                        "plants come to harm."));
  EXPECT_THAT(text,
              HasSubstr("fitting a second thermostat gains most: more time after 1 of the 3 failures that do harm, "
                        "after the worst one no harm within 24 h."));
  FaultSheet less = invented::fault_sheet();
  less.faults[0].additions[0].grace_s = 23.0 * kHour;
  EXPECT_THAT(text_of(less), HasSubstr("after the worst one 23 h in place of 45 min."));
  EXPECT_THAT(text, HasSubstr("Even without a failure this plan harms or loses citrus;"));
}

TEST(FaultsText, AnAdditionThatDoesNotHelpAfterTheWorstFailureIsNotSaidTo) {
  FaultSheet sheet = invented::fault_sheet();
  sheet.faults[0].additions = {{"passive vent openers", 2800.0}};
  EXPECT_THAT(text_of(sheet),
              HasSubstr("fitting passive vent openers gains most: more time after 1 of the 3 failures that "
                        "do harm, but none after the worst one."));
  for (FaultOutcome& fault : sheet.faults)
    for (FaultAddition& addition : fault.additions) addition.grace_s = fault.worst_grace_s;
  EXPECT_THAT(text_of(sheet), HasSubstr("No addition that was tried leaves more time."));
  sheet.faults[2].additions = {{"a heat alarm", kNotHappened}};
  EXPECT_THAT(text_of(sheet), HasSubstr("fitting a heat alarm gains most")) << "beyond the horizon is time too";
  for (FaultOutcome& fault : sheet.faults) fault.additions.clear();
  EXPECT_THAT(text_of(sheet), Not(HasSubstr("ddition")));
}

TEST(FaultsText, ARowForEachFailureThatDoesHarm) {
  const auto lines = lines_of(faults_text(invented::fault_sheet(), UnitSystem::metric, 100));
  const auto row = [&](const std::string& begin) {
    const auto found =
        std::find_if(lines.begin(), lines.end(), [&](const std::string& line) { return line.rfind(begin, 0) == 0; });
    return found == lines.end() ? "" : *found;
  };
  EXPECT_THAT(row("1    high mist"), HasSubstr("day 4 13:20    45 min       lost: ferns,"));
  EXPECT_THAT(row("2    ridge vent"), HasSubstr("day 4 09:20    3 h 50 min   harmed: salads"));
  EXPECT_THAT(row("3    tank"), HasSubstr("30 h"));
  EXPECT_THAT(row("4  "), IsEmpty());
}

TEST(FaultsText, TheHoursOfTheHottestDayStandUnderTheirHeads) {
  const auto lines = lines_of(faults_text(invented::fault_sheet(), UnitSystem::metric, 100));
  const auto head = std::find_if(lines.begin(), lines.end(),
                                 [](const std::string& line) { return line.rfind("     00  01", 0) == 0; });
  ASSERT_NE(head, lines.end());
  const std::string row = *(head + 1);
  EXPECT_EQ(row.rfind("  1   .", 0), 0U) << row;
  EXPECT_EQ(head->size(), 3U + 24U * 4U);
  EXPECT_EQ(row.substr(head->find(" 13") - 1, 4), " 55m") << "2759 s and 600 s";
  EXPECT_EQ(row.substr(head->find(" 12") - 1, 4), "   .");
  EXPECT_EQ(row.substr(head->find(" 16") - 1, 4), "   .");
}

TEST(FaultsText, ChainsAndWhatHarmsNothing) {
  const auto lines = lines_of(faults_text(invented::fault_sheet(), UnitSystem::metric, 100));
  const auto first = std::find(lines.begin(), lines.end(), "    ferns harmed: 34.0 °C is too hot, day 4 14:05");
  ASSERT_NE(first, lines.end());
  EXPECT_EQ(*(first + 1), "    <- high mist is stuck off, day 4 13:20");
  EXPECT_THAT(faults_text(invented::fault_sheet(), UnitSystem::us, 100), HasSubstr("93.2 °F is too hot"));
  const std::string text = text_of(invented::fault_sheet());
  EXPECT_THAT(
      text,
      HasSubstr("Not seen to harm anything in this run: east sensor is no longer heard; shade cloth is stuck off."));
  EXPECT_THAT(text, HasSubstr("followed for 24 h"));
  EXPECT_THAT(text, HasSubstr("412 runs in all"));
}

TEST(FaultsText, TellsWhatOfTheHouseBreaksByWhichFailureAndWhen) {
  const std::string text = text_of(invented::hail_sheet());
  EXPECT_THAT(text,
              HasSubstr("The house: 2 of the failures break what hail and gusts leave whole without them: high mist "
                        "is stuck off; shade cloth is stuck off."));
  EXPECT_THAT(text,
              HasSubstr("shade cloth is stuck off: breaks the front roof on day 4 at 18:57 (66 % of it broken by hail) "
                        "and the back roof on day 4 at 18:57 (broken by hail), when it fails on day 4 at 16:00"));
  EXPECT_THAT(text, HasSubstr("breaks the ridge vent on day 4 at 14:00 (torn open by the wind)"));
  EXPECT_THAT(text, HasSubstr("Not seen to harm anything in this run: east sensor is no longer heard. "));
  EXPECT_THAT(text,
              HasSubstr("Look after these before hail and gusts come: high mist is stuck off; shade cloth is stuck "
                        "off."));
  EXPECT_EQ(fault_cost_text(invented::hail_sheet().faults[0]),
            "lost: ferns, mosses; harmed: salads; broken: ridge vent");
  const std::string calm = text_of(invented::fault_sheet());
  EXPECT_THAT(calm, Not(HasSubstr("The house:")));
  EXPECT_THAT(calm, HasSubstr("No hail or gusts of this run can break anything of the house."));
  FaultSheet held = invented::fault_sheet();
  held.house_in_danger = true;
  EXPECT_THAT(text_of(held), HasSubstr("Hail and gusts break nothing of the house that they do not break without"));
}

TEST(FaultsText, ListsWhatEachAdditionLeaves) {
  FaultSheet sheet = invented::fault_sheet();
  const std::string text = text_of(sheet);
  EXPECT_THAT(text,
              HasSubstr("Tried at the worst moment: a heat alarm, a second thermostat and passive vent openers."));
  EXPECT_THAT(text, HasSubstr("1 a second thermostat: no harm within 24 h; a heat alarm: 1 h 24 min more; passive vent "
                              "openers: nothing"));
  EXPECT_THAT(text, HasSubstr("2 passive vent openers: 2 h 10 min more; a heat alarm: nothing"));
  sheet.faults[1].additions = {{"a heat alarm", 3 * kHour}};
  EXPECT_EQ(additions_text(sheet.faults[1]), "a heat alarm: 50 min less");
  EXPECT_THAT(text_of(sheet), HasSubstr("None of them leaves more time after 2."));
  sheet.faults[1].additions = {{"a heat alarm", sheet.faults[1].worst_grace_s}};
  EXPECT_EQ(additions_text(sheet.faults[1]), "none of them changes it");
}

TEST(FaultsText, EndsWithWhatToDoNext) {
  FaultSheet sheet = invented::fault_sheet();
  const std::string end =
      "What to do next: Fit a heat alarm: of the additions tried it helps after most failures, 2 of "
      "the 3 that do harm.";
  EXPECT_EQ(text_of(sheet).substr(text_of(sheet).size() - end.size()), end);
  sheet.faults[0].additions = {{"a heat alarm", sheet.faults[0].worst_grace_s}};
  EXPECT_THAT(next_step_text(sheet),
              HasSubstr("Be ready to put this right within 45\u00A0min at its worst moment, since no addition helps: "
                        "high mist is stuck off."));
  for (FaultOutcome& fault : sheet.faults) fault.additions.clear();
  EXPECT_EQ(
      next_step_text(sheet),
      "What to do next: Be ready to put this right within 45\u00A0min at its worst moment: high mist is stuck off.");
  sheet.faults.erase(sheet.faults.begin(), sheet.faults.begin() + 3);
  EXPECT_EQ(next_step_text(sheet), "");
}

TEST(FaultsText, SaysWhichDayItsHoursAreOf) {
  FaultSheet sheet = invented::fault_sheet();
  EXPECT_THAT(text_of(sheet), HasSubstr("Time left by the hour of the failure, on day 4, the hottest outdoors"));
  sheet.told_day_s = 86400.0;
  EXPECT_THAT(text_of(sheet), HasSubstr("on day 2, as asked; the hottest outdoors is day 4"));
}

TEST(FaultsText, NothingThatHarmsIsSaidSo) {
  FaultSheet sheet = invented::fault_sheet();
  sheet.faults.erase(sheet.faults.begin(), sheet.faults.begin() + 3);
  sheet.lost_anyway.clear();
  const std::string text = text_of(sheet);
  EXPECT_THAT(text, HasSubstr("No failure that was tried harms a plant"));
  EXPECT_THAT(text, HasSubstr("Without a failure this plan harms no plants"));
  EXPECT_THAT(text, Not(HasSubstr("What fails")));
  sheet.faults.clear();
  EXPECT_THAT(text_of(sheet), HasSubstr("0 failures tried"));
}

TEST(FaultsText, KeepsToItsWidth) {
  FaultSheet sheet = invented::hail_sheet();
  sheet.faults[0].of = "a mist line of an uncommonly long name under the ridge of the western bay";
  sheet.faults[0].chain.insert(sheet.faults[0].chain.begin(), std::string(300, 'x'));
  for (int width = 20; width <= 160; ++width)
    for (const std::string& line : lines_of(faults_text(sheet, UnitSystem::metric, width)))
      ASSERT_LE(display_width(line), std::clamp(width, kNarrowestFaults, kWidestFaults)) << width << ": " << line;
}

}  // namespace
}  // namespace noonhouse
