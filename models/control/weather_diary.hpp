// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// Writes what the weather does into the event log, at known instants, and keeps a channel that says whether it
/// rains: its last change is what an empty tank goes back to.
class WeatherDiary final : public Agent {
 public:
  struct Note {
    Tick when;
    std::string what;
    double raining = -1.0;  ///< 1 or 0 to set the channel; below zero leaves it
  };
  struct Parameters {
    std::string name = "weather";
    ChannelId raining;
    std::vector<Note> notes;  ///< in time order
  };
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters&) { return {}; }

  explicit WeatherDiary(Parameters parameters) : p_(std::move(parameters)) {}
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  Parameters p_;
  std::size_t next_ = 0;
};

}  // namespace noonhouse
