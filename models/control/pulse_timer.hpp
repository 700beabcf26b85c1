// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "models/control/clock.hpp"
#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// Control by the clock: within its daily hours it calls for `on_for` at the start of every `every`,
/// counted from the hours' opening. Output: a demand channel, 0 or 1.
class PulseTimer final : public Agent {
 public:
  struct Parameters {
    std::string name;
    ChannelId demand;
    DailyWindow hours;
    Tick on_for, every;
  };
  static constexpr bool kDecides = true;
  static std::vector<ChannelId> follows(const Parameters&) { return {}; }

  explicit PulseTimer(Parameters parameters) : p_(std::move(parameters)) {}
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  /// Whether a pulse runs at an instant, and the next instant at which that changes.
  bool calls(Tick now) const;
  Tick next_change(Tick now) const;
  Tick since_opening(Tick now) const;

  Parameters p_;
  bool on_ = false;
};

}  // namespace noonhouse
