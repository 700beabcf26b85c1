// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "tools/placing/standing_search.hpp"
#include "tools/placing/unhoused.hpp"

namespace noonhouse {

/// A group that stands elsewhere in the plan than now, or stood nowhere.
struct StandingChange {
  int group = 0;
  int from = kNowhere;
  int to = 0;
  std::optional<double> harm_before;  ///< none if it stood nowhere; infinity if it could not stand where it stood
  double harm_after = 0.0;
};

/// Which place each group should stand on.
struct StandingPlan {
  std::vector<int> place;               ///< of each group
  std::vector<StandingChange> changes;  ///< in the order of the groups
  int moves = 0;             ///< changes from one place to another; a group housed for the first time is none
  double harm_before = 0.0;  ///< of the groups that stand somewhere, as they stand
  double harm_after = 0.0;   ///< of all groups
  long branch_nodes = 0;     ///< of the search: what the answer cost, the same on every machine
};

/// Harms within this of the least count as equal to it, in the unit of the harms.
inline constexpr double kEqualHarm = 1e-9;

/// The standing of least total harm that keeps every group whole and in its allowed places, no place overfull and the
/// limit of moves. Among the standings within kEqualHarm of the least the one with the fewest moves, and among those
/// the one whose places, read in the order of the groups, come first: so the answer is the only one. The least itself
/// is found to 1e-11 of it (kHarmResolution). Areas and rooms are taken to the nearest square centimetre.
///
/// If there is none: which groups cannot be housed, and why. Does not model the shape of groups and places: a group
/// fits where its area does.
///
/// A problem that contradicts its own sizes, or has an area or harm that is negative or no number, is a broken
/// invariant.
std::variant<StandingPlan, Unhoused> plan_standing(const StandingProblem& problem);

}  // namespace noonhouse
