// SPDX-License-Identifier: Apache-2.0
#include "models/control/gives_way.hpp"

#include "models/control/control_terms.hpp"
#include "models/control/limits.hpp"
#include "models/properties/figure_text.hpp"

namespace noonhouse {

std::vector<ChannelId> GivesWay::follows(const Parameters& p) {
  std::vector<ChannelId> out{p.position};
  if (p.gust.channel.valid()) out.push_back(p.gust.channel);
  return out;
}

void GivesWay::react(const Situation& situation, const Trigger& trigger, Actions& actions) {
  if (gone_) return;
  if (!(situation.value(p_.position) > 0.5)) return actions.disarm(kGust);
  if (!crossed(trigger, kGust) && situation.value(p_.gust) < p_.limit_m_s)
    return actions.arm(kGust, {p_.gust, p_.limit_m_s, Watch::Direction::rising});
  gone_ = true;
  actions.disarm(kGust);
  const EventId because = cause(situation, trigger, actions);
  actions.set(p_.fault, p_.fault_value, actions.log(EventKind::failure, p_.what, because));
}

EventId GivesWay::cause(const Situation& situation, const Trigger& trigger, Actions& actions) const {
  if (trigger.kind == Trigger::Kind::channel_changed && trigger.channel == p_.position)
    return situation.last_change(p_.position);
  if (const EventId held = situation.standing_failure({&p_.name, 1}); held != kNoEvent) return held;
  const bool storm = p_.storm_until.valid() && seconds(situation.now()) <= situation.value(p_.storm_until);
  const EventId blown = storm ? situation.last_change(p_.storm_until) : cause_of(p_.gust, situation);
  return actions.log(EventKind::weather, "meets a gust of " + number_text(p_.limit_m_s, 1) + " m/s or more", blown);
}

}  // namespace noonhouse
