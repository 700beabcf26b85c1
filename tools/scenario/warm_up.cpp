// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/warm_up.hpp"

#include <algorithm>
#include <set>

#include "tools/scenario/ground_plan.hpp"
#include "tools/scenario/warm_up.hpp"

namespace noonhouse {
namespace {

/// The first day of another forcing, again and again; what differs at midnight jumps.
class FirstDayAgain final : public Forcing {
 public:
  explicit FirstDayAgain(const Forcing& day) : day_(&day) {}
  Tick next_break(Tick t) const override {
    return midnight_before(t) + std::min(day_->next_break(t - midnight_before(t)), kDay);
  }
  void fill(Tick from, Tick to, std::span<const double> channels, std::span<double> at_from,
            std::span<double> at_to) const override {
    const Tick midnight = midnight_before(from);
    day_->fill(from - midnight, to - midnight, channels, at_from, at_to);
  }

 private:
  static Tick midnight_before(Tick t) { return Tick{t.ms - t.ms % kDay.ms}; }
  const Forcing* day_;
};

/// Amounts with the temperatures, humidities and readings of `warm` and the stored waters and charges of `given`; what
/// plants have borne counts from the run's start.
std::vector<double> warmed_amounts(const Assembly& assembly, const std::vector<double>& warm) {
  const House& house = assembly.plan.house;
  const auto states = static_cast<std::size_t>(house.states);
  std::vector<double> given_p(states), warm_p(states), out(house.initial_amounts);
  for (const auto& batch : house.store_batches) {
    batch->potentials(house.initial_amounts.data(), given_p.data());
    batch->potentials(warm.data(), warm_p.data());
  }
  std::set<NodeId> air;
  for (const BayParts& bay : assembly.bays) {
    air.insert(bay.air.begin(), bay.air.end());
    air.insert(bay.column.begin(), bay.column.end());
  }
  for (std::size_t n = 0; n < house.nodes.size(); ++n) {
    if (air.contains(NodeId{static_cast<int>(n)})) continue;
    for (int k = 0; k < house.nodes[n].states; ++k) {
      const Quantity counts = house.nodes[n].counts[static_cast<std::size_t>(k)];
      const auto state = static_cast<std::size_t>(house.nodes[n].first_state) + static_cast<std::size_t>(k);
      if (counts == Quantity::water || counts == Quantity::charge) warm_p[state] = given_p[state];
    }
  }
  for (const NodeId node : assembly.not_warmed_up) {
    const auto state = static_cast<std::size_t>(house.nodes[static_cast<std::size_t>(node.index)].first_state);
    warm_p[state] = given_p[state];
  }
  for (const auto& batch : house.store_batches) batch->amounts(warm_p.data(), out.data());
  return out;
}

/// Means of all potentials over a run, from samples at even spacing.
class MeanPotentials final : public Observer {
 public:
  explicit MeanPotentials(std::size_t count) : sums_(count, 0.0) {}
  void see_start(const Stretch&) override {}
  void see_stretch(const Stretch& stretch) override {
    for (; next_ <= stretch.end(); next_ = next_ + kEvery) {
      const auto p = stretch.potentials_at(next_);
      for (std::size_t i = 0; i < sums_.size(); ++i) sums_[i] += p[i];
      ++samples_;
    }
  }
  double mean(std::size_t i) const { return sums_[i] / samples_; }

 private:
  static constexpr Tick kEvery = 10_min;
  Tick next_ = kEvery;
  std::vector<double> sums_;
  double samples_ = 0.0;
};

std::size_t state_of(const House& house, NodeId node) {
  return static_cast<std::size_t>(house.nodes[static_cast<std::size_t>(node.index)].first_state);
}

/// Mean temperatures of the ground's layers below the skin when a day with these means comes again and again [K].
std::vector<double> ground_in_season(const ScenarioSpec& spec, const GroundRest& rest, double day) {
  const auto layers = ground_layers(spec.house.floor);
  std::vector<double> out = ground_at_rest(layers, rest);
  const auto straight = ground_at_rest(
      layers, {deep_ground_k(spec, day, 0.0), deep_ground_k(spec, day, ground_depth_m(layers)), 0.0, 0.0});
  double depth = layers.front().thickness_m;
  for (std::size_t i = 0; i < out.size(); ++i) {
    depth += layers[i + 1].thickness_m;
    out[i] += deep_ground_k(spec, day, depth - 0.5 * layers[i + 1].thickness_m) - straight[i];
  }
  return out;
}

/// Moves each layer of ground by what its mean of the day lacks to its mean at rest.
void settle_ground(const Assembly& assembly, const ScenarioSpec& spec, const MeanPotentials& means,
                   std::vector<double>& amounts) {
  const House& house = assembly.plan.house;
  std::vector<double> potentials(static_cast<std::size_t>(house.states));
  for (const auto& batch : house.store_batches) batch->potentials(amounts.data(), potentials.data());
  const auto channel = [&](ChannelId id) {
    return static_cast<std::size_t>(house.states) + static_cast<std::size_t>(id.index);
  };
  const double day = day_of_run_year(spec.run, Tick{kDay.ms / 2});
  for (std::size_t b = 0; b < assembly.bays.size(); ++b) {
    const double floor_m2 = assembly.shape.bays[b].floor_m2;
    const GroundRest rest{means.mean(state_of(house, assembly.bays[b].floor)),
                          means.mean(channel(assembly.site.deep_soil)), means.mean(channel(assembly.site.outdoor)),
                          edge_conductance_w_k(spec.house, assembly.shape, static_cast<int>(b)) / floor_m2};
    const auto settled = ground_in_season(spec, rest, day);
    for (std::size_t i = 0; i < settled.size(); ++i) {
      const std::size_t state = state_of(house, assembly.bays[b].soil[i]);
      potentials[state] += settled[i] - means.mean(state);
    }
  }
  for (const auto& batch : house.store_batches) batch->amounts(potentials.data(), amounts.data());
}

}  // namespace

void warm_up(Assembly& assembly, const ScenarioSpec& spec, Tick length) {
  RunPlan& plan = assembly.plan;
  if (length.ms <= 0 || plan.length < kDay) return;
  const Tick real_length = plan.length;
  auto real = std::move(plan.forcing);
  plan.forcing = std::make_unique<FirstDayAgain>(*real);
  const std::vector<double> given = plan.house.initial_amounts;
  std::vector<double> warm;
  for (Tick done{0}; done < length; done = done + plan.length) {
    plan.length = std::min(kDay, length - done);
    MeanPotentials means(static_cast<std::size_t>(plan.house.states) + static_cast<std::size_t>(plan.house.channels));
    Run run(plan);
    run.add_observer(means);
    warm = run.go().state.amounts;
    if (plan.length == kDay) settle_ground(assembly, spec, means, warm);
    plan.house.initial_amounts = given;
    plan.house.initial_amounts = warmed_amounts(assembly, warm);
  }
  plan.length = real_length;
  plan.forcing = std::move(real);
}

}  // namespace noonhouse
