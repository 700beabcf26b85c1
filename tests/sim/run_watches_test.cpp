// SPDX-License-Identifier: Apache-2.0
// Watches, breaks, transfers and chatter as agents meet them.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "sim/core/errors.hpp"
#include "sim/run/run.hpp"
#include "tests/support/toy_lump.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using toy::Lump;
using HouseRun = Run;  // inside a test, Run names the test's own

TEST(Run, AWatchArmedBeyondItsLimitFiresAtThatInstantAndOnce) {
  Lump lump(1_h);
  int fired = 0;
  lump.agent("guard", [&](const Situation& s, const Trigger& t, Actions& act) {
    if (t.kind == Trigger::Kind::start) return act.wake(0, 60_s);
    if (t.kind == Trigger::Kind::wake) return act.arm(0, {lump.lump, 295.0, Watch::Direction::falling});
    ++fired;
    EXPECT_EQ(s.now(), 60_s);
  });
  HouseRun(lump.plan).go();
  EXPECT_EQ(fired, 1);
}

TEST(Run, DisarmingOrReplacingAWatchTakesBackItsCrossingOfTheSameInstant) {
  Lump lump(1_h);
  std::vector<int> heard;
  lump.agent("guard", [&](const Situation&, const Trigger& t, Actions& act) {
    const auto watch_at = [&](double k) { return Watch{lump.lump, k, Watch::Direction::falling}; };
    if (t.kind == Trigger::Kind::start)
      for (int slot : {0, 1, 2}) act.arm(slot, watch_at(288.0));
    if (t.kind != Trigger::Kind::crossing) return;
    heard.push_back(t.slot);
    if (t.slot == 0) {
      act.disarm(1);
      act.arm(2, watch_at(286.0));
    }
  });
  HouseRun(lump.plan).go();
  EXPECT_THAT(heard, ElementsAre(0, 2));
}

TEST(Run, AgentsAtABreakSeeTheForcingThatHoldsFromThere) {
  Lump lump(3_h);
  // A staircase: the forcing jumps at each hour.
  struct Stairs final : Forcing {
    ChannelId channel;
    explicit Stairs(ChannelId c) : channel(c) {}
    Tick next_break(Tick t) const override { return Tick{(t.ms / 3'600'000 + 1) * 3'600'000}; }
    void fill(Tick from, Tick, std::span<const double>, std::span<double> a, std::span<double> b) const override {
      const auto i = static_cast<std::size_t>(channel.index);
      a[i] = b[i] = 280.0 + static_cast<double>(from.ms / 3'600'000);
    }
  };
  lump.plan.forcing = std::make_unique<Stairs>(lump.outdoor_k);
  std::vector<double> seen;
  lump.agent("observer", [&](const Situation& s, const Trigger&, Actions& act) {
    seen.push_back(s.value(lump.outdoor_k));
    if (s.now() < 2_h) act.wake(0, s.now() + 1_h);
  });
  int fired = 0;
  lump.agent("guard", [&](const Situation& s, const Trigger& t, Actions& act) {
    if (t.kind == Trigger::Kind::start) return act.arm(0, {lump.outdoor_k, 281.5, Watch::Direction::rising});
    ++fired;
    EXPECT_LE(s.now() - 2_h, Tick{1}) << "a jump at a break is passed at once";
  });
  HouseRun(lump.plan).go();
  EXPECT_THAT(seen, ElementsAre(280.0, 281.0, 282.0));
  EXPECT_EQ(fired, 1);
}

