// SPDX-License-Identifier: Apache-2.0
// Day and night of rules, by the sun: no edge of the run is a sunset, and no run without one is all night.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/small_day.hpp"
#include "tests/support/small_scenario.hpp"

namespace noonhouse {
namespace {

using small_scenario::with;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::StartsWith;

/// What a rule with these conditions said in a run of that length, in a house with the changes given; `latitude_deg`
/// moves its weather there, where the invented one has no sun to follow.
std::vector<std::string> rule_said(const std::string& rule, const std::string& length,
                                   const std::vector<std::pair<std::string, std::string>>& changes = {},
                                   double latitude_deg = 38.0) {
  std::string text = with(small_faults::kText, "length: 1 d,", "length: " + length + ",");
  for (const auto& [from, to] : changes) text = with(text, from, to);
  text += "rules:\n  rule: { " + rule + ", calls: [vent] }\nplans:\n  p: { in_service: [vent] }\n";
  const Scenario scenario = read_scenario_text(text, "nights.yaml");
  const PlanScenario& plan = scenario.plans.front();
  WeatherSeries weather = weather_of(scenario, plan);
  weather.latitude_deg = latitude_deg;
  const Assembly assembly = assemble(plan, site_table(plan, weather), weather);
  Run run(assembly.plan);
  run.go();
  std::vector<std::string> out;
  for (const LogEntry& entry : run.log())
    if (entry.subject == "rule") out.push_back(format_time_of_day(seconds(entry.when)) + " " + entry.what);
  return out;
}

// 38 degrees north on 14 July: declination 21.7 degrees, half a day of 7 h 12 min, noon at 12:06 by the equation of
// time: the sun's centre rises at 4:53 and sets at 19:18.
TEST(RuleNights, BeginBeforeDuskAndNotBeforeTheEndOfTheRun) {
  EXPECT_THAT(rule_said("during: night, before_dusk: 2 h", "16 h"), ElementsAre("00:00 holds", StartsWith("04:53:")));
  EXPECT_THAT(rule_said("during: night, before_dusk: 2 h", "18 h"),
              ElementsAre("00:00 holds", StartsWith("04:53:"), StartsWith("17:17:")));
}

const std::pair<std::string, std::string> kFromNoon{"utc_offset: \"+00:00\"", "utc_offset: \"+12:00\""};

TEST(RuleNights, AreNotWithoutASunsetInTheRun) {
  EXPECT_THAT(rule_said("during: night", "1 h", {kFromNoon}), IsEmpty());
  EXPECT_THAT(rule_said("during: day", "1 h", {kFromNoon}), ElementsAre("00:00 holds"));
  EXPECT_THAT(rule_said("during: day", "1 h"), IsEmpty());
  EXPECT_THAT(rule_said("during: night", "1 h"), ElementsAre("00:00 holds"));
}

// From noon on in the zone's time of midnight: 7 h 18 min to a sunset that the run does not reach.
TEST(RuleNights, BeginBeforeASunsetThatComesAfterTheRun) {
  EXPECT_THAT(rule_said("during: night, before_dusk: 7 h", "1 h", {kFromNoon}), ElementsAre(StartsWith("00:18:")));
  EXPECT_THAT(rule_said("during: night, before_dusk: 8 h", "1 h", {kFromNoon}), ElementsAre("00:00 holds"));
}

const std::pair<std::string, std::string> kWinter{"2025-07-14", "2025-12-14"};
constexpr double kFarNorth = 72.0;

TEST(RuleNights, AreNeverUnderTheMidnightSunAndAlwaysInThePolarNight) {
  EXPECT_THAT(rule_said("during: night, before_dusk: 12 h", "2 h", {}, kFarNorth), IsEmpty());
  EXPECT_THAT(rule_said("during: day", "2 h", {}, kFarNorth), ElementsAre("00:00 holds"));
  EXPECT_THAT(rule_said("during: night", "2 h", {kWinter, kFromNoon}, kFarNorth), ElementsAre("00:00 holds"));
  EXPECT_THAT(rule_said("during: day", "2 h", {kWinter, kFromNoon}, kFarNorth), IsEmpty());
}

// 14 December at 38 degrees north is shorter than twelve hours: the night begins before the sun has risen, so there is
// no day between, not even for an instant at sunrise.
TEST(RuleNights, DoNotPauseAtASunriseWithinTheHoursBeforeDusk) {
  EXPECT_THAT(rule_said("during: night, before_dusk: 12 h", "9 h", {kWinter}), ElementsAre("00:00 holds"));
}

}  // namespace
}  // namespace noonhouse
