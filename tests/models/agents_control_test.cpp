// SPDX-License-Identifier: Apache-2.0
// On/off control, timer and device in the engine's own run, on readings that the test moves.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/control/device.hpp"
#include "models/control/on_off_control.hpp"
#include "models/control/pulse_timer.hpp"
#include "models/control/weather_diary.hpp"
#include "tests/support/agent_stage.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

struct OnOffRow {
  std::string what;
  Points reading;  ///< [degC] here; told to the run in kelvins
  Tick least_on, least_off;
  DailyWindow hours;
  Tick length;
  Said says;
};
void PrintTo(const OnOffRow& row, std::ostream* out) { *out << row.what; }

class OnOffTable : public testing::TestWithParam<OnOffRow> {};

// Calls at 30 degC, stops at 28 degC.
TEST_P(OnOffTable, SaysWhatItDoesAndWhen) {
  const auto& row = GetParam();
  AgentStage stage(row.length);
  auto reading = row.reading;
  for (auto& point : reading) point.second += kZeroCelsius;
  const ChannelId sensor = stage.moved("reading", reading), demand = stage.channel("demand");
  stage.agent<OnOffControl>(
      {"vent control", "sensor", sensor, demand, {303.15, 301.15}, row.least_on, row.least_off, {row.hours}});
  stage.run();
  EXPECT_EQ(stage.said_by("vent control"), row.says);
  const std::string last = row.says.empty() ? "no" : row.says.back();
  EXPECT_EQ(stage.last(demand), last.find("calls for") != std::string::npos ? 1.0 : 0.0);
}

// 10 K in 1000 s: 0.01 K/s; a limit on the straight line is reached at a known second.
const OnOffRow kOnOff[] = {
    {"reaches exactly its limit",
     {{0_s, 20}, {1000_s, 30}, {1001_s, 29}},
     {},
     {},
     {},
     1_h,
     {"1000 calls for cooling: 30.0 degC at the sensor"}},
    {"stays just under its limit", {{0_s, 20}, {1000_s, 29.999}, {2000_s, 20}}, {}, {}, {}, 1_h, {}},
    {"begins on its limit", {{0_s, 30}}, {}, {}, {}, 1_h, {"0 calls for cooling: 30.0 degC at the sensor"}},
    {"rises and falls",
     {{0_s, 25}, {1000_s, 35}, {2000_s, 25}},
     {},
     {},
     {},
     1_h,
     {"500 calls for cooling: 30.0 degC at the sensor", "1700 calls no longer: 28.0 degC at the sensor"}},
    {"rests between its limits",
     {{0_s, 35}, {600_s, 29}, {1200_s, 29.5}},
     {},
     {},
     {},
     1_h,
     {"0 calls for cooling: 35.0 degC at the sensor"}},
    {"keeps its least time on",
     {{0_s, 25}, {1000_s, 35}, {1100_s, 25}},
     20_min,
     {},
     {},
     1_h,
     {"500 calls for cooling: 30.0 degC at the sensor", "1700 calls no longer: 25.0 degC at the sensor"}},
    {"forgets a dip within its least time on",
     {{0_s, 25}, {1000_s, 35}, {1100_s, 25}, {1300_s, 35}},
     20_min,
     {},
     {},
     1_h,
     {"500 calls for cooling: 30.0 degC at the sensor"}},
    {"keeps its least time off",
     {{0_s, 35}, {100_s, 25}, {200_s, 35}},
     {},
     10_min,
     {},
     1_h,
     {"0 calls for cooling: 35.0 degC at the sensor", "70 calls no longer: 28.0 degC at the sensor",
      "670 calls for cooling: 35.0 degC at the sensor"}},
    {"waits for its hours",
     {{0_s, 35}},
     {},
     {},
     {1_h, 2_h},
     3_h,
     {"3600 calls for cooling: 35.0 degC at the sensor", "7200 calls no longer: its hours are over"}},
    {"lets its hours end its least time on",
     {{0_s, 35}},
     12_h,
     {},
     {1_h, 2_h},
     3_h,
     {"3600 calls for cooling: 35.0 degC at the sensor", "7200 calls no longer: its hours are over"}},
    {"works over midnight",
     {{0_s, 35}},
     {},
     {},
     {23_h, 1_h},
     24_h,
     {"0 calls for cooling: 35.0 degC at the sensor", "3600 calls no longer: its hours are over",
      "82800 calls for cooling: 35.0 degC at the sensor"}},
    {"keeps its least time off over a closed spell",
     {{0_s, 35}},
     {},
     23_h + 30_min,
     {23_h, 1_h},
     26_h,
     {"0 calls for cooling: 35.0 degC at the sensor", "3600 calls no longer: its hours are over",
      "88200 calls for cooling: 35.0 degC at the sensor", "90000 calls no longer: its hours are over"}},
};
INSTANTIATE_TEST_SUITE_P(Rows, OnOffTable, testing::ValuesIn(kOnOff), [](const auto& tested) {
  std::string name = tested.param.what;
  std::replace(name.begin(), name.end(), ' ', '_');
  return name;
});

