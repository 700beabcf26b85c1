// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// The pump's low-level cut-out: withdraws its permit when the tank falls to the low mark and gives it back at the
/// restart mark. The cause of a low tank is the last rain, or that there was none.
class TankGuard final : public Agent {
 public:
  struct Parameters {
    std::string name;
    Input tank_water;  ///< [kg]
    double low_kg = 0.0, restart_kg = 0.0;
    ChannelId permit;   ///< 1 while the pump may draw
    ChannelId raining;  ///< its last change is the last rain event
  };
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters&) { return {}; }

  explicit TankGuard(Parameters parameters) : p_(std::move(parameters)) {}
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  enum Slot { kLow, kRestart };
  Parameters p_;
};

}  // namespace noonhouse
