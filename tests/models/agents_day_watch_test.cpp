// SPDX-License-Identifier: Apache-2.0
// The watch over a plant group's daily light in the engine's own run, on a sum of light that the test moves.
#include <gtest/gtest.h>

#include "models/plants/day_watch.hpp"
#include "tests/support/agent_stage.hpp"

namespace noonhouse {
namespace {

/// Days of light as the plants get it [mol/m2], a joule counted as one micromole here.
std::vector<std::string> light_harm(const std::vector<double>& days_mol, int harmed_after = 6) {
  const double mol_per_j = 1e-6;
  AgentStage stage(kDay * static_cast<std::int64_t>(days_mol.size()) + 1_h);
  Points sum{{0_s, 0.0}};
  for (const double mol : days_mol)
    sum.emplace_back(kDay * static_cast<std::int64_t>(sum.size()), sum.back().second + mol / mol_per_j);
  DayWatch::Parameters p;
  p.name = "herbs";
  p.light_sum = stage.moved("light", sum);
  p.least_j_m2 = 8.0 / mol_per_j;
  p.most_j_m2 = 30.0 / mol_per_j;
  p.mol_per_j = mol_per_j;
  p.harmed_after_days = harmed_after;
  stage.agent<DayWatch>(p);
  stage.run();
  std::vector<std::string> out;
  for (const auto& entry : stage.log())
    if (entry.kind == EventKind::harm) out.push_back(std::to_string(entry.when.ms / kDay.ms) + " " + entry.what);
  return out;
}
using Lines = std::vector<std::string>;

TEST(DayWatch, IsSilentWithinItsRange) {
  EXPECT_EQ(light_harm({8.1, 20, 29.9, 8.1, 29.9, 8.1, 29.9, 8.1, 29.9}), Lines{});
}

TEST(DayWatch, StrainsAtAThirdOfTheDimDaysThatHarm) {
  EXPECT_EQ(light_harm(std::vector<double>(9, 5.0)),
            (Lines{"2 strained: less light than the kind needs for 2 days, 5.0 of 8.0 mol/m2 on the last",
                   "6 harmed: less light than the kind needs for 6 days, 5.0 of 8.0 mol/m2 on the last"}));
}

TEST(DayWatch, CountsBrightDaysByTheMostItBears) {
  EXPECT_EQ(light_harm(std::vector<double>(7, 40.0)),
            (Lines{"2 strained: more light than the kind bears for 2 days, 40.0 of 30.0 mol/m2 on the last",
                   "6 harmed: more light than the kind bears for 6 days, 40.0 of 30.0 mol/m2 on the last"}));
}

// Five dim days, two fair ones (which leave three), two dim: five. The sixth harms.
TEST(DayWatch, TakesADayOffForEachFairDay) {
  EXPECT_EQ(light_harm({5, 5, 5, 5, 5, 20, 20, 5, 5}).size(), 1U) << "strained only";
  const Lines told = light_harm({5, 5, 5, 5, 5, 20, 20, 5, 5, 5});
  ASSERT_EQ(told.size(), 2U);
  EXPECT_TRUE(told[1].starts_with("10 harmed")) << told[1];
}

TEST(DayWatch, SaysTheDayItWasAndNotTheSum) {
  const Lines told = light_harm({20, 20, 20, 7, 6.5});
  ASSERT_EQ(told.size(), 1U);
  EXPECT_EQ(told[0], "5 strained: less light than the kind needs for 2 days, 6.5 of 8.0 mol/m2 on the last");
}

TEST(DayWatch, HarmsOnTheFirstDayWhereOneDayHarms) {
  const Lines told = light_harm({5.0}, 1);
  ASSERT_EQ(told.size(), 1U);
  EXPECT_TRUE(told[0].starts_with("1 harmed")) << told[0];
}

}  // namespace
}  // namespace noonhouse
