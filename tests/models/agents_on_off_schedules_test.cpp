// SPDX-License-Identifier: Apache-2.0
// On/off control on random schedules against a clock that looks at every instant of a grid: no switching is missed,
// doubled or moved.
#include <gtest/gtest.h>

#include "models/control/on_off_control.hpp"
#include "tests/support/agent_stage.hpp"
#include "tests/support/channel_record.hpp"
#include "tests/support/scheduled_terms.hpp"

namespace noonhouse {
namespace {

/// One schedule, all times in grid steps.
struct Schedule {
  Grid grid;
  std::vector<int> reading;
  bool told = false;  ///< by a sensor, at every instant of the grid, as against flowing from one to the next
  bool below = false;
  int begins = 0, ends = 0;
  int least_on = 0, least_off = 0, pulse_on = 0, pulse_off = 0;
  ScheduledTerms terms;
};

Schedule random_schedule(std::uint64_t seed) {
  Dice dice(seed);
  Schedule s;
  s.grid = random_grid(dice);
  s.reading = random_line(dice, s.grid.steps);
  s.told = dice.chance(0.3);
  s.below = dice.chance(0.5);
  s.ends = dice.between(2, 16);
  s.begins = s.ends + dice.between(1, 5);
  if (s.below) std::swap(s.begins, s.ends);
  const auto some = [&](int most) { return dice.chance(0.5) ? 0 : dice.between(1, most); };
  s.least_on = some(40);
  s.least_off = some(40);
  if (dice.chance(0.5)) {
    s.pulse_on = dice.between(1, 12);
    s.pulse_off = dice.between(1, 12);
  }
  s.terms = random_terms(dice, s.grid, 0.6);
  return s;
}

/// The demand's changes by going through every instant of the grid. At one instant the controller decides on what held
/// until then, then sensors, people and devices act (a reading is told or lost, the controller dies), then it decides
/// again.
class Clockwork {
 public:
  explicit Clockwork(const Schedule& s) : s_(s) {}
  ChannelChanges run() {
    ChannelChanges out;
    int shown = 0;
    for (n_ = 0; n_ <= s_.grid.steps; ++n_) {
      const std::size_t before = at(std::max(0, n_ - 1)), now = at(n_);
      decide(before, s_.told ? before : now);
      const bool told = s_.told && s_.reading[before] != s_.reading[now];
      if (told || s_.terms.change_at(now)) decide(now, now);
      if (demand() != shown) out.emplace_back(s_.grid.unit * n_, shown = demand());
    }
    return out;
  }

 private:
  static std::size_t at(int n) { return static_cast<std::size_t>(n); }
  static constexpr int kLongAgo = -1'000'000;
  void decide(std::size_t state_at, std::size_t reading_at) {
    const bool good = s_.terms.good[state_at];
    if (s_.terms.dead[state_at]) {
      on_ = false;
      since_ = kLongAgo;
      return;
    }
    const int r = s_.reading[reading_at];
    const bool asks = s_.below ? r <= s_.begins : r >= s_.begins, rests = s_.below ? r >= s_.ends : r <= s_.ends;
    const bool open = s_.terms.hours.open(n_, s_.grid), long_enough = n_ - since_ >= (on_ ? s_.least_on : s_.least_off);
    bool next = on_;
    if (on_ && long_enough && good && rests) next = false;
    if (!on_ && long_enough && (good ? asks : s_.terms.when_lost == WhenLost::runs)) next = true;
    if (!open || (!good && s_.terms.when_lost == WhenLost::stops)) next = false;
    if (next != on_) since_ = n_;
    on_ = next;
  }
  int demand() const {
    if (!on_ || s_.pulse_on == 0) return on_ ? 1 : 0;
    return (n_ - since_) % (s_.pulse_on + s_.pulse_off) < s_.pulse_on ? 1 : 0;
  }

  const Schedule& s_;
  int n_ = 0;
  bool on_ = false;
  int since_ = kLongAgo;
};

ChannelChanges by_engine(const Schedule& s) {
  AgentStage stage(s.grid.unit * s.grid.steps);
  stage.bear(1'000'000);
  const auto span = [&](int steps) { return s.grid.unit * steps; };
  const ChannelId reading =
      s.told ? stage.channel("told", s.reading[0]) : stage.moved("reading", corners(s.grid, s.reading));
  const ChannelId demand = stage.channel("demand");
  GridMover::Parameters moved{s.grid, {}};
  const ControlTerms terms = terms_on(stage, s.grid, s.terms, moved);
  if (s.told) moved.moved.emplace_back(reading, values(s.reading));
  stage.agent<GridMover>(std::move(moved));
  ChannelChanges changes;
  stage.agent<ChannelRecord>({demand, &changes});
  const double hair = s.below ? kHair : -kHair;  // limits a hair nearer, so that each is passed on the grid
  stage.agent<OnOffControl>({"control",
                             "sensor",
                             reading,
                             demand,
                             {s.begins + hair, s.ends - hair},
                             span(s.least_on),
                             span(s.least_off),
                             terms,
                             span(s.pulse_on),
                             span(s.pulse_off)});
  stage.run();
  return changes;
}

TEST(OnOffSchedules, NoSwitchingIsMissedOrDoubledInTenThousand) {
  std::size_t switchings = 0;
  for (std::uint64_t seed = 0; seed < 10'000; ++seed) {
    const Schedule s = random_schedule(seed);
    const ChannelChanges expected = Clockwork(s).run();
    switchings += expected.size();
    ASSERT_EQ(by_engine(s), expected) << "schedule " << seed << ": " << difference(by_engine(s), expected, s.grid);
  }
  EXPECT_GT(switchings, 50'000U) << "the schedules do switch";
}

}  // namespace
}  // namespace noonhouse
