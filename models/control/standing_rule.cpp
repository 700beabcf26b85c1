// SPDX-License-Identifier: Apache-2.0
#include "models/control/standing_rule.hpp"

#include <algorithm>

#include "models/control/control_terms.hpp"

namespace noonhouse {

std::vector<ChannelId> StandingRule::follows(const Parameters& p) {
  std::vector<ChannelId> out;
  for (const Test& test : p.tests)
    if (test.what.channel.valid() && std::find(out.begin(), out.end(), test.what.channel) == out.end())
      out.push_back(test.what.channel);
  return out;
}

bool StandingRule::in_time(Tick now) const {
  if (!p_.hours.holds(now)) return false;
  return !p_.only_in_spells || std::any_of(p_.spells.begin(), p_.spells.end(),
                                           [&](const Spell& s) { return s.from <= now && now < s.until; });
}

bool StandingRule::reads() const {
  for (std::size_t i = 0; i < latches_.size(); ++i)
    if (p_.tests[i].is_reading_there && !latches_[i].on()) return false;
  return true;
}

/// The next instant strictly after now at which the time may let it hold or end it.
Tick StandingRule::next_edge(Tick now) const {
  Tick next = p_.hours.next_edge(now);
  if (!p_.only_in_spells) return next;
  for (const Spell& spell : p_.spells)
    for (Tick edge : {spell.from, spell.until})
      if (edge > now) return std::min(next, edge);
  return next;
}

void StandingRule::look_at_tests(const Situation& situation, const Trigger& trigger, Actions& actions) {
  for (std::size_t i = 0; i < latches_.size(); ++i) {
    const Test& test = p_.tests[i];
    const bool first = trigger.kind == Trigger::Kind::start;
    const bool turned = latches_[i].look(test.limits, situation.value(test.what), crossed(trigger, slot(i)));
    if (!turned && !first) continue;
    latches_[i].arm(slot(i), test.limits, test.what, actions);
    const EventId cause = cause_of(test.what, situation);
    because_ = cause == kNoEvent ? trigger.cause : cause;
  }
}

void StandingRule::react(const Situation& situation, const Trigger& trigger, Actions& actions) {
  const Tick now = situation.now();
  look_at_tests(situation, trigger, actions);
  const bool in_time_now = in_time(now);
  const bool all = in_time_now && std::all_of(latches_.begin(), latches_.end(), [](const auto& l) { return l.on(); });
  if (all && !all_) all_since_ = now;
  all_ = all;
  if (holding_) {
    if (!in_time_now || !reads() || (!all && now - began_ >= p_.least_hold)) put(false, situation, actions);
  } else if (all && now - all_since_ >= p_.after) {
    put(true, situation, actions);
  }
  Tick next = next_edge(now);
  if (all_ && !holding_) next = std::min(next, all_since_ + p_.after);
  if (!all_ && holding_) next = std::min(next, began_ + p_.least_hold);
  actions.wake(kClock, next);
}

void StandingRule::put(bool holds, const Situation& situation, Actions& actions) {
  holding_ = holds;
  if (holds) began_ = situation.now();
  actions.set(p_.holds, holds ? 1.0 : 0.0, actions.log(p_.kind, holds ? p_.begins : p_.ends, because_));
}

}  // namespace noonhouse
