// SPDX-License-Identifier: Apache-2.0
// The only file that includes Boost.Graph's flow headers, which are slow to compile.
#include "tools/placing/placement_flow.hpp"

#include <algorithm>
#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/successive_shortest_path_nonnegative_weights.hpp>
#include <boost/range/iterator_range.hpp>
#include <cmath>
#include <limits>

#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

/// Whole numbers, held in a floating type: an unreachable vertex's distance then adds up to infinity, where an integer
/// would overflow (the algorithm adds the largest value to each such vertex once a path).
using Price = long double;
constexpr int kExactBits = 63;
static_assert(std::numeric_limits<Price>::digits >= kExactBits, "prices must be exact whole numbers");

using Traits = boost::adjacency_list_traits<boost::vecS, boost::vecS, boost::directedS>;
struct Way {
  std::int64_t capacity_cm2 = 0, left_cm2 = 0;
  Price price = 0;
  Traits::edge_descriptor back{};
};
using Network = boost::adjacency_list<boost::vecS, boost::vecS, boost::directedS, boost::no_property, Way>;

Traits::edge_descriptor add_way(Network& net, std::size_t from, std::size_t to, std::int64_t capacity_cm2,
                                Price price) {
  const auto there = boost::add_edge(from, to, Way{capacity_cm2, 0, price, {}}, net).first;
  const auto back = boost::add_edge(to, from, Way{0, 0, -price, there}, net).first;
  net[there].back = back;
  return there;
}

/// Excess over the group's cheapest place per cm2; and the power of two that makes whole numbers of the excesses.
struct Excess {
  double cheapest = 0.0;  ///< sum over groups
  std::vector<std::vector<Price>> per_cm2;
  int bits = 0;

  Excess(const std::vector<std::int64_t>& area_cm2, const StandingCosts& cost, std::size_t places) {
    Price largest = 0;
    for (std::size_t i = 0; i < cost.size(); ++i) {
      const double least = *std::min_element(cost[i].begin(), cost[i].end());
      cheapest += least;
      per_cm2.emplace_back(places);
      for (std::size_t p = 0; p < places; ++p) {
        if (std::isinf(cost[i][p])) continue;
        per_cm2[i][p] = (Price{cost[i][p]} - Price{least}) / static_cast<Price>(area_cm2[i]);
        largest = std::max(largest, per_cm2[i][p]);
      }
    }
    if (largest <= 0) return;
    // A distance is a simple path of fewer than n + 2 prices, a reduced cost two distances and a price.
    bits = kExactBits - std::ilogb(static_cast<Price>(2 * (cost.size() + places + 3))) - 2 - std::ilogb(largest);
  }
  Price whole(std::size_t i, std::size_t p) const { return std::floor(std::ldexp(per_cm2[i][p], bits)); }
};

/// Shortest distances to every vertex over the ways that are left, from wherever they are shortest. A flow of least
/// cost leaves no circle of negative price, so they settle; the algorithm's own distances are lost where no way leads
/// any more.
std::vector<Price> distances(const Network& net, std::size_t source) {
  std::vector<Price> out(boost::num_vertices(net), 0);
  for (bool changed = true; changed;) {
    changed = false;
    for (const auto& way : boost::make_iterator_range(boost::edges(net))) {
      const std::size_t from = boost::source(way, net), to = boost::target(way, net);
      if (net[way].left_cm2 == 0 || from == source || to == source || out[from] + net[way].price >= out[to]) continue;
      out[to] = out[from] + net[way].price;
      changed = true;
    }
  }
  return out;
}

struct Stand {
  std::size_t group, place;
  Traits::edge_descriptor way;
};

/// The network from the source over groups, then places, to the sink.
struct Transport {
  std::size_t groups, places, source, sink;
  Network net;
  std::vector<Traits::edge_descriptor> out;  ///< from the source to each group
  std::vector<Stand> stands;

  Transport(const std::vector<std::int64_t>& area_cm2, const std::vector<std::int64_t>& room_cm2,
            const StandingCosts& cost, const Excess& excess)
      : groups(area_cm2.size()), places(room_cm2.size()), source(groups + places), sink(source + 1), net(sink + 1) {
    for (std::size_t p = 0; p < places; ++p) add_way(net, groups + p, sink, room_cm2[p], 0);
    for (std::size_t i = 0; i < groups; ++i) {
      out.push_back(add_way(net, source, i, area_cm2[i], 0));
      for (std::size_t p = 0; p < places; ++p)
        if (!std::isinf(cost[i][p]))
          stands.push_back({i, p, add_way(net, i, groups + p, area_cm2[i], excess.whole(i, p))});
    }
  }

  /// False if not all that leaves the source arrives.
  bool fill() {
    boost::successive_shortest_path_nonnegative_weights(net, source, sink,
                                                        boost::capacity_map(boost::get(&Way::capacity_cm2, net))
                                                            .residual_capacity_map(boost::get(&Way::left_cm2, net))
                                                            .weight_map(boost::get(&Way::price, net))
                                                            .reverse_edge_map(boost::get(&Way::back, net)));
    return std::all_of(out.begin(), out.end(), [&](const auto& way) { return net[way].left_cm2 == 0; });
  }
};

}  // namespace

std::optional<Spread> cheapest_spread(const std::vector<std::int64_t>& area_cm2,
                                      const std::vector<std::int64_t>& room_cm2, const StandingCosts& cost) {
  const std::size_t groups = area_cm2.size(), places = room_cm2.size();
  NOON_ASSERT(cost.size() == groups);
  for (std::size_t i = 0; i < groups; ++i) {
    NOON_ASSERT(area_cm2[i] > 0 && cost[i].size() == places);
    if (std::all_of(cost[i].begin(), cost[i].end(), [](double c) { return std::isinf(c); })) return std::nullopt;
  }
  const Excess excess(area_cm2, cost, places);
  Transport transport(area_cm2, room_cm2, cost, excess);
  if (!transport.fill()) return std::nullopt;

  const Network& net = transport.net;
  Spread spread{0.0, std::vector(groups, std::vector<std::int64_t>(places, 0)), {}};
  Price above = 0;
  for (const Stand& stand : transport.stands) {
    const std::int64_t share = net[stand.way].capacity_cm2 - net[stand.way].left_cm2;
    spread.share_cm2[stand.group][stand.place] = share;
    above += static_cast<Price>(share) * net[stand.way].price;
  }
  spread.cost = excess.cheapest + static_cast<double>(std::ldexp(above, -excess.bits));
  const auto distance = distances(net, transport.source);
  for (std::size_t p = 0; p < places; ++p) {
    const Price price = std::max<Price>(0, distance[transport.sink] - distance[groups + p]);
    spread.room_price.push_back(static_cast<double>(std::ldexp(price, -excess.bits)));
  }
  return spread;
}

}  // namespace noonhouse
