// SPDX-License-Identifier: Apache-2.0
#include "models/control/device.hpp"

#include <algorithm>
#include <cmath>

#include "models/properties/figure_text.hpp"
#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

const char* words_of(DeviceFault fault) {
  switch (fault) {
    case DeviceFault::stuck_off:
      return "is stuck off";
    case DeviceFault::stuck_on:
      return "is stuck on";
    case DeviceFault::stuck_as_is:
      return "is stuck as it is";
    case DeviceFault::taken_off:
      return "is gone";
    case DeviceFault::torn_on:
      return "stands open for good";
    case DeviceFault::none:
      break;
  }
  return "is repaired";
}

/// Wind needs no motor and takes no time.
bool by_wind(DeviceFault fault) { return fault == DeviceFault::taken_off || fault == DeviceFault::torn_on; }

/// A call by a graded device's steps. Called fully it goes to its end even if the steps do not.
double stepped(double call, double step) {
  return step > 0.0 && call < 1.0 ? std::min(1.0, step * std::round(call / step)) : call;
}

}  // namespace

std::vector<ChannelId> Device::follows(const Parameters& p) {
  std::vector<ChannelId> out;
  for (const Caller& caller : p.callers) {
    out.push_back(caller.demand);
    if (caller.on_duty.valid() && caller.on_duty != caller.demand) out.push_back(caller.on_duty);
    for (ChannelId channel : {caller.spare, caller.has_spare})
      if (channel.valid()) out.push_back(channel);
  }
  for (const Need& need : p.needs) out.push_back(need.permit);
  for (const Forbid& forbid : p.forbids) out.push_back(forbid.channel);
  if (p.fault.valid()) out.push_back(p.fault);
  if (p.hand.valid()) out.push_back(p.hand);
  return out;
}

Device::Device(Parameters parameters) : p_(std::move(parameters)), lacks_(p_.needs.size()) {
  NOON_ASSERT(p_.takes.ms >= 0 && p_.share_step >= 0.0 && p_.share_step <= 1.0);
}

double Device::called_share(const Situation& situation) const {
  if (p_.hand.valid() && situation.value(p_.hand) > 0.0) return std::min(1.0, situation.value(p_.hand));
  double least = 1.0, most = 0.0, first = 0.0, beside = 0.0;
  bool anybody = false;
  for (const Caller& caller : p_.callers) {
    if (caller.on_duty.valid() && situation.value(caller.on_duty) <= 0.5) continue;
    const double call = call_of(caller, situation);
    if (caller.beside) {
      beside = std::max(beside, call);
      continue;
    }
    if (!anybody) first = call;
    least = std::min(least, call);
    most = std::max(most, call);
    anybody = true;
  }
  const double heeded = p_.heeds == Heeds::first ? first : p_.heeds == Heeds::all ? least : most;
  return std::max(anybody ? heeded : 0.0, beside);
}

/// A caller's call, or that of the contact beside it where that is more.
double Device::call_of(const Caller& caller, const Situation& situation) {
  const bool spare = caller.spare.valid() && (!caller.has_spare.valid() || situation.value(caller.has_spare) > 0.5);
  return std::clamp(std::max(situation.value(caller.demand), spare ? situation.value(caller.spare) : 0.0), 0.0, 1.0);
}

Device::Orders Device::orders_of(const Situation& situation) const {
  Orders out;
  const double call = called_share(situation);
  out.called = p_.graded ? stepped(call, p_.share_step) : call > 0.5 ? 1.0 : 0.0;
  for (const Forbid& forbid : p_.forbids)
    if (out.forbid == nullptr && situation.value(forbid.channel) > 0.5) out.forbid = &forbid;
  for (const Need& need : p_.needs)
    if (out.missing == nullptr && situation.value(need.permit) < 0.5) out.missing = &need;
  return out;
}

DeviceFault Device::fault_now(const Situation& situation) const {
  if (!p_.fault.valid()) return DeviceFault::none;
  const double value = situation.value(p_.fault);
  NOON_ASSERT(value >= 0.0 && value <= static_cast<double>(DeviceFault::torn_on));
  return static_cast<DeviceFault>(std::lround(value));
}

