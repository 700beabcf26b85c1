// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <utility>
#include <vector>

#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// What is known to happen and when: sets channels and writes into the log at given instants. A forecast told each
/// morning, a fault that is tried, a storm's beginning and end.
class Script final : public Agent {
 public:
  struct Line {
    Tick when;
    std::string what;  ///< empty: nothing is logged
    EventKind kind = EventKind::weather;
    std::vector<std::pair<ChannelId, double>> sets{};
    int because_of = -1;          ///< place of an earlier line that explains this one; below zero: nothing does
    bool clears_failure = false;  ///< the failure that it logged is over
  };
  struct Parameters {
    std::string name;
    std::vector<Line> lines;  ///< in time order; those before the run's start happen at its start
  };
  static constexpr bool kDecides = true;  // what is given comes before what answers it
  static std::vector<ChannelId> follows(const Parameters&) { return {}; }

  explicit Script(Parameters parameters);
  std::string_view name() const override { return p_.name; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override;

 private:
  Parameters p_;
  std::vector<EventId> said_;  ///< of each line that happened
};

}  // namespace noonhouse
