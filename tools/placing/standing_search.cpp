// SPDX-License-Identifier: Apache-2.0
#include "tools/placing/standing_search.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <tuple>

#include "models/properties/constants.hpp"
#include "sim/core/index.hpp"
#include "tools/placing/standing_branch.hpp"

namespace noonhouse {
namespace {

enum class Look {
  nothing,  ///< the branch holds nothing within the limits, or no more than was found
  again,    ///< places were closed: what follows from that comes first
  branch
};

class Search {
 public:
  Search(const StandingTable& table, StandingLimits limits, Seek seek, long& nodes)
      : table_(table), limits_(limits), seek_(seek), nodes_(nodes) {}

  std::optional<Standing> run() {
    StandingBranch root;
    root.harm = table_.harm;
    descend(std::move(root));
    return std::move(best_);
  }

 private:
  void descend(StandingBranch branch);
  Look look_at(StandingBranch& branch, Spread& guide);
  Look look_at_moves(StandingBranch& branch, const std::vector<std::int64_t>& room, Spread& guide);
  bool close_dear(StandingBranch& branch, const std::vector<std::int64_t>& room, const Spread& spread,
                  double per_move) const;
  std::optional<Spread> spread(const StandingBranch& branch, const std::vector<std::int64_t>& room, double per_harm,
                               double per_move) const;
  double price_of_a_move(const StandingBranch& branch) const;
  void offer(const StandingBranch& branch, const Spread& spread);
  std::size_t group_to_branch_on(const StandingBranch& branch, const Spread& guide) const;

  bool too_harmful(double bound) const { return noonhouse::too_harmful(limits_, bound); }
  bool may_stay(const StandingBranch& branch, int group) const { return branch.may_stay_put(table_, group); }
  bool moves_bind(const StandingBranch& branch) const {
    return limits_.most_moves - branch.moves < count_of(branch.may_stay.size());
  }

