// SPDX-License-Identifier: Apache-2.0
// The chapter on failures: its two tables, its words, that it is there only when asked for.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

#include "tests/support/invented_record.hpp"
#include "tests/support/text_marks.hpp"
#include "tests/tools/faults_sample.hpp"
#include "tools/report/fault_section.hpp"
#include "tools/report/report.hpp"

namespace noonhouse {
namespace {

using testing::HasSubstr;
using testing::Not;

RunRecord run_of(const FaultSheet& sheet) {
  RunRecord record = invented::make_record();
  record.scenario = sheet.scenario;
  record.plan = sheet.plan;
  return record;
}

std::string chapter(const FaultSheet& sheet, UnitSystem units = UnitSystem::metric) {
  std::string out;
  add_fault_section(out, sheet, {run_of(sheet)}, units);
  return out;
}

/// The row of the hours that begins with this name.
std::string hours_of(const std::string& text, const std::string& name) {
  const std::size_t at = text.find("<tr><th scope=\"row\">" + name + "</th>");
  return at == std::string::npos ? "" : text.substr(at, text.find("</tr>", at) - at);
}

TEST(FaultChapter, AnswersAndTellsEachFailureThatDoesHarm) {
  const std::string text = chapter(invented::fault_sheet());
  EXPECT_THAT(text, HasSubstr("The failure that leaves least time: high mist is stuck off."));
  EXPECT_THAT(text, HasSubstr("gains most"));
  EXPECT_EQ(count_of(text, "<tr role=\"row\"><th scope=\"row\""), 3U);
  EXPECT_THAT(text, HasSubstr("data-label=\"Time left\">45\u00A0min</td>"));
  EXPECT_THAT(text, HasSubstr("data-label=\"Longest with\">passive vent openers: 6 h</td>"));
  EXPECT_THAT(text, HasSubstr("Not seen to harm anything in this run: east sensor"));
  EXPECT_THAT(text, HasSubstr("412 runs in all"));
}

TEST(FaultChapter, EveryHourHasItsTextAndItsShade) {
  const std::string text = chapter(invented::fault_sheet());
  EXPECT_EQ(count_of(text, "<th scope=\"col\">What fails</th><th scope=\"col\">00</th>"), 1U);
  EXPECT_EQ(count_of(text, "<th scope=\"col\">23</th></tr>"), 1U);
  EXPECT_EQ(count_of(text, "<th scope=\"col\">"), 25U);
  const std::string row = hours_of(text, "high mist is stuck off");
  EXPECT_EQ(count_of(row, "<td"), 24U);
  EXPECT_EQ(count_of(row, "<td class=\"grace-0\">.</td>"), 21U);
  EXPECT_EQ(count_of(row, "<td class=\"grace-4\">55m</td>"), 3U);
  std::size_t at = 0;
  for (int hour = 0; hour <= 13; ++hour) at = row.find("<td", at + 1);
  EXPECT_EQ(row.substr(at, 28), "<td class=\"grace-4\">55m</td>") << "13 h is the first with harm";
}

TEST(FaultChapter, EveryShadeHasAColourAndAWord) {
  FaultSheet sheet = invented::fault_sheet();
  const std::string page = report_html({run_of(sheet)}, UnitSystem::metric, &sheet);
  for (int step = 0; step <= 5; ++step)
    EXPECT_EQ(count_of(page, "<i class=\"grace-" + std::to_string(step) + "\">"), 1U);
  for (int step = 1; step <= 5; ++step) {
    const std::string name = "--grace-" + std::to_string(step);
    EXPECT_EQ(count_of(page, name + ": #"), 2U) << "light and dark";
    EXPECT_EQ(count_of(page, ".grace-" + std::to_string(step) + " { background: var(" + name + ")"), 1U);
  }
}

TEST(FaultChapter, ChainsOpenOnDemandInTheUnitsShown) {
  EXPECT_EQ(count_of(chapter(invented::fault_sheet()), "<details>"), 3U);
  EXPECT_THAT(chapter(invented::fault_sheet()),
              HasSubstr("<li>ferns harmed: 34.0\u00A0°C is too hot, day 4 14:05</li>"));
  EXPECT_THAT(chapter(invented::fault_sheet(), UnitSystem::us), HasSubstr("93.2\u00A0°F"));
}

TEST(FaultChapter, TellsAdditionsWhatBreaksAndWhatToDoNext) {
  const std::string text = chapter(invented::hail_sheet());
  EXPECT_THAT(text, HasSubstr("<p>What each addition leaves after it: a second thermostat: no harm within 24 h; a heat "
                              "alarm: 1 h 24 min more; passive vent openers: nothing.</p>"));
  EXPECT_EQ(count_of(text, "<li>shade cloth is stuck off: breaks the front roof on day 4 at 18:57"), 1U);
  EXPECT_THAT(text, HasSubstr("<p>What to do next: Fit a heat alarm"));
  EXPECT_THAT(chapter(invented::fault_sheet()), Not(HasSubstr("What of the house breaks that")));
}

TEST(FaultChapter, WarnsWhereNoRunIsOfItsPlan) {
  const FaultSheet sheet = invented::fault_sheet();
  EXPECT_THAT(chapter(sheet), Not(HasSubstr("Careful")));
  for (std::string RunRecord::*what : {&RunRecord::plan, &RunRecord::scenario}) {
    RunRecord other = run_of(sheet);
    other.*what = "another";
    std::string out;
    add_fault_section(out, sheet, {other}, UnitSystem::metric);
    EXPECT_THAT(out, HasSubstr("Careful"));
  }
}

TEST(FaultChapter, IsThereOnlyWhenGiven) {
  const FaultSheet sheet = invented::fault_sheet();
  const RunRecord record = run_of(sheet);
  EXPECT_EQ(count_of(report_html({record}, UnitSystem::metric), "What failures do"), 0U);
  EXPECT_EQ(count_of(report_html({record}, UnitSystem::metric, &sheet), "What failures do"), 1U);
}

TEST(FaultChapter, WithoutHarmHasNoTables) {
  FaultSheet sheet = invented::fault_sheet();
  sheet.faults.erase(sheet.faults.begin(), sheet.faults.begin() + 3);
  EXPECT_THAT(chapter(sheet), Not(HasSubstr("<table")));
  EXPECT_THAT(chapter(sheet), HasSubstr("No failure that was tried harms"));
}

TEST(FaultChapter, NoNameBecomesMarkup) {
  FaultSheet sheet = invented::fault_sheet();
  const std::string bad = "\"><b>";
  sheet.plan = sheet.scenario = bad;
  sheet.lost_anyway = {bad};
  for (FaultOutcome& fault : sheet.faults) {
    fault.of = fault.words = bad;
    fault.chain = {bad};
    for (FaultCost& cost : fault.costs) cost.plants = bad;
    fault.breaks = {{bad, bad, 0.0, 0.0}};
    for (FaultAddition& addition : fault.additions) addition.name = bad;
  }
  std::string out;
  add_fault_section(out, sheet, {}, UnitSystem::metric);
  EXPECT_EQ(out.find("<b>"), std::string::npos);
  EXPECT_EQ(out.find(bad), std::string::npos);
}

}  // namespace
}  // namespace noonhouse
