// SPDX-License-Identifier: Apache-2.0
// Hours too hot or cold in a whole house: those of leaves and those of roots, each hour once.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

#include "tests/support/small_scenario.hpp"
#include "tools/compare/plan_run.hpp"

namespace noonhouse {
namespace {

using testing::HasSubstr;

/// Ferns of the small house over its two days, with these limits of leaves and roots.
PlantOutcome ferns(const std::string& leaves, const std::string& roots,
                   std::vector<FailureOutcome>* failures = nullptr) {
  std::string text = small_scenario::kText;
  const auto replace = [&](const std::string& what, const std::string& with) {
    const auto at = text.find(what);
    ASSERT_NE(at, std::string::npos) << what;
    text.replace(at, what.size(), with);
  };
  replace("    harm_above: 36 degC\n    lethal_above: 42 degC\n",
          "    harm_above: " + leaves + "\n    lethal_above: 79 degC\n    roots_harm_above: " + roots + "\n");
  const Scenario scenario = small_scenario::read(text);
  const RunRecord record = run_plans(scenario, {&scenario.plans.front()}, 1).front();
  if (failures != nullptr) *failures = record.failures;
  return record.plants.front();
}

TEST(HoursBeyond, CountHotRootsToo) {
  std::vector<FailureOutcome> failures;
  const PlantOutcome hot = ferns("78 degC", "25 degC", &failures);
  EXPECT_LT(hot.peak_tissue_k, 350.0) << "its leaves are never beyond";
  EXPECT_GT(hot.hours_beyond, 2.0);
  EXPECT_LT(hot.hours_beyond, 48.0);
  EXPECT_EQ(ferns("78 degC", "75 degC").hours_beyond, 0.0);
  ASSERT_FALSE(failures.empty());
  EXPECT_THAT(failures.front().what, HasSubstr("hot roots"));
  EXPECT_THAT(failures.front().what, HasSubstr("; pots' walls ")) << "the temperature told is not that of the leaves";
}

/// Above limits that are colder than every hour, leaves and roots are beyond all the time: 48 hours, not 96.
TEST(HoursBeyond, CountAnHourOnceWhereLeavesAndRootsAreBothBeyond) {
  EXPECT_NEAR(ferns("5 degC", "5 degC").hours_beyond, 48.0, 1e-9);
}

}  // namespace
}  // namespace noonhouse
