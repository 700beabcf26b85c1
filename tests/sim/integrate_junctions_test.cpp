// SPDX-License-Identifier: Apache-2.0
// Junctions: the one balance that is found, from wherever it is looked for.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <string>

#include "sim/core/errors.hpp"
#include "sim/integrate/junctions.hpp"
#include "tests/support/toy_junctions.hpp"
#include "tests/support/toy_stepping.hpp"

namespace noonhouse {
namespace {

using toy::advance_to;
using toy::start_of;
using toy::TwoRooms;

/// Junctions in a row between two given pressures [Pa], joined by one law after the other.
struct Row {
  House house;
  std::vector<NodeId> nodes;
  template <class Join>
  Row(int junctions, double from_pa, double to_pa, double start_pa, Join&& join) {
    HouseGraph graph;
    const ChannelId from = graph.channel("from", "Pa", from_pa), to = graph.channel("to", "Pa", to_pa);
    const AccountId source = graph.account("source", Quantity::air), sink = graph.account("sink", Quantity::air);
    for (int i = 0; i < junctions; ++i)
      nodes.push_back(graph.node("p" + std::to_string(i), Junction{}, {start_pa}, {1e-3}));
    for (int i = 0; i <= junctions; ++i) {
      const bool begins = i == 0, ends = i == junctions;
      join(graph, i, begins ? Input(from) : Input(nodes[at(i - 1)]), ends ? Input(to) : Input(nodes[at(i)]),
           Ends{begins ? End(source) : End(nodes[at(i - 1)]), ends ? End(sink) : End(nodes[at(i)])});
    }
    house = graph.compile();
  }
  std::vector<double> settled() {
    std::vector<double> y = house.initial_amounts;
    Junctions junctions(house);
    EXPECT_TRUE(junctions.settle(y.data(), house.initial_channels.data()));
    std::vector<double> out;
    for (const NodeId node : nodes) out.push_back(y[at(house.position(Input(node)))]);
    return out;
  }
};

TEST(Junctions, AChainOfConductancesDividesItsPressureAsResistancesInSeries) {
  const std::vector<double> conductance{0.5, 2.0, 0.01, 40.0, 1.0};  // resistances 2, 0.5, 100, 0.025, 1
  for (const double start : {0.0, 1e5, -3e4}) {
    Row row(4, 12.0, 2.0, start, [&](HouseGraph& graph, int i, Input a, Input b, Ends ends) {
      graph.exchange("duct " + std::to_string(i), "x", toy::Duct{conductance[at(i)]}, {a, b}, {{ends}});
    });
    double resistance = 0.0, all = 0.0;
    for (const double g : conductance) all += 1.0 / g;
    const auto p = row.settled();
    for (std::size_t i = 0; i < p.size(); ++i) {
      resistance += 1.0 / conductance[i];
      // An imbalance of 1e-11 kg/s over the largest resistance.
      EXPECT_NEAR(p[i], 12.0 - 10.0 * resistance / all, 1e-9) << start;
    }
  }
}

/// A root from pressure alone.
struct Hole {
  double strength = 1.0;
  static constexpr std::string_view kName = "hole";
  static constexpr int kInputs = 2, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::air};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 1>& q) const {
    using std::sqrt;
    const S d = in[0] - in[1];
    q[0] = strength * d / sqrt(sqrt(d * d + 1e-8));
  }
};

TEST(Junctions, RootsFindTheirOneBalanceFromFarAway) {
  // m^2 = c_i^2 dp_i: the pressure falls by shares of 1 / c^2, 1 / 0.25 : 1 / 4 : 1 / 1 = 16 : 1 : 4 of 21 parts.
  const std::vector<double> strength{0.5, 2.0, 1.0};
  for (const double start : {0.0, 3.0, 1e3, -1e3, 1e6, -1e6}) {
    Row row(2, 4.2, 0.0, start, [&](HouseGraph& graph, int i, Input a, Input b, Ends ends) {
      graph.exchange("hole " + std::to_string(i), "x", Hole{strength[at(i)]}, {a, b}, {{ends}});
    });
    const auto p = row.settled();
    EXPECT_NEAR(p[0], 1.0, 1e-7) << start;  // the rounding of the root takes (s / 2 dp)^2 of the least fall, 0.2 Pa
    EXPECT_NEAR(p[1], 0.8, 1e-7) << start;
  }
}

