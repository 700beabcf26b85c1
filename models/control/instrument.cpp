// SPDX-License-Identifier: Apache-2.0
#include "models/control/instrument.hpp"

#include <algorithm>
#include <cmath>

#include "models/properties/figure_text.hpp"
#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

double stepped(double value, double step, double zero) {
  return step > 0.0 ? zero + step * std::round((value - zero) / step) : value;
}

}  // namespace

std::vector<ChannelId> Instrument::follows(const Parameters& p) {
  return p.fault.valid() ? std::vector{p.fault} : std::vector<ChannelId>{};
}

Instrument::Instrument(Parameters parameters) : p_(std::move(parameters)), chance_(p_.seed, p_.name) {
  NOON_ASSERT(p_.every.ms > 0 && p_.lost_after >= p_.every);  // else it would be lost between any two polls
  NOON_ASSERT(p_.step >= 0.0 && p_.dropout_share >= 0.0 && p_.dropout_share <= 1.0);
}

InstrumentFault Instrument::fault_now(const Situation& situation) const {
  if (!p_.fault.valid()) return InstrumentFault::none;
  const double value = situation.value(p_.fault);
  return value < 0.5 ? InstrumentFault::none : value < 1.5 ? InstrumentFault::frozen : InstrumentFault::radio_lost;
}

EventId Instrument::fault_change(const Situation& situation) const {
  return p_.fault.valid() ? situation.last_change(p_.fault) : kNoEvent;
}

void Instrument::react(const Situation& situation, const Trigger& trigger, Actions& actions) {
  note_fault(situation, actions);
  if (trigger.kind == Trigger::Kind::start || (trigger.kind == Trigger::Kind::wake && trigger.slot == kPoll))
    return poll(situation, actions);
  // With a poll due at this very instant, that one decides.
  if (trigger.kind == Trigger::Kind::wake && next_poll_ > situation.now()) lose(situation, actions);
}

void Instrument::poll(const Situation& situation, Actions& actions) {
  const bool by_chance = polls_ > 0 && chance_.of(polls_) < p_.dropout_share;
  ++polls_;
  next_poll_ = situation.now() + p_.every;
  if (by_chance || fault_ == InstrumentFault::radio_lost) {
    miss(situation, actions);
  } else {
    tell(situation, actions);
  }
  actions.wake(kPoll, next_poll_);
}

void Instrument::tell(const Situation& situation, Actions& actions) {
  heard_ = situation.now();
  EventId because = kNoEvent;
  if (lost_) {
    lost_ = false;
    because = actions.log(EventKind::action, "is heard again", std::max(loss_, fault_change(situation)));
    if (fault_ == InstrumentFault::none) actions.clear_failure();
  }
  actions.set(p_.good, 1.0, because);
  if (p_.lost_after != kNever) actions.wake(kLost, heard_ + p_.lost_after);
  if (has_told_ && fault_ == InstrumentFault::frozen) return;
  has_told_ = true;
  actions.set(p_.told, stepped(situation.value(p_.reading), p_.step, p_.zero), because);
}

void Instrument::miss(const Situation& situation, Actions& actions) {
  if (!has_told_) {
    if (!lost_) lose(situation, actions);
  } else if (p_.lost_after != kNever && situation.now() - heard_ >= p_.lost_after) {
    lose(situation, actions);
  }
}

void Instrument::lose(const Situation& situation, Actions& actions) {
  if (lost_) return;
  lost_ = true;
  const int decimals = p_.lost_after.ms % (1_min).ms == 0 ? 0 : 1;
  const std::string span = number_text(seconds(p_.lost_after) / 60.0, decimals) + " min";
  const std::string what = has_told_ ? "is lost: not heard for " + span : "is not heard";
  const EventId behind = fault_ == InstrumentFault::radio_lost ? fault_change(situation) : kNoEvent;
  loss_ = actions.log(EventKind::failure, what, behind);
  actions.set(p_.good, 0.0, loss_);
}

/// A lost radio shows by itself, when polls stay away; a frozen value shows nowhere but in the log.
void Instrument::note_fault(const Situation& situation, Actions& actions) {
  const InstrumentFault before = fault_;
  fault_ = fault_now(situation);
  if (fault_ == before) return;
  if (fault_ == InstrumentFault::frozen)
    actions.log(EventKind::failure, "tells the same value from now on", fault_change(situation));
  if (before == InstrumentFault::frozen && fault_ == InstrumentFault::none) {
    actions.log(EventKind::action, "tells what it reads again", fault_change(situation));
    if (!lost_) actions.clear_failure();
  }
}

}  // namespace noonhouse
