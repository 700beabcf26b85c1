// SPDX-License-Identifier: Apache-2.0
#include "models/power/battery_guard.hpp"

#include <algorithm>
#include <cmath>

#include "models/properties/figure_text.hpp"
#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

constexpr Tick kWatchAgain = 15_min;
constexpr int kAgain = 0;  // slot of the wake; watches have slots of their own

}  // namespace

BatteryGuard::BatteryGuard(Parameters parameters)
    : p_(std::move(parameters)),
      scale_{p_.capacity_j, p_.cold, p_.temperature, p_.cells},
      is_shed_(p_.levels.size(), false) {
  for (const Level& level : p_.levels) NOON_ASSERT(level.back_at > level.sheds_at);
}

std::vector<ChannelId> BatteryGuard::follows(const Parameters& p) {
  return p.cells.valid() ? std::vector<ChannelId>{p.cells} : std::vector<ChannelId>{};
}

void BatteryGuard::react(const Situation& situation, const Trigger& trigger, Actions& actions) {
  const auto level = static_cast<std::size_t>(trigger.slot);
  look_at_cells(situation);
  switch (trigger.kind) {
    case Trigger::Kind::crossing:
      if (is_shed_[level]) return give_back(level, situation, actions);
      return shed(level, situation, actions, trigger.cause);
    case Trigger::Kind::start:
    case Trigger::Kind::wake:
      if (scale_.knows_temperature() || p_.lost_with_cells.valid()) actions.wake(kAgain, situation.now() + kWatchAgain);
      [[fallthrough]];
    case Trigger::Kind::channel_changed:
      return watch_all(situation, actions, trigger.cause);
  }
}

UsableCharge<double> BatteryGuard::usable(const Situation& situation) const {
  return scale_.usable([&](const Input& input) { return situation.value(input); });
}

/// Keeps account of what cells took with them and of what is missing since cells came back without it: at most what the
/// battery lacks to be full at any look, so that it is forgotten as the battery fills.
void BatteryGuard::look_at_cells(const Situation& situation) {
  const double cells = p_.cells.valid() ? situation.value(p_.cells) : 1.0;
  const double lost_j = p_.lost_with_cells.valid() ? situation.value(p_.lost_with_cells) : 0.0;
  if (lost_j > lost_seen_j_) {
    dead_hold_j_ += lost_j - lost_seen_j_;
    lost_seen_j_ = lost_j;
    emptied_by_ = situation.last_change(p_.lost_with_cells);
  }
  if (cells > cells_) {
    const double back_j = dead_hold_j_ * (cells - cells_) / (1.0 - cells_);
    dead_hold_j_ -= back_j;
    came_empty_j_ += back_j;
  }
  cells_ = cells;
  const double top_j = usable(situation).top_j;
  if (top_j > 0.0) came_empty_j_ = std::clamp(top_j - situation.value(p_.charge), 0.0, came_empty_j_);
}

bool BatteryGuard::lacks_most_by_cells(const Situation& situation) const {
  const double top_j = usable(situation).top_j;
  return top_j > 0.0 && came_empty_j_ > 0.5 * (top_j - situation.value(p_.charge));
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
  const double limit_j = usable(situation).charge_at(is_shed_[level] ? l.back_at : l.sheds_at);
  actions.arm(static_cast<int>(level), {p_.charge, limit_j, direction});
}

void BatteryGuard::shed(std::size_t level, const Situation& situation, Actions& actions, EventId cause) {
  const Level& l = p_.levels[level];
  is_shed_[level] = true;
  if (lacks_most_by_cells(situation)) cause = emptied_by_;
  if (cause == kNoEvent) cause = situation.standing_failure(p_.drained_by);
  const std::string why = why_low(situation), down = "is down to " + percent_text(l.sheds_at);
  EventId said = kNoEvent;
  switch (l.act) {
    case Act::cuts_off:
      said = actions.log(EventKind::failure, "cuts all loads off",
                         actions.log(EventKind::warning, "is down to its cut-off: " + why, cause));
      break;
    case Act::sheds:
      said = actions.log(EventKind::warning, down + " and sheds " + l.sheds + ": " + why, cause);
      break;
    case Act::tells:
      said = actions.log(EventKind::action, down + ": " + why, cause);
      break;
  }
  actions.set(l.permit, 0.0, said);
  if (usable(situation).span_j() > 0.0) watch(level, situation, actions);
}

void BatteryGuard::give_back(std::size_t level, const Situation& situation, Actions& actions) {
  const Level& l = p_.levels[level];
  is_shed_[level] = false;
  if (l.act == Act::cuts_off) actions.clear_failure();
  std::string what = "is at " + percent_text(l.back_at);
  if (l.act == Act::sheds) what += " and gives back " + l.sheds;
  if (l.act == Act::tells) what += " again";
  if (l.act == Act::cuts_off) what = "is charged again: loads are back";
  actions.set(l.permit, 1.0, actions.log(EventKind::action, what, kNoEvent));
  watch(level, situation, actions);
}

std::string BatteryGuard::why_low(const Situation& situation) const {
  const UsableCharge<double> now = usable(situation);
  if (now.top_j <= 0.0) return "none of its cells works";
  constexpr double kWorthSaying = 0.05;
  const std::string taken =
      "dead cells took " + percent_text(came_empty_j_ / now.top_j) + " of what it holds when full and came back empty";
  std::string out = "the loads drew more than the panel gave";
  if (lacks_most_by_cells(situation)) {
    out = taken;
  } else if (came_empty_j_ > kWorthSaying * now.top_j) {
    out += ", and " + taken;
  }
  if (now.top_j < p_.capacity_j) out += ", and only " + percent_text(now.top_j / p_.capacity_j) + " of its cells work";
  if (now.floor_j > kWorthSaying * now.top_j)
    out += ", and the cold locks up " + percent_text(now.floor_j / now.top_j) + " of what it holds when full";
  return out;
}

}  // namespace noonhouse
