// SPDX-License-Identifier: Apache-2.0
#include "models/control/device.hpp"

#include <algorithm>

namespace noonhouse {

std::vector<ChannelId> Device::follows(const Parameters& p) {
  std::vector<ChannelId> out = p.callers;
  for (const Need& need : p.needs) out.push_back(need.permit);
  return out;
}

const Device::Need* Device::lacking(const Situation& situation) const {
  for (const Need& need : p_.needs)
    if (situation.value(need.permit) < 0.5) return &need;
  return nullptr;
}

void Device::put(bool on, EventId because, Actions& actions) {
  on_ = on;
  for (const Output& output : p_.outputs) actions.set(output.channel, on ? output.when_on : output.when_off, because);
}

void Device::react(const Situation& situation, const Trigger& trigger, Actions& actions) {
  const bool wanted =
      std::any_of(p_.callers.begin(), p_.callers.end(), [&](ChannelId c) { return situation.value(c) > 0.5; });
  const Need* missing = lacking(situation);
  if (trigger.kind == Trigger::Kind::start && !wanted) put(false, kNoEvent, actions);  // off need not mean zero
  if (wanted && missing != nullptr) {
    if (failing_) return;
    failing_ = true;
    const EventId taken_by = situation.last_change(missing->permit);
    const std::string what = (on_ ? p_.stops : std::string("is called but stays off")) + ": " + missing->lacking;
    put(false, actions.log(EventKind::failure, what, taken_by), actions);
    return;
  }
  if (failing_) {
    failing_ = false;
    actions.clear_failure();
  }
  if (wanted != on_) put(wanted, actions.log(EventKind::action, wanted ? p_.starts : p_.stops, trigger.cause), actions);
}

}  // namespace noonhouse
