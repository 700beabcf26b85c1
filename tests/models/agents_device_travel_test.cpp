// SPDX-License-Identifier: Apache-2.0
// How a device moves: in grades, and with the time it takes.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "models/control/device.hpp"
#include "tests/support/device_works.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;

TEST(GradedDevice, FollowsInItsSteps) {
  DeviceWorks w;
  w.p.graded = true;
  w.p.outputs = {{w.position, 0.5, 0.1}};
  w.stage.hand(w.call[0], {{10_s, 0.02}, {20_s, 0.43}, {30_s, 0.46}, {40_s, 0.99}, {50_s, 1.7}, {60_s, -1.0}});
  EXPECT_THAT(w.run(), ElementsAre("20 opens: 45 %", "40 goes to 100 %", "60 shuts"));
  EXPECT_THAT(w.moved, ElementsAre("0 0.1", "20 0.28", "40 0.5", "60 0.1"));
}

TEST(GradedDevice, ReachesItsEndWithStepsThatDoNot) {
  for (const double step : {0.0, 0.3, 1.0}) {
    DeviceWorks w;
    w.p.graded = true;
    w.p.share_step = step;
    w.stage.hand(w.call[0], {{10_s, 1.0}});
    w.run();
    EXPECT_EQ(w.stage.last(w.position), 1.0) << step;
  }
}

TEST(GradedDevice, FollowsEveryShareWithoutSteps) {
  DeviceWorks w;
  w.p.graded = true;
  w.p.share_step = 0.0;
  w.stage.hand(w.call[0], {{10_s, 0.123}, {20_s, 0.124}});
  w.run();
  EXPECT_EQ(w.stage.last(w.position), 0.124);
}

TEST(DeviceTravel, TakesItsTimeInStepsOfASixth) {
  DeviceWorks w;
  w.p.takes = 60_s;
  w.stage.hand(w.call[0], {{100_s, 1.0}, {200_s, 0.0}});
  EXPECT_THAT(w.run(), ElementsAre("100 opens", "200 shuts"));
  EXPECT_THAT(w.moved, ElementsAre("110 0.1667", "120 0.3333", "130 0.5", "140 0.6667", "150 0.8333", "160 1",
                                   "210 0.8333", "220 0.6667", "230 0.5", "240 0.3333", "250 0.1667", "260 0"));
}

// 60 s for the whole way: turned round after 25 s it stands at 25/60, and needs 25 s back in three steps of 25/180.
TEST(DeviceTravel, TurnsRoundWhereItStands) {
  DeviceWorks w;
  w.p.takes = 60_s;
  w.stage.hand(w.call[0], {{100_s, 1.0}, {125_s, 0.0}});
  EXPECT_THAT(w.run(), ElementsAre("100 opens", "125 shuts"));
  EXPECT_THAT(w.moved,
              ElementsAre("110 0.1667", "120 0.3333", "125 0.4167", "133.333 0.2778", "141.667 0.1389", "150 0"));
}

TEST(DeviceTravel, IsTurnedRoundAtTheVeryInstantOfAStepAndOfItsEnd) {
  DeviceWorks at_step;
  at_step.p.takes = 60_s;
  at_step.stage.hand(at_step.call[0], {{100_s, 1.0}, {120_s, 0.0}});
  at_step.run();
  EXPECT_THAT(at_step.moved, ElementsAre("110 0.1667", "120 0.3333", "130 0.1667", "140 0"));
  DeviceWorks at_end;
  at_end.p.takes = 6_s;
  at_end.stage.hand(at_end.call[0], {{100_s, 1.0}, {106_s, 0.0}});
  at_end.run();
  ASSERT_EQ(at_end.moved.size(), 12U);
  EXPECT_EQ(at_end.moved[5], "106 1");
  EXPECT_EQ(at_end.moved.back(), "112 0");
}

TEST(DeviceTravel, GoesByTheSameRoadInGrades) {
  DeviceWorks w;
  w.p.takes = 100_s;
  w.p.graded = true;
  w.stage.hand(w.call[0], {{100_s, 0.3}, {200_s, 0.2}});
  EXPECT_THAT(w.run(), ElementsAre("100 opens: 30 %", "200 goes to 20 %"));
  EXPECT_THAT(w.moved, ElementsAre("115 0.15", "130 0.3", "210 0.2"));
}

TEST(DeviceTravel, SticksOnTheWayAndGoesOnWhenItIsRepaired) {
  DeviceWorks w;
  w.p.takes = 60_s;
  w.stage.hand(w.call[0], {{100_s, 1.0}});
  w.stage.hand(w.fault, {{115_s, number(DeviceFault::stuck_as_is)}, {200_s, 0.0}});
  EXPECT_THAT(w.run(), ElementsAre("100 opens", "115 is stuck as it is", "200 is repaired", "200 opens"));
  EXPECT_THAT(w.moved, ElementsAre("110 0.1667", "115 0.25", "209 0.4", "218 0.55", "227 0.7", "236 0.85", "245 1"));
}

