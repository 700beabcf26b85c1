// SPDX-License-Identifier: Apache-2.0
#include "models/control/grower_response.hpp"

#include <algorithm>

#include "models/control/control_terms.hpp"

namespace noonhouse {

std::vector<ChannelId> GrowerResponse::follows(const Parameters& p) {
  std::vector<ChannelId> out;
  for (ChannelId channel : {p.sign.channel, p.away})
    if (channel.valid()) out.push_back(channel);
  return out;
}

bool GrowerResponse::is_away(const Situation& situation) const {
  return p_.away.valid() && situation.value(p_.away) > 0.5;
}

bool GrowerResponse::present(Tick now) const {
  return std::any_of(p_.presence.begin(), p_.presence.end(), [&](const DailyWindow& w) { return w.holds(now); });
}

/// The next instant, now or later, of habitual presence; kNever without any.
Tick GrowerResponse::next_presence(Tick now) const {
  if (p_.presence.empty()) return kNever;
  while (!present(now)) {
    Tick next = kNever;
    for (const DailyWindow& window : p_.presence) next = std::min(next, window.next_edge(now));
    now = next;
  }
  return now;
}

/// When the grower acts on what is to be seen from now on; kNever while away.
Tick GrowerResponse::acts_at(const Situation& situation) const {
  if (is_away(situation)) return kNever;
  const Tick now = situation.now(), seen = next_presence(now);
  const Tick by_habit = seen == kNever ? kNever : seen + p_.reaction;
  const bool called = p_.alarm && stage_ == Stage::will_act && seen > now;
  return called ? std::min(by_habit, now + p_.returns_within) : by_habit;
}

void GrowerResponse::react(const Situation& situation, const Trigger& trigger, Actions& actions) {
  const bool turned = sign_.look(p_.limits, situation.value(p_.sign), crossed(trigger, kSign));
  if (turned || trigger.kind == Trigger::Kind::start) sign_.arm(kSign, p_.limits, p_.sign, actions);
  if (turned) sign_turned(situation, actions);
  const bool away = is_away(situation), came_or_went = away != was_away_;
  was_away_ = away;
  if (turned || came_or_went) {
    const bool waits = stage_ == Stage::will_act || stage_ == Stage::will_undo;
    if (came_or_went && !turned && !away && stage_ == Stage::will_act) call(situation, actions);
    actions.wake(kAct, waits ? acts_at(situation) : kNever);
    return;
  }
  if (trigger.kind != Trigger::Kind::wake) return;
  if (stage_ == Stage::will_act) {
    act(situation, actions);
  } else if (stage_ == Stage::will_undo) {
    undo(actions);
  }
}

void GrowerResponse::sign_turned(const Situation& situation, Actions& actions) {
  if (!sign_.on()) {
    stage_ = stage_ == Stage::acted && p_.undo ? Stage::will_undo : Stage::rests;
  } else if (stage_ == Stage::will_undo) {
    stage_ = Stage::acted;
  } else {
    stage_ = Stage::will_act;
    event_ = kNoEvent;
    call(situation, actions);
  }
}

void GrowerResponse::call(const Situation& situation, Actions& actions) {
  if (!p_.alarm || (present(situation.now()) && !is_away(situation))) return;
  const char* what = is_away(situation) ? "the alarm calls, but nobody can come" : "is called by the alarm";
  event_ = actions.log(EventKind::people, what, cause(situation));
}

/// The event behind the sign: what set it, or the standing failure that may have.
EventId GrowerResponse::cause(const Situation& situation) const {
  const EventId set = cause_of(p_.sign, situation);
  return set == kNoEvent ? situation.standing_failure(p_.blames) : set;
}

void GrowerResponse::act(const Situation& situation, Actions& actions) {
  stage_ = Stage::acted;
  const EventId seen = actions.log(EventKind::people, p_.sees, event_ == kNoEvent ? cause(situation) : event_);
  event_ = actions.log(EventKind::people, p_.does, seen);
  for (const Move& move : p_.moves) actions.set(move.channel, move.value, event_);
}

void GrowerResponse::undo(Actions& actions) {
  stage_ = Stage::rests;
  event_ = actions.log(EventKind::people, p_.undoes, event_);
  for (const Move& move : p_.moves) actions.set(move.channel, move.undone, event_);
}

}  // namespace noonhouse
