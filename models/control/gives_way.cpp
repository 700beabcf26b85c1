// SPDX-License-Identifier: Apache-2.0
#include "models/control/gives_way.hpp"

#include "models/control/control_terms.hpp"
#include "models/control/limits.hpp"

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
  const EventId exposed = situation.last_change(p_.position), blown = cause_of(p_.gust, situation);
  const bool just_exposed = trigger.kind == Trigger::Kind::channel_changed && trigger.channel == p_.position;
  const EventId cause = just_exposed || blown == kNoEvent ? exposed : blown;
  actions.set(p_.fault, p_.fault_value, actions.log(EventKind::failure, p_.what, cause));
}

}  // namespace noonhouse
