// SPDX-License-Identifier: Apache-2.0
// Water sprinkled on a roof comes back by the gutters that its slopes have, and not otherwise.
#include <gtest/gtest.h>

#include <string>

#include "sim/graph/balance.hpp"
#include "tests/support/small_scenario.hpp"
#include "tools/scenario/assemble.hpp"

namespace noonhouse {
namespace {

/// What became of the water in a morning without rain [kg].
struct Returned {
  double sprinkled = 0.0, off_front = 0.0, off_back = 0.0;  ///< off: what ran off the slope
  double to_tank = 0.0, to_chamber = 0.0, past = 0.0;       ///< of what came to gutters
  double balance = 0.0;                                     ///< of all water, relative
};

/// The small house of two bays for six hours, sprinkled with 60 L an hour for four of them.
Returned morning(const std::string& gutters) {
  std::string text = small_scenario::with(small_scenario::kText, "length: 2 d", "length: 6 h\n  warm_up: 0 s");
  text = small_scenario::with(text, "mist_lines:\n", R"(mist_lines:
  roof line: { bays: [west, east], height: 2.5 m, wets: roof, nozzles: 6, nozzle_flow: 10 L/h, pump_power: 4 W }
)");
  text = small_scenario::with(text, "tank:\n", gutters + R"(timers:
  early: { from: "00:30", until: "04:30", drives: [roof line] }
tank:
)");
  text = text.substr(0, text.find("plans:\n")) + "plans:\n  roof: { in_service: [roof line, early] }\n";
  text = small_scenario::with(text, "peak_day: 2", "peak_day: 1");
  text = small_scenario::with(text, "starts_with: 250 L", "starts_with: 300 L");
  const Scenario scenario = small_scenario::read(text);
  const PlanScenario& plan = scenario.plans.front();
  const WeatherSeries weather = weather_of(scenario, plan);
  const Assembly assembly = assemble(plan, site_table(plan, weather), weather);
  const House& house = assembly.plan.house;
  const RunResult result = Run(assembly.plan).go();
  Returned out;
  for (const ExchangeInfo& e : house.exchanges) {
    const double* carried = result.state.carried.data() + e.first_flux;
    if (e.name.starts_with("roof line over the ")) out.sprinkled += carried[0];
    if (e.name.starts_with("run-off from front roof")) out.off_front += carried[0];
    if (e.name.starts_with("run-off from back roof")) out.off_back += carried[0];
    if (e.path != "back to the tank") continue;
    out.to_tank += carried[0];
    out.to_chamber += carried[2];
    out.past += carried[4];
  }
  out.balance = audit_balance(house, house.initial_amounts, result.state.amounts, result.state.carried)
                    .total(Quantity::water)
                    .relative();
  EXPECT_NEAR(out.sprinkled, 240.0, 1.0);
  EXPECT_GT(out.off_front, 0.45 * out.sprinkled);
  EXPECT_GT(out.off_back, 0.45 * out.sprinkled);
  EXPECT_LE(out.balance, 1e-9);
  return out;
}

constexpr double kOnItsWay = 0.01;  ///< still there an hour and a half after [kg]

TEST(RoofReturn, ComesBackWholeByThePlainGutters) {
  const Returned r = morning("");
  EXPECT_NEAR(r.to_tank, r.off_front + r.off_back, kOnItsWay);
}

TEST(RoofReturn, IsLostOfASlopeWithoutAGutter) {
  const Returned r = morning("gutters:\n  only: { drains: front roof }\n");
  EXPECT_NEAR(r.to_tank, r.off_front, kOnItsWay);
  EXPECT_EQ(r.past, 0.0);
}

TEST(RoofReturn, IsLostPastABlockedGutter) {
  const Returned r = morning("gutters:\n  only: { drains: front roof, blocked: 100 % }\n");
  EXPECT_LT(r.to_tank, 0.1);
  EXPECT_NEAR(r.past, r.off_front, 0.1);
}

TEST(RoofReturn, LosesTheFiltersShareAndTheFirstFlush) {
  const Returned filtered = morning("gutters:\n  only: { drains: front roof, filter_passes: 50 %, runoff: 60 % }\n");
  EXPECT_NEAR(filtered.to_tank, 0.5 * filtered.off_front, kOnItsWay);
  EXPECT_NEAR(filtered.past, 0.5 * filtered.off_front, kOnItsWay);
  // 2 mm of 9 m2 of ground are 18 L; little of it drips away in four hours of the thirty days that emptying takes.
  const Returned flushed =
      morning("gutters:\n  only: { drains: front roof, first_flush: 2 mm, flush_empties_in: 30 d }\n");
  EXPECT_NEAR(flushed.to_chamber, 18.0, 0.5);
  EXPECT_NEAR(flushed.to_tank, flushed.off_front - flushed.to_chamber, kOnItsWay);
}

TEST(RoofReturn, IsSharedByTheGuttersOfASlope) {
  const Returned r = morning(
      "gutters:\n  left: { drains: back roof }\n  right: { drains: back roof, blocked: 100 % }\n"
      "  front: { drains: front roof }\n");
  EXPECT_NEAR(r.to_tank, r.off_front + 0.5 * r.off_back, 0.1);
}

}  // namespace
}  // namespace noonhouse
