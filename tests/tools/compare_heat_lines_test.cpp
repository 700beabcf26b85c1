// SPDX-License-Identifier: Apache-2.0
// The book of heat of assembled houses, and how it is told.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "models/properties/constants.hpp"
#include "tests/support/invented_record.hpp"
#include "tests/support/small_scenario.hpp"
#include "tools/compare/comparison_json.hpp"
#include "tools/compare/comparison_text.hpp"
#include "tools/compare/heat_lines.hpp"
#include "tools/compare/plan_run.hpp"
#include "tools/scenario/assemble.hpp"

namespace noonhouse {
namespace {

using testing::HasSubstr;
using testing::Not;

/// What the lines of an hour moved, both ways added up [J].
double moved_j(const LedgerHour& hour) {
  double sum = std::abs(hour.sun_j);
  for (const HeatLineWords& words : kHeatLineWords) sum += std::abs(hour.*words.hour);
  return sum;
}

double residual_j(const LedgerHour& hour) {
  double left = hour.sun_j;
  for (const HeatLineWords& words : kHeatLineWords) left -= hour.*words.hour;
  return left;
}

void expect_closed(const RunRecord& record) {
  for (const LedgerHour& hour : record.ledger)
    EXPECT_NEAR(residual_j(hour), 0.0, 1e-9 * moved_j(hour)) << record.plan << ", from " << hour.begin_s << " s";
}

RunRecord run_of(const std::string& text, const std::string& plan) {
  const Scenario scenario = small_scenario::read(text);
  return run_plans(scenario, {&scenario.plan(plan)}, 1).front();
}

/// A summer day and a bit of the small house, each plan run once for all tests.
const RunRecord& small_run(const std::string& plan) {
  static const std::string text = small_scenario::with(small_scenario::kText, "length: 2 d", "length: 30.5 h");
  static const RunRecord still = run_of(text, "nothing runs"), misted = run_of(text, "vent and mist");
  return plan == still.plan ? still : misted;
}

TEST(HeatLines, TheBookOfAnAssembledHouseClosesEveryHour) {
  for (const char* plan : {"nothing runs", "vent and mist"}) {
    const RunRecord& record = small_run(plan);
    ASSERT_EQ(record.ledger.size(), 31U);
    EXPECT_EQ(record.ledger.back().end_s, 30.5 * 3600.0);
    for (std::size_t i = 0; i + 1 < record.ledger.size(); ++i)
      EXPECT_EQ(record.ledger[i].end_s, record.ledger[i + 1].begin_s);
    expect_closed(record);
    EXPECT_GT(ledger_total(record).sun_j, 1e8) << "a house in the summer sun";
  }
}

TEST(HeatLines, EveryWayOfAnAssembledHouseHasItsLine) {
  const Scenario scenario = small_scenario::read();
  const PlanScenario& plan = scenario.plan("vent and mist");
  const WeatherSeries weather = weather_of(scenario, plan);
  const Assembly assembly = assemble(plan, site_table(plan, weather), weather);
  EXPECT_THAT(HeatLedger(assembly.plan.house).unknown_paths(), testing::IsEmpty())
      << "a new kind of way takes heat out or turns water to vapour: say in tools/ledger which line it belongs to";
}

TEST(HeatLines, MistBindsTheLatentHeatOfTheWaterThatTheRunSaysEvaporated) {
  const RunRecord& misted = small_run("vent and mist");
  ASSERT_GT(misted.water.mist_evaporated_kg, 1.0);
  EXPECT_NEAR(ledger_total(misted).of(HeatLine::mist), kLatentHeatZero * misted.water.mist_evaporated_kg,
              1e-9 * kLatentHeatZero * misted.water.mist_evaporated_kg);
  EXPECT_EQ(ledger_total(small_run("nothing runs")).of(HeatLine::mist), 0.0);
}

TEST(HeatLines, MoistureThatLeavesTakesNoHeatAlong) {
  // What crossed the boundary with air, from the record's own list of paths: energy less latent heat of vapour.
  const RunRecord& record = small_run("vent and mist");
  double sensible_j = 0.0;
  for (const PathLine& line : record.paths) {
    if (line.path != "ventilation" && line.path != "leakage" && line.path != "heat of motors") continue;
    const bool to_house = line.from.starts_with("outdoor") || line.path == "heat of motors";
    const double outward = to_house ? -line.amount : line.amount;
    if (line.quantity == "energy") sensible_j += outward;
    if (line.quantity == "water") sensible_j -= kLatentHeatZero * outward;
  }
  const HeatSum total = ledger_total(record);
  EXPECT_NEAR(total.of(HeatLine::vents), sensible_j, 1e-9 * total.sun_j);
}

TEST(HeatLines, SignsAreThoseOfADayAndANight) {
  const RunRecord& record = small_run("nothing runs");
  const LedgerHour &night = record.ledger[2], &noon = record.ledger[12];
  EXPECT_EQ(night.sun_j, 0.0);
  EXPECT_LT(night.ground_j, 0.0) << "the ground gives back";
  EXPECT_GT(night.sky_j, 0.0) << "the sky takes";
  EXPECT_GT(noon.ground_j, 0.0);
  EXPECT_GT(noon.cover_j, 0.0);
  EXPECT_GT(noon.transpiration_j, 0.0);
}

TEST(HeatLines, TheComparisonTellsThemInKilowattHoursADayAndShares) {
  RunRecord record = invented::make_record();
  record.ledger = {{0.0, 43200.0, 7.2e6, 3.6e6, 0.0, 0.0, 0.0, 3.6e6, 0.0, -0.36e6, 0.0, 0.36e6}};
  EXPECT_EQ(sun_text(record), "4.0 kWh");
  EXPECT_EQ(heat_text(record, HeatLine::vents), "2.0 kWh, 50 %");
  EXPECT_EQ(heat_text(record, HeatLine::ground), "-0.2 kWh, -5 %");
  record.ledger[0].sun_j = 0.0;
  EXPECT_EQ(heat_text(record, HeatLine::vents), "2.0 kWh") << "no share of no sun";
  const std::string text = compare_text({record}, UnitSystem::metric, 100);
  EXPECT_THAT(text, HasSubstr("Where the sun's heat went"));
  EXPECT_THAT(text, HasSubstr("out by the vents"));
  EXPECT_THAT(text, Not(HasSubstr("evaporating mist"))) << "no plan has mist";
  record.ledger.clear();
  EXPECT_THAT(compare_text({record}, UnitSystem::metric, 100), Not(HasSubstr("Where the sun's heat went")));
  EXPECT_EQ(heat_text(record, HeatLine::vents), "-");
}

TEST(HeatLines, TheJsonHoldsEveryLineAndTheSumIsTheSun) {
  const RunRecord record = invented::make_record();
  const auto heat = nlohmann::json::parse(compare_json({record}))["plans"][0]["heat"];
  double sum = 0.0;
  for (const HeatLineWords& words : kHeatLineWords) sum += heat[std::string(words.key) + "_j"].get<double>();
  EXPECT_NEAR(heat["sun_j"].get<double>(), sum, 1e-12 * sum);
  EXPECT_EQ(heat["length_s"].get<double>(), record.duration_s);
  EXPECT_EQ(heat["vents_j"].get<double>(), ledger_total(record).of(HeatLine::vents));
}

TEST(HeatLines, EachLineIsToldOnce) {
  for (std::size_t i = 0; i < kHeatLines; ++i) EXPECT_EQ(static_cast<std::size_t>(kHeatLineWords[i].line), i);
}

}  // namespace
}  // namespace noonhouse