TEST(DeviceTravel, ShutsWithoutPowerOrStaysWhereItStands) {
  const auto run = [](bool stays) {
    DeviceWorks w;
    w.p.takes = 60_s;
    w.p.stays_when_lacking = stays;
    w.stage.hand(w.call[0], {{100_s, 1.0}, {300_s, 0.0}});
    w.stage.hand(w.power, {{115_s, 0.0}, {400_s, 1.0}});
    Said out = w.run();
    out.insert(out.end(), w.moved.begin(), w.moved.end());
    return out;
  };
  EXPECT_THAT(run(false), ElementsAre("100 opens", "115 shuts: no power", "400 has again what it lacked (no power)",
                                      "110 0.1667", "115 0"))
      << "a fan without power does not run down, a pump draws nothing";
  EXPECT_THAT(run(true), ElementsAre("100 opens", "115 stays where it stands: no power", "400 shuts", "110 0.1667",
                                     "115 0.25", "407.5 0.125", "415 0"));
}

TEST(DeviceTravel, LacksNoPowerWhereItStandsAnyway) {
  DeviceWorks w;
  w.p.stays_when_lacking = true;
  w.stage.hand(w.call[0], {{10_s, 1.0}, {30_s, 0.0}});
  w.stage.hand(w.power, {{20_s, 0.0}, {40_s, 1.0}});
  EXPECT_THAT(w.run(), ElementsAre("10 opens", "30 stays where it stands: no power", "40 shuts"));
  EXPECT_EQ(w.stage.last(w.position), 0.0);
}

// Wind needs no motor and does not wait; what jams without power stays where it stands.
TEST(DeviceTravel, IsTakenByWindWhateverItLacks) {
  const auto ends_at = [](bool stays, DeviceFault fault, double called = 1.0) {
    DeviceWorks w;
    w.p.stays_when_lacking = stays;
    w.stage.hand(w.call[0], {{10_s, called}});
    w.stage.hand(w.power, {{20_s, 0.0}});
    w.stage.hand(w.fault, {{30_s, number(fault)}});
    w.run();
    return w.stage.last(w.position);
  };
  EXPECT_EQ(ends_at(true, DeviceFault::none), 1.0);
  EXPECT_EQ(ends_at(true, DeviceFault::taken_off), 0.0) << "a cover that is blown off is gone";
  EXPECT_EQ(ends_at(true, DeviceFault::torn_on, 0.0), 1.0) << "a vent that is torn stands open";
  EXPECT_EQ(ends_at(true, DeviceFault::stuck_off), 1.0) << "no motor shuts it";
  EXPECT_EQ(ends_at(true, DeviceFault::stuck_on, 0.0), 0.0) << "no motor opens it";
  EXPECT_EQ(ends_at(true, DeviceFault::stuck_as_is), 1.0);
  EXPECT_EQ(ends_at(false, DeviceFault::stuck_on), 0.0) << "a fan that cannot be switched off stands still";
  DeviceWorks torn;
  torn.p.takes = 60_s;
  torn.p.stays_when_lacking = true;
  torn.stage.hand(torn.call[0], {{10_s, 1.0}});
  torn.stage.hand(torn.power, {{40_s, 0.0}});
  torn.stage.hand(torn.fault, {{100_s, number(DeviceFault::torn_on)}});
  EXPECT_THAT(torn.run(), ElementsAre("10 opens", "40 stays where it stands: no power"))
      << "who watches the wind has told it under the same name";
  EXPECT_THAT(torn.moved, ElementsAre("20 0.1667", "30 0.3333", "40 0.5", "100 1"));
}

TEST(DeviceTravel, IsHeldBackAnewWhenItsPowerIsBack) {
  DeviceWorks w;
  w.p.takes = 60_s;
  w.p.stays_when_lacking = true;
  w.stage.hand(w.call[0], {{10_s, 1.0}});
  w.stage.hand(w.rain, {{100_s, 1.0}});
  w.stage.hand(w.power, {{115_s, 0.0}, {200_s, 1.0}});
  EXPECT_THAT(w.run(), ElementsAre("10 opens", "100 is held back: it rains", "115 stays where it stands: no power",
                                   "200 is held back: it rains"));
  EXPECT_EQ(w.stage.last(w.position), 0.0);
}

// However it is called about, it never moves faster than its pace and ends where it was called last.
TEST(DeviceTravel, KeepsItsPaceWhateverIsCalled) {
  DeviceWorks w;
  w.p.takes = 60_s;
  w.p.graded = true;
  Moves moves;
  for (int i = 1; i <= 200; ++i) moves.emplace_back(Tick{i * 7'300LL}, (i * 37 % 100) / 100.0);
  w.stage.hand(w.call[0], moves);
  w.run();
  EXPECT_EQ(w.stage.last(w.position), 0.0);
  double time = 0.0, place = 0.0;
  ASSERT_GT(w.moved.size(), 200U);
  for (const std::string& entry : w.moved) {
    const std::size_t gap = entry.find(' ');
    const double now = std::stod(entry.substr(0, gap)), there = std::stod(entry.substr(gap));
    EXPECT_LE(std::fabs(there - place), (now - time) / 60.0 + 2e-4) << entry;
    EXPECT_LE(std::fabs(there - place), Device::kLongestStep + 2e-4) << entry;
    time = now;
    place = there;
  }
}

}  // namespace
}  // namespace noonhouse
