// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <utility>
#include <vector>

#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// What a tank's guard says of itself in the log, and how grave it is when it withdraws its permit.
struct GuardWords {
  std::string low = "is down to its low mark";
  std::string withdraws = "cuts the pump out";
  std::string gives_back = "is refilled to its restart mark; the pump may run";
  EventKind withdrawal = EventKind::failure;
};

/// One draw level of a tank: withdraws its permit when the tank falls to the low mark and gives it back at the restart
/// mark. Every device that needs the permit draws at that level; a tank has as many guards as levels, each with a
/// permit of its own: the pump's dry-run cut-out (the words as they stand), and reserves kept for others. A reserve is
/// kept on purpose, so its withdrawal is a warning (GuardWords::withdrawal): what fails, if anything, is the device
/// that is called and held back, and it logs that itself with this as its cause. The cause of a low tank, and of one
/// that is filled again, is the last rain or delivery, or that there was none.
class TankGuard final : public Agent {
 public:
  struct Parameters {
    std::string name;
    Input tank_water;  ///< [kg]
    double low_kg = 0.0, restart_kg = 0.0;
    ChannelId permit;   ///< 1 while those who need it may draw
    ChannelId raining;  ///< its last change is the last rain event
    GuardWords words = {};
    std::vector<ChannelId> delivered = {};     ///< of each who delivers: its last change is its last delivery
    std::vector<std::string> drained_by = {};  ///< agents whose standing failure explains a low tank before all else
  };
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters&) { return {}; }

  explicit TankGuard(Parameters parameters) : p_(std::move(parameters)) {}
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  enum Slot { kLow, kRestart };
  EventId last_supply(const Situation& situation) const;
  void withdraw(const Situation& situation, Actions& actions);

  Parameters p_;
};

/// The words of a guard that keeps what is below its mark: "keeps the rest for hand watering: the mist line is held
/// back", from `for_whom` "hand watering" and `held_back` "the mist line is"; a warning, not a failure.
GuardWords reserve_words(const std::string& for_whom, const std::string& held_back);

}  // namespace noonhouse
