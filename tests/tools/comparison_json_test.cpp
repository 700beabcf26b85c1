// SPDX-License-Identifier: Apache-2.0
#include "tools/compare/comparison_json.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/support/invented_record.hpp"

namespace noonhouse {
namespace {

TEST(ComparisonJson, PlansStandInRankOrder) {
  const auto document = nlohmann::json::parse(compare_json(invented::three_plans()));
  std::vector<std::string> names;
  for (const auto& plan : document["plans"]) names.push_back(plan["name"]);
  EXPECT_THAT(names, testing::ElementsAre("shade and mist", "mist only", "nothing"));
  EXPECT_EQ(document["scenario"], "invented-week");
  EXPECT_EQ(document["plans"][0]["rank"], 1);
}

TEST(ComparisonJson, CarriesWhatTheRecordHolds) {
  const std::vector<RunRecord> records = invented::three_plans();
  const auto document = nlohmann::json::parse(compare_json(records));
  const RunRecord& dry = records[1];
  const auto& plan = document["plans"][1];
  EXPECT_EQ(plan["plants"][3]["outcome"], dry.plants[3].outcome);
  EXPECT_EQ(plan["plants"][3]["peak_tissue_k"].get<double>(), dry.plants[3].peak_tissue_k);
  EXPECT_EQ(plan["levels"].size(), dry.levels.size());
  EXPECT_EQ(plan["water"]["first_dry_s"].get<double>(), dry.water.first_dry_s);
  EXPECT_EQ(plan["energy"]["lowest_j"].get<double>(), dry.energy.lowest_j);
  EXPECT_EQ(plan["airing"]["mean_1_s"].get<double>(), dry.airing.mean_1_s);
  EXPECT_EQ(plan["airing"]["most_time_s"].get<double>(), dry.airing.most_time_s);
  EXPECT_EQ(plan["ways"][1]["name"], "side vent");
  EXPECT_EQ(plan["ways"][1]["in_1_s"].get<double>(), dry.ways[1].in_1_s);
  EXPECT_EQ(plan["failures"][1]["chain"].get<std::vector<std::string>>(), dry.failures[1].chain);
  EXPECT_EQ(plan["closure"]["water_relative"].get<double>(), dry.closure.water_relative);
  EXPECT_EQ(plan["devices"][0]["starts"].get<int>(), dry.devices[0].starts);
  EXPECT_EQ(plan["steps"]["steps"].get<std::int64_t>(), dry.counts.steps);
}

TEST(ComparisonJson, CarriesCostStoresHeatAndNotes) {
  std::vector<RunRecord> records = invented::three_plans();
  RunRecord& dry = records[1];
  dry.cost = {"EUR", 1240.0, 230.0, 90.0, 120.0};
  dry.water.days_full_thirsty = 4.5, dry.water.deliveries = 2, dry.water.storage_rule = "by the moment";
  dry.energy.days_full = 3.5, dry.energy.self_discharge_j = 7.0;
  dry.energy.dead_cells_j = 8.0, dry.energy.lowest_share = 0.25;
  dry.work_heat = {{"west", 3.0, 305.15, 46800.0}};
  dry.notes = {"A note."};
  const auto document = nlohmann::json::parse(compare_json(records));
  const auto& plan = document["plans"][1];
  EXPECT_EQ(plan["cost"]["per_season"].get<double>(), 230.0);
  EXPECT_EQ(plan["cost"]["currency"], "EUR");
  EXPECT_EQ(plan["cost"]["brought_per_season"].get<double>(), 90.0);
  EXPECT_EQ(plan["cost"]["season_d"].get<double>(), 120.0);
  EXPECT_EQ(plan["work_heat"][0]["unwise_above_k"].get<double>(), 301.15);
  EXPECT_EQ(plan["water"]["days_full_thirsty"].get<double>(), 4.5);
  EXPECT_EQ(plan["water"]["deliveries"].get<int>(), 2);
  EXPECT_EQ(plan["water"]["storage_rule"], "by the moment");
  EXPECT_EQ(plan["energy"]["days_full"].get<double>(), 3.5);
  EXPECT_EQ(plan["energy"]["self_discharge_j"].get<double>(), 7.0);
  EXPECT_EQ(plan["energy"]["dead_cells_j"].get<double>(), 8.0);
  EXPECT_EQ(plan["energy"]["lowest_share"].get<double>(), 0.25);
  EXPECT_EQ(plan["work_heat"][0]["peak_k"].get<double>(), 305.15);
  EXPECT_EQ(plan["notes"][0], "A note.");
  EXPECT_TRUE(document["plans"][0]["cost"].is_null());
}

TEST(ComparisonJson, WhatDidNotHappenIsNull) {
  const auto document = nlohmann::json::parse(compare_json(invented::three_plans()));
  const auto& best = document["plans"][0];
  ASSERT_TRUE(best["water"].contains("first_dry_s"));
  EXPECT_TRUE(best["water"]["first_dry_s"].is_null());
  EXPECT_TRUE(best["energy"]["first_cut_off_s"].is_null());
}

TEST(ComparisonJson, TheSameRunsGiveTheSameBytesInAnyOrder) {
  std::vector<RunRecord> records = invented::three_plans();
  const std::string text = compare_json(records);
  std::reverse(records.begin(), records.end());
  EXPECT_EQ(compare_json(records), text);
}

TEST(ComparisonJson, RepairsTextThatIsNotUtf8) {
  RunRecord record = invented::make_record();
  record.plan = "caf\xe9";
  const auto document = nlohmann::json::parse(compare_json({record}));
  EXPECT_EQ(document["plans"][0]["name"], "caf\uFFFD");
}

}  // namespace
}  // namespace noonhouse
