// SPDX-License-Identifier: Apache-2.0
#include "models/plants/day_watch.hpp"

#include <algorithm>
#include <array>
#include <cstdio>

namespace noonhouse {

void DayWatch::count(Count& it, bool beyond, const char* what, double limit_j_m2, double day_j_m2,
                     Actions& actions) const {
  it.days = beyond ? it.days + 1 : std::max(0, it.days - 1);
  const int strained_after = std::max(1, (p_.harmed_after_days + 2) / 3);
  const int step = it.days >= p_.harmed_after_days ? 2 : (it.days >= strained_after ? 1 : 0);
  if (step <= it.said) return;
  it.said = step;
  std::array<char, 160> text{};
  std::snprintf(text.data(), text.size(), "%s: %s light than the kind %s for %d days, %.1f of %.1f mol/m2 on the last",
                step == 2 ? "harmed" : "strained", what, beyond && &it == &dim_ ? "needs" : "bears", it.days,
                p_.mol_per_j * day_j_m2, p_.mol_per_j * limit_j_m2);
  const EventId cause = actions.log(
      EventKind::warning, &it == &dim_ ? "stood where it was too dim" : "stood where it was too bright", kNoEvent);
  actions.log(EventKind::harm, text.data(), cause);
}

void DayWatch::react(const Situation& situation, const Trigger& trigger, Actions& actions) {
  const double sum = situation.value(p_.light_sum);
  actions.wake(0, situation.now() + kDay);
  if (trigger.kind != Trigger::Kind::wake) {
    last_j_m2_ = sum;
    return;
  }
  const double day = sum - last_j_m2_;
  last_j_m2_ = sum;
  count(dim_, day < p_.least_j_m2, "less", p_.least_j_m2, day, actions);
  count(bright_, day > p_.most_j_m2, "more", p_.most_j_m2, day, actions);
}

}  // namespace noonhouse
