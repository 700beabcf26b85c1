// SPDX-License-Identifier: Apache-2.0
// Failures of a scenario that overlap on one part, with what the wind takes for good, and with one put into a branch.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <stdexcept>
#include <string>

#include "tests/support/small_day.hpp"
#include "tests/support/small_scenario.hpp"

namespace noonhouse {
namespace {

using small_faults::SmallDay;
using testing::ElementsAre;

const FaultPoint& point_of(const Assembly& assembly, FailureKind what, const std::string& of) {
  for (const FaultPoint& point : assembly.fault_points)
    if (point.what == what && point.of == of) return point;
  throw std::logic_error("no such failure");
}

/// Value of a channel as the run ends.
double at_end(const SmallDay& day, const std::string& name) {
  const ChannelId channel = day.assembly().plan.house.find_channel(name).value();
  return day.result().channels.at(static_cast<std::size_t>(channel.index));
}

TEST(FaultCauses, OfTwoFailuresOfOneVentTheEndOfOneDoesNotRepairTheOther) {
  SmallDay day(small_faults::read(R"(faults:
  first: { what: stuck on, of: vent, day: 1, at: "01:00", lasts: 4 h }
  second: { what: stuck on, of: vent, day: 1, at: "03:00", lasts: 3 h }
)"));
  day.run();
  const auto said = day.said_by("vent");
  EXPECT_THAT(said, testing::Contains("06:00 is repaired"));
  EXPECT_THAT(said, testing::Not(testing::Contains("05:00 is repaired")));
}

TEST(FaultCauses, LeaksOfOneTankAddUp) {
  SmallDay day(small_faults::read(R"(faults:
  seam: { what: tank leaks, of: tank, day: 1, at: "00:00", lasts: 2 h, leak: 20 L/h }
  tap: { what: tank leaks, of: tank, day: 1, at: "01:00", lasts: 4 h, leak: 5 L/h }
)"));
  day.run();
  double lost_kg = 0.0;
  for (const ExchangeInfo& exchange : day.assembly().plan.house.exchanges)
    if (exchange.path == "leak") lost_kg += day.result().state.carried[static_cast<std::size_t>(exchange.first_flux)];
  EXPECT_NEAR(lost_kg, 2.0 * 20.0 + 4.0 * 5.0, 1e-6);
}

TEST(FaultCauses, WhatASensorMisreadsAddsUp) {
  const auto bias = [](const char* low_lasts) {
    SmallDay day(small_faults::read(std::string(R"(faults:
  low: { what: reads low, of: thermometer, day: 1, at: "01:00", by: 5 K, lasts: )") +
                                    low_lasts + R"( }
  high: { what: reads high, of: thermometer, day: 1, at: "02:00", by: 2 K }
)"));
    day.run();
    return at_end(day, "bias of thermometer");
  };
  EXPECT_DOUBLE_EQ(bias("0 s"), -3.0);
  EXPECT_DOUBLE_EQ(bias("2 h"), 2.0);
}

TEST(FaultCauses, AGrowerWhoIsAwayForTwoReasonsComesWhenBothAreOver) {
  const auto visits_at = [](const char* clock) {
    SmallDay day(small_faults::read(std::string(R"(faults:
  errand: { what: grower away, of: grower, day: 1, at: "05:00", lasts: 1 h }
  illness: { what: grower away, of: grower, day: 1, at: "05:30", lasts: 12 h }
grower: { visits: { round: { at: ")") +
                                    clock + "\", waters: [ferns] } } }\n"));
    day.run();
    return day.said_by("grower, round").front();
  };
  EXPECT_EQ(visits_at("07:00"), "07:00 does not come");
  EXPECT_EQ(visits_at("17:45"), "17:45 visits");
}

/// A vent that the gusts of 14:00 tear while it is stuck open, or the house with more failures on it.
SmallDay torn(const std::string& faults) {
  return SmallDay(read_scenario_text(
      small_scenario::with(small_faults::kText, "centre: 2.1 m }", "centre: 2.1 m, withstands: 14 m/s }") +
          "hazards:\n  squall: { kind: gusts, day: 1, at: \"14:00\", lasts: 30 min, speed: 25 m/s }\nfaults:\n" +
          faults,
      "torn.yaml"));
}

TEST(FaultCauses, ATornVentIsNotRepairedWithWhatHeldItOpen) {
  SmallDay day = torn("  jam: { what: stuck on, of: vent, day: 1, at: \"13:00\", lasts: 3 h }\n");
  day.run();
  const auto said = day.said_by("vent");
  EXPECT_THAT(said, testing::Contains("14:00 is torn open by the wind"));
  EXPECT_THAT(said, testing::Not(testing::Contains("16:00 is repaired")));
  EXPECT_THAT(day.said_by("jam"), ElementsAre("13:00 vent is stuck open", "16:00 vent: this failure is put right"));
  EXPECT_EQ(at_end(day, "position of vent"), 1.0);
}

TEST(FaultCauses, ATornVentStaysOpenWhateverSticksLater) {
  SmallDay day = torn("  jam: { what: stuck off, of: vent, day: 1, at: \"16:00\" }\n");
  day.run();
  EXPECT_EQ(at_end(day, "position of vent"), 1.0) << "it cannot stick shut, and nothing calls it in the night";
  EXPECT_THAT(day.said_by("vent"), testing::Not(testing::Contains(testing::HasSubstr("is repaired"))));
}

// `noonhouse faults` sets the same part's failures in branches of the run.
TEST(FaultCauses, AFailurePutIntoABranchStandsBesideThoseOfTheScenario) {
  const Assembly assembly = SmallDay::assembled(small_faults::read(R"(faults:
  seam: { what: tank leaks, of: tank, day: 1, at: "01:00", lasts: 2 h, leak: 20 L/h }
)"));
  const FaultPoint& leak = point_of(assembly, FailureKind::tank_leaks, "tank");
  noonhouse::Run run(assembly.plan);  // inside a test, Run names the test's own
  run.run_to(2_h);
  const auto branch = run.branch();
  branch->impose(leak.channel, leak.value, EventKind::failure, leak.of, leak.words);
  branch->run_to(4_h);
  const Input flowing(assembly.plan.house.find_channel("flow of the tank's leak").value());
  const auto flow = [&](noonhouse::Run& of) {
    return 3600.0 * of.potentials()[static_cast<std::size_t>(assembly.plan.house.position(flowing))];
  };
  EXPECT_NEAR(flow(*branch), 60.0, 1e-9) << "the scenario's own is over, this is not";
  run.run_to(150_min);
  EXPECT_NEAR(flow(run), 20.0, 1e-9) << "the run it came from goes on without it";
  const auto both = run.branch();
  both->impose(leak.channel, leak.value, EventKind::failure, leak.of, leak.words);
  both->run_to(160_min);
  EXPECT_NEAR(flow(*both), 80.0, 1e-9);
  both->impose(leak.channel, leak.healthy, EventKind::action, leak.of, "is back");
  both->run_to(170_min);
  EXPECT_NEAR(flow(*both), 20.0, 1e-9);
}

}  // namespace
}  // namespace noonhouse
