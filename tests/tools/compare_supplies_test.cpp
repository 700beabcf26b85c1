// SPDX-License-Identifier: Apache-2.0
// A whole run's water, charge, cost and heat for people: what came and went adds up, refills count.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "models/power/battery_kind.hpp"
#include "tests/support/small_scenario.hpp"
#include "tools/compare/run_recorder.hpp"

namespace noonhouse {
namespace {

constexpr const char* kRefillAndPrices = R"(drip_lines:
  drippers:
    waters: [ferns]
    flow: 2 L/h
timers:
  drip hour:
    from: 06:00
    until: 07:00
    drives: [drippers]
gutters:
  front gutter:
    drains: front roof
    first_flush: 0.2 mm
    carries: 2 L/min
faults:
  seam opens:
    what: tank leaks
    of: tank
    day: 1
    at: 03:00
    lasts: 1 h
    leak: 12 L/h
  hose comes off:
    what: line cut
    of: high mist
    day: 1
    at: 14:00
    lasts: 10 min
refills:
  lorry:
    called_at: 120 L
    comes_after: 2 h
    brings: 80 L
    price: 35
prices:
  currency: EUR
  water: 4
  season: 20 d
  parts:
    tank:
      price: 100
      lasts: 10
    high mist:
      price: 50
      lasts: 5
    ridge vent:
      price: 80
plans:)";

struct SmallRun {
  Scenario scenario;
  RunRecord record;

