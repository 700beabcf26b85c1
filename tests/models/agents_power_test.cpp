// SPDX-License-Identifier: Apache-2.0
// The battery's bus in the engine's own run, its guard with levels, and cells that fail.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "models/power/battery.hpp"
#include "models/power/battery_guard.hpp"
#include "models/power/battery_kind.hpp"
#include "models/power/cell_loss.hpp"
#include "sim/graph/balance.hpp"
#include "tests/support/agent_stage.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;
using testing::SizeIs;

/// A battery of 1000 J whose charge the test moves, with lamps shed at 50 % (back at 60 %), fans at 30 % (45 %), and
/// cut off at 10 % (25 %).
struct ShedStage {
  AgentStage stage{6_h};
  ChannelId lamps = stage.channel("lamps", 1.0), fans = stage.channel("fans", 1.0), all = stage.channel("all", 1.0);
  ChannelId cells = stage.channel("cells", 1.0);
  ShedStage(Points charge, Points temperature) {
    stage.agent<BatteryGuard>({"battery",
                               stage.moved("charge", std::move(charge)),
                               1000.0,
                               {{lamps, 0.5, 0.6, "the lamps"},
                                {fans, 0.3, 0.45, "the fans"},
                                {all, 0.1, 0.25, "", BatteryGuard::Act::cuts_off}},
                               {0.8, 0.6},
                               stage.moved("temperature", std::move(temperature)),
                               cells});
  }
};
const Points kWarm{{0_s, 300.0}};

TEST(BatteryGuard, ShedsTheLeastImportantFirstAndGivesBackTheMostImportantFirst) {
  ShedStage s({{0_s, 1000.0}, {1000_s, 0.0}, {2000_s, 1000.0}}, kWarm);
  s.stage.run();
  EXPECT_THAT(s.stage.said_by("battery"),
              ElementsAre("500 is down to 50 % and sheds the lamps: the loads drew more than the panel gave",
                          "700 is down to 30 % and sheds the fans: the loads drew more than the panel gave",
                          "900 is down to its cut-off: the loads drew more than the panel gave",
                          "900 cuts all loads off", "1250 is charged again: loads are back",
                          "1450 is at 45 % and gives back the fans", "1600 is at 60 % and gives back the lamps"));
  for (ChannelId permit : {s.lamps, s.fans, s.all}) EXPECT_EQ(s.stage.last(permit), 1.0);
}

TEST(BatteryGuard, WarnsOfSheddingAndFailsByCuttingOff) {
  ShedStage s({{0_s, 1000.0}, {1000_s, 0.0}}, kWarm);
  s.stage.run();
  std::vector<EventKind> kinds;
  for (const LogEntry& entry : s.stage.log()) kinds.push_back(entry.kind);
  EXPECT_THAT(kinds, ElementsAre(EventKind::warning, EventKind::warning, EventKind::warning, EventKind::failure));
}

// A charge that swings by less than the gap, two hundred times, switches once.
TEST(BatteryGuard, DoesNotSwitchToAndFro) {
  Points charge{{0_s, 1000.0}};
  for (int i = 1; i <= 200; ++i) charge.emplace_back(60_s * i, i % 2 == 1 ? 460.0 : 590.0);
  ShedStage s(charge, kWarm);
  s.stage.run();
  EXPECT_THAT(s.stage.said_by("battery"), SizeIs(1));
  EXPECT_EQ(s.stage.last(s.lamps), 0.0);
}

// At -10 degC 0.7 of 1000 J is there, from 300 J up: half of that is 650 J. The battery keeps 600 J and cools at 0.5 h:
// its lamps go at the next look, at most a quarter of an hour later. It warms again at 2 h and has 60 %.
TEST(BatteryGuard, FollowsTheColdWithinAQuarterOfAnHour) {
  ShedStage s({{0_s, 600.0}}, {{0_s, 300.0}, {30_min, 300.0}, {31_min, 263.15}, {2_h, 263.15}, {121_min, 300.0}});
  s.stage.run();
  EXPECT_THAT(s.stage.said_by("battery"),
              ElementsAre("2700 is down to 50 % and sheds the lamps: the loads drew more than the panel gave, and the "
                          "cold locks up 30 % of what it holds when full",
                          "8100 is at 60 % and gives back the lamps"));
}

// A temperature that swings to and fro every minute, which no battery does: one change at each look, no more.
TEST(BatteryGuard, LooksNoOftenerThanItsQuarterHourInQuickCold) {
  Points temperature{{0_s, 300.0}};
  for (int i = 1; i <= 350; ++i) temperature.emplace_back(60_s * i, i % 2 == 1 ? 263.15 : 300.0);
  ShedStage s({{0_s, 600.0}}, temperature);
  s.stage.run();
  EXPECT_LE(s.stage.said_by("battery").size(), 25U) << "6 h hold 24 quarters";
}

