// SPDX-License-Identifier: Apache-2.0
#include "models/power/battery_guard.hpp"

#include <cmath>

#include "models/properties/figure_text.hpp"
#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

constexpr Tick kWatchAgain = 15_min;
constexpr int kAgain = 0;  // slot of the wake; watches have slots of their own

bool is_given(const Input& input) { return input.node.valid() || input.channel.valid(); }

}  // namespace

BatteryGuard::BatteryGuard(Parameters parameters) : p_(std::move(parameters)), is_shed_(p_.levels.size(), false) {
  for (const Level& level : p_.levels) NOON_ASSERT(level.back_at > level.sheds_at);
}

std::vector<ChannelId> BatteryGuard::follows(const Parameters& p) {
  return p.cells.valid() ? std::vector<ChannelId>{p.cells} : std::vector<ChannelId>{};
}

void BatteryGuard::react(const Situation& situation, const Trigger& trigger, Actions& actions) {
  const auto level = static_cast<std::size_t>(trigger.slot);
  switch (trigger.kind) {
    case Trigger::Kind::crossing:
      if (is_shed_[level]) return give_back(level, situation, actions);
      return shed(level, situation, actions, trigger.cause);
    case Trigger::Kind::start:
    case Trigger::Kind::wake:
      if (is_given(p_.temperature)) actions.wake(kAgain, situation.now() + kWatchAgain);
      [[fallthrough]];
    case Trigger::Kind::channel_changed:
      return watch_all(situation, actions, trigger.cause);
  }
}

UsableCharge<double> BatteryGuard::usable(const Situation& situation) const {
  const double cells = p_.cells.valid() ? situation.value(p_.cells) : 1.0;
  constexpr double kWarmK = 313.15;
  const double temperature_k = is_given(p_.temperature) ? situation.value(p_.temperature) : kWarmK;
  return usable_charge(p_.capacity_j, p_.cold, temperature_k, cells);
}

double BatteryGuard::charge_at(double share, const Situation& situation) const {
  const UsableCharge<double> now = usable(situation);
  return now.floor_j + share * now.span_j();
}

void BatteryGuard::watch_all(const Situation& situation, Actions& actions, EventId cause) {
  const bool nothing_there = usable(situation).span_j() <= 0.0;
  for (std::size_t i = 0; i < p_.levels.size(); ++i) {
    if (!nothing_there) {
      watch(i, situation, actions);
      continue;
    }
    // Both limits of a level are one now: nothing to watch until there are cells again.
    actions.disarm(static_cast<int>(i));
    if (!is_shed_[i]) shed(i, situation, actions, cause);
  }
}

void BatteryGuard::watch(std::size_t level, const Situation& situation, Actions& actions) {
  const Level& l = p_.levels[level];
  const Watch::Direction direction = is_shed_[level] ? Watch::Direction::rising : Watch::Direction::falling;
  const double limit_j = charge_at(is_shed_[level] ? l.back_at : l.sheds_at, situation);
  actions.arm(static_cast<int>(level), {p_.charge, limit_j, direction});
}

void BatteryGuard::shed(std::size_t level, const Situation& situation, Actions& actions, EventId cause) {
  const Level& l = p_.levels[level];
  is_shed_[level] = true;
  if (cause == kNoEvent) cause = situation.standing_failure(p_.drained_by);
  const std::string why = why_low(situation);
  if (l.is_cut_off) {
    const EventId low = actions.log(EventKind::warning, "is down to its cut-off: " + why, cause);
    actions.set(l.permit, 0.0, actions.log(EventKind::failure, "cuts all loads off", low));
  } else {
    const std::string what = "is down to " + percent_text(l.sheds_at) + " and sheds " + l.sheds + ": " + why;
    actions.set(l.permit, 0.0, actions.log(EventKind::warning, what, cause));
  }
  if (usable(situation).span_j() > 0.0) watch(level, situation, actions);
}

void BatteryGuard::give_back(std::size_t level, const Situation& situation, Actions& actions) {
  const Level& l = p_.levels[level];
  is_shed_[level] = false;
  if (l.is_cut_off) actions.clear_failure();
  const std::string what = l.is_cut_off ? "is charged again: loads are back"
                                        : "is at " + percent_text(l.back_at) + " and gives back " + l.sheds;
  actions.set(l.permit, 1.0, actions.log(EventKind::action, what, kNoEvent));
  watch(level, situation, actions);
}

std::string BatteryGuard::why_low(const Situation& situation) const {
  const UsableCharge<double> now = usable(situation);
  if (now.top_j <= 0.0) return "none of its cells works";
  std::string out = "the loads drew more than the panel gave";
  if (now.top_j < p_.capacity_j) out += ", and only " + percent_text(now.top_j / p_.capacity_j) + " of its cells work";
  constexpr double kWorthSaying = 0.05;
  if (now.floor_j > kWorthSaying * now.top_j)
    out += ", and the cold locks up " + percent_text(now.floor_j / now.top_j) + " of what it holds when full";
  return out;
}

}  // namespace noonhouse
