// SPDX-License-Identifier: Apache-2.0
#include "sim/run/run.hpp"

#include <algorithm>

#include "sim/core/errors.hpp"
#include "sim/core/index.hpp"
#include "sim/run/run_desk.hpp"

namespace noonhouse {
namespace {
constexpr int kMostDeliveriesAtOneInstant = 10'000;
}  // namespace

Run::Run(const RunPlan& plan)
    : plan_(&plan),
      house_(&plan.house),
      stepper_(plan.method ? plan.method(plan.house) : std::make_unique<Stepper>(plan.house, plan.steps)),
      finder_(plan.house, plan.isolation),
      view_(std::make_unique<View>(plan.house)) {
  state_.amounts = house_->initial_amounts;
  state_.carried.assign(at(house_->fluxes), 0.0);
  line_.value = house_->initial_channels;
  line_.slope.assign(at(house_->channels), 0.0);
  settled_potentials_.assign(at(house_->states + house_->channels), 0.0);
  followers_.resize(at(house_->channels));
  last_change_.assign(at(house_->channels), kNoEvent);
}

Run::~Run() = default;

RunResult Run::go() {
  NOON_ASSERT(!begun_);
  run_to(plan_->length);
  reach();
  settle();
  RunResult result{state_, line_.value, stepper_->steps(), stepper_->rejected(),
                   static_cast<std::int64_t>(log_.size())};
  return result;
}

void Run::run_to(Tick when, const std::function<bool()>& enough) {
  if (!begun_) prepare();
  const Tick limit = std::min(when, plan_->length);
  while (state_.now < limit && !(enough && enough())) one_step(limit);
}

void Run::one_step(Tick limit) {
  reach();
  settle();
  if (redraw_) draw_lines();
  const Tick begin = state_.now;
  const Step& step = stepper_->advance(state_, line_, horizon(limit));
  cross(step);
  show(begin, state_.now);
}

void Run::prepare() {
  begun_ = true;
  line_until_ = Tick{0};
  draw_lines();
  start_agents();
  settle();
  draw_lines();
  view_->show_start(state_, line_);
  for (Observer* observer : observers_) observer->see_start(*view_);
}

void Run::start_agents() {
  for (std::size_t i = 0; i < plan_->agents.size(); ++i) {
    const AgentId id{static_cast<int>(i)};
    AgentRecord record;
    record.agent = plan_->agents[i]->start();
    record.decides = plan_->agents[i]->decides();
    agents_.push_back(std::move(record));
    for (ChannelId channel : plan_->agents[i]->follows()) followers_[at(channel.index)].push_back(id);
    book(id, {Trigger::Kind::start, 0, {}, kNoEvent}, Tick{0}, phase_of(id));
  }
}

/// Brings the lines' values to this instant, so that agents see, and set, what holds from here on.
void Run::reach() {
  line_.at(state_.now, line_.value.data());
  line_.begin = state_.now;
  if (state_.now >= line_until_ && state_.now < plan_->length) draw_lines();
}

void Run::settle() {
  instant_deliveries_ = 0;
  while (calendar_.next_time() <= state_.now) deliver(calendar_.take_next().second);
}

void Run::deliver(const Due& due) {
  auto& record = agents_[at(due.agent.index)];
  if (++instant_deliveries_ > kMostDeliveriesAtOneInstant)
    throw UserError(ErrorKind::chatter, "'" + std::string(record.agent->name()) +
                                            "' and what follows it keep changing each other without time passing; "
                                            "give one of them a minimum time");
  if (due.trigger.kind == Trigger::Kind::wake) record.wakes.erase(due.trigger.slot);
  if (due.trigger.kind == Trigger::Kind::crossing) record.passed.erase(due.trigger.slot);
  Desk desk(*this, due.agent, due.trigger.cause);
  record.agent->react(desk, due.trigger, desk);
}

void Run::draw_lines() {
  const Tick now = state_.now;
  if (now >= line_until_) line_until_ = plan_->forcing->next_break(now);
  NOON_ASSERT(line_until_ > now);
  line_.begin = now;
  line_end_ = line_.value;
  const std::vector<double> before = line_.value;
  plan_->forcing->fill(now, line_until_, before, line_.value, line_end_);
  const double span = seconds(line_until_ - now);
  for (std::size_t i = 0; i < line_end_.size(); ++i) line_.slope[i] = (line_end_[i] - line_.value[i]) / span;
  redraw_ = false;
  settled_fresh_ = false;
}

Tick Run::horizon(Tick limit) const { return std::min({line_until_, calendar_.next_time(), limit}); }

void Run::cross(const Step& step) {
  const Tick when = finder_.find(watches_, step, line_, stepper_->end_potentials(), fired_);
  settled_fresh_ = false;
  if (when == kNever) return;
  stepper_->cut(state_, when);
  for (std::size_t i : fired_) fire(watches_[i], kNoEvent);
}

void Run::fire(ArmedWatch& watch, EventId cause) {
  watch.armed = false;
  count_firing(watch);
  const Trigger trigger{Trigger::Kind::crossing, watch.slot, {}, cause};
  agents_[at(watch.agent.index)].passed[watch.slot] = book(watch.agent, trigger, state_.now, Phase::crossing);
}

void Run::show(Tick begin, Tick end) {
  view_->show(stepper_->last_step(), line_, begin, end);
  for (Observer* observer : observers_) observer->see_stretch(*view_);
  if (progress_) progress_(seconds(end) / seconds(plan_->length));
}

CalendarKey Run::book(AgentId agent, const Trigger& trigger, Tick when, Phase phase) {
  return calendar_.book(when, phase, Due{agent, trigger});
}

Phase Run::phase_of(AgentId agent) const {
  return plan_->agents[at(agent.index)]->decides() ? Phase::controller : Phase::device;
}

void Run::count_firing(const ArmedWatch& watch) {
  auto& record = agents_[at(watch.agent.index)];
  auto& recent = record.firings[watch.slot];
  recent.push_back(state_.now);
  while (state_.now - recent.front() > plan_->chatter_window) recent.pop_front();
  if (static_cast<int>(recent.size()) > plan_->chatter_limit)
    throw UserError(ErrorKind::chatter, "'" + std::string(record.agent->name()) + "' switched " +
                                            std::to_string(recent.size()) + " times within " +
                                            std::to_string(plan_->chatter_window.ms / 1000) +
                                            " s: widen the gap between its two limits or give it a minimum time");
}

/// A potential at this instant. Called by agents only, so the whole set is made fresh at most once an instant.
double Run::value(const Input& input) { return potentials()[at(house_->position(input))]; }

std::span<const double> Run::potentials() {
  if (!settled_fresh_) {
    for (const auto& batch : house_->store_batches)
      batch->potentials(state_.amounts.data(), settled_potentials_.data());
    std::copy_n(line_.value.begin(), house_->channels, settled_potentials_.begin() + house_->states);
    settled_fresh_ = true;
  }
  return settled_potentials_;
}

}  // namespace noonhouse
