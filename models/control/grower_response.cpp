// SPDX-License-Identifier: Apache-2.0
#include "models/control/grower_response.hpp"

#include <algorithm>

#include "models/control/control_terms.hpp"

namespace noonhouse {

std::vector<ChannelId> GrowerResponse::follows(const Parameters& p) {
  std::vector<ChannelId> out;
  for (ChannelId channel : {p.sign.channel, p.away, p.not_fitted, p.stays_until})
    if (channel.valid()) out.push_back(channel);
  return out;
}

bool GrowerResponse::is_fitted(const Situation& situation) const {
  return !p_.not_fitted.valid() || situation.value(p_.not_fitted) <= 0.5;
}

/// Nobody answers: the grower is away, or there is nothing to hear.
bool GrowerResponse::is_away(const Situation& situation) const {
  return (p_.away.valid() && situation.value(p_.away) > 0.5) || !is_fitted(situation);
}

bool GrowerResponse::present(const Situation& situation) const {
  const Tick now = situation.now();
  if (p_.stays_until.valid() && now < ticks(situation.value(p_.stays_until))) return true;
  return std::any_of(p_.presence.begin(), p_.presence.end(), [&](const DailyWindow& w) { return w.holds(now); });
}

/// The next instant, now or later, of habitual presence or of a stay; kNever without any.
Tick GrowerResponse::next_presence(const Situation& situation) const {
  Tick now = situation.now();
  if (present(situation)) return now;
  if (p_.presence.empty()) return kNever;
  const auto there = [&](const DailyWindow& w) { return w.holds(now); };
  while (std::none_of(p_.presence.begin(), p_.presence.end(), there)) {
    Tick next = kNever;
    for (const DailyWindow& window : p_.presence) next = std::min(next, window.next_edge(now));
    now = next;
  }
  return now;
}

/// When the grower acts on what is to be seen from now on; kNever while away.
Tick GrowerResponse::acts_at(const Situation& situation) const {
  if (is_away(situation) || (stage_ != Stage::will_act && stage_ != Stage::will_undo)) return kNever;
  const Tick seen = next_presence(situation);
  const Tick by_habit = seen == kNever ? kNever : seen + p_.reaction;
  return stage_ == Stage::will_act ? std::min(by_habit, arrives_) : by_habit;
}

void GrowerResponse::book(Tick when, Actions& actions) {
  acts_ = when;
  actions.wake(kAct, when);
}

void GrowerResponse::react(const Situation& situation, const Trigger& trigger, Actions& actions) {
  const bool turned = sign_.look(p_.limits, situation.value(p_.sign), crossed(trigger, kSign));
  if (turned || trigger.kind == Trigger::Kind::start) sign_.arm(kSign, p_.limits, p_.sign, actions);
  const bool away = is_away(situation), came_or_went = away != was_away_;
  was_away_ = away;
  if (turned || came_or_went) arrives_ = kNever;
  if (turned) sign_turned(situation, actions);
  const double until = p_.stays_until.valid() ? situation.value(p_.stays_until) : 0.0;
  const bool stays = until != heard_until_;
  heard_until_ = until;
  if (turned || came_or_went) {
    if (came_or_went && !turned && !away && stage_ == Stage::will_act) call(situation, actions);
    return book(acts_at(situation), actions);
  }
  if (stays) return book(std::min(acts_, acts_at(situation)), actions);  // who has seen it goes on as before
  if (trigger.kind != Trigger::Kind::wake) return;
  acts_ = kNever;
  if (stage_ == Stage::will_act) {
    act(situation, actions);
  } else if (stage_ == Stage::will_undo) {
    undo(situation, actions);
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
  if (!p_.alarm || !is_fitted(situation) || (present(situation) && !is_away(situation))) return;
  const char* what = is_away(situation) ? "the alarm calls, but nobody can come" : "is called by the alarm";
  event_ = actions.log(EventKind::people, what, cause(situation));
  if (!is_away(situation)) arrives_ = situation.now() + p_.returns_within;
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
  found_.clear();
  for (const HandMove& move : p_.moves) {
    found_.push_back(situation.value(move.channel));
    actions.set(move.channel, move.value, event_);
    if (p_.undo && move.pending.valid()) actions.set(move.pending, situation.value(move.pending) + 1.0, event_);
    if (!p_.undo && move.lasting.valid()) actions.set(move.lasting, move.value, event_);
  }
  const bool came = arrives_ != kNever && situation.now() >= arrives_;
  arrives_ = kNever;
  if (!came || !p_.stays_until.valid() || p_.stays <= Tick{0}) return;
  heard_until_ = std::max(situation.value(p_.stays_until), seconds(situation.now() + p_.stays));
  actions.set(p_.stays_until, heard_until_, event_);
}

/// The last to put a thing back leaves it as it lasts; one before that takes away only its own setting.
void GrowerResponse::undo(const Situation& situation, Actions& actions) {
  stage_ = Stage::rests;
  const EventId deed = event_;
  event_ = actions.log(EventKind::people, p_.undoes, event_);
  for (std::size_t i = 0; i < p_.moves.size(); ++i) {
    const HandMove& move = p_.moves[i];
    const bool counted = move.pending.valid();
    const double others = counted ? situation.value(move.pending) - 1.0 : 0.0;
    const bool newest = !counted || situation.last_change(move.pending) == deed;
    if (counted) actions.set(move.pending, others, event_);
    if (others < 0.5 && move.lasting.valid()) {
      actions.set(move.channel, situation.value(move.lasting), event_);
    } else if (newest && situation.value(move.channel) == move.value) {
      actions.set(move.channel, found_[i], event_);
    }
  }
}

}  // namespace noonhouse
