// SPDX-License-Identifier: Apache-2.0
// Of the search for a standing only.
#pragma once
#include <cstdint>
#include <vector>

#include "tools/placing/standing_search.hpp"

namespace noonhouse {

/// A node: what is still open, and what follows from it.
struct StandingBranch {
  StandingCosts harm;                  ///< infinity where closed
  std::vector<int> settled;            ///< place of each group with one place open; kNowhere
  std::vector<std::int64_t> left_cm2;  ///< beside the settled groups
  std::vector<int> open;               ///< groups not settled
  std::vector<int> may_stay;           ///< groups not settled that may move or stay
  int moves = 0;                       ///< that can no longer be avoided
  double settled_harm = 0.0;           ///< of the settled groups
  double least_harm = 0.0;             ///< of all groups if room were no matter

  bool may_stay_put(const StandingTable& table, int group) const;
};

/// Whether a bound of the harm rules a branch out. It is a sum of doubles in another order than a standing's harm, so
/// it must be above the limit by more than that may round.
bool too_harmful(const StandingLimits& limits, double bound);

/// Works out what follows from the places that are open, and closes those that an open group cannot take any more,
/// until nothing more follows. False if the branch holds no standing within the limits.
bool tighten(StandingBranch& branch, const StandingTable& table, const StandingLimits& limits);

/// For each place the largest sum of areas of whole open groups that it can hold beside the settled ones [cm2]; beyond
/// 100 m2 simply what is left (the list of sums grows with the room, and no less room keeps a bound a bound).
std::vector<std::int64_t> fillable_room(const StandingBranch& branch, const StandingTable& table);

}  // namespace noonhouse
