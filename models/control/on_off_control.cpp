// SPDX-License-Identifier: Apache-2.0
#include "models/control/on_off_control.hpp"

namespace noonhouse {

void OnOffControl::react(const Situation& situation, const Trigger& trigger, Actions& actions) {
  const auto turn = health_.look(p_.terms, situation, trigger, actions);
  if (turn == ControlHealth::Turn::dies) die(actions);
  if (health_.dead()) return;
  const Tick now = situation.now();
  decide(situation, crossed(trigger, kLimit), actions);
  // A pulse's end is heard only if the call outlived this instant: ending it takes back the pulse's wake.
  if (on_ && trigger.kind == Trigger::Kind::wake && trigger.slot == kPulse) pulse(now, actions);
  look_ahead(now, actions);
}

/// Dead: calls nothing, waits for nothing and remembers nothing.
void OnOffControl::die(Actions& actions) {
  for (int slot : {kWindow, kWait, kPulse}) actions.wake(slot, kNever);
  actions.disarm(kLimit);
  on_ = in_pulse_ = has_switched_ = false;
  actions.set(p_.demand, 0.0, health_.said());
}

/// What ends a call at once and lets none begin.
bool OnOffControl::must_end(Tick now) const {
  return !p_.terms.hours.holds(now) || (health_.lost() && p_.terms.when_lost == WhenLost::stops);
}

bool OnOffControl::may_switch(Tick now) const {
  return !has_switched_ || now - switched_ >= (on_ ? p_.least_on : p_.least_off);
}

void OnOffControl::decide(const Situation& situation, bool reached, Actions& actions) {
  const Tick now = situation.now();
  if (must_end(now)) {
    const char* why = p_.terms.hours.holds(now) ? "it has no reading" : "its hours are over";
    if (on_) switch_to(false, situation, actions, why);
    return;
  }
  if (!may_switch(now)) return;
  if (health_.lost()) {
    if (!on_ && p_.terms.when_lost == WhenLost::runs) switch_to(true, situation, actions, "it has no reading");
    return;
  }
  const double reading = situation.value(p_.sensor);
  if (reached || (on_ ? p_.limits.ended(reading) : p_.limits.begun(reading)))
    switch_to(!on_, situation, actions, nullptr);
}

void OnOffControl::switch_to(bool on, const Situation& situation, Actions& actions, const char* why) {
  on_ = in_pulse_ = on;
  has_switched_ = true;
  switched_ = situation.now();
  const std::string what = on ? "calls for " + p_.calls_for + ": " : "calls no longer: ";
  call_ = why != nullptr
              ? actions.log(EventKind::action, what + why)
              : log_because_of(p_.sensor, situation, EventKind::action,
                               what + p_.words(situation.value(p_.sensor)) + " at the " + p_.sensor_name, actions);
  actions.set(p_.demand, on ? 1.0 : 0.0, call_);
  const bool pulses = on && p_.pulse_on.ms > 0 && p_.pulse_off.ms > 0;
  actions.wake(kPulse, pulses ? switched_ + p_.pulse_on : kNever);
}

void OnOffControl::pulse(Tick now, Actions& actions) {
  in_pulse_ = !in_pulse_;
  actions.set(p_.demand, in_pulse_ ? 1.0 : 0.0, call_);
  actions.wake(kPulse, now + (in_pulse_ ? p_.pulse_on : p_.pulse_off));
}

/// Asks to be told of whatever can change its mind next.
void OnOffControl::look_ahead(Tick now, Actions& actions) {
  actions.wake(kWindow, p_.terms.hours.next_edge(now));
  const bool may = may_switch(now);
  actions.wake(kWait, may ? kNever : switched_ + (on_ ? p_.least_on : p_.least_off));
  if (!may || health_.lost() || must_end(now)) {
    actions.disarm(kLimit);
  } else {
    actions.arm(kLimit, on_ ? p_.limits.ending(p_.sensor) : p_.limits.beginning(p_.sensor));
  }
}

}  // namespace noonhouse
