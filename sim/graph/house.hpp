// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sim/contract/ids.hpp"
#include "sim/contract/quantity.hpp"
#include "sim/graph/batches.hpp"
#include "sim/graph/pattern.hpp"

namespace noonhouse {

/// A node as compiled: its amounts sit at first_state .. first_state + states - 1.
struct NodeInfo {
  std::string name;
  int states = 0;
  int first_state = -1;
  std::array<Quantity, 2> counts{};
  bool stores = true;  ///< false for a junction, whose state is a potential and no amount
};

struct ExchangeInfo {
  std::string name;
  std::string path;  ///< the kind of way, for ledgers: "ventilation", "through the cover"
  std::string_view law;
  int first_flux = -1;
  int fluxes = 0;
};

/// One flux: subtracted from the amount at `from`, added to the amount at `to` (states, then accounts).
struct FluxInfo {
  int from = -1, to = -1;
  Quantity quantity = Quantity::energy;
  int exchange = -1;
};

/// One of the terms that make up a sum: an index and its sign.
struct SignedTerm {
  int index = 0;
  double sign = 1.0;
};
/// Where a derivative of a flux goes in the Jacobian: off at `minus`, on at `plus`.
struct ScatterEntry {
  int derivative = 0, minus = 0, plus = 0;
};
/// The two columns of a two-state node, side by side in every row that holds one of them.
struct ColumnPair {
  int position = 0, state = 0;
};

/// The part of the house that has no memory: junctions, whose potentials follow from the rest.
struct JunctionLayout {
  std::vector<int> states;            ///< of the junctions, rising
  std::vector<int> batches;           ///< exchange batches with a flux that ends at a junction
  Pattern pattern;                    ///< of junctions by junctions, in the order of `states`
  std::vector<ScatterEntry> scatter;  ///< into that pattern; entries() is nowhere
};

/// The house as the steppers see it: const, flat, shared by all runs. Made by HouseGraph::compile().
/// Amounts: states [0, states), then accounts. Potentials: states' [0, states), then channels'.
struct House {
  int states = 0, accounts = 0, channels = 0, fluxes = 0, derivatives = 0;
  std::vector<std::unique_ptr<StoreBatch>> store_batches;
  std::vector<std::unique_ptr<ExchangeBatch>> exchange_batches;
  std::vector<int> batch_first_flux, batch_first_derivative;

  std::vector<FluxInfo> flux;
  std::vector<int> flux_from, flux_to;   ///< the same ends, packed
  std::vector<SignedTerm> state_fluxes;  ///< the fluxes at each state in turn, minus where they leave
  std::vector<int> state_fluxes_end;     ///< per state: where its own end
  std::vector<int> partner;              ///< per state: the other state of its node, or itself
  std::vector<double> stores;            ///< per state: 1 if it stores an amount, 0 at a junction
  JunctionLayout junctions;
  Pattern pattern;
  std::vector<ScatterEntry> scatter;  ///< into the Jacobian by potentials; Pattern::entries() is nowhere
  std::vector<ColumnPair> single_columns, paired_columns;

  std::vector<double> initial_amounts;  ///< states and accounts (accounts begin at zero)
  std::vector<double> initial_channels;
  std::vector<double> amount_tolerance;  ///< per state: what the error norm calls one unit

  std::vector<NodeInfo> nodes;  ///< in the order they were added
  std::vector<std::string> account_names;
  std::vector<Quantity> account_quantity;
  std::vector<std::string> channel_names, channel_units;
  std::vector<ExchangeInfo> exchanges;
  std::vector<std::string> state_names;  ///< "floor in the south bay, energy"

  /// Position of an input among the potentials.
  int position(const Input& input) const;
  /// Position of an end among the amounts.
  int position(const End& end) const;
  std::optional<NodeId> find_node(std::string_view name) const;
  std::optional<ChannelId> find_channel(std::string_view name) const;
  std::optional<ExchangeId> find_exchange(std::string_view name) const;
};

}  // namespace noonhouse
