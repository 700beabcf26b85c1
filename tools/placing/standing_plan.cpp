// SPDX-License-Identifier: Apache-2.0
#include "tools/placing/standing_plan.hpp"

#include <algorithm>

#include "models/properties/constants.hpp"

namespace noonhouse {
namespace {

void keep_only(StandingTable& table, std::size_t group, int place) {
  auto& row = table.harm[group];
  const double harm = row[static_cast<std::size_t>(place)];
  std::fill(row.begin(), row.end(), kInfinity);
  row[static_cast<std::size_t>(place)] = harm;
}

/// The standing within the limits whose places come first: group by group, the first place that leaves any standing.
Standing first_in_order(StandingTable table, StandingLimits limits, Standing known, long& nodes) {
  for (std::size_t i = 0; i < known.place.size(); ++i) {
    for (int p = 0; p < known.place[i]; ++p) {
      if (table.harm[i][static_cast<std::size_t>(p)] == kInfinity) continue;
      StandingTable narrowed = table;
      keep_only(narrowed, i, p);
      if (auto found = search_standing(narrowed, limits, Seek::any, nodes)) {
        known = std::move(*found);
        break;
      }
    }
    keep_only(table, i, known.place[i]);
  }
  return known;
}

StandingPlan told(const StandingProblem& problem, Standing standing, long nodes) {
  StandingPlan plan{std::move(standing.place), {}, standing.moves, 0.0, standing.harm, nodes};
  for (std::size_t i = 0; i < plan.place.size(); ++i) {
    const int from = problem.groups[i].stands_on, to = plan.place[i];
    StandingChange change{static_cast<int>(i), from, to, std::nullopt,
                          problem.harm[i][static_cast<std::size_t>(to)].harm};
    if (from != kNowhere) {
      change.harm_before = problem.harm[i][static_cast<std::size_t>(from)].harm;
      plan.harm_before += *change.harm_before;
    }
    if (from != to) plan.changes.push_back(change);
  }
  return plan;
}

}  // namespace

std::variant<StandingPlan, Unhoused> plan_standing(const StandingProblem& problem) {
  const StandingTable table = standing_table(problem);
  StandingLimits limits;
  if (problem.most_moves >= 0) limits.most_moves = problem.most_moves;
  long nodes = 0;
  auto best = search_standing(table, limits, Seek::least_harm, nodes);
  if (!best) return why_unhoused(problem);
  limits.most_harm = best->harm + kEqualHarm;
  limits.most_moves = best->moves - 1;
  if (auto fewer = search_standing(table, limits, Seek::fewest_moves, nodes)) best = std::move(fewer);
  limits.most_moves = best->moves;
  Standing first = first_in_order(table, limits, std::move(*best), nodes);
  return told(problem, std::move(first), nodes);
}

}  // namespace noonhouse
