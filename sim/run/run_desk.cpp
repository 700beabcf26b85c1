// SPDX-License-Identifier: Apache-2.0
#include "sim/run/run_desk.hpp"

#include <algorithm>

#include "sim/core/errors.hpp"
#include "sim/core/index.hpp"

namespace noonhouse {

EventId Run::Desk::last_change(ChannelId channel) const { return run_.last_change_[at(channel.index)]; }

EventId Run::Desk::standing_failure(std::span<const std::string> of) const {
  EventId newest = kNoEvent;
  for (const auto& record : run_.agents_)
    if (std::find(of.begin(), of.end(), record.agent->name()) != of.end())
      newest = std::max(newest, record.standing_failure);
  for (const auto& [name, failure] : run_.imposed_failures_)
    if (std::find(of.begin(), of.end(), name) != of.end()) newest = std::max(newest, failure);
  return newest;
}

EventId Run::Desk::log(EventKind kind, std::string what, EventId cause) {
  const auto id = static_cast<EventId>(run_.log_.size());
  NOON_ASSERT(cause < id);
  run_.log_.push_back({id, cause, now(), kind, std::string(record().agent->name()), std::move(what)});
  if (kind == EventKind::failure) record().standing_failure = id;
  for (Observer* observer : run_.observers_) observer->see_event(run_.log_.back());
  cause_ = id;  // what follows in this reaction follows from it
  return id;
}

void Run::Desk::set(ChannelId channel, double value, EventId because) { run_.set_channel(channel, value, because); }

void Run::Desk::renew(ChannelId channel, EventId because) {
  if (last_change(channel) != because) run_.tell_followers(channel, because);
}

void Run::Desk::wake(int slot, Tick when) {
  auto& wakes = record().wakes;
  if (const auto old = wakes.find(slot); old != wakes.end()) {
    run_.calendar_.cancel(old->second);
    wakes.erase(old);
  }
  if (when == kNever) return;
  NOON_ASSERT(when >= now());
  const Trigger trigger{Trigger::Kind::wake, slot, {}, kNoEvent};
  wakes.emplace(slot, run_.calendar_.book(when, run_.phase_of(agent_), Due{agent_, trigger}));
}

/// A crossing of this instant that the agent has not heard of yet, of a watch that it now replaces or disarms.
void Run::Desk::forget_passed(int slot) {
  const auto old = record().passed.find(slot);
  if (old == record().passed.end()) return;
  run_.calendar_.cancel(old->second);
  record().passed.erase(old);
}

void Run::Desk::arm(int slot, const Watch& watch) {
  forget_passed(slot);
  auto& places = record().watches;
  const auto [place, fresh] = places.try_emplace(slot, run_.watches_.size());
  if (fresh) run_.watches_.emplace_back();
  ArmedWatch& armed = run_.watches_[place->second];
  armed = {agent_, slot, true, watch, run_.house_->position(watch.what)};
  if (armed.passed(value(watch.what))) run_.fire(armed, cause_);
}

void Run::Desk::disarm(int slot) {
  forget_passed(slot);
  const auto place = record().watches.find(slot);
  if (place != record().watches.end()) run_.watches_[place->second].armed = false;
}

void Run::Desk::transfer(ExchangeId exchange, int flux, double amount) {
  const auto& info = run_.house_->exchanges[at(exchange.index)];
  NOON_ASSERT(flux >= 0 && flux < info.fluxes);
  const auto j = at(info.first_flux + flux);
  run_.state_.carried[j] += amount;
  run_.state_.amounts[at(run_.house_->flux_from[j])] -= amount;
  run_.state_.amounts[at(run_.house_->flux_to[j])] += amount;
  run_.settled_fresh_ = false;
  run_.stepper_->restart();
}

}  // namespace noonhouse
