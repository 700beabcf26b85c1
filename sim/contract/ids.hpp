// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <compare>
#include <cstdint>

namespace noonhouse {

/// Typed indices: a node of the house, an account beyond its boundary, a channel that drives it.
template <class Tag>
struct Id {
  int index = -1;
  friend constexpr auto operator<=>(Id, Id) = default;
  constexpr bool valid() const { return index >= 0; }
};
using NodeId = Id<struct NodeTag>;
using AccountId = Id<struct AccountTag>;  ///< what lies beyond the boundary: "outdoor air", "sky", "rain"
using ChannelId = Id<struct ChannelTag>;  ///< a value set from outside: weather, sun, a device's position
using ExchangeId = Id<struct ExchangeTag>;
using AgentId = Id<struct AgentTag>;

/// What a law or a controller may read: one potential of a node, or a channel. Implicit from either id, so that wiring
/// lists stay readable.
struct Input {
  NodeId node;
  int which = 0;
  ChannelId channel;
  constexpr Input() = default;
  constexpr Input(NodeId n, int k = 0) : node(n), which(k) {}
  constexpr Input(ChannelId c) : channel(c) {}
  friend constexpr auto operator<=>(const Input&, const Input&) = default;
};

/// Where a flux begins or ends: one amount of a node, or an account beyond the boundary. Implicit as Input is.
struct End {
  NodeId node;
  int which = 0;
  AccountId account;
  constexpr End() = default;
  constexpr End(NodeId n, int k = 0) : node(n), which(k) {}
  constexpr End(AccountId a) : account(a) {}
  friend constexpr auto operator<=>(const End&, const End&) = default;
};

struct Ends {
  End from, to;
};

}  // namespace noonhouse
