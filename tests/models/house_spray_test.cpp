// SPDX-License-Identifier: Apache-2.0
// Layers of air under a line of nozzles, put together from the spray's laws and run by the engine.
#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "models/air/air_exchange.hpp"
#include "models/air/moist_air.hpp"
#include "models/air/spray_law.hpp"
#include "models/envelope/heat_links.hpp"
#include "models/properties/constants.hpp"
#include "models/water/wet_mass.hpp"
#include "sim/graph/house_graph.hpp"
#include "sim/run/run.hpp"
#include "tests/support/agent_stage.hpp"

namespace noonhouse {
namespace {

constexpr double kFloor = 20.0;        // [m2]
constexpr double kLayer = 1.0;         // [m]
constexpr double kVentilation = 0.02;  // [m3/(m2 s)] of floor, shared by the layers
constexpr double kLag = 0.3;           // of the readings [s]
constexpr double kTankStart = 3000.0;  // [kg]
constexpr double kTankK = 293.15;

/// A given flow of outdoor air through a layer. Inputs: T and w upstream. Fluxes: vapour, enthalpy.
struct GivenAir {
  double dry_air_kg_s = 0.0;
  static constexpr std::string_view kName = "given air";
  static constexpr int kInputs = 2, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::water, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 2>& q) const {
    q[0] = dry_air_kg_s * in[1];
    q[1] = dry_air_kg_s * moist_air_enthalpy(in[0], in[1]);
  }
};

struct Weather {
  double t, w, sun_w_m2;
};

Weather hot(double share, double sun_w_m2) {
  return {308.15, humidity_ratio(share * saturation_pressure_pa(308.15), kStandardPressure), sun_w_m2};
}

/// Layers over a floor, each with its share of the ventilation and of the sun's heat; spray from above all of them.
struct MistedLayers {
  HouseGraph graph;
  RunPlan plan;
  Weather weather;
  std::vector<NodeId> air, drying;
  NodeId tank, floor;
  ChannelId line;
  double density;
  PolylineForcing::Points flow_over_time;

  MistedLayers(int layers, double median_m, const Weather& outside, double flow_kg_s, double ventilation,
               double tank_k = kTankK)
      : weather(outside), density(dry_air_density(outside.t, outside.w, kStandardPressure)) {
    const double each = 1.0 / layers, dry_kg = kFloor * kLayer * density;
    tank = graph.node("tank", WetMass{1e4}, {tank_k, kTankStart}, {0.01, 0.01});
    floor = graph.node("floor", WetMass{1e6}, {kTankK, 1.0}, {0.01, 0.01});
    line = graph.channel("flow", "kg/s", flow_kg_s);
    const ChannelId out_t = graph.channel("outdoor temperature", "K", outside.t);
    const ChannelId out_w = graph.channel("outdoor humidity", "kg/kg", outside.w);
    const ChannelId sun = graph.channel("sun", "W", outside.sun_w_m2 * kFloor * each);
    const AccountId heat = graph.account("outdoor air", Quantity::energy);
    const AccountId vapour = graph.account("outdoor vapour", Quantity::water);
    const AccountId light = graph.account("sun", Quantity::energy);
    const GivenAir fan{ventilation * kFloor * density * each};
    for (int k = 0; k < layers; ++k) {
      const std::string name = "layer " + std::to_string(k);
      air.push_back(graph.node(name, MoistAir{dry_kg}, {outside.t, outside.w}, {0.01, 1e-5}));
      const NodeId a = air.back();
      graph.exchange(name + " in", "fan", fan, {out_t, out_w}, {{{vapour, End(a, 1)}, {heat, a}}});
      graph.exchange(name + " out", "fan", fan, {a, Input(a, 1)}, {{{End(a, 1), vapour}, {a, heat}}});
      graph.exchange(name + " fog", "fog", FogSettling{dry_kg, kStandardPressure}, {a, Input(a, 1)},
                     {{{End(a, 1), End(floor, 1)}, {a, floor}}});
      graph.exchange(name + " sun", "sun", GivenPower{}, {sun}, {{{light, a}}});
    }
    spray(std::make_shared<SprayTable>(drop_sizes_of_median(median_m, 2.5),
                                       AirAroundDrop{outside.t, outside.w, kStandardPressure}));
  }

