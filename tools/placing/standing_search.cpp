// SPDX-License-Identifier: Apache-2.0
#include "tools/placing/standing_search.hpp"

#include <algorithm>
#include <boost/dynamic_bitset.hpp>
#include <cmath>
#include <functional>
#include <numeric>
#include <tuple>

namespace noonhouse {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();
/// A bound is a sum of doubles in another order than a standing's harm: it rules out only beyond this share.
constexpr double kRounding = 1e-12;

/// Rooms beyond 100 m2 are not cut: the list of sums grows with the room, and the bound holds without.
constexpr std::int64_t kLargestCut = 1'000'000;

std::size_t at(int i) { return static_cast<std::size_t>(i); }
int count(std::size_t size) { return static_cast<int>(size); }

/// A node: what is still open, and what follows from it.
struct Branch {
  StandingCosts harm;                  ///< infinity where closed
  std::vector<int> settled;            ///< place of each group with one place open; kNowhere
  std::vector<std::int64_t> left_cm2;  ///< beside the settled groups
  std::vector<int> open;               ///< groups not settled
  std::vector<int> may_stay;           ///< groups not settled that may move or stay
  int moves = 0;                       ///< that can no longer be avoided
  double settled_harm = 0.0, least_harm = 0.0;
};

class Search {
 public:
  Search(const StandingTable& table, StandingLimits limits, Seek seek, long& nodes)
      : table_(table), limits_(limits), seek_(seek), nodes_(nodes) {}

  std::optional<Standing> run() {
    Branch root;
    root.harm = table_.harm;
    descend(std::move(root));
    return std::move(best_);
  }

 private:
  void descend(Branch branch);
  bool tighten(Branch& branch) const;
  bool settle(Branch& branch) const;
  bool close_places(Branch& branch) const;
  bool look_at(const Branch& branch, Spread& guide);
  bool look_at_moves(const Branch& branch, const std::vector<std::int64_t>& room, Spread& guide);
  std::vector<std::int64_t> fillable_room(const Branch& branch) const;
  std::optional<Spread> spread(const Branch& branch, const std::vector<std::int64_t>& room, double per_harm,
                               double per_move) const;
  double price_of_a_move(const Branch& branch) const;
  void offer(const Branch& branch, const Spread& spread);
  std::size_t group_to_branch_on(const Branch& branch, const Spread& guide) const;

  bool too_harmful(double bound) const {
    return bound > limits_.most_harm + kRounding * std::max(1.0, limits_.most_harm);
  }
  bool may_stay(const Branch& branch, int group) const {
    const int now = table_.stands_on[at(group)];
    return now != kNowhere && branch.harm[at(group)][at(now)] < kInfinity;
  }
  bool moves_bind(const Branch& branch) const {
    return limits_.most_moves - branch.moves < count(branch.may_stay.size());
  }

