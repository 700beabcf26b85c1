// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "sim/contract/ids.hpp"
#include "sim/core/tick.hpp"

namespace noonhouse {

using EventId = std::int64_t;
inline constexpr EventId kNoEvent = -1;

/// What an entry of the event log is about.
enum class EventKind : std::uint8_t { action, weather, people, warning, failure, harm };
std::string_view event_kind_name(EventKind kind);

/// Why an agent is asked to react.
struct Trigger {
  enum class Kind : std::uint8_t { start, wake, crossing, channel_changed };
  Kind kind = Kind::start;
  int slot = 0;              ///< which of the agent's own wakes or watches
  ChannelId channel;         ///< which channel changed
  EventId cause = kNoEvent;  ///< the logged event behind the trigger, if any
};

/// A limit that an agent watches: the potential passes the threshold in the named direction.
/// It fires once, in (t0, t1], located to the run's isolation width, and is then disarmed.
struct Watch {
  enum class Direction : std::uint8_t { rising, falling };
  Input what;
  double threshold = 0.0;
  Direction direction = Direction::rising;
};

/// The const view that an agent decides on.
class Situation {
 public:
  virtual ~Situation() = default;
  virtual Tick now() const = 0;
  virtual double value(const Input& input) const = 0;
  /// The last event that set this channel, or kNoEvent.
  virtual EventId last_change(ChannelId channel) const = 0;
  /// The newest failure that one of the named agents logged last and has not cleared since, or kNoEvent. Whoever asks
  /// names the agents whose failure can matter to it; a name that no agent bears counts for nothing.
  virtual EventId standing_failure(std::span<const std::string> of) const = 0;
};

/// What an agent may do. Every call takes effect at this instant, in the order made.
class Actions {
 public:
  virtual ~Actions() = default;
  /// Logs an event and returns its id. Without `cause` it follows from the last event logged in the same reaction,
  /// and where there is none yet, from the trigger's.
  virtual EventId log(EventKind kind, std::string what, EventId cause) = 0;
  virtual EventId log(EventKind kind, std::string what) = 0;
  /// Says that the failure logged under this agent's name no longer holds.
  virtual void clear_failure() = 0;
  /// Says that a failure which this agent logged earlier holds again, without another entry.
  virtual void hold_failure(EventId earlier) = 0;
  /// Sets a channel owned by agents; agents that follow it are asked at this same instant.
  virtual void set(ChannelId channel, double value, EventId because) = 0;
  /// Says that a channel has its value by another event from now on; agents that follow it are asked. Nothing happens
  /// where it is that event's already.
  virtual void renew(ChannelId channel, EventId because) = 0;
  /// Asks to be woken at `when` (not before now); replaces the wake of the same slot. kNever cancels.
  virtual void wake(int slot, Tick when) = 0;
  /// Arms (or re-arms) a watch; if the condition holds already it fires at this instant. Arming and
  /// disarming also take back a crossing of the same slot that fired but was not delivered yet.
  virtual void arm(int slot, const Watch& watch) = 0;
  virtual void disarm(int slot) = 0;
  /// Moves an amount along one flux of an exchange at once (a watering can, a refill), with its sign.
  virtual void transfer(ExchangeId exchange, int flux, double amount) = 0;
};

/// A controller, a device's protection, a person: reads the situation, acts, says when to be asked again.
/// One instance belongs to one run; what it remembers is run state.
class Agent {
 public:
  virtual ~Agent() = default;
  virtual std::string_view name() const = 0;
  virtual void react(const Situation& situation, const Trigger& trigger, Actions& actions) = 0;
};

/// The const description of an agent, kept with the house; makes a fresh agent for each run.
class AgentPlan {
 public:
  virtual ~AgentPlan() = default;
  virtual std::unique_ptr<Agent> start() const = 0;
  /// A copy of one of this plan's agents with what it remembers, for a run that branches; null: it cannot be copied.
  virtual std::unique_ptr<Agent> copy(const Agent& /*agent*/) const { return nullptr; }
  /// Channels whose change this agent wants to hear of, at the instant it happens.
  virtual std::vector<ChannelId> follows() const { return {}; }
  /// Controllers decide before devices and people act at one instant.
  virtual bool decides() const { return false; }
};

}  // namespace noonhouse
