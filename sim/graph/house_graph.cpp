// SPDX-License-Identifier: Apache-2.0
#include "sim/graph/house_graph.hpp"

#include <set>

#include "sim/core/errors.hpp"
#include "sim/core/index.hpp"

namespace noonhouse {

AccountId HouseGraph::account(std::string name, Quantity quantity) {
  accounts_.emplace_back(std::move(name), quantity);
  return AccountId{static_cast<int>(accounts_.size()) - 1};
}

ChannelId HouseGraph::channel(std::string name, std::string unit, double initial) {
  channels_.emplace_back(std::move(name), std::move(unit));
  channel_initial_.push_back(initial);
  return ChannelId{static_cast<int>(channels_.size()) - 1};
}

House HouseGraph::compile() {
  check();
  House house;
  order_states(house);
  lay_out_fluxes(house);
  lay_out_rates(house);
  lay_out_matrix(house);
  lay_out_junctions(house);
  lay_out_start(house);
  *this = HouseGraph();
  return house;
}

/// Node pairs that meet in one flux: a row end with a column input.
std::vector<std::pair<int, int>> HouseGraph::coupled_nodes() const {
  std::vector<std::pair<int, int>> out;
  for (const auto& exchange : exchanges_)
    for (const auto& ends : exchange.ends)
      for (const End& end : {ends.from, ends.to})
        for (const Input& input : exchange.inputs)
          if (end.node.valid() && input.node.valid()) out.emplace_back(end.node.index, input.node.index);
  return out;
}

void HouseGraph::order_states(House& house) {
  const auto order = fill_reducing_order(static_cast<int>(nodes_.size()), coupled_nodes());
  for (int node : order) {
    nodes_[at(node)].first_state = house.states;
    house.states += nodes_[at(node)].states;
  }
  for (const auto& node : nodes_) {
    house.nodes.push_back({node.name, node.states, node.first_state, node.counts, node.stores});
  }
  house.stores.assign(at(house.states), 1.0);
  for (const auto& node : nodes_)
    if (!node.stores) house.stores[at(node.first_state)] = 0.0;
  house.partner.resize(at(house.states));
  for (const auto& node : nodes_)
    for (int k = 0; k < node.states; ++k)
      house.partner[at(node.first_state + k)] = node.first_state + node.states - 1 - k;
  house.state_names.resize(at(house.states));
  for (const auto& node : nodes_)
    for (int k = 0; k < node.states; ++k)
      house.state_names[at(node.first_state + k)] = node.name + ", " + std::string(quantity_name(node.counts[at(k)]));
  for (auto& slot : stores_) {
    for (int& first : *slot.first_state) first = nodes_[at(first)].first_state;
    house.store_batches.push_back(std::move(slot.batch));
  }
  house.accounts = static_cast<int>(accounts_.size());
  house.channels = static_cast<int>(channels_.size());
  for (auto& [name, quantity] : accounts_) {
    house.account_names.push_back(name);
    house.account_quantity.push_back(quantity);
  }
  for (auto& [name, unit] : channels_) {
    house.channel_names.push_back(name);
    house.channel_units.push_back(unit);
  }
}

void HouseGraph::lay_out_fluxes(House& house) {
  std::vector<int> batch_size(laws_.size(), 0);
  for (const auto& exchange : exchanges_) ++batch_size[exchange.batch];
  for (std::size_t b = 0; b < laws_.size(); ++b) {
    house.batch_first_flux.push_back(house.fluxes);
    house.batch_first_derivative.push_back(house.derivatives);
    house.fluxes += batch_size[b] * laws_[b].fluxes;
    house.derivatives += batch_size[b] * laws_[b].fluxes * laws_[b].inputs;
  }
  house.flux.resize(at(house.fluxes));
  for (const auto& exchange : exchanges_) {
    auto& law = laws_[exchange.batch];
    int* row = law.input_row(*law.batch, exchange.slot);
    for (std::size_t k = 0; k < exchange.inputs.size(); ++k) row[k] = house.position(exchange.inputs[k]);
    const int first = house.batch_first_flux[exchange.batch] + static_cast<int>(exchange.slot) * law.fluxes;
    for (std::size_t j = 0; j < exchange.ends.size(); ++j)
      house.flux[at(first) + j] = {house.position(exchange.ends[j].from), house.position(exchange.ends[j].to),
                                   exchange.carries[j], static_cast<int>(house.exchanges.size())};
    house.exchanges.push_back({exchange.name, exchange.path, exchange.law, first, law.fluxes});
  }
  for (const auto& flux : house.flux) {
    house.flux_from.push_back(flux.from);
    house.flux_to.push_back(flux.to);
  }
  for (auto& slot : laws_) house.exchange_batches.push_back(std::move(slot.batch));
}

/// Lists each state's fluxes, so that a rate is a sum without a detour over memory.
void HouseGraph::lay_out_rates(House& house) const {
  std::vector<std::vector<SignedTerm>> terms(at(house.states));
  for (int j = 0; j < house.fluxes; ++j) {
    const FluxInfo& flux = house.flux[at(j)];
    if (flux.from < house.states) terms[at(flux.from)].push_back({j, -1.0});
    if (flux.to < house.states) terms[at(flux.to)].push_back({j, 1.0});
  }
  for (const auto& of_state : terms) {
    house.state_fluxes.insert(house.state_fluxes.end(), of_state.begin(), of_state.end());
    house.state_fluxes_end.push_back(static_cast<int>(house.state_fluxes.size()));
  }
}

void HouseGraph::lay_out_matrix(House& house) const {
  std::set<std::pair<int, int>> entries;
  const auto whole_node = [&](int node, auto&& use) {
    for (int k = 0; k < nodes_[at(node)].states; ++k) use(nodes_[at(node)].first_state + k);
  };
  // Whole nodes couple, so that both columns of a two-state node stand side by side in every row.
  for (const auto& [a, b] : coupled_nodes())
    whole_node(a, [&](int row) { whole_node(b, [&](int col) { entries.emplace(row, col); }); });
  for (int node = 0; node < static_cast<int>(nodes_.size()); ++node)
    whole_node(node, [&](int row) { whole_node(node, [&](int col) { entries.emplace(row, col); }); });
  house.pattern = filled_pattern(house.states, {entries.begin(), entries.end()});

  lay_out_scatter(house);
  // Fill is zero before elimination and needs no chain rule.
  for (const auto& [row, col] : entries) {
    const int position = house.pattern.find(row, col), partner = house.partner[at(col)];
    if (partner == col) house.single_columns.push_back({position, col});
    if (partner > col) {
      NOON_ASSERT(partner == col + 1 && house.pattern.column[at(position) + 1] == partner);
      house.paired_columns.push_back({position, col});
    }
  }
}

void HouseGraph::lay_out_scatter(House& house) const {
  const int nowhere = house.pattern.entries();
  for (const auto& exchange : exchanges_) {
    const auto& law = laws_[exchange.batch];
    const int first_flux = house.batch_first_flux[exchange.batch] + static_cast<int>(exchange.slot) * law.fluxes;
    const int first_g =
        house.batch_first_derivative[exchange.batch] + static_cast<int>(exchange.slot) * law.fluxes * law.inputs;
    for (int j = 0; j < law.fluxes; ++j)
      for (int k = 0; k < law.inputs; ++k) {
        const int potential = house.position(exchange.inputs[at(k)]);
        if (potential >= house.states) continue;
        const auto place = [&](int row) { return row < house.states ? house.pattern.find(row, potential) : nowhere; };
        const FluxInfo& flux = house.flux[at(first_flux + j)];
        house.scatter.push_back({first_g + j * law.inputs + k, place(flux.from), place(flux.to)});
        NOON_ASSERT(house.scatter.back().minus >= 0 && house.scatter.back().plus >= 0);
      }
  }
}

/// Junctions among themselves: their own small matrix, in the order in which the whole one eliminates them.
void HouseGraph::lay_out_junctions(House& house) const {
  JunctionLayout& out = house.junctions;
  std::vector<int> rank(at(house.states), -1);
  for (int state = 0; state < house.states; ++state)
    if (house.stores[at(state)] == 0.0) {
      rank[at(state)] = static_cast<int>(out.states.size());
      out.states.push_back(state);
    }
  const auto rank_of = [&](int state) { return state < house.states ? rank[at(state)] : -1; };
  const int size = static_cast<int>(out.states.size());
  std::vector<std::pair<int, int>> edges;
  std::vector<std::array<int, 4>> found;  // derivative, row off, row on, column
  std::set<int> batches;
  for (const auto& exchange : exchanges_) {
    const auto& law = laws_[exchange.batch];
    const int slot = static_cast<int>(exchange.slot);
    const int first_flux = house.batch_first_flux[exchange.batch] + slot * law.fluxes;
    const int first_g = house.batch_first_derivative[exchange.batch] + slot * law.fluxes * law.inputs;
    for (int j = 0; j < law.fluxes; ++j) {
      const FluxInfo& flux = house.flux[at(first_flux + j)];
      const int off = rank_of(flux.from), on = rank_of(flux.to);
      if (off < 0 && on < 0) continue;
      batches.insert(static_cast<int>(exchange.batch));
      for (int k = 0; k < law.inputs; ++k) {
        const int column = rank_of(house.position(exchange.inputs[at(k)]));
        if (column < 0) continue;
        found.push_back({first_g + j * law.inputs + k, off, on, column});
        for (const int row : {off, on})
          if (row >= 0) edges.emplace_back(row, column);
      }
    }
  }
  for (int i = 0; i < size; ++i) edges.emplace_back(i, i);
  out.batches.assign(batches.begin(), batches.end());
  out.pattern = filled_pattern(size, edges);
  const int nowhere = out.pattern.entries();
  for (const auto& [derivative, off, on, column] : found)
    out.scatter.push_back({derivative, off < 0 ? nowhere : out.pattern.find(off, column),
                           on < 0 ? nowhere : out.pattern.find(on, column)});
}

void HouseGraph::lay_out_start(House& house) const {
  std::vector<double> potential(at(house.states), 0.0), nudged;
  std::vector<double> amount(at(house.states), 0.0), moved(at(house.states), 0.0);
  nudged = potential;
  for (const auto& node : nodes_)
    for (int k = 0; k < node.states; ++k) potential[at(node.first_state + k)] = node.initial[at(k)];
  for (const auto& batch : house.store_batches) batch->amounts(potential.data(), amount.data());
  // One unit of error in an amount: what one unit of error in its own potential moves it.
  house.amount_tolerance.assign(at(house.states), 0.0);
  for (int k = 0; k < 2; ++k) {
    nudged = potential;
    for (const auto& node : nodes_)
      if (k < node.states) nudged[at(node.first_state + k)] += node.tolerance[at(k)];
    for (const auto& batch : house.store_batches) batch->amounts(nudged.data(), moved.data());
    for (const auto& node : nodes_)
      if (k < node.states) {
        const auto state = at(node.first_state + k);
        house.amount_tolerance[state] = std::abs(moved[state] - amount[state]);
        NOON_ASSERT(house.amount_tolerance[state] > 0.0);
      }
  }
  house.initial_amounts = amount;
  house.initial_amounts.resize(at(house.states + house.accounts), 0.0);
  house.initial_channels = channel_initial_;
}

}  // namespace noonhouse
