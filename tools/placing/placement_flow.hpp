// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstdint>
#include <optional>
#include <vector>

namespace noonhouse {

/// [group][place]; infinity where the group cannot stand on the place.
using StandingCosts = std::vector<std::vector<double>>;

/// Groups taken apart and spread over places at the least cost.
struct Spread {
  double cost = 0.0;                                 ///< of all groups, in the unit of the costs
  std::vector<std::vector<std::int64_t>> share_cm2;  ///< [group][place], plan area
  /// What a square centimetre more of each place would save, not negative (the dual prices of the rooms): at these
  /// prices each group stands where cost and price of its area together are least, and
  ///   cost = sum over groups of that least - sum over places of room times price.
  std::vector<double> room_price;
};

/// The cheapest way to fill places with groups that may be taken apart; each square centimetre of group i on place p
/// costs cost[i][p] / area_cm2[i]. Nothing where not even all parts have room.
///
/// This is the transportation problem, solved as a flow of least cost by successive shortest paths (Ahuja, Magnanti &
/// Orlin 1993, Network Flows, chapter 9) from a source over groups and places to a sink. Whole groups are a special
/// case of parts, so no assignment of whole groups costs less: the cost returned bounds them from below, but for the
/// rounding of a sum of doubles. If no group is split, the spread is a cheapest assignment of whole groups.
///
/// What is counted: a group's excess over its cheapest place per square centimetre, rounded down to a whole number of a
/// unit that is a power of two. Rounding down keeps the bound a bound; whole numbers keep the shortest paths' reduced
/// costs exact, which sums of fractions would make slightly negative; the excess instead of the cost itself makes the
/// bound exact to the bit where everyone has its cheapest place. The unit is the finest that fits: the bound is low by
/// no more than 2^-55 of the largest excess per square centimetre on each square centimetre, for up to 60 groups and
/// places.
///
/// Areas are at least 1 cm2, rooms and costs not negative; every row of `cost` is as long as `room_cm2`.
std::optional<Spread> cheapest_spread(const std::vector<std::int64_t>& area_cm2,
                                      const std::vector<std::int64_t>& room_cm2, const StandingCosts& cost);

}  // namespace noonhouse
