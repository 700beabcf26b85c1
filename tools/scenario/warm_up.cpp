// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/warm_up.hpp"

#include <algorithm>
#include <set>

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

/// Amounts with the temperatures, humidities and readings of `warm` and the stored waters and charges of `given`.
std::vector<double> warmed_amounts(const Assembly& assembly, const std::vector<double>& warm) {
  const House& house = assembly.plan.house;
  const auto states = static_cast<std::size_t>(house.states);
  std::vector<double> given_p(states), warm_p(states), out(house.initial_amounts);
  for (const auto& batch : house.store_batches) {
    batch->potentials(house.initial_amounts.data(), given_p.data());
    batch->potentials(warm.data(), warm_p.data());
  }
  std::set<NodeId> air;
  for (const BayParts& bay : assembly.bays) air.insert(bay.air.begin(), bay.air.end());
  for (std::size_t n = 0; n < house.nodes.size(); ++n) {
    if (air.contains(NodeId{static_cast<int>(n)})) continue;
    for (int k = 0; k < house.nodes[n].states; ++k) {
      const Quantity counts = house.nodes[n].counts[static_cast<std::size_t>(k)];
      const auto state = static_cast<std::size_t>(house.nodes[n].first_state) + static_cast<std::size_t>(k);
      if (counts == Quantity::water || counts == Quantity::charge) warm_p[state] = given_p[state];
    }
  }
  for (const auto& batch : house.store_batches) batch->amounts(warm_p.data(), out.data());
  return out;
}

}  // namespace

void warm_up(Assembly& assembly, Tick length) {
  RunPlan& plan = assembly.plan;
  if (length.ms <= 0 || plan.length < kDay) return;
  const Tick real_length = plan.length;
  auto real = std::move(plan.forcing);
  plan.forcing = std::make_unique<FirstDayAgain>(*real);
  plan.length = length;
  std::vector<double> warm;
  {
    Run run(plan);
    warm = run.go().state.amounts;
  }
  plan.house.initial_amounts = warmed_amounts(assembly, warm);
  plan.length = real_length;
  plan.forcing = std::move(real);
}

}  // namespace noonhouse
