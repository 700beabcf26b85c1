// SPDX-License-Identifier: Apache-2.0
#include "models/water/tank_guard.hpp"

#include <algorithm>

namespace noonhouse {

GuardWords reserve_words(const std::string& for_whom, const std::string& held_back) {
  return {"is down to what is kept for " + for_whom, "keeps the rest for " + for_whom + ": " + held_back + " held back",
          "holds more again than is kept for " + for_whom + ": " + held_back + " no longer held back",
          EventKind::warning};
}

/// The newest of the last rain and the last deliveries: events are numbered as they happen.
EventId TankGuard::last_supply(const Situation& situation) const {
  EventId newest = situation.last_change(p_.raining);
  for (const ChannelId delivered : p_.delivered) newest = std::max(newest, situation.last_change(delivered));
  return newest;
}

void TankGuard::withdraw(const Situation& situation, Actions& actions) {
  EventId root = situation.standing_failure(p_.drained_by);
  if (root == kNoEvent) root = last_supply(situation);
  if (root == kNoEvent) {
    const bool rain_only = p_.delivered.empty();
    root = actions.log(EventKind::weather,
                       rain_only ? "no rain since the run began" : "no rain and no delivery since the run began",
                       kNoEvent);
  }
  const EventId low = actions.log(EventKind::warning, p_.words.low, root);
  actions.set(p_.permit, 0.0, actions.log(p_.words.withdrawal, p_.words.withdraws, low));
  actions.arm(kRestart, {p_.tank_water, p_.restart_kg, Watch::Direction::rising});
}

void TankGuard::react(const Situation& situation, const Trigger& trigger, Actions& actions) {
  if (trigger.kind == Trigger::Kind::start) {
    actions.arm(kLow, {p_.tank_water, p_.low_kg, Watch::Direction::falling});
    return;
  }
  if (trigger.kind != Trigger::Kind::crossing) return;
  if (trigger.slot == kLow) return withdraw(situation, actions);
  actions.clear_failure();
  actions.set(p_.permit, 1.0, actions.log(EventKind::action, p_.words.gives_back, last_supply(situation)));
  actions.arm(kLow, {p_.tank_water, p_.low_kg, Watch::Direction::falling});
}

}  // namespace noonhouse
