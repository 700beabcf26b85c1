// SPDX-License-Identifier: Apache-2.0
#include "models/control/staged_control.hpp"

#include <algorithm>

#include "sim/core/errors.hpp"

namespace noonhouse {

StagedControl::StagedControl(Parameters parameters) : p_(std::move(parameters)), past_(p_.stages.size()) {
  NOON_ASSERT(!p_.stages.empty());
}

void StagedControl::react(const Situation& situation, const Trigger& trigger, Actions& actions) {
  const auto turn = health_.look(p_.terms, situation, trigger, actions);
  if (turn == ControlHealth::Turn::dies) die(actions);
  if (health_.dead()) return;
  decide(situation, trigger, actions);
  look_ahead(situation.now(), actions);
}

void StagedControl::die(Actions& actions) {
  for (int slot : {kWindow, kWait}) actions.wake(slot, kNever);
  for (int slot : {kJoin, kLeave}) actions.disarm(slot);
  running_ = 0;
  past_.assign(p_.stages.size(), {});
  ask_.forget();
  for (const Stage& stage : p_.stages) actions.set(stage.demand, 0.0, health_.said());
}

bool StagedControl::must_end(Tick now) const {
  return !p_.terms.hours.holds(now) || (health_.lost() && p_.terms.when_lost == WhenLost::stops);
}

/// When the next stage may join at the earliest, as it asks now; kNever while it does not.
Tick StagedControl::may_join(Tick now) const {
  if (all_running() || !ask_.on()) return kNever;
  const Stage& next = p_.stages[running_];
  const Past& past = past_[running_];
  const Tick asked_long = asked_ + next.delay;
  return std::max({now, asked_long, past.has_switched ? past.switched + next.least_off : asked_long});
}

/// When the last stage's least time on is over.
Tick StagedControl::may_leave() const { return past_[running_ - 1].switched + p_.stages[running_ - 1].least_on; }

/// Whether the next stage in line asks, and since when.
void StagedControl::look_at_ask(const Situation& situation, bool crossed_join) {
  if (all_running()) return ask_.forget();
  if (health_.lost()) {
    if (p_.terms.when_lost != WhenLost::runs) return ask_.forget();
    if (!ask_.on()) ask_.look({}, 0.0, true), asked_ = situation.now();
    return;
  }
  if (ask_.look(p_.stages[running_].limits, situation.value(p_.sensor), crossed_join)) asked_ = situation.now();
}

void StagedControl::decide(const Situation& situation, const Trigger& trigger, Actions& actions) {
  const Tick now = situation.now();
  if (must_end(now)) {
    const char* why = p_.terms.hours.holds(now) ? "it has no reading" : "its hours are over";
    while (running_ > 0) leave(situation, actions, why);
    ask_.forget();
    return;
  }
  look_at_ask(situation, crossed(trigger, kJoin));
  bool crossed_back = crossed(trigger, kLeave);
  const auto leaves = [&] { return crossed_back || p_.stages[running_ - 1].limits.ended(situation.value(p_.sensor)); };
  while (running_ > 0 && !health_.lost() && now >= may_leave() && leaves()) {
    leave(situation, actions, nullptr);
    crossed_back = false;
  }
  while (may_join(now) == now) {
    join(situation, actions);
    look_at_ask(situation, false);
  }
}

void StagedControl::leave(const Situation& situation, Actions& actions, const char* why) {
  const Stage& stage = p_.stages[--running_];
  past_[running_] = {true, situation.now()};
  ask_.forget();
  const std::string what = "calls no longer for " + stage.calls_for + ": ";
  actions.set(stage.demand, 0.0,
              why != nullptr
                  ? actions.log(EventKind::action, what + why)
                  : log_because_of(p_.sensor, situation, EventKind::action, what + reading_text(situation), actions));
}

void StagedControl::join(const Situation& situation, Actions& actions) {
  const Stage& stage = p_.stages[running_];
  past_[running_] = {true, situation.now()};
  ++running_;
  ask_.forget();
  const std::string what = "calls for " + stage.calls_for + ": ";
  actions.set(stage.demand, 1.0,
              health_.lost()
                  ? actions.log(EventKind::action, what + "it has no reading")
                  : log_because_of(p_.sensor, situation, EventKind::action, what + reading_text(situation), actions));
}

std::string StagedControl::reading_text(const Situation& situation) const {
  return p_.words(situation.value(p_.sensor)) + " at the " + p_.sensor_name;
}

/// Asks to be told of whatever can change its mind next.
void StagedControl::look_ahead(Tick now, Actions& actions) {
  actions.wake(kWindow, p_.terms.hours.next_edge(now));
  const bool reads = !must_end(now) && !health_.lost();
  Tick wait = must_end(now) ? kNever : may_join(now);
  const bool leaves_later = reads && running_ > 0 && now < may_leave();
  if (leaves_later) wait = std::min(wait, may_leave());
  actions.wake(kWait, wait);
  if (reads && !all_running()) {
    ask_.arm(kJoin, p_.stages[running_].limits, p_.sensor, actions);
  } else {
    actions.disarm(kJoin);
  }
  if (reads && running_ > 0 && !leaves_later) {
    actions.arm(kLeave, p_.stages[running_ - 1].limits.ending(p_.sensor));
  } else {
    actions.disarm(kLeave);
  }
}

}  // namespace noonhouse