TEST(Junctions, AtRestEverythingStandsAtOnePressure) {
  for (const double start : {0.0, 50.0}) {
    Row row(6, 1.0, 1.0, start, [](HouseGraph& graph, int i, Input a, Input b, Ends ends) {
      graph.exchange("hole " + std::to_string(i), "x", Hole{}, {a, b}, {{ends}});
    });
    for (const double p : row.settled()) EXPECT_NEAR(p, 1.0, 1e-12);  // 1e-11 kg/s by the slope at rest, 100 kg/(s Pa)
  }
}

TEST(Junctions, ManyInARowWithUnequalHolesBalanceFromAnywhere) {
  std::vector<double> strength;
  for (int i = 0; i <= 40; ++i) strength.push_back(std::pow(10.0, -2.0 + 0.1 * ((i * 7) % 31)));
  double all = 0.0;
  for (const double c : strength) all += 1.0 / (c * c);
  for (const double start : {0.0, 500.0, -1e4}) {
    Row row(40, 100.0, 0.0, start, [&](HouseGraph& graph, int i, Input a, Input b, Ends ends) {
      graph.exchange("hole " + std::to_string(i), "x", Hole{strength[at(i)]}, {a, b}, {{ends}});
    });
    double used = 0.0;
    const auto p = row.settled();
    for (std::size_t i = 0; i < p.size(); ++i) {
      used += 1.0 / (strength[i] * strength[i]);
      EXPECT_NEAR(p[i], 100.0 * (1.0 - used / all), 1e-3) << i << ' ' << start;
    }
  }
}

TEST(Junctions, BalanceToTheRoundingOfHighPressuresBesideWideWays) {
  // The ends' roots let through tens of kg/s; between them the last digit of the pressures is 1e-9 kg/s and more.
  for (const double pressure : {100.0, 1e3, 1e4}) {
    Row row(6, pressure, -0.7 * pressure, 0.0, [](HouseGraph& graph, int i, Input a, Input b, Ends ends) {
      if (i == 0 || i == 6) {
        graph.exchange("hole " + std::to_string(i), "x", Hole{1.0}, {a, b}, {{ends}});
      } else {
        graph.exchange("duct " + std::to_string(i), "x", toy::Duct{5e4}, {a, b}, {{ends}});
      }
    });
    for (const double p : row.settled()) EXPECT_NEAR(p, 0.15 * pressure, 0.01);
  }
}

TEST(Junctions, CoupledRootsBalanceFromStartsOfEverySize) {
  // A shortened Newton step that must lessen the largest imbalance creeps from one start in twelve of these.
  std::uint64_t random = 1;
  const auto next = [&random] {  // Knuth's MMIX congruence
    random = random * 6364136223846793005U + 1442695040888963407U;
    return static_cast<double>(random >> 11U) * 0x1p-53;
  };
  const auto hand = TwoRooms::pressures_at(340.0, 310.0, 290.0);
  std::int64_t most = 0;
  for (int i = 0; i < 1000; ++i) {
    const double size = std::pow(10.0, -3.0 + 9.0 * next());
    TwoRooms rooms(next() < 0.5 ? size : -size);
    Junctions junctions(rooms.house);
    auto y = rooms.house.initial_amounts;
    ASSERT_TRUE(junctions.settle(y.data(), rooms.house.initial_channels.data())) << size;
    ASSERT_NEAR(rooms.pressure(y, rooms.first), hand[0], 1e-9) << size;
    ASSERT_NEAR(rooms.pressure(y, rooms.second), hand[1], 1e-9) << size;
    most = std::max(most, junctions.evaluations());
  }
  EXPECT_LE(most, 30);
}

