// SPDX-License-Identifier: Apache-2.0
// On/off control at its edges: limits, jumps, least times, hours, pulses, lost readings and reboots.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/control/on_off_control.hpp"
#include "tests/support/control_stage.hpp"
#include "tests/support/random_schedule.hpp"
#include "tests/support/row_name.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

/// Cooling calls at 30 and stops at 28 (in the reading's unit) unless a row says otherwise.
struct EdgeRow {
  std::string what;
  Points reading;
  ChannelChanges demands;
  TwoLimits limits{30.0 - kHair, 28.0 + kHair};
  Tick least_on{}, least_off{};
  DailyWindow hours{};
  Tick pulse_on{}, pulse_off{};
  WhenLost when_lost = WhenLost::holds;
  ChannelChanges good{}, fault{};  ///< moves of these channels
};
void PrintTo(const EdgeRow& row, std::ostream* out) { *out << row.what; }

class OnOffEdges : public testing::TestWithParam<EdgeRow> {};

TEST_P(OnOffEdges, SetsItsDemandAtTheseInstants) {
  const auto& row = GetParam();
  ControlStage s(1_h, row.reading, row.good, row.fault);
  EXPECT_EQ(s.run<OnOffControl>({"control", "sensor", s.reading, s.demand, row.limits, row.least_on, row.least_off,
                                 s.terms(row.hours, row.when_lost), row.pulse_on, row.pulse_off}),
            row.demands);
}

constexpr Tick operator+(Tick t, int ms) { return t + Tick{ms}; }
const Points kHot{{0_s, 35}};                                   ///< all the time
const Points kUp{{0_s, 20}, {1000_s, 30}};                      ///< reaches 30 at 1000 s and stays there
const Points kDown{{0_s, 153}, {1000_s, 28}};                   ///< reaches 28 at 1000 s and stays there
const Points kWarmHill{{0_s, 25}, {1000_s, 35}, {2000_s, 25}};  ///< 30 at 500 s, 28 at 1700 s

