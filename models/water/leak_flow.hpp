// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// Lets a leak run while the tank has water above the hole: at the rate that a failure sets [kg/s], until no more than
/// what lies below the hole is left, and again once the tank is somewhat fuller. The end is an event, so that no step
/// takes out more than there is; since the event is found a moment late, a leak ends that much before.
class LeakFlow final : public Agent {
 public:
  struct Parameters {
    std::string name;
    Input tank_water;   ///< [kg]
    ChannelId leak;     ///< of the failure [kg/s]
    ChannelId flow;     ///< what runs out [kg/s]
    double left = 0.5;  ///< below the hole [kg]; common practice, no source
    double gap = 2.0;   ///< by so much more it runs again [kg], above zero
  };
  static constexpr bool kDecides = false;
  static constexpr double kFoundWithin_s = 0.1;  ///< several times a run's isolation width
  static std::vector<ChannelId> follows(const Parameters& p) { return {p.leak}; }

  explicit LeakFlow(Parameters parameters) : p_(std::move(parameters)) {}
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  static constexpr int kLevel = 0;  ///< its only watch
  Parameters p_;
  bool dry_ = false;  ///< no water above the hole
};

}  // namespace noonhouse
