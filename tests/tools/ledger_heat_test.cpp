// SPDX-License-Identifier: Apache-2.0
// The book of heat on houses made by hand, small enough that each line is known on paper.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "models/air/moist_air.hpp"
#include "models/envelope/heat_links.hpp"
#include "models/properties/constants.hpp"
#include "models/properties/counterflow.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/water/catchment.hpp"
#include "models/water/wet_mass.hpp"
#include "models/water/wet_surface.hpp"
#include "sim/run/run.hpp"
#include "tests/support/simple_film.hpp"
#include "tests/support/toy_house.hpp"
#include "tools/ledger/hourly_ledger.hpp"

namespace noonhouse {
namespace {

using HouseRun = Run;  // inside a test, Run names the test's own

/// The same flow of dry air [kg/s] both ways. Inputs: T and w inside, T and w outside.
struct AirSwap {
  double dry_air_kg_s = 0.0;
  static constexpr std::string_view kName = "air swap";
  static constexpr int kInputs = 4, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::water, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 4>& in, std::array<S, 2>& q) const {
    counterflow(S(dry_air_kg_s), in[0], in[1], in[2], in[3], q);
  }
};

/// Water of which a share evaporates in the air and the rest lands. Inputs: its temperature, its flow [kg/s].
struct Spray {
  double evaporates = 0.0;
  static constexpr std::string_view kName = "spray";
  static constexpr int kInputs = 2, kFluxes = 4;
  static constexpr std::array<Quantity, 4> kCarries{Quantity::water, Quantity::water, Quantity::energy,
                                                    Quantity::energy};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 4>& q) const {
    q[0] = evaporates * in[1];
    q[1] = (1.0 - evaporates) * in[1];
    q[2] = q[0] * liquid_enthalpy(in[0]);
    q[3] = q[1] * liquid_enthalpy(in[0]);
  }
};

/// A house with the ends that the tests join their parts to; channels keep their first values.
struct SmallHouse {
  HouseGraph graph;
  AccountId sun = graph.account("sun", Quantity::energy);
  AccountId outdoor_heat = graph.account("outdoor air", Quantity::energy);
  AccountId deep = graph.account("deep soil", Quantity::energy);
  AccountId outdoor_vapour = graph.account("outdoor vapour", Quantity::water);
  AccountId motors = graph.account("motors", Quantity::energy);
  AccountId rain = graph.account("rain", Quantity::water);
  AccountId rain_heat = graph.account("heat of rain", Quantity::energy);
  ChannelId outdoor_k = graph.channel("outdoor temperature", "K", 293.15);
  ChannelId outdoor_w = graph.channel("outdoor humidity ratio", "1", 0.008);
  ChannelId still = graph.channel("wind", "m s-1", 0.0);
  ChannelId one = graph.channel("one", "1", 1.0);

  NodeId air(double kg, double start_k, double humidity, const std::string& name = "air") {
    return graph.node(name, MoistAir{kg}, {start_k, humidity}, {0.001, 1e-7});
  }
  NodeId solid(const std::string& name, double heat_j_k, double start_k) {
    return graph.node(name, ThermalMass{heat_j_k}, {start_k}, {0.001});
  }
  NodeId wet(const std::string& name, double heat_j_k, double start_k, double water_kg) {
    return graph.node(name, WetMass{heat_j_k}, {start_k, water_kg}, {0.001, 1e-5});
  }
  void shine(NodeId on, double power_w) {
    graph.exchange("sun", "sunlight absorbed", GivenPower{}, {graph.channel("sun's power", "W", power_w)},
                   {{{sun, on}}});
  }
  void lose(NodeId from, const std::string& path, double ua_w_k) {
    graph.exchange("loss by " + path, path, Conductance{ua_w_k}, {from, outdoor_k}, {{{from, outdoor_heat}}});
  }
  /// An exchange of air with outdoors [kg dry air/s].
  void air_out(NodeId from, const std::string& path, double kg_s) {
    graph.exchange("air out by " + path, path, AirSwap{kg_s}, {from, Input(from, 1), outdoor_k, outdoor_w},
                   {{{End(from, 1), outdoor_vapour}, {from, outdoor_heat}}});
  }
};

struct Kept {
  House house;
  RunResult result;
  std::vector<LedgerSpan> hours;
  HeatSum total;
  /// What the fluxes of an exchange carried, in its law's order.
  double carried(std::string_view exchange, int flux) const {
    const auto id = house.find_exchange(exchange);
    NOON_ASSERT(id.has_value());
    const ExchangeInfo& info = house.exchanges[static_cast<std::size_t>(id->index)];
    return result.state.carried[static_cast<std::size_t>(info.first_flux + flux)];
  }
};

