// SPDX-License-Identifier: Apache-2.0
// Which rules hold is a plan's choice: all that it does not lay to rest.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/small_scenario.hpp"

namespace noonhouse {
namespace {

using testing::HasSubstr;
using testing::Not;

/// Two rules, one of them a sign; the cooled plan lays `resting` to rest.
std::string ruled(const std::string& resting) {
  std::string text = small_scenario::with(small_scenario::kText, "tank:\n  capacity",
                                          "rules:\n  rain: { raining: true, forbids: [ridge vent] }\n  wind: { "
                                          "gusts_above: 9 m/s, forbids: [ridge vent] }\n"
                                          "tank:\n  capacity");
  text = small_scenario::with(text, "grower:\n",
                              "grower:\n  responses: { shut it: { sign: wind, shuts: [ridge vent] } }\n");
  return small_scenario::with(text, "[ridge vent, high mist, heat watch]",
                              "[ridge vent, high mist, heat watch]\n    rules_at_rest: [" + resting + "]");
}

TEST(RulesAtRest, HoldInOtherPlansAlone) {
  const Scenario scenario = small_scenario::read(ruled("wind"));
  const ScenarioSpec& other = scenario.plan("nothing runs").spec;
  EXPECT_EQ(other.rules.size(), 2U);
  EXPECT_EQ(other.grower.responses.size(), 1U);
  const ScenarioSpec& cooled = scenario.plan("vent and mist").spec;
  ASSERT_EQ(cooled.rules.size(), 1U);
  EXPECT_EQ(cooled.rules.front().name, "rain");
  EXPECT_TRUE(cooled.grower.responses.empty()) << "what is done on a sign that never comes";
}

TEST(RulesAtRest, AreToldInTheTree) {
  const Scenario scenario = small_scenario::read(ruled("rain, wind"));
  EXPECT_THAT(house_tree(scenario.plan("vent and mist")), HasSubstr("rules at rest in this plan: rain, wind"));
  EXPECT_THAT(house_tree(scenario.plan("nothing runs")), Not(HasSubstr("rules at rest")));
}

TEST(RulesAtRest, MustExist) {
  try {
    small_scenario::read(ruled("wnid"));
    FAIL() << "nothing was thrown";
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::unknown_name);
    EXPECT_THAT(error.what(), HasSubstr("in plan \"vent and mist\" the scenario has no such rule, did you mean "
                                        "\"wind\"?; allowed: rain, wind"));
  }
}

std::string refused_at_rest(const std::string& text) {
  try {
    small_scenario::read(text);
  } catch (const UserError& error) {
    return error.what();
  }
  return "";
}

TEST(RulesAtRest, AreNamedWithTheirPlanAsDevicesInServiceAre) {
  EXPECT_THAT(
      refused_at_rest(small_scenario::with(small_scenario::kText, "[ridge vent, high mist, heat watch]",
                                           "[ridge vnet, high mist, heat watch]")),
      HasSubstr("in plan \"vent and mist\" the house has no such device or control, did you mean \"ridge vent\"?"));
}

// A rule that rests in every plan is checked all the same.
TEST(RulesAtRest, AreCheckedLikeAnyOther) {
  const std::string text = small_scenario::with(ruled("rain, wind"), "in_service: []\n",
                                                "in_service: []\n    rules_at_rest: [rain, wind]\n");
  EXPECT_EQ(refused_at_rest(text), "");
  EXPECT_THAT(refused_at_rest(
                  small_scenario::with(text, "{ raining: true, forbids: [ridge vent] }", "{ calls: [ridge vent] }")),
              HasSubstr("has no condition and would always hold"));
  EXPECT_THAT(refused_at_rest(small_scenario::with(text, "forbids: [ridge vent] }\n  wind",
                                                   "forbids: [ridge vent], calls: [ridge vent] }\n  wind")),
              HasSubstr("ridge vent"));
}

// By its name a rule at rest would take the price of the vent out of the plan.
TEST(RulesAtRest, ShareTheirNameWithNothingElse) {
  std::string text =
      small_scenario::with(small_scenario::kText, "tank:\n  capacity",
                           "rules:\n  ridge vent: { gusts_above: 9 m/s, forbids: [high mist] }\ntank:\n  capacity");
  EXPECT_THAT(refused_at_rest(text), HasSubstr("the name \"ridge vent\" stands under openings too"));
  for (const char* plan : {"in_service: []\n", "in_service: [ridge vent, high mist, heat watch]\n"})
    text = small_scenario::with(text, plan, std::string(plan) + "    rules_at_rest: [ridge vent]\n");
  EXPECT_THAT(refused_at_rest(text), HasSubstr("the name \"ridge vent\" stands under openings too"));
}

TEST(RulesAtRest, TakeTheirOwnPriceWithThem) {
  const Scenario scenario =
      small_scenario::read(ruled("wind") + "prices:\n  parts: { wind: { price: 40 }, rain: { price: 50 } }\n");
  ASSERT_EQ(scenario.plan("vent and mist").spec.prices.parts.size(), 1U);
  EXPECT_EQ(scenario.plan("vent and mist").spec.prices.parts.front().name, "rain");
  EXPECT_EQ(scenario.plan("nothing runs").spec.prices.parts.size(), 2U);
}

}  // namespace
}  // namespace noonhouse
