// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <fstream>

#include "sim/core/errors.hpp"
#include "tests/tools/faults_sample.hpp"
#include "tools/cli/fault_files.hpp"

namespace noonhouse {
namespace {

namespace fs = std::filesystem;
using testing::HasSubstr;

/// An empty folder of this test's own, removed at its end.
class FaultFiles : public testing::Test {
 protected:
  void SetUp() override {
    const auto* test = testing::UnitTest::GetInstance()->current_test_info();
    folder_ = fs::path(testing::TempDir()) / (std::string("faults_") + test->name() + std::to_string(::getpid()));
    fs::create_directories(folder_);
  }
  void TearDown() override { fs::remove_all(folder_); }
  fs::path folder_;
};

Scenario with_plans(const std::vector<std::vector<std::string>>& in_service) {
  Scenario scenario;
  for (const auto& names : in_service) {
    scenario.plans.emplace_back();
    scenario.plans.back().name = "plan " + std::to_string(scenario.plans.size());
    scenario.plans.back().in_service = names;
  }
  return scenario;
}

TEST_F(FaultFiles, AreReadBackFromTheFolder) {
  EXPECT_FALSE(faults_in(folder_).has_value());
  const auto file = write_faults(folder_, invented::fault_sheet());
  EXPECT_EQ(file, folder_ / "faults.json");
  const auto sheet = faults_in(folder_);
  ASSERT_TRUE(sheet.has_value());
  EXPECT_EQ(sheet->plan, "vents, mist and shade");
  EXPECT_EQ(sheet->faults.size(), 5U);
  EXPECT_EQ(std::distance(fs::directory_iterator(folder_), fs::directory_iterator()), 1) << "no part is left";
}

TEST(FaultDay, IsTheNumberOfADayOfTheRun) {
  EXPECT_EQ(told_day_of("", 6.0 * 86400.0), kNever);
  EXPECT_EQ(told_day_of("1", 6.0 * 86400.0), Tick{0});
  EXPECT_EQ(told_day_of("6", 6.0 * 86400.0), kDay * 5);
  EXPECT_EQ(told_day_of("2", 90'000.0), kDay) << "of a day that is not whole too";
  for (const std::string text : {"0", "7", "-1", "2.5", "day 2", " 2", "99999999999"}) {
    try {
      told_day_of(text, 6.0 * 86400.0);
      ADD_FAILURE() << "not refused: " << text;
    } catch (const UserError& error) {
      EXPECT_EQ(error.kind(), ErrorKind::usage);
      EXPECT_THAT(error.what(),
                  HasSubstr("--day: read \"" + text + "\"; allowed is the number of a day of this run, 1 to 6"));
    }
  }
}

TEST_F(FaultFiles, DamageNamesTheFileAndTheWayOut) {
  std::ofstream(folder_ / "faults.json") << "{\"scenario\": \"heat";
  try {
    faults_in(folder_);
    FAIL() << "not refused";
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::results_unreadable);
    EXPECT_THAT(error.what(), HasSubstr((folder_ / "faults.json").string()));
    EXPECT_THAT(error.what(), HasSubstr("--results " + folder_.string()));
  }
}

TEST_F(FaultFiles, AFolderInItsPlaceIsRefused) {
  fs::create_directory(folder_ / "faults.json");
  EXPECT_THROW(faults_in(folder_), UserError);
  EXPECT_THROW(write_faults(folder_, invented::fault_sheet()), UserError);
}

TEST(FullestPlan, IsTheFirstOfThoseWithMostInService) {
  EXPECT_EQ(fullest_plan(with_plans({{"a"}, {"a", "b"}, {}, {"c", "d"}})).name, "plan 2");
  EXPECT_EQ(fullest_plan(with_plans({{}, {}})).name, "plan 1");
}

TEST(FaultHorizon, WithoutAUnitIsOfferedHours) {
  try {
    horizon_of("24");
    ADD_FAILURE() << "not refused";
  } catch (const UserError& error) {
    EXPECT_THAT(error.what(), HasSubstr("did you mean \"24 h\"?"));
  }
}

TEST(FaultHorizon, IsADurationWithinReason) {
  EXPECT_EQ(horizon_of("24h").ms, 86'400'000);
  EXPECT_EQ(horizon_of("24 h").ms, 86'400'000);
  EXPECT_EQ(horizon_of("10 min").ms, 600'000);
  EXPECT_EQ(horizon_of("31 d").ms, 31 * 86'400'000LL);
  for (const char* text : {"9 min", "32 d", "-1 h", "24", "24 m", "soon", "", "nan h"}) {
    try {
      horizon_of(text);
      ADD_FAILURE() << "not refused: " << text;
    } catch (const UserError& error) {
      EXPECT_EQ(error.kind(), ErrorKind::usage);
      EXPECT_THAT(error.what(), HasSubstr("--horizon"));
    }
  }
}

}  // namespace
}  // namespace noonhouse
