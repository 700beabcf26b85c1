// SPDX-License-Identifier: Apache-2.0
// What holds a device back, what it lacks, where it sticks: in the engine's own run.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/control/device.hpp"
#include "tests/support/device_works.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;

struct DeviceRow {
  std::string what;
  Moves call, other_call, rain, power, fault;
  Said says;
};
void PrintTo(const DeviceRow& row, std::ostream* out) { *out << row.what; }
class DeviceTable : public testing::TestWithParam<DeviceRow> {};

TEST_P(DeviceTable, SaysWhatItDoesAndWhen) {
  const DeviceRow& row = GetParam();
  DeviceWorks w;
  const std::array<std::pair<ChannelId, Moves>, 5> hands{{{w.call[0], row.call},
                                                          {w.call[1], row.other_call},
                                                          {w.rain, row.rain},
                                                          {w.power, row.power},
                                                          {w.fault, row.fault}}};
  for (const auto& [channel, moves] : hands)
    if (!moves.empty()) w.stage.hand(channel, moves);
  EXPECT_EQ(w.run(), row.says);
}

constexpr double kOff = 1.0, kOn = 2.0, kAsIs = 3.0;  // as DeviceFault numbers them
const Moves kCalled{{10_s, 1.0}}, kCalledFor{{10_s, 1.0}, {90_s, 0.0}};
const DeviceRow kRows[] = {
    {"a call withdrawn at its own instant", {{10_s, 1.0}, {10_s, 0.0}}, {}, {}, {}, {}, {"10 opens", "10 shuts"}},
    {"one call takes over from another at one instant",
     {{10_s, 1.0}, {20_s, 0.0}},
     {{20_s, 1.0}, {30_s, 0.0}},
     {},
     {},
     {},
     {"10 opens", "30 shuts"}},
    {"half a call is none", {{10_s, 0.5}, {20_s, 0.51}, {30_s, 0.5}}, {}, {}, {}, {}, {"20 opens", "30 shuts"}},
    {"forbidden while it runs",
     kCalled,
     {},
     {{20_s, 1.0}, {30_s, 0.0}},
     {},
     {},
     {"10 opens", "20 is held back: it rains", "30 opens"}},
    {"called while it is forbidden",
     {{10_s, 1.0}, {15_s, 0.0}, {20_s, 1.0}, {40_s, 0.0}},
     {},
     {{5_s, 1.0}, {30_s, 0.0}},
     {},
     {},
     {"10 is held back: it rains", "30 opens", "40 shuts"}},
    {"pulses while it is forbidden twice over",
     {{10_s, 1.0}, {15_s, 0.0}, {20_s, 1.0}, {25_s, 0.0}, {40_s, 1.0}, {45_s, 0.0}, {60_s, 1.0}, {70_s, 0.0}},
     {},
     {{5_s, 1.0}, {30_s, 0.0}, {50_s, 1.0}, {65_s, 0.0}},
     {},
     {},
     {"10 is held back: it rains", "40 opens", "45 shuts", "60 is held back: it rains", "65 opens", "70 shuts"}},
    {"forbidden while nobody calls", {}, {}, {{5_s, 1.0}, {30_s, 0.0}}, {}, {}, {}},
    {"called and forbidden at one instant", kCalled, {}, {{10_s, 1.0}}, {}, {}, {"10 is held back: it rains"}},
    {"lacks nothing while it is held back",
     kCalled,
     {},
     {{20_s, 1.0}, {40_s, 0.0}},
     {{30_s, 0.0}, {50_s, 1.0}},
     {},
     {"10 opens", "20 is held back: it rains", "40 is called but stays off: no power", "50 opens"}},
    {"is held back while it lacks",
     kCalled,
     {},
     {{30_s, 1.0}, {50_s, 0.0}},
     {{20_s, 0.0}, {40_s, 1.0}},
     {},
     {"10 opens", "20 shuts: no power", "30 is held back: it rains", "40 has again what it lacked (no power)",
      "50 opens"}},
    {"pulses while it lacks",
     {{10_s, 1.0}, {20_s, 0.0}, {30_s, 1.0}, {40_s, 0.0}, {50_s, 1.0}, {60_s, 0.0}, {80_s, 1.0}, {90_s, 0.0}},
     {},
     {},
     {{5_s, 0.0}, {70_s, 1.0}, {85_s, 0.0}},
     {},
     {"10 is called but stays off: no power", "70 has again what it lacked (no power)", "80 opens",
      "85 shuts: no power"}},
    {"pulses while it lacks until it is called",
     {{10_s, 1.0}, {20_s, 0.0}, {30_s, 1.0}, {40_s, 0.0}, {50_s, 1.0}},
     {},
     {},
     {{15_s, 0.0}, {55_s, 1.0}},
     {},
     {"10 opens", "15 shuts: no power", "55 opens"}},
    {"stuck off while it runs",
     kCalledFor,
     {},
     {},
     {},
     {{20_s, kOff}, {40_s, 0.0}},
     {"10 opens", "20 is stuck off", "40 is repaired", "40 opens", "90 shuts"}},
    {"stuck off before it is called",
     {{20_s, 1.0}, {30_s, 0.0}, {40_s, 1.0}},
     {},
     {},
     {},
     {{10_s, kOff}, {50_s, 0.0}},
     {"10 is stuck off", "20 is called but stays off: it is stuck", "50 is repaired", "50 opens"}},
    {"stuck off and repaired while nobody calls",
     {},
     {},
     {},
     {},
     {{10_s, kOff}, {50_s, 0.0}},
     {"10 is stuck off", "50 is repaired"}},
    {"stuck off is not called in vain while it is forbidden",
     {{20_s, 1.0}},
     {},
     {{15_s, 1.0}, {30_s, 0.0}},
     {},
     {{10_s, kOff}},
     {"10 is stuck off", "30 is called but stays off: it is stuck"}},
    {"stuck off needs nothing", kCalled, {}, {}, {{30_s, 0.0}}, {{20_s, kOff}}, {"10 opens", "20 is stuck off"}},
    {"stuck on hears neither callers nor forbids",
     {{20_s, 1.0}, {30_s, 0.0}},
     {},
     {{40_s, 1.0}},
     {},
     {{10_s, kOn}, {50_s, 0.0}},
     {"10 is stuck on", "50 is repaired", "50 shuts"}},
    {"stuck on needs its power all the same",
     {},
     {},
     {},
     {{20_s, 0.0}, {30_s, 1.0}},
     {{10_s, kOn}},
     {"10 is stuck on", "20 shuts: no power", "30 opens: it is stuck"}},
    {"stuck on without power",
     {},
     {},
     {},
     {{5_s, 0.0}, {30_s, 1.0}},
     {{10_s, kOn}, {40_s, 0.0}},
     {"10 is stuck on", "10 stays off: no power", "30 opens: it is stuck", "40 is repaired", "40 shuts"}},
    {"repaired while it lacks",
     kCalled,
     {},
     {},
     {{20_s, 0.0}, {50_s, 1.0}},
     {{30_s, kOff}, {40_s, 0.0}},
     {"10 opens", "20 shuts: no power", "30 is stuck off", "40 is repaired", "40 is called but stays off: no power",
      "50 opens"}},
    {"stuck on and repaired while it lacks",
     kCalled,
     {},
     {},
     {{20_s, 0.0}},
     {{30_s, kOn}, {40_s, 0.0}},
     {"10 opens", "20 shuts: no power", "30 is stuck on", "30 stays off: no power", "40 is repaired",
      "40 is called but stays off: no power"}},
    {"repaired while it is forbidden",
     kCalled,
     {},
     {{20_s, 1.0}},
     {},
     {{15_s, kOn}, {30_s, 0.0}},
     {"10 opens", "15 is stuck on", "30 is repaired", "30 is held back: it rains"}},
    {"stuck as it is while it runs",
     kCalledFor,
     {},
     {{30_s, 1.0}},
     {},
     {{20_s, kAsIs}, {100_s, 0.0}},
     {"10 opens", "20 is stuck as it is", "100 is repaired", "100 shuts"}},
    {"stuck as it is while it rests",
     kCalled,
     {},
     {},
     {},
     {{5_s, kAsIs}, {100_s, 0.0}},
     {"5 is stuck as it is", "10 is called but stays off: it is stuck", "100 is repaired", "100 opens"}},
    {"from one fault to another",
     kCalled,
     {},
     {},
     {},
     {{20_s, kOff}, {30_s, kOn}, {40_s, kAsIs}, {50_s, kOff}},
     {"10 opens", "20 is stuck off", "30 is stuck on", "40 is stuck as it is", "50 is stuck off"}},
    {"everything at one instant",
     kCalled,
     {},
     {{10_s, 1.0}},
     {{10_s, 0.0}},
     {{10_s, kOn}},
     {"10 is stuck on", "10 stays off: no power"}},
    {"broken from the start",
     kCalled,
     {},
     {},
     {},
     {{0_s, kOff}},
     {"0 is stuck off", "10 is called but stays off: it is stuck"}},
};
INSTANTIATE_TEST_SUITE_P(Rows, DeviceTable, testing::ValuesIn(kRows), [](const auto& tested) {
  std::string name = tested.param.what;
  std::replace(name.begin(), name.end(), ' ', '_');
  return name;
});

