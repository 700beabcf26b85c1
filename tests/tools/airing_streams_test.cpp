// SPDX-License-Identifier: Apache-2.0
// The streams behind net flows, and a house's own streams beside the laws that make them.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "models/air/air_network.hpp"
#include "tests/support/small_scenario.hpp"
#include "tools/airing/airing.hpp"

namespace noonhouse {
namespace {

/// Carries two known streams as every law of air does, and finds them again.
void expect_found(double forth, double back, const AirState& a, const AirState& b) {
  std::array<double, 3> q{};
  carry_both_ways(forth, back, a.temperature_k, a.humidity_ratio, b.temperature_k, b.humidity_ratio, q);
  const TwoWayAir found = two_ways({q[0], q[1], q[2]}, a, b);
  EXPECT_NEAR(found.a_to_b_kg_s, forth, 1e-9);
  EXPECT_NEAR(found.b_to_a_kg_s, back, 1e-9);
}

TEST(TwoWays, FindsBothStreamsByHeatAndByVapour) {
  expect_found(0.3, 0.1, {310.0, 0.012}, {300.0, 0.008});
  expect_found(0.1, 0.3, {300.0, 0.008}, {310.0, 0.012});
  expect_found(0.0, 0.25, {300.0, 0.008}, {310.0, 0.012});
  expect_found(0.2, 0.2, {300.0, 0.010}, {300.001, 0.010});
  // As much heat in both, by less vapour at a higher temperature: only the vapour tells the streams apart.
  const double w_b = 0.008, h_a = moist_air_enthalpy(300.0, 0.010);
  const double t_b = temperature_from_enthalpy_k(h_a, w_b);
  expect_found(0.4, 0.15, {300.0, 0.010}, {t_b, w_b});
}

TEST(TwoWays, OfLikeAirOnlyTheNetFlowIsKnown) {
  const AirState same{300.0, 0.010};
  std::array<double, 3> q{};
  carry_both_ways(0.1, 0.3, 300.0, 0.010, 300.0, 0.010, q);
  const TwoWayAir found = two_ways({q[0], q[1], q[2]}, same, same);
  EXPECT_DOUBLE_EQ(found.a_to_b_kg_s, 0.0);
  EXPECT_NEAR(found.b_to_a_kg_s, 0.2, 1e-15);
}

/// A house of two bays at its start, its air set by hand to differ from layer to layer.
struct StirredUp {
  Scenario scenario = read_scenario_text(small_scenario::kText, "small.yaml");
  WeatherSeries weather = weather_of(scenario, scenario.plans.front());
  Assembly assembly = assemble(scenario.plans.front(), site_table(scenario.plans.front(), weather), weather);
  AirStreams streams{assembly};
  std::vector<double> potentials;

  StirredUp() {
    const House& house = assembly.plan.house;
    potentials.resize(static_cast<std::size_t>(house.states + house.channels));
    for (const auto& batch : house.store_batches) batch->potentials(house.initial_amounts.data(), potentials.data());
    std::copy(house.initial_channels.begin(), house.initial_channels.end(), potentials.begin() + house.states);
    for (std::size_t b = 0; b < assembly.bays.size(); ++b)
      for (std::size_t i = 0; i < assembly.bays[b].air.size(); ++i) {
        const double warmer = 3.0 * static_cast<double>(i) + static_cast<double>(b);
        set(assembly.bays[b].air[i], 305.0 + warmer, 0.010 + 0.0005 * static_cast<double>(i));
        set(assembly.bays[b].column[i], 305.5 + warmer, 0.011);
      }
  }
  void set(NodeId node, double temperature_k, double w) {
    const auto first = static_cast<std::size_t>(assembly.plan.house.position(Input(node)));
    potentials[first] = temperature_k;
    potentials[first + 1] = w;
  }
};

TEST(AirStreams, EveryZoneGetsAsMuchAirAsItGives) {
  StirredUp house;
  const auto& flow = house.streams.flowing(house.potentials);
  std::vector<double> gain(house.streams.zones().size(), 0.0);
  double through = 0.0;
  for (std::size_t i = 0; i < flow.size(); ++i) {
    const AirWay& way = house.streams.ways()[i];
    EXPECT_GE(flow[i].a_to_b_kg_s, 0.0) << way.name;
    EXPECT_GE(flow[i].b_to_a_kg_s, 0.0) << way.name;
    const double net = flow[i].a_to_b_kg_s - flow[i].b_to_a_kg_s;
    gain[static_cast<std::size_t>(way.a)] -= net;
    if (way.b == kOutdoorsZone) {
      through += flow[i].b_to_a_kg_s;
    } else {
      gain[static_cast<std::size_t>(way.b)] += net;
    }
  }
  EXPECT_GT(through, 1e-4);
  for (std::size_t z = 0; z < gain.size(); ++z) EXPECT_NEAR(gain[z], 0.0, 1e-9) << z;
}

TEST(AirStreams, AirInEqualsAirOutWithoutBeingSettledBefore) {
  StirredUp house;  // its pressures are those of the start, for other temperatures
  double in = 0.0, out = 0.0;
  for (const AirFlow& flow : through_the_cover(house.streams, house.streams.flowing(house.potentials))) {
    in += flow.in_kg_s;
    out += flow.out_kg_s;
  }
  EXPECT_GT(in, 1e-4);
  EXPECT_NEAR(in, out, 1e-9);
}

/// The mixing of two layers is the law's own m, which its flux of vapour shows: q = m (w_a - w_b).
TEST(AirStreams, MixingIsFoundAsTheLawHasIt) {
  StirredUp house;
  const auto& flow = house.streams.flowing(house.potentials);
  const House& compiled = house.assembly.plan.house;
  const std::string name = "mixing of layers 1 and 2 of the west bay";
  const auto& ways = house.streams.ways();
  const auto way = std::find_if(ways.begin(), ways.end(), [&](const AirWay& w) { return w.name == name; });
  ASSERT_NE(way, ways.end());
  const auto found = compiled.find_exchange(name);
  ASSERT_TRUE(found.has_value());
  std::vector<double> q(static_cast<std::size_t>(compiled.fluxes));
  for (std::size_t b = 0; b < compiled.exchange_batches.size(); ++b)
    compiled.exchange_batches[b]->fluxes(house.streams.settled().data(), q.data() + compiled.batch_first_flux[b]);
  const auto first = static_cast<std::size_t>(compiled.exchanges[static_cast<std::size_t>(found->index)].first_flux);
  const double m = q[first] / (0.010 - 0.0105);
  ASSERT_GT(m, 0.0);
  const TwoWayAir& mixing = flow[static_cast<std::size_t>(way - ways.begin())];
  EXPECT_NEAR(mixing.a_to_b_kg_s, m, 1e-9 * m + 1e-12);
  EXPECT_NEAR(mixing.b_to_a_kg_s, m, 1e-9 * m + 1e-12);
}

TEST(AirStreams, WaysHaveTheirOpeningsNames) {
  StirredUp house;
  const auto flows = through_the_cover(house.streams, house.streams.flowing(house.potentials));
  const auto named = [&](const std::string& name) {
    return std::count_if(flows.begin(), flows.end(), [&](const AirFlow& f) { return f.name == name; });
  };
  EXPECT_EQ(named("ridge vent"), 1);
  EXPECT_EQ(named("cracks of the back roof of the west bay"), 1);
  for (const AirFlow& flow : flows) EXPECT_EQ(flow.name.find(" at layer "), std::string::npos) << flow.name;
}

}  // namespace
}  // namespace noonhouse
