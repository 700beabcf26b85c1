// SPDX-License-Identifier: Apache-2.0
// Control in stages, at its edges and on random schedules against a clock that looks at every instant of a grid.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/control/staged_control.hpp"
#include "tests/support/control_stage.hpp"
#include "tests/support/scheduled_terms.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;

/// Three fans at 30, 32 and 34, each until 28, 30 and 32.
struct FanStages {
  AgentStage stage{1_h};
  std::vector<std::string> run(const Points& reading, Tick delay = {}, Tick least_on = {}, Tick least_off = {}) {
    StagedControl::Parameters p{"fans", "sensor", stage.moved("reading", reading), {}};
    for (int k = 0; k < 3; ++k) {
      const std::string name = "fan " + std::to_string(k + 1);
      p.stages.push_back(
          {name, stage.channel(name), {30.0 + 2.0 * k - kHair, 28.0 + 2.0 * k + kHair}, delay, least_on, least_off});
    }
    p.words = [](double value) { return number_text(value, 0); };
    stage.agent<StagedControl>(std::move(p));
    stage.run();
    return stage.said_by("fans");
  }
};

TEST(StagedControl, StagesJoinAndLeaveInOrder) {
  EXPECT_THAT(FanStages().run({{0_s, 25}, {1000_s, 35}, {2000_s, 25}}),
              ElementsAre("500 calls for fan 1: 30 at the sensor", "700 calls for fan 2: 32 at the sensor",
                          "900 calls for fan 3: 34 at the sensor", "1300 calls no longer for fan 3: 32 at the sensor",
                          "1500 calls no longer for fan 2: 30 at the sensor",
                          "1700 calls no longer for fan 1: 28 at the sensor"));
}

TEST(StagedControl, AllJoinAndLeaveAtOnceOnALeapWithoutDelays) {
  EXPECT_THAT(
      FanStages().run({{0_s, 20}, {100_s, 20}, {100_s, 40}, {200_s, 40}, {200_s, 20}}),
      ElementsAre("100001ms calls for fan 1: 40 at the sensor", "100001ms calls for fan 2: 40 at the sensor",
                  "100001ms calls for fan 3: 40 at the sensor", "200001ms calls no longer for fan 3: 20 at the sensor",
                  "200001ms calls no longer for fan 2: 20 at the sensor",
                  "200001ms calls no longer for fan 1: 20 at the sensor"));
}

TEST(StagedControl, ADelayGivesTheStagesBeforeItsTime) {
  EXPECT_THAT(FanStages().run({{0_s, 40}, {250_s, 40}, {260_s, 29}}, 100_s),
              ElementsAre("100 calls for fan 1: 40 at the sensor", "200 calls for fan 2: 40 at the sensor",
                          testing::HasSubstr("calls no longer for fan 2: 30 at the sensor")));
}

TEST(StagedControl, AnAskThatBreaksOffBeforeItsDelayStartsAnew) {
  EXPECT_THAT(FanStages().run({{0_s, 30}, {99_s, 30}, {100_s, 28}, {101_s, 30}}, 100_s),
              ElementsAre("201 calls for fan 1: 30 at the sensor"))
      << "broken off at the very instant at which it would have joined";
  EXPECT_THAT(FanStages().run({{0_s, 30}, {99_s, 30}, {100_s, 28.1}, {101_s, 30}}, 100_s),
              ElementsAre("100 calls for fan 1: 28 at the sensor"))
      << "a dip that stays above the second limit does not break it";
}

TEST(StagedControl, AStageThatMustStayKeepsThoseUnderIt) {
  EXPECT_THAT(FanStages().run({{0_s, 32}, {10_s, 20}}, {}, 600_s),
              ElementsAre("0 calls for fan 1: 32 at the sensor", "0 calls for fan 2: 32 at the sensor",
                          "600 calls no longer for fan 2: 20 at the sensor",
                          "600 calls no longer for fan 1: 20 at the sensor"));
}

TEST(StagedControl, IsNamedWhenItChatters) {
  AgentStage stage(1_h);
  const ChannelId demand = stage.channel("demand");
  stage.agent<StagedControl>(
      {"nervous stages", "sensor", stage.moved("reading", {{0_s, 30.0}}), {{"fan", demand, {30.0, 30.0}}}});
  expect_chatter(stage, "nervous stages");
}

/// One schedule, all times in grid steps.
struct StagedSchedule {
  Grid grid;
  std::vector<int> reading;
  bool below = false;
  struct Step {
    int begins = 0, ends = 0, delay = 0, least_on = 0, least_off = 0;
  };
  std::vector<Step> stages;
  ScheduledTerms terms;
};

StagedSchedule random_staged(std::uint64_t seed) {
  Dice dice(seed);
  StagedSchedule s;
  s.grid = random_grid(dice);
  s.reading = random_line(dice, s.grid.steps);
  s.below = dice.chance(0.5);
  int begins = dice.between(4, 9), ends = dice.between(1, 3);
  const auto some = [&](int most) { return dice.chance(0.5) ? 0 : dice.between(1, most); };
  for (int k = dice.between(1, 4); k > 0; --k) {
    s.stages.push_back({begins, ends, some(15), some(20), some(20)});
    if (s.below) s.stages.back().begins = 20 - begins, s.stages.back().ends = 20 - ends;
    begins += dice.between(0, 4);
    ends = std::min(begins - 1, ends + dice.between(0, 4));
  }
  s.terms = random_terms(dice, s.grid, 0.4);
  return s;
}