TEST(BatteryGuard, FollowsItsCellsAtOnceAndSaysSo) {
  ShedStage s({{0_s, 200.0}}, kWarm);
  s.stage.hand(s.cells, {{1000_s, 0.5}, {2000_s, 0.0}, {3000_s, 1.0}});
  s.stage.run();
  EXPECT_THAT(s.stage.said_by("battery"),
              ElementsAre("0 is down to 50 % and sheds the lamps: the loads drew more than the panel gave",
                          "0 is down to 30 % and sheds the fans: the loads drew more than the panel gave",
                          // 200 J are 40 % of what half the cells hold: nothing is given back yet at 45 %.
                          "2000 is down to its cut-off: none of its cells works", "2000 cuts all loads off"));
  EXPECT_EQ(s.stage.last(s.all), 0.0) << "200 J of 1000 J are below 25 %";
  EXPECT_EQ(s.stage.chain_of("cuts all"),
            "battery cuts all loads off <- battery is down to its cut-off: none of its cells works <- hand moves");
}

TEST(BatteryGuard, NeedsNeitherTemperatureNorCells) {
  AgentStage stage(6_h);
  const ChannelId permit = stage.channel("permit", 1.0);
  stage.agent<BatteryGuard>({"battery",
                             stage.moved("charge", {{0_s, 1000.0}, {1000_s, 0.0}}),
                             1000.0,
                             {{permit, 0.2, 0.3, "", BatteryGuard::Act::cuts_off}}});
  stage.run();
  EXPECT_THAT(
      stage.said_by("battery"),
      ElementsAre("800 is down to its cut-off: the loads drew more than the panel gave", "800 cuts all loads off"));
}

/// A battery on its bus with what moves it, in a run.
struct BusStage {
  HouseGraph graph;
  NodeId battery;
  ExchangeId way;
  RunPlan plan;
  std::unique_ptr<PolylineForcing> forcing = std::make_unique<PolylineForcing>();
  ChannelId panel, load, temperature, cells, uncovered;
  std::vector<LogEntry> log;

  BusStage(const BatteryBus& law, double charge_j, Tick length) {
    plan.length = length;
    battery = graph.node("battery", ChargeStore{}, {charge_j}, {1e-6 * law.capacity_j});
    panel = graph.channel("panel", "W", 0.0);
    load = graph.channel("load", "W", 0.0);
    temperature = graph.channel("temperature", "K", 300.0);
    cells = graph.channel("cells", "1", 1.0);
    uncovered = graph.channel("uncovered", "1", 1.0);
    const AccountId sun = graph.account("sun", Quantity::charge), loads = graph.account("loads", Quantity::charge),
                    lost = graph.account("lost", Quantity::charge);
    graph.exchange("bus", "power", law, {battery, panel, load, temperature, cells, uncovered},
                   {{{sun, loads}, {sun, battery}, {battery, loads}, {battery, lost}, {battery, lost}}});
    way = graph.exchange("dead cells", "dead cells", LostWithCells{}, {battery},
                         {{{battery, graph.account("dead cells", Quantity::charge)}}});
  }
  RunResult run() {
    plan.house = graph.compile();
    plan.forcing = std::move(forcing);
    Run it(plan);
    RunResult result = it.go();
    log = it.log();
    return result;
  }
  double charge(const RunResult& result) const {
    return result.state.amounts[static_cast<std::size_t>(plan.house.position(End(battery)))];
  }
};

// Charge times efficiency less discharge: 100 W for 1 h at 0.9, then 45 W for 1 h at 0.9 out, from 1 MJ.
TEST(BatteryRun, KeepsAnExactStateOfCharge) {
  BusStage s(BatteryBus{3.6e6, 0.9, 0.9}, 1e6, 2_h);
  s.forcing->add(s.panel, {{0_s, 100.0}, {1_h, 100.0}, {1_h, 0.0}, {2_h, 0.0}});
  s.forcing->add(s.load, {{0_s, 0.0}, {1_h, 0.0}, {1_h, 45.0}, {2_h, 45.0}});
  const double expected = 1e6 + 0.9 * 100.0 * 3600.0 - 45.0 / 0.9 * 3600.0;
  EXPECT_NEAR(s.charge(s.run()), expected, 1e-9 * expected);
}

/// A number from 0 to 1, the same on every machine.
double random_share(std::mt19937& engine) { return static_cast<double>(engine()) / 4294967296.0; }

