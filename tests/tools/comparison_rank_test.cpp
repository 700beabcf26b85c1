// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <limits>

#include "sim/core/errors.hpp"
#include "tests/support/invented_record.hpp"
#include "tools/compare/comparison.hpp"

namespace noonhouse {
namespace {

/// A record with the plants' outcomes alone.
RunRecord plan(const std::string& name, const std::vector<std::string>& outcomes) {
  RunRecord record;
  record.plan = name;
  for (const std::string& outcome : outcomes) {
    PlantOutcome plant;
    plant.name = "plant " + std::to_string(record.plants.size());
    plant.outcome = outcome;
    record.plants.push_back(plant);
  }
  return record;
}

std::vector<std::string> order(const std::vector<RunRecord>& records) {
  std::vector<std::string> names;
  for (const RankedPlan& place : rank_plans(records)) names.push_back(records[place.index].plan);
  return names;
}

/// Plans, each worse than the one before by one criterion alone, all named against the order.
std::vector<RunRecord> ladder() {
  std::vector<RunRecord> plans{plan("g", {"kept", "kept"}),        plan("f", {"kept", "strained"}),
                               plan("e", {"kept", "strained"}),    plan("d", {"kept", "strained"}),
                               plan("c", {"kept", "harmed"}),      plan("b", {"kept", "lost"}),
                               plan("a", {"strained", "strained"})};
  plans[2].energy.loads_j = 3.6e6;
  plans[3].water.hand_watered_kg = 2.0;
  RunRecord failing = plan("cc", {"kept", "strained"});
  failing.failures.push_back({1.0, "failure", "pump", "stopped", {}});
  plans.insert(plans.begin() + 4, failing);
  RunRecord long_beyond = plan("ccc", {"kept", "strained"});
  long_beyond.plants[1].hours_beyond = 1.2;
  plans.insert(plans.begin() + 5, long_beyond);
  return plans;
}

TEST(ComparisonRank, FollowsTheRuleCriterionByCriterion) {
  EXPECT_THAT(order(ladder()), testing::ElementsAre("g", "f", "e", "d", "cc", "ccc", "c", "b", "a"));
}

TEST(ComparisonRank, TheOrderOfReadingDoesNotMatter) {
  std::vector<RunRecord> plans = ladder();
  const std::vector<std::string> expected = order(plans);
  std::sort(plans.begin(), plans.end(), [](const RunRecord& a, const RunRecord& b) { return a.plan < b.plan; });
  EXPECT_EQ(order(plans), expected);
  std::rotate(plans.begin(), plans.begin() + 3, plans.end());
  EXPECT_EQ(order(plans), expected);
}

TEST(ComparisonRank, NamesTheCriterionThatDecides) {
  const std::vector<RunRecord> plans = ladder();
  std::vector<std::string> reasons;
  for (std::size_t i = 1; i < plans.size(); ++i) {
    reasons.push_back(deciding_reason(tally_plan(plans[i - 1]), tally_plan(plans[i])));
  }
  EXPECT_THAT(reasons, testing::ElementsAre("it keeps more plants", "it uses less charge", "it uses less water",
                                            "less fails", "its plants are too hot or too cold for fewer hours",
                                            "it harms fewer plants", "it loses fewer plants", "it keeps more plants"));
}

RunRecord priced(const std::string& name, double a_season, const std::string& currency = "EUR") {
  RunRecord record = plan(name, {"kept"});
  record.cost = {currency, 100.0, a_season};
  return record;
}

TEST(ComparisonRank, CostDecidesLastOfAll) {
  std::vector<RunRecord> plans{priced("a", 90.0), priced("b", 40.0), priced("c", 10.0)};
  plans[2].energy.loads_j = 3.6e6;
  EXPECT_THAT(order(plans), testing::ElementsAre("b", "a", "c"));
  EXPECT_EQ(deciding_reason(tally_plan(plans[1]), tally_plan(plans[0])), "it costs less a season");
}

TEST(ComparisonRank, CostCountsOnlyWhereAllKnowItInOneCurrency) {
  const std::vector<RunRecord> one_unknown{priced("a", 90.0), plan("b", {"kept"}), priced("c", 40.0)};
  EXPECT_THAT(order(one_unknown), testing::ElementsAre("a", "b", "c"));
  for (const RankedPlan& place : rank_plans(one_unknown)) EXPECT_EQ(place.rank, 1);
  EXPECT_EQ(deciding_reason(tally_plan(one_unknown[0]), tally_plan(one_unknown[1])), "");
  EXPECT_THAT(order({priced("a", 90.0), priced("b", 40.0, "USD")}), testing::ElementsAre("a", "b"));
}

TEST(ComparisonRank, WaterUsedHoldsAllThatLeavesTheTank) {
  RunRecord record;
  record.water.misted_kg = 1.0, record.water.hand_watered_kg = 2.0, record.water.dripped_kg = 4.0;
  record.water.spilt_kg = 8.0, record.water.leaked_kg = 16.0, record.water.evaporated_kg = 32.0;
  EXPECT_EQ(tally_plan(record).water_used_kg, 31.0);
}

TEST(ComparisonRank, HarmToPlantsIsNoFailureOfDevices) {
  RunRecord record = plan("p", {"harmed"});
  record.failures = {{1.0, "harm", "plant 0", "too hot", {}}, {2.0, "failure", "pump", "stopped", {}}};
  EXPECT_EQ(tally_plan(record).failures, 1);
}

TEST(ComparisonRank, WhatFailsAgainForTheSameReasonCountsOnce) {
  RunRecord record = plan("p", {"kept"});
  record.failures = {{1.0, "failure", "mist", "mist stops", {"mist stops", "pump cut out", "tank no rain"}},
                     {2.0, "failure", "mist", "mist stays off", {"mist stays off", "tank no rain, day 3 09:51"}},
                     {3.0, "failure", "grower", "no water", {"grower no water", "tank no rain, day 3 09:51"}}};
  EXPECT_EQ(tally_plan(record).failures, 1);
  record.failures.push_back({4.0, "failure", "fan", "fan stuck", {"fan stuck"}});
  EXPECT_EQ(tally_plan(record).failures, 2);
}

TEST(ComparisonRank, LessThanAnHourBeyondIsNoReason) {
  std::vector<RunRecord> plans{plan("b", {"strained"}), plan("a", {"strained"}), plan("c", {"strained"})};
  plans[0].plants[0].hours_beyond = 1.6, plans[1].plants[0].hours_beyond = 2.4, plans[2].plants[0].hours_beyond = 1.4;
  EXPECT_THAT(order(plans), testing::ElementsAre("c", "a", "b"));
}

TEST(ComparisonRank, LessThanALitreOrAWattHourIsNoReason) {
  std::vector<RunRecord> plans{plan("b", {"kept"}), plan("a", {"kept"})};
  plans[0].water.misted_kg = 100.1, plans[1].water.misted_kg = 100.4;
  plans[0].energy.loads_j = 3600.0, plans[1].energy.loads_j = 3700.0;
  const std::vector<RankedPlan> ranked = rank_plans(plans);
  EXPECT_THAT(order(plans), testing::ElementsAre("a", "b"));
  EXPECT_EQ(ranked[0].rank, 1);
  EXPECT_EQ(ranked[1].rank, 1);
}

TEST(ComparisonRank, APlaceAfterASharedOneSkips) {
  const std::vector<RankedPlan> ranked = rank_plans({plan("a", {"kept"}), plan("b", {"kept"}), plan("c", {"lost"})});
  EXPECT_EQ(ranked[1].rank, 1);
  EXPECT_EQ(ranked[2].rank, 3);
}

TEST(ComparisonRank, UnknownWaterRanksBehindKnown) {
  std::vector<RunRecord> plans{plan("a", {"kept"}), plan("b", {"kept"})};
  plans[0].water.misted_kg = std::numeric_limits<double>::quiet_NaN();
  plans[1].water.misted_kg = 1e6;
  EXPECT_THAT(order(plans), testing::ElementsAre("b", "a"));
}

TEST(ComparisonRank, RefusesNothingAndUnknownOutcomes) {
  const auto kind_of = [](const std::vector<RunRecord>& records) {
    try {
      rank_plans(records);
    } catch (const UserError& error) {
      return error.kind();
    }
    return ErrorKind::interrupted;
  };
  EXPECT_EQ(kind_of({}), ErrorKind::usage);
  EXPECT_EQ(kind_of({plan("p", {"wilted"})}), ErrorKind::results_unreadable);
}

TEST(ComparisonRank, HeadlineSaysWhetherEveryPlantIsKept) {
  const auto say = [](const std::vector<RunRecord>& plans) { return headline(plans, rank_plans(plans)); };
  EXPECT_EQ(say({plan("a", {"kept", "kept"})}), "\"a\" keeps all 2 plant groups.");
  EXPECT_EQ(
      say({plan("a", {"kept", "lost"}), plan("b", {"lost", "lost"})}),
      "No plan keeps every plant. \"a\" keeps 1 of 2 plant groups. Next is \"b\"; \"a\" is ahead because it keeps "
      "more plants.");
  EXPECT_EQ(say({plan("a", {"kept"}), plan("b", {"kept"})}),
            "\"a\" keeps the one plant group. \"b\" comes to the same.");
}

TEST(ComparisonRank, WarnsOfRunsThatAreNotComparable) {
  std::vector<RunRecord> plans = invented::three_plans();
  EXPECT_TRUE(comparison_warnings(plans).empty());
  plans[2].scenario = "other", plans[2].start = "2025-01-01 00:00:00", plans[2].duration_s = 1.0;
  plans[2].provenance.weather_digest = "x", plans[2].provenance.version = "9";
  EXPECT_EQ(comparison_warnings(plans).size(), 5U);
}

}  // namespace
}  // namespace noonhouse
