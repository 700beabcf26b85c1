// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "tools/placing/standing_search.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {

/// Plants that stay together.
struct PlantGroup {
  std::string name;  ///< as in "the NAME need 1.6 m2"
  double area_m2 = 0.0;
  int stands_on = kNowhere;
  bool stays = false;        ///< must stay where it stands
  std::vector<int> may_use;  ///< places; empty: all
};

struct PlaceRoom {
  std::string name;  ///< as in "the NAME has 0.8 m2"
  double room_m2 = 0.0;
};

/// What standing there costs a group.
struct StandingHarm {
  double harm = 0.0;    ///< not negative, in any one unit; infinity: it cannot stand there
  std::string why_not;  ///< why it cannot, as in "the NAME is too dark for them"
};

struct StandingProblem {
  std::vector<PlantGroup> groups;
  std::vector<PlaceRoom> places;
  std::vector<std::vector<StandingHarm>> harm;  ///< [group][place]
  int most_moves = -1;                          ///< groups that may change place; negative: any number
};

/// Why groups cannot be housed.
enum class UnhousedWhy {
  no_place,          ///< one group has no place that it may use, can stand on and that is large enough
  stay_overfull,     ///< groups that must stay together on one place are too large for it
  not_together,      ///< groups that fit one by one beside what must stay, but not all at once
  more_moves_needed  ///< groups that could all be housed if more of them were moved
};

/// Why one place does not take one group.
struct PlaceRefusal {
  enum class Why { too_small, cannot_stand, may_not_use } why = Why::too_small;
  int place = 0;
  double left_m2 = 0.0;  ///< beside what must stay there
  bool beside_what_stays = false;
};

/// Groups that cannot be housed.
struct Unhoused {
  UnhousedWhy why = UnhousedWhy::no_place;
  /// If it is for want of a place: the one group. Else a set that cannot be housed, beside the groups that must stay
  /// where they are (stay_overfull: by itself), while it can without any one of its groups. In the order of the groups.
  std::vector<int> groups;
  std::vector<PlaceRefusal> refusals;  ///< for want of a place: each place in order
  std::vector<int> usable;             ///< else: places that take at least one of the groups
  double need_m2 = 0.0;                ///< area of the groups
  double room_m2 = 0.0;                ///< left on those places beside what must stay there
  int moves_needed = 0;                ///< more_moves_needed: at least
};

/// Areas and rooms in whole square centimetres (nearest; a group has at least 1 cm2), harm infinite wherever a group
/// may not stand, be it that it stays elsewhere. Checks the problem's sizes and values.
StandingTable standing_table(const StandingProblem& problem);

/// Why a problem that has no solution has none: looks for the plainest reason first, in the order of UnhousedWhy with
/// stay_overfull first. A set is made minimal by deletion filtering (Chinneck & Dravnieks 1991, ORSA Journal on
/// Computing 3, 157-168), smallest groups left out first, so that the set is of few, large groups.
Unhoused why_unhoused(const StandingProblem& problem);

/// The reason in words for a grower, one sentence without a full stop.
std::string unhoused_text(const StandingProblem& problem, const Unhoused& unhoused,
                          UnitSystem system = UnitSystem::metric);

}  // namespace noonhouse