  using Changes = std::vector<std::pair<std::string, std::string>>;
  explicit SmallRun(const Changes& changes = {}) {
    using small_scenario::with;
    std::string text = with(small_scenario::kText, "\nplans:", std::string("\n") + kRefillAndPrices);
    text = with(text, "starts_with: 250 L", "starts_with: 125 L\n  open: 10 %\n  overflows_to: the pond");
    text = with(text, "peak_day: 2", "peak_day: 2\n  storm_day: 2\n  storm_rain: 10 mm");
    text = with(text, "in_service: [ridge vent, high mist, heat watch]",
                "in_service: [ridge vent, high mist, heat watch, drippers, drip hour]");
    for (const auto& [from, to] : changes) text = with(text, from, to);
    scenario = small_scenario::read(text);
    const PlanScenario& plan = scenario.plan("vent and mist");
    const WeatherSeries weather = weather_of(scenario, plan);
    const Assembly assembly = assemble(plan, site_table(plan, weather), weather);
    RunRecorder recorder(assembly, plan);
    Run run(assembly.plan);
    run.add_observer(recorder);
    record = recorder.finish(run.go());
  }
};

const RunRecord& small_run() {
  static const SmallRun run;
  return run.record;
}

TEST(RunSupplies, ARefillComesAndCounts) {
  const WaterOutcome& w = small_run().water;
  ASSERT_GE(w.deliveries, 1);
  EXPECT_NEAR(w.brought_kg, 80.0 * w.deliveries, 1e-6);
}

TEST(RunSupplies, TheTanksBookCloses) {
  const WaterOutcome& w = small_run().water;
  EXPECT_GT(w.evaporated_kg, 0.0);
  EXPECT_GT(w.used_kg(), 1.0);
  EXPECT_NEAR(w.end_kg - w.start_kg, w.rain_caught_kg + w.brought_kg - w.used_kg() - w.overflow_kg - w.evaporated_kg,
              1e-6);
  EXPECT_EQ(w.overflows_to, "the pond");
}

/// Drippers for an hour a day at 2 L/h, a leak of an hour at 12 L/h, a line of 30 L/h cut for ten minutes at most, and
/// a storm that the gutter cannot carry.
TEST(RunSupplies, EveryWayOutOfTheTankIsCounted) {
  const WaterOutcome& w = small_run().water;
  EXPECT_NEAR(w.dripped_kg, 4.0, 1e-3);
  EXPECT_NEAR(w.leaked_kg, 12.0, 1e-3);
  EXPECT_GT(w.spilt_kg, 0.1);
  EXPECT_LT(w.spilt_kg, 5.0 + 1e-6);
  EXPECT_GT(w.rain_caught_kg, 1.0);
  EXPECT_GT(w.rain_lost_kg, 0.2 * 9.0);
  EXPECT_NEAR(w.rain_caught_kg + w.rain_lost_kg, 0.9 * 10.0 * 9.0, 0.1) << "90 % of 10 mm on half of 18 m2";
  EXPECT_THAT(small_run().notes, testing::Contains(testing::HasSubstr("The front gutter could not take")));
}

TEST(RunSupplies, TheBatterysBookClosesWithItsSelfDischarge) {
  const EnergyOutcome& e = small_run().energy;
  EXPECT_GT(e.self_discharge_j, 0.0);
  EXPECT_NEAR(e.end_j - e.start_j, e.panel_j - e.loads_j - e.losses_j, 1.0);
  EXPECT_GT(e.full_cycles, 0.0);
  EXPECT_GT(e.daily_depth, 0.0);
  EXPECT_LT(e.daily_depth, 1.0);
  EXPECT_LE(e.lowest_k, e.mean_k);
  EXPECT_LE(e.mean_k, e.peak_k);
}

/// Half of the cells die at 03:00 with what they hold and are put right at 05:00, empty.
TEST(RunSupplies, ChargeLostWithDeadCellsIsNoSelfDischarge) {
  const SmallRun::Changes cells{{"faults:\n",
                                 "faults:\n  cell:\n    what: cell dead\n    of: battery\n    day: 1\n    at: 03:00\n"
                                 "    lasts: 2 h\n    share: 50 %\n"}};
  const SmallRun dead(cells);
  const EnergyOutcome &e = dead.record.energy, &sound = small_run().energy;
  EXPECT_EQ(sound.dead_cells_j, 0.0);
  EXPECT_GT(e.dead_cells_j, 0.35 * e.capacity_j);
  EXPECT_LT(e.dead_cells_j, 0.5 * e.capacity_j);
  EXPECT_LT(e.self_discharge_j, sound.self_discharge_j) << "it holds less";
  EXPECT_NEAR(e.end_j - e.start_j, e.panel_j - e.loads_j - e.losses_j, 1.0);
  EXPECT_LT(dead.record.closure.charge_relative, 1e-9);
  const auto by_cells = std::find_if(dead.record.paths.begin(), dead.record.paths.end(),
                                     [](const PathLine& line) { return line.path == "dead cells"; });
  ASSERT_NE(by_cells, dead.record.paths.end());
  EXPECT_EQ(by_cells->from, "battery");
  EXPECT_EQ(by_cells->to, "dead cells");
  EXPECT_EQ(by_cells->amount, e.dead_cells_j);
}

/// "Lowest charge" is on the scale of the guard's levels: of what can be used at the battery's temperature.
TEST(RunSupplies, TheLowestChargeIsOfWhatCanBeUsed) {
  const RunRecord& r = small_run();
  const auto series = [&](const char* name) {
    return std::find_if(r.series.begin(), r.series.end(), [&](const auto& s) { return s.name == name; })->values;
  };
  const auto charge_j = series("battery_charge"), outdoor_k = series("outdoor_temperature"),
             share = series("battery_share");
  const ColdCapacity cold = battery_kinds().front().cold();
  double lowest = 1.0;
  for (std::size_t i = 0; i < share.size(); ++i) {
    const double locked = 1.0 - cold.share(outdoor_k[i]);
    EXPECT_NEAR(share[i], (charge_j[i] / r.energy.capacity_j - locked) / (1.0 - locked), 1e-9);
    lowest = std::min(lowest, share[i]);
  }
  EXPECT_NEAR(r.energy.lowest_share, lowest, 0.005) << "looked at every minute";
  EXPECT_LE(r.energy.lowest_share, lowest);
  EXPECT_LT(r.energy.lowest_share, r.energy.lowest_j / r.energy.capacity_j) << "its nights are below 25 degC";
}

/// What went through the battery: what it held and was charged with, less what is left and what it lost by itself.
TEST(RunSupplies, FullCyclesAreWhatWasDrawn) {
  const RunRecord& r = small_run();
  double charged_j = 0.0;
  for (const PathLine& line : r.paths)
    if (line.path == "power" && line.to == "battery") charged_j += line.amount;
  const double kept_j = battery_kinds().front().charge_efficiency.value * charged_j;
  ASSERT_GT(charged_j, 0.0);
  EXPECT_NEAR(r.energy.full_cycles * r.energy.capacity_j,
              r.energy.start_j + kept_j - r.energy.self_discharge_j - r.energy.end_j, 1.0);
}

TEST(RunSupplies, TheThirstiestDayIsBetweenTheMeanAndAll) {
  const RunRecord& r = small_run();
  const double days = r.duration_s / 86400.0, gone_kg = r.water.used_kg() + r.water.evaporated_kg;
  EXPECT_GE(r.water.thirstiest_day_kg, gone_kg / days - 1e-9);
  EXPECT_LT(r.water.thirstiest_day_kg, gone_kg);
  EXPECT_GE(r.energy.heaviest_day_j, r.energy.loads_j / days - 1e-6);
  EXPECT_LT(r.energy.heaviest_day_j, r.energy.loads_j);
  EXPECT_NEAR(r.water.days_full, (300.0 - 20.0) / (gone_kg / days), 1e-9);
  EXPECT_NEAR(r.water.days_left, (r.water.end_kg - 20.0) / (gone_kg / days), 1e-9);
  EXPECT_NEAR(r.water.days_full_thirsty, (300.0 - 20.0) / r.water.thirstiest_day_kg, 1e-9);
  EXPECT_LT(r.energy.days_full_heavy, r.energy.days_full);
  EXPECT_LT(r.energy.days_left, r.energy.days_full);
}

/// Tank, line and vent, lasting 10, 5 and by default 10 seasons; water of 2 days for a season of 20.
TEST(RunSupplies, TheCostHoldsPartsAndDeliveries) {
  const RunRecord& r = small_run();
  EXPECT_EQ(r.cost.currency, "EUR");
  EXPECT_DOUBLE_EQ(r.cost.capital, 230.0);
  const double brought = r.water.deliveries * (35.0 + 0.08 * 4.0);
  EXPECT_NEAR(r.cost.per_season, 10.0 + 10.0 + 8.0 + 10.0 * brought, 1e-6);
}

/// A closed house in a heat wave's sun is above the reference of 28 degC around noon, and not by night.
TEST(RunSupplies, HeatForPeopleIsToldBayByBay) {
  const RunRecord& r = small_run();
  ASSERT_EQ(r.work_heat.size(), 2u);
  EXPECT_EQ(r.work_heat[0].bay, "west");
  for (const WorkHeatOutcome& bay : r.work_heat) {
    EXPECT_GT(bay.unwise_h, 1.0);
    EXPECT_LT(bay.unwise_h, 30.0);
    EXPECT_GT(bay.peak_k, 28.0 + 273.15);
    EXPECT_LT(bay.peak_k, 45.0 + 273.15);
    const double hour = bay.peak_time_s / 3600.0 - 24.0 * std::floor(bay.peak_time_s / 86400.0);
    EXPECT_GT(hour, 9.0);
    EXPECT_LT(hour, 18.0);
  }
}

TEST(RunSupplies, NotesAndRuleAreToldWithTheRun) {
  EXPECT_THAT(small_run().notes, testing::Contains(testing::HasSubstr("full cycles in 2 days")));
  EXPECT_THAT(small_run().water.storage_rule, testing::HasSubstr("yield before spillage"));
}

TEST(WorkHeatSunlight, TurnsTheStraightLightToTheSun) {
  HeatSurroundings around;
  set_sunlight(around, 300.0, 100.0, 0.5, 0.2);
  EXPECT_DOUBLE_EQ(around.beam_normal_w_m2, 600.0);
  EXPECT_DOUBLE_EQ(around.diffuse_level_w_m2, 100.0);
  EXPECT_DOUBLE_EQ(around.reflected_level_w_m2, 80.0);
  set_sunlight(around, 2.0, 1.0, 1e-6, 0.2);
  EXPECT_NEAR(around.beam_normal_w_m2, 2.0 / std::sin(5.0 * 3.14159265358979 / 180.0), 1e-4);
}

}  // namespace
}  // namespace noonhouse
