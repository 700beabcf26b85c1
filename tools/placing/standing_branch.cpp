// SPDX-License-Identifier: Apache-2.0
#include "tools/placing/standing_branch.hpp"

#include <algorithm>
#include <boost/dynamic_bitset.hpp>
#include <numeric>

#include "models/properties/constants.hpp"
#include "sim/core/index.hpp"

namespace noonhouse {
namespace {

constexpr double kRounding = 1e-12;  ///< of the larger of the limit and 1
constexpr std::int64_t kLargestCut = 1'000'000;

/// What follows from the places still open; false if nothing can come of the branch.
bool settle(StandingBranch& branch, const StandingTable& table, const StandingLimits& limits) {
  branch.settled.assign(branch.harm.size(), kNowhere);
  branch.left_cm2 = table.room_cm2;
  branch.open.clear();
  branch.may_stay.clear();
  branch.moves = 0;
  branch.settled_harm = branch.least_harm = 0.0;
  for (int i = 0; i < count_of(branch.harm.size()); ++i) {
    const auto& row = branch.harm[at(i)];
    const auto options = std::count_if(row.begin(), row.end(), [](double harm) { return harm < kInfinity; });
    if (options == 0) return false;
    const auto least = std::min_element(row.begin(), row.end());
    branch.least_harm += *least;
    if (table.stands_on[at(i)] != kNowhere && !branch.may_stay_put(table, i)) ++branch.moves;
    if (options > 1) {
      branch.open.push_back(i);
      if (branch.may_stay_put(table, i)) branch.may_stay.push_back(i);
      continue;
    }
    branch.settled[at(i)] = static_cast<int>(least - row.begin());
    branch.settled_harm += *least;
    branch.left_cm2[at(branch.settled[at(i)])] -= table.area_cm2[at(i)];
  }
  return branch.moves <= limits.most_moves && !too_harmful(limits, branch.least_harm) &&
         std::all_of(branch.left_cm2.begin(), branch.left_cm2.end(), [](std::int64_t left) { return left >= 0; });
}

/// Closes places that an open group cannot take any more: too small, a move too many, too much harm even with
/// everyone else at its best. True if it closed any.
bool close_places(StandingBranch& branch, const StandingTable& table, const StandingLimits& limits) {
  bool closed = false;
  for (const int i : branch.open) {
    auto& row = branch.harm[at(i)];
    const double others = branch.least_harm - *std::min_element(row.begin(), row.end());
    const bool must_stay = branch.moves == limits.most_moves && branch.may_stay_put(table, i);
    for (int p = 0; p < count_of(row.size()); ++p) {
      if (row[at(p)] == kInfinity) continue;
      if (table.area_cm2[at(i)] <= branch.left_cm2[at(p)] && !(must_stay && p != table.stands_on[at(i)]) &&
          !too_harmful(limits, others + row[at(p)]))
        continue;
      row[at(p)] = kInfinity;
      closed = true;
    }
  }
  return closed;
}

}  // namespace

bool StandingBranch::may_stay_put(const StandingTable& table, int group) const {
  const int now = table.stands_on[at(group)];
  return now != kNowhere && harm[at(group)][at(now)] < kInfinity;
}

bool too_harmful(const StandingLimits& limits, double bound) {
  return bound > limits.most_harm + kRounding * std::max(1.0, limits.most_harm);
}

bool tighten(StandingBranch& branch, const StandingTable& table, const StandingLimits& limits) {
  do {
    if (!settle(branch, table, limits)) return false;
  } while (close_places(branch, table, limits));
  return true;
}

std::vector<std::int64_t> fillable_room(const StandingBranch& branch, const StandingTable& table) {
  std::vector<std::int64_t> out = branch.left_cm2;
  for (std::size_t p = 0; p < out.size(); ++p) {
    std::vector<std::int64_t> areas;
    for (const int i : branch.open)
      if (branch.harm[at(i)][p] < kInfinity) areas.push_back(table.area_cm2[at(i)]);
    const std::int64_t all = std::accumulate(areas.begin(), areas.end(), std::int64_t{0});
    if (all <= out[p]) {
      out[p] = all;
      continue;
    }
    if (out[p] > kLargestCut) continue;
    boost::dynamic_bitset<> sums(static_cast<std::size_t>(out[p]) + 1);
    sums.set(0);
    for (const std::int64_t area : areas) sums |= sums << static_cast<std::size_t>(area);
    while (!sums.test(static_cast<std::size_t>(out[p]))) --out[p];
  }
  return out;
}

}  // namespace noonhouse
