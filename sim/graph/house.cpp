// SPDX-License-Identifier: Apache-2.0
#include "sim/graph/house.hpp"

#include <algorithm>

#include "sim/core/errors.hpp"

namespace noonhouse {

int House::position(const Input& input) const {
  if (input.channel.valid()) return states + input.channel.index;
  NOON_ASSERT(input.node.valid());
  return nodes[static_cast<std::size_t>(input.node.index)].first_state + input.which;
}

int House::position(const End& end) const {
  if (end.account.valid()) return states + end.account.index;
  NOON_ASSERT(end.node.valid());
  return nodes[static_cast<std::size_t>(end.node.index)].first_state + end.which;
}

namespace {
template <class IdType, class Items, class Name>
std::optional<IdType> find_by_name(const Items& items, std::string_view name, Name name_of) {
  const auto at = std::find_if(items.begin(), items.end(), [&](const auto& item) { return name_of(item) == name; });
  if (at == items.end()) return std::nullopt;
  return IdType{static_cast<int>(at - items.begin())};
}
}  // namespace

std::optional<NodeId> House::find_node(std::string_view name) const {
  return find_by_name<NodeId>(nodes, name, [](const NodeInfo& n) { return std::string_view(n.name); });
}

std::optional<ChannelId> House::find_channel(std::string_view name) const {
  return find_by_name<ChannelId>(channel_names, name, [](const std::string& n) { return std::string_view(n); });
}

std::optional<ExchangeId> House::find_exchange(std::string_view name) const {
  return find_by_name<ExchangeId>(exchanges, name, [](const ExchangeInfo& e) { return std::string_view(e.name); });
}

}  // namespace noonhouse
