// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// A device that is on or off: a vent, a fan, a pump with its nozzles, a shade. It is wanted while any of its
/// callers calls (or a hand has set it), and runs while it is wanted and has all it needs.
/// When it lacks something while wanted, that is a failure, logged with what took it away as its cause.
class Device final : public Agent {
 public:
  struct Need {
    ChannelId permit;     ///< above one half: there
    std::string lacking;  ///< "no water"
  };
  struct Output {
    ChannelId channel;
    double when_on = 1.0, when_off = 0.0;
  };
  struct Parameters {
    std::string name;
    std::string starts = "starts", stops = "stops";  ///< in words, for the log
    std::vector<ChannelId> callers;
    std::vector<Need> needs;
    std::vector<Output> outputs;
  };
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters& p);

  explicit Device(Parameters parameters) : p_(std::move(parameters)) {}
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  const Need* lacking(const Situation& situation) const;
  void put(bool on, EventId because, Actions& actions);

  Parameters p_;
  bool on_ = false;
  bool failing_ = false;
};

}  // namespace noonhouse
