// SPDX-License-Identifier: Apache-2.0
// The checks a house must pass before it is compiled.
#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/connected_components.hpp>
#include <map>
#include <set>
#include <tuple>

#include "sim/core/errors.hpp"
#include "sim/graph/house_graph.hpp"

namespace noonhouse {
namespace {

[[noreturn]] void unsound(const std::string& message) {
  throw UserError(ErrorKind::unsound_house, "the house does not hold together: " + message);
}

void require_unique(const char* what, const std::vector<std::string>& names) {
  std::set<std::string> seen;
  for (const auto& name : names) {
    if (name.empty()) unsound(std::string("a ") + what + " has no name");
    if (!seen.insert(name).second) unsound(std::string("two ") + what + "s are named '" + name + "'; rename one");
  }
}

}  // namespace

void HouseGraph::check() const {
  check_names();
  check_ends();
  check_duplicates();
  check_reach();
}

void HouseGraph::check_names() const {
  const auto names = [](const auto& items, auto name_of) {
    std::vector<std::string> out;
    for (const auto& item : items) out.push_back(name_of(item));
    return out;
  };
  require_unique("node", names(nodes_, [](const auto& n) { return n.name; }));
  require_unique("account", names(accounts_, [](const auto& a) { return a.first; }));
  require_unique("channel", names(channels_, [](const auto& c) { return c.first; }));
  require_unique("exchange", names(exchanges_, [](const auto& e) { return e.name; }));
}

std::string HouseGraph::end_name(const End& end) const {
  return end.account.valid() ? accounts_[static_cast<std::size_t>(end.account.index)].first
                             : nodes_[static_cast<std::size_t>(end.node.index)].name;
}

/// A flux must carry what both its ends count: a wrong pairing is the assembler's own error.
void HouseGraph::check_ends() const {
  const auto counted = [this](const End& end) {
    if (end.account.valid()) return accounts_.at(static_cast<std::size_t>(end.account.index)).second;
    const auto& node = nodes_.at(static_cast<std::size_t>(end.node.index));
    NOON_ASSERT(end.which >= 0 && end.which < node.states);
    return node.counts[static_cast<std::size_t>(end.which)];
  };
  for (const auto& exchange : exchanges_) {
    for (std::size_t j = 0; j < exchange.ends.size(); ++j) {
      NOON_ASSERT(counted(exchange.ends[j].from) == exchange.carries[j]);
      NOON_ASSERT(counted(exchange.ends[j].to) == exchange.carries[j]);
      if (exchange.ends[j].from == exchange.ends[j].to)
        unsound("exchange '" + exchange.name + "' leads from '" + end_name(exchange.ends[j].from) + "' to itself");
    }
    for (const auto& input : exchange.inputs) NOON_ASSERT(input.node.valid() || input.channel.valid());
  }
}

void HouseGraph::check_duplicates() const {
  using Key = std::tuple<std::string_view, std::vector<Input>, std::vector<End>>;
  std::map<Key, std::string> seen;
  for (const auto& exchange : exchanges_) {
    if (exchange.may_repeat) continue;
    std::vector<End> ends;
    for (const auto& pair : exchange.ends) {
      ends.push_back(pair.from);
      ends.push_back(pair.to);
    }
    const auto [at, fresh] = seen.try_emplace(Key{exchange.law, exchange.inputs, ends}, exchange.name);
    if (!fresh)
      unsound("'" + exchange.name + "' and '" + at->second + "' are the same " + std::string(exchange.law) +
              " between the same places, so it would count twice; remove one or join them");
  }
}

/// Every node must exchange something, and every connected part must reach beyond the boundary.
void HouseGraph::check_reach() const {
  using Graph = boost::adjacency_list<boost::vecS, boost::vecS, boost::undirectedS>;
  if (nodes_.empty()) unsound("it has no nodes");
  Graph graph(nodes_.size() + accounts_.size());
  const auto vertex = [this](const End& end) {
    return end.account.valid() ? nodes_.size() + static_cast<std::size_t>(end.account.index)
                               : static_cast<std::size_t>(end.node.index);
  };
  for (const auto& exchange : exchanges_)
    for (const auto& ends : exchange.ends) boost::add_edge(vertex(ends.from), vertex(ends.to), graph);
  std::vector<int> component(boost::num_vertices(graph));
  const int count = boost::connected_components(graph, component.data());
  std::vector<bool> reaches(static_cast<std::size_t>(count), false);
  for (std::size_t v = nodes_.size(); v < component.size(); ++v) reaches[static_cast<std::size_t>(component[v])] = true;
  for (std::size_t v = 0; v < nodes_.size(); ++v) {
    if (boost::out_degree(v, graph) == 0)
      unsound("'" + nodes_[v].name + "' exchanges nothing with anything; connect it or remove it");
    if (!reaches[static_cast<std::size_t>(component[v])])
      unsound("'" + nodes_[v].name + "' and what it is joined to have no way to the outside");
  }
}

}  // namespace noonhouse