  const StandingTable& table_;
  StandingLimits limits_;
  Seek seek_;
  long& nodes_;
  std::optional<Standing> best_;
};

/// The cheapest spread of the open groups at prices on harm and on moves that could be avoided.
std::optional<Spread> Search::spread(const StandingBranch& branch, const std::vector<std::int64_t>& room,
                                     double per_harm, double per_move) const {
  std::vector<std::int64_t> areas;
  StandingCosts cost;
  for (const int i : branch.open) {
    areas.push_back(table_.area_cm2[at(i)]);
    cost.push_back(branch.harm[at(i)]);
    for (int p = 0; p < count_of(room.size()); ++p) {
      double& price = cost.back()[at(p)];
      if (price == kInfinity) continue;
      price *= per_harm;
      if (may_stay(branch, i) && p != table_.stands_on[at(i)]) price += per_move;
    }
  }
  return cheapest_spread(areas, room, cost);
}

/// What one move more is worth if room were no matter: the gain of the first group that may no longer move.
double Search::price_of_a_move(const StandingBranch& branch) const {
  std::vector<double> gains;
  for (const int i : branch.may_stay) {
    const auto& row = branch.harm[at(i)];
    gains.push_back(row[at(table_.stands_on[at(i)])] - *std::min_element(row.begin(), row.end()));
  }
  std::sort(gains.begin(), gains.end(), std::greater<>());
  return gains[at(limits_.most_moves - branch.moves)];
}

/// Takes the spread as a standing if it splits no group and keeps to the limits; tightens the limits by it.
void Search::offer(const StandingBranch& branch, const Spread& spread) {
  Standing found;
  found.place = branch.settled;
  for (std::size_t k = 0; k < branch.open.size(); ++k) {
    const auto& share = spread.share_cm2[k];
    const auto most = std::max_element(share.begin(), share.end());
    const int group = branch.open[k];
    if (*most != table_.area_cm2[at(group)]) return;
    found.place[at(group)] = static_cast<int>(most - share.begin());
  }
  for (std::size_t i = 0; i < found.place.size(); ++i) {
    found.harm += table_.harm[i][at(found.place[i])];
    if (table_.stands_on[i] != kNowhere && table_.stands_on[i] != found.place[i]) ++found.moves;
  }
  if (found.harm > limits_.most_harm || found.moves > limits_.most_moves) return;
  if (seek_ == Seek::least_harm) limits_.most_harm = found.harm - kHarmResolution * std::max(1.0, found.harm);
  if (seek_ == Seek::fewest_moves) limits_.most_moves = found.moves - 1;
  if (seek_ == Seek::any) limits_.most_moves = -1;  // nothing keeps to that: the search ends
  best_ = std::move(found);
}

/// Closes places that an open group cannot take within the limit of harm at the spread's prices of room. The bound is
/// that of cheapest_spread() with the group's least replaced by what it pays on the place (fixing by reduced cost).
bool Search::close_dear(StandingBranch& branch, const std::vector<std::int64_t>& room, const Spread& spread,
                        double per_move) const {
  if (limits_.most_harm == kInfinity) return false;
  double bound = branch.settled_harm;
  if (per_move > 0.0) bound -= per_move * (limits_.most_moves - branch.moves);
  for (std::size_t p = 0; p < room.size(); ++p) bound -= spread.room_price[p] * static_cast<double>(room[p]);
  std::vector<std::vector<double>> pays;
  std::vector<double> least;
  for (const int i : branch.open) {
    pays.push_back(branch.harm[at(i)]);
    for (std::size_t p = 0; p < room.size(); ++p) {
      pays.back()[p] += spread.room_price[p] * static_cast<double>(table_.area_cm2[at(i)]);
      if (may_stay(branch, i) && p != at(table_.stands_on[at(i)])) pays.back()[p] += per_move;
    }
    least.push_back(*std::min_element(pays.back().begin(), pays.back().end()));
    bound += least.back();
  }
  bool closed = false;
  for (std::size_t k = 0; k < pays.size(); ++k)
    for (std::size_t p = 0; p < room.size(); ++p) {
      if (pays[k][p] == kInfinity || !too_harmful(bound - least[k] + pays[k][p])) continue;
      branch.harm[at(branch.open[k])][p] = kInfinity;
      closed = true;
    }
  return closed;
}

/// Bounds by harm, then by moves. The guide is the spread of the tightest bound.
Look Search::look_at(StandingBranch& branch, Spread& guide) {
  const auto room = fillable_room(branch, table_);
  auto by_harm = spread(branch, room, 1.0, 0.0);
  if (!by_harm || too_harmful(branch.settled_harm + by_harm->cost)) return Look::nothing;
  offer(branch, *by_harm);
  if (branch.open.empty() || branch.moves > limits_.most_moves) return Look::nothing;
  if (too_harmful(branch.settled_harm + by_harm->cost)) return Look::nothing;
  if (close_dear(branch, room, *by_harm, 0.0)) return Look::again;
  guide = std::move(*by_harm);
  return moves_bind(branch) ? look_at_moves(branch, room, guide) : Look::branch;
}

Look Search::look_at_moves(StandingBranch& branch, const std::vector<std::int64_t>& room, Spread& guide) {
  const auto by_moves = spread(branch, room, 0.0, 1.0);
  const auto too_many = [&] {
    return branch.moves + static_cast<int>(std::ceil(by_moves->cost - 1e-9)) > limits_.most_moves;
  };
  if (!by_moves || too_many()) return Look::nothing;
  offer(branch, *by_moves);
  if (too_many()) return Look::nothing;
  const double price = price_of_a_move(branch);
  if (price <= 0.0) return Look::branch;
  auto by_both = spread(branch, room, 1.0, price);
  if (!by_both) return Look::nothing;
  offer(branch, *by_both);
  if (branch.moves > limits_.most_moves) return Look::nothing;
  const double given_back = price * (limits_.most_moves - branch.moves);
  if (too_harmful(branch.settled_harm + by_both->cost - given_back)) return Look::nothing;
  if (close_dear(branch, room, *by_both, price)) return Look::again;
  guide = std::move(*by_both);
  return Look::branch;
}

/// Index in branch.open: a split group before a whole one, then one that moves, then the largest.
std::size_t Search::group_to_branch_on(const StandingBranch& branch, const Spread& guide) const {
  std::size_t best = 0;
  std::tuple<bool, bool, std::int64_t> best_rank{};
  for (std::size_t k = 0; k < branch.open.size(); ++k) {
    const int group = branch.open[k];
    const std::int64_t area = table_.area_cm2[at(group)];
    const auto& share = guide.share_cm2[k];
    const bool split = *std::max_element(share.begin(), share.end()) < area;
    const bool moves = may_stay(branch, group) && share[at(table_.stands_on[at(group)])] < area;
    const std::tuple rank{split, moves, area};
    if (rank <= best_rank) continue;
    best_rank = rank;
    best = k;
  }
  return best;
}

void Search::descend(StandingBranch branch) {
  Spread guide;
  Look look = Look::again;
  while (look == Look::again) {
    if (!tighten(branch, table_, limits_)) return;
    ++nodes_;
    look = look_at(branch, guide);
  }
  if (look == Look::nothing) return;
  const std::size_t k = group_to_branch_on(branch, guide);
  const std::size_t group = at(branch.open[k]);
  std::vector<std::tuple<std::int64_t, double, std::size_t>> places;  // largest share first, then least harm
  for (std::size_t p = 0; p < table_.room_cm2.size(); ++p)
    if (branch.harm[group][p] < kInfinity) places.emplace_back(-guide.share_cm2[k][p], branch.harm[group][p], p);
  std::sort(places.begin(), places.end());
  for (const auto& [share, harm, p] : places) {
    StandingBranch child;
    child.harm = branch.harm;
    std::fill(child.harm[group].begin(), child.harm[group].end(), kInfinity);
    child.harm[group][p] = harm;
    descend(std::move(child));
  }
}

}  // namespace

std::optional<Standing> search_standing(const StandingTable& table, StandingLimits limits, Seek seek, long& nodes) {
  return Search(table, limits, seek, nodes).run();
}

}  // namespace noonhouse