  void spray(const std::shared_ptr<const SprayTable>& table) {
    const ChannelId nozzle = graph.channel("stage at the nozzle", "1", 0.0);
    const AccountId instrument = graph.account("instrument", Quantity::reading);
    std::vector<Input> above{nozzle};
    for (std::size_t k = 0; k < air.size(); ++k) {
      const std::string name = graph.name_of(air[k]);
      const Input t = air[k], w = Input(air[k], 1);
      graph.exchange(name + " spray", "spray", SprayEvaporation{table, 1.0, kLayer, kStandardPressure},
                     {above[k], t, w, tank, line}, {{{End(tank, 1), End(air[k], 1)}, {tank, air[k]}}});
      if (k + 1 == air.size()) {
        const double fall_m = kLayer * static_cast<double>(air.size());
        const SprayLanding landing{table, 1.0, kLayer, table->approach_to_wet_bulb(fall_m), kStandardPressure};
        graph.exchange("landing", "spray", landing, {above[k], t, w, tank, line},
                       {{{End(tank, 1), End(floor, 1)}, {tank, floor}, {tank, air[k]}}});
        break;
      }
      drying.push_back(graph.node(name + " drying", Reading{}, {0.0}, {0.01}));
      graph.exchange(name + " history", "spray", SprayHistory{table, kLayer, kLag, kStandardPressure},
                     {drying[k], above[k], t, w}, {{{instrument, drying[k]}}});
      above.emplace_back(drying[k]);
    }
  }

