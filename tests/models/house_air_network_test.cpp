// SPDX-License-Identifier: Apache-2.0
// The network of pressures in a box of layers, against closed formulas and a tracer.
#include <gtest/gtest.h>

#include <cmath>
#include <cstdint>

#include "sim/core/index.hpp"
#include "tests/support/aired_box_runs.hpp"

namespace noonhouse {
namespace {

using namespace aired;

// m = C_d A sqrt(2 g H (rho_o - rho_i) / (1 / rho_o + 1 / rho_i)): Bernoulli through two equal openings of one mass
// flow, a whole column of one density inside.
TEST(AirNetwork, AStackOfOneTemperatureFlowsTheSameThroughAnyNumberOfLayers) {
  const double warm = dry_air_density(303.15, 0.0, AiredBox::kPressure),
               cold = dry_air_density(kOutsideK, 0.0, AiredBox::kPressure);
  const double expected =
      0.6 * 0.4 * std::sqrt(2.0 * kGravity * (4.0 - kSlit) * (cold - warm) / (1.0 / cold + 1.0 / warm));
  std::vector<double> flows;
  for (const int layers : {2, 4, 32}) {
    auto box = chimney(layers, 303.15);
    const auto rest = settled(box);
    flows.push_back(rest.through("high").net());
    EXPECT_NEAR(flows.back(), expected, 0.01 * expected) << layers;
    EXPECT_NEAR(rest.through("low").net(), -flows.back(), 1e-9) << layers;
  }
  EXPECT_NEAR(flows[2], flows[1], 1e-3 * flows[1]);
  EXPECT_NEAR(flows[1], flows[0], 1e-3 * flows[0]);
}

// Q = (C_d / 3) W H sqrt(g H drho / rho), Brown & Solvason 1962, Int. J. Heat Mass Transf. 5, 859, neutral level at
// half height; counted by a tracer outdoors.
TEST(AirNetwork, ATallOpeningCutIntoLayersExchangesAsOneWhole) {
  constexpr double kTracer = 1e-6;
  const double warm = dry_air_density(303.15, 0.0, AiredBox::kPressure),
               cold = dry_air_density(kOutsideK, 0.0, AiredBox::kPressure), mean = 0.5 * (warm + cold);
  const double expected = mean * 0.2 * 0.9 * 2.0 * std::sqrt(kGravity * 2.0 * (cold - warm) / mean);
  for (const int layers : {1, 4, 5, 32}) {
    AiredBox box(layers, 4.0, 30.0, 303.15, kOutsideK);
    box.opening("door", 0.6, 0.9, 2.0);
    box.column_of(0.1);
    const auto rest = settled(box, {{box.out_w, kTracer}});
    double drawn_in = 0.0;
    const auto q = rest.fluxes();
    for (const ExchangeInfo& e : rest.plan.house.exchanges)
      if (e.name.rfind("door", 0) == 0) drawn_in -= q[at(e.first_flux + 1)] / kTracer;
    EXPECT_NEAR(drawn_in, expected, 0.01 * expected) << layers;
  }
}

/// Two bays side by side, an opening to each side of the house, a common section of one layer between.
TEST(AirNetwork, WindThroughTwoBaysAndTheirSectionMeetsThreeOpeningsInSeries) {
  HouseGraph graph;
  const double rho = dry_air_density(300.0, 0.0, AiredBox::kPressure), wind_pa = 3.0;
  const ChannelId out_k = graph.channel("t", "K", 300.0), out_w = graph.channel("w", "1", 0.0),
                  windward = graph.channel("windward", "Pa", wind_pa), lee = graph.channel("lee", "Pa", 0.0),
                  wind = graph.channel("wind", "m s-1", 0.0), open = graph.channel("open", "1", 1.0);
  const AccountId air = graph.account("dry air", Quantity::air), vapour = graph.account("vapour", Quantity::water),
                  heat = graph.account("heat", Quantity::energy);
  std::array<NodeId, 2> in, p;
  for (std::size_t b = 0; b < 2; ++b) {
    in[b] = graph.node("air " + std::to_string(b), MoistAir{50.0}, {300.0, 0.0}, {0.01, 1e-5});
    p[b] = graph.node("pressure " + std::to_string(b), Junction{}, {0.0}, {1e-3});
    const OpeningPiece law{{0.5, 1.5, 1.2, AiredBox::kPressure}, {b == 0 ? 50.0 : 80.0, kSlit}, 0.0};
    graph.exchange("way " + std::to_string(b), "x", law,
                   {p[b], in[b], Input(in[b], 1), out_k, out_w, b == 0 ? windward : lee, wind, open},
                   {{{p[b], air}, {End(in[b], 1), vapour}, {in[b], heat}}});
  }
  graph.exchange("section", "x", SectionPiece{{0.0, 1.5, 1.2, AiredBox::kPressure}, {0.3, 2.0}},
                 {p[0], in[0], Input(in[0], 1), p[1], in[1], Input(in[1], 1)},
                 {{{p[0], p[1]}, {End(in[0], 1), End(in[1], 1)}, {in[0], in[1]}}});
  AiredBox::Rest rest;
  rest.plan.house = graph.compile();
  rest.result.state.amounts = rest.plan.house.initial_amounts;
  rest.result.channels = rest.plan.house.initial_channels;
  ASSERT_TRUE(Junctions(rest.plan.house).settle(rest.result.state.amounts.data(), rest.result.channels.data()));
  const double effective = area_in_series_m2(std::array{0.5, 0.6, 0.8});
  const double expected = rho * 0.6 * effective * std::sqrt(2.0 * wind_pa / rho);
  EXPECT_NEAR(rest.through("section").net(), expected, 0.01 * expected);
  EXPECT_NEAR(rest.through("way 1").net(), expected, 0.01 * expected);
  // The section, of 0.6 m2, takes its share (A / A_i)^2 of the wind's pressure.
  EXPECT_NEAR(rest.potential(p[0]) - rest.potential(p[1]), wind_pa * std::pow(effective / 0.6, 2), 0.01 * wind_pa);
}

// A tracer in a well-mixed room: w_o - w = (w_o - w_0) exp(-m t / M), with the network's own flow m.
TEST(AirNetwork, ATracerDecaysAtTheAirChange) {
  constexpr double kTracer = 1e-3, kMassKg = 70.0;
  const double rho = dry_air_density(kOutsideK, 0.0, AiredBox::kPressure);
  HouseGraph graph;
  const ChannelId out_k = graph.channel("t", "K", kOutsideK), out_w = graph.channel("w", "1", kTracer),
                  windward = graph.channel("windward", "Pa", 0.6), lee = graph.channel("lee", "Pa", -0.2),
                  wind = graph.channel("wind", "m s-1", 0.0), open = graph.channel("open", "1", 1.0);
  const AccountId dry = graph.account("dry air", Quantity::air), vapour = graph.account("vapour", Quantity::water),
                  heat = graph.account("heat", Quantity::energy);
  const NodeId air = graph.node("air", MoistAir{kMassKg}, {kOutsideK, 0.0}, {0.01, 1e-5});
  const NodeId p = graph.node("pressure", Junction{}, {0.0}, {1e-3});
  for (const bool in : {true, false}) {
    const OpeningPiece law{{1.0, 1.5, rho, AiredBox::kPressure}, {in ? 5.0 : 8.0, kSlit}, 0.0};
    graph.exchange(in ? "in" : "out", "x", law, {p, air, Input(air, 1), out_k, out_w, in ? windward : lee, wind, open},
                   {{{p, dry}, {End(air, 1), vapour}, {air, heat}}});
  }
  AiredBox::Rest rest;
  rest.plan.house = graph.compile();
  rest.plan.forcing = std::make_unique<PolylineForcing>();
  rest.plan.length = 1_h;
  auto run = run_with_marks(rest.plan, 15_min);
  rest.result = std::move(run.result);
  const double flow = rest.through("out").net();
  const double expected = 0.6 * area_in_series_m2(std::array{0.05, 0.08}) * std::sqrt(2.0 * 0.8 * rho);
  EXPECT_NEAR(flow, expected, 0.01 * expected);
  for (std::size_t mark = 1; mark <= 4; ++mark) {
    const double left = 1.0 - run.marks.value(mark, rest.plan.house.position(Input(air, 1))) / kTracer;
    EXPECT_NEAR(-std::log(left) / (900.0 * static_cast<double>(mark)), flow / kMassKg, 0.005 * flow / kMassKg) << mark;
  }
}

TEST(AirNetwork, MoreWindMoreOpeningAndMoreWarmthMoveMoreAir) {
  const auto flow = [](double area, double inside_k, double wind_pa) {
    AiredBox box(5, 4.0, 30.0, inside_k, kOutsideK);
    const ChannelId windward = box.graph.channel("windward", "Pa", wind_pa), lee = box.graph.channel("lee", "Pa", 0.0);
    slit(box, "in", 0.1, area, windward);
    slit(box, "out", 3.8, area, lee);
    box.column_of(0.1);
    return settled(box).through("out").net();
  };
  double by_area = 0.0, by_warmth = 0.0, by_wind = 0.0;
  for (const double more : {0.01, 0.1, 0.3, 1.0, 3.0, 10.0}) {
    EXPECT_GT(flow(more, 300.0, 1.0), by_area) << more;
    EXPECT_GT(flow(0.3, kOutsideK + more, 1.0), by_warmth) << more;
    EXPECT_GT(flow(0.3, 300.0, more), by_wind) << more;
    by_area = flow(more, 300.0, 1.0);
    by_warmth = flow(0.3, kOutsideK + more, 1.0);
    by_wind = flow(0.3, 300.0, more);
  }
}

/// A congruence of Knuth's (MMIX), from 0 to 1.
class Chance {
 public:
  double next() {
    state_ = state_ * 6364136223846793005U + 1442695040888963407U;
    return static_cast<double>(state_ >> 11U) * 0x1p-53;
  }
  double between(double low, double high) { return low + (high - low) * next(); }

