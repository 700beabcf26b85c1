// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <span>
#include <vector>

#include "sim/graph/house.hpp"

namespace noonhouse {

/// The balance of one amount of one node over a run.
struct NodeBalance {
  int node = 0;  ///< into House::nodes
  Quantity quantity = Quantity::energy;
  double change = 0.0;  ///< of the store, end less start [J, kg]
  double inflow = 0.0;  ///< what its fluxes carried in, net [J, kg]
  double residual() const { return change - inflow; }
};

/// The balance of one quantity over the whole house.
struct TotalBalance {
  double change = 0.0;   ///< of all stores together [J, kg]
  double inflow = 0.0;   ///< through the boundary, net [J, kg]
  double crossed = 0.0;  ///< through the boundary, both ways added up flux by flux [J, kg]
  /// |change - inflow| over what crossed; the plain difference where nothing crossed.
  double relative() const;
};

struct BalanceAudit {
  std::vector<NodeBalance> nodes;                         ///< one a conserved amount of a node
  std::array<TotalBalance, kConservedQuantities> totals;  ///< by Quantity
  const TotalBalance& total(Quantity quantity) const { return totals[static_cast<std::size_t>(quantity)]; }
};

/// Audits a run: each store's own change against what every flux carried since the start. The two are worked out
/// apart (stores by the method's stages, carried amounts by its quadrature and by people's transfers), so a wrong sign
/// or a lost flux in either shows. Readings are not conserved and stay out.
/// `start` and `end` are amounts (states first), `carried` one number a flux.
BalanceAudit audit_balance(const House& house, std::span<const double> start, std::span<const double> end,
                           std::span<const double> carried);

}  // namespace noonhouse