TEST(DeviceFailure, StandsUntilItIsRepaired) {
  DeviceWorks w;
  w.stage.hand(w.call[0], {{20_s, 1.0}});
  w.stage.hand(w.fault, {{10_s, number(DeviceFault::stuck_off)}, {30_s, 0.0}});
  EXPECT_THAT(w.standing({5_s, 15_s, 25_s, 35_s}),
              ElementsAre("none", "is stuck off", "is called but stays off: it is stuck", "none"));
  EXPECT_EQ(w.stage.chain_of("it is stuck"),
            "vent is called but stays off: it is stuck <- vent is stuck off <- hand moves");
  EXPECT_EQ(w.stage.chain_of("opens"), "vent opens <- vent is repaired <- hand moves");
}

TEST(DeviceFailure, StaysWithTheFaultWhenTheNeedIsBack) {
  DeviceWorks w;
  w.stage.hand(w.fault, {{10_s, number(DeviceFault::stuck_on)}});
  w.stage.hand(w.power, {{20_s, 0.0}, {30_s, 1.0}});
  EXPECT_THAT(w.standing({15_s, 25_s, 35_s}), ElementsAre("is stuck on", "shuts: no power", "opens: it is stuck"));
}

TEST(DeviceFailure, IsNotOneToBeHeldBack) {
  DeviceWorks w;
  w.stage.hand(w.call[0], {{10_s, 1.0}});
  w.stage.hand(w.power, {{20_s, 0.0}});
  w.stage.hand(w.rain, {{30_s, 1.0}, {40_s, 0.0}});
  EXPECT_THAT(w.standing({15_s, 25_s, 35_s, 45_s}), ElementsAre("none", "shuts: no power", "none", "shuts: no power"));
  EXPECT_EQ(w.stage.chain_of("held back"), "vent is held back: it rains <- hand moves");
}