// Two weeks of random panel, load, cold, snow: what the battery holds is what its fluxes brought, to 1e-9 of what
// crossed, and the loads got all they asked for.
TEST(BatteryRun, ConservesChargeOverRandomSeries) {
  for (const BatteryKind& kind : battery_kinds()) {
    std::mt19937 engine(7);
    const BatteryBus law = battery_bus(kind, 3.6e6, 0.96);
    BusStage s(law, 2e6, kDay * 14);
    Points panel, load, temperature, uncovered;
    double asked_j = 0.0;
    for (int h = 0; h <= 14 * 24; ++h) {
      const bool day = h % 24 > 6 && h % 24 < 18;
      panel.emplace_back(1_h * h, day ? 220.0 * random_share(engine) : 0.0);
      load.emplace_back(1_h * h, 90.0 * random_share(engine));
      temperature.emplace_back(1_h * h, 260.0 + 45.0 * random_share(engine));
      uncovered.emplace_back(1_h * h, random_share(engine) < 0.2 ? 0.3 : 1.0);
      if (h > 0) asked_j += 1800.0 * (load[load.size() - 2].second + load.back().second);
    }
    s.forcing->add(s.panel, panel);
    s.forcing->add(s.load, load);
    s.forcing->add(s.temperature, temperature);
    s.forcing->add(s.uncovered, uncovered);
    const RunResult result = s.run();
    const BalanceAudit audit =
        audit_balance(s.plan.house, s.plan.house.initial_amounts, result.state.amounts, result.state.carried);
    EXPECT_LT(audit.total(Quantity::charge).relative(), 1e-9) << kind.name;
    EXPECT_GT(audit.total(Quantity::charge).crossed, 3e7) << kind.name;
    const auto& carried = result.state.carried;
    EXPECT_NEAR(carried[0] + carried[2], asked_j, 1e-9 * asked_j) << kind.name;
    for (std::size_t i = 0; i < 5; ++i) EXPECT_GT(carried[i], 0.0) << kind.name;
    EXPECT_EQ(carried[5], 0.0) << "no cell died";
  }
}

/// A quarter of the cells fails at 10 min, another at 20 min; at 30 min all are replaced, or not.
class CellsFailing final : public Agent {
 public:
  struct Parameters {
    ChannelId cells;
    bool replaced = true;
  };
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters&) { return {}; }
  explicit CellsFailing(Parameters p) : p_(p) {}
  std::string_view name() const override { return "failure"; }
  void react(const Situation& situation, const Trigger&, Actions& actions) override {
    const int minute = static_cast<int>(situation.now().ms / 60'000);
    actions.set(p_.cells, minute < 10 ? 1.0 : minute < 20 ? 0.75 : minute < 30 || !p_.replaced ? 0.5 : 1.0, kNoEvent);
    actions.wake(0, situation.now() + 10_min);
  }

 private:
  Parameters p_;
};

// From 1 MJ: each quarter of the cells takes a quarter of a million joules with it, and they are accounted for.
TEST(CellLoss, TakesWithFailedCellsWhatTheyHeld) {
  BusStage s(BatteryBus{3.6e6, 0.9, 0.9}, 1e6, 2_h);
  s.plan.agents.push_back(std::make_unique<PlanOf<CellLoss>>(CellLoss::Parameters{"cells", s.battery, s.cells, s.way}));
  s.plan.agents.push_back(std::make_unique<PlanOf<CellsFailing>>(CellsFailing::Parameters{s.cells}));
  const RunResult result = s.run();
  EXPECT_NEAR(s.charge(result), 0.5e6, 1e-6) << "cells that come back are empty";
  EXPECT_NEAR(result.state.carried[5], 0.5e6, 1e-6) << "on a way of their own";
  EXPECT_EQ(result.state.carried[4], 0.0) << "not by self-discharge";
  const BalanceAudit audit =
      audit_balance(s.plan.house, s.plan.house.initial_amounts, result.state.amounts, result.state.carried);
  EXPECT_LT(audit.total(Quantity::charge).relative(), 1e-9);
}

// From 40 % of 3.6 MJ: the charge goes with the cells, so the share stays and nothing is cut off as they fail; the load
// of 50 W is when 20 % of what half the cells hold is left.
TEST(CellLoss, LeavesTheGuardWithWhatIsThere) {
  BusStage s(BatteryBus{3.6e6, 0.9, 0.9}, 0.4 * 3.6e6, 4_h);
  const ChannelId permit = s.graph.channel("permit", "1", 1.0);
  s.forcing->add(s.load, {{0_s, 0.0}, {10_min, 0.0}, {10_min, 50.0}, {4_h, 50.0}});
  s.plan.agents.push_back(std::make_unique<PlanOf<BatteryGuard>>(BatteryGuard::Parameters{
      "battery", s.battery, 3.6e6, {{permit, 0.2, 0.3, "", BatteryGuard::Act::cuts_off}}, {}, s.temperature, s.cells}));
  s.plan.agents.push_back(std::make_unique<PlanOf<CellLoss>>(CellLoss::Parameters{"cells", s.battery, s.cells, s.way}));
  s.plan.agents.push_back(std::make_unique<PlanOf<CellsFailing>>(CellsFailing::Parameters{s.cells, false}));
  s.run();
  ASSERT_THAT(s.log, SizeIs(2));
  // The cells fail at 10 and 20 min, so up to 20 min the load draws 50 W / 0.9 from three quarters of the charge.
  const double left_j = (0.3 * 3.6e6 - 600.0 * 50.0 / 0.9) * 2.0 / 3.0;
  EXPECT_NEAR(seconds(s.log[0].when), 1200.0 + (left_j - 0.36e6) * 0.9 / 50.0, 0.1);
  EXPECT_EQ(s.log[0].what,
            "is down to its cut-off: the loads drew more than the panel gave, and only 50 % of its cells work");
}

}  // namespace
}  // namespace noonhouse