/// How many stages run, by going through every instant of the grid.
class StagedClockwork {
 public:
  explicit StagedClockwork(const StagedSchedule& s) : s_(s) { reset(); }
  ChannelChanges run() {
    ChannelChanges out;
    int shown = 0;
    for (n_ = 0; n_ <= s_.grid.steps; ++n_) {
      const std::size_t before = at(std::max(0, n_ - 1)), now = at(n_);
      decide(s_.terms.good[before], s_.terms.dead[before]);
      if (s_.terms.change_at(now)) decide(s_.terms.good[now], s_.terms.dead[now]);
      if (running_ != shown) out.emplace_back(s_.grid.unit * n_, shown = running_);
    }
    return out;
  }

 private:
  static std::size_t at(int n) { return static_cast<std::size_t>(n); }
  static constexpr int kLongAgo = -1'000'000, kNotAsking = 1'000'000;
  void reset() {
    running_ = 0;
    asks_since_ = kNotAsking;
    joined_.assign(s_.stages.size(), kLongAgo);
    left_.assign(s_.stages.size(), kLongAgo);
  }
  bool wants(int stage) const {
    const int r = s_.reading[at(n_)];
    return s_.below ? r <= s_.stages[at(stage)].begins : r >= s_.stages[at(stage)].begins;
  }
  bool rests(int stage) const {
    const int r = s_.reading[at(n_)];
    return s_.below ? r >= s_.stages[at(stage)].ends : r <= s_.stages[at(stage)].ends;
  }
  void leave() {
    --running_;
    left_[at(running_)] = n_;
    asks_since_ = kNotAsking;
  }
  void decide(bool good, bool dead) {
    if (dead) return reset();
    const int all = static_cast<int>(s_.stages.size());
    if (!s_.terms.hours.open(n_, s_.grid) || (!good && s_.terms.when_lost == WhenLost::stops)) {
      while (running_ > 0) leave();
      asks_since_ = kNotAsking;
      return;
    }
    const bool calls_anyway = !good && s_.terms.when_lost == WhenLost::runs;
    if (good && running_ < all && asks_since_ != kNotAsking && rests(running_)) asks_since_ = kNotAsking;
    if (!good && !calls_anyway) asks_since_ = kNotAsking;
    bool some_left = false;
    while (good && running_ > 0 && rests(running_ - 1) &&
           n_ - joined_[at(running_ - 1)] >= s_.stages[at(running_ - 1)].least_on) {
      leave();
      some_left = true;
    }
    while (running_ < all) {
      if (asks_since_ == kNotAsking && (calls_anyway || (good && wants(running_)))) asks_since_ = n_;
      if (asks_since_ == kNotAsking || some_left) return;
      const auto& next = s_.stages[at(running_)];
      if (n_ - asks_since_ < next.delay || n_ - left_[at(running_)] < next.least_off) return;
      joined_[at(running_)] = n_;
      ++running_;
      asks_since_ = kNotAsking;
    }
  }

  const StagedSchedule& s_;
  int n_ = 0, running_ = 0, asks_since_ = kNotAsking;
  std::vector<int> joined_, left_;
};

/// Adds up how many stages are called.
class StageCount final : public Agent {
 public:
  struct Parameters {
    std::vector<ChannelId> stages;
    ChannelId count;
  };
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters& p) { return p.stages; }
  explicit StageCount(Parameters parameters) : p_(std::move(parameters)) {}
  std::string_view name() const override { return "count"; }
  void react(const Situation& situation, const Trigger&, Actions& actions) override {
    double count = 0.0;
    for (ChannelId stage : p_.stages) count += situation.value(stage);
    actions.set(p_.count, count, kNoEvent);
  }

 private:
  Parameters p_;
};

ChannelChanges by_engine(const StagedSchedule& s) {
  AgentStage stage(s.grid.unit * s.grid.steps);
  stage.bear(1'000'000);
  const auto span = [&](int steps) { return s.grid.unit * steps; };
  const ChannelId count = stage.channel("count");
  GridMover::Parameters moved{s.grid, {}};
  StagedControl::Parameters p{"control", "sensor", stage.moved("reading", corners(s.grid, s.reading)), {}};
  p.terms = terms_on(stage, s.grid, s.terms, moved);
  stage.agent<GridMover>(std::move(moved));
  StageCount::Parameters counted{{}, count};
  const double hair = s.below ? kHair : -kHair;
  for (const auto& step : s.stages) {
    counted.stages.push_back(stage.channel("stage " + std::to_string(p.stages.size())));
    p.stages.push_back({"stage",
                        counted.stages.back(),
                        {step.begins + hair, step.ends - hair},
                        span(step.delay),
                        span(step.least_on),
                        span(step.least_off)});
  }
  ChannelChanges changes;
  stage.agent<StageCount>(std::move(counted));
  stage.agent<ChannelRecord>({count, &changes});
  stage.agent<StagedControl>(std::move(p));
  stage.run();
  return changes;
}

TEST(StagedSchedules, NoStageIsMissedOrDoubledInFiveThousand) {
  std::size_t changes = 0;
  for (std::uint64_t seed = 0; seed < 5'000; ++seed) {
    const StagedSchedule s = random_staged(seed);
    const ChannelChanges expected = StagedClockwork(s).run();
    changes += expected.size();
    ASSERT_EQ(by_engine(s), expected) << "schedule " << seed << ": " << difference(by_engine(s), expected, s.grid);
  }
  EXPECT_GT(changes, 30'000U) << "the schedules do switch";
}

}  // namespace
}  // namespace noonhouse
