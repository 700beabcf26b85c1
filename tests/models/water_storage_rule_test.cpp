// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <random>

#include "models/water/storage_rule.hpp"
#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;
using Series = std::vector<double>;
using Periods = std::vector<StoragePeriod>;

Series column(const Periods& periods, double StoragePeriod::*field) {
  Series out;
  for (const auto& period : periods) out.push_back(period.*field);
  return out;
}
double sum(const Series& all) {
  double out = 0.0;
  for (double x : all) out += x;
  return out;
}

const Series kInflow{0, 0, 150, 300, 0, 0, 0, 40, 0, 0}, kDemand(10, 60.0);

// A tank of 200 L with 100 L in it, 60 L a day, worked out by hand.
TEST(YieldBeforeSpillage, SuppliesTenDaysAsByHand) {
  const auto days = yield_before_spillage(200.0, 100.0, kInflow, kDemand);
  EXPECT_THAT(column(days, &StoragePeriod::yield_kg), ElementsAre(60, 40, 60, 60, 60, 60, 60, 60, 0, 0));
  EXPECT_THAT(column(days, &StoragePeriod::level_kg), ElementsAre(40, 0, 90, 200, 140, 80, 20, 0, 0, 0));
  EXPECT_THAT(column(days, &StoragePeriod::spill_kg), ElementsAre(0, 0, 0, 130, 0, 0, 0, 0, 0, 0));
  EXPECT_EQ(total_yield_kg(days), 460.0);
}

// The same by the other rule, by hand: on day 3 nothing is held when it begins; day 4 ends at 200 - 60.
TEST(YieldAfterSpillage, SuppliesTenDaysAsByHand) {
  const auto days = yield_after_spillage(200.0, 100.0, kInflow, kDemand);
  EXPECT_THAT(column(days, &StoragePeriod::yield_kg), ElementsAre(60, 40, 0, 60, 60, 60, 20, 0, 40, 0));
  EXPECT_THAT(column(days, &StoragePeriod::level_kg), ElementsAre(40, 0, 150, 140, 80, 20, 0, 40, 0, 0));
  EXPECT_THAT(column(days, &StoragePeriod::spill_kg), ElementsAre(0, 0, 0, 250, 0, 0, 0, 0, 0, 0));
}

/// Storms and thirst of any size, from an engine whose numbers are the same everywhere.
Series drawn(std::mt19937& engine, std::size_t n, double most, double dry_share) {
  Series out;
  const auto unit = [&] { return static_cast<double>(engine()) / 4294967296.0; };
  for (std::size_t i = 0; i < n; ++i) {
    const bool dry = unit() < dry_share;
    out.push_back(dry ? 0.0 : most * unit());
  }
  return out;
}

TEST(StorageRules, ConserveWaterAndBoundEachOther) {
  std::mt19937 engine(4);
  for (int trial = 0; trial < 200; ++trial) {
    const double capacity_kg = 10.0 + 3.0 * trial, start_kg = 0.5 * capacity_kg;
    const Series inflow = drawn(engine, 60, 400.0, 0.6), demand = drawn(engine, 60, 120.0, 0.2);
    const auto before = yield_before_spillage(capacity_kg, start_kg, inflow, demand);
    const auto after = yield_after_spillage(capacity_kg, start_kg, inflow, demand);
    double most = 0.0, least = 0.0;
    for (std::size_t i = 0; i < inflow.size(); ++i) {
      most += before[i].yield_kg;
      least += after[i].yield_kg;
      ASSERT_LE(least, most + 1e-9) << trial << " after period " << i;
    }
    for (const auto& days : {before, after}) {
      const double spill = sum(column(days, &StoragePeriod::spill_kg));
      EXPECT_NEAR(start_kg + sum(inflow), total_yield_kg(days) + spill + days.back().level_kg, 1e-9) << trial;
      for (const auto& day : days) {
        EXPECT_GE(day.spill_kg, 0.0);
        EXPECT_GE(day.level_kg, 0.0);
        EXPECT_LE(day.level_kg, capacity_kg);
      }
    }
  }
}

TEST(StorageRules, KnowATankWithoutRoomAndOneWithoutEnd) {
  const Series inflow{50, 0, 80}, demand{30, 30, 30};
  EXPECT_EQ(total_yield_kg(yield_before_spillage(0.0, 0.0, inflow, demand)), 60.0) << "straight through";
  EXPECT_EQ(total_yield_kg(yield_after_spillage(0.0, 0.0, inflow, demand)), 0.0);
  const auto vast = yield_before_spillage(1e9, 1e6, inflow, demand);
  EXPECT_EQ(total_yield_kg(vast), 90.0);
  EXPECT_EQ(vast.back().level_kg, 1e6 + 130.0 - 90.0);
  EXPECT_TRUE(yield_before_spillage(10.0, 5.0, {}, {}).empty());
}

TEST(StorageRules, RefuseWhatCannotBe) {
  const Series one{1.0}, two{1.0, 1.0}, negative{-1.0};
  EXPECT_THROW(yield_before_spillage(10.0, 5.0, one, two), UserError);
  EXPECT_THROW(yield_before_spillage(10.0, 11.0, one, one), UserError);
  EXPECT_THROW(yield_after_spillage(10.0, -1.0, one, one), UserError);
  EXPECT_THROW(yield_after_spillage(10.0, 5.0, negative, one), UserError);
  EXPECT_THROW(yield_after_spillage(10.0, 5.0, one, negative), UserError);
}

}  // namespace
}  // namespace noonhouse
