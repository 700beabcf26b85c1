// SPDX-License-Identifier: Apache-2.0
#include "models/water/leak_flow.hpp"

#include "sim/core/errors.hpp"

namespace noonhouse {

void LeakFlow::react(const Situation& situation, const Trigger& trigger, Actions& actions) {
  const double leak = situation.value(p_.leak), water = situation.value(p_.tank_water);
  NOON_ASSERT(leak >= 0.0 && p_.gap > 0.0);
  const double ends_at = p_.left + kFoundWithin_s * leak, begins_at = ends_at + p_.gap;
  const bool crossed = trigger.kind == Trigger::Kind::crossing;
  dry_ = crossed ? !dry_ : dry_ ? water < begins_at : water <= ends_at;
  const double flow = dry_ ? 0.0 : leak;
  if (flow != situation.value(p_.flow)) actions.set(p_.flow, flow, situation.last_change(p_.leak));
  if (leak <= 0.0) return actions.disarm(kLevel);
  const auto direction = dry_ ? Watch::Direction::rising : Watch::Direction::falling;
  actions.arm(kLevel, {p_.tank_water, dry_ ? begins_at : ends_at, direction});
}

}  // namespace noonhouse
