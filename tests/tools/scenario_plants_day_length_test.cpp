// SPDX-License-Identifier: Apache-2.0
// A cover that shortens the day: photoperiod met and missed, as a run records it.
#include <gtest/gtest.h>

#include "tests/support/small_scenario.hpp"
#include "tools/compare/plan_run.hpp"

namespace noonhouse {
namespace {

/// The small house in mid July at 35 degrees north (sun up for 14.2 h), with a kind that wants 9 to 12 hours of day and
/// a blackout cloth over all of it by the clock.
RunRecord run_with(const std::string& from, const std::string& until) {
  std::string text = small_scenario::with(small_scenario::kText, "    leaf_area_index: 2\n",
                                          "    leaf_area_index: 2\n    shortest_day: 9 h\n    longest_day: 12 h\n");
  text = small_scenario::with(text, "benches:\n",
                              "shades:\n  cover: { material: blackout cloth, over: all }\n"
                              "timers:\n  night hours: { from: \"" +
                                  from + "\", until: \"" + until + "\", drives: [cover] }\nbenches:\n");
  text = small_scenario::with(text, "    in_service: []\n", "    in_service: [cover, night hours]\n");
  const Scenario scenario = small_scenario::read(text);
  return run_plans(scenario, {&scenario.plan("nothing runs")}, 1).front();
}

TEST(DayLength, IsAsLongAsTheSunIsUpWithoutTheCover) {
  const PlantOutcome ferns = run_with("12:00", "12:01").plants.front();
  // Sunrise to sunset less the minutes in which the sun is too low to count: by the almanac 14.2 h at 35 degrees north.
  EXPECT_GT(ferns.day_length_h, 13.2);
  EXPECT_LT(ferns.day_length_h, 14.6);  // straight lines over a quarter of an hour smear both ends
  EXPECT_EQ(ferns.days_long_enough, 0);
  EXPECT_EQ(ferns.days_of_wrong_length, 2);
}

TEST(DayLength, IsShortenedByTheHoursOfTheCover) {
  // Drawn from 18:00 to 07:00, over midnight: eleven hours of day are left, within what the kind wants.
  const PlantOutcome ferns = run_with("18:00", "07:00").plants.front();
  EXPECT_NEAR(ferns.day_length_h, 11.0, 0.2);
  EXPECT_EQ(ferns.days_long_enough, 2);
  EXPECT_EQ(ferns.days_of_wrong_length, 0);
}

TEST(DayLength, CanBeMadeTooShort) {
  const PlantOutcome ferns = run_with("15:00", "08:00").plants.front();
  EXPECT_NEAR(ferns.day_length_h, 7.0, 0.2);
  EXPECT_EQ(ferns.days_long_enough, 0);
}

TEST(DayLength, CostsTheLightOfItsHoursAndKeepsTheirHeatOut) {
  const RunRecord open = run_with("12:00", "12:01"), covered = run_with("15:00", "08:00");
  EXPECT_LT(covered.plants.front().daily_light_mol_m2, 0.75 * open.plants.front().daily_light_mol_m2);
  EXPECT_LT(covered.plants.front().hours_beyond, open.plants.front().hours_beyond);
}

}  // namespace
}  // namespace noonhouse
