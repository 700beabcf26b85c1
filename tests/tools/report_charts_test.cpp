// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "tests/support/invented_record.hpp"
#include "tools/report/chart_data.hpp"
#include "tools/report/chart_json.hpp"
#include "tools/report/event_list.hpp"
#include "tools/report/thinning.hpp"

namespace noonhouse {
namespace {

const double kNan = kNotHappened;

TEST(ReportThinning, KeepsEveryLinesExtremesAndTheEnds) {
  std::vector<double> a, b;
  for (int i = 0; i < 10000; ++i) {
    a.push_back(std::sin(0.001 * i) + (i == 4321 ? 50.0 : 0.0));
    b.push_back(std::cos(0.002 * i) - (i == 7777 ? 50.0 : 0.0));
  }
  const std::vector<std::size_t> kept = thin_samples({a, b}, a.size(), 400);
  EXPECT_LE(kept.size(), 402U);
  EXPECT_TRUE(std::is_sorted(kept.begin(), kept.end()));
  EXPECT_EQ(std::set<std::size_t>(kept.begin(), kept.end()).size(), kept.size());
  for (const std::size_t wanted : {0U, 4321U, 7777U, 9999U}) EXPECT_THAT(kept, testing::Contains(wanted));
}

TEST(ReportThinning, LeavesShortSeriesAlone) {
  const std::vector<double> values{3.0, 1.0, 2.0};
  EXPECT_THAT(thin_samples({values}, 3, 3), testing::ElementsAre(0U, 1U, 2U));
  EXPECT_TRUE(thin_samples({}, 0, 10).empty());
}

TEST(ReportThinning, PassesOverWhatIsNoNumber) {
  std::vector<double> values(100, kNan);
  values[50] = 1.0;
  EXPECT_THAT(thin_samples({values}, values.size(), 4), testing::ElementsAre(0U, 50U, 99U));
  const std::vector<double> few{kNan, 2.0, 5.0, kNan, kNan};
  const std::vector<double> highest = group_highest(few, 3);
  ASSERT_EQ(highest.size(), 2U);
  EXPECT_EQ(highest[0], 5.0);
  EXPECT_TRUE(std::isnan(highest[1]));
}

const Chart& chart_titled(const std::vector<Chart>& charts, const std::string& title) {
  const auto found =
      std::find_if(charts.begin(), charts.end(), [&](const Chart& c) { return c.title.starts_with(title); });
  EXPECT_NE(found, charts.end()) << title;
  return *found;
}

TEST(ReportCharts, ValuesAreInTheUnitShown) {
  const RunRecord record = invented::make_record();
  const double tissue_k = find_series(record, "tissue_temperature")->values[0];
  const std::vector<Chart> metric = make_charts(record, UnitSystem::metric);
  const std::vector<Chart> us = make_charts(record, UnitSystem::us);
  EXPECT_NEAR(chart_titled(metric, "lettuce").lines[0].values[0], tissue_k - 273.15, 1e-9);
  EXPECT_NEAR(chart_titled(us, "lettuce").lines[0].values[0], (tissue_k - 273.15) * 1.8 + 32.0, 1e-9);
  EXPECT_NEAR(chart_titled(metric, "Water").lines[0].values[0], 260.0, 1e-9);
  // 1 US gallon is exactly 3.785411784 L (231 cubic inches; NIST Handbook 44, Appendix C).
  EXPECT_NEAR(chart_titled(us, "Water").lines[0].values[0], 260.0 / 3.785411784, 1e-9);
  EXPECT_NEAR(chart_titled(us, "Charge").lines[0].values[0], 100.0 * invented::battery_j({}, 0.0) / 3.6e6, 1e-9);
}

TEST(ReportCharts, EveryBayAndLayerIsTakenFromItsPlace) {
  const RunRecord record = invented::make_record();
  const std::vector<Chart> charts = make_charts(record, UnitSystem::metric);
  const Chart& back = chart_titled(charts, "Air temperature by height, back bay");
  ASSERT_EQ(back.lines.size(), 5U);
  EXPECT_EQ(back.lines[4].label, "2.20 m");
  for (const std::size_t i : {0U, 77U, 500U}) {
    EXPECT_NEAR(back.lines[4].values[i], invented::air_k({}, record.time_s[i], 2.2, 1) - 273.15, 1e-9);
  }
}

TEST(ReportCharts, LimitsStandInTheirPlantsChart) {
  RunRecord record = invented::make_record({"hot", 7.0, 600.0, 0.0});
  const auto roles = [&] {
    std::vector<std::string> names;
    const std::vector<Chart> charts = make_charts(record, UnitSystem::metric);
    for (const ChartLimit& limit : chart_titled(charts, "lettuce").limits) names.push_back(limit.role);
    return names;
  };
  EXPECT_THAT(roles(), testing::Contains("harm"));
  EXPECT_THAT(roles(), testing::Contains("lethal"));
  record.plants[0].harm_above_k = record.plants[0].lethal_above_k = record.plants[0].harm_below_k = kNan;
  EXPECT_TRUE(roles().empty());
}

TEST(ReportCharts, TheHarmLimitIsOnTheScaleHoweverFar) {
  RunRecord record = invented::make_record();
  for (PlantOutcome& plant : record.plants) plant.harm_above_k = 360.0, plant.lethal_above_k = 370.0;
  const std::vector<Chart> charts = make_charts(record, UnitSystem::metric);
  const Chart& chart = chart_titled(charts, "lettuce");
  ASSERT_EQ(chart.limits.size(), 1U) << "what kills is out of reach";
  EXPECT_EQ(chart.limits[0].role, "harm");
  EXPECT_GT(chart.highest, 360.0 - 273.15);
}

TEST(ReportCharts, MissingOrMisshapenSeriesLeaveTheirChartsOut) {
  RunRecord record = invented::make_record();
  const std::size_t all = make_charts(record, UnitSystem::metric).size();
  EXPECT_EQ(all, 2U * 2U + 5U + 2U);
  for (RecordSeries& series : record.series) {
    if (series.name == "tank_water") series.values.pop_back();
    if (series.name == "air_temperature") series.axes = {"bay", "nowhere"};
  }
  EXPECT_EQ(make_charts(record, UnitSystem::metric).size(), all - 5);
  record.series.clear();
  EXPECT_TRUE(make_charts(record, UnitSystem::metric).empty());
  record.axes.clear();
  record.time_s.clear();
  EXPECT_TRUE(make_charts(record, UnitSystem::metric).empty());
}

TEST(ReportCharts, PlansShareTheirAirScales) {
  std::vector<std::vector<Chart>> plans;
  for (const RunRecord& record : invented::three_plans()) plans.push_back(make_charts(record, UnitSystem::metric));
  share_scales(plans);
  EXPECT_EQ(plans[0][0].highest, plans[2][0].highest);
  double hottest = 0.0;
  for (const double value : plans[0][2].lines.back().values) hottest = std::max(hottest, value);
  EXPECT_GE(plans[2][0].highest, hottest);
}

TEST(ReportCharts, AYearIsThinnedAndKeepsItsHottestHour) {
  RunRecord record;
  for (int i = 0; i < 52560; ++i) record.time_s.push_back(600.0 * i);
  record.duration_s = 365.0 * 86400.0;
  invented::add_series(record, "tank_water", "", "kg", {}, 1,
                       [](double t, std::size_t) { return t == 6e6 ? 999.0 : 100.0; });
  const auto chart = chart_json(record, make_charts(record, UnitSystem::metric).at(0));
  EXPECT_LT(chart["hours"].size(), 2000U);
  EXPECT_THAT(chart["lines"][0]["values"].get<std::vector<double>>(), testing::Contains(999.0));
}

TEST(ReportEvents, ChainsFollowCausesAndEndWhereTheyTurnBack) {
  RunRecord record;
  record.events = {{1, 2, 30.0, "failure", "mist", "stopped"},
                   {2, 3, 20.0, "failure", "pump", "cut out"},
                   {3, 1, 10.0, "warning", "tank", "low"},
                   {4, 99, 5.0, "action", "fan", "on"}};
  const ShownEvents shown = shown_events(record, UnitSystem::metric);
  ASSERT_EQ(shown.events.size(), 4U);
  EXPECT_EQ(shown.events[0].event->id, 4);
  EXPECT_TRUE(shown.events[0].chain.empty());
  EXPECT_THAT(shown.events[3].chain, testing::ElementsAre("day 1 00:00, pump: cut out", "day 1 00:00, tank: low"));
}

TEST(ReportEvents, SpeakInTheUnitsShown) {
  RunRecord record;
  record.events = {{1, -1, 10.0, "weather", "outdoors", "35.0 degC"}, {2, 1, 20.0, "harm", "fern", "above 35 degC"}};
  const ShownEvents shown = shown_events(record, UnitSystem::us);
  EXPECT_EQ(shown.events[1].what, "above 95\u00A0°F");
  EXPECT_THAT(shown.events[1].chain, testing::ElementsAre("day 1 00:00, outdoors: 95.0\u00A0°F"));
}

TEST(ReportEvents, OfTooManyTheDeviceActionsGoFirst) {
  RunRecord record;
  for (int i = 0; i < 1000; ++i)
    record.events.push_back({i, -1, 1.0 * i, i % 10 == 0 ? "warning" : "action", "a", "b"});
  const ShownEvents shown = shown_events(record, UnitSystem::metric);
  EXPECT_EQ(shown.events.size(), 100U);
  EXPECT_EQ(shown.left_out, 900U);
  for (int i = 0; i < 1000; ++i) record.events[static_cast<std::size_t>(i)].kind = "warning";
  EXPECT_EQ(shown_events(record, UnitSystem::metric).events.size(), kMostEvents);
}

}  // namespace
}  // namespace noonhouse
