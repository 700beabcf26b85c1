// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "models/control/clock.hpp"
#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// On/off control for cooling: calls when its reading reaches starts_at, stops calling when the reading has
/// fallen to stops_at. Each state is kept for its least time; outside its hours it does not call.
/// Continuous: it acts at the instant of crossing, not at polls. Output: a demand channel, 0 or 1.
class Thermostat final : public Agent {
 public:
  struct Parameters {
    std::string name, sensor_name;
    Input sensor;
    ChannelId demand;
    double starts_at_k = 0.0, stops_at_k = 0.0;
    Tick least_on, least_off;
    DailyWindow hours;
  };
  static constexpr bool kDecides = true;
  static std::vector<ChannelId> follows(const Parameters&) { return {}; }

  explicit Thermostat(Parameters parameters) : p_(std::move(parameters)) {}
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  enum Slot { kUpper, kLower, kWindow, kWait };
  void open_hours(const Situation& situation, Actions& actions);
  void upper_reached(const Situation& situation, Actions& actions);
  void lower_reached(const Situation& situation, Actions& actions);
  void switch_to(bool on, const Situation& situation, Actions& actions, const char* why);

  Parameters p_;
  bool on_ = false;
  bool has_switched_ = false;
  Tick switched_;
};

}  // namespace noonhouse