  RunResult run(Tick length) {
    plan.house = graph.compile();
    auto forcing = std::make_unique<PolylineForcing>();
    if (!flow_over_time.empty()) forcing->add(line, flow_over_time);
    plan.forcing = std::move(forcing);
    plan.length = length;
    return Run(plan).go();
  }
  double potential(const RunResult& result, NodeId node, int which) const {
    std::vector<double> p(static_cast<std::size_t>(plan.house.states + plan.house.channels));
    for (const auto& batch : plan.house.store_batches) batch->potentials(result.state.amounts.data(), p.data());
    return p[static_cast<std::size_t>(plan.house.position(Input(node, which)))];
  }
  double evaporated_kg(const RunResult& result) const {
    return kTankStart - potential(result, tank, 1) - (potential(result, floor, 1) - 1.0);
  }
};

// At rest the line's flow leaves the tank, whatever becomes of it, and the air that leaves holds what evaporated.
TEST(MistedLayers, SprayWhatFlowsAndLoseNothing) {
  for (const int layers : {1, 3, 6}) {
    const double flow = 0.004;
    MistedLayers house(layers, 120e-6, hot(0.3, 200.0), flow, kVentilation);
    const RunResult at_4_h = house.run(4_h);
    EXPECT_NEAR(kTankStart - house.potential(at_4_h, house.tank, 1), flow * 4 * 3600.0, 2.0 * kLag * layers * flow)
        << "to what is on its way";
    double carried = 0.0;
    for (const NodeId a : house.air) carried += house.potential(at_4_h, a, 1) - house.weather.w;
    carried *= kVentilation * kFloor * house.density / layers * 4 * 3600.0;
    EXPECT_NEAR(house.evaporated_kg(at_4_h), carried, 0.02 * carried) << "but for the first minutes' filling";
    EXPECT_GT(house.potential(at_4_h, house.floor, 1), 1.0 + 0.05 * flow * 4 * 3600.0) << "some lands";
  }
}

// The upper layers take the fine drops and are the cooler ones, but for the lowest, which cold water cools as it lands;
// none is beyond saturation.
TEST(MistedLayers, CoolFromAboveAndAreNeverBeyondSaturation) {
  for (const double flow : {0.001, 0.004, 0.02, 0.08}) {
    for (const double median : {20e-6, 120e-6}) {
      MistedLayers house(4, median, hot(0.3, 200.0), flow, kVentilation);
      const RunResult result = house.run(3_h);
      double before = 0.0;
      for (const NodeId a : house.air) {
        const double t = house.potential(result, a, 0), w = house.potential(result, a, 1);
        EXPECT_LE(w, saturation_humidity_ratio_fast(t, kStandardPressure) * (1.0 + 1e-4)) << flow << " " << median;
        if (a.index != house.air.back().index) {
          EXPECT_GE(t, before - 0.01);
        }
        before = t;
      }
      EXPECT_LT(result.steps, 3000);
    }
  }
}

// Ozturk 2003, Turk. J. Agric. For. 27, 49 (abstract): fog nozzles at 4.5 atm in a greenhouse evaporated 130 to 1223
// g/(m2 h). Sizes and weather are not in the abstract: 60 to 120 um, flows from a little to plenty, air of 35 degC and
// 30 %, half of 0.65 of 800 W/m2 of sun. Never more than sun and the cooled air supply, to 1 % for the first filling.
TEST(MistedLayers, EvaporateWithinWhatFogNozzlesMeasuredAndWhatHeatThereIs) {
  const double sun = 0.5 * 0.65 * 800.0, hours = 6.0;
  double most = 0.0;
  for (const double median : {60e-6, 120e-6}) {
    for (const double flow_kg_m2_h : {0.5, 1.5, 5.0}) {
      MistedLayers house(3, median, hot(0.3, sun), flow_kg_m2_h * kFloor / 3600.0, kVentilation);
      const RunResult result = house.run(6_h);
      const double rate = house.evaporated_kg(result) / (kFloor * hours);  // [kg/(m2 h)]
      EXPECT_GE(rate, 0.130);
      EXPECT_LE(rate, 1.223);
      double supply_w_m2 = sun;
      for (const NodeId a : house.air)
        supply_w_m2 += kVentilation / 3.0 * house.density * (kDryAirHeat + kVapourHeat * house.weather.w) *
                       (house.weather.t - house.potential(result, a, 0));
      const double latent = vapour_enthalpy(295.0) - liquid_enthalpy(kTankK);
      EXPECT_LE(rate / 3600.0 * latent, 1.01 * supply_w_m2) << median << " " << flow_kg_m2_h;
      most = std::max(most, rate);
    }
  }
  EXPECT_GT(most, 0.6) << "plenty of water comes near to what the heat allows";
}

double wet_energy(const MistedLayers& house, const RunResult& result, NodeId node, double dry_j_k) {
  return (dry_j_k + house.potential(result, node, 1) * kWaterHeat) * (house.potential(result, node, 0) - kZeroCelsius);
}

// A closed house under fog of water at its wet bulb: saturated there; air, tank and floor keep their energy, to 1e-6 of
// the air's.
TEST(MistedLayers, SaturateAClosedHouseAtItsWetBulb) {
  const Weather still{311.15, humidity_ratio(0.2 * saturation_pressure_pa(311.15), kStandardPressure), 0.0};
  const double bulb = wet_bulb_fast_k(still.t, still.w, kStandardPressure),
               start = moist_air_enthalpy(still.t, still.w);
  MistedLayers house(2, 20e-6, still, 0.002, 0.0, bulb);
  const RunResult result = house.run(4_h);
  double energy = 0.0;
  for (const NodeId a : house.air) {
    const double t = house.potential(result, a, 0), w = house.potential(result, a, 1);
    EXPECT_NEAR(t, bulb, 0.1);
    EXPECT_NEAR(w, saturation_humidity_ratio_fast(t, kStandardPressure), 5e-5);
    energy += kFloor * kLayer * house.density * (moist_air_enthalpy(t, w) - start);
  }
  energy += wet_energy(house, result, house.tank, 1e4) - (1e4 + kTankStart * kWaterHeat) * (bulb - kZeroCelsius);
  energy += wet_energy(house, result, house.floor, 1e6) - (1e6 + kWaterHeat) * (kTankK - kZeroCelsius);
  EXPECT_NEAR(energy, 0.0, 1e-6 * 2.0 * kFloor * kLayer * house.density * start);
}

// Pulses of a minute in every ten: what is sprayed leaves the tank, but for twice the lag of two readings
// a pulse, and the steps stay few.
TEST(MistedLayers, BearPulses) {
  MistedLayers house(3, 20e-6, hot(0.3, 200.0), 0.0, kVentilation);
  for (int i = 0; i < 12; ++i) {
    const Tick start = 10_min * i;
    house.flow_over_time.emplace_back(start, 0.0);
    house.flow_over_time.emplace_back(start + 1_s, 0.03);
    house.flow_over_time.emplace_back(start + 60_s, 0.03);
    house.flow_over_time.emplace_back(start + 61_s, 0.0);
  }
  house.flow_over_time.emplace_back(2_h, 0.0);
  const RunResult result = house.run(2_h);
  EXPECT_NEAR(kTankStart - house.potential(result, house.tank, 1), 12 * 60.0 * 0.03, 12 * 2.0 * kLag * 2 * 0.03);
  EXPECT_LT(result.steps, 4000);
  RecordProperty("steps", static_cast<int>(result.steps));
}

}  // namespace
}  // namespace noonhouse