const EdgeRow kEdges[] = {
    {.what = "reaches its first limit and stays on it",
     .reading = kUp,
     .demands = {{1000_s, 1}},
     .limits = {30.0, 28.0}},
    {.what = "comes back to its second limit and stays on it",
     .reading = kDown,
     .demands = {{0_s, 1}, {1000_s, 0}},
     .limits = {30.0, 28.0}},
    {.what = "touches its limit with a peak",
     .reading = {{0_s, 20}, {1000_s, 30}, {1100_s, 29}},
     .demands = {{1000_s, 1}},
     .limits = {30.0, 28.0}},
    {.what = "misses its limit by a hair", .reading = {{0_s, 20}, {1000_s, 29.9999}}, .demands = {}},
    {.what = "jumps over both limits at once up and down",
     .reading = {{0_s, 20}, {100_s, 20}, {100_s, 40}, {200_s, 40}, {200_s, 20}},
     .demands = {{100_s + 1, 1}, {200_s + 1, 0}}},
    {.what = "heats when the reading is low",
     .reading = {{0_s, 25}, {1000_s, 15}, {2000_s, 25}},
     .demands = {{500_s, 1}, {1700_s, 0}},
     .limits = {20.0 + kHair, 22.0 - kHair}},
    {.what = "heats from the start on its limit",
     .reading = {{0_s, 20}, {1000_s, 20}, {1200_s, 22}},
     .demands = {{0_s, 1}, {1200_s, 0}},
     .limits = {20.0, 22.0}},
    {.what = "reaches its limit as its least time off ends",
     .reading = {{0_s, 30}, {100_s, 28}, {200_s, 26}, {600_s, 30}},
     .demands = {{0_s, 1}, {100_s, 0}, {600_s, 1}},
     .least_off = 500_s},
    {.what = "comes back as its least time on ends",
     .reading = kWarmHill,
     .demands = {{500_s, 1}, {1700_s, 0}},
     .least_on = 1200_s},
    {.what = "comes back one tick before its least time on ends",
     .reading = kWarmHill,
     .demands = {{500_s, 1}, {1700_s + 1, 0}},
     .least_on = 1200_s + 1},
    {.what = "reaches its limit as its hours end", .reading = kUp, .demands = {}, .hours = {Tick{0}, 1000_s}},
    {.what = "reaches its limit one tick before its hours end",
     .reading = kUp,
     .demands = {{1000_s, 1}, {1000_s + 1, 0}},
     .hours = {Tick{0}, 1000_s + 1}},
    {.what = "reaches its limit as its hours begin", .reading = kUp, .demands = {{1000_s, 1}}, .hours = {1000_s, 12_h}},
    {.what = "comes back as its hours end",
     .reading = kDown,
     .demands = {{0_s, 1}, {1000_s, 0}},
     .hours = {Tick{0}, 1000_s}},
    {.what = "pulses while it calls",
     .reading = kWarmHill,
     .demands = {{500_s, 1}, {800_s, 0}, {1200_s, 1}, {1500_s, 0}},
     .pulse_on = 300_s,
     .pulse_off = 400_s},
    {.what = "stops as a pulse would begin",
     .reading = kWarmHill,
     .demands = {{500_s, 1}, {1000_s, 0}},
     .pulse_on = 500_s,
     .pulse_off = 700_s},
    {.what = "stops as a pulse ends",
     .reading = kWarmHill,
     .demands = {{500_s, 1}, {900_s, 0}, {1300_s, 1}, {1700_s, 0}},
     .pulse_on = 400_s,
     .pulse_off = 400_s},
    {.what = "keeps its least time through pauses",
     .reading = {{0_s, 30}, {10_s, 20}},
     .demands = {{0_s, 1}, {100_s, 0}, {300_s, 1}, {350_s, 0}},
     .least_on = 350_s,
     .pulse_on = 100_s,
     .pulse_off = 200_s},
    {.what = "begins each call with a whole pulse",
     .reading = {{0_s, 30}, {100_s, 28}, {150_s, 28}, {250_s, 30}},
     .demands = {{0_s, 1}, {60_s, 0}, {90_s, 1}, {100_s, 0}, {250_s, 1}, {310_s, 0}, {340_s, 1}, {400_s, 0}},
     .hours = {Tick{0}, 420_s},
     .pulse_on = 60_s,
     .pulse_off = 30_s},
    {.what = "keeps its call while it has no reading",
     .reading = kWarmHill,
     .demands = {{500_s, 1}, {1800_s, 0}},
     .good = {{600_s, 0}, {1800_s, 1}}},
    {.what = "stays off while it has no reading",
     .reading = kWarmHill,
     .demands = {{900_s, 1}, {1700_s, 0}},
     .good = {{400_s, 0}, {900_s, 1}}},
    {.what = "ends a kept call with its hours",
     .reading = kHot,
     .demands = {{0_s, 1}, {700_s, 0}},
     .hours = {Tick{0}, 700_s},
     .good = {{600_s, 0}}},
    {.what = "stops without a reading in spite of its least time on",
     .reading = kHot,
     .demands = {{0_s, 1}, {600_s, 0}, {800_s, 1}},
     .least_on = 1000_s,
     .when_lost = WhenLost::stops,
     .good = {{600_s, 0}, {800_s, 1}}},
    {.what = "calls without a reading",
     .reading = {{0_s, 20}},
     .demands = {{600_s, 1}, {800_s, 0}},
     .when_lost = WhenLost::runs,
     .good = {{600_s, 0}, {800_s, 1}}},
    {.what = "calls without a reading once its least time off is over and in its hours",
     .reading = {{0_s, 30}, {100_s, 20}},
     .demands = {{0_s, 1}, {20_s, 0}, {520_s, 1}, {900_s, 0}},
     .least_off = 500_s,
     .hours = {Tick{0}, 900_s},
     .when_lost = WhenLost::runs,
     .good = {{200_s, 0}}},
    {.what = "dies in mid call and starts anew",
     .reading = kHot,
     .demands = {{0_s, 1}, {600_s, 0}, {800_s, 1}},
     .least_on = 1000_s,
     .least_off = 1000_s,
     .fault = {{600_s, 1}, {800_s, 0}}},
    {.what = "forgets by a reboot that it was calling",
     .reading = {{0_s, 35}, {600_s, 29}},
     .demands = {{0_s, 1}, {700_s, 0}},
     .fault = {{700_s, 1}, {800_s, 0}}},
    {.what = "begins its hours dead and is back within them",
     .reading = kHot,
     .demands = {{800_s, 1}, {900_s, 0}},
     .hours = {600_s, 900_s},
     .fault = {{500_s, 1}, {800_s, 0}}},
    {.what = "starts a new pulse after a reboot",
     .reading = kHot,
     .demands = {{0_s, 1}, {600_s, 0}, {800_s, 1}, {1800_s, 0}, {2800_s, 1}},
     .pulse_on = 1000_s,
     .pulse_off = 1000_s,
     .fault = {{600_s, 1}, {800_s, 0}}},
    {.what = "loses its reading while it is dead",
     .reading = {{0_s, 20}},
     .demands = {{800_s, 1}},
     .when_lost = WhenLost::runs,
     .good = {{700_s, 0}},
     .fault = {{600_s, 1}, {800_s, 0}}},
    {.what = "loses its reading and dies at one instant",
     .reading = {{0_s, 20}},
     .demands = {},
     .when_lost = WhenLost::runs,
     .good = {{700_s, 0}},
     .fault = {{700_s, 1}}},
};
INSTANTIATE_TEST_SUITE_P(Rows, OnOffEdges, testing::ValuesIn(kEdges), kRowName);

