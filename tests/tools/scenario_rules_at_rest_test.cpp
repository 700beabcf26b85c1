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
    EXPECT_THAT(error.what(), HasSubstr("the scenario has no such rule, did you mean \"wind\"?; allowed: rain, wind"));
  }
}

}  // namespace
}  // namespace noonhouse
