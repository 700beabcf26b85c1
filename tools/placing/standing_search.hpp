// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstdint>
#include <limits>
#include <optional>
#include <vector>

#include "tools/placing/placement_flow.hpp"

namespace noonhouse {

inline constexpr int kNowhere = -1;  ///< instead of a place: the group stands nowhere yet

/// Groups and places as the search sees them: areas in whole square centimetres, so that what fits is exact.
struct StandingTable {
  std::vector<std::int64_t> area_cm2;  ///< of each group, at least 1
  std::vector<std::int64_t> room_cm2;  ///< of each place
  std::vector<int> stands_on;          ///< of each group; kNowhere
  StandingCosts harm;                  ///< infinity wherever the group may not or cannot stand
};

/// Whole groups on places.
struct Standing {
  std::vector<int> place;  ///< of each group
  double harm = 0.0;       ///< summed in the order of the groups
  int moves = 0;           ///< groups that stood on another place
};

/// What a standing must keep to.
struct StandingLimits {
  double most_harm = std::numeric_limits<double>::infinity();
  int most_moves = std::numeric_limits<int>::max();
};

enum class Seek {
  any,           ///< one that keeps to the limits
  least_harm,    ///< one of the least harm, to within kHarmResolution
  fewest_moves,  ///< one of the fewest moves
};

/// Harms closer than this share of the larger of themselves and 1 are not told apart when the least is sought.
inline constexpr double kHarmResolution = 1e-11;

/// A standing within the limits as sought, or nothing if there is none; adds the times it worked out bounds to `nodes`.
/// A group that stands nowhere makes no move by being housed.
///
/// StandingBranch and bound, complete: a node says which places remain open to each group. It is bounded from below by
/// cheapest_spread() of what is not yet settled, (a) by harm, (b) by moves, (c) where the number of moves binds, by
/// harm and a price on each move beyond those allowed, which is a bound at any price that is not negative (Lagrangian
/// relaxation: Fisher 1981, Management Science 27, 1-18). The room of a place is first cut to the largest sum of whole
/// groups that it can hold; places that a bound rules out for a group are closed. A node branches on a group that the
/// spread splits, over the places open to it.
///
/// The time grows exponentially in the worst case, as it must for a problem that contains bin packing.
std::optional<Standing> search_standing(const StandingTable& table, StandingLimits limits, Seek seek, long& nodes);

}  // namespace noonhouse
