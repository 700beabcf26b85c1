// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <algorithm>
#include <array>
#include <cstdlib>
#include <random>
#include <string>
#include <vector>

#include "tests/support/agent_stage.hpp"
#include "tests/support/channel_record.hpp"

namespace noonhouse {

/// Random numbers that are the same with every library: the generator is the standard's, the rest is here.
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : engine_(seed) {}
  /// Whole, from low to high, both included.
  int between(int low, int high) {
    return low + static_cast<int>(engine_() % static_cast<std::uint64_t>(high - low + 1));
  }
  bool chance(double share) { return static_cast<double>(engine_() >> 11U) * 0x1p-53 < share; }

 private:
  std::mt19937_64 engine_;
};

/// A schedule's instants: steps of one unit, which a day is a whole number of.
struct Grid {
  Tick unit{1};
  int steps = 0, day = 0;
};

/// Limits are set this much nearer to the reading than the whole number meant: the crossing then falls within the tick
/// before the grid's, is located to the grid's, and no rounding carries it on. Less than a reading moves in one tick.
constexpr double kHair = 1e-9;

/// From ticks to ten minutes: in short runs every instant is a grid's, long ones go over several days.
inline Grid random_grid(Dice& dice) {
  constexpr std::array<std::int64_t, 6> kUnits{1, 8, 1000, 27'000, 60'000, 600'000};
  const Tick unit{kUnits[static_cast<std::size_t>(dice.between(0, 5))]};
  return {unit, dice.between(100, 400), static_cast<int>(kDay.ms / unit.ms)};
}

/// A line between 0 and 20, whole at every instant of the grid: flat, by one a step, and leaping.
inline std::vector<int> random_line(Dice& dice, int steps) {
  std::vector<int> out{dice.between(0, 20)};
  while (static_cast<int>(out.size()) <= steps) {
    const int slope = dice.chance(0.15) ? dice.between(-20, 20) : dice.between(-1, 1);
    for (int left = std::abs(slope) > 1 ? 1 : dice.between(1, 12); left > 0; --left) {
      const int next = out.back() + slope;
      if (next < 0 || next > 20) break;
      out.push_back(next);
    }
  }
  out.resize(static_cast<std::size_t>(steps) + 1);
  return out;
}

/// A flag that mostly rests and at times is turned over for a while.
inline std::vector<bool> random_flag(Dice& dice, int steps, bool at_rest) {
  std::vector<bool> out(static_cast<std::size_t>(steps) + 1, at_rest);
  if (dice.chance(0.5)) return out;
  bool now = dice.chance(0.1) ? !at_rest : at_rest;
  for (auto&& value : out) {
    if (dice.chance(now == at_rest ? 0.02 : 0.08)) now = !now;
    value = now;
  }
  return out;
}

/// The line for the stage. A move by one goes evenly through its step; a greater one is made in the step's last tick.
/// So every whole number is passed at an instant of the grid.
inline PolylineForcing::Points corners(const Grid& grid, const std::vector<int>& line) {
  PolylineForcing::Points out{{Tick{0}, line.front()}};
  for (std::size_t n = 1; n < line.size(); ++n) {
    const Tick when = grid.unit * static_cast<std::int64_t>(n);
    const int move = line[n] - line[n - 1], next = n + 1 < line.size() ? line[n + 1] - line[n] : 99;
    if (std::abs(move) > 1 && when - out.back().first > Tick{1}) out.emplace_back(when - Tick{1}, line[n - 1]);
    if (std::abs(move) > 1 || move != next) out.emplace_back(when, line[n]);
  }
  return out;
}

/// The values of a flag or a line, one for each instant of the grid.
template <class T>
std::vector<double> values(const std::vector<T>& of) {
  return {of.begin(), of.end()};
}

/// Moves channels on the grid, all that change at one instant together: before the devices and people of that instant
/// (Early), or among them and so after its controllers.
template <bool Early>
class GridMoverOf final : public Agent {
 public:
  struct Parameters {
    Grid grid;
    std::vector<std::pair<ChannelId, std::vector<double>>> moved;
  };
  static constexpr bool kDecides = Early;
  static std::vector<ChannelId> follows(const Parameters&) { return {}; }

  explicit GridMoverOf(Parameters parameters) : p_(std::move(parameters)) {}
  std::string_view name() const override { return "mover"; }
  void react(const Situation&, const Trigger&, Actions& actions) override {
    for (const auto& [channel, value] : p_.moved) actions.set(channel, value[next_], kNoEvent);
    while (++next_ < p_.moved.front().second.size())
      if (changes(next_)) return actions.wake(0, p_.grid.unit * static_cast<std::int64_t>(next_));
  }

 private:
  bool changes(std::size_t n) const {
    return std::any_of(p_.moved.begin(), p_.moved.end(), [n](const auto& m) { return m.second[n] != m.second[n - 1]; });
  }
  Parameters p_;
  std::size_t next_ = 0;
};
using GridMover = GridMoverOf<false>;
using EarlyGridMover = GridMoverOf<true>;

/// Where two lists of changes part, in grid steps.
inline std::string difference(const ChannelChanges& is, const ChannelChanges& should, const Grid& grid) {
  const auto text = [&](const ChannelChanges& list, std::size_t i) {
    if (i >= list.size()) return std::string("nothing");
    const double step = static_cast<double>(list[i].first.ms) / static_cast<double>(grid.unit.ms);
    return std::to_string(list[i].second) + " at step " + std::to_string(step);
  };
  std::size_t i = 0;
  while (i < is.size() && i < should.size() && is[i] == should[i]) ++i;
  return "change " + std::to_string(i) + " is " + text(is, i) + ", should be " + text(should, i);
}

}  // namespace noonhouse
