// SPDX-License-Identifier: Apache-2.0
// What a plan costs: which priced parts it has, and its bill by hand.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <ostream>

#include "sim/core/tick.hpp"
#include "tools/compare/plan_cost.hpp"

namespace noonhouse {
namespace {

/// A house with one of everything that can be priced, each part at a price of its own: its sum names the parts.
ScenarioSpec priced_house() {
  ScenarioSpec s;
  s.run.length_s = 12.0 * kSecondsPerDay;
  s.openings = {{"ridge vent", {}}};
  s.fans = {{"fan", {}}};
  s.mist_lines = {{"mist", {}}, {"second mist", {}}};
  s.mist_lines[0].value.pump = "big pump";
  s.mist_lines[1].value.pump = kOwnPump;
  s.sensors = {{"bench sensor", {}}, {"roof sensor", {}}};
  s.thermostats = {{"heat watch", {}}};
  s.thermostats[0].value.sensor = "bench sensor";
  s.rules = {{"damp nights", {}}};
  s.rules[0].value.sensor = "roof sensor";
  s.rules[0].value.forbids = {"second mist"};
  s.pumps = {{"big pump", {}}};
  s.gutters = {{"front gutter", {}}};
  s.prices.currency = "EUR";
  s.prices.season_s = 120.0 * kSecondsPerDay;
  double price = 1.0;
  for (const char* name : {"ridge vent", "fan", "mist", "bench sensor", "roof sensor", "heat watch", "big pump",
                           "front gutter", "tank", "panel", "battery"}) {
    s.prices.parts.push_back({name, {price, 10.0, 0.0}});
    price *= 2.0;
  }
  return s;
}

constexpr double kAlways = 128.0 + 256.0 + 512.0 + 1024.0;  // gutter, tank, panel, battery

struct Case {
  std::string name;
  std::vector<std::string> in_service;
  double capital;
};
std::ostream& operator<<(std::ostream& out, const Case& c) { return out << c.name; }

class PartsOfAPlan : public testing::TestWithParam<Case> {};

TEST_P(PartsOfAPlan, AreThoseInServiceAndWhatTheyNeed) {
  PlanScenario plan;
  plan.in_service = GetParam().in_service;
  plan.spec = priced_house();
  const CostOutcome cost = plan_cost(plan, {});
  EXPECT_TRUE(cost.known());
  EXPECT_EQ(cost.currency, "EUR");
  EXPECT_DOUBLE_EQ(cost.capital, GetParam().capital);
  EXPECT_DOUBLE_EQ(cost.per_season, GetParam().capital / 10.0);
}

INSTANTIATE_TEST_SUITE_P(
    ByWhatIsInService, PartsOfAPlan,
    testing::Values(Case{"NothingRuns", {}, kAlways}, Case{"AVent", {"ridge vent"}, kAlways + 1.0},
                    Case{"AFan", {"fan"}, kAlways + 2.0}, Case{"ALineWithItsPump", {"mist"}, kAlways + 4.0 + 64.0},
                    Case{"ALineWithoutAPumpOfTheHouseButARuleWithItsSensor", {"second mist"}, kAlways + 16.0},
                    Case{"AControlWithItsSensor", {"heat watch"}, kAlways + 32.0 + 8.0},
                    Case{"All", {"ridge vent", "fan", "mist", "second mist", "heat watch"}, kAlways + 127.0}),
    [](const auto& its) { return its.param.name; });

/// What a rule that is only a sign costs with its sensor, where the grower opens and shuts these on it.
double price_of_the_sign(const std::vector<std::string>& in_service, const std::vector<std::string>& opens,
                         const std::vector<std::string>& shuts, const std::string& sign = "damp nights") {
  PlanScenario plan;
  plan.in_service = in_service;
  plan.spec = priced_house();
  plan.spec.rules[0].value.forbids.clear();
  plan.spec.rules.push_back({"storm", {}});
  plan.spec.prices.parts = {{"roof sensor", {5.0, 1.0, 0.0}}, {"damp nights", {7.0, 1.0, 0.0}}};
  ResponseSpec response;
  response.sign = sign;
  response.opens = opens;
  response.shuts = shuts;
  plan.spec.grower.responses = {{"airs it", response}};
  return plan_cost(plan, {}).capital;
}

TEST(PlanCost, ASignCostsOnlyWhereTheGrowerMovesSomethingInServiceOnIt) {
  EXPECT_EQ(price_of_the_sign({"ridge vent"}, {"ridge vent"}, {}), 12.0);
  EXPECT_EQ(price_of_the_sign({"ridge vent"}, {}, {"ridge vent"}), 12.0);
  EXPECT_EQ(price_of_the_sign({"fan"}, {"ridge vent"}, {"mist", "fan"}), 12.0) << "the last of several";
  EXPECT_EQ(price_of_the_sign({"fan"}, {"ridge vent"}, {"mist"}), 0.0) << "neither is in service";
  EXPECT_EQ(price_of_the_sign({"ridge vent"}, {}, {}), 0.0);
  EXPECT_EQ(price_of_the_sign({"ridge vent"}, {"ridge vent"}, {}, "storm"), 0.0) << "on another sign";
}

/// 300 over 6 seasons and 20 of upkeep; in 12 of 120 days two visits at 35 and 1.5 m3 at 4: 70 + (70 + 6) x 10.
TEST(PlanCost, ASeasonIsWearUpkeepAndWaterBrought) {
  PlanScenario plan;
  plan.spec = priced_house();
  plan.spec.prices.parts = {{"battery", {300.0, 6.0, 20.0}}};
  plan.spec.prices.water_m3 = 4.0;
  const CostOutcome cost = plan_cost(plan, {2.0 * 35.0, 1.5});
  EXPECT_DOUBLE_EQ(cost.capital, 300.0);
  EXPECT_DOUBLE_EQ(cost.per_season, 70.0 + 760.0);
  EXPECT_DOUBLE_EQ(cost.brought, 760.0);
  EXPECT_DOUBLE_EQ(cost.season_d, 120.0);
}

TEST(PlanCost, IsNotKnownWhereNothingIsPriced) {
  PlanScenario plan;
  plan.spec = priced_house();
  plan.spec.prices.parts.clear();
  plan.spec.refills = {{"lorry", {}}};
  EXPECT_FALSE(plan_cost(plan, {0.0, 5.0}).known());
  plan.spec.refills[0].value.price = 35.0;
  EXPECT_TRUE(plan_cost(plan, {35.0, 5.0}).known()) << "the visits are priced";
  plan.spec.refills[0].value.price = 0.0;
  plan.spec.prices.water_m3 = 4.0;
  EXPECT_DOUBLE_EQ(plan_cost(plan, {0.0, 5.0}).per_season, 200.0) << "the water is";
}

}  // namespace
}  // namespace noonhouse
