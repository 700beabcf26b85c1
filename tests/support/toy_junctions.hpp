// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <cmath>
#include <string_view>
#include <vector>

#include "sim/integrate/method.hpp"
#include "tests/support/toy_house.hpp"

/// Invented laws of air between junctions, and houses that breathe by them.
namespace noonhouse::toy {

/// m = g (a - b)
struct Duct {
  double conductance_kg_s_pa = 1.0;
  static constexpr std::string_view kName = "duct";
  static constexpr int kInputs = 2, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::air};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 1>& q) const {
    q[0] = conductance_kg_s_pa * (in[0] - in[1]);
  }
};

/// m = c d / (d^2 + s^2)^(1/4), the root of d with its steep middle rounded off;  d = a - b + b_s (T_warm - T_cool).
/// Inputs: a, b, T_warm, T_cool, T of what flows. Fluxes: air, and its heat in whichever direction it flows.
struct Draught {
  double strength_kg_s = 1.0;  ///< c [kg/(s Pa^0.5)]
  double stack_pa_k = 0.0;     ///< b_s
  double softness_pa = 1e-6;
  static constexpr std::string_view kName = "draught";
  static constexpr int kInputs = 5, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::air, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 5>& in, std::array<S, 2>& q) const {
    using std::sqrt;
    const S d = in[0] - in[1] + stack_pa_k * (in[2] - in[3]);
    q[0] = strength_kg_s * d / sqrt(sqrt(d * d + softness_pa * softness_pa));
    q[1] = q[0] * kDryHeat * (in[4] - kEnergyZeroK);
  }
};

/// A warm room and a second one, without air so far; outdoors cools in a straight line.
struct Rooms {
  House house;
  ChannelLine line;
  NodeId warm, cool;
  ChannelId outdoor_k, still_pa;
  AccountId out_air, out_heat;
  static constexpr double kIn = 0.4, kBetween = 0.7, kOut = 0.5;  ///< strengths [kg/(s Pa^0.5)]
  static constexpr double kStackWarm = 0.04, kStackCool = 0.03;   ///< [Pa/K]
  static constexpr double kSeries = 1.0 / (kIn * kIn) + 1.0 / (kBetween * kBetween) + 1.0 / (kOut * kOut);

  double kelvin(const std::vector<double>& amounts, NodeId node) const {
    const double capacity = node == warm ? kWarmJK : kCoolJK;
    return amounts[static_cast<std::size_t>(house.position(Input(node)))] / capacity + kEnergyZeroK;
  }

 protected:
  static constexpr double kWarmJK = 4e4, kCoolJK = 6e4;
  void add_rooms(HouseGraph& graph) {
    warm = graph.node("warm room", ThermalMass{kWarmJK}, {340.0}, {0.01});
    cool = graph.node("cool room", ThermalMass{kCoolJK}, {310.0}, {0.01});
    outdoor_k = graph.channel("outdoors", "K", 290.0);
    still_pa = graph.channel("outdoor pressure", "Pa", 0.0);
    out_air = graph.account("outdoor dry air", Quantity::air);
    out_heat = graph.account("outdoor air", Quantity::energy);
  }
  void finish(HouseGraph& graph) {
    house = graph.compile();
    line = {Tick{0}, house.initial_channels, {-0.05, 0.0}};
  }
};

