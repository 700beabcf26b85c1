// SPDX-License-Identifier: Apache-2.0
// What a run can do beside going from start to end: be branched, and be acted on from outside.
#include "sim/core/errors.hpp"
#include "sim/core/index.hpp"
#include "sim/run/run_desk.hpp"

namespace noonhouse {
namespace {
constexpr std::int64_t kCoarserRestart = 4;  ///< by which a coarser branch's first step after a jump is longer
}  // namespace

void Run::set_channel(ChannelId channel, double value, EventId because) {
  auto& current = line_.value[at(channel.index)];
  if (current == value) return;
  NOON_ASSERT(line_.begin == state_.now && line_.slope[at(channel.index)] == 0.0);
  current = value;
  redraw_ = true;
  settled_fresh_ = false;
  tell_followers(channel, because);
}

void Run::tell_followers(ChannelId channel, EventId because) {
  last_change_[at(channel.index)] = because;
  for (AgentId follower : followers_[at(channel.index)]) {
    const Trigger trigger{Trigger::Kind::channel_changed, 0, channel, because};
    book(follower, trigger, state_.now, phase_of(follower));
  }
}

EventId Run::impose(ChannelId channel, double value, EventKind kind, std::string subject, std::string what) {
  NOON_ASSERT(begun_);
  reach();
  const auto id = static_cast<EventId>(log_.size());
  if (kind == EventKind::failure)
    imposed_failures_[subject] = id;
  else
    imposed_failures_.erase(subject);
  log_.push_back({id, kNoEvent, state_.now, kind, std::move(subject), std::move(what)});
  for (Observer* observer : observers_) observer->see_event(log_.back());
  set_channel(channel, value, id);
  return id;
}

std::unique_ptr<Run> Run::branch(double coarser) const {
  NOON_ASSERT(begun_);
  auto out = std::make_unique<Run>(*plan_);
  if (!plan_->method) {
    StepControl control = plan_->steps;
    control.tolerance *= coarser;
    if (coarser > 1.0) control.restart = control.restart * kCoarserRestart;
    out->stepper_ = std::make_unique<Stepper>(plan_->house, control);
  }
  out->begun_ = true;
  out->state_ = state_;
  out->line_ = line_;
  out->line_end_ = line_end_;
  out->line_until_ = line_until_;
  out->redraw_ = redraw_;
  out->calendar_ = calendar_;
  out->followers_ = followers_;
  out->last_change_ = last_change_;
  out->imposed_failures_ = imposed_failures_;
  out->watches_ = watches_;
  out->log_ = log_;
  for (std::size_t i = 0; i < agents_.size(); ++i) out->agents_.push_back(agents_[i].branch(*plan_->agents[i]));
  out->stepper_->restart();
  return out;
}

}  // namespace noonhouse
