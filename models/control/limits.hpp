// SPDX-License-Identifier: Apache-2.0
#pragma once
#include "sim/contract/agent.hpp"

namespace noonhouse {

/// Two limits on one value, in its own unit: something begins when the value reaches the first and ends when it has
/// come back to the second. Begins above ends: when the value is high; below: when it is low; equal: high.
struct TwoLimits {
  double begins_at = 0.0, ends_at = 0.0;

  bool below() const { return begins_at < ends_at; }
  bool begun(double value) const { return below() ? value <= begins_at : value >= begins_at; }
  bool ended(double value) const { return below() ? value >= ends_at : value <= ends_at; }
  Watch beginning(const Input& what) const { return {what, begins_at, towards(!below())}; }
  Watch ending(const Input& what) const { return {what, ends_at, towards(below())}; }

 private:
  static Watch::Direction towards(bool up) { return up ? Watch::Direction::rising : Watch::Direction::falling; }
};

/// Remembers whether a value is between the reaching of its first limit and its return to the second.
class LimitLatch {
 public:
  bool on() const { return on_; }
  /// Takes notice of the value, or of a crossing of this latch's own watch; true when it turned. A crossing is believed
  /// even if the value is back already: it was there.
  bool look(const TwoLimits& limits, double value, bool crossed) {
    if (!crossed && !(on_ ? limits.ended(value) : limits.begun(value))) return false;
    on_ = !on_;
    return true;
  }
  void arm(int slot, const TwoLimits& limits, const Input& what, Actions& actions) const {
    actions.arm(slot, on_ ? limits.ending(what) : limits.beginning(what));
  }
  void forget() { on_ = false; }

 private:
  bool on_ = false;
};

/// Whether a trigger is the crossing of one slot.
inline bool crossed(const Trigger& trigger, int slot) {
  return trigger.kind == Trigger::Kind::crossing && trigger.slot == slot;
}

}  // namespace noonhouse
