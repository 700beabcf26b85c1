// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "sim/contract/agent_plan.hpp"
#include "sim/core/errors.hpp"
#include "sim/run/run.hpp"
#include "tests/support/toy_lump.hpp"

namespace noonhouse {
namespace {

using toy::Lump;
using HouseRun = Run;  // inside a test, Run names the test's own

/// Switches a heat between two limits, counts its switching, and obeys a channel that forbids.
class Switcher final : public Agent {
 public:
  struct Parameters {
    Input sees;
    ChannelId drives, forbids;
    double low = 0.0, high = 0.0, power = 0.0;
  };
  static constexpr bool kDecides = true;
  static std::vector<ChannelId> follows(const Parameters& p) { return {p.forbids}; }
  explicit Switcher(Parameters p) : p_(p) {}
  std::string_view name() const override { return "switcher"; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override {
    if (trigger.kind == Trigger::Kind::crossing) {
      on_ = !on_;
      ++switched_;
    }
    const bool runs = on_ && situation.value(p_.forbids) < 0.5;
    if (trigger.kind != Trigger::Kind::start)
      actions.set(p_.drives, runs ? p_.power : 0.0,
                  actions.log(EventKind::action, (on_ ? "on " : "off ") + std::to_string(switched_)));
    actions.arm(
        0, on_ ? Watch{p_.sees, p_.high, Watch::Direction::rising} : Watch{p_.sees, p_.low, Watch::Direction::falling});
  }

 private:
  Parameters p_;
  bool on_ = false;
  int switched_ = 0;
};

struct SwitchedLump : Lump {
  explicit SwitchedLump(Tick length) : Lump(length) {
    plan.isolation = Tick{1};
    plan.agents.push_back(
        std::make_unique<PlanOf<Switcher>>(Switcher::Parameters{lump, heat_w, forbid, 289.0, 291.0, 200.0}));
  }
};

std::vector<std::string> whole_log(const Run& run) {
  std::vector<std::string> out;
  for (const LogEntry& e : run.log()) out.push_back(std::to_string(e.when.ms / 20) + " " + e.subject + " " + e.what);
  return out;
}

TEST(Branch, GoesOnAsItsOriginDoes) {
  SwitchedLump lump(10_h);
  HouseRun whole(lump.plan);
  whole.go();
  HouseRun origin(lump.plan);
  origin.run_to(4_h + 7_min);
  EXPECT_EQ(origin.now(), 4_h + 7_min);
  const auto branch = origin.branch();
  EXPECT_EQ(branch->now(), 4_h + 7_min);
  branch->run_to(10_h);
  ASSERT_EQ(branch->log().size(), whole.log().size());
  ASSERT_GT(whole.log().size(), 20U);
  for (std::size_t i = 0; i < whole.log().size(); ++i) {
    EXPECT_EQ(branch->log()[i].what, whole.log()[i].what);
    EXPECT_NEAR(seconds(branch->log()[i].when), seconds(whole.log()[i].when), 0.05) << i;
  }
}

TEST(Branch, LeavesItsOriginAlone) {
  SwitchedLump lump(10_h), other(10_h);
  HouseRun disturbed(lump.plan), left_alone(other.plan);
  disturbed.run_to(4_h);
  left_alone.run_to(4_h);
  const auto branch = disturbed.branch();
  branch->impose(lump.forbid, 1.0, EventKind::failure, "somebody", "pulls the plug");
  branch->run_to(10_h);
  disturbed.run_to(10_h);
  left_alone.run_to(10_h);
  EXPECT_EQ(whole_log(disturbed), whole_log(left_alone));
}

TEST(Branch, TwoOfOneInstantAreTheSameToTheByte) {
  SwitchedLump lump(10_h);
  HouseRun origin(lump.plan);
  origin.run_to(3_h);
  const auto one = origin.branch(), two = origin.branch();
  origin.run_to(5_h);
  one->run_to(9_h);
  two->run_to(9_h);
  const auto a = one->potentials(), b = two->potentials();
  for (std::size_t i = 0; i < a.size(); ++i) EXPECT_EQ(a[i], b[i]);
}

TEST(Branch, WhatIsImposedIsTheCauseOfWhatFollows) {
  SwitchedLump lump(10_h);
  HouseRun origin(lump.plan);
  origin.run_to(4_h);
  const auto branch = origin.branch();
  const std::size_t before = branch->log().size();
  const EventId fault = branch->impose(lump.forbid, 1.0, EventKind::failure, "somebody", "pulls the plug");
  branch->run_to(10_h);
  ASSERT_GT(branch->log().size(), before + 1);
  EXPECT_EQ(branch->log()[before].id, fault);
  EXPECT_EQ(branch->log()[before].when, 4_h);
  EXPECT_EQ(branch->log()[before + 1].cause, fault);
  EXPECT_LT(branch->potentials()[0], 289.0);  // without heat it falls towards 280 K
}

/// Says on waking which failure of somebody's stands.
class Asker final : public Agent {
 public:
  struct Parameters {
    Tick every;
  };
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters&) { return {}; }
  explicit Asker(Parameters p) : p_(p) {}
  std::string_view name() const override { return "asker"; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override {
    actions.wake(0, situation.now() + p_.every);
    if (trigger.kind != Trigger::Kind::wake) return;
    const std::vector<std::string> names{"somebody"};
    actions.log(EventKind::action, "asks", situation.standing_failure(names));
  }

 private:
  Parameters p_;
};

TEST(Branch, AnImposedFailureStandsUntilItIsPutRight) {
  SwitchedLump lump(10_h);
  lump.plan.agents.push_back(std::make_unique<PlanOf<Asker>>(Asker::Parameters{1_h}));
  HouseRun origin(lump.plan);
  origin.run_to(2_h);
  const auto branch = origin.branch();
  const EventId fault = branch->impose(lump.forbid, 1.0, EventKind::failure, "somebody", "pulls the plug");
  branch->run_to(4_h + 30_min);
  branch->impose(lump.forbid, 0.0, EventKind::action, "somebody", "puts it back");
  branch->run_to(6_h + 30_min);
  std::vector<EventId> causes;
  for (const LogEntry& entry : branch->log())
    if (entry.what == "asks" && entry.when > 2_h) causes.push_back(entry.cause);
  EXPECT_THAT(causes, testing::ElementsAre(fault, fault, kNoEvent, kNoEvent));
}

TEST(Branch, StopsWhenItHasSeenEnough) {
  SwitchedLump lump(10_h);
  HouseRun origin(lump.plan);
  origin.run_to(1_h);
  const auto branch = origin.branch();
  const std::size_t before = branch->log().size();
  branch->run_to(10_h, [&] { return branch->log().size() > before; });
  EXPECT_EQ(branch->log().size(), before + 1);
  EXPECT_LT(branch->now(), 10_h);
}

TEST(Branch, RunsInStagesToTheSameEnd) {
  SwitchedLump lump(6_h), other(6_h);
  HouseRun staged(lump.plan), whole(other.plan);
  for (Tick t = 1_h; t <= 6_h; t = t + 1_h) staged.run_to(t);
  whole.go();
  EXPECT_EQ(whole_log(staged), whole_log(whole));
}

TEST(BranchDeath, NeedsAgentsThatCanBeCopied) {
  Lump lump(1_h);
  lump.agent("scripted", [](const Situation&, const Trigger&, Actions&) {});
  HouseRun origin(lump.plan);
  origin.run_to(30_min);
  EXPECT_DEATH(origin.branch(), "agent");
}

}  // namespace
}  // namespace noonhouse
