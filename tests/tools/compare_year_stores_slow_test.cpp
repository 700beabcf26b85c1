// SPDX-License-Identifier: Apache-2.0
// Water and charge over a year with thousands of events: rain by gutters with a first flush, mist, drippers, hand
// watering, a bowser, overflow and evaporation of the tank; a panel, shedding and cut-offs.
#include <gtest/gtest.h>

#include "tests/support/small_faults.hpp"
#include "tools/compare/plan_run.hpp"

namespace noonhouse {
namespace {

/// The small house through an invented year, with everything that brings and takes water and charge.
const RunRecord& year() {
  static const RunRecord record = [] {
    std::string text = small_faults::kText;
    const auto swap = [&](const std::string& from, const std::string& to) {
      const auto at = text.find(from);
      ASSERT_NE(at, std::string::npos) << from;
      text.replace(at, from.size(), to);
    };
    swap("length: 1 d", "length: 365 d");
    swap("2025-07-14", "2025-01-01");
    const auto weather = text.find("weather:"), house = text.find("house:");
    text.replace(weather, house - weather,
                 "weather: { kind: invented year, warmest_month_mean: 24 degC, summer_daily_swing: 16 K }\n");
    swap("height: 1.7 m, nozzles: 5, nozzle_flow: 3 L/h, pump_power: 40 W",
         "height: 1.7 m, nozzles: 5, nozzle_flow: 3 L/h, pump_power: 40 W, keeps_back: 60 L, sheds_at: 65 %");
    swap("capacity: 400 L, starts_with: 380 L", "capacity: 150 L, starts_with: 140 L, open: 30 %");
    swap("panel_area: 0.5 m2, battery: 500 Wh", "panel_area: 0.06 m2, battery: 120 Wh, battery_kind: flooded lead");
    text += R"(drip_lines:
  drippers: { waters: [ferns], flow: 1 L/h }
timers:
  drip: { from: "06:00", until: "06:30", drives: [drippers] }
gutters:
  front: { drains: front roof, first_flush: 0.5 mm, filter_passes: 90 %, carries: 3 L/min, blocked: 20 % }
  back: { drains: back roof }
refills:
  bowser: { called_at: 90 L, comes_after: 1 d, brings: 40 L, price: 30 }
grower:
  visits:
    morning: { at: "07:30", waters: [ferns] }
)";
    const Scenario scenario = read_scenario_text(text, "year.yaml");
    return run_plans(scenario, {&scenario.plans.front()}, 1).front();
  }();
  return record;
}

TEST(YearOfStores, HasThousandsOfEvents) { EXPECT_GT(year().events.size(), 3000U); }

TEST(YearOfStores, KeepsItsWater) {
  EXPECT_GT(year().closure.water_crossed_kg, 1000.0);
  EXPECT_LT(year().closure.water_relative, 1e-9);
}

TEST(YearOfStores, KeepsItsCharge) {
  EXPECT_GT(year().closure.charge_crossed_j, 1e6);
  EXPECT_LT(year().closure.charge_relative, 1e-9);
}

TEST(YearOfStores, UsesEveryWayOfWater) {
  const auto way = [&](const std::string& path) {
    double sum = 0.0;
    for (const PathLine& line : year().paths)
      if (line.path == path && line.quantity == "water") sum += std::abs(line.amount);
    return sum;
  };
  for (const char* path : {"rain", "overflow", "first flush", "tank evaporation", "mist", "refill", "hand watering"})
    EXPECT_GT(way(path), 0.1) << path;
}

TEST(YearOfStores, ShedsAndCutsOff) {
  const auto said = [&](const std::string& part) {
    for (const RecordEvent& event : year().events)
      if (event.what.find(part) != std::string::npos) return true;
    return false;
  };
  EXPECT_TRUE(said("what is shed at 65 %"));
  EXPECT_TRUE(said("cuts all loads off"));
}

}  // namespace
}  // namespace noonhouse
