// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "models/power/cold_capacity.hpp"
#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// The battery's protection: sheds loads, least important first, as the charge falls, cuts all off at the last, and
/// gives each back at a higher charge. Levels are shares of what can be used at the battery's temperature and with the
/// cells that work (UsableCharge): they move with both, so they are set anew every quarter of an hour and when the
/// cells change. Shedding is a warning, a cut-off a failure. Each level keeps a gap between its two shares, and the
/// levels follow charge, not voltage, which would rise as soon as a load goes: so none switches to and fro.
class BatteryGuard final : public Agent {
 public:
  struct Level {
    ChannelId permit;       ///< 1 while its loads may draw
    double sheds_at = 0.0;  ///< share of what can be used, 0 to 1
    double back_at = 0.0;   ///< above sheds_at
    std::string sheds;      ///< in words, for the log: "the lamps"; of a cut-off nothing need be said
    bool is_cut_off = false;
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
  };
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters& p);

  explicit BatteryGuard(Parameters parameters);
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  UsableCharge<double> usable(const Situation& situation) const;
  /// The charge at a share of what can be used [J].
  double charge_at(double share, const Situation& situation) const;
  void watch_all(const Situation& situation, Actions& actions, EventId cause);
  void watch(std::size_t level, const Situation& situation, Actions& actions);
  void shed(std::size_t level, const Situation& situation, Actions& actions, EventId cause);
  void give_back(std::size_t level, const Situation& situation, Actions& actions);
  std::string why_low(const Situation& situation) const;

  Parameters p_;
  std::vector<bool> is_shed_;
};

}  // namespace noonhouse