/// Where it would be with all it needs.
double Device::meant(const Orders& orders) const {
  switch (fault_) {
    case DeviceFault::stuck_off:
    case DeviceFault::taken_off:
      return 0.0;
    case DeviceFault::stuck_on:
    case DeviceFault::torn_on:
      return 1.0;
    case DeviceFault::stuck_as_is:
      return stuck_at_;
    case DeviceFault::none:
      break;
  }
  return orders.wanted() ? orders.called : 0.0;
}

void Device::react(const Situation& situation, const Trigger& trigger, Actions& actions) {
  if (trigger.kind == Trigger::Kind::wake) return step_on(actions);
  const Orders orders = orders_of(situation);
  if (trigger.kind == Trigger::Kind::start) put(0.0, kNoEvent, actions);  // off need not mean zero
  const EventId fresh_fault = note_fault(situation, orders, actions);
  const Need* over = end_lacks(situation);
  const double goal = meant(orders), before = goal_;
  const double without = p_.stays_when_lacking ? place_at(situation.now()) : 0.0;
  if (orders.missing != nullptr && goal != without && !(p_.stays_when_lacking && by_wind(fault_))) {
    say_over(over, situation, actions);
    return fail(situation, *orders.missing, without, actions);
  }
  if (lacking_) {
    lacking_ = false;
    actions.clear_failure();  // a stuck one fails anew below, where it moves again
  }
  follow(situation, orders, fresh_fault, trigger, actions);
  if (goal_ == before) say_over(over, situation, actions);  // else its move tells it
}

/// Logs a change of the fault and returns that entry, or kNoEvent. What it lacks is said anew.
EventId Device::note_fault(const Situation& situation, const Orders& orders, Actions& actions) {
  const DeviceFault before = fault_;
  fault_ = fault_now(situation);
  const EventId set_by = p_.fault.valid() ? situation.last_change(p_.fault) : kNoEvent;
  if (fault_ == before && (fault_ == DeviceFault::none || set_by == fault_set_)) return kNoEvent;
  fault_set_ = set_by;
  stuck_at_ = place_at(situation.now());
  const bool repaired = fault_ == DeviceFault::none;
  const EventKind kind = repaired ? EventKind::action : EventKind::failure;
  const bool said = by_wind(fault_) && set_by != kNoEvent;  // by who watches the wind, under the same name
  fault_entry_ = said ? set_by : actions.log(kind, words_of(fault_), set_by);
  if (repaired) actions.clear_failure();
  lacking_ = false;
  lacks_.assign(p_.needs.size(), {});
  in_vain_ = !repaired && orders.wanted();
  return fault_entry_;
}

/// Forgets the lacks that are over; returns one of them that was a failure, or null.
const Device::Need* Device::end_lacks(const Situation& situation) {
  const Need* over = nullptr;
  for (std::size_t i = 0; i < lacks_.size(); ++i) {
    if (lacks_[i].entry == kNoEvent || situation.value(p_.needs[i].permit) < 0.5) continue;
    lacks_[i] = {};
    if (!p_.needs[i].on_purpose) over = &p_.needs[i];
  }
  return over;
}

void Device::say_over(const Need* over, const Situation& situation, Actions& actions) const {
  if (over != nullptr)
    actions.log(EventKind::action, "has again what it lacked (" + over->lacking + ")",
                situation.last_change(over->permit));
}

void Device::fail(const Situation& situation, const Need& missing, double goal, Actions& actions) {
  held_ = false;
  Lack& lack = lacks_[static_cast<std::size_t>(&missing - p_.needs.data())];
  const EventId taken = situation.last_change(missing.permit);
  const bool said = lack.entry != kNoEvent && lack.taken == taken, still = said && lacking_;
  if (missing.on_purpose && lacking_ && !still) actions.clear_failure();  // of another need
  lacking_ = true;
  if (still) return;
  if (said) {  // a pulse that comes again says nothing new
    if (!missing.on_purpose) actions.hold_failure(lack.entry);
    return leave(goal, lack.entry, actions);
  }
  std::string what = goal_ > 0.0 ? p_.stops : "is called but stays off";
  if (p_.stays_when_lacking) what = "stays where it stands";
  if (fault_ != DeviceFault::none && goal_ == 0.0) what = "stays off";
  const EventKind kind = missing.on_purpose ? EventKind::warning : EventKind::failure;
  lack = {taken, actions.log(kind, what + ": " + missing.lacking, taken)};
  leave(goal, lack.entry, actions);
}

