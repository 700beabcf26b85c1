// SPDX-License-Identifier: Apache-2.0
// What a message offers beside the mistake: limits in units that people write, and whole lists of what is allowed.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <regex>

#include "tests/support/small_scenario.hpp"

namespace noonhouse {
namespace {

using small_scenario::kText;
using small_scenario::with;
using testing::HasSubstr;

/// What the program says of a changed scenario.
std::string said(const std::string& from, const std::string& to) {
  try {
    small_scenario::read(with(kText, from, to));
  } catch (const UserError& error) {
    return error.what();
  }
  return "nothing was wrong";
}

struct Answer {
  const char* name;
  const char* from;
  const char* to;
  const char* says;
};
void PrintTo(const Answer& answer, std::ostream* out) { *out << answer.name; }

class AllowedWords : public testing::TestWithParam<Answer> {};
TEST_P(AllowedWords, AreThoseAPersonCanUse) {
  EXPECT_THAT(said(GetParam().from, GetParam().to), HasSubstr(GetParam().says));
}

constexpr Answer kLimitAnswers[] = {
    {"TooShortARun", "length: 2 d", "length: 0 d", "allowed: at least 60 s and at most 40000 d"},
    {"TooLongAPause", "    stops_at: 29 degC", "    stops_at: 29 degC\n    least_off: 1500 min",
     "allowed: at least 0 min and at most 1440 min (24 h)"},
    {"TooLongAPauseInHours", "    stops_at: 29 degC", "    stops_at: 29 degC\n    least_off: 25 h",
     "allowed: at least 0 h and at most 24 h"},
    {"FreezingIsNothing", "harm_above: 36 degC", "harm_above: 99 degC", "allowed: at least 0 degC and at most 80 degC"},
    {"InKelvins", "harm_above: 36 degC", "harm_above: 400 K", "at most 353.15 K"},
    {"TankLargerThanAny", "capacity: 300 L", "capacity: 2e6 L", "at least 1 L and at most 1000 m3"},
    {"NoBattery", "battery: 600 Wh", "battery: 0 Wh", "allowed: at least 1 J"},
};
constexpr Answer kUnitAnswers[] = {
    {"DaysOfARun", "length: 2 d", "length: 2", "did you mean \"2 d\"?"},
    {"WattHours", "battery: 600 Wh", "battery: 600", "did you mean \"600 Wh\"?"},
    {"HoursOfATimer", "tank:\n  capacity",
     "timers:\n  drip: { from: 06:00, until: 07:00, every: 2, drives: [high mist] }\ntank:\n  capacity",
     "did you mean \"2 h\"?"},
    {"AFansFlow", "benches:\n",
     "fans:\n  fan: { bay: west, height: 1 m, inlet_bay: west, inlet_height: 1 m, flow: 700, power: 9 W }\nbenches:\n",
     "did you mean \"700 m3/h\"?"},
    {"AHailstone", "house:\n  length",
     "hazards:\n  hail: { kind: hail, day: 1, at: 12:00, stone: 20, hits: 1 }\nhouse:\n  length",
     "did you mean \"20 mm\"?"},
};
constexpr Answer kNameAnswers[] = {
    {"PlansAtTheTop", "title: A small house", "titel: A small house", ", prices, plans"},
    {"ChangeInAPlan", "about: cooled by one thermostat", "abuot: cooled",
     "allowed: about, in_service, rules_at_rest, change"},
    {"OneThatMeasuresIt", "bench sensor\n    starts_at", "bench sensro\n    starts_at", "allowed: bench sensor"},
    {"NoneThatMeasuresIt", "height: 1 m\nthermostats", "height: 1 m\n    measures: humidity\nthermostats",
     "read \"bench sensor\"; this must be one under sensors that measures temperature; there is none"},
    {"ARulesSensor", "tank:\n  capacity",
     "rules:\n  damp: { sensor: bench sensor, damper_than: 80 %, forbids: [high mist] }\ntank:\n  capacity",
     "need a sensor that measures humidity; there is none"},
    {"ARuleWithoutSensor", "tank:\n  capacity",
     "rules:\n  hot: { warmer_than: 30 degC, calls: [high mist] }\ntank:\n  capacity", "allowed: bench sensor"},
    {"InService", "[ridge vent, high mist, heat watch]", "[ridge vent, high mist, nothing alike]",
     "allowed: ridge vent, high mist, heat watch"},
    {"PricedParts", "tank:\n  capacity", "prices: { parts: { cistern: { price: 9 } } }\ntank:\n  capacity",
     "no such part; allowed: tank, panel, battery, ridge vent, high mist, bench sensor, heat watch"},
};
const auto kAnswerName = [](const testing::TestParamInfo<Answer>& it) { return std::string(it.param.name); };
INSTANTIATE_TEST_SUITE_P(Limits, AllowedWords, testing::ValuesIn(kLimitAnswers), kAnswerName);
INSTANTIATE_TEST_SUITE_P(Units, AllowedWords, testing::ValuesIn(kUnitAnswers), kAnswerName);
INSTANTIATE_TEST_SUITE_P(Names, AllowedWords, testing::ValuesIn(kNameAnswers), kAnswerName);

/// Every description of a schema, at any depth.
void collect(const nlohmann::json& schema, std::vector<std::string>& out) {
  if (schema.is_object() && schema.contains("description") && schema["description"].is_string())
    out.push_back(schema["description"]);
  if (schema.is_structured())
    for (const nlohmann::json& part : schema) collect(part, out);
}

TEST(AllowedWords, NoLimitOfAnyFieldIsANumberNobodyWrites) {
  std::vector<std::string> all;
  collect(nlohmann::json::parse(scenario_schema()), all);
  ASSERT_GT(all.size(), 300U);
  const std::regex odd(R"((at least|at most|above|below) -?([0-9]*\.[0-9]{4,}|[0-9.]+e([0-9]|-[0-9]{2,})|[0-9]{7,}))");
  for (const std::string& text : all) EXPECT_FALSE(std::regex_search(text, odd)) << text;
}

}  // namespace
}  // namespace noonhouse