TEST(Run, ATransferMovesTheAmountAtOnceAndKeepsTheSum) {
  Lump lump(1_h, 280.0);  // at rest with its surroundings
  lump.agent("hand", [&](const Situation& s, const Trigger& t, Actions& act) {
    if (t.kind == Trigger::Kind::start) return act.wake(0, 600_s);
    EXPECT_NEAR(s.value(lump.lump), 280.0, 1e-9);
    act.transfer(lump.heating, 0, 5e4);
    EXPECT_NEAR(s.value(lump.lump), 285.0, 1e-9);
  });
  toy::Recorder recorder;
  double carried = 0.0;
  recorder.each = [&](const Stretch& stretch) { carried = stretch.carried_at(stretch.end())[1]; };
  HouseRun run(lump.plan);
  run.add_observer(recorder);
  const auto result = run.go();
  const auto& amounts = result.state.amounts;
  EXPECT_NEAR(amounts[0] + amounts[1] + amounts[2], lump.plan.house.initial_amounts[0], 1e-9);
  EXPECT_NEAR(amounts[0] / 1e4 + kEnergyZeroK, 280.0 + 5.0 * std::exp(-3.0), 1e-4);
  EXPECT_NEAR(carried, 5e4, 1e-9);
}

TEST(Run, ATransferOverALimitFiresItsWatchEvenIfItDoesNotLast) {
  Lump lump(1_h, 280.0);
  std::vector<double> fired;
  lump.agent("hand", [&](const Situation&, const Trigger& t, Actions& act) {
    if (t.kind == Trigger::Kind::start) return act.wake(0, 600_s);
    act.transfer(lump.heating, 0, 5e4);
  });
  lump.agent("guard", [&](const Situation& s, const Trigger& t, Actions& act) {
    if (t.kind == Trigger::Kind::start) return act.arm(0, {lump.lump, 284.9999, Watch::Direction::rising});
    fired.push_back(seconds(s.now()));
  });
  HouseRun(lump.plan).go();
  EXPECT_THAT(fired, ElementsAre(600.001));
}

TEST(Run, ADeviceThatSwitchesWithoutEndIsAnErrorThatNamesIt) {
  Lump lump(1_h);
  // Both limits on one value: on at 289 or below, off at 289 or above.
  lump.agent("nervous heater", toy::Thermostat{lump.lump, lump.heat_w, 289.0, 289.0, 200.0});
  try {
    HouseRun(lump.plan).go();
    FAIL() << "chatter went unnoticed";
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::chatter);
    EXPECT_THAT(error.what(), HasSubstr("'nervous heater'"));
    EXPECT_THAT(error.what(), HasSubstr("60 s"));
  }
}

TEST(Run, AgentsThatKeepSettingEachOtherOffAreAnErrorToo) {
  Lump lump(1_h);
  for (const std::string& name : std::vector<std::string>{"this", "that"})
    lump.agent(name,
               [&lump, name](const Situation& s, const Trigger& t, Actions& act) {
                 if (t.kind == Trigger::Kind::start && name == "that") return;
                 act.set(lump.heat_w, s.value(lump.heat_w) + 1.0, kNoEvent);
               },
               {lump.heat_w});
  EXPECT_THROW(HouseRun(lump.plan).go(), UserError);
}

TEST(Run, MinimumTimesByWakesAreKept) {
  Lump lump(10_h);
  lump.agent("slow heater", [&](const Situation& s, const Trigger& t, Actions& act) {
    const bool on = s.value(lump.heat_w) > 0.0;
    const auto limit = on ? Watch::Direction::rising : Watch::Direction::falling;
    if (t.kind == Trigger::Kind::crossing) {
      act.set(lump.heat_w, on ? 0.0 : 200.0, act.log(EventKind::action, on ? "off" : "on"));
      return act.wake(0, s.now() + 5_min);
    }
    act.arm(0, {lump.lump, 289.0, limit});
  });
  HouseRun run(lump.plan);
  run.go();
  ASSERT_GT(run.log().size(), 30U);
  for (std::size_t i = 1; i < run.log().size(); ++i)
    EXPECT_EQ(run.log()[i].when - run.log()[i - 1].when, 5_min) << "one limit for both: always the minimum time";
}

}  // namespace
}  // namespace noonhouse