  const StandingTable& table_;
  StandingLimits limits_;
  Seek seek_;
  long& nodes_;
  std::optional<Standing> best_;
};

/// Works out what follows from the places still open; false if nothing can come of the branch.
bool Search::settle(Branch& branch) const {
  branch.settled.assign(branch.harm.size(), kNowhere);
  branch.left_cm2 = table_.room_cm2;
  branch.open.clear();
  branch.may_stay.clear();
  branch.moves = 0;
  branch.settled_harm = branch.least_harm = 0.0;
  for (int i = 0; i < count(branch.harm.size()); ++i) {
    const auto& row = branch.harm[at(i)];
    const auto options = std::count_if(row.begin(), row.end(), [](double harm) { return harm < kInfinity; });
    if (options == 0) return false;
    const auto least = std::min_element(row.begin(), row.end());
    branch.least_harm += *least;
    if (table_.stands_on[at(i)] != kNowhere && !may_stay(branch, i)) ++branch.moves;
    if (options > 1) {
      branch.open.push_back(i);
      if (may_stay(branch, i)) branch.may_stay.push_back(i);
      continue;
    }
    branch.settled[at(i)] = static_cast<int>(least - row.begin());
    branch.settled_harm += *least;
    branch.left_cm2[at(branch.settled[at(i)])] -= table_.area_cm2[at(i)];
  }
  return branch.moves <= limits_.most_moves && !too_harmful(branch.least_harm) &&
         std::all_of(branch.left_cm2.begin(), branch.left_cm2.end(), [](std::int64_t left) { return left >= 0; });
}

/// Closes places that an open group cannot take any more: too small, a move too many, too much harm even with
/// everyone else at its best. True if it closed any.
bool Search::close_places(Branch& branch) const {
  bool closed = false;
  for (const int i : branch.open) {
    auto& row = branch.harm[at(i)];
    const double others = branch.least_harm - *std::min_element(row.begin(), row.end());
    const bool must_stay = branch.moves == limits_.most_moves && may_stay(branch, i);
    for (int p = 0; p < count(row.size()); ++p) {
      if (row[at(p)] == kInfinity) continue;
      if (table_.area_cm2[at(i)] <= branch.left_cm2[at(p)] && !(must_stay && p != table_.stands_on[at(i)]) &&
          !too_harmful(others + row[at(p)]))
        continue;
      row[at(p)] = kInfinity;
      closed = true;
    }
  }
  return closed;
}

bool Search::tighten(Branch& branch) const {
  do {
    if (!settle(branch)) return false;
  } while (close_places(branch));
  return true;
}

/// For each place the largest sum of whole open groups that it can hold beside the settled ones.
std::vector<std::int64_t> Search::fillable_room(const Branch& branch) const {
  std::vector<std::int64_t> out = branch.left_cm2;
  for (std::size_t p = 0; p < out.size(); ++p) {
    std::vector<std::int64_t> areas;
    for (const int i : branch.open)
      if (branch.harm[at(i)][p] < kInfinity) areas.push_back(table_.area_cm2[at(i)]);
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

/// The cheapest spread of the open groups at prices on harm and on moves that could be avoided.
std::optional<Spread> Search::spread(const Branch& branch, const std::vector<std::int64_t>& room, double per_harm,
                                     double per_move) const {
  std::vector<std::int64_t> areas;
  StandingCosts cost;
  for (const int i : branch.open) {
    areas.push_back(table_.area_cm2[at(i)]);
    cost.push_back(branch.harm[at(i)]);
    for (int p = 0; p < count(room.size()); ++p) {
      double& price = cost.back()[at(p)];
      if (price == kInfinity) continue;
      price *= per_harm;
      if (may_stay(branch, i) && p != table_.stands_on[at(i)]) price += per_move;
    }
  }
  return cheapest_spread(areas, room, cost);
}

/// What one move more is worth if room were no matter: the gain of the first group that may no longer move.
double Search::price_of_a_move(const Branch& branch) const {
  std::vector<double> gains;
  for (const int i : branch.may_stay) {
    const auto& row = branch.harm[at(i)];
    gains.push_back(row[at(table_.stands_on[at(i)])] - *std::min_element(row.begin(), row.end()));
  }
  std::sort(gains.begin(), gains.end(), std::greater<>());
  return gains[at(limits_.most_moves - branch.moves)];
}

/// Takes the spread as a standing if it splits no group and keeps to the limits; tightens the limits by it.
void Search::offer(const Branch& branch, const Spread& spread) {
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

/// Bounds by harm, then by moves; false if the branch holds nothing within the limits. The guide is the spread of the
/// tightest bound.
bool Search::look_at(const Branch& branch, Spread& guide) {
  const auto room = fillable_room(branch);
  auto by_harm = spread(branch, room, 1.0, 0.0);
  if (!by_harm || too_harmful(branch.settled_harm + by_harm->cost)) return false;
  offer(branch, *by_harm);
  if (branch.open.empty() || too_harmful(branch.settled_harm + by_harm->cost)) return false;
  guide = std::move(*by_harm);
  if (branch.moves > limits_.most_moves) return false;
  return !moves_bind(branch) || look_at_moves(branch, room, guide);
}

bool Search::look_at_moves(const Branch& branch, const std::vector<std::int64_t>& room, Spread& guide) {
  const auto by_moves = spread(branch, room, 0.0, 1.0);
  const auto too_many = [&] {
    return branch.moves + static_cast<int>(std::ceil(by_moves->cost - 1e-9)) > limits_.most_moves;
  };
  if (!by_moves || too_many()) return false;
  offer(branch, *by_moves);
  if (too_many()) return false;
  const double price = price_of_a_move(branch);
  if (price <= 0.0) return true;
  auto by_both = spread(branch, room, 1.0, price);
  if (!by_both) return false;
  offer(branch, *by_both);
  if (branch.moves > limits_.most_moves) return false;
  if (too_harmful(branch.settled_harm + by_both->cost - price * (limits_.most_moves - branch.moves))) return false;
  guide = std::move(*by_both);
  return true;
}

/// Index in branch.open: a split group before a whole one, then one that moves, then the largest.
std::size_t Search::group_to_branch_on(const Branch& branch, const Spread& guide) const {
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

void Search::descend(Branch branch) {
  if (!tighten(branch)) return;
  ++nodes_;
  Spread guide;
  if (!look_at(branch, guide)) return;
  const std::size_t k = group_to_branch_on(branch, guide);
  const std::size_t group = at(branch.open[k]);
  std::vector<std::tuple<std::int64_t, double, std::size_t>> places;  // largest share first, then least harm
  for (std::size_t p = 0; p < table_.room_cm2.size(); ++p)
    if (branch.harm[group][p] < kInfinity) places.emplace_back(-guide.share_cm2[k][p], branch.harm[group][p], p);
  std::sort(places.begin(), places.end());
  for (const auto& [share, harm, p] : places) {
    Branch child;
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
