// SPDX-License-Identifier: Apache-2.0
#include <map>
#include <tuple>

#include "sim/core/index.hpp"
#include "sim/graph/balance.hpp"
#include "tools/compare/run_recorder.hpp"

namespace noonhouse {
namespace {

/// Name of what owns each amount: nodes, then accounts.
std::vector<std::string> owners(const House& house) {
  std::vector<std::string> out(at(house.states));
  for (const NodeInfo& node : house.nodes)
    for (int k = 0; k < node.states; ++k) out[at(node.first_state + k)] = node.name;
  out.insert(out.end(), house.account_names.begin(), house.account_names.end());
  return out;
}

}  // namespace

void put_balances(RunRecord& record, const House& house, const RunResult& result) {
  const BalanceAudit audit = audit_balance(house, house.initial_amounts, result.state.amounts, result.state.carried);
  for (const NodeBalance& line : audit.nodes)
    record.balances.push_back({house.nodes[at(line.node)].name, std::string(quantity_name(line.quantity)), line.change,
                               line.inflow, line.residual()});
  const auto names = owners(house);
  std::map<std::tuple<std::string, std::string, std::string, std::string>, double> paths;
  for (std::size_t j = 0; j < house.flux.size(); ++j) {
    const FluxInfo& flux = house.flux[j];
    if (flux.quantity == Quantity::reading) continue;
    paths[{house.exchanges[at(flux.exchange)].path, names[at(flux.from)], names[at(flux.to)],
           std::string(quantity_name(flux.quantity))}] += result.state.carried[j];
  }
  for (const auto& [key, amount] : paths)
    record.paths.push_back({std::get<0>(key), std::get<1>(key), std::get<2>(key), std::get<3>(key), amount});
  const TotalBalance &energy = audit.total(Quantity::energy), &water = audit.total(Quantity::water),
                     &charge = audit.total(Quantity::charge);
  record.closure = {energy.relative(), water.relative(), charge.relative(),
                    energy.crossed,    water.crossed,    charge.crossed};
}

}  // namespace noonhouse
