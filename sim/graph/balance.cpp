// SPDX-License-Identifier: Apache-2.0
#include "sim/graph/balance.hpp"

#include <cmath>

#include "sim/core/index.hpp"

namespace noonhouse {

double TotalBalance::relative() const {
  const double difference = std::abs(change - inflow);
  return crossed > 0.0 ? difference / crossed : difference;
}

BalanceAudit audit_balance(const House& house, std::span<const double> start, std::span<const double> end,
                           std::span<const double> carried) {
  BalanceAudit audit;
  std::vector<double> inflow(at(house.states + house.accounts), 0.0);
  for (std::size_t j = 0; j < house.flux.size(); ++j) {
    const FluxInfo& flux = house.flux[j];
    inflow[at(flux.from)] -= carried[j];
    inflow[at(flux.to)] += carried[j];
    const bool from_outside = flux.from >= house.states, to_outside = flux.to >= house.states;
    if (flux.quantity == Quantity::reading || from_outside == to_outside) continue;
    TotalBalance& total = audit.totals[static_cast<std::size_t>(flux.quantity)];
    total.crossed += std::abs(carried[j]);
    total.inflow += from_outside ? carried[j] : -carried[j];
  }
  for (std::size_t n = 0; n < house.nodes.size(); ++n)
    for (int k = 0; k < house.nodes[n].states; ++k) {
      const Quantity quantity = house.nodes[n].counts[at(k)];
      if (quantity == Quantity::reading) continue;
      const auto state = at(house.nodes[n].first_state + k);
      // A junction stores nothing; its state is a pressure.
      const double change = house.nodes[n].stores ? end[state] - start[state] : 0.0;
      audit.totals[static_cast<std::size_t>(quantity)].change += change;
      audit.nodes.push_back({static_cast<int>(n), quantity, change, inflow[state]});
    }
  return audit;
}

}  // namespace noonhouse
