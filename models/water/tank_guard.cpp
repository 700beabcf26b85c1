// SPDX-License-Identifier: Apache-2.0
#include "models/water/tank_guard.hpp"

namespace noonhouse {

void TankGuard::react(const Situation& situation, const Trigger& trigger, Actions& actions) {
  if (trigger.kind == Trigger::Kind::start) {
    actions.arm(kLow, {p_.tank_water, p_.low_kg, Watch::Direction::falling});
    return;
  }
  if (trigger.kind != Trigger::Kind::crossing) return;
  if (trigger.slot == kLow) {
    EventId root = situation.last_change(p_.raining);
    if (root == kNoEvent) root = actions.log(EventKind::weather, "no rain since the run began", kNoEvent);
    const EventId low = actions.log(EventKind::warning, "is down to its low mark", root);
    actions.set(p_.permit, 0.0, actions.log(EventKind::failure, "cuts the pump out", low));
    actions.arm(kRestart, {p_.tank_water, p_.restart_kg, Watch::Direction::rising});
    return;
  }
  actions.clear_failure();
  actions.set(p_.permit, 1.0,
              actions.log(EventKind::action, "is refilled to its restart mark; the pump may run",
                          situation.last_change(p_.raining)));
  actions.arm(kLow, {p_.tank_water, p_.low_kg, Watch::Direction::falling});
}

}  // namespace noonhouse
