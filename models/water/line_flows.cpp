// SPDX-License-Identifier: Apache-2.0
#include "models/water/line_flows.hpp"

namespace noonhouse {

std::vector<ChannelId> LineFlows::follows(const Parameters& p) {
  std::vector<ChannelId> out;
  for (const Line& line : p.lines) {
    out.push_back(line.open);
    out.push_back(line.cut);
  }
  return out;
}

void LineFlows::react(const Situation& situation, const Trigger& trigger, Actions& actions) {
  std::size_t open = 0;
  for (std::size_t i = 0; i < p_.lines.size(); ++i)
    if (situation.value(p_.lines[i].open) > 0.0) open |= std::size_t{1} << i;
  for (std::size_t i = 0; i < p_.lines.size(); ++i) {
    const Line& line = p_.lines[i];
    const double flow = situation.value(line.open) * p_.flows_kg_s[open][i];
    const bool cut = situation.value(line.cut) > 0.5;
    actions.set(line.spray, cut ? 0.0 : flow, trigger.cause);
    actions.set(line.spill, cut ? flow : 0.0, trigger.cause);
  }
  if (p_.runs.valid()) actions.set(p_.runs, open == 0 ? 0.0 : 1.0, trigger.cause);
}

}  // namespace noonhouse