TEST(DeviceFailure, StandsAtEachPulseThatLacksThoughItIsSaidOnce) {
  DeviceWorks w;
  w.stage.hand(w.power, {{5_s, 0.0}, {50_s, 1.0}});
  w.stage.hand(w.call[0], {{10_s, 1.0}, {20_s, 0.0}, {30_s, 1.0}, {40_s, 0.0}, {60_s, 1.0}});
  const std::string lack = "is called but stays off: no power";
  EXPECT_THAT(w.standing({15_s, 25_s, 35_s, 45_s, 65_s}), ElementsAre(lack, "none", lack, "none", "none"));
  EXPECT_EQ(w.stage.chain_of("has again"), "vent has again what it lacked (no power) <- hand moves");
}

TEST(DeviceFailure, OnPurposeIsSaidOnceAndNeverStands) {
  DeviceWorks w;
  w.p.needs[0].on_purpose = true;
  w.stage.hand(w.power, {{5_s, 0.0}, {50_s, 1.0}});
  w.stage.hand(w.call[0], {{10_s, 1.0}, {20_s, 0.0}, {30_s, 1.0}, {40_s, 0.0}, {60_s, 1.0}});
  EXPECT_THAT(w.standing({15_s, 35_s}), ElementsAre("none", "none"));
  EXPECT_THAT(w.stage.said_by("vent"), ElementsAre("10 is called but stays off: no power", "60 opens"));
}

TEST(DeviceForbids, NameTheFirstOfTheListWhereSeveralHold) {
  DeviceWorks w;
  w.stage.hand(w.night, {{5_s, 1.0}});
  w.stage.hand(w.rain, {{6_s, 1.0}});
  w.stage.hand(w.call[0], {{10_s, 1.0}});
  EXPECT_THAT(w.run(), ElementsAre("10 is held back: it rains"));
}

TEST(DeviceForbids, NameTheFirstThatHoldsAndLetGoWithTheLast) {
  DeviceWorks w;
  w.stage.hand(w.call[0], {{10_s, 1.0}});
  w.stage.hand(w.night, {{20_s, 1.0}, {50_s, 0.0}});
  w.stage.hand(w.rain, {{30_s, 1.0}, {40_s, 0.0}});
  EXPECT_THAT(w.run(), ElementsAre("10 opens", "20 is held back: it is night", "50 opens"));
}

}  // namespace
}  // namespace noonhouse