Kept kept_book(SmallHouse& small, Tick length) {
  RunPlan plan;
  plan.house = small.graph.compile();
  plan.forcing =
      std::make_unique<toy::LineForcing>(15_min, std::vector<std::pair<ChannelId, toy::LineForcing::Signal>>{});
  plan.length = length;
  HourlyLedger ledger(plan.house, plan.length);
  HouseRun run(plan);
  run.add_observer(ledger);
  Kept kept;
  kept.result = run.go();
  kept.hours = ledger.hours();
  for (const LedgerSpan& hour : kept.hours) kept.total += hour.heat;
  kept.house = std::move(plan.house);
  return kept;
}

/// Every line but those named is exactly nothing.
void expect_only(const HeatSum& sum, const std::vector<HeatLine>& lines) {
  for (std::size_t i = 0; i < kHeatLines; ++i) {
    const auto line = static_cast<HeatLine>(i);
    if (std::find(lines.begin(), lines.end(), line) != lines.end()) continue;
    EXPECT_EQ(sum.of(line), 0.0) << "line " << i;
  }
}

TEST(HeatLedger, SunOnAFloorGoesThroughTheCoverOnceTheFloorIsWarm) {
  SmallHouse s;
  const NodeId floor = s.solid("floor", 36'000.0, 293.15);
  s.shine(floor, 1000.0);
  s.lose(floor, "through the cover", 20.0);  // time constant 1800 s
  const Kept kept = kept_book(s, 12_h);
  ASSERT_EQ(kept.hours.size(), 12U);
  for (const LedgerSpan& hour : kept.hours) {
    EXPECT_NEAR(hour.heat.sun_j, 3.6e6, 1e-9 * 3.6e6);
    EXPECT_NEAR(hour.heat.residual_j(), 0.0, 1e-9 * 3.6e6);
    expect_only(hour.heat, {HeatLine::cover, HeatLine::kept});
  }
  // T - T_out = (P / UA) (1 - exp(-t / tau)): the floor keeps C times its rise, at the end C P / UA = 1.8 MJ.
  EXPECT_NEAR(kept.hours[0].heat.of(HeatLine::kept), 1.8e6 * (1.0 - std::exp(-2.0)), 36.0);  // 1 mK
  EXPECT_NEAR(kept.total.of(HeatLine::kept), 1.8e6, 36.0);
  EXPECT_NEAR(kept.hours[11].heat.of(HeatLine::cover), 3.6e6, 36.0);
}

TEST(HeatLedger, TheGroundKeepsWhatFloorAndSoilKeepAndWhatLeavesBelow) {
  SmallHouse s;
  const NodeId floor = s.solid("floor", 1e5, 293.15), soil = s.solid("soil", 1e6, 293.15);
  s.shine(floor, 500.0);
  s.lose(floor, "through the cover", 5.0);
  s.graph.exchange("into the soil", "into the soil", Conductance{50.0}, {floor, soil}, {{{floor, soil}}});
  s.graph.exchange("below", "into the soil", Conductance{10.0}, {soil, s.outdoor_k}, {{{soil, s.deep}}});
  const Kept kept = kept_book(s, 5_h);
  expect_only(kept.total, {HeatLine::cover, HeatLine::ground});
  EXPECT_NEAR(kept.total.of(HeatLine::ground), kept.total.sun_j - kept.carried("loss by through the cover", 0), 1e-3);
  EXPECT_GT(kept.total.of(HeatLine::ground), kept.carried("below", 0));
}

TEST(HeatLedger, MistBindsTheLatentHeatOfWhatEvaporatesAndTheHouseGivesIt) {
  SmallHouse s;
  const NodeId air = s.air(500.0, 308.15, 0.005), tank = s.wet("tank", 1e3, 298.15, 100.0);
  const NodeId bench = s.wet("bench", 1e5, 303.15, 0.0);
  const ChannelId flow = s.graph.channel("flow", "kg s-1", 0.0005);
  s.lose(tank, "tank wall", 1.0);
  s.graph.exchange("mist", "mist", Spray{0.6}, {tank, flow},
                   {{{End(tank, 1), End(air, 1)}, {End(tank, 1), End(bench, 1)}, {tank, air}, {tank, bench}}});
  s.graph.exchange("bench and air", "convection inside", Conductance{10.0}, {bench, air}, {{{bench, air}}});
  const Kept kept = kept_book(s, 90_min);
  ASSERT_EQ(kept.hours.size(), 2U);
  EXPECT_EQ(kept.hours[1].end - kept.hours[1].begin, 30_min);
  const double evaporated = kept.carried("mist", 0);
  EXPECT_NEAR(evaporated, 0.6 * 0.0005 * 5400.0, 1e-6);
  EXPECT_NEAR(kept.total.of(HeatLine::mist), 2.501e6 * evaporated, 1e-9 * 2.501e6);
  EXPECT_EQ(kept.total.sun_j, 0.0);
  EXPECT_LT(kept.total.of(HeatLine::kept), 0.0) << "no sun: what evaporates is paid for by what the house held";
  EXPECT_NEAR(kept.total.residual_j(), 0.0, 1e-9 * kept.total.of(HeatLine::mist));
  expect_only(kept.total, {HeatLine::mist, HeatLine::water, HeatLine::kept});
}

TEST(HeatLedger, AWetSurfaceTakesHeatAsItDriesAndDewGivesItBack) {
  for (const bool dries : {true, false}) {
    SmallHouse s;
    const NodeId air = s.air(300.0, 303.15, dries ? 0.006 : 0.024);
    const NodeId pane = s.wet("pane", 1e6, dries ? 303.15 : 288.15, 0.5);
    s.lose(pane, "through the cover", 0.0);
    s.graph.exchange("film", "evaporation and condensation",
                     WetSurface{20.0, kStandardPressure, 0.1, simple_film(2.0, 1.0)},
                     {pane, Input(pane, 1), air, Input(air, 1)}, {{{End(pane, 1), End(air, 1)}, {pane, air}}});
    const Kept kept = kept_book(s, 1_h);
    const double evaporated = kept.carried("film", 0);
    EXPECT_GT(dries ? evaporated : -evaporated, 0.05);
    EXPECT_NEAR(kept.total.of(HeatLine::surfaces), kLatentHeatZero * evaporated, 1e-3);
    EXPECT_NEAR(kept.total.of(HeatLine::kept), -kLatentHeatZero * evaporated, 1e-3);
    expect_only(kept.total, {HeatLine::surfaces, HeatLine::kept});
  }
}

TEST(HeatLedger, WhatDriesToTheOutsideBindsHeatAsASurfaceDoes) {
  SmallHouse s;
  const NodeId roof = s.wet("roof", 1e6, 303.15, 5.0), air = s.air(100.0, 303.15, 0.008);
  s.air_out(air, "ventilation", 0.0);  // says that the outside holds vapour
  s.graph.exchange("roof dries", "through the cover", WetSurface{20.0, kStandardPressure, 0.1, simple_film(2.0, 1.0)},
                   {roof, Input(roof, 1), s.outdoor_k, s.outdoor_w},
                   {{{End(roof, 1), s.outdoor_vapour}, {roof, s.outdoor_heat}}});
  s.graph.exchange("roof and air", "convection inside", Conductance{1.0}, {roof, air}, {{{roof, air}}});
  const Kept kept = kept_book(s, 1_h);
  const double dried = kept.carried("roof dries", 0);
  EXPECT_GT(dried, 0.05);
  EXPECT_NEAR(kept.total.of(HeatLine::surfaces), kLatentHeatZero * dried, 1e-3);
  EXPECT_NEAR(kept.total.of(HeatLine::cover), kept.carried("roof dries", 1) - kLatentHeatZero * dried, 1e-3);
  EXPECT_NEAR(kept.total.residual_j(), 0.0, 1e-9 * kLatentHeatZero * dried);
}

TEST(HeatLedger, VentsCarrySensibleHeatOnly) {
  SmallHouse s;
  // A large store of air keeps its state for an hour.
  const NodeId air = s.air(1e6, 303.15, 0.015);
  s.air_out(air, "ventilation", 0.5);
  s.air_out(s.air(1e5, 303.15, 0.015, "air of the loft"), "leakage", 0.05);
  s.graph.exchange("motor", "heat of motors", GivenPower{}, {s.graph.channel("motor's power", "W", 100.0)},
                   {{{s.motors, air}}});
  const Kept kept = kept_book(s, 1_h);
  // c_p (T - T_out) + c_v (w t - w_out t_out) of dry air, by ASHRAE's enthalpy less its 2501 kJ/kg.
  const double an_hour = 0.55 * 3600.0 * (1006.0 * 10.0 + 1860.0 * (0.015 * 30.0 - 0.008 * 20.0));
  EXPECT_NEAR(kept.total.of(HeatLine::vents), an_hour - 100.0 * 3600.0, 0.003 * an_hour)
      << "the air cools by 0.02 K of 10";
  EXPECT_NEAR(kept.total.residual_j(), 0.0, 1e-9 * an_hour) << "the latent heat that left was never in the book";
  expect_only(kept.total, {HeatLine::vents, HeatLine::kept});
}

TEST(HeatLedger, RainBringsHeatWithWater) {
  SmallHouse s;
  const NodeId tank = s.wet("tank", 1e3, 293.15, 100.0);
  const ChannelId rain = s.graph.channel("rain", "kg m-2 s-1", 0.001);
  s.lose(tank, "tank wall", 0.0);
  s.graph.exchange("rain", "rain", RoofCatchment{10.0, 1.0}, {rain, s.outdoor_k},
                   {{{s.rain, End(tank, 1)}, {s.rain_heat, tank}}});
  const Kept kept = kept_book(s, 1_h);
  expect_only(kept.total, {HeatLine::water});
  EXPECT_NEAR(kept.total.of(HeatLine::water), 0.0, 1e-3) << "the tank keeps what the rain brings: one line";
}

TEST(HeatLedger, AsksTheStoresWhatIsVapour) {
  SmallHouse s;
  const NodeId air = s.air(100.0, 293.15, 0.008), tank = s.wet("tank", 1e3, 353.15, 100.0);
  s.air_out(air, "ventilation", 0.1);
  s.lose(tank, "tank wall", 1.0);
  s.graph.exchange("rain", "rain", RoofCatchment{10.0, 1.0}, {s.still, s.outdoor_k},
                   {{{s.rain, End(tank, 1)}, {s.rain_heat, tank}}});
  const House house = s.graph.compile();
  const HeatLedger ledger(house);
  EXPECT_TRUE(ledger.is_vapour(house.position(End(air, 1))));
  EXPECT_FALSE(ledger.is_vapour(house.position(End(tank, 1)))) << "hot water is water";
  EXPECT_FALSE(ledger.is_vapour(house.position(End(air)))) << "energy is not water";
  EXPECT_TRUE(ledger.is_vapour(house.position(End(s.outdoor_vapour))));
  EXPECT_FALSE(ledger.is_vapour(house.position(End(s.rain))));
}

TEST(HeatLedger, AWayOfUnknownKindIsPlacedByWhatItCarries) {
  SmallHouse s;
  const NodeId air = s.air(300.0, 303.15, 0.006), wet = s.wet("fleece", 1e5, 303.15, 0.5);
  s.shine(wet, 200.0);
  s.air_out(air, "chimney", 0.01);
  s.lose(wet, "rope to a rock", 3.0);
  s.graph.exchange("gutter", "spout", RoofCatchment{1e-3, 1.0}, {s.one, s.outdoor_k},
                   {{{s.rain, End(wet, 1)}, {s.rain_heat, wet}}});
  s.graph.exchange("fleece dries", "fleece", WetSurface{5.0, kStandardPressure, 0.1, simple_film(2.0, 1.0)},
                   {wet, Input(wet, 1), air, Input(air, 1)}, {{{End(wet, 1), End(air, 1)}, {wet, air}}});
  const Kept kept = kept_book(s, 2_h);
  EXPECT_THAT(HeatLedger(kept.house).unknown_paths(),
              testing::UnorderedElementsAre("chimney", "rope to a rock", "spout", "fleece"));
  EXPECT_NEAR(kept.total.of(HeatLine::cover), kept.carried("loss by rope to a rock", 0), 1e-6);
  EXPECT_NEAR(kept.total.of(HeatLine::water), -kept.carried("gutter", 1), 1e-6);
  EXPECT_NEAR(kept.total.of(HeatLine::surfaces), kLatentHeatZero * kept.carried("fleece dries", 0), 1e-3);
  EXPECT_NEAR(kept.total.of(HeatLine::vents),
              kept.carried("air out by chimney", 1) - kLatentHeatZero * kept.carried("air out by chimney", 0), 1e-3);
  EXPECT_NEAR(kept.total.residual_j(), 0.0, 1e-9 * kept.total.sun_j);
}

}  // namespace
}  // namespace noonhouse
