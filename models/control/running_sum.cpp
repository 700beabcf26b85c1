// SPDX-License-Identifier: Apache-2.0
#include "models/control/running_sum.hpp"

#include <algorithm>
#include <cmath>

namespace noonhouse {

std::vector<ChannelId> RunningSum::follows(const Parameters& p) {
  std::vector<ChannelId> out;
  if (p.permit.valid()) out.push_back(p.permit);
  for (const Part& part : p.parts) {
    out.push_back(part.running);
    if (part.only_while.valid()) out.push_back(part.only_while);
  }
  return out;
}

void RunningSum::react(const Situation& situation, const Trigger& trigger, Actions& actions) {
  double total = 0.0;
  if (!p_.permit.valid() || situation.value(p_.permit) > 0.5) {
    total = p_.standing;
    for (const Part& part : p_.parts)
      if (!part.only_while.valid() || situation.value(part.only_while) > 0.5)
        total += part.adds * std::clamp(situation.value(part.running), 0.0, 1.0);
  }
  if (p_.power != 1.0) total = std::pow(total, p_.power);
  actions.set(p_.total, p_.scale * total, trigger.cause);
}

}  // namespace noonhouse
