// SPDX-License-Identifier: Apache-2.0
#include <array>
#include <cmath>
#include <map>
#include <tuple>

#include "tools/compare/run_recorder.hpp"

namespace noonhouse {
namespace {
std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// Name of what owns each amount: nodes, then accounts.
std::vector<std::string> owners(const House& house) {
  std::vector<std::string> out(at(house.states));
  for (const NodeInfo& node : house.nodes)
    for (int k = 0; k < node.states; ++k) out[at(node.first_state + k)] = node.name;
  out.insert(out.end(), house.account_names.begin(), house.account_names.end());
  return out;
}

}  // namespace

/// Each node's own change against what its fluxes carried, and the same for the whole house: the two are worked out
/// apart (states by the method's stages, carried amounts by its quadrature), so their difference audits both.
void put_balances(RunRecord& record, const House& house, const RunResult& result) {
  std::vector<double> inflow(at(house.states + house.accounts), 0.0);
  std::array<double, kConservedQuantities> change{}, net{}, crossed{};
  const auto names = owners(house);
  std::map<std::tuple<std::string, std::string, std::string, std::string>, double> paths;
  for (std::size_t j = 0; j < house.flux.size(); ++j) {
    const FluxInfo& flux = house.flux[j];
    const double carried = result.state.carried[j];
    inflow[at(flux.from)] -= carried;
    inflow[at(flux.to)] += carried;
    if (flux.quantity == Quantity::reading) continue;
    paths[{house.exchanges[at(flux.exchange)].path, names[at(flux.from)], names[at(flux.to)],
           std::string(quantity_name(flux.quantity))}] += carried;
    const bool from_outside = flux.from >= house.states, to_outside = flux.to >= house.states;
    if (from_outside == to_outside) continue;
    const auto q = static_cast<std::size_t>(flux.quantity);
    crossed[q] += std::abs(carried);
    net[q] += from_outside ? carried : -carried;
  }
  for (const NodeInfo& node : house.nodes)
    for (int k = 0; k < node.states; ++k) {
      const Quantity quantity = node.counts[at(k)];
      if (quantity == Quantity::reading) continue;
      const auto state = at(node.first_state + k);
      const double gained = result.state.amounts[state] - house.initial_amounts[state];
      change[static_cast<std::size_t>(quantity)] += gained;
      record.balances.push_back(
          {node.name, std::string(quantity_name(quantity)), gained, inflow[state], gained - inflow[state]});
    }
  for (const auto& [key, amount] : paths)
    record.paths.push_back({std::get<0>(key), std::get<1>(key), std::get<2>(key), std::get<3>(key), amount});
  const auto relative = [&](Quantity quantity) {
    const auto q = static_cast<std::size_t>(quantity);
    return crossed[q] > 0.0 ? std::abs(change[q] - net[q]) / crossed[q] : std::abs(change[q] - net[q]);
  };
  const auto over = [&](Quantity quantity) { return crossed[static_cast<std::size_t>(quantity)]; };
  record.closure = {relative(Quantity::energy), relative(Quantity::water), relative(Quantity::charge),
                    over(Quantity::energy),     over(Quantity::water),     over(Quantity::charge)};
}

}  // namespace noonhouse
