// SPDX-License-Identifier: Apache-2.0
#include "models/plants/pot_watch.hpp"

#include <array>
#include <cstdio>

namespace noonhouse {
namespace {

constexpr double kWetAgain = 1.1;  ///< of dry_below_kg

std::string dry_for(const char* state, Tick spell) {
  std::array<char, 80> text{};
  std::snprintf(text.data(), text.size(), "%s: pots dry for %.4g h", state, seconds(spell) / 3600.0);
  return text.data();
}

}  // namespace

void PotWatch::await_dry(Actions& actions) const {
  actions.arm(kDry, {p_.pot_water, p_.dry_below_kg, Watch::Direction::falling});
}

void PotWatch::begin_spell(const Situation& situation, Actions& actions) {
  warning_ = actions.log(EventKind::warning, "pots are dry", situation.standing_failure(p_.watered_by));
  if (!harmed_) actions.wake(kHarm, situation.now() + p_.harmed_after);
  actions.wake(kLoss, situation.now() + p_.lost_after);
  actions.arm(kWet, {p_.pot_water, kWetAgain * p_.dry_below_kg, Watch::Direction::rising});
}

void PotWatch::end_spell(Actions& actions) const {
  actions.wake(kHarm, kNever);
  actions.wake(kLoss, kNever);
  await_dry(actions);
}

void PotWatch::react(const Situation& situation, const Trigger& trigger, Actions& actions) {
  if (trigger.kind == Trigger::Kind::start) return await_dry(actions);
  if (trigger.kind == Trigger::Kind::crossing)
    return trigger.slot == kDry ? begin_spell(situation, actions) : end_spell(actions);
  if (trigger.kind != Trigger::Kind::wake) return;
  if (trigger.slot == kHarm) {
    harmed_ = true;
    actions.log(EventKind::harm, dry_for("harmed", p_.harmed_after), warning_);
    return;
  }
  actions.log(EventKind::harm, dry_for("lost", p_.lost_after), warning_);
  actions.wake(kHarm, kNever);  // there is nothing left to watch
  actions.disarm(kWet);
}

}  // namespace noonhouse
