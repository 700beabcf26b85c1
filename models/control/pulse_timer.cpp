// SPDX-License-Identifier: Apache-2.0
#include "models/control/pulse_timer.hpp"

namespace noonhouse {

Tick PulseTimer::since_opening(Tick now) const {
  const std::int64_t clock = now.ms % kDay.ms - p_.hours.from.ms % kDay.ms;
  return Tick{(clock + kDay.ms) % kDay.ms};
}

bool PulseTimer::calls(Tick now) const {
  return p_.hours.holds(now) && since_opening(now).ms % p_.every.ms < p_.on_for.ms;
}

Tick PulseTimer::next_change(Tick now) const {
  if (!p_.hours.holds(now)) return p_.hours.next_edge(now);
  const std::int64_t phase = since_opening(now).ms % p_.every.ms;
  const Tick pulse{now.ms + (phase < p_.on_for.ms ? p_.on_for.ms - phase : p_.every.ms - phase)};
  const Tick opening{now.ms + kDay.ms - since_opening(now).ms};  // pulses count anew from each opening
  return std::min({pulse, opening, p_.hours.next_edge(now)});
}

void PulseTimer::react(const Situation& situation, const Trigger&, Actions& actions) {
  const Tick now = situation.now();
  const bool on = calls(now);
  actions.wake(0, next_change(now));
  if (on == on_) return;
  on_ = on;
  const EventId event = actions.log(EventKind::action, on ? "calls by the clock" : "calls no longer");
  actions.set(p_.demand, on ? 1.0 : 0.0, event);
}

}  // namespace noonhouse
