// SPDX-License-Identifier: Apache-2.0
#include "models/control/thermostat.hpp"

#include "models/control/words.hpp"

namespace noonhouse {

void Thermostat::react(const Situation& situation, const Trigger& trigger, Actions& actions) {
  switch (trigger.kind) {
    case Trigger::Kind::start:
      actions.wake(kWindow, p_.hours.next_edge(situation.now()));
      if (p_.hours.holds(situation.now())) open_hours(situation, actions);
      return;
    case Trigger::Kind::crossing:
      if (trigger.slot == kUpper) upper_reached(situation, actions);
      if (trigger.slot == kLower) lower_reached(situation, actions);
      return;
    case Trigger::Kind::wake:
      if (trigger.slot == kWait) {
        // The least time is over: armed limits fire at once if they are passed.
        if (on_) {
          actions.arm(kLower, {p_.sensor, p_.stops_at_k, Watch::Direction::falling});
        } else {
          actions.arm(kUpper, {p_.sensor, p_.starts_at_k, Watch::Direction::rising});
        }
        return;
      }
      actions.wake(kWindow, p_.hours.next_edge(situation.now()));
      if (p_.hours.holds(situation.now())) {
        open_hours(situation, actions);
      } else {
        actions.disarm(kUpper);
        actions.disarm(kLower);
        actions.wake(kWait, kNever);
        if (on_) switch_to(false, situation, actions, "its hours are over");
      }
      return;
    case Trigger::Kind::channel_changed:
      return;
  }
}

void Thermostat::open_hours(const Situation& situation, Actions& actions) {
  if (has_switched_ && situation.now() - switched_ < p_.least_off) {
    actions.wake(kWait, switched_ + p_.least_off);
  } else {
    actions.arm(kUpper, {p_.sensor, p_.starts_at_k, Watch::Direction::rising});
  }
}

void Thermostat::upper_reached(const Situation& situation, Actions& actions) {
  if (on_) return;
  switch_to(true, situation, actions, nullptr);
  if (p_.least_on.ms > 0) {
    actions.wake(kWait, situation.now() + p_.least_on);
  } else {
    actions.arm(kLower, {p_.sensor, p_.stops_at_k, Watch::Direction::falling});
  }
}

void Thermostat::lower_reached(const Situation& situation, Actions& actions) {
  if (!on_) return;
  switch_to(false, situation, actions, nullptr);
  if (p_.least_off.ms > 0) {
    actions.wake(kWait, situation.now() + p_.least_off);
  } else {
    actions.arm(kUpper, {p_.sensor, p_.starts_at_k, Watch::Direction::rising});
  }
}

void Thermostat::switch_to(bool on, const Situation& situation, Actions& actions, const char* why) {
  on_ = on;
  has_switched_ = true;
  switched_ = situation.now();
  std::string what = on ? "calls for cooling: " : "calls no longer: ";
  what += why != nullptr ? why : celsius_text(situation.value(p_.sensor)) + " at the " + p_.sensor_name;
  const EventId event = actions.log(EventKind::action, std::move(what));
  actions.set(p_.demand, on ? 1.0 : 0.0, event);
}

}  // namespace noonhouse
