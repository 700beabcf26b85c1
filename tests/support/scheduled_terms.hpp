// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <algorithm>
#include <array>
#include <vector>

#include "models/control/control_terms.hpp"
#include "tests/support/random_schedule.hpp"

namespace noonhouse {

/// Daily hours in grid steps since midnight: the whole day when both ends meet, over midnight when until comes first.
struct GridHours {
  int from = 0, until = 0;
  bool open(int n, const Grid& grid) const {
    const int clock = n % grid.day;
    if (from == until) return true;
    if (from < until) return from <= clock && clock < until;
    return clock >= from || clock < until;
  }
  DailyWindow window(const Grid& grid) const { return {grid.unit * from, grid.unit * until}; }
};

/// Hours in this share of schedules, else the whole day.
inline GridHours random_hours(Dice& dice, const Grid& grid, double share) {
  if (!dice.chance(share)) return {};
  const int last = std::min(grid.steps, grid.day) - 1;
  const int from = dice.between(0, last);
  return {from, dice.between(0, last)};
}

/// What a controller stands under on a schedule.
struct ScheduledTerms {
  GridHours hours;
  WhenLost when_lost = WhenLost::holds;
  std::vector<bool> good, dead;  ///< from each instant of the grid on
  bool change_at(std::size_t n) const { return n > 0 && (good[n - 1] != good[n] || dead[n - 1] != dead[n]); }
};

inline ScheduledTerms random_terms(Dice& dice, const Grid& grid, double share_with_hours) {
  constexpr std::array kPolicies{WhenLost::holds, WhenLost::stops, WhenLost::runs};
  ScheduledTerms out;
  out.hours = random_hours(dice, grid, share_with_hours);
  out.when_lost = kPolicies[static_cast<std::size_t>(dice.between(0, 2))];
  out.good = random_flag(dice, grid.steps, true);
  out.dead = random_flag(dice, grid.steps, false);
  return out;
}

/// The terms on a stage; their channels are put among those that a mover moves.
inline ControlTerms terms_on(AgentStage& stage, const Grid& grid, const ScheduledTerms& terms,
                             GridMover::Parameters& moved) {
  const ChannelId good = stage.channel("good", terms.good[0] ? 1.0 : 0.0);
  const ChannelId dead = stage.channel("fault", terms.dead[0] ? 1.0 : 0.0);
  moved.moved.emplace_back(good, values(terms.good));
  moved.moved.emplace_back(dead, values(terms.dead));
  return {terms.hours.window(grid), good, terms.when_lost, dead};
}

}  // namespace noonhouse
