// SPDX-License-Identifier: Apache-2.0
#include "models/power/battery_guard.hpp"

namespace noonhouse {

void BatteryGuard::react(const Situation&, const Trigger& trigger, Actions& actions) {
  if (trigger.kind == Trigger::Kind::start) {
    actions.arm(kCutOff, {p_.charge, p_.cut_off_j, Watch::Direction::falling});
    return;
  }
  if (trigger.kind != Trigger::Kind::crossing) return;
  if (trigger.slot == kCutOff) {
    const EventId low =
        actions.log(EventKind::warning, "is down to its cut-off: the loads drew more than the panel gave", kNoEvent);
    actions.set(p_.permit, 0.0, actions.log(EventKind::failure, "cuts all loads off", low));
    actions.arm(kReconnect, {p_.charge, p_.reconnect_j, Watch::Direction::rising});
    return;
  }
  actions.clear_failure();
  actions.set(p_.permit, 1.0, actions.log(EventKind::action, "is charged again: loads are back", kNoEvent));
  actions.arm(kCutOff, {p_.charge, p_.cut_off_j, Watch::Direction::falling});
}

}  // namespace noonhouse
