// SPDX-License-Identifier: Apache-2.0
// The spread of groups that may be taken apart, beside every way to deal out their square centimetres.
// What a wrong bound would do: a spread that costs too much is a bound that cuts off the best standing, one that costs
// too little is a slow search. The first shows in NeverCostsMore, both in EqualsEveryWay.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "tests/tools/placing_sample.hpp"
#include "tools/placing/placement_flow.hpp"

namespace noonhouse {
namespace {

using namespace placing_sample;

struct Parts {
  std::vector<std::int64_t> area_cm2, room_cm2;
  StandingCosts cost;
};

/// Deals out one square centimetre after the other. Areas and rooms are whole numbers, so the cheapest spread, a flow,
/// is met by whole square centimetres (Ahuja, Magnanti & Orlin 1993, chapter 9: flows are integral).
double dealt_out(const Parts& parts, std::size_t group, std::int64_t done, std::vector<std::int64_t>& left) {
  if (group == parts.area_cm2.size()) return 0.0;
  if (done == parts.area_cm2[group]) return dealt_out(parts, group + 1, 0, left);
  double least = kInfinity;
  for (std::size_t p = 0; p < left.size(); ++p) {
    if (left[p] == 0 || parts.cost[group][p] == kInfinity) continue;
    --left[p];
    const double rest = dealt_out(parts, group, done + 1, left);
    ++left[p];
    least = std::min(least, rest + parts.cost[group][p] / static_cast<double>(parts.area_cm2[group]));
  }
  return least;
}

/// The cost by the prices of the rooms, as the header states it. At any prices it is a bound (weak duality); at the
/// right ones it is the cost itself (strong duality).
double by_prices(const Parts& parts, const std::vector<double>& room_price) {
  double sum = 0.0;
  for (std::size_t i = 0; i < parts.area_cm2.size(); ++i) {
    double least = kInfinity;
    for (std::size_t p = 0; p < room_price.size(); ++p)
      least = std::min(least, parts.cost[i][p] + room_price[p] * static_cast<double>(parts.area_cm2[i]));
    sum += least;
  }
  for (std::size_t p = 0; p < room_price.size(); ++p) {
    EXPECT_GE(room_price[p], 0.0);
    sum -= room_price[p] * static_cast<double>(parts.room_cm2[p]);
  }
  return sum;
}

TEST(PlacementFlow, EqualsEveryWayToDealOutSquareCentimetres) {
  Random random(4);
  int without = 0;
  for (int round = 0; round < 3000; ++round) {
    Parts parts;
    const int groups = whole(random, 1, 3), places = whole(random, 1, 3), kind = whole(random, 0, 4);
    for (int p = 0; p < places; ++p) parts.room_cm2.push_back(whole(random, 0, 4));
    for (int i = 0; i < groups; ++i) {
      parts.area_cm2.push_back(whole(random, 1, 3));
      parts.cost.emplace_back();
      for (int p = 0; p < places; ++p)
        parts.cost.back().push_back(whole(random, 0, 4) == 0 ? kInfinity : harm_of_kind(random, kind));
    }
    auto left = parts.room_cm2;
    const double expected = dealt_out(parts, 0, 0, left);
    const auto spread = cheapest_spread(parts.area_cm2, parts.room_cm2, parts.cost);
    ASSERT_EQ(spread.has_value(), expected < kInfinity) << "round " << round;
    if (!spread) {
      ++without;
      continue;
    }
    ASSERT_NEAR(spread->cost, expected, 1e-13 * std::max(1.0, expected)) << "round " << round;
    double told = 0.0;
    std::vector<std::int64_t> filled(parts.room_cm2.size(), 0);
    for (std::size_t i = 0; i < parts.area_cm2.size(); ++i) {
      const auto& share = spread->share_cm2[i];
      ASSERT_EQ(std::accumulate(share.begin(), share.end(), std::int64_t{0}), parts.area_cm2[i]);
      for (std::size_t p = 0; p < filled.size(); ++p) {
        ASSERT_GE(share[p], 0);
        filled[p] += share[p];
        if (share[p] > 0)
          told += parts.cost[i][p] * static_cast<double>(share[p]) / static_cast<double>(parts.area_cm2[i]);
      }
    }
    for (std::size_t p = 0; p < filled.size(); ++p) ASSERT_LE(filled[p], parts.room_cm2[p]);
    ASSERT_NEAR(told, expected, 1e-13 * std::max(1.0, expected)) << "the shares are those of the cost";
    ASSERT_NEAR(by_prices(parts, spread->room_price), expected, 1e-13 * std::max(1.0, expected));
  }
  EXPECT_GT(without, 300);
  EXPECT_LT(without, 2700);
}

TEST(PlacementFlow, NeverCostsMoreThanWholeGroups) {
  Random random(5);
  int cheaper = 0, compared = 0;
  for (int round = 0; round < 1000; ++round) {
    StandingProblem problem = random_problem(random, whole(random, 1, 5), whole(random, 1, 4));
    problem.most_moves = -1;
    const EveryStanding every(problem);
    if (!every.any()) continue;
    const StandingTable table = standing_table(problem);
    const auto spread = cheapest_spread(table.area_cm2, table.room_cm2, table.harm);
    ASSERT_TRUE(spread.has_value());
    const double best = every.best().harm;
    ASSERT_LE(spread->cost, best + 1e-12 * std::max(1.0, best));
    if (spread->cost < best - 1e-3) ++cheaper;
    ++compared;
  }
  EXPECT_GT(compared, 300);
  EXPECT_GT(cheaper, 10) << "the sample holds problems in which a group must be split to reach the bound";
}

/// By hand: 3 cm2 at 0 or 6 for all; the cheap place holds 2 of them, so a third of the group costs 6/3.
TEST(PlacementFlow, SplitsAGroupByArea) {
  const auto spread = cheapest_spread({3}, {2, 5}, {{1.0, 7.0}});
  ASSERT_TRUE(spread.has_value());
  EXPECT_NEAR(spread->cost, 1.0 + 6.0 / 3.0, 1e-15);
  EXPECT_EQ(spread->share_cm2, (std::vector<std::vector<std::int64_t>>{{2, 1}}));
}

/// The group that gains least gives way: per square centimetre, not per group (2/1 against 3/3 here).
TEST(PlacementFlow, GivesRoomToWhoGainsMostPerArea) {
  const auto spread = cheapest_spread({1, 3}, {3, 4}, {{0.0, 2.0}, {0.0, 3.0}});
  ASSERT_TRUE(spread.has_value());
  EXPECT_NEAR(spread->cost, 1.0, 1e-15);
  EXPECT_EQ(spread->share_cm2, (std::vector<std::vector<std::int64_t>>{{1, 0}, {2, 1}}));
}

TEST(PlacementFlow, HoldsWhereHarmsAreFarApartAndGroupsMany) {
  // Forty groups of half a square metre, forty places, harms from 1e-6 to 1e9: group i fits only on place i or dearer.
  const std::size_t size = 40;
  StandingCosts cost(size, std::vector<double>(size, 1e9));
  double expected = 0.0;
  for (std::size_t i = 0; i < size; ++i) expected += cost[i][i] = 1e-6 * static_cast<double>(i + 1);
  const auto spread =
      cheapest_spread(std::vector<std::int64_t>(size, 5000), std::vector<std::int64_t>(size, 5000), cost);
  ASSERT_TRUE(spread.has_value());
  EXPECT_NEAR(spread->cost, expected, 1e-15);
}

TEST(PlacementFlow, NoGroupsCostNothingAndNoPlacesHoldNothing) {
  EXPECT_EQ(cheapest_spread({}, {5}, {})->cost, 0.0);
  EXPECT_FALSE(cheapest_spread({1}, {}, {{}}).has_value());
  EXPECT_FALSE(cheapest_spread({1, 1}, {2}, {{0.0}, {kInfinity}}).has_value());
}

}  // namespace
}  // namespace noonhouse