/// Rooms that draw outdoor air through both of them by the buoyancy of both: two junctions.
struct TwoRooms : Rooms {
  NodeId first, second;
  explicit TwoRooms(double start_pressure_pa = 0.0) {
    HouseGraph graph;
    add_rooms(graph);
    first = graph.node("pressure in the warm room", Junction{}, {start_pressure_pa}, {1e-3});
    second = graph.node("pressure in the cool room", Junction{}, {-start_pressure_pa}, {1e-3});
    graph.exchange("in", "draught", Draught{kIn, kStackWarm}, {still_pa, first, warm, outdoor_k, outdoor_k},
                   {{{out_air, first}, {out_heat, warm}}});
    graph.exchange("between", "draught", Draught{kBetween, kStackCool}, {first, second, cool, outdoor_k, warm},
                   {{{first, second}, {warm, cool}}});
    graph.exchange("out", "draught", Draught{kOut}, {second, still_pa, warm, warm, cool},
                   {{{second, out_air}, {cool, out_heat}}});
    finish(graph);
  }
  double pressure(const std::vector<double>& amounts, NodeId node) const {
    return amounts[static_cast<std::size_t>(house.position(Input(node)))];
  }
  /// The pressures by hand: one flow m through three roots in series.
  static std::array<double, 2> pressures_at(double warm_k, double cool_k, double outside_k) {
    const double stack = kStackWarm * (warm_k - outside_k), more = kStackCool * (cool_k - outside_k);
    const double m2 = (stack + more) / kSeries;
    return {stack - m2 / (kIn * kIn), m2 / (kOut * kOut)};
  }
};

/// The flow of TwoRooms with its pressures eliminated by hand. Inputs: T warm, T cool, T outdoors.
/// Fluxes: heat in, between, out.
struct Eliminated {
  static constexpr std::string_view kName = "eliminated";
  static constexpr int kInputs = 3, kFluxes = 3;
  static constexpr std::array<Quantity, 3> kCarries{Quantity::energy, Quantity::energy, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 3>& in, std::array<S, 3>& q) const {
    using std::sqrt;
    const S stack = Rooms::kStackWarm * (in[0] - in[2]) + Rooms::kStackCool * (in[1] - in[2]);
    const S m = sqrt(stack / Rooms::kSeries);
    q[0] = m * kDryHeat * (in[2] - kEnergyZeroK);
    q[1] = m * kDryHeat * (in[0] - kEnergyZeroK);
    q[2] = m * kDryHeat * (in[1] - kEnergyZeroK);
  }
};

/// TwoRooms without junctions.
struct TwoRoomsEliminated : Rooms {
  TwoRoomsEliminated() {
    HouseGraph graph;
    add_rooms(graph);
    graph.exchange("all", "draught", Eliminated{}, {warm, cool, outdoor_k},
                   {{{out_heat, warm}, {warm, cool}, {cool, out_heat}}});
    const AccountId elsewhere = graph.account("elsewhere", Quantity::air);
    graph.exchange("elsewhere", "draught", Supply<Quantity::air>{}, {still_pa}, {{{out_air, elsewhere}}});
    finish(graph);
  }
};

/// The toy house with its air drawn through two junctions by warmth and by a wind that follows the sun.
inline House build_breathing(Ids& id) {
  HouseGraph graph;
  add_nodes(graph, id);
  add_exchanges(graph, id);
  const NodeId low = graph.node("pressure below", Junction{}, {0.0}, {1e-3});
  const NodeId high = graph.node("pressure above", Junction{}, {0.0}, {1e-3});
  const ChannelId still = graph.channel("still", "Pa", 0.0);
  const AccountId out_air = graph.account("outdoor dry air", Quantity::air);
  constexpr double kSoft = 1e-3;
  graph.exchange("lee", "draught", Draught{0.02, 0.0, kSoft}, {low, still, id.air, id.air, id.outdoor_k},
                 {{{low, out_air}, {id.air, id.outdoor_heat}}});
  graph.exchange("rise", "draught", Duct{0.5}, {low, high}, {{{low, high}}});
  graph.exchange("ridge", "draught", Draught{0.03, 0.04, kSoft}, {high, still, id.air, id.outdoor_k, id.air},
                 {{{high, out_air}, {id.air, id.outdoor_heat}}});
  graph.exchange("gust", "draught", Supply<Quantity::air>{1e-6}, {id.sun_w}, {{{out_air, low}}});
  return graph.compile();
}

}  // namespace noonhouse::toy
