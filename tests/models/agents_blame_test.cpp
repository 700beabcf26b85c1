// SPDX-License-Identifier: Apache-2.0
// A failure that empties the battery or the tank is the cause of a cut-off while it lasts, and no longer.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/control/script.hpp"
#include "models/power/battery_guard.hpp"
#include "models/water/tank_guard.hpp"
#include "tests/support/device_works.hpp"

namespace noonhouse {
namespace {

using testing::Each;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

/// What sinks below its marks at 600 s and again at 3000 s, and is full again between.
const Points kSinksTwice{{0_s, 100}, {800_s, 0}, {1600_s, 100}, {2200_s, 100}, {3000_s, 0}, {3600_s, 0}};

/// A failure from one instant to another that sets a channel meanwhile.
Script::Parameters failure(const std::string& of, const std::string& what, Tick from, Tick until, ChannelId channel,
                           double failed, double healthy) {
  return {of,
          {{from, what, EventKind::failure, {{channel, failed}}},
           {until, "is put right", EventKind::action, {{channel, healthy}}, 0, true}}};
}

/// The chains of causes behind each entry whose text holds this, oldest entry first.
std::vector<std::string> chains_of(const AgentStage& stage, const std::string& text) {
  std::vector<std::string> out;
  for (const auto& entry : stage.log()) {
    if (entry.what.find(text) == std::string::npos) continue;
    std::string chain;
    for (EventId id = entry.id; id != kNoEvent; id = stage.log()[static_cast<std::size_t>(id)].cause)
      chain += stage.log()[static_cast<std::size_t>(id)].what + "; ";
    out.push_back(chain);
  }
  return out;
}

/// A battery of 100 J whose charge the test moves, cut off at 25 J until 60 J; the cells and the panel may fail.
struct DrainedBattery {
  AgentStage stage{1_h};
  ChannelId permit = stage.channel("permit", 1.0), uncovered = stage.channel("uncovered", 1.0);
  ChannelId cells = stage.channel("cells", 1.0);
  BatteryGuard::Parameters p{"battery",
                             stage.moved("charge", kSinksTwice),
                             100.0,
                             {{permit, 0.25, 0.6, "all loads", BatteryGuard::Act::cuts_off}}};
  DrainedBattery() { p.drained_by = {"panel", "battery"}; }
  std::vector<std::string> cut_offs() {
    stage.agent<BatteryGuard>(p);
    stage.run();
    return chains_of(stage, "cuts all loads off");
  }
};

TEST(DrainedBattery, BlamesACoveredPanelOnlyWhileItIsCovered) {
  DrainedBattery first, second, never, before;
  first.stage.agent<Script>(failure("panel", "is covered", 100_s, 1000_s, first.uncovered, 0.0, 1.0));
  EXPECT_THAT(first.cut_offs(), ElementsAre(HasSubstr("is covered"), Not(HasSubstr("is covered"))));
  second.stage.agent<Script>(failure("panel", "is covered", 1000_s, 3500_s, second.uncovered, 0.0, 1.0));
  EXPECT_THAT(second.cut_offs(), ElementsAre(Not(HasSubstr("is covered")), HasSubstr("is covered")));
  before.stage.agent<Script>(failure("panel", "is covered", 100_s, 599_s, before.uncovered, 0.0, 1.0));
  EXPECT_THAT(before.cut_offs(), ElementsAre(Not(HasSubstr("is covered")), Not(HasSubstr("is covered"))));
  EXPECT_THAT(never.cut_offs(), ElementsAre("cuts all loads off; is down to its cut-off: the loads drew more than the "
                                            "panel gave; ",
                                            "cuts all loads off; is down to its cut-off: the loads drew more than the "
                                            "panel gave; "));
}

TEST(DrainedBattery, BlamesNoFailureOfWhatDoesNotFeedIt) {
  DrainedBattery s;
  s.stage.agent<Script>(failure("vent", "is stuck", 100_s, 3500_s, s.uncovered, 0.0, 1.0));
  EXPECT_THAT(s.cut_offs(), ElementsAre(Not(HasSubstr("is stuck")), Not(HasSubstr("is stuck"))));
}

// With half its cells 25 % is at 12.5 J, with all at 25 J. The dead cell is put right between the two sinkings.
TEST(DrainedBattery, BlamesADeadCellOnlyWhileItIsDead) {
  DrainedBattery s;
  s.p.cells = s.cells;
  s.stage.agent<Script>(failure("battery cell", "loses cells", 100_s, 2000_s, s.cells, 0.5, 1.0));
  s.p.drained_by = {"panel", "battery cell"};
  const auto chains = s.cut_offs();
  EXPECT_THAT(chains, ElementsAre(HasSubstr("loses cells"), Not(HasSubstr("loses cells"))));
  EXPECT_THAT(chains[0], HasSubstr("only 50 % of its cells work"));
  EXPECT_THAT(chains[1], Not(HasSubstr("of its cells work")));
  EXPECT_THAT(s.stage.said_by("battery"),
              ElementsAre(HasSubstr("700 is down"), HasSubstr("700 cuts"), HasSubstr("1040 is charged again"),
                          HasSubstr("2800 is down"), HasSubstr("2800 cuts")));
}

/// A tank of 100 kg that the test empties twice, low at 25 kg, restart at 60 kg; rain begins at 50 s.
struct DrainedTank {
  AgentStage stage{1_h};
  ChannelId permit = stage.channel("permit", 1.0), raining = stage.channel("raining"), leak = stage.channel("leak");
  TankGuard::Parameters p{"tank", stage.moved("content", kSinksTwice), 25.0, 60.0, permit, raining};
  DrainedTank() {
    p.drained_by = {"seam"};
    stage.agent<Script>({"sky", {{50_s, "rain begins", EventKind::weather, {{raining, 1.0}}}}});
  }
  std::vector<std::string> cut_outs() {
    stage.agent<TankGuard>(p);
    stage.run();
    return chains_of(stage, "cuts the pump out");
  }
};

TEST(DrainedTank, BlamesALeakOnlyWhileItLasts) {
  DrainedTank first, second, other;
  first.stage.agent<Script>(failure("seam", "leaks", 100_s, 1000_s, first.leak, 1.0, 0.0));
  EXPECT_THAT(first.cut_outs(), ElementsAre("cuts the pump out; is down to its low mark; leaks; ",
                                            "cuts the pump out; is down to its low mark; rain begins; "));
  second.stage.agent<Script>(failure("seam", "leaks", 1000_s, 3500_s, second.leak, 1.0, 0.0));
  EXPECT_THAT(second.cut_outs(), ElementsAre("cuts the pump out; is down to its low mark; rain begins; ",
                                             "cuts the pump out; is down to its low mark; leaks; "));
  other.stage.agent<Script>(failure("roof", "leaks", 100_s, 3500_s, other.leak, 1.0, 0.0));
  EXPECT_THAT(other.cut_outs(), Each(HasSubstr("rain begins")));
}

TEST(DrainedTank, IsNoFailureAnyMoreOnceItIsRefilled) {
  DrainedTank t;
  std::vector<EventId> stands;
  t.stage.agent<FailureWatch>({"tank", {500_s, 900_s, 1700_s}, &stands});
  t.cut_outs();
  EXPECT_THAT(FailureWatch::words(stands, t.stage.log()), ElementsAre("none", "cuts the pump out", "none"));
}

}  // namespace
}  // namespace noonhouse
