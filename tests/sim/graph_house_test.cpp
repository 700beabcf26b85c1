// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "sim/core/errors.hpp"
#include "sim/graph/house_graph.hpp"
#include "tests/support/toy_house.hpp"

namespace noonhouse {
namespace {

using testing::AllOf;
using testing::HasSubstr;

/// The message of the unsound_house error that compiling raises; empty when it raises none.
std::string complaint(HouseGraph& graph) {
  try {
    graph.compile();
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::unsound_house);
    return error.what();
  }
  return "";
}

NodeId lump(HouseGraph& graph, const std::string& name) {
  return graph.node(name, ThermalMass{1000.0}, {290.0}, {0.01});
}

TEST(HouseChecks, AHouseWithoutNodesIsUnsound) {
  HouseGraph graph;
  EXPECT_THAT(complaint(graph), HasSubstr("no nodes"));
}

TEST(HouseChecks, ANodeThatExchangesNothingIsNamed) {
  HouseGraph graph;
  const auto a = lump(graph, "floor");
  lump(graph, "lonely bench");
  const auto out = graph.account("outdoors", Quantity::energy);
  graph.exchange("loss", "x", toy::Decay<Quantity::energy>{}, {a}, {{{a, out}}});
  EXPECT_THAT(complaint(graph), HasSubstr("'lonely bench'"));
}

TEST(HouseChecks, APartWithoutAWayOutIsNamed) {
  HouseGraph graph;
  const auto a = lump(graph, "floor"), b = lump(graph, "stone"), c = lump(graph, "brick");
  const auto out = graph.account("outdoors", Quantity::energy);
  graph.exchange("loss", "x", toy::Decay<Quantity::energy>{}, {a}, {{{a, out}}});
  graph.exchange("touch", "x", toy::Conduction{}, {b, c}, {{{b, c}}});
  EXPECT_THAT(complaint(graph), AllOf(HasSubstr("'stone'"), HasSubstr("outside")));
}

TEST(HouseChecks, ReadingAnotherNodeIsNoWayOut) {
  HouseGraph graph;
  const auto a = lump(graph, "floor"), b = lump(graph, "stone");
  const auto out = graph.account("outdoors", Quantity::energy);
  graph.exchange("loss", "x", toy::Conduction{}, {a, b}, {{{a, out}}});
  EXPECT_THAT(complaint(graph), HasSubstr("'stone'"));
}

TEST(HouseChecks, TheSameLawBetweenTheSamePlacesIsRefusedByBothNames) {
  HouseGraph graph;
  const auto a = lump(graph, "floor"), b = lump(graph, "stone");
  const auto out = graph.account("outdoors", Quantity::energy);
  graph.exchange("loss", "x", toy::Decay<Quantity::energy>{}, {a}, {{{a, out}}});
  graph.exchange("first touch", "x", toy::Conduction{}, {a, b}, {{{a, b}}});
  graph.exchange("second touch", "y", toy::Conduction{}, {a, b}, {{{a, b}}});
  EXPECT_THAT(complaint(graph), AllOf(HasSubstr("'first touch'"), HasSubstr("'second touch'"), HasSubstr("twice")));
}

TEST(HouseChecks, AnotherLawBetweenTheSamePlacesIsFine) {
  HouseGraph graph;
  const auto a = lump(graph, "floor"), b = lump(graph, "stone");
  const auto out = graph.account("outdoors", Quantity::energy);
  graph.exchange("loss", "x", toy::Decay<Quantity::energy>{}, {a}, {{{a, out}}});
  graph.exchange("touch", "x", toy::Conduction{}, {a, b}, {{{a, b}}});
  graph.exchange("glow", "x", toy::Radiation{}, {a, b}, {{{a, b}}});
  EXPECT_EQ(complaint(graph), "");
}

TEST(HouseChecks, AnExchangeFromAPlaceToItselfIsNamed) {
  HouseGraph graph;
  const auto a = lump(graph, "floor");
  const auto out = graph.account("outdoors", Quantity::energy);
  graph.exchange("loss", "x", toy::Decay<Quantity::energy>{}, {a}, {{{a, out}}});
  graph.exchange("ring", "x", toy::Conduction{}, {a, a}, {{{a, a}}});
  EXPECT_THAT(complaint(graph), AllOf(HasSubstr("'ring'"), HasSubstr("'floor'"), HasSubstr("itself")));
}

TEST(HouseChecks, EqualAndEmptyNamesAreRefused) {
  const auto with = [](auto&& spoil) {
    HouseGraph graph;
    const auto a = lump(graph, "floor");
    const auto out = graph.account("outdoors", Quantity::energy);
    graph.channel("sun", "W", 0.0);
    graph.exchange("loss", "x", toy::Decay<Quantity::energy>{}, {a}, {{{a, out}}});
    spoil(graph, a, out);
    return complaint(graph);
  };
  EXPECT_EQ(with([](auto&, auto, auto) {}), "");
  EXPECT_THAT(with([](auto& g, auto, auto) { lump(g, "floor"); }), HasSubstr("'floor'"));
  EXPECT_THAT(with([](auto& g, auto, auto) { g.account("outdoors", Quantity::water); }), HasSubstr("'outdoors'"));
  EXPECT_THAT(with([](auto& g, auto, auto) { g.channel("sun", "W", 0.0); }), HasSubstr("'sun'"));
  EXPECT_THAT(with([](auto& g, auto a, auto out) {
                g.exchange("loss", "x", toy::Conduction{}, {a, a}, {{{a, out}}});
              }),
              HasSubstr("'loss'"));
  EXPECT_THAT(with([](auto& g, auto, auto) { lump(g, ""); }), HasSubstr("no name"));
}

TEST(House, CompilesTheToyHouseSoThatNamesPositionsAndStartAgree) {
  toy::Ids id;
  const House house = toy::build(id);
  EXPECT_EQ(house.states, 9);
  EXPECT_EQ(house.accounts, 6);
  EXPECT_EQ(house.channels, 6);
  EXPECT_EQ(house.find_node("floor"), id.floor);
  EXPECT_EQ(house.find_channel("sun"), id.sun_w);
  EXPECT_EQ(house.find_exchange("watering can"), id.can);
  EXPECT_FALSE(house.find_node("nowhere").has_value());
  const auto air = static_cast<std::size_t>(house.position(Input(id.air)));
  EXPECT_EQ(house.state_names[air], "air, energy");
  EXPECT_EQ(house.state_names[air + 1], "air, water");
  EXPECT_EQ(house.initial_amounts[air + 1], 40.0 * 0.010);
  // One unit of error is what its own potential's tolerance moves: 40 kg x 0.01 K x (1006 + 0.010 x 1860) J/kg K.
  EXPECT_NEAR(house.amount_tolerance[air], 40.0 * 0.01 * (1006.0 + 18.6), 1e-6);
  EXPECT_NEAR(house.amount_tolerance[air + 1], 40.0 * 1e-5, 1e-15);
  EXPECT_EQ(house.position(Input(id.sun_w)), 9 + id.sun_w.index);
  EXPECT_EQ(house.position(End(id.sky)), 9 + id.sky.index);
}

TEST(House, TheGraphIsEmptyAfterwards) {
  HouseGraph graph;
  toy::Ids id;
  toy::add_nodes(graph, id);
  toy::add_exchanges(graph, id);
  graph.compile();
  EXPECT_THAT(complaint(graph), HasSubstr("no nodes"));
}

}  // namespace
}  // namespace noonhouse
