// SPDX-License-Identifier: Apache-2.0
#include "tools/placing/unhoused.hpp"

#include <algorithm>
#include <cmath>

#include "models/properties/constants.hpp"
#include "sim/core/errors.hpp"
#include "sim/core/index.hpp"

namespace noonhouse {
namespace {

constexpr double kCm2PerM2 = 1e4;

std::int64_t whole_cm2(double area_m2) {
  NOON_ASSERT(area_m2 >= 0.0 && area_m2 < 1e9);
  return std::llround(area_m2 * kCm2PerM2);
}

bool may_use(const PlantGroup& group, int place) {
  if (group.stays && place != group.stands_on) return false;
  return group.may_use.empty() || std::find(group.may_use.begin(), group.may_use.end(), place) != group.may_use.end();
}

/// The problem with the question which of its groups are in it.
class Inquiry {
 public:
  explicit Inquiry(const StandingProblem& problem)
      : problem_(problem), table_(standing_table(problem)), left_cm2_(table_.room_cm2) {
    for (std::size_t i = 0; i < problem.groups.size(); ++i) {
      const PlantGroup& group = problem.groups[i];
      (group.stays ? staying_ : free_).push_back(static_cast<int>(i));
      if (group.stays && group.stands_on != kNowhere) left_cm2_[at(group.stands_on)] -= table_.area_cm2[i];
    }
    if (problem.most_moves >= 0) limits_.most_moves = problem.most_moves;
  }

  Unhoused answer() const {
    for (const int i : staying_)
      if (!has_place(i, table_.room_cm2)) return without_place(i, table_.room_cm2);
    if (!can_house({}, staying_, {})) return set(UnhousedWhy::stay_overfull, {}, staying_, table_.room_cm2, {});
    for (const int i : free_)
      if (!has_place(i, left_cm2_)) return without_place(i, left_cm2_);
    if (!can_house(staying_, free_, {})) return set(UnhousedWhy::not_together, staying_, free_, left_cm2_, {});
    NOON_ASSERT(!can_house(staying_, free_, limits_));
    Unhoused out = set(UnhousedWhy::more_moves_needed, staying_, free_, left_cm2_, limits_);
    const auto fewest = search(staying_, out.groups, {}, Seek::fewest_moves);
    if (fewest) out.moves_needed = fewest->moves;
    return out;
  }

 private:
  bool has_place(int group, const std::vector<std::int64_t>& room_cm2) const {
    for (std::size_t p = 0; p < room_cm2.size(); ++p)
      if (table_.harm[at(group)][p] < kInfinity && table_.area_cm2[at(group)] <= room_cm2[p]) return true;
    return false;
  }

  std::optional<Standing> search(const std::vector<int>& always, const std::vector<int>& groups,
                                 const StandingLimits& limits, Seek seek) const {
    StandingTable part;
    part.room_cm2 = table_.room_cm2;
    for (const auto* list : {&always, &groups})
      for (const int i : *list) {
        part.area_cm2.push_back(table_.area_cm2[at(i)]);
        part.stands_on.push_back(table_.stands_on[at(i)]);
        part.harm.push_back(table_.harm[at(i)]);
      }
    long nodes = 0;
    return search_standing(part, limits, seek, nodes);
  }
  bool can_house(const std::vector<int>& always, const std::vector<int>& groups, const StandingLimits& limits) const {
    return search(always, groups, limits, Seek::any).has_value();
  }

  Unhoused without_place(int group, const std::vector<std::int64_t>& room_cm2) const {
    Unhoused out;
    out.groups = {group};
    out.need_m2 = static_cast<double>(table_.area_cm2[at(group)]) / kCm2PerM2;
    for (int p = 0; p < static_cast<int>(room_cm2.size()); ++p) {
      PlaceRefusal refusal;
      refusal.place = p;
      refusal.left_m2 = static_cast<double>(room_cm2[at(p)]) / kCm2PerM2;
      refusal.beside_what_stays = room_cm2[at(p)] < table_.room_cm2[at(p)];
      if (!may_use(problem_.groups[at(group)], p))
        refusal.why = PlaceRefusal::Why::may_not_use;
      else if (table_.harm[at(group)][at(p)] == kInfinity)
        refusal.why = PlaceRefusal::Why::cannot_stand;
      out.refusals.push_back(refusal);
    }
    return out;
  }

  /// Leaves out one group after the other for as long as the rest cannot be housed.
  Unhoused set(UnhousedWhy why, const std::vector<int>& always, std::vector<int> groups,
               const std::vector<std::int64_t>& room_cm2, const StandingLimits& limits) const {
    std::vector<int> order = groups;
    std::stable_sort(order.begin(), order.end(),
                     [&](int a, int b) { return table_.area_cm2[at(a)] < table_.area_cm2[at(b)]; });
    for (const int left_out : order) {
      std::vector<int> rest = groups;
      rest.erase(std::find(rest.begin(), rest.end(), left_out));
      if (!can_house(always, rest, limits)) groups = std::move(rest);
    }
    Unhoused out;
    out.why = why;
    std::int64_t need = 0, room = 0;
    for (const int i : groups) need += table_.area_cm2[at(i)];
    for (int p = 0; p < static_cast<int>(room_cm2.size()); ++p)
      if (std::any_of(groups.begin(), groups.end(), [&](int i) {
            return table_.harm[at(i)][at(p)] < kInfinity && table_.area_cm2[at(i)] <= room_cm2[at(p)];
          })) {
        out.usable.push_back(p);
        room += room_cm2[at(p)];
      }
    out.groups = std::move(groups);
    out.need_m2 = static_cast<double>(need) / kCm2PerM2;
    out.room_m2 = static_cast<double>(room) / kCm2PerM2;
    return out;
  }

  const StandingProblem& problem_;
  StandingTable table_;
  std::vector<std::int64_t> left_cm2_;  ///< beside what must stay
  std::vector<int> staying_, free_;
  StandingLimits limits_;
};

}  // namespace

StandingTable standing_table(const StandingProblem& problem) {
  const std::size_t groups = problem.groups.size(), places = problem.places.size();
  NOON_ASSERT(problem.harm.size() == groups);
  StandingTable table;
  for (const PlaceRoom& place : problem.places) table.room_cm2.push_back(whole_cm2(place.room_m2));
  for (std::size_t i = 0; i < groups; ++i) {
    const PlantGroup& group = problem.groups[i];
    NOON_ASSERT(problem.harm[i].size() == places && group.stands_on >= kNowhere &&
                group.stands_on < static_cast<int>(places));
    table.area_cm2.push_back(std::max<std::int64_t>(1, whole_cm2(group.area_m2)));
    table.stands_on.push_back(group.stands_on);
    table.harm.emplace_back(places, kInfinity);
    for (std::size_t p = 0; p < places; ++p) {
      NOON_ASSERT(problem.harm[i][p].harm >= 0.0);
      if (may_use(group, static_cast<int>(p))) table.harm[i][p] = problem.harm[i][p].harm;
    }
  }
  return table;
}

Unhoused why_unhoused(const StandingProblem& problem) { return Inquiry(problem).answer(); }

}  // namespace noonhouse
