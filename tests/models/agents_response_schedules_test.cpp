// SPDX-License-Identifier: Apache-2.0
// The grower's answer to a sign on random schedules, against a clock that looks at every instant of a grid.
#include <gtest/gtest.h>

#include "models/control/grower_response.hpp"
#include "tests/support/agent_stage.hpp"
#include "tests/support/scheduled_terms.hpp"

namespace noonhouse {
namespace {

/// One schedule, all times in grid steps.
struct ResponseSchedule {
  Grid grid;
  std::vector<int> reading;
  int begins = 0, ends = 0;
  std::vector<GridHours> presence;
  int reaction = 0, returns_within = 0, stays = 0;
  bool alarm = false, undo = false;
  std::vector<bool> away;
};

ResponseSchedule random_response(std::uint64_t seed) {
  Dice dice(seed);
  ResponseSchedule s;
  s.grid = random_grid(dice);
  s.reading = random_line(dice, s.grid.steps);
  s.ends = dice.between(2, 14);
  s.begins = s.ends + dice.between(1, 4);
  if (dice.chance(0.5)) std::swap(s.begins, s.ends);
  const int last = std::min(s.grid.steps, s.grid.day) - 1;
  for (int k = dice.between(0, 3); k > 0; --k) {
    const int from = dice.between(0, last), until = std::min(last, from + dice.between(1, 30));
    s.presence.push_back({from, until == from ? from + 1 : until});
    if (dice.chance(0.1)) std::swap(s.presence.back().from, s.presence.back().until);
  }
  s.reaction = dice.chance(0.3) ? 0 : dice.between(1, 12);
  s.returns_within = dice.between(0, 40);
  s.alarm = dice.chance(0.5);
  s.undo = dice.chance(0.5);
  s.away = random_flag(dice, s.grid.steps, false);
  s.stays = dice.chance(0.3) ? 0 : dice.between(1, 40);
  return s;
}

/// What the grower does (1) and undoes (0), by going through every instant of the grid: the sign turns, then somebody
/// goes away or comes back, then the grower acts.
class GrowerClockwork {
 public:
  explicit GrowerClockwork(const ResponseSchedule& s) : s_(s) {}
  ChannelChanges run() {
    for (n_ = 0; n_ <= s_.grid.steps; ++n_) {
      const auto before = static_cast<std::size_t>(std::max(0, n_ - 1)), now = static_cast<std::size_t>(n_);
      look_at_sign(s_.away[before]);
      look(s_.away[now]);
    }
    return deeds_;
  }

 private:
  void look(bool away) {
    if (was_away_ && !away && wants_to_act_) call_if_absent();
    was_away_ = away;
    if (away) seen_ = called_ = kNotYet;
    if (!wants_to_act_ && !wants_to_undo_) return;
    if (!away && seen_ == kNotYet && present()) seen_ = n_;
    const bool ready = seen_ != kNotYet && n_ >= seen_ + s_.reaction;
    const bool arrived = wants_to_act_ && called_ != kNotYet && n_ >= called_ + s_.returns_within;
    if (!ready && !arrived) return;
    deeds_.emplace_back(s_.grid.unit * n_, wants_to_act_ ? 1.0 : 0.0);
    if (arrived) there_until_ = std::max(there_until_, n_ + s_.stays);
    done_ = wants_to_act_;
    wants_to_act_ = wants_to_undo_ = false;
  }
  void look_at_sign(bool away) {
    const int r = s_.reading[static_cast<std::size_t>(n_)];
    const bool below = s_.begins < s_.ends;
    if (!sign_ && (below ? r <= s_.begins : r >= s_.begins)) {
      sign_ = true;
      seen_ = called_ = kNotYet;
      const bool still_done = wants_to_undo_;
      wants_to_undo_ = false;
      wants_to_act_ = !still_done;
      if (wants_to_act_ && !away) call_if_absent();
    } else if (sign_ && (below ? r >= s_.ends : r <= s_.ends)) {
      sign_ = wants_to_act_ = false;
      seen_ = called_ = kNotYet;
      wants_to_undo_ = done_ && s_.undo;
      if (!wants_to_undo_) done_ = false;
    }
  }
  void call_if_absent() {
    if (s_.alarm && !present()) called_ = n_;
  }
  bool present() const {
    if (n_ < there_until_) return true;
    return std::any_of(s_.presence.begin(), s_.presence.end(),
                       [&](const GridHours& hours) { return hours.open(n_, s_.grid); });
  }

  static constexpr int kNotYet = -1;
  const ResponseSchedule& s_;
  ChannelChanges deeds_;
  int n_ = 0, seen_ = kNotYet, called_ = kNotYet, there_until_ = 0;
  bool sign_ = false, wants_to_act_ = false, wants_to_undo_ = false, done_ = false, was_away_ = false;
};

ChannelChanges by_engine(const ResponseSchedule& s) {
  AgentStage stage(s.grid.unit * s.grid.steps);
  stage.bear(1'000'000);
  const auto span = [&](int steps) { return s.grid.unit * steps; };
  const double hair = s.begins < s.ends ? kHair : -kHair;
  const ChannelId away = stage.channel("away", s.away[0] ? 1.0 : 0.0);
  stage.agent<EarlyGridMover>({s.grid, {{away, values(s.away)}}});
  GrowerResponse::Parameters p;
  p.sign = stage.moved("reading", corners(s.grid, s.reading));
  p.limits = {s.begins + hair, s.ends - hair};
  p.sees = "sees";
  p.does = "does";
  p.undoes = "undoes";
  p.undo = s.undo;
  for (const GridHours& hours : s.presence) p.presence.push_back(hours.window(s.grid));
  p.away = away;
  p.reaction = span(s.reaction);
  p.alarm = s.alarm;
  p.returns_within = span(s.returns_within);
  p.stays = span(s.stays);
  p.stays_until = stage.channel("stays until");
  stage.agent<GrowerResponse>(std::move(p));
  stage.run();
  ChannelChanges out;
  for (const auto& entry : stage.log())
    if (entry.what == "does" || entry.what == "undoes") out.emplace_back(entry.when, entry.what == "does" ? 1.0 : 0.0);
  return out;
}

TEST(ResponseSchedules, NoDeedIsMissedOrDoubledInFourThousand) {
  std::size_t deeds = 0;
  for (std::uint64_t seed = 0; seed < 4'000; ++seed) {
    const ResponseSchedule s = random_response(seed);
    const ChannelChanges expected = GrowerClockwork(s).run();
    deeds += expected.size();
    ASSERT_EQ(by_engine(s), expected) << "schedule " << seed << ": " << difference(by_engine(s), expected, s.grid);
  }
  EXPECT_GT(deeds, 5'000U) << "the schedules do ask for deeds";
}

}  // namespace
}  // namespace noonhouse
