// SPDX-License-Identifier: Apache-2.0
// Random problems of standing, and their solution by trying every assignment.
#pragma once
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/uniform_int_distribution.hpp>
#include <boost/random/uniform_real_distribution.hpp>
#include <cmath>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "models/properties/constants.hpp"
#include "sim/core/index.hpp"
#include "tools/placing/standing_plan.hpp"

namespace noonhouse::placing_sample {

using Random = boost::random::mt19937_64;

inline int whole(Random& random, int from, int to) {
  return boost::random::uniform_int_distribution<int>(from, to)(random);
}
inline double real(Random& random, double from, double to) {
  return boost::random::uniform_real_distribution<double>(from, to)(random);
}

/// Harms of one kind a problem: any; few whole values, so that many standings tie; all one; tenths, which no double
/// holds; ties but for parts of the tie's tolerance (multiples of 0.3e-9, so that none lies near 1e-9 itself).
inline double harm_of_kind(Random& random, int kind) {
  switch (kind) {
    case 0:
      return real(random, 0.0, 10.0);
    case 1:
      return whole(random, 0, 2);
    case 2:
      return 0.7;
    case 3:
      return 0.1 * whole(random, 0, 9);
    default:
      return 1.0 + 0.3e-9 * whole(random, 0, 4);
  }
}

/// Rooms of one kind a problem: wide, tight, none in some, a square centimetre beside an area or a sum of two.
inline int room_of_kind_cm2(Random& random, int kind, const std::vector<int>& areas_cm2) {
  const auto some_area = [&] { return areas_cm2[at(whole(random, 0, static_cast<int>(areas_cm2.size()) - 1))]; };
  switch (kind) {
    case 0:
      return whole(random, 3000, 20000);
    case 1:
      return whole(random, 500, 7000);
    case 2:
      return whole(random, 0, 1) * whole(random, 1000, 20000);
    default:
      return some_area() + whole(random, 0, 1) * some_area() + whole(random, -1, 1);
  }
}

inline StandingProblem random_problem(Random& random, int groups, int places) {
  StandingProblem out;
  const int harm_kind = whole(random, 0, 4), room_kind = whole(random, 0, 3), never = whole(random, 0, 2);
  const int stays_in_ten = whole(random, 0, 2) * 2, choosy_in_ten = whole(random, 0, 1) * 3;
  const bool even = whole(random, 0, 4) == 0;
  std::vector<int> areas_cm2;
  for (int i = 0; i < groups; ++i) areas_cm2.push_back(even ? 2000 : whole(random, 500, 6000));
  for (int p = 0; p < places; ++p)
    out.places.push_back({"place " + std::to_string(p), room_of_kind_cm2(random, room_kind, areas_cm2) / 1e4});
  for (int i = 0; i < groups; ++i) {
    PlantGroup group{"group " + std::to_string(i), areas_cm2[at(i)] / 1e4, whole(random, -1, places - 1), false, {}};
    group.stays = whole(random, 0, 9) < stays_in_ten;
    if (whole(random, 0, 9) < choosy_in_ten)
      for (int p = 0; p < places; ++p)
        if (whole(random, 0, 1) == 1) group.may_use.push_back(p);
    out.groups.push_back(group);
    out.harm.emplace_back();
    for (int p = 0; p < places; ++p) {
      const bool cannot = whole(random, 0, 9) < 2 * never;
      out.harm.back().push_back({cannot ? kInfinity : harm_of_kind(random, harm_kind), cannot ? "too dark" : ""});
    }
  }
  out.most_moves = whole(random, -1, groups);
  return out;
}

/// Every assignment that keeps to the rules, tried out one by one; groups outside `in` stand nowhere.
class EveryStanding {
 public:
  EveryStanding(const StandingProblem& problem, std::vector<bool> in, int most_moves)
      : problem_(problem), in_(std::move(in)), most_moves_(most_moves), place_(in_.size(), kNowhere) {
    for (const auto& place : problem.places) left_cm2_.push_back(std::lround(place.room_m2 * 1e4));
    visit(0);
  }
  explicit EveryStanding(const StandingProblem& problem)
      : EveryStanding(problem, std::vector<bool>(problem.groups.size(), true), problem.most_moves) {}

  bool any() const { return !found_.empty(); }
  int fewest_moves() const {
    int fewest = std::numeric_limits<int>::max();
    for (const auto& standing : found_) fewest = std::min(fewest, standing.moves);
    return fewest;
  }
  /// The tie rule word by word. Standings are found in the order of their places.
  Standing best() const {
    double least = kInfinity;
    for (const auto& standing : found_) least = std::min(least, standing.harm);
    const Standing* best = nullptr;
    for (const auto& standing : found_)
      if (standing.harm <= least + 1e-9 && (best == nullptr || standing.moves < best->moves)) best = &standing;
    return *best;
  }

 private:
  void visit(std::size_t i) {
    if (i == in_.size()) return keep();
    if (!in_[i]) return visit(i + 1);
    const PlantGroup& group = problem_.groups[i];
    const long area_cm2 = std::lround(group.area_m2 * 1e4);
    for (int p = 0; p < static_cast<int>(left_cm2_.size()); ++p) {
      bool may = group.may_use.empty();
      for (const int allowed : group.may_use) may = may || allowed == p;
      if (!may || (group.stays && group.stands_on != p) || problem_.harm[i][at(p)].harm == kInfinity) continue;
      if (left_cm2_[at(p)] < area_cm2) continue;
      left_cm2_[at(p)] -= area_cm2;
      place_[i] = p;
      visit(i + 1);
      place_[i] = kNowhere;
      left_cm2_[at(p)] += area_cm2;
    }
  }
  void keep() {
    Standing standing{place_, 0.0, 0};
    for (std::size_t i = 0; i < place_.size(); ++i) {
      if (!in_[i]) continue;
      standing.harm += problem_.harm[i][at(place_[i])].harm;
      const int now = problem_.groups[i].stands_on;
      if (now != kNowhere && now != place_[i]) ++standing.moves;
    }
    if (most_moves_ < 0 || standing.moves <= most_moves_) found_.push_back(standing);
  }

  const StandingProblem& problem_;
  std::vector<bool> in_;
  int most_moves_;
  std::vector<int> place_;
  std::vector<long> left_cm2_;
  std::vector<Standing> found_;
};

}  // namespace noonhouse::placing_sample
