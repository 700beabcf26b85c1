// SPDX-License-Identifier: Apache-2.0
// What a log says is broken, and what of it a failure adds.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/small_faults.hpp"
#include "tests/support/small_scenario.hpp"
#include "tests/tools/faults_sample.hpp"
#include "tools/faults/fault_advice.hpp"
#include "tools/faults/fault_words.hpp"
#include "tools/faults/house_breaks.hpp"

namespace noonhouse {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

LogEntry said(Tick when, const char* subject, const char* what) {
  return {0, kNoEvent, when, EventKind::failure, subject, what};
}

TEST(Breakages, AreReadFromTheLogOnceEach) {
  const auto all = breakages({said(1_h, "front roof", "is broken by hail of 5 J: it bears 3.5 J"),
                              said(2_h, "front roof", "hail is over: 66 % of it is broken"),
                              said(3_h, "back roof", "held the hail: stones of 5 J"),
                              said(4_h, "net", "is blown off: it lifts at gusts of 9.1 m/s"),
                              said(5_h, "hail net", "is blown off"), said(6_h, "vent", "is torn open by the wind")});
  ASSERT_EQ(all.size(), 3U) << "a failure that is put in is no breakage";
  EXPECT_EQ(all[0].of, "front roof");
  EXPECT_EQ(all[0].when, 1_h) << "when it begins";
  EXPECT_DOUBLE_EQ(all[0].share, 0.66);
  EXPECT_EQ(all[1].of, "net");
  EXPECT_EQ(all[2].by, "torn open by the wind");
}

TEST(Breakages, OfAFailureAreThoseThatAreNewOrWorseOrSooner) {
  const std::vector<Breakage> own{{"roof", "broken by hail", 10_h, 0.2}, {"vent", "torn open by the wind", 20_h}};
  EXPECT_THAT(new_breakages(own, own), IsEmpty());
  EXPECT_THAT(
      new_breakages({{"roof", "broken by hail", 10_h, 0.24}, {"vent", "torn open by the wind", 20_h - 15_min}}, own),
      IsEmpty());
  EXPECT_EQ(new_breakages({{"roof", "broken by hail", 10_h, 0.26}}, own).size(), 1U);
  EXPECT_EQ(new_breakages({{"vent", "torn open by the wind", 20_h - 16_min}}, own).size(), 1U);
  EXPECT_EQ(new_breakages({{"net", "blown off by the wind", 10_h}}, own).size(), 1U);
}

TEST(Breakages, AreToldNextToWhatBreaksAnyway) {
  const Breakage roof{"roof", "broken by hail", 10_h, 0.66}, vent{"vent", "torn open by the wind", 20_h};
  const auto without = [](Breakage b, Tick later, double less) {
    return Breakage{b.of, b.by, b.when + later, b.share - less};
  };
  const auto told = [](const Breakage& b, const Breakage& own) { return breakage_words(b, &own); };
  EXPECT_EQ(breakage_words(roof, nullptr), "66 % of it broken by hail");
  EXPECT_EQ(breakage_words(vent, nullptr), "torn open by the wind");
  EXPECT_EQ(told(vent, without(vent, 30_min, 0.0)), "torn open by the wind, 30 min sooner");
  EXPECT_EQ(told(roof, without(roof, 0_h, 0.46)), "66 % of it in place of 20 % broken by hail");
  EXPECT_EQ(told(roof, without(roof, 2_h, 0.46)), "66 % of it in place of 20 % broken by hail, 2 h sooner");
  EXPECT_EQ(told(roof, without(roof, 2_h, -0.2)), "broken by hail, 2 h sooner") << "as much breaks later anyway";
}

TEST(Breakages, ThatAFailureOnlyHastensAreNotSaidToBeItsDoing) {
  FaultSheet sheet = invented::hail_sheet();
  FaultBreak& vent = sheet.faults[0].breaks[0];
  vent.words = "torn open by the wind, 30 min sooner";
  vent.anyway = true;
  EXPECT_THAT(fault_answer(sheet),
              Contains("The house: 1 of the failures breaks what hail and gusts leave whole without it: shade cloth is "
                       "stuck off. 1 of the failures breaks sooner, or more of, what hail and gusts break without it: "
                       "high mist is stuck off."));
  EXPECT_THAT(breaks_text(sheet, sheet.faults[0]),
              HasSubstr("breaks the ridge vent on day 4 at 14:00 (torn open by the wind, 30 min sooner)"));
  EXPECT_THAT(fault_cost_text(sheet.faults[0]), HasSubstr("; broken sooner or more of it: ridge vent"));
  sheet.faults[3].breaks[0].anyway = true;
  EXPECT_FALSE(only_worsens(sheet.faults[3])) << "the back roof stays whole without it";
  sheet.faults[3].breaks[1].anyway = true;
  EXPECT_THAT(fault_answer(sheet), Not(Contains(HasSubstr("leave whole"))));
}

/// A fan and a vent with a gap, both called from a time of day to midnight.
std::string runs_from(const std::string& clock) {
  return "fans:\n"
         "  fan: { bay: house, height: 1.5 m, flow: 600 m3/h, inlet_bay: house, inlet_height: 0.5 m, power: 20 W }\n"
         "timers:\n"
         "  clock: { from: \"" +
         clock + "\", until: \"24:00\", drives: [fan, flap] }\n";
}

TEST(FaultBranches, WhatRunsAllDayFailsWhenItIsPutIn) {
  const auto bites = [](const std::string& more, FailureKind what, const std::string& of, Tick when) {
    const std::string text = small_scenario::with(
        small_faults::kText, "openings:\n",
        "openings:\n  flap: { bay: house, side: front roof, area: 0.2 m2, height: 0.2 m, centre: 2.1 m, "
        "open_when_shut: 10 % }\n");
    const Scenario scenario = read_scenario_text(text + more, "small_faults.yaml");
    const PlanScenario& plan = scenario.plans.front();
    const WeatherSeries weather = weather_of(scenario, plan);
    const Assembly assembly = assemble(plan, site_table(plan, weather), weather);
    const FaultBranches branches(assembly, nullptr);
    for (const FaultPoint& point : assembly.fault_points)
      if (point.what == what && point.of == of) return branches.bites_at(point, when);
    throw std::logic_error("no such failure");
  };
  const std::string always = runs_from("00:00"), later = runs_from("00:10");
  for (const char* of : {"fan", "flap"}) {
    EXPECT_EQ(bites(always, FailureKind::stuck_off, of, Tick{0}), Tick{0}) << of;
    EXPECT_EQ(bites(always, FailureKind::stuck_off, of, 9_h), 9_h) << of;
    EXPECT_EQ(bites(later, FailureKind::stuck_off, of, Tick{0}), 10_min) << of;
    EXPECT_EQ(bites(always, FailureKind::stuck_on, of, Tick{0}), kNever) << of;
    EXPECT_EQ(bites(later, FailureKind::stuck_on, of, Tick{0}), Tick{0}) << of;
  }
}

/// The small house with a net that a clock draws for the hail of the afternoon and takes off before the gusts.
const char* const kStorm = R"(hazards:
  hail: { kind: hail, day: 1, at: "15:00", lasts: 10 min, stone: 30 mm, hits: 0.005 }
  gusts: { kind: gusts, day: 1, at: "18:00", lasts: 30 min, speed: 17 m/s }
shades:
  net: { transmits: 80 %, absorbs: 10 %, stops_hail: 40 J, loose_weight: 0.4 kg/m2 }
timers:
  net clock: { from: "14:30", until: "16:00", drives: [net] }
)";

