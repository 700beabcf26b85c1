// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <functional>
#include <memory>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "sim/contract/agent.hpp"
#include "sim/contract/observer.hpp"
#include "sim/run/run.hpp"
#include "tests/support/toy_house.hpp"

namespace noonhouse::toy {

/// An agent whose reaction is a function; what it remembers lives in what the function holds.
class Scripted final : public Agent {
 public:
  using Reaction = std::function<void(const Situation&, const Trigger&, Actions&)>;
  Scripted(std::string name, Reaction reaction) : name_(std::move(name)), reaction_(std::move(reaction)) {}
  std::string_view name() const override { return name_; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override {
    reaction_(situation, trigger, actions);
  }

 private:
  std::string name_;
  Reaction reaction_;
};

/// `make` gives each run a fresh reaction with memory of its own.
class ScriptedPlan final : public AgentPlan {
 public:
  using Make = std::function<Scripted::Reaction()>;
  ScriptedPlan(std::string name, Make make, std::vector<ChannelId> follows = {}, bool decides = false)
      : name_(std::move(name)), make_(std::move(make)), follows_(std::move(follows)), decides_(decides) {}
  std::unique_ptr<Agent> start() const override { return std::make_unique<Scripted>(name_, make_()); }
  std::vector<ChannelId> follows() const override { return follows_; }
  bool decides() const override { return decides_; }

 private:
  std::string name_;
  Make make_;
  std::vector<ChannelId> follows_;
  bool decides_;
};

/// A plan for an agent whose one reaction is shared by all runs: for tests of a single run.
inline std::unique_ptr<AgentPlan> scripted(std::string name, Scripted::Reaction reaction,
                                           std::vector<ChannelId> follows = {}, bool decides = false) {
  return std::make_unique<ScriptedPlan>(
      std::move(name), [reaction = std::move(reaction)] { return reaction; }, std::move(follows), decides);
}

/// A thermostat with two limits: on at or below `low`, off at or above `high`.
struct Thermostat {
  Input sees;
  ChannelId drives;
  double low = 0.0, high = 0.0, power = 0.0;
  void operator()(const Situation& situation, const Trigger& trigger, Actions& actions) const {
    const auto watch = [&](Watch::Direction way) {
      const bool rising = way == Watch::Direction::rising;
      actions.arm(0, {sees, rising ? high : low, way});
    };
    if (trigger.kind == Trigger::Kind::start) return watch(Watch::Direction::falling);
    const bool on = situation.value(drives) == 0.0;
    const auto event = actions.log(EventKind::action, on ? "on" : "off");
    actions.set(drives, on ? power : 0.0, event);
    watch(on ? Watch::Direction::rising : Watch::Direction::falling);
  }
};

/// Opens the vent between two temperatures, asks again every ten minutes, and waters the film when it dries.
inline Scripted::Reaction gardener(const Ids& id) {
  return [id](const Situation& situation, const Trigger& trigger, Actions& actions) {
    if (trigger.kind == Trigger::Kind::crossing) {
      const auto event = actions.log(EventKind::people, "watered");
      actions.transfer(id.can, 0, 0.8);
      actions.set(id.heater_w, situation.value(id.heater_w), event);
    } else {
      const double open = situation.value(id.air) > 297.0 ? 0.6 : 0.05;
      if (open != situation.value(id.vent_kg_s))
        actions.set(id.vent_kg_s, open, actions.log(EventKind::action, "vent"));
      actions.wake(0, situation.now() + 10_min);
    }
    actions.arm(1, {id.film, 0.2, Watch::Direction::falling});
  };
}

/// The toy house, or another one on its ids, with weather, a thermostat and a gardener: tens of events a day.
inline RunPlan busy_plan(Tick length, House (*built)(Ids&) = build) {
  RunPlan plan;
  Ids id;
  plan.house = built(id);
  plan.forcing = weather(id);
  plan.length = length;
  plan.agents.push_back(std::make_unique<ScriptedPlan>("thermostat", [id] {
    return Thermostat{id.sensor, id.heater_w, 286.0, 287.5, 3000.0};
  }));
  plan.agents.push_back(std::make_unique<ScriptedPlan>(
      "gardener", [id] { return gardener(id); }, std::vector<ChannelId>{}, true));
  return plan;
}

/// Keeps every event and the ends of every stretch.
class Recorder final : public Observer {
 public:
  void see_start(const Stretch& stretch) override { see_stretch(stretch); }
  void see_stretch(const Stretch& stretch) override {
    ends.push_back(stretch.end());
    const auto middle = Tick{(stretch.begin().ms + stretch.end().ms) / 2};
    const auto values = stretch.potentials_at(middle);
    for (double v : values) sum += v;
    for (double v : stretch.carried_at(middle)) sum += v;
    if (each) each(stretch);
  }
  void see_event(const LogEntry& entry) override { events.push_back(entry); }
  std::vector<Tick> ends;
  std::vector<LogEntry> events;
  double sum = 0.0;
  std::function<void(const Stretch&)> each;
};

}  // namespace noonhouse::toy
