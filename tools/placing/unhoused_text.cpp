// SPDX-License-Identifier: Apache-2.0
// Why groups cannot be housed, in words.
#include <fmt/format.h>

#include <algorithm>

#include "sim/core/index.hpp"
#include "tools/placing/unhoused.hpp"

namespace noonhouse {
namespace {

class Words {
 public:
  Words(const StandingProblem& problem, const Unhoused& unhoused, UnitSystem system)
      : problem_(problem), unhoused_(unhoused), system_(system) {}

  std::string sentence() const {
    switch (unhoused_.why) {
      case UnhousedWhy::no_place:
        return without_place();
      case UnhousedWhy::stay_overfull:
        return fmt::format("{} must stay together on {} and need {}: it has {}", groups(), places(unhoused_.usable),
                           area(unhoused_.need_m2, unhoused_.room_m2), area(unhoused_.room_m2, unhoused_.need_m2));
      case UnhousedWhy::not_together:
        return not_together();
      case UnhousedWhy::more_moves_needed:
        return moves_needed();
    }
    return {};
  }

 private:
  std::string plain(double area_m2) const { return format_quantity(area_m2, Dimension::area, system_); }
  /// An area that reads differently from the one it is compared with, even if only square centimetres lie between.
  std::string area(double area_m2, double other_m2) const {
    if (area_m2 == other_m2 || plain(area_m2) != plain(other_m2)) return plain(area_m2);
    std::string fine = quantity_in(area_m2, Dimension::area, system_ == UnitSystem::us ? "in2" : "cm2");
    fine.replace(fine.size() - 1, 1, "²");
    return fine;
  }
  static std::string joined(const std::vector<std::string>& names) {
    std::string out;
    for (std::size_t k = 0; k < names.size(); ++k) {
      if (k > 0) out += k + 1 == names.size() ? " and " : ", ";
      out += names[k];
    }
    return out;
  }
  std::string place(int p) const { return "the " + problem_.places[at(p)].name; }
  std::string places(const std::vector<int>& list) const {
    std::vector<std::string> names;
    for (const int p : list) names.push_back(place(p));
    return joined(names);
  }
  std::string groups() const {
    std::vector<std::string> names;
    for (const int i : unhoused_.groups) names.push_back("the " + problem_.groups[at(i)].name);
    return joined(names);
  }

  std::string refusal(const PlaceRefusal& refused, int group) const {
    if (refused.why == PlaceRefusal::Why::cannot_stand) {
      const std::string& why = problem_.harm[at(group)][at(refused.place)].why_not;
      return why.empty() ? "they cannot stand on " + place(refused.place) : why;
    }
    return fmt::format("{} has {}{}", place(refused.place), area(refused.left_m2, unhoused_.need_m2),
                       refused.beside_what_stays ? " left beside what must stay there" : "");
  }

  std::string without_place() const {
    const int i = unhoused_.groups.front();
    const PlantGroup& group = problem_.groups[at(i)];
    if (group.stays && group.stands_on == kNowhere)
      return fmt::format("{} must stay where they are, but stand nowhere yet", groups());
    if (problem_.places.empty()) return fmt::format("{} need a place, and there is none", groups());
    std::vector<std::string> reasons;
    bool others = false;
    std::string need = plain(unhoused_.need_m2);
    for (const PlaceRefusal& refused : unhoused_.refusals) {
      if (refused.why == PlaceRefusal::Why::too_small && plain(refused.left_m2) == need)
        need = area(unhoused_.need_m2, refused.left_m2);
      if (refused.why == PlaceRefusal::Why::may_not_use)
        others = true;
      else
        reasons.push_back(refusal(refused, i));
    }
    const std::string head =
        group.stays ? fmt::format("{} must stay on {}", groups(), place(group.stands_on)) : groups();
    if (reasons.empty()) return fmt::format("{}{} may not use that place", head, group.stays ? ", but they" : "");
    std::string out = fmt::format("{}{} need {}: {}", head, group.stays ? " and" : "", need, fmt::join(reasons, "; "));
    if (others && !group.stays) out += "; they may use no other place";
    return out;
  }

  std::string not_together() const {
    const bool stays = std::any_of(problem_.groups.begin(), problem_.groups.end(),
                                   [](const PlantGroup& group) { return group.stays; });
    const std::string room =
        fmt::format("{} {} {}{}", places(unhoused_.usable), unhoused_.usable.size() > 1 ? "have" : "has",
                    area(unhoused_.room_m2, unhoused_.need_m2), stays ? " left beside what must stay where it is" : "");
    const std::string head =
        fmt::format("{} cannot be housed together: they need {}", groups(), area(unhoused_.need_m2, unhoused_.room_m2));
    if (unhoused_.need_m2 > unhoused_.room_m2) return fmt::format("{}, {}", head, room);
    return fmt::format("{}; {}, but no way to share the places out keeps every group whole and where it may stand",
                       head, room);
  }

  std::string moves_needed() const {
    const int needed = unhoused_.moves_needed, most = problem_.most_moves;
    return fmt::format("{} cannot be housed{} unless {} {} place, and {} may", groups(),
                       unhoused_.groups.size() > 1 ? " together" : "", needed,
                       needed == 1 ? "group changes" : "groups change",
                       most == 0 ? std::string("none") : fmt::format("at most {}", most));
  }

  const StandingProblem& problem_;
  const Unhoused& unhoused_;
  UnitSystem system_;
};

}  // namespace

std::string unhoused_text(const StandingProblem& problem, const Unhoused& unhoused, UnitSystem system) {
  return Words(problem, unhoused, system).sentence();
}

}  // namespace noonhouse
