// SPDX-License-Identifier: Apache-2.0
// What is sound but odd in controls, stores and gutters, and what plans and weather make idle.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/small_scenario.hpp"
#include "tools/scenario/assemble.hpp"
#include "tools/scenario/house_hints.hpp"
#include "tools/scenario/weather_hints.hpp"

namespace noonhouse {
namespace {

using small_scenario::kText;
using small_scenario::with;
using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::StartsWith;

/// Hints of the plan that cools, of a text with one part replaced.
std::vector<std::string> odd(std::string_view from, std::string_view to) {
  return house_hints(small_scenario::read(with(kText, from, to)).plan("vent and mist"));
}
/// The same with a block put in before the tank.
std::vector<std::string> odd_with(const std::string& block) { return odd("tank:\n", block + "tank:\n"); }

TEST(ControlHints, CoolingAgainstColdIsOdd) {
  EXPECT_THAT(
      odd("stops_at: 29 degC", "stops_at: 33 degC"),
      ElementsAre("heat watch starts at 31.0 °C and stops at 33.0 °C, so it calls ridge vent, high mist against "
                  "cold; against heat stops_at is below starts_at"));
  EXPECT_THAT(
      odd_with("proportional_controls:\n  degrees: { sensor: bench sensor, begins_at: 28 degC, full_at: 22 degC, "
               "drives: [ridge vent] }\n"),
      IsEmpty())
      << "it is at rest";
}

TEST(ControlHints, AFanThatMovesAirAroundMayServeAgainstCold) {
  const auto fan = [](const char* moves) {
    std::string text =
        with(kText, "tank:\n",
             std::string("fans:\n  stirrer: { bay: east, moves: ") + moves +
                 ", height: 1 m, inlet_bay: east, inlet_height: 1 m, flow: 300 m3/h, power: 20 W }\n"
                 "proportional_controls:\n  degrees: { sensor: bench sensor, begins_at: 8 degC, full_at: "
                 "4 degC, drives: [stirrer] }\ntank:\n");
    text = with(text, "[ridge vent, high mist, heat watch]", "[ridge vent, high mist, heat watch, stirrer, degrees]");
    return house_hints(small_scenario::read(text).plan("vent and mist"));
  };
  EXPECT_THAT(fan("air around"), IsEmpty());
  EXPECT_THAT(fan("air out"), ElementsAre("degrees begins at 8.0 °C and is full at 4.0 °C, so it calls stirrer against "
                                          "cold; against heat full_at is above begins_at"));
}

TEST(ControlHints, HoursThatEndWhereTheyBeginAreTheWholeDay) {
  EXPECT_THAT(odd("    stops_at: 29 degC", "    stops_at: 29 degC\n    from: 17:00\n    until: 17:00"),
              ElementsAre("heat watch is from 17:00 until the same time, which means the whole day; if that is meant, "
                          "from 00:00 until 24:00 says it"));
  EXPECT_THAT(odd("    stops_at: 29 degC", "    stops_at: 29 degC\n    from: 00:00\n    until: 24:00"), IsEmpty());
  EXPECT_THAT(odd("grower:\n", "grower:\n  present: [{ from: 08:00, until: 08:00 }]\n"),
              ElementsAre(StartsWith("the grower's presence is from 08:00 until the same time")));
  EXPECT_THAT(odd_with("rules:\n  wet: { raining: true, from: 08:00, until: 08:00, forbids: [high mist] }\n"),
              ElementsAre(StartsWith("the rule wet is from 08:00 until the same time")));
}

TEST(SupplyHints, AShedBelowTheCutOffNeverComes) {
  const char* line = "pump_power: 60 W";
  EXPECT_THAT(
      odd(line, "pump_power: 60 W\n    sheds_at: 20 %"),
      ElementsAre("high mist sheds at 20 %, but all loads are cut off at 20 % already (assumed): it is never shed "
                  "before them"));
  EXPECT_THAT(odd(line, "pump_power: 60 W\n    sheds_at: 21 %"), IsEmpty());
}

TEST(SupplyHints, ARefillIsCalledWhereSomethingDrawsTo) {
  EXPECT_THAT(odd_with("refills:\n  cart: { called_at: 10 L, brings: 100 L }\n"),
              ElementsAre("cart is called at 10 L, but at the low mark, 20 L, all draws stop: only watering by hand, "
                          "drying up or a leak take the tank that far"));
  EXPECT_THAT(odd_with("refills:\n  cart: { called_at: 30 L, brings: 100 L }\n"), IsEmpty());
  std::string text = with(kText, "pump_power: 60 W", "pump_power: 60 W\n    keeps_back: 50 L");
  text = with(text, "tank:\n", "refills:\n  cart: { called_at: 30 L, brings: 100 L }\ntank:\n");
  EXPECT_THAT(house_hints(small_scenario::read(text).plan("vent and mist")),
              ElementsAre(HasSubstr("all in service leave at least 50 L")));
}

TEST(SupplyHints, TwoGuttersOnOneSlopeLeaveTheOtherBare) {
  EXPECT_THAT(
      odd_with("gutters:\n  left: { drains: front roof }\n  right: { drains: front roof }\n"),
      ElementsAre("left, right all drain the front roof and share its rain; what falls on the back roof is lost"));
  EXPECT_THAT(odd_with("gutters:\n  left: { drains: front roof }\n  right: { drains: back roof }\n"), IsEmpty());
  EXPECT_THAT(odd_with("gutters:\n  left: { drains: front roof }\n"), IsEmpty());
}

TEST(ControlHints, AControlWhoseStagesAllRestIsIdle) {
  std::string text = with(kText, "tank:\n",
                          "staged_controls:\n  steps:\n    sensor: bench sensor\n    stages: [{ starts_at: 28 degC, "
                          "stops_at: 26 degC, drives: [high mist] }]\ntank:\n");
  text = with(text, "in_service: []", "in_service: [steps]");
  EXPECT_THAT(house_hints(small_scenario::read(text).plan("nothing runs")),
              Contains("steps is in service, but all it drives is at rest: high mist"));
}

TEST(FurtherHints, TellOfOtherPlansByName) {
  const Scenario scenario = small_scenario::read(with(kText, "in_service: []", "in_service: [heat watch]"));
  const std::string idle = "heat watch is in service, but all it drives is at rest: ridge vent, high mist";
  EXPECT_THAT(further_hints(scenario, scenario.plan("vent and mist"), {{}, {}}),
              ElementsAre("plan \"nothing runs\": " + idle));
  EXPECT_THAT(further_hints(scenario, scenario.plan("nothing runs"), {{}, {}}), IsEmpty()) << "its tree says it";
  EXPECT_THAT(further_hints(scenario, scenario.plan("nothing runs"), {{"odd"}, {"odd"}}), ElementsAre("odd"));
}

TEST(WeatherHints, ALimitThatTheWeatherAlwaysKeepsDecidesNothing) {
  const auto idle = [](const char* limit) {
    const Scenario scenario = small_scenario::read(
        with(kText, "tank:\n", std::string("rules:\n  never: { ") + limit + ", forbids: [high mist] }\ntank:\n"));
    return weather_hints(scenario.plans.front(), weather_of(scenario, scenario.plans.front()));
  };
  EXPECT_THAT(idle("outdoors_above: -40 degC"),
              ElementsAre(AllOf(
                  StartsWith("outdoors_above of the rule never, -40.0 °C, is so all the time in this weather"),
                  HasSubstr(", which goes from 16.0 °C to 40.0 °C: as far as this goes, the rule always holds"))));
  EXPECT_THAT(idle("outdoors_below: 60 degC"), ElementsAre(StartsWith("outdoors_below of the rule never, 60.0 °C")));
  EXPECT_THAT(idle("forecast_above: -40 degC"), ElementsAre(StartsWith("forecast_above of the rule never")));
  EXPECT_THAT(idle("outdoors_above: 30 degC"), IsEmpty());
  EXPECT_THAT(idle("outdoors_below: -40 degC"), IsEmpty()) << "a rule may stand by for what never comes";
}

}  // namespace
}  // namespace noonhouse
