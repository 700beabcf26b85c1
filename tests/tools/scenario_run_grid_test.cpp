// SPDX-License-Identifier: Apache-2.0
// The instants of a run's sun and weather, and the wind read from them.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "models/properties/constants.hpp"
#include "tests/support/small_faults.hpp"
#include "tests/support/small_scenario.hpp"
#include "tools/scenario/assemble.hpp"
#include "tools/scenario/run_grid.hpp"
#include "tools/scenario/site_forcing.hpp"

namespace noonhouse {
namespace {

TEST(RunGrid, IsRegularWithInstantsOfItsOwnForShortWeather) {
  const auto grid_of = [](const std::string& more) { return RunGrid(small_faults::read(more).plans.front().spec); };
  const RunGrid calm = grid_of("");
  ASSERT_EQ(calm.size(), 97U);
  for (std::size_t k = 0; k < calm.size(); ++k) EXPECT_EQ(calm.when(k), 15_min * static_cast<std::int64_t>(k));
  EXPECT_EQ(grid_of("hazards:\n  hail: { kind: hail, day: 1, at: \"14:07\", stone: 20 mm }\n").size(), 97U)
      << "hail is no weather of the grid";
  const RunGrid stormy = grid_of(
      "hazards:\n  squall: { kind: gusts, day: 1, at: \"14:10\", lasts: 20 min, speed: 20 m/s }\n"
      "  burst: { kind: cloudburst, day: 1, at: \"14:30\", lasts: 2 min, rain: 5 mm }\n");
  std::vector<Tick> own;
  for (std::size_t k = 0; k < stormy.size(); ++k)
    if (!stormy.is_regular(k)) own.push_back(stormy.when(k));
  EXPECT_THAT(own, testing::ElementsAre(14_h + 10_min, 14_h + 30_min + 30_s, 14_h + 31_min, 14_h + 31_min + 30_s,
                                        14_h + 32_min))
      << "14:30 is regular; a burst's quarters of half a minute are where it darkens too";
  for (std::size_t k = 0; k + 1 < stormy.size(); ++k) {
    EXPECT_LT(stormy.when(k), stormy.when(k + 1));
    EXPECT_EQ(stormy.interval_at(stormy.when(k)), k);
    EXPECT_EQ(stormy.interval_at(stormy.when(k + 1) - Tick{1}), k);
  }
  EXPECT_EQ(stormy.interval_at(kDay), stormy.size() - 2) << "the last interval has the run's end";
}

// Where the regular instants do not reach the end, the last interval goes beyond it.
TEST(RunGrid, CoversARunThatItsSpacingDoesNotDivide) {
  const RunGrid grid(
      read_scenario_text(small_scenario::with(small_faults::kText, "warm_up: 0 s", "warm_up: 0 s, sun_every: 7 min"),
                         "odd.yaml")
          .plans.front()
          .spec);
  EXPECT_LT(grid.when(grid.size() - 2), kDay);
  EXPECT_GE(grid.when(grid.size() - 1), kDay);
}

// Hail meets the mean wind of its own time, gusts of a part of it in proportion.
std::shared_ptr<const SiteTable> site_table_of(const Scenario& scenario) {
  const PlanScenario& plan = scenario.plans.front();
  return site_table(plan, weather_of(scenario, plan));
}

TEST(SiteTable, TheMeanWindOfASpanIsThatOfItsParts) {
  const auto calm = site_table_of(small_faults::read(""));
  const auto gusty = site_table_of(
      small_faults::read("hazards:\n  squall: { kind: gusts, day: 1, at: \"14:05\", lasts: 5 min, speed: 32 m/s }\n"));
  const auto speed = [&](Tick from, Tick until) { return gusty->mean_wind(from, until).speed_m_s; };
  EXPECT_NEAR(speed(14_h + 6_min, 14_h + 7_min), 32.0 / gusty->gust_factor(), 1e-12);
  const double parts =
      5.0 * speed(14_h, 14_h + 5_min) + 5.0 * 32.0 / gusty->gust_factor() + 10.0 * speed(14_h + 10_min, 14_h + 20_min);
  EXPECT_NEAR(20.0 * speed(14_h, 14_h + 20_min), parts, 1e-9);
  const auto own = calm->mean_wind(14_h, 14_h + 15_min);
  const auto& begins = calm->instant(calm->grid().interval_at(14_h));
  EXPECT_NEAR(own.speed_m_s, 0.5 * (begins.wind_m_s + begins.wind_at_end_m_s), 1e-12);
  EXPECT_NEAR(std::remainder(own.from_rad - begins.wind_from_rad, 2.0 * kPi), 0.0, 1e-9);
}

}  // namespace
}  // namespace noonhouse
