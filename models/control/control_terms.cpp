// SPDX-License-Identifier: Apache-2.0
#include "models/control/control_terms.hpp"

namespace noonhouse {
namespace {

const char* lost_words(WhenLost policy) {
  switch (policy) {
    case WhenLost::holds:
      return "has no reading: leaves things as they are";
    case WhenLost::stops:
      return "has no reading: calls nothing";
    case WhenLost::runs:
      return "has no reading: calls fully";
  }
  return "has no reading";
}

}  // namespace

std::vector<ChannelId> ControlTerms::follows(const Input& reading) const {
  std::vector<ChannelId> out;
  for (ChannelId channel : {reading.channel, good, fault})
    if (channel.valid()) out.push_back(channel);
  return out;
}

ControlHealth::Turn ControlHealth::look(const ControlTerms& terms, const Situation& situation, const Trigger& trigger,
                                        Actions& actions) {
  Turn turn = trigger.kind == Trigger::Kind::start ? Turn::starts : Turn::none;
  const bool dead = terms.fault.valid() && situation.value(terms.fault) > 0.5;
  if (dead != dead_) {
    dead_ = dead;
    const EventId cause = situation.last_change(terms.fault);
    if (dead) {
      said_ = actions.log(EventKind::failure, "fails: it calls nothing", cause);
      lost_ = false;
      return Turn::dies;
    }
    actions.clear_failure();
    said_ = actions.log(EventKind::action, "works again: it starts anew", cause);
    turn = Turn::starts;
  }
  if (dead_) return Turn::none;
  const bool lost = terms.good.valid() && situation.value(terms.good) < 0.5;
  if (lost != lost_) {
    lost_ = lost;
    const EventId cause = situation.last_change(terms.good);
    said_ = lost ? actions.log(EventKind::warning, lost_words(terms.when_lost), cause)
                 : actions.log(EventKind::action, "has a reading again", cause);
  }
  return turn;
}

EventId cause_of(const Input& input, const Situation& situation) {
  return input.channel.valid() ? situation.last_change(input.channel) : kNoEvent;
}

EventId log_because_of(const Input& input, const Situation& situation, EventKind kind, std::string what,
                       Actions& actions) {
  const EventId cause = cause_of(input, situation);
  return cause == kNoEvent ? actions.log(kind, std::move(what)) : actions.log(kind, std::move(what), cause);
}

}  // namespace noonhouse
