// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <span>
#include <string>

#include "sim/contract/agent.hpp"
#include "sim/contract/ids.hpp"
#include "sim/core/tick.hpp"

namespace noonhouse {

/// One line of the event log.
struct LogEntry {
  EventId id = 0;
  EventId cause = kNoEvent;
  Tick when;
  EventKind kind = EventKind::action;
  std::string subject;
  std::string what;
};

/// A finished stretch of the run, (begin, end], with everything in it readable at any instant.
/// Reading never changes the run: observers get it const, and it interpolates into its own scratch.
class Stretch {
 public:
  virtual ~Stretch() = default;
  virtual Tick begin() const = 0;
  virtual Tick end() const = 0;
  /// All potentials (nodes' first, then channels') at an instant in [begin, end]; valid until the next call.
  virtual std::span<const double> potentials_at(Tick when) const = 0;
  /// What each flux has carried since the start of the run, at an instant in [begin, end] [J, kg].
  virtual std::span<const double> carried_at(Tick when) const = 0;
};

/// Sees every stretch and every event in order; cannot steer.
class Observer {
 public:
  virtual ~Observer() = default;
  /// The run's start, once every agent has reacted to it (their events come before): begin() == end() == 0.
  virtual void see_start(const Stretch& stretch) = 0;
  virtual void see_stretch(const Stretch& stretch) = 0;
  virtual void see_event(const LogEntry&) {}
};

}  // namespace noonhouse
