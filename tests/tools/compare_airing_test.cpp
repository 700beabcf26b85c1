// SPDX-License-Identifier: Apache-2.0
// A run's air changes, seen at instants, beside what its fluxes carried by the method's own quadrature.
#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <string>

#include "tools/compare/run_recorder.hpp"

namespace noonhouse {
namespace {

struct AiredWeek {
  Scenario scenario = read_scenario(std::string(NOONHOUSE_SOURCE_DIR) + "/scenarios/heatwave/heatwave.yaml");
  const PlanScenario& plan = scenario.plan("vents and fan");
  WeatherSeries weather = weather_of(scenario, plan);
  Assembly assembly = assemble(plan, site_table(plan, weather), weather);
  RunResult result;
  RunRecord record;

  AiredWeek() {
    RunRecorder recorder(assembly, plan);
    Run run(assembly.plan);
    run.add_observer(recorder);
    result = run.go();
    record = recorder.finish(result);
  }
};

const AiredWeek& week() {
  static const AiredWeek run;
  return run;
}

double dry_air_kg() {
  double volume = 0.0;
  for (const BayShape& bay : week().assembly.shape.bays) volume += bay.volume_m3;
  return volume * week().assembly.air_density_kg_m3;
}

TEST(RunAiring, WaysAddUpToTheHouse) {
  double in = 0.0, out = 0.0;
  for (const WayOutcome& way : week().record.ways) {
    in += way.in_1_s;
    out += way.out_1_s;
  }
  const AiringOutcome& airing = week().record.airing;
  EXPECT_NEAR(in, airing.mean_1_s, 1e-12);
  EXPECT_NEAR(in, out, 1e-9);
  EXPECT_LT(airing.least_1_s, airing.mean_1_s);
  EXPECT_GT(airing.most_1_s, airing.mean_1_s);
  EXPECT_GE(airing.hottest_1_s, airing.least_1_s);
  EXPECT_LE(airing.hottest_1_s, airing.most_1_s);
  EXPECT_GE(airing.least_time_s, 0.0);
  EXPECT_LE(airing.most_time_s, week().record.duration_s);
}

/// Out less in through each way is what its fluxes of air carried. Looks five minutes apart miss what a device does
/// between them: a hundredth of the house's air changes is allowed for.
TEST(RunAiring, NetFlowsAreWhatTheFluxesCarried) {
  const House& house = week().assembly.plan.house;
  std::map<std::string, double> carried_kg;
  for (std::size_t j = 0; j < house.flux.size(); ++j) {
    const ExchangeInfo& exchange = house.exchanges[static_cast<std::size_t>(house.flux[j].exchange)];
    if (house.flux[j].quantity != Quantity::air || exchange.path == "mixing") continue;
    carried_kg[exchange.name.substr(0, exchange.name.rfind(" at layer "))] += week().result.state.carried[j];
  }
  ASSERT_EQ(carried_kg.size(), week().record.ways.size());
  double largest = 0.0;
  for (const WayOutcome& way : week().record.ways) {
    ASSERT_TRUE(carried_kg.contains(way.name)) << way.name;
    const double net_1_s = carried_kg[way.name] / (dry_air_kg() * week().record.duration_s);
    EXPECT_NEAR(way.out_1_s - way.in_1_s, net_1_s, 0.01 * week().record.airing.mean_1_s) << way.name;
    largest = std::max(largest, std::abs(net_1_s));
  }
  EXPECT_GT(largest, 0.1 * week().record.airing.mean_1_s);
}

}  // namespace
}  // namespace noonhouse
