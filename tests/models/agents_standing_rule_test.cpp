// SPDX-License-Identifier: Apache-2.0
// Rules that hold while all of their tests do: at their edges, and on random schedules against a clock that looks at
// every instant of a grid.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/control/script.hpp"
#include "models/control/standing_rule.hpp"
#include "tests/support/agent_stage.hpp"
#include "tests/support/channel_record.hpp"
#include "tests/support/scheduled_terms.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

/// A rule on one reading that is high from 30 until 28, in words.
struct RuleStage {
  AgentStage stage{1_h};
  StandingRule::Parameters p{"rule", stage.channel("holds"), {}};
  explicit RuleStage(const Points& reading) {
    p.tests.push_back({stage.moved("reading", reading), {30.0 - kHair, 28.0 + kHair}});
    p.begins = "on";
    p.ends = "off";
  }
  std::vector<std::string> run() {
    stage.agent<StandingRule>(std::move(p));
    stage.run();
    return stage.said_by("rule");
  }
};
const Points kHill{{0_s, 25}, {1000_s, 35}, {2000_s, 25}};  ///< 30 at 500 s, 28 at 1700 s

TEST(StandingRule, HoldsBetweenItsTwoLimits) {
  RuleStage r(kHill);
  EXPECT_THAT(r.run(), ElementsAre("500 on", "1700 off"));
}

TEST(StandingRule, WaitsForItsTestsToHoldLongEnough) {
  RuleStage just(kHill), short_of_it(kHill);
  just.p.after = 1199_s;
  EXPECT_THAT(just.run(), ElementsAre("1699 on", "1700 off"));
  short_of_it.p.after = 1200_s;
  EXPECT_THAT(short_of_it.run(), IsEmpty()) << "the test ends as the wait does";
}

TEST(StandingRule, HoldsOnForItsLeastTimeButNotOutsideItsHours) {
  RuleStage on(kHill), again({{0_s, 30}, {100_s, 28}, {200_s, 30}, {300_s, 28}}), hours(kHill);
  on.p.least_hold = 1500_s;
  EXPECT_THAT(on.run(), ElementsAre("500 on", "2000 off"));
  again.p.least_hold = 250_s;
  EXPECT_THAT(again.run(), ElementsAre("0 on", "300 off")) << "the least time ends while the test holds again";
  hours.p.least_hold = 1500_s;
  hours.p.hours = {Tick{0}, 1900_s};
  EXPECT_THAT(hours.run(), ElementsAre("500 on", "1900 off"));
}

TEST(StandingRule, HoldsOnlyInItsSpells) {
  RuleStage r(kHill), never(kHill), touching(kHill);
  r.p.only_in_spells = never.p.only_in_spells = touching.p.only_in_spells = true;
  r.p.spells = {{100_s, 500_s}, {600_s, 700_s}, {1600_s, 3000_s}};
  EXPECT_THAT(r.run(), ElementsAre("600 on", "700 off", "1600 on", "1700 off"));
  EXPECT_THAT(never.run(), IsEmpty()) << "no spell at all";
  touching.p.spells = {{0_s, 800_s}, {800_s, 1000_s}};
  EXPECT_THAT(touching.run(), ElementsAre("500 on", "1000 off"));
}

TEST(StandingRule, WithoutTestsHoldsByTheClock) {
  RuleStage r(kHill);
  r.p.tests.clear();
  r.p.hours = {10_min, 20_min};
  EXPECT_THAT(r.run(), ElementsAre("600 on", "1200 off"));
}

TEST(StandingRule, NeedsAllOfItsTestsEachWithItsOwnMemory) {
  // Warm from 500 to 1700 s (hysteresis 30/28); damp while the deficit is below 4 until it is above 6.
  RuleStage r(kHill);
  r.p.tests.push_back({r.stage.moved("deficit", {{0_s, 10}, {1000_s, 0}, {2000_s, 10}}), {4.0 + kHair, 6.0 - kHair}});
  EXPECT_THAT(r.run(), ElementsAre("600 on", "1600 off"));
  // The second test begins as the first ends: never both.
  RuleStage apart(kHill);
  apart.p.tests.push_back({apart.stage.moved("other", {{0_s, 0}, {1700_s, 17}}), {17.0, 16.0}});
  EXPECT_THAT(apart.run(), IsEmpty());
}

TEST(StandingRule, FollowsAFlagAtOnceAndBlamesIt) {
  RuleStage r(kHill);
  const ChannelId rain = r.stage.channel("rain");
  r.p.tests = {{rain, {0.5, 0.5}}};
  r.p.kind = EventKind::warning;
  r.stage.agent<Script>({"sky",
                         {{600_s, "rain begins", EventKind::weather, {{rain, 1.0}}},
                          {900_s, "rain ends", EventKind::weather, {{rain, 0.0}}}}});
  EXPECT_THAT(r.run(), ElementsAre("600 on", "900 off"));
  EXPECT_EQ(r.stage.chain_of("on"), "rule on <- sky rain begins");
  EXPECT_EQ(r.stage.chain_of("off"), "rule off <- sky rain ends");
}