TEST(HouseBreaks, ANetThatFailsBeforeTheHailCostsTheRoofAndOneThatSticksIsBlownOff) {
  const Scenario scenario = small_faults::read(kStorm);
  const PlanScenario& plan = scenario.plans.front();
  const WeatherSeries weather = weather_of(scenario, plan);
  const auto table = site_table(plan, weather);
  const Assembly assembly = assemble(plan, table, weather);
  const FaultBranches branches(assembly, nullptr);
  ASSERT_THAT(breakages(branches.log()), IsEmpty()) << "without a failure it holds";
  const auto when = dangers(plan, assembly, *table);
  ASSERT_EQ(when.size(), 2U);
  const auto breaks = [&](FailureKind what, const std::string& of) {
    for (const FaultPoint& point : assembly.fault_points)
      if (point.what == what && point.of == of) return house_breaks(branches, point, when);
    throw std::logic_error("no such failure");
  };
  const auto off = breaks(FailureKind::stuck_off, "net");
  ASSERT_EQ(off.size(), 2U) << "both slopes";
  EXPECT_THAT(off[0].of, testing::HasSubstr("roof"));
  EXPECT_THAT(off[0].words, testing::HasSubstr("% of it broken by hail"));
  EXPECT_NEAR(off[0].time_s, 15 * 3600.0 + 60.0, 60.0);
  EXPECT_EQ(off[0].failed_s, 13 * 3600.0);
  EXPECT_FALSE(off[0].anyway);
  const auto on = breaks(FailureKind::stuck_on, "net");
  ASSERT_EQ(on.size(), 1U);
  EXPECT_EQ(on[0].of, "net");
  EXPECT_EQ(on[0].words, "blown off by the wind");
  EXPECT_THAT(breaks(FailureKind::stuck_off, "mist"), IsEmpty());
}

}  // namespace
}  // namespace noonhouse
