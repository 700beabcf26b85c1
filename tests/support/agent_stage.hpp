// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <algorithm>
#include <map>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "models/water/catchment.hpp"
#include "models/water/wet_mass.hpp"
#include "sim/contract/agent_plan.hpp"
#include "sim/graph/house_graph.hpp"
#include "sim/run/run.hpp"

namespace noonhouse {

/// What an agent logged, in order; what a hand or a sign does, by instant; corners of a line over time.
using Said = std::vector<std::string>;
using Moves = std::vector<std::pair<Tick, double>>;
using Points = std::vector<std::pair<Tick, double>>;

/// Channels on straight lines through given points (time, value); flat before the first and after the last.
/// A jump: two points at one instant; the later one holds from there.
class PolylineForcing final : public Forcing {
 public:
  using Points = noonhouse::Points;
  void add(ChannelId channel, Points points) { lines_.emplace_back(channel, std::move(points)); }
  Tick next_break(Tick t) const override {
    Tick next = kNever;
    for (const auto& [channel, points] : lines_)
      for (const auto& point : points)
        if (point.first > t) next = std::min(next, point.first);
    return std::min(next, t + 1_h);
  }
  void fill(Tick from, Tick to, std::span<const double>, std::span<double> at_from,
            std::span<double> at_to) const override {
    for (const auto& [channel, points] : lines_) {
      const auto after = std::find_if(points.begin(), points.end(), [&](const auto& p) { return p.first > from; });
      const auto i = static_cast<std::size_t>(channel.index);
      if (after == points.begin() || after == points.end()) {
        at_from[i] = at_to[i] = after == points.end() ? points.back().second : points.front().second;
        continue;
      }
      const auto& [t0, v0] = *(after - 1);
      const auto& [t1, v1] = *after;
      const auto value = [&, a = v0, b = v1, begin = t0, end = t1](Tick t) {
        return a + (b - a) * (seconds(t - begin) / seconds(end - begin));
      };
      at_from[i] = value(from);
      at_to[i] = value(to);
    }
  }

 private:
  std::vector<std::pair<ChannelId, Points>> lines_;
};

/// A stage for agents: channels that the test moves (weather, readings), channels that agents set, a tank and a pot
/// with a way between them for a watering can, a way into the tank from outside, and agents on top of it in the
/// engine's own run.
class AgentStage {
 public:
  explicit AgentStage(Tick length, double tank_kg = 100.0, double pot_kg = 5.0) {
    plan_.length = length;
    plan_.isolation = Tick{1};
    tank = graph_.node("tank", WetMass{1e5}, {290.0, tank_kg}, {0.01, 0.01});
    pot = graph_.node("pot", WetMass{1e4}, {295.0, pot_kg}, {0.01, 0.01});
    const AccountId outside = graph_.account("outside", Quantity::water);
    const AccountId heat = graph_.account("outside heat", Quantity::energy);
    can = graph_.exchange("can", "hand", HandCarried{}, {tank}, {{{End(tank, 1), End(pot, 1)}, {tank, pot}}});
    drain_ = graph_.exchange("drain", "hand", HandCarried{}, {tank}, {{{End(tank, 1), outside}, {tank, heat}}});
    inlet = graph_.exchange("inlet", "road", HandCarried{}, {tank}, {{{outside, End(tank, 1)}, {heat, tank}}});
  }
  NodeId tank, pot;
  ExchangeId can, inlet;

  /// A channel that agents set.
  ChannelId channel(const std::string& name, double first = 0.0) { return graph_.channel(name, "1", first); }
  /// A channel that the test moves.
  ChannelId moved(const std::string& name, PolylineForcing::Points points) {
    const ChannelId out = graph_.channel(name, "1", points.front().second);
    forcing_->add(out, std::move(points));
    return out;
  }
  template <class A>
  void agent(typename A::Parameters parameters) {
    plan_.agents.push_back(std::make_unique<PlanOf<A>>(std::move(parameters)));
  }
  /// A hand that sets channels at given instants, logging "hand" each time.
  void hand(ChannelId channel, std::vector<std::pair<Tick, double>> moves) { agent<Hand>({channel, std::move(moves)}); }
  /// How many firings of one watch within a minute the run bears.
  void bear(int firings) { plan_.chatter_limit = firings; }
  /// Pours water of 0 degC into the tank from outside.
  void pour(Tick when, double water_kg) { agent<Pouring>({when, drain_, -water_kg}); }

