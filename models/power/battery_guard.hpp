// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "models/power/charge_scale.hpp"
#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// The battery's protection: sheds loads, least important first, as the charge falls, cuts all off at the last, and
/// gives each back at a higher charge. Some levels shed nothing and only tell that the charge is below them. Levels are
/// shares on the ChargeScale: they move with the battery's temperature and with the cells that work, so they are set
/// anew every quarter of an hour and when the cells change. Shedding is a warning, a cut-off a failure. Each level
/// keeps a gap between its two shares, and the levels follow charge, not voltage, which would rise as soon as a load
/// goes: so none switches to and fro. Cells that are put in again come empty (CellLoss). What the battery has lacked
/// ever since is remembered: where it is most of what is missing, it is the reason for a low charge, and the failure of
/// the cells its cause.
class BatteryGuard final : public Agent {
 public:
  enum class Act { sheds, cuts_off, tells };
  struct Level {
    ChannelId permit;       ///< 1 while its loads may draw; of a level that only tells: while the charge is above it
    double sheds_at = 0.0;  ///< share of what can be used, 0 to 1
    double back_at = 0.0;   ///< above sheds_at
    std::string sheds;      ///< in words, for the log: "the lamps"; of others nothing need be said
    Act act = Act::sheds;
  };
  struct Parameters {
    std::string name;
    Input charge;  ///< [J]
    double capacity_j = 0.0;
    std::vector<Level> levels;  ///< least important first
    ColdCapacity cold{};
    Input temperature{};                    ///< of the battery [K]; may be none: always warm
    ChannelId cells{};                      ///< share that works; may be none: all
    std::vector<std::string> drained_by{};  ///< agents whose standing failure explains a low charge
    ChannelId lost_with_cells{};            ///< what dead cells have taken with them [J] (CellLoss); may be none
  };
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters& p);

  explicit BatteryGuard(Parameters parameters);
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  UsableCharge<double> usable(const Situation& situation) const;
  void look_at_cells(const Situation& situation);
  bool lacks_most_by_cells(const Situation& situation) const;
  void watch_all(const Situation& situation, Actions& actions, EventId cause);
  void watch(std::size_t level, const Situation& situation, Actions& actions);
  void shed(std::size_t level, const Situation& situation, Actions& actions, EventId cause);
  void give_back(std::size_t level, const Situation& situation, Actions& actions);
  std::string why_low(const Situation& situation) const;

  Parameters p_;
  ChargeScale scale_;
  std::vector<bool> is_shed_;
  double cells_ = 1.0;             ///< share that worked at the last look
  double lost_seen_j_ = 0.0;       ///< of lost_with_cells, at the last look
  double dead_hold_j_ = 0.0;       ///< what cells that are dead took with them
  double came_empty_j_ = 0.0;      ///< what has been missing ever since cells came back empty
  EventId emptied_by_ = kNoEvent;  ///< the newest failure of cells
};

}  // namespace noonhouse