/// At once: without what it needs nothing runs down, and wind does not wait.
void Device::leave(double at, EventId because, Actions& actions) {
  from_ = goal_ = at;
  step_ = steps_ = 0;
  because_ = because;
  put(at, because, actions);
  actions.wake(0, kNever);
}

/// With all it needs: is held back, stays stuck, or goes where it is called.
void Device::follow(const Situation& situation, const Orders& orders, EventId fresh_fault, const Trigger& trigger,
                    Actions& actions) {
  const double goal = meant(orders);
  const bool stuck = fault_ != DeviceFault::none, was_held = held_;
  held_ = !stuck && orders.held();
  if (held_ && !was_held) {
    const EventId since = situation.last_change(orders.forbid->channel);
    const bool said = said_.by == orders.forbid->channel && said_.since == since;
    if (!said || goal_ != 0.0)  // a pulse that comes again says nothing new
      said_ = {orders.forbid->channel, since,
               actions.log(EventKind::action, "is held back: " + orders.forbid->words, since)};
    if (goal_ != 0.0) go(0.0, said_.entry, situation.now(), actions);
    return;
  }
  if (stuck && goal == 0.0 && orders.wanted() && !in_vain_) {
    in_vain_ = true;
    actions.log(EventKind::failure, "is called but stays off: it is stuck", fault_entry_);
    return;
  }
  if (goal == goal_) return;
  EventId because = fresh_fault;
  if (!stuck)
    because = actions.log(EventKind::action, going_to(goal), fresh_fault == kNoEvent ? trigger.cause : fresh_fault);
  if (stuck && fresh_fault == kNoEvent)
    because = actions.log(EventKind::failure, going_to(goal) + ": it is stuck", trigger.cause);
  if (by_wind(fault_)) return leave(goal, because, actions);
  go(goal, because, situation.now(), actions);
}

std::string Device::going_to(double share) const {
  if (share == 0.0) return p_.stops;
  if (!p_.graded) return p_.starts;
  const std::string text = number_text(100.0 * share, 0) + " %";
  return goal_ == 0.0 ? p_.starts + ": " + text : "goes to " + text;
}

/// Where it stands, between two steps too. The way's end may come a rounding of the tick late: never beyond it.
double Device::place_at(Tick now) const {
  if (share_ == goal_) return share_;
  const double gone = seconds(now - since_) / seconds(p_.takes);
  return goal_ > from_ ? std::min(goal_, from_ + gone) : std::max(goal_, from_ - gone);
}

void Device::go(double goal, EventId because, Tick now, Actions& actions) {
  from_ = p_.takes.ms > 0 ? place_at(now) : goal;
  goal_ = goal;
  since_ = now;
  step_ = 0;
  steps_ = static_cast<int>(std::ceil(std::fabs(goal_ - from_) / kLongestStep));
  because_ = because;
  put(from_, because, actions);
  step_on(actions);
}

/// Tells the step that is done, and asks to be woken when the next one is.
void Device::step_on(Actions& actions) {
  const auto reached = [&](int step) { return from_ + (goal_ - from_) * step / steps_; };
  if (step_ > 0) put(step_ == steps_ ? goal_ : reached(step_), because_, actions);
  if (step_ >= steps_) return actions.wake(0, kNever);
  ++step_;
  actions.wake(0, since_ + ticks(seconds(p_.takes) * std::fabs(reached(step_) - from_)));
}

void Device::put(double share, EventId because, Actions& actions) {
  share_ = share;
  for (const Output& output : p_.outputs)
    actions.set(output.channel, std::lerp(output.when_off, output.when_on, share), because);
}

}  // namespace noonhouse