  void run() {
    plan_.house = graph_.compile();
    plan_.forcing = std::move(forcing_);
    Run run(plan_);
    result_ = run.go();
    log_ = run.log();
  }
  const std::vector<LogEntry>& log() const { return log_; }
  /// What one agent logged: "instant in seconds text", in order.
  std::vector<std::string> said_by(const std::string& subject) const {
    std::vector<std::string> out;
    for (const auto& entry : log_)
      if (entry.subject == subject) out.push_back(time_text(entry.when) + " " + entry.what);
    return out;
  }
  /// The chain of causes that ends in the last entry whose text holds this, newest first.
  std::string chain_of(const std::string& text) const {
    EventId id = kNoEvent;
    for (const auto& entry : log_)
      if (entry.what.find(text) != std::string::npos) id = entry.id;
    std::string out;
    for (; id != kNoEvent; id = log_[static_cast<std::size_t>(id)].cause) {
      const auto& entry = log_[static_cast<std::size_t>(id)];
      out += (out.empty() ? "" : " <- ") + entry.subject + " " + entry.what;
    }
    return out;
  }
  std::int64_t steps() const { return result_.steps; }
  double last(ChannelId channel) const { return result_.channels[static_cast<std::size_t>(channel.index)]; }
  double water(NodeId node) const { return amount(End(node, 1)); }
  double energy(NodeId node) const { return amount(End(node, 0)); }

 private:
  class Hand final : public Agent {
   public:
    struct Parameters {
      ChannelId channel;
      std::vector<std::pair<Tick, double>> moves;
    };
    static constexpr bool kDecides = false;
    static std::vector<ChannelId> follows(const Parameters&) { return {}; }
    explicit Hand(Parameters p) : p_(std::move(p)) {}
    std::string_view name() const override { return "hand"; }
    void react(const Situation&, const Trigger& trigger, Actions& actions) override {
      if (trigger.kind == Trigger::Kind::wake) {
        actions.set(p_.channel, p_.moves[next_].second, actions.log(EventKind::people, "moves"));
        ++next_;
      }
      actions.wake(0, next_ < p_.moves.size() ? p_.moves[next_].first : kNever);
    }

   private:
    Parameters p_;
    std::size_t next_ = 0;
  };
  class Pouring final : public Agent {
   public:
    struct Parameters {
      Tick when;
      ExchangeId drain;
      double drained_kg = 0.0;
    };
    static constexpr bool kDecides = false;
    static std::vector<ChannelId> follows(const Parameters&) { return {}; }
    explicit Pouring(Parameters p) : p_(p) {}
    std::string_view name() const override { return "pouring"; }
    void react(const Situation&, const Trigger& trigger, Actions& actions) override {
      if (trigger.kind == Trigger::Kind::start) return actions.wake(0, p_.when);
      actions.transfer(p_.drain, 0, p_.drained_kg);
    }

   private:
    Parameters p_;
  };
  double amount(const End& end) const {
    return result_.state.amounts[static_cast<std::size_t>(plan_.house.position(end))];
  }
  static std::string time_text(Tick t) {
    return t.ms % 1000 == 0 ? std::to_string(t.ms / 1000) : std::to_string(t.ms) + "ms";
  }

  HouseGraph graph_;
  ExchangeId drain_;
  RunPlan plan_;
  std::unique_ptr<PolylineForcing> forcing_ = std::make_unique<PolylineForcing>();
  RunResult result_;
  std::vector<LogEntry> log_;
};

}  // namespace noonhouse
