// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "models/control/clock.hpp"
#include "sim/contract/agent_plan.hpp"

namespace noonhouse {

/// What a controller does while its reading is lost.
enum class WhenLost : std::uint8_t {
  holds,  ///< keeps its demand as it is
  stops,  ///< withdraws its demand
  runs    ///< calls fully, within its hours
};

/// What every controller stands under, beside its own limits.
struct ControlTerms {
  DailyWindow hours{};  ///< outside of which it calls nothing
  ChannelId good{};     ///< below one half: the reading is lost; may be none
  WhenLost when_lost = WhenLost::holds;
  ChannelId fault{};  ///< above one half: the controller is dead and calls nothing; may be none

  /// The channels among these and the reading's whose changes a controller wants to hear of at once.
  std::vector<ChannelId> follows(const Input& reading) const;
};

/// Whether a controller is alive and has a reading. Says each change in the log: a failure while it is dead.
class ControlHealth {
 public:
  enum class Turn : std::uint8_t { none, dies, starts };
  /// Looks at the terms' channels. Starts: at the run's start and after a fault (a reboot, nothing is remembered).
  Turn look(const ControlTerms& terms, const Situation& situation, const Trigger& trigger, Actions& actions);
  bool dead() const { return dead_; }
  bool lost() const { return lost_; }
  EventId said() const { return said_; }  ///< its newest entry in the log

 private:
  bool dead_ = false, lost_ = false;
  EventId said_ = kNoEvent;
};

/// The event behind an input's present value: the last one that set its channel; kNoEvent for a node.
EventId cause_of(const Input& input, const Situation& situation);

/// Logs an event that follows from an input where an event set that input, else from what this reaction followed from.
EventId log_because_of(const Input& input, const Situation& situation, EventKind kind, std::string what,
                       Actions& actions);

}  // namespace noonhouse
