// SPDX-License-Identifier: Apache-2.0
// The grower's hand in one day of a small hot house: what visits shut, what is put back, what an alarm's call frees.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/support/small_day.hpp"

namespace noonhouse {
namespace {

using small_faults::SmallDay;
using testing::AllOf;
using testing::Each;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::Not;

/// What the vent said from a time of day on, "HH:MM", in a house with this grower.
std::vector<std::string> vent_since(const std::string& from, const std::string& grower) {
  SmallDay day(small_faults::read(grower));
  day.run();
  auto said = day.said_by("vent");
  std::erase_if(said, [&](const std::string& entry) { return entry < from; });
  return said;
}

constexpr const char* kSandstorm =
    "rules:\n  sandstorm: { from: \"12:00\", until: \"13:00\" }\n"
    "grower:\n  reaction: 10 min\n  present: [{ from: \"00:00\", until: \"24:00\" }]\n"
    "  responses:\n    shutter: { sign: sandstorm, undo: true, shuts: [vent] }\n";

TEST(GrowersDay, AVisitHoldsShutWhatItShutsUntilAnotherOpensIt) {
  EXPECT_THAT(
      vent_since("12:00",
                 "grower:\n  visits:\n    noon: { at: \"12:00\", shuts: [vent] }\n"
                 "    afternoon: { at: \"15:00\", opens: [vent] }\n    evening: { at: \"16:00\", shuts: [vent] }\n"),
      ElementsAre("12:00 is held back: by hand", "15:00 opens", "16:00 is held back: by hand"))
      << "though its control calls all the while";
}

TEST(GrowersDay, WhatAVisitOpenedIsOpenAgainWhenAResponsePutsItBack) {
  const auto vent =
      vent_since("05:00", std::string(kSandstorm) + "  visits:\n    dawn: { at: \"05:00\", opens: [vent] }\n");
  EXPECT_THAT(vent, ElementsAre("05:00 opens", "12:10 is held back: by hand", "13:10 opens"))
      << "and is open at night, when no control calls it";
}

TEST(GrowersDay, WhatAVisitShutStaysShutWhenAResponsePutsItBack) {
  const std::string shut_before = "  visits:\n    morning: { at: \"11:00\", shuts: [vent] }\n";
  EXPECT_THAT(vent_since("11:00", kSandstorm + shut_before), ElementsAre("11:00 is held back: by hand"));
  const std::string shut_meanwhile = "  visits:\n    half past: { at: \"12:30\", shuts: [vent] }\n";
  EXPECT_THAT(vent_since("12:00", kSandstorm + shut_meanwhile), ElementsAre("12:10 is held back: by hand"));
}

/// What one said from 11:00 on, or from when a heat alarm is fitted; a visit at 11:00 shuts the vent by hand.
std::vector<std::string> said_with_heat_alarm(const std::string& more, const std::string& who, Tick fitted = 12_h) {
  const Scenario scenario =
      small_faults::read("grower:\n  visits: { morning: { at: \"11:00\", shuts: [vent] } }\n" + more);
  const PlanScenario& plan = scenario.plans.front();
  const WeatherSeries weather = weather_of(scenario, plan);
  const Assembly assembly = assemble(plan, site_table(plan, weather), weather, true);
  Run run(assembly.plan);
  run.run_to(fitted);
  for (const SpareParts& spare : assembly.spares)
    if (spare.name == "a heat alarm")
      run.impose(spare.channel, spare.fitted, EventKind::action, spare.name, "is fitted");
  run.run_to(kDay);
  std::vector<std::string> out;
  for (const LogEntry& entry : run.log())
    if (entry.subject == who && entry.when >= std::min(fitted, 11_h)) out.push_back(entry.what);
  return out;
}

TEST(GrowersDay, WhoIsCalledByAHeatAlarmFreesWhatIsHeldShut) {
  EXPECT_THAT(said_with_heat_alarm("", "vent"), ElementsAre("is held back: by hand", "opens: 100 %"));
}

TEST(GrowersDay, AHeatAlarmCallsNobodyWhoIsAway) {
  const auto away = [](const std::string& from) {
    return "faults:\n  trip: { what: grower away, of: grower, day: 1, at: \"" + from + "\" }\n";
  };
  EXPECT_THAT(said_with_heat_alarm(away("11:30"), "vent"), ElementsAre("is held back: by hand"));
  const std::string shut = "rules:\n  dust: { from: \"00:00\", until: \"23:00\", forbids: [vent, mist] }\n";
  EXPECT_THAT(said_with_heat_alarm(away("05:00") + shut, "grower, a heat alarm", 6_h),
              AllOf(Not(IsEmpty()), Each("the alarm calls, but nobody can come")));
}

}  // namespace
}  // namespace noonhouse
