// SPDX-License-Identifier: Apache-2.0
// The network of pressures in weather at its calmest and its worst, with vents open and shut.
#include <gtest/gtest.h>

#include <cmath>

#include "tests/support/aired_box_runs.hpp"

namespace noonhouse {
namespace {

using namespace aired;

TEST(AirNetworkWeather, AtRestNothingMovesButTheRoundingOfRest) {
  auto box = chimney(6, kOutsideK);
  const auto run = watched(box, kDay, {});
  for (std::size_t mark = 0; mark <= 96; ++mark)
    for (const NodeId node : box.air) EXPECT_NEAR(run.kelvin(mark, node), kOutsideK, 1e-6);
  EXPECT_NEAR(run.rest.through("low").net(), 0.0, 1e-8);
  for (const NodeId node : box.pressure) EXPECT_NEAR(run.rest.potential(node), 0.0, 1e-6);
  EXPECT_LE(run.steps(), 60) << "an hour each, and the beginning";
}

TEST(AirNetworkWeather, InDeadCalmAHeatedBoxComesToRestAndGivesUpItsHeat) {
  auto box = chimney(6, kOutsideK);
  const auto run = watched(box, kDay, {{box.heat_w, 2000.0}});
  const double top_k = run.kelvin(96, box.air.back()), flow = run.rest.through("high").net();
  EXPECT_GT(top_k, kOutsideK + 1.0);
  const double given_up = flow * (moist_air_enthalpy(top_k, 0.0) - moist_air_enthalpy(kOutsideK, 0.0));
  EXPECT_NEAR(given_up, 2000.0, 20.0);
  for (std::size_t mark = 24; mark <= 96; ++mark)
    for (const NodeId node : box.air) EXPECT_NEAR(run.kelvin(mark, node), run.kelvin(96, node), 0.02) << "no swing";
  EXPECT_LE(run.steps(), 110);
}

TEST(AirNetworkWeather, AGaleBlowsThroughAsItsPressureSays) {
  AiredBox box(4, 3.0, 20.0, 300.0, kOutsideK);
  const double unit = 0.5 * box.density * 40.0 * 40.0;
  const ChannelId windward = box.graph.channel("windward", "Pa", 0.7 * unit),
                  lee = box.graph.channel("lee", "Pa", -0.5 * unit);
  slit(box, "in", 1.0, 0.8, windward, 0.025);
  slit(box, "out", 1.0, 0.8, lee, 0.025);
  box.column_of(0.1);
  const auto run = watched(box, 6_h, {{box.wind, 40.0}});
  const double expected = box.density * cross_wind_flow(0.6, 0.8 / std::sqrt(2.0), 40.0, 1.2);
  EXPECT_NEAR(run.rest.through("out").net(), expected, 0.01 * expected);
  EXPECT_NEAR(run.kelvin(24, box.air[1]), kOutsideK, 0.01) << "the layer that it blows through";
  EXPECT_LE(run.steps(), 60);
}

TEST(AirNetworkWeather, WithAllOpeningsShutOnlyCracksPass) {
  AiredBox box(3, 3.0, 20.0, kOutsideK, kOutsideK);
  const ChannelId windward = box.graph.channel("windward", "Pa", 8.0), lee = box.graph.channel("lee", "Pa", 0.0);
  slit(box, "vent", 1.0, 0.8, windward, 0.025);
  slit(box, "other vent", 2.0, 0.8, lee, 0.025);
  crack(box, "crack in", 1.5, 0.004, windward);
  crack(box, "crack out", 1.5, 0.004, lee);
  box.column_of(0.1);
  const auto run = watched(box, 6_h, {{box.open, 0.0}, {box.wind, 4.0}});
  // Equal cracks share the pressure: C 4^0.65 each. ASHRAE Handbook of Fundamentals, ventilation chapter.
  const double expected = box.density * 0.004 * std::pow(4.0, 0.65);
  EXPECT_NEAR(run.rest.through("crack out").net(), expected, 0.01 * expected);
  EXPECT_EQ(run.rest.through("vent").net(), 0.0);
  EXPECT_EQ(run.rest.through("other vent").net(), 0.0);
}

TEST(AirNetworkWeather, OneOpeningAloneExchangesAndPassesNothingOn) {
  AiredBox box(8, 4.0, 30.0, kOutsideK, kOutsideK);
  box.opening("door", 1.0, 0.9, 2.0);
  box.column_of(0.1);
  box.heat(box.column[0]);
  const auto run = watched(box, kDay, {{box.heat_w, 1000.0}, {box.wind_pa, 20.0}});
  const auto both = run.rest.through("door");
  EXPECT_NEAR(both.net(), 0.0, 1e-9) << "what comes in goes out";
  EXPECT_GT(both.a_to_b_kg_s, 0.05) << "above";
  EXPECT_GT(run.kelvin(96, box.air[5]), run.kelvin(96, box.air[2])) << "warm air leaves above, cool air comes in below";
  EXPECT_NEAR(run.kelvin(96, box.air[5]), run.kelvin(48, box.air[5]), 0.05);
}

TEST(AirNetworkWeather, AFanAgainstShutVentsMovesWhatTheCracksLetIn) {
  AiredBox box(3, 3.0, 20.0, kOutsideK, kOutsideK);
  const ChannelId still = box.graph.channel("still", "Pa", 0.0), running = box.graph.channel("fan", "1", 1.0);
  slit(box, "vent", 1.5, 0.8, still);
  crack(box, "crack", 1.5, 0.004, still);
  const std::size_t i = box.layer_at(1.5);
  const QuadraticFan fan{0.6, 60.0};
  box.outdoors(
      "fan", FanPiece{{1.5, box.middle_m(i), box.density, AiredBox::kPressure}, fan}, i,
      std::array<Input, 7>{box.pressure[i], box.air[i], Input(box.air[i], 1), box.out_k, box.out_w, still, running});
  box.column_of(0.1);
  const auto shut = watched(box, 1_h, {{box.open, 0.0}}).rest;
  const double under = -shut.potential(box.pressure[i]), flow = shut.through("fan").net();
  EXPECT_LT(under, 60.0 * box.density / 1.2) << "below its shut-off";
  EXPECT_GT(under, 0.5 * 60.0);
  EXPECT_NEAR(flow, box.density * 0.004 * std::pow(under, 0.65), 0.01 * flow);
  EXPECT_NEAR(under, fan.pressure_pa(flow / box.density, box.density, 1.0), 0.01 * under);
}

TEST(AirNetworkWeather, AFanWithItsVentsOpenMovesNearlyItsFreeFlow) {
  AiredBox box(3, 3.0, 20.0, kOutsideK, kOutsideK);
  const ChannelId still = box.graph.channel("still", "Pa", 0.0), running = box.graph.channel("fan", "1", 1.0);
  slit(box, "vent", 1.5, 0.8, still);
  const std::size_t i = box.layer_at(1.5);
  box.outdoors(
      "fan", FanPiece{{1.5, box.middle_m(i), box.density, AiredBox::kPressure}, {0.6, 60.0}}, i,
      std::array<Input, 7>{box.pressure[i], box.air[i], Input(box.air[i], 1), box.out_k, box.out_w, still, running});
  box.column_of(0.1);
  const auto rest = watched(box, 1_h, {}).rest;
  EXPECT_NEAR(rest.through("fan").net(), 0.6 * box.density, 0.02 * 0.6 * box.density);
  EXPECT_LT(rest.through("fan").net(), 0.6 * box.density);
}

/// Pressures of a wind that goes round once a day, a quarter out of step on two sides.
PolylineForcing::Points turning(double phase_rad) {
  PolylineForcing::Points out;
  for (int hour = 0; hour <= 24; ++hour)
    out.emplace_back(1_h * hour, 3.0 * std::cos(2.0 * kPi * hour / 24.0 + phase_rad));
  return out;
}

TEST(AirNetworkWeather, AWindThatTurnsReversesTheFlowInAFewSteps) {
  AiredBox box(6, 4.0, 30.0, 300.0, kOutsideK);
  const ChannelId north = box.graph.channel("north", "Pa", 3.0), south = box.graph.channel("south", "Pa", -3.0);
  slit(box, "north vent", 1.0, 0.5, north, 0.025);
  slit(box, "south vent", 2.5, 0.5, south, 0.025);
  crack(box, "cracks", 3.0, 0.002, south);
  box.column_of(0.1);
  box.heat(box.column[0]);
  const auto run =
      watched(box, kDay, {{box.heat_w, 1500.0}, {box.wind, 3.0}}, {{north, turning(0.0)}, {south, turning(kPi)}});
  EXPECT_LT(run.rest.through("north vent").net(), -0.5) << "in where the wind stands on";
  double warmest = 0.0, coolest = 1e9;
  for (std::size_t mark = 8; mark <= 96; ++mark)
    for (const NodeId node : box.air) {
      warmest = std::max(warmest, run.kelvin(mark, node));
      coolest = std::min(coolest, run.kelvin(mark, node));
    }
  EXPECT_GT(coolest, kOutsideK - 0.01) << "never colder than outdoors";
  EXPECT_LT(warmest, kOutsideK + 30.0);
  EXPECT_LE(run.steps(), 320);
  RecordProperty("steps", std::to_string(run.steps()));
}

/// Temperatures of the layers from the lowest up, a quarter of an hour after air of another temperature begins to blow
/// in at one height and out at the other end of the box, past a column over half of the plan.
std::vector<double> layers_after_inflow(double inside_k, double outside_k, double in_at_m, double out_at_m) {
  AiredBox box(8, 4.0, 30.0, inside_k, outside_k);
  const ChannelId windward = box.graph.channel("windward", "Pa", 1.0), lee = box.graph.channel("lee", "Pa", 0.0);
  slit(box, "in", in_at_m, 0.05, windward);
  slit(box, "out", out_at_m, 0.05, lee);
  box.column_of(0.1, 15.0);
  const auto run = watched(box, 15_min, {});
  std::vector<double> out;
  for (const NodeId node : box.air) out.push_back(run.kelvin(1, node));
  return out;
}

TEST(AirNetworkInflow, ColdAirThatComesInHighEndsUpLowest) {
  for (const double in_at_m : {3.3, 3.8}) {
    const auto k = layers_after_inflow(305.15, 288.15, in_at_m, 0.3);
    for (std::size_t i = 0; i + 1 < k.size(); ++i) EXPECT_LT(k[i], k[i + 1]) << in_at_m << ' ' << i;
    EXPECT_LT(k.front(), 305.15 - 5.0) << "it has arrived";
    EXPECT_GT(k.back(), 305.15 - 1.0) << "and passed the air under the roof";
  }
}

TEST(AirNetworkInflow, WarmAirThatComesInLowEndsUpHighest) {
  const auto k = layers_after_inflow(293.15, 305.15, 0.3, 3.8);
  for (std::size_t i = 0; i + 1 < k.size(); ++i) EXPECT_LE(k[i], k[i + 1] + 0.01) << i;
  EXPECT_GT(k.back(), 293.15 + 5.0) << "it has arrived";
  EXPECT_LT(k.front(), 293.15 + 1.0) << "and passed the air over the floor";
}

}  // namespace
}  // namespace noonhouse