TEST(Junctions, AWarmStartCostsFewEvaluations) {
  TwoRooms rooms(20.0);
  Junctions junctions(rooms.house);
  auto y = rooms.house.initial_amounts;
  auto channels = rooms.house.initial_channels;
  ASSERT_TRUE(junctions.settle(y.data(), channels.data()));
  const auto cold = junctions.evaluations();
  ASSERT_TRUE(junctions.settle(y.data(), channels.data()));
  EXPECT_EQ(junctions.evaluations() - cold, 1) << "at its balance one look is enough";
  channels[at(rooms.outdoor_k.index)] += 0.05;
  const auto before = junctions.evaluations();
  ASSERT_TRUE(junctions.settle(y.data(), channels.data()));
  EXPECT_LE(junctions.evaluations() - before, 5);
  EXPECT_LT(junctions.evaluations() - before, cold);
  const auto hand = TwoRooms::pressures_at(340.0, 310.0, 290.05);
  EXPECT_NEAR(rooms.pressure(y, rooms.first), hand[0], 1e-9);
  EXPECT_NEAR(rooms.pressure(y, rooms.second), hand[1], 1e-9);
}

TEST(Junctions, LeaveEveryOtherStateAsItIs) {
  TwoRooms rooms(20.0);
  Junctions junctions(rooms.house);
  auto y = rooms.house.initial_amounts;
  ASSERT_TRUE(junctions.settle(y.data(), rooms.house.initial_channels.data()));
  for (std::size_t i = 0; i < y.size(); ++i) {
    const auto& own = rooms.house.junctions.states;
    if (std::find(own.begin(), own.end(), static_cast<int>(i)) == own.end()) {
      EXPECT_EQ(y[i], rooms.house.initial_amounts[i]) << i;
    }
  }
}

/// Lets through half a kilogram a second at the most, however hard it is pressed.
struct Choked {
  static constexpr std::string_view kName = "choked";
  static constexpr int kInputs = 2, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::air};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 1>& q) const {
    using std::sqrt;
    const S d = in[0] - in[1];
    q[0] = 0.5 * d / sqrt(1.0 + d * d);
  }
};
/// Has no value below 400 Pa.
struct Cracked {
  static constexpr std::string_view kName = "cracked";
  static constexpr int kInputs = 2, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::air};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 1>& q) const {
    using std::sqrt;
    q[0] = sqrt(in[0] - 400.0) - 0.0 * in[1];
  }
};

/// A junction that is fed a given flow [kg/s] and lets it out by a law.
template <class L>
House fed(const L& law, double feed_kg_s) {
  HouseGraph graph;
  const NodeId node = graph.node("box", Junction{}, {0.0}, {1e-3});
  const ChannelId feed = graph.channel("feed", "kg/s", feed_kg_s), zero = graph.channel("zero", "Pa", 0.0);
  const AccountId out = graph.account("out", Quantity::air);
  const NodeId lump = graph.node("lump", ThermalMass{1e4}, {290.0}, {0.01});
  const AccountId heat = graph.account("heat", Quantity::energy);
  graph.exchange("feed", "x", toy::Supply<Quantity::air>{}, {feed}, {{{out, node}}});
  graph.exchange("way out", "x", law, {node, zero}, {{{node, out}}});
  graph.exchange("loss", "x", toy::Decay<Quantity::energy>{1e-4}, {lump}, {{{lump, heat}}});
  return graph.compile();
}

TEST(Junctions, WithoutABalanceSayNo) {
  const auto settles = [](const House& house) {
    auto y = house.initial_amounts;
    return Junctions(house).settle(y.data(), house.initial_channels.data());
  };
  EXPECT_TRUE(settles(fed(Choked{}, 0.45)));
  EXPECT_FALSE(settles(fed(Choked{}, 0.55))) << "more is fed than any pressure drives out";
  EXPECT_FALSE(settles(fed(Cracked{}, 0.1))) << "no number where it begins";
}

TEST(Junctions, WithoutABalanceAStepEndsWithAnError) {
  const House house = fed(Choked{}, 0.45);
  Stepper stepper(house, {});
  HouseState state = start_of(house);
  auto line = toy::line_of(house);
  line.slope[0] = 1e-3;  // beyond what gets out after 50 s
  try {
    advance_to(stepper, state, line, 1_h);
    FAIL() << "went on without a balance";
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::step_collapse);
    EXPECT_NEAR(seconds(state.now), 50.0, 0.1);
    EXPECT_NE(std::string(error.what()).find("balances the flows of air at 'box, air'"), std::string::npos)
        << error.what();
  }
}

}  // namespace
}  // namespace noonhouse