Said pulses(const DailyWindow& hours, Tick on_for, Tick every, Tick length) {
  AgentStage stage(length);
  stage.agent<PulseTimer>({"timer", stage.channel("demand"), hours, on_for, every});
  stage.run();
  Said out;
  for (const auto& said : stage.said_by("timer")) out.push_back(said.substr(0, said.find(' ')));
  return out;
}

TEST(PulseTimer, PulsesFromItsOpeningAndIsCutOffByItsClosing) {
  EXPECT_THAT(pulses({1_h, 1_h + 25_min}, 5_min, 10_min, 3_h),
              ElementsAre("3600", "3900", "4200", "4500", "4800", "5100"));
  EXPECT_THAT(pulses({1_h, 1_h + 22_min}, 5_min, 10_min, 3_h),
              ElementsAre("3600", "3900", "4200", "4500", "4800", "4920"));
}

TEST(PulseTimer, CountsAnewFromEachOpening) {
  // 7 h do not divide a day: the second day's pulse begins at its opening all the same.
  EXPECT_THAT(pulses({}, 1_h, 7_h, kDay + 2_h),
              ElementsAre("0", "3600", "25200", "28800", "50400", "54000", "75600", "79200", "86400", "90000"));
  EXPECT_THAT(pulses({22_h, 2_h}, 1_h, 3_h, kDay + 30_min), ElementsAre("3600", "7200", "79200", "82800"))
      << "over midnight: at 0:00 its third hour begins";
}

TEST(PulseTimer, IsOnForGoodWhenItsPulseFillsTheTimeAndNeverWithoutAPulse) {
  EXPECT_THAT(pulses({1_h, 2_h}, 10_min, 10_min, 3_h), ElementsAre("3600", "7200"));
  EXPECT_THAT(pulses({}, kDay, kDay, kDay * 3), ElementsAre("0"));
  EXPECT_THAT(pulses({}, Tick{0}, 10_min, 5_h), IsEmpty());
}

TEST(PulseTimer, SleepsOutsideItsHours) {
  AgentStage stage(20_h);
  stage.agent<PulseTimer>({"timer", stage.channel("demand"), {22_h, 23_h}, 5_s, 10_s});
  stage.run();
  EXPECT_LT(stage.steps(), 100) << "not one for each of 14,400 pulse edges that nobody hears";
}

/// A mist line with two callers and two needs.
struct DeviceStage {
  AgentStage stage{1_h};
  ChannelId first = stage.channel("first call"), second = stage.channel("second call");
  ChannelId water = stage.channel("water permit", 1.0), power = stage.channel("power permit", 1.0);
  ChannelId position = stage.channel("position"), flow = stage.channel("flow");
  Said run() {
    stage.agent<Device>({"mist",
                         "starts",
                         "stops",
                         {first, second},
                         {{water, "no water"}, {power, "no power"}},
                         {{position, 1.0, 0.0}, {flow, 0.02, 0.0}}});
    stage.run();
    return stage.said_by("mist");
  }
};