TEST(StandingRule, ReadsAStoreAndSeesALeapOverBothOfItsLimits) {
  // 100 kg in the tank; 50 kg poured in at 600 s and taken out again at 900 s.
  AgentStage stage(1_h);
  const ChannelId holds = stage.channel("holds");
  StandingRule::Parameters p{"rule", holds, {{Input(stage.tank, 1), {130.0, 120.0}}}};
  p.begins = "on";
  p.ends = "off";
  stage.pour(600_s, 50.0);
  stage.pour(900_s, -50.0);
  stage.agent<StandingRule>(std::move(p));
  stage.run();
  EXPECT_THAT(stage.said_by("rule"), ElementsAre("600001ms on", "900001ms off"));
}

/// One schedule, all times in grid steps.
struct RuleSchedule {
  Grid grid;
  struct Line {
    std::vector<int> reading;
    int begins = 0, ends = 0;
    bool below() const { return begins < ends; }
  };
  std::vector<Line> lines;
  GridHours hours;
  int after = 0, least_hold = 0;
  bool only_in_spells = false;
  std::vector<std::pair<int, int>> spells;
};

RuleSchedule random_rule(std::uint64_t seed) {
  Dice dice(seed);
  RuleSchedule s;
  s.grid = random_grid(dice);
  for (int k = dice.between(0, 3); k > 0; --k) {
    const int ends = dice.between(2, 12), begins = ends + dice.between(1, 3);
    s.lines.push_back({random_line(dice, s.grid.steps), begins, ends});
    if (dice.chance(0.5)) std::swap(s.lines.back().begins, s.lines.back().ends);
  }
  s.hours = random_hours(dice, s.grid, 0.4);
  s.after = dice.chance(0.5) ? 0 : dice.between(1, 15);
  s.least_hold = dice.chance(0.5) ? 0 : dice.between(1, 30);
  s.only_in_spells = dice.chance(0.4);
  for (int n = dice.between(0, 40); s.only_in_spells && n < s.grid.steps; n += dice.between(0, 40)) {
    const int begins = n;
    n += dice.between(1, 60);
    s.spells.emplace_back(begins, n);
  }
  return s;
}

class RuleClockwork {
 public:
  explicit RuleClockwork(const RuleSchedule& s) : s_(s), held_(s.lines.size(), false) {}
  ChannelChanges run() {
    ChannelChanges out;
    for (int n = 0; n <= s_.grid.steps; ++n) {
      const bool before = holds_;
      look(n);
      if (holds_ != before) out.emplace_back(s_.grid.unit * n, holds_ ? 1.0 : 0.0);
    }
    return out;
  }

 private:
  void look(int n) {
    bool all = may(n);
    const bool in_time = all;
    for (std::size_t i = 0; i < held_.size(); ++i) {
      const auto& line = s_.lines[i];
      const int r = line.reading[static_cast<std::size_t>(n)];
      const bool reached = line.below() ? r <= line.begins : r >= line.begins;
      const bool back = line.below() ? r >= line.ends : r <= line.ends;
      held_[i] = held_[i] ? !back : reached;
      all = all && held_[i];
    }
    for_steps_ = all ? for_steps_ + 1 : 0;  // how many instants in a row, this one among them
    if (!holds_ && all && for_steps_ - 1 >= s_.after) {
      holds_ = true;
      began_ = n;
    } else if (holds_ && (!in_time || (!all && n - began_ >= s_.least_hold))) {
      holds_ = false;
    }
  }
  bool may(int n) const {
    const bool open = s_.hours.open(n, s_.grid);
    if (!open || !s_.only_in_spells) return open;
    for (const auto& [begins, ends] : s_.spells)
      if (begins <= n && n < ends) return true;
    return false;
  }

  const RuleSchedule& s_;
  std::vector<bool> held_;
  bool holds_ = false;
  int began_ = 0, for_steps_ = 0;
};

ChannelChanges by_engine(const RuleSchedule& s) {
  AgentStage stage(s.grid.unit * s.grid.steps);
  stage.bear(1'000'000);
  const auto span = [&](int steps) { return s.grid.unit * steps; };
  StandingRule::Parameters p{"rule", stage.channel("holds"), {}};
  for (const auto& line : s.lines) {
    const double hair = line.below() ? kHair : -kHair;
    const ChannelId reading = stage.moved("reading " + std::to_string(p.tests.size()), corners(s.grid, line.reading));
    p.tests.push_back({reading, {line.begins + hair, line.ends - hair}});
  }
  p.hours = s.hours.window(s.grid);
  p.only_in_spells = s.only_in_spells;
  for (const auto& [begins, ends] : s.spells) p.spells.push_back({span(begins), span(ends)});
  p.after = span(s.after);
  p.least_hold = span(s.least_hold);
  ChannelChanges changes;
  stage.agent<ChannelRecord>({p.holds, &changes});
  stage.agent<StandingRule>(std::move(p));
  stage.run();
  return changes;
}

TEST(RuleSchedules, NoTurnIsMissedOrDoubledInFiveThousand) {
  std::size_t changes = 0;
  for (std::uint64_t seed = 0; seed < 5'000; ++seed) {
    const RuleSchedule s = random_rule(seed);
    const ChannelChanges expected = RuleClockwork(s).run();
    changes += expected.size();
    ASSERT_EQ(by_engine(s), expected) << "schedule " << seed << ": " << difference(by_engine(s), expected, s.grid);
  }
  EXPECT_GT(changes, 20'000U) << "the schedules do turn";
}

}  // namespace
}  // namespace noonhouse
