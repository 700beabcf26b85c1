// SPDX-License-Identifier: Apache-2.0
#include "models/control/fault_causes.hpp"

#include <algorithm>

namespace noonhouse {

void FaultCauses::react(const Situation& situation, const Trigger& trigger, Actions& actions) {
  for (const ChannelId cause : p_.causes)
    if (trigger.kind != Trigger::Kind::channel_changed || trigger.channel == cause) hear(cause, situation.value(cause));
  const EventId because = standing_.empty() ? trigger.cause : situation.last_change(standing_.back().cause);
  actions.set(p_.fault, ruling(), because);
  if (!standing_.empty()) actions.renew(p_.fault, because);  // one failure takes over from another
}

void FaultCauses::hear(ChannelId cause, double value) {
  const auto known = std::find_if(standing_.begin(), standing_.end(), [&](const auto& s) { return s.cause == cause; });
  if (value == (known == standing_.end() ? p_.healthy : known->value)) return;
  if (known != standing_.end()) standing_.erase(known);
  if (value == p_.healthy) return;
  const bool below_lasting = !standing_.empty() && standing_.back().cause == p_.lasting;
  standing_.insert(standing_.end() - (below_lasting ? 1 : 0), {cause, value});
}

double FaultCauses::ruling() const {
  if (standing_.empty()) return p_.healthy;
  double out = standing_.back().value;
  if (p_.adds)
    for (std::size_t i = 0; i + 1 < standing_.size(); ++i) out += standing_[i].value - p_.healthy;
  return out;
}

}  // namespace noonhouse
