// SPDX-License-Identifier: Apache-2.0
#include "models/plants/plant_watch.hpp"

#include <algorithm>
#include <array>
#include <cstdio>

#include "models/properties/constants.hpp"

namespace noonhouse {

PlantWatch::PlantWatch(Parameters parameters) : p_(std::move(parameters)) {
  limits_[kHot] = {p_.harm_above_k, true, false, false};
  limits_[kLethalHot] = {p_.lethal_above_k, true, true, false};
  limits_[kCold] = {p_.harm_below_k, false, false, false};
  limits_[kLethalCold] = {p_.lethal_below_k, false, true, false};
}

void PlantWatch::arm(int limit, Actions& actions) const {
  const Crossed& it = limits_[static_cast<std::size_t>(limit)];
  const bool rising = it.above != it.beyond;  // wait for it to go beyond, or to come back
  // Coming back counts a hundredth of a kelvin inside, so that a crossing cannot undo itself.
  const double back = it.beyond ? (it.above ? -0.01 : 0.01) : 0.0;
  actions.arm(limit, {p_.tissue, it.threshold + back, rising ? Watch::Direction::rising : Watch::Direction::falling});
}

void PlantWatch::add_time(Tick now) {
  const Tick passed = now - counted_until_;
  counted_until_ = now;
  bool beyond = false, lethal = false;
  for (const Crossed& it : limits_) {
    beyond = beyond || it.beyond;
    lethal = lethal || (it.beyond && it.lethal);
  }
  if (beyond) beyond_ = beyond_ + passed;
  if (lethal) lethal_ = lethal_ + passed;
}

/// Wakes when the time beyond will have reached the next step down, if it lasts.
void PlantWatch::plan_wake(Tick now, Actions& actions) const {
  Tick next = kNever;
  const auto consider = [&](Tick limit, Tick spent) { next = std::min(next, std::max(now, now + limit - spent)); };
  const bool beyond = std::any_of(limits_.begin(), limits_.end(), [](const Crossed& it) { return it.beyond; });
  const bool lethal = limits_[kLethalHot].beyond || limits_[kLethalCold].beyond;
  if (beyond && state_ < PlantState::strained) consider(p_.strained_after, beyond_);
  if (beyond && state_ < PlantState::harmed) consider(p_.harmed_after, beyond_);
  if (lethal && state_ < PlantState::lost) consider(p_.lost_after, lethal_);
  actions.wake(0, next);
}

void PlantWatch::judge(const Situation& situation, Actions& actions) {
  const auto reached = [&](PlantState state, Tick spent, Tick limit, bool counts) {
    if (state_ < state && counts && spent >= limit) say(state, situation, actions);
  };
  const bool beyond_now = std::any_of(limits_.begin(), limits_.end(), [](const Crossed& it) { return it.beyond; });
  const bool lethal_now = limits_[kLethalHot].beyond || limits_[kLethalCold].beyond;
  reached(PlantState::strained, beyond_, p_.strained_after, beyond_now || beyond_.ms > 0);
  reached(PlantState::harmed, beyond_, p_.harmed_after, beyond_now || beyond_.ms > 0);
  reached(PlantState::lost, lethal_, p_.lost_after, lethal_now || lethal_.ms > 0);
}

void PlantWatch::say(PlantState state, const Situation& situation, Actions& actions) {
  state_ = state;
  const bool lost = state == PlantState::lost;
  const bool cold = limits_[lost ? kLethalCold : kCold].beyond;
  const double limit_k =
      limits_[static_cast<std::size_t>(lost ? (cold ? kLethalCold : kLethalHot) : (cold ? kCold : kHot))].threshold;
  const Tick spent = lost ? lethal_ : beyond_;
  std::array<char, 160> text{};
  std::snprintf(text.data(), text.size(), "%s: tissue %s %.0f degC for %.0f min in all, %.1f degC at that moment",
                lost ? "lost" : (state == PlantState::harmed ? "harmed" : "strained"), cold ? "below" : "above",
                limit_k - kZeroCelsius, seconds(spent) / 60.0, situation.value(p_.tissue) - kZeroCelsius);
  // No device here heats, so cold is nobody's failure.
  EventId cause = cold ? kNoEvent : situation.standing_failure(p_.cooled_by);
  if (cause == kNoEvent)
    cause = actions.log(EventKind::warning, cold ? "got too cold: nothing heats the house" : p_.when_nothing_failed,
                        kNoEvent);
  actions.log(EventKind::harm, text.data(), cause);
}

void PlantWatch::react(const Situation& situation, const Trigger& trigger, Actions& actions) {
  const Tick now = situation.now();
  add_time(now);
  if (trigger.kind == Trigger::Kind::start) {
    for (int limit = 0; limit < kLimits; ++limit) arm(limit, actions);
    return;
  }
  if (trigger.kind == Trigger::Kind::crossing) {
    Crossed& it = limits_[static_cast<std::size_t>(trigger.slot)];
    it.beyond = !it.beyond;
    arm(trigger.slot, actions);
  }
  judge(situation, actions);
  plan_wake(now, actions);
}

}  // namespace noonhouse
