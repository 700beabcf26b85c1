// SPDX-License-Identifier: Apache-2.0
// Whom of its callers a device heeds.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/control/device.hpp"
#include "tests/support/device_works.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

// All calls and duties of three callers by every way to heed, against the definition written out once more.
TEST(DeviceArbitration, HeedsTheLargestTheSmallestOrTheFirstOfThoseOnDuty) {
  for (const Heeds heeds : {Heeds::any, Heeds::all, Heeds::first}) {
    for (int calls = 0; calls < 8; ++calls) {
      for (int duties = 0; duties < 8; ++duties) {
        DeviceWorks w;
        w.p.heeds = heeds;
        int heard = 0, calling = 0, first = -1;
        for (int i = 0; i < 3; ++i) {
          const bool on_duty = (duties >> i & 1) != 0, on = (calls >> i & 1) != 0;
          const auto k = static_cast<std::size_t>(i);
          if (on) w.stage.hand(w.call[k], {{10_s, 1.0}});
          if (!on_duty) w.stage.hand(w.duty[k], {{5_s, 0.0}});
          if (!on_duty) continue;
          ++heard;
          calling += on ? 1 : 0;
          if (first < 0) first = on ? 1 : 0;
        }
        const bool runs = heeds == Heeds::any   ? calling > 0
                          : heeds == Heeds::all ? heard > 0 && calling == heard
                                                : first == 1;
        w.run();
        EXPECT_EQ(w.stage.last(w.position), runs ? 1.0 : 0.0)
            << static_cast<int>(heeds) << " calls " << calls << " duties " << duties;
      }
    }
  }
}

TEST(DeviceArbitration, HeedsTheLargestAndTheSmallestShareOfAGradedDevice) {
  const auto share = [](Heeds heeds) {
    DeviceWorks w;
    w.p.graded = true;
    w.p.heeds = heeds;
    w.stage.hand(w.call[0], {{10_s, 0.5}});
    w.stage.hand(w.call[1], {{10_s, 0.25}});
    w.stage.hand(w.call[2], {{10_s, 0.75}});
    w.run();
    return w.stage.last(w.position);
  };
  EXPECT_EQ(share(Heeds::any), 0.75);
  EXPECT_EQ(share(Heeds::all), 0.25);
  EXPECT_EQ(share(Heeds::first), 0.5);
}

TEST(DeviceArbitration, FollowsADutyThatChanges) {
  DeviceWorks w;
  w.p.heeds = Heeds::first;
  w.stage.hand(w.call[1], {{10_s, 1.0}});
  w.stage.hand(w.duty[0], {{20_s, 0.0}, {30_s, 1.0}});
  EXPECT_THAT(w.run(), ElementsAre("20 opens", "30 shuts"));
  EXPECT_EQ(w.stage.chain_of("shuts"), "vent shuts <- hand moves");
}

TEST(DeviceArbitration, DoesNothingWithoutCallers) {
  for (const Heeds heeds : {Heeds::any, Heeds::all, Heeds::first}) {
    DeviceWorks w;
    w.p.callers.clear();
    w.p.heeds = heeds;
    EXPECT_THAT(w.run(), IsEmpty());
  }
}

// A second thermostat is a contact beside the first one's: wherever that stands among the callers, it stands.
TEST(DeviceSpares, AContactBesideACallersCountsAsThatCallersCall) {
  const auto runs = [](Heeds heeds, bool other_calls, bool fitted, bool spare_calls) {
    DeviceWorks w;
    w.p.heeds = heeds;
    w.p.callers.resize(2, ChannelId{});
    w.p.callers[0].spare = w.call[2];
    w.p.callers[0].has_spare = w.duty[2];
    if (other_calls) w.stage.hand(w.call[1], {{10_s, 1.0}});
    if (!fitted) w.stage.hand(w.duty[2], {{5_s, 0.0}});
    if (spare_calls) w.stage.hand(w.call[2], {{20_s, 1.0}});
    w.run();
    return w.stage.last(w.position) == 1.0;
  };
  for (const Heeds heeds : {Heeds::any, Heeds::all, Heeds::first}) {
    EXPECT_TRUE(runs(heeds, true, true, true));
    EXPECT_EQ(runs(heeds, false, true, true), heeds != Heeds::all) << "all: the other has to call too";
    EXPECT_EQ(runs(heeds, true, true, false), heeds == Heeds::any);
    EXPECT_EQ(runs(heeds, true, false, true), heeds == Heeds::any) << "not fitted: as if it were not there";
  }
}

TEST(DeviceSpares, OneBesideAllMovesItHoweverTheyAreHeeded) {
  for (const Heeds heeds : {Heeds::any, Heeds::all, Heeds::first})
    for (const bool fitted : {false, true}) {
      DeviceWorks w;
      w.p.heeds = heeds;
      w.p.graded = true;
      w.p.callers[2].beside = true;
      w.stage.hand(w.call[1], {{10_s, 0.2}});
      if (!fitted) w.stage.hand(w.duty[2], {{5_s, 0.0}});
      w.stage.hand(w.call[2], {{20_s, 0.6}});
      w.run();
      EXPECT_NEAR(w.stage.last(w.position), fitted ? 0.6 : heeds == Heeds::any ? 0.2 : 0.0, 1e-12);
    }
}

TEST(DeviceHand, IsTheOnlyCallThatCountsWhileItIsSet) {
  for (const Heeds heeds : {Heeds::any, Heeds::all, Heeds::first}) {
    DeviceWorks works;
    const ChannelId hand = works.stage.channel("hand");
    works.p.heeds = heeds;
    works.p.hand = hand;
    works.stage.hand(hand, {{1_min, 1.0}, {2_min, 0.0}});
    works.run();
    EXPECT_EQ(works.moved, (std::vector<std::string>{"60 1", "120 0"})) << static_cast<int>(heeds);
  }
}

TEST(DeviceNeeds, WithheldOnPurposeAreAWarningSaidOnce) {
  DeviceWorks works;
  works.p.needs.front().on_purpose = true;
  works.stage.hand(works.power, {{1_min, 0.0}});
  works.stage.hand(works.call[0], {{2_min, 1.0}, {3_min, 0.0}, {4_min, 1.0}, {5_min, 0.0}, {6_min, 1.0}});
  works.run();
  int warnings = 0, failures = 0;
  for (const LogEntry& entry : works.stage.log()) {
    if (entry.subject != "vent") continue;
    if (entry.kind == EventKind::warning) ++warnings;
    if (entry.kind == EventKind::failure) ++failures;
  }
  EXPECT_EQ(warnings, 1);
  EXPECT_EQ(failures, 0);
}

}  // namespace
}  // namespace noonhouse
