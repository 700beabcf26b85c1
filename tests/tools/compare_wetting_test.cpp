// SPDX-License-Identifier: Apache-2.0
// Pads, roof sprinklers and damped floors in whole houses: what they do in service, and nothing out of it.
#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "tests/support/small_scenario.hpp"
#include "tools/compare/plan_run.hpp"
#include "tools/scenario/assemble.hpp"

namespace noonhouse {
namespace {

/// The small house with a fan, a pad, a roof line and a floor line, and a plan for each.
std::string wet_text() {
  std::string text = small_scenario::kText;
  const auto put = [&](const std::string& before, const std::string& more) {
    const auto at = text.find(before);
    EXPECT_NE(at, std::string::npos) << before;
    text.insert(at, more);
  };
  put("benches:\n", R"(  roof line:
    { bays: [west, east], height: 2.5 m, wets: roof, nozzles: 6, nozzle_flow: 10 L/h, pump_power: 40 W }
  floor line:
    { bays: [west, east], height: 0.3 m, wets: floor, nozzles: 1, nozzle_flow: 8 L/h, pump_power: 40 W }
pads:
  wet wall: { bay: west, area: 0.5 m2, height: 0.8 m, centre: 0.8 m, pump_power: 10 W }
fans:
  end fan: { bay: east, height: 1.5 m, inlet_bay: west, inlet_height: 0.5 m, flow: 1200 m3/h, power: 60 W }
)");
  put("tank:\n", R"(timers:
  noon: { from: "08:00", until: "20:00", drives: [roof line, floor line, wet wall, end fan] }
)");
  text += R"(plans:
  all shut: { in_service: [] }
  fan: { in_service: [end fan, noon] }
  pad: { in_service: [end fan, wet wall, noon] }
  roof: { in_service: [roof line, noon] }
  floor: { in_service: [floor line, noon] }
)";
  return text;
}

const Scenario& wet_house() {
  static const Scenario scenario = [] {
    std::string text = wet_text();
    const auto at = text.find("plans:\n");
    const auto last = text.rfind("plans:\n");
    if (at != last) text.erase(at, last - at);  // the small house's own plan goes
    return small_scenario::read(text);
  }();
  return scenario;
}

const RunRecord& ran(const std::string& plan) {
  static const std::vector<RunRecord> records = [] {
    std::vector<const PlanScenario*> plans;
    for (const PlanScenario& p : wet_house().plans) plans.push_back(&p);
    return run_plans(wet_house(), plans, 2);
  }();
  return *std::find_if(records.begin(), records.end(), [&](const RunRecord& r) { return r.plan == plan; });
}

double peak(const RunRecord& run) {
  double out = 0.0;
  for (const LevelOutcome& level : run.levels) out = std::max(out, level.peak_k);
  return out;
}

int ways(const std::string& plan, const std::string& begin) {
  const PlanScenario& p = wet_house().plan(plan);
  const WeatherSeries weather = weather_of(wet_house(), p);
  const Assembly assembly = assemble(p, site_table(p, weather), weather);
  return static_cast<int>(std::count_if(assembly.plan.house.exchanges.begin(), assembly.plan.house.exchanges.end(),
                                        [&](const ExchangeInfo& e) { return e.name.rfind(begin, 0) == 0; }));
}

TEST(WetHouse, HasNoPadOutOfServiceAndNoLouvreBesideAPadInService) {
  EXPECT_EQ(ways("all shut", "wet wall"), 0);
  EXPECT_GT(ways("fan", "louvre of end fan"), 0);
  EXPECT_GT(ways("pad", "wet wall"), 0);
  EXPECT_EQ(ways("pad", "louvre of end fan"), 0);
}

TEST(WetHouse, IsCooledByPadAndRoofAndFloorInThatOrder) {
  EXPECT_LT(peak(ran("pad")), peak(ran("fan")) - 3.0);
  EXPECT_LT(peak(ran("roof")), peak(ran("all shut")) - 3.0);
  EXPECT_LT(peak(ran("floor")), peak(ran("all shut")));
  EXPECT_GT(peak(ran("floor")), peak(ran("roof")));
}

/// 60 L/h for twelve hours of two days run over the roof and back; the tank lacks only what dried.
TEST(WetHouse, CountsOfARoofLineWhatTheTankLacks) {
  const RunRecord& roof = ran("roof");
  const double lacks = roof.water.start_kg + roof.water.rain_caught_kg - roof.water.overflow_kg - roof.water.end_kg;
  EXPECT_NEAR(roof.water.misted_kg + roof.water.hand_watered_kg, lacks, 1e-6 * lacks + 1e-6);
  EXPECT_LT(roof.water.misted_kg, 400.0);
  EXPECT_GT(roof.water.misted_kg, 20.0);
}

TEST(WetHouse, ClosesItsBalances) {
  for (const char* plan : {"all shut", "fan", "pad", "roof", "floor"}) {
    EXPECT_LE(ran(plan).closure.energy_relative, 1e-6) << plan;
    EXPECT_LE(ran(plan).closure.water_relative, 1e-9) << plan;
  }
}

}  // namespace
}  // namespace noonhouse
