// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <deque>
#include <map>
#include <span>
#include <string>

#include "sim/core/errors.hpp"
#include "sim/run/run.hpp"

namespace noonhouse {

/// An agent with what the run keeps for it.
struct Run::AgentRecord {
  std::unique_ptr<Agent> agent;
  bool decides = false;
  std::map<int, CalendarKey> wakes;         ///< by slot
  std::map<int, std::size_t> watches;       ///< slot -> place in Run::watches_
  std::map<int, CalendarKey> passed;        ///< crossings that fired at this instant and are not yet heard, by slot
  std::map<int, std::deque<Tick>> firings;  ///< recent ones, by slot
  EventId standing_failure = kNoEvent;

  AgentRecord branch(const AgentPlan& plan) const {
    AgentRecord out{plan.copy(*agent), decides, wakes, watches, passed, firings, standing_failure};
    NOON_ASSERT(out.agent != nullptr);
    return out;
  }
};

/// What one agent sees and may do at one instant: the const situation, and the actions.
class Run::Desk final : public Situation, public Actions {
 public:
  Desk(Run& run, AgentId agent, EventId cause) : run_(run), agent_(agent), cause_(cause) {}

  Tick now() const override { return run_.state_.now; }
  double value(const Input& input) const override { return run_.value(input); }
  EventId last_change(ChannelId channel) const override;
  EventId standing_failure(std::span<const std::string> of) const override;

  EventId log(EventKind kind, std::string what, EventId cause) override;
  EventId log(EventKind kind, std::string what) override { return log(kind, std::move(what), cause_); }
  void clear_failure() override { record().standing_failure = kNoEvent; }
  void hold_failure(EventId earlier) override { record().standing_failure = earlier; }
  void set(ChannelId channel, double value, EventId because) override;
  void renew(ChannelId channel, EventId because) override;
  void wake(int slot, Tick when) override;
  void arm(int slot, const Watch& watch) override;
  void disarm(int slot) override;
  void transfer(ExchangeId exchange, int flux, double amount) override;

 private:
  void forget_passed(int slot);
  AgentRecord& record() { return run_.agents_[static_cast<std::size_t>(agent_.index)]; }
  Run& run_;
  AgentId agent_;
  EventId cause_;
};

/// What observers see of the stretch just finished.
class Run::View final : public Stretch {
 public:
  explicit View(const House& house) : states_(house.states), reader_(house) {}
  /// The instant before the first step.
  void show_start(const HouseState& state, const ChannelLine& channels) {
    nothing_.amounts1.assign(state.amounts.begin(), state.amounts.begin() + states_);
    nothing_.carried1 = state.carried;
    show(nothing_, channels, state.now, state.now);
  }
  void show(const Step& step, const ChannelLine& channels, Tick begin, Tick end) {
    step_ = &step;
    channels_ = &channels;
    begin_ = begin;
    end_ = end;
  }
  Tick begin() const override { return begin_; }
  Tick end() const override { return end_; }
  std::span<const double> potentials_at(Tick when) const override {
    NOON_ASSERT(when >= begin_ && when <= end_);
    return reader_.potentials(*step_, *channels_, when);
  }
  std::span<const double> carried_at(Tick when) const override {
    NOON_ASSERT(when >= begin_ && when <= end_);
    if (step_->begin == step_->end) return step_->carried1;
    carried_.resize(step_->carried1.size());
    step_->carried_at(when, carried_.data());
    return carried_;
  }

 private:
  int states_;
  Step nothing_;  ///< shown at the start
  const Step* step_ = nullptr;
  const ChannelLine* channels_ = nullptr;
  Tick begin_, end_;
  mutable StepReader reader_;
  mutable std::vector<double> carried_;
};

}  // namespace noonhouse
