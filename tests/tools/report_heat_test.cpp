// SPDX-License-Identifier: Apache-2.0
// The chapter on the sun's heat: its columns, its drawing, what stands around it.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <sstream>
#include <string>

#include "tests/support/invented_record.hpp"
#include "tests/support/text_marks.hpp"
#include "tools/report/heat_picture.hpp"
#include "tools/report/heat_section.hpp"
#include "tools/report/report.hpp"

namespace noonhouse {
namespace {

using testing::HasSubstr;
using testing::Not;

LedgerHour hour_of(double begin_s, double vents_j, double cover_j, double ground_j) {
  LedgerHour hour;
  hour.begin_s = begin_s, hour.end_s = begin_s + 3600.0;
  hour.vents_j = vents_j, hour.cover_j = cover_j, hour.ground_j = ground_j;
  hour.sun_j = vents_j + cover_j + ground_j;
  return hour;
}

/// What one path of a picture draws.
std::string path_of(const std::string& svg, const std::string& name) {
  const std::string open = "<path class=\"" + name + "\" d=\"";
  const std::size_t at = svg.find(open);
  if (at == std::string::npos) return "";
  const std::size_t from = at + open.size();
  return svg.substr(from, svg.find('"', from) - from);
}

/// A run of so many hours whose vents grow from hour to hour.
RunRecord long_run(int hours) {
  RunRecord record;
  for (int k = 0; k < hours; ++k) record.ledger.push_back(hour_of(3600.0 * k, 1e6 + 1e3 * k, 2e6, -0.5e6));
  return record;
}

TEST(HeatColumns, KeepTheEnergyOfEveryLineHoweverLongTheRun) {
  for (const int hours : {1, 24, 239, 240, 241, 500, 8760}) {
    const RunRecord record = long_run(hours);
    const auto columns = heat_columns(record, 240);
    EXPECT_LE(columns.size(), 240U);
    EXPECT_EQ(columns.front().begin_s, 0.0);
    EXPECT_EQ(columns.back().end_s, 3600.0 * hours);
    double vents_j = 0.0, sun_j = 0.0;
    for (const HeatColumn& column : columns) {
      vents_j += column.line_w[0] * (column.end_s - column.begin_s);
      sun_j += column.sun_w * (column.end_s - column.begin_s);
    }
    const HeatSum total = ledger_total(record);
    EXPECT_NEAR(vents_j, total.of(HeatLine::vents), 1e-9 * total.sun_j) << hours;
    EXPECT_NEAR(sun_j, total.sun_j, 1e-9 * total.sun_j) << hours;
  }
  EXPECT_EQ(heat_columns(long_run(240), 240).size(), 240U) << "ten days stay hours";
  EXPECT_EQ(heat_columns(long_run(8760), 240).size(), 183U) << "a year in columns of two days";
}

TEST(HeatScale, HoldsTheTallestStackOfAllPlansInRoundSteps) {
  RunRecord low, high;
  low.ledger = {hour_of(0.0, 3.6e6, 0.0, -1.8e6)};        // 1 kW up, 0.5 kW down
  high.ledger = {hour_of(0.0, 3.6e6, 3.6e6 * 3.2, 0.0)};  // 4.2 kW up
  const HeatScale scale = heat_scale({low, high});
  EXPECT_EQ(scale.step_w, 1000.0);
  EXPECT_EQ(scale.lowest_w, -1000.0);
  EXPECT_EQ(scale.highest_w, 5000.0);
  const auto marks = heat_marks(scale);
  ASSERT_EQ(marks.size(), 7U);
  EXPECT_EQ(marks.front().text, "-1 kW");
  EXPECT_EQ(marks.front().below_top, 1.0);
  EXPECT_EQ(marks[1].text, "0 kW");
  EXPECT_EQ(marks.back().below_top, 0.0);
}

TEST(HeatScale, OfNothingIsStillAScale) {
  const HeatScale scale = heat_scale({RunRecord{}});
  EXPECT_GT(scale.highest_w, scale.lowest_w);
  EXPECT_LT(heat_marks(scale).size(), 20U);
  EXPECT_EQ(heat_svg(RunRecord{}, scale), "");
}

TEST(HeatPicture, StacksOutwardFromZero) {
  RunRecord record;
  record.ledger = {hour_of(0.0, 3.6e6, 7.2e6, -3.6e6), hour_of(3600.0, 0.0, 3.6e6, 3.6e6)};
  const std::string svg = heat_svg(record, {-1000.0, 3000.0, 1000.0});
  // The drawing is 10000 by 2000: 500 a kW, zero at 1500. Each box: left top, right, bottom, left.
  EXPECT_EQ(path_of(svg, "vents"), "M0 1500H5000V1000H0z");
  EXPECT_EQ(path_of(svg, "cover"), "M0 1000H5000V0H0zM5000 1500H10000V1000H5000z");
  EXPECT_EQ(path_of(svg, "ground"), "M0 1500H5000V2000H0zM5000 1000H10000V500H5000z");
  EXPECT_EQ(path_of(svg, "mist"), "");
  EXPECT_EQ(path_of(svg, "sun"), "M0 500H5000V500H10000");
  EXPECT_EQ(path_of(svg, "zero"), "M0 1500H10000");
}

TEST(HeatChapter, StandsInTheReportOfEveryPlan) {
  const std::string page = report_html(invented::three_plans(), UnitSystem::metric);
  EXPECT_EQ(count_of(page, "<h3>Where the sun's heat went</h3>"), 3U);
  EXPECT_EQ(count_of(page, "<path class=\"mist\""), 2U) << "one of the three has no mist";
  EXPECT_EQ(count_of(page, "<span>to evaporating mist in the air</span>"), 2U);
  for (const HeatLineWords& words : kHeatLineWords)
    EXPECT_EQ(count_of(page, ".heat ." + std::string(words.key) + " {"), 1U) << "no colour for " << words.key;
}

TEST(HeatChapter, ListsTheMeanDayAndTheNumbersAddUp) {
  const RunRecord record = invented::make_record();
  std::string out;
  add_heat_section(out, record, heat_scale({record}));
  EXPECT_THAT(out, HasSubstr("<b>" + sun_text(record) + "</b>"));
  for (const HeatLineWords& words : kHeatLineWords) EXPECT_THAT(out, HasSubstr(heat_text(record, words.line)));
  // Of a week, rows of six hours: the sun's column adds up to the sun but for the rounding of its cells.
  double sun_kwh = 0.0;
  for (std::size_t at = out.find("</th><td>"); at != std::string::npos; at = out.find("</th><td>", at + 1))
    sun_kwh += std::stod(out.substr(at + 9));
  EXPECT_EQ(count_of(out, "<tr><th scope=\"row\">"), 28U);
  EXPECT_NEAR(sun_kwh, ledger_total(record).sun_j / 3.6e6, 28 * 0.005);
}

TEST(HeatChapter, TimesStandAtRoundHoursOfTheClock) {
  RunRecord record = long_run(12);
  record.start = "2025-07-14 18:30:00";
  std::string out;
  add_heat_section(out, record, heat_scale({record}));
  EXPECT_THAT(out, HasSubstr("left:20.833%\">21:00</span>")) << "2.5 h of 12";
  EXPECT_THAT(out, HasSubstr("left:45.833%\">00:00</span>"));
  EXPECT_THAT(out, Not(HasSubstr("18:00</span>"))) << "before the run";
}

TEST(HeatChapter, IsLeftOutWhereNothingWasKept) {
  RunRecord record = invented::make_record();
  record.ledger.clear();
  EXPECT_THAT(report_html({record}, UnitSystem::metric), Not(HasSubstr("Where the sun's heat went")));
}

TEST(HeatChapter, NoNameBecomesMarkup) {
  RunRecord record = invented::make_record();
  record.plan = "\"><b>";
  std::string out;
  add_heat_section(out, record, heat_scale({record}));
  EXPECT_EQ(out.find("\"><b>"), std::string::npos);
  EXPECT_THAT(out, HasSubstr("&quot;&gt;&lt;b&gt;"));
}

}  // namespace
}  // namespace noonhouse