TEST(Device, RunsWhileAnyOfItsCallersCalls) {
  DeviceStage d;
  d.stage.hand(d.first, {{10_s, 1.0}, {30_s, 0.0}});
  d.stage.hand(d.second, {{20_s, 1.0}, {40_s, 0.0}});
  EXPECT_THAT(d.run(), ElementsAre("10 starts", "40 stops"));
  EXPECT_EQ(d.stage.chain_of("stops"), "mist stops <- hand moves");
  EXPECT_EQ(d.stage.last(d.flow), 0.0);
}

TEST(Device, FailsOnceWhileItLacksSomethingAndComesBack) {
  DeviceStage d;
  d.stage.hand(d.first, {{10_s, 1.0}});
  d.stage.hand(d.water, {{20_s, 0.0}, {40_s, 1.0}});
  d.stage.hand(d.power, {{30_s, 0.0}, {50_s, 1.0}});
  EXPECT_THAT(d.run(), ElementsAre("10 starts", "20 stops: no water", "40 has again what it lacked (no water)",
                                   "40 is called but stays off: no power", "50 starts"));
  EXPECT_EQ(d.stage.chain_of("stops: no water"), "mist stops: no water <- hand moves");
  EXPECT_EQ(d.stage.last(d.position), 1.0);
  EXPECT_EQ(d.stage.last(d.flow), 0.02);
}

TEST(Device, SaysThatItIsCalledInVainAndNothingWhenNobodyCalls) {
  DeviceStage d;
  d.stage.hand(d.water, {{5_s, 0.0}});
  d.stage.hand(d.first, {{10_s, 1.0}, {20_s, 0.0}, {30_s, 1.0}});
  EXPECT_THAT(d.run(), ElementsAre("10 is called but stays off: no water"));
  EXPECT_EQ(d.stage.last(d.position), 0.0);
}

TEST(Device, BeginsAtItsOffPositionEvenIfThatIsNotZero) {
  AgentStage stage(1_h);
  const ChannelId call = stage.channel("call"), position = stage.channel("position");
  stage.agent<Device>({"vent", "opens", "shuts", {call}, {}, {{position, 1.0, 0.03}}});
  stage.run();
  EXPECT_THAT(stage.said_by("vent"), IsEmpty());
  EXPECT_EQ(stage.last(position), 0.03);
}

TEST(Device, LeadsBackToTheControlThatCalledIt) {
  AgentStage stage(1_h);
  const ChannelId sensor = stage.moved("reading", {{0_s, 300.15}, {1000_s, 310.15}}), demand = stage.channel("demand");
  stage.agent<Device>({"vent", "opens", "shuts", {demand}, {}, {{stage.channel("position"), 1.0, 0.0}}});
  stage.agent<OnOffControl>({"vent control", "sensor", sensor, demand, {303.15, 301.15}, {}, {}, {}});
  stage.run();
  EXPECT_EQ(stage.chain_of("opens"), "vent opens <- vent control calls for cooling: 30.0 degC at the sensor");
}

TEST(WeatherDiary, WritesItsNotesAtTheirTimeAndSetsTheRain) {
  AgentStage stage(3_h);
  const ChannelId raining = stage.channel("raining");
  stage.agent<WeatherDiary>(
      {"weather", raining, {{0_s, "dust", -1.0}, {1_h, "rain begins", 1.0}, {2_h, "rain ends: 3 mm", 0.0}}});
  stage.run();
  EXPECT_THAT(stage.said_by("weather"), ElementsAre("0 dust", "3600 rain begins", "7200 rain ends: 3 mm"));
  EXPECT_EQ(stage.last(raining), 0.0);
}

}  // namespace
}  // namespace noonhouse
