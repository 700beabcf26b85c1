// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// The battery's protection: cuts all loads off at one charge and reconnects them at a higher one.
class BatteryGuard final : public Agent {
 public:
  struct Parameters {
    std::string name;
    Input charge;  ///< [J]
    double cut_off_j = 0.0, reconnect_j = 0.0;
    ChannelId permit;  ///< 1 while loads may draw
  };
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters&) { return {}; }

  explicit BatteryGuard(Parameters parameters) : p_(std::move(parameters)) {}
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  enum Slot { kCutOff, kReconnect };
  Parameters p_;
};

}  // namespace noonhouse