 private:
  std::uint64_t state_ = 7;
};

TEST(AirNetwork, FindsItsPressuresInAnyStateAndWeatherFromAnyOther) {
  AiredBox box(6, 4.0, 30.0, 300.0, kOutsideK);
  const ChannelId north = box.graph.channel("north", "Pa", 0.0), south = box.graph.channel("south", "Pa", 0.0),
                  running = box.graph.channel("fan", "1", 0.0);
  slit(box, "north vent", 1.0, 0.5, north, 0.025);
  slit(box, "roof vent", 3.9, 0.8, south, 0.025);
  box.opening("door", 0.0, 0.9, 2.0, 0.6, 0.025);
  crack(box, "low cracks", 0.5, 0.002, north);
  crack(box, "high cracks", 3.5, 0.002, south);
  const std::size_t i = box.layer_at(3.0);
  box.outdoors(
      "fan", FanPiece{{3.0, box.middle_m(i), box.density, AiredBox::kPressure}, {0.6, 60.0}}, i,
      std::array<Input, 7>{box.pressure[i], box.air[i], Input(box.air[i], 1), box.out_k, box.out_w, south, running});
  box.column_of(0.1, 15.0);
  const House house = box.graph.compile();
  const MoistAir air{0.95 * 20.0 * box.density};  // of a layer, 20 m3
  auto y = house.initial_amounts, channels = house.initial_channels;
  Junctions junctions(house);
  Chance chance;
  constexpr int kStates = 2000;
  for (int state = 0; state < kStates; ++state) {
    for (const NodeId node : box.air) {
      std::array<double, 2> amount{};
      air.amounts({chance.between(263.0, 333.0), chance.between(0.0, 0.03)}, amount);
      for (int k = 0; k < 2; ++k) y[at(house.position(Input(node, k)))] = amount[at(k)];
    }
    const double gust = std::pow(chance.next(), 3) * 1000.0;
    for (const ChannelId wind : {north, south, box.wind_pa}) channels[at(wind.index)] = chance.between(-gust, gust);
    channels[at(box.wind.index)] = std::sqrt(gust);
    channels[at(box.open.index)] = chance.next() < 0.3 ? 0.0 : chance.next();
    channels[at(running.index)] = chance.next() < 0.5 ? 0.0 : chance.next();
    channels[at(box.out_k.index)] = chance.between(263.0, 318.0);
    ASSERT_TRUE(junctions.settle(y.data(), channels.data())) << state;
  }
  EXPECT_LE(junctions.evaluations(), 25 * kStates);
}

}  // namespace
}  // namespace noonhouse
