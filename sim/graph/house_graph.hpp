// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <algorithm>
#include <memory>
#include <string>
#include <typeindex>
#include <utility>
#include <vector>

#include "sim/graph/house.hpp"

namespace noonhouse {

/// The house while it is put together: nodes, accounts beyond the boundary, channels and exchanges.
/// compile() checks it on a Boost.Graph graph (every part reaches the boundary, no orphan, no duplicate;
/// otherwise UserError unsound_house) and turns it into flat arrays with a fill-reducing order.
class HouseGraph {
 public:
  /// `initial` and `tolerance` are in potentials (K, kg/kg, kg, J): the state at the start, and the
  /// error that the step control calls one unit.
  template <StoreKind T>
  NodeId node(std::string name, const T& store, const std::array<double, static_cast<std::size_t>(T::kStates)>& initial,
              const std::array<double, static_cast<std::size_t>(T::kStates)>& tolerance) {
    auto& batch = store_batch<T>();
    NodeDraft draft{std::move(name), T::kStates, {}, {}, {}, -1, !kStoresNothing<T>};
    for (std::size_t k = 0; k < static_cast<std::size_t>(T::kStates); ++k) {
      draft.counts[k] = T::kCounts[k];
      draft.initial[k] = initial[k];
      draft.tolerance[k] = tolerance[k];
    }
    batch.stores.push_back(store);
    batch.first_state.push_back(static_cast<int>(nodes_.size()));  // the node for now; the state when compiled
    nodes_.push_back(std::move(draft));
    return NodeId{static_cast<int>(nodes_.size()) - 1};
  }

  /// The name a node was given.
  const std::string& name_of(NodeId node) const { return nodes_[static_cast<std::size_t>(node.index)].name; }

  AccountId account(std::string name, Quantity quantity);
  ChannelId channel(std::string name, std::string unit, double initial);

  /// `ends` gives each flux its two ends, in the law's order of fluxes.
  template <ExchangeLaw L>
  ExchangeId exchange(std::string name, std::string path, const L& law,
                      const std::array<Input, static_cast<std::size_t>(L::kInputs)>& inputs,
                      const std::array<Ends, static_cast<std::size_t>(L::kFluxes)>& ends) {
    auto& batch = exchange_batch<L>();
    ExchangeDraft draft{std::move(name),
                        std::move(path),
                        L::kName,
                        {inputs.begin(), inputs.end()},
                        {ends.begin(), ends.end()},
                        {L::kCarries.begin(), L::kCarries.end()},
                        last_batch_,
                        batch.laws.size(),
                        kMayRepeat<L>};
    batch.laws.push_back(law);
    std::array<int, static_cast<std::size_t>(L::kInputs)> unset;
    unset.fill(-1);
    batch.inputs.push_back(unset);
    exchanges_.push_back(std::move(draft));
    return ExchangeId{static_cast<int>(exchanges_.size()) - 1};
  }

  /// Takes all that was added; the graph is empty afterwards.
  House compile();

 private:
  struct NodeDraft {
    std::string name;
    int states;
    std::array<Quantity, 2> counts;
    std::array<double, 2> initial, tolerance;
    int first_state;
    bool stores;
  };
  struct ExchangeDraft {
    std::string name, path;
    std::string_view law;
    std::vector<Input> inputs;
    std::vector<Ends> ends;
    std::vector<Quantity> carries;
    std::size_t batch, slot;
    bool may_repeat;
  };
  /// A batch whose element type is hidden, with what compile() needs to set.
  struct StoreSlot {
    std::type_index type;
    std::unique_ptr<StoreBatch> batch;
    std::vector<int>* first_state;
  };
  struct ExchangeSlot {
    std::type_index type;
    std::unique_ptr<ExchangeBatch> batch;
    int inputs, fluxes;
    int* (*input_row)(ExchangeBatch&, std::size_t slot);
  };

  template <StoreKind T>
  StoresOf<T>& store_batch() {
    for (auto& slot : stores_)
      if (slot.type == typeid(T)) return static_cast<StoresOf<T>&>(*slot.batch);
    auto made = std::make_unique<StoresOf<T>>();
    auto& batch = *made;
    stores_.push_back({typeid(T), std::move(made), &batch.first_state});
    return batch;
  }
  template <ExchangeLaw L>
  ExchangesOf<L>& exchange_batch() {
    for (last_batch_ = 0; last_batch_ < laws_.size(); ++last_batch_)
      if (laws_[last_batch_].type == typeid(L)) return static_cast<ExchangesOf<L>&>(*laws_[last_batch_].batch);
    laws_.push_back({typeid(L), std::make_unique<ExchangesOf<L>>(), L::kInputs, L::kFluxes,
                     [](ExchangeBatch& batch, std::size_t slot) {
                       return static_cast<ExchangesOf<L>&>(batch).inputs[slot].data();
                     }});
    return static_cast<ExchangesOf<L>&>(*laws_.back().batch);
  }

  void check() const;
  void check_names() const;
  void check_ends() const;
  void check_duplicates() const;
  void check_reach() const;
  void order_states(House& house);
  void lay_out_fluxes(House& house);
  void lay_out_rates(House& house) const;
  void lay_out_matrix(House& house) const;
  void lay_out_scatter(House& house) const;
  void lay_out_junctions(House& house) const;
  void lay_out_start(House& house) const;
  std::string end_name(const End& end) const;
  std::vector<std::pair<int, int>> coupled_nodes() const;

  std::vector<NodeDraft> nodes_;
  std::vector<std::pair<std::string, Quantity>> accounts_;
  std::vector<std::pair<std::string, std::string>> channels_;
  std::vector<double> channel_initial_;
  std::vector<ExchangeDraft> exchanges_;
  std::vector<StoreSlot> stores_;
  std::vector<ExchangeSlot> laws_;
  std::size_t last_batch_ = 0;
};

}  // namespace noonhouse