TEST(OnOffControl, SaysWhyInTheWordsOfItsQuantity) {
  AgentStage stage(1_h);
  const ChannelId reading = stage.moved("reading", {{0_s, 0.6}, {1000_s, 0.4}, {2000_s, 0.6}});
  const ChannelId good = stage.channel("good", 1.0), fault = stage.channel("fault");
  stage.hand(good, {{600_s, 0.0}, {1200_s, 1.0}});
  stage.hand(fault, {{2500_s, 1.0}, {2600_s, 0.0}});
  stage.agent<OnOffControl>({"damper",
                             "hygrometer",
                             reading,
                             stage.channel("demand"),
                             {0.5 + kHair, 0.55 - kHair},
                             {},
                             {},
                             {{}, good, WhenLost::stops, fault},
                             {},
                             {},
                             "damp air",
                             percent_text});
  stage.run();
  EXPECT_THAT(
      stage.said_by("damper"),
      ElementsAre("500 calls for damp air: 50 % at the hygrometer", "600 has no reading: calls nothing",
                  "600 calls no longer: it has no reading", "1200 has a reading again",
                  "1200 calls for damp air: 44 % at the hygrometer", "1750 calls no longer: 55 % at the hygrometer",
                  "2500 fails: it calls nothing", "2600 works again: it starts anew"));
  EXPECT_EQ(stage.chain_of("calls no longer: it has"),
            "damper calls no longer: it has no reading <- damper has no reading: calls nothing <- hand moves");
  EXPECT_EQ(stage.chain_of("fails"), "damper fails: it calls nothing <- hand moves");
}

TEST(OnOffControl, ActsAtThePollThatTellsItAndBlamesWhatSetTheReading) {
  AgentStage stage(1_h);
  const ChannelId told = stage.channel("told", 20.0);
  stage.hand(told, {{600_s, 31.0}});
  stage.agent<OnOffControl>({"control", "sensor", told, stage.channel("demand"), {30.0, 28.0}, {}, {}, {}});
  stage.run();
  EXPECT_EQ(stage.said_by("control").size(), 1U);
  EXPECT_THAT(stage.said_by("control").front(), HasSubstr("600 calls for cooling"));
  EXPECT_THAT(stage.chain_of("calls for"), HasSubstr("<- hand moves"));
}

TEST(OnOffControl, IsNamedWhenItChatters) {
  for (const Points& reading : {Points{{0_s, 30.0}}, Points{{0_s, 20.0}, {1000_s, 30.0}}}) {
    AgentStage stage(1_h);
    stage.agent<OnOffControl>({"nervous control",
                               "sensor",
                               stage.moved("reading", reading),
                               stage.channel("demand"),
                               {30.0, 30.0},
                               {},
                               {},
                               {}});
    expect_chatter(stage, "nervous control");
  }
}

}  // namespace
}  // namespace noonhouse
