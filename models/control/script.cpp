// SPDX-License-Identifier: Apache-2.0
#include "models/control/script.hpp"

#include <algorithm>

#include "sim/core/errors.hpp"

namespace noonhouse {

Script::Script(Parameters parameters) : p_(std::move(parameters)) {
  NOON_ASSERT(
      std::is_sorted(p_.lines.begin(), p_.lines.end(), [](const Line& a, const Line& b) { return a.when < b.when; }));
  for (std::size_t i = 0; i < p_.lines.size(); ++i) NOON_ASSERT(p_.lines[i].because_of < static_cast<int>(i));
}

void Script::react(const Situation& situation, const Trigger&, Actions& actions) {
  while (said_.size() < p_.lines.size() && p_.lines[said_.size()].when <= situation.now()) {
    const Line& line = p_.lines[said_.size()];
    const EventId cause = line.because_of < 0 ? kNoEvent : said_[static_cast<std::size_t>(line.because_of)];
    if (line.clears_failure) actions.clear_failure();
    const EventId event = line.what.empty() ? cause : actions.log(line.kind, line.what, cause);
    said_.push_back(event);
    for (const auto& [channel, value] : line.sets) actions.set(channel, value, event);
  }
  actions.wake(0, said_.size() < p_.lines.size() ? p_.lines[said_.size()].when : kNever);
}

}  // namespace noonhouse
