// SPDX-License-Identifier: Apache-2.0
#include "models/hazard/hail_strike.hpp"

#include <algorithm>
#include <array>
#include <cstdio>

#include "models/hazard/hail.hpp"

namespace noonhouse {
namespace {

constexpr Tick kTold = 1_min;
constexpr double kNoneLeft = 0.005;  // of a facet: told as all broken

std::string number(double value) {
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), value < 99.5 ? "%.2g" : "%.0f", value);
  return text.data();
}

}  // namespace

std::vector<ChannelId> HailStrike::follows(const Parameters& p) {
  std::vector<ChannelId> out;
  for (const Cover& cover : p.covers) out.push_back(cover.position);
  return out;
}

double HailStrike::left_of_stone_j(const Situation& situation) const {
  double left = p_.stone_j;
  for (const Cover& cover : p_.covers)
    if (situation.value(cover.position) > Cover::kDrawn) left -= cover.absorbs_j;
  return std::max(left, 0.0);
}

EventId HailStrike::cause(const Situation& situation) const {
  std::vector<std::string> drawn_by;
  for (const Cover& cover : p_.covers) drawn_by.push_back(cover.name);
  const EventId failed_cover = situation.standing_failure(drawn_by);
  if (failed_cover != kNoEvent) return failed_cover;
  return p_.hailing.valid() ? situation.last_change(p_.hailing) : kNoEvent;
}

void HailStrike::break_more(const Situation& situation, Actions& actions) {
  const double newly = hail_broken_share(p_.hits_m2_s, p_.opens_m2, seconds(situation.now() - told_));
  const double whole = 1.0 - situation.value(p_.broken);
  if (newly <= 0.0 || whole < kNoneLeft) return;
  if (failure_ == kNoEvent) {
    const std::string what =
        "is broken by hail of " + number(reaching_j_) + " J: it bears " + number(p_.bears_j) + " J";
    failure_ = actions.log(EventKind::failure, what, cause(situation));
  }
  actions.set(p_.broken, 1.0 - whole * (1.0 - newly), failure_);
}

void HailStrike::finish(const Situation& situation, Actions& actions) {
  hailing_ = false;
  const EventId hail = p_.hailing.valid() ? situation.last_change(p_.hailing) : kNoEvent;
  const double broken = situation.value(p_.broken);
  const std::string share = number(100.0 * broken) + " % of it is broken", stones = number(p_.stone_j) + " J";
  if (failure_ != kNoEvent)
    actions.log(EventKind::weather, "hail is over: " + share, failure_);
  else if (broken > 0.0)  // by another storm
    actions.log(EventKind::weather, "lost no more to stones of " + stones + ": " + share + " already", hail);
  else
    actions.log(EventKind::weather, "held the hail: stones of " + stones, hail);
}

void HailStrike::react(const Situation& situation, const Trigger& trigger, Actions& actions) {
  const Tick now = situation.now();
  if (trigger.kind == Trigger::Kind::start && p_.from < p_.until && now < p_.until) {
    if (now < p_.from) return actions.wake(0, p_.from);
  } else if (trigger.kind == Trigger::Kind::start || (!hailing_ && trigger.kind != Trigger::Kind::wake)) {
    return;
  }
  if (hail_breaks(reaching_j_, p_.bears_j)) break_more(situation, actions);
  if (now >= p_.until) return finish(situation, actions);
  hailing_ = true;
  told_ = now;
  reaching_j_ = left_of_stone_j(situation);
  actions.wake(0, hail_breaks(reaching_j_, p_.bears_j) ? std::min(now + kTold, p_.until) : p_.until);
}

}  // namespace noonhouse
