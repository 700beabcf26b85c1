// SPDX-License-Identifier: Apache-2.0
// Levels of charge that only tell, the scale that all levels share, and who is blamed for cells that came back empty.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>

#include "models/control/script.hpp"
#include "models/power/battery_guard.hpp"
#include "models/power/cell_loss.hpp"
#include "tests/support/agent_stage.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::SizeIs;

/// Share of 1000 J at 0.8 at freezing and 0.6 at -20 degC, with n of the cells.
double share_of(double charge_j, double temperature_k, double cells = 1.0) {
  const ChargeScale scale{1000.0, {0.8, 0.6}, Input(ChannelId{0}), ChannelId{1}};
  const auto value = [&](const Input& input) { return input.channel.index == 0 ? temperature_k : cells; };
  return scale.usable(value).share_of(charge_j);
}

// At -10 degC 0.7 can be used, from 300 J up.
TEST(ChargeScale, MovesWithColdAndCells) {
  EXPECT_DOUBLE_EQ(share_of(600.0, 300.0), 0.6);
  EXPECT_NEAR(share_of(600.0, 263.15), 300.0 / 700.0, 1e-12);
  EXPECT_NEAR(share_of(300.0, 263.15, 0.5), 150.0 / 350.0, 1e-12) << "of half the cells, from 150 J up";
  EXPECT_EQ(share_of(250.0, 263.15), 0.0) << "below the floor";
  EXPECT_EQ(share_of(1000.0, 263.15), 1.0);
  EXPECT_EQ(share_of(0.0, 263.15, 0.0), 0.0);
}

/// A battery of 1000 J, charge and temperature as the test says: told below 60 % (until 65 %), cut off at 50 % (70 %).
struct ToldStage {
  AgentStage stage{12_h};
  ChannelId above = stage.channel("above 60 %", 1.0), permit = stage.channel("permit", 1.0);
  ToldStage(Points charge, Points temperature) {
    stage.agent<BatteryGuard>(
        {"battery",
         stage.moved("charge", std::move(charge)),
         1000.0,
         {{above, 0.6, 0.65, "", BatteryGuard::Act::tells}, {permit, 0.5, 0.7, "", BatteryGuard::Act::cuts_off}},
         {0.8, 0.6},
         stage.moved("temperature", std::move(temperature))});
    stage.run();
  }
};

// At -10 degC 60 % are 720 J and 50 % are 650 J; a level held to 600 J would come after the cut-off.
TEST(ChargeLevels, TellBeforeTheCutOffInTheCold) {
  const ToldStage s({{0_s, 1000.0}, {1000_s, 0.0}}, {{0_s, 263.15}});
  const std::string why =
      ": the loads drew more than the panel gave, and the cold locks up 30 % of what it holds when full";
  EXPECT_THAT(s.stage.said_by("battery"),
              ElementsAre("280 is down to 60 %" + why, "350 is down to its cut-off" + why, "350 cuts all loads off"));
  EXPECT_EQ(s.stage.log().front().kind, EventKind::action) << "what it means is the rule's to say";
  EXPECT_EQ(s.stage.last(s.above), 0.0);
}

TEST(ChargeLevels, TellWhenTheChargeIsBackOrTheBatteryWarms) {
  const ToldStage rises({{0_s, 1000.0}, {500_s, 550.0}, {1000_s, 1000.0}}, {{0_s, 300.0}});
  EXPECT_THAT(
      rises.stage.said_by("battery"),
      ElementsAre("444445ms is down to 60 %: the loads drew more than the panel gave", "611112ms is at 65 % again"));
  const ToldStage warms({{0_s, 700.0}}, {{0_s, 263.15}, {2_h, 263.15}, {3_h, 300.0}});
  EXPECT_THAT(warms.stage.said_by("battery"),
              ElementsAre(HasSubstr("0 is down to 60 %"), HasSubstr("is at 65 % again")));
}

/// A battery of 1000 J on a way for what dead cells take, cut off at 50 %; a failure of all its cells but a share, and
/// a load.
struct CellsStage {
  HouseGraph graph;
  RunPlan plan;
  std::vector<LogEntry> log;
  ChannelId permit = graph.channel("permit", "1", 1.0);

  CellsStage(double start_j, double working, double load_w, double charging_w = 0.0) {
    plan.length = 3_h;
    const NodeId battery = graph.node("battery", ChargeStore{}, {start_j}, {1e-3});
    const ChannelId cells = graph.channel("cells", "1", 1.0), lost = graph.channel("lost", "J", 0.0);
    const ChannelId load = graph.channel("load", "W", 0.0);
    const AccountId loads = graph.account("loads", Quantity::charge), dead = graph.account("dead", Quantity::charge);
    graph.exchange("loads", "power", Drawn{}, {Input(load)}, {{{battery, loads}}});
    const ExchangeId way = graph.exchange("dead cells", "dead cells", LostWithCells{}, {battery}, {{{battery, dead}}});
    add<CellLoss>({"battery", battery, cells, way, lost});
    BatteryGuard::Parameters guard{"battery", battery, 1000.0, {{permit, 0.5, 0.9, "", BatteryGuard::Act::cuts_off}}};
    guard.cells = cells;
    guard.drained_by = {"fault"};
    guard.lost_with_cells = lost;
    add<BatteryGuard>(guard);
    add<Script>({"fault",
                 {{10_min, "loses cells", EventKind::failure, {{cells, working}}},
                  {20_min, "is put right", EventKind::action, {{cells, 1.0}}, 0, true}}});
    add<Script>(
        {"switch",
         {{30_min, "", EventKind::action, {{load, -charging_w}}}, {1_h, "", EventKind::action, {{load, load_w}}}}});
    plan.house = graph.compile();
    plan.forcing = std::make_unique<PolylineForcing>();
    Run run(plan);
    run.go();
    log = run.log();
  }
  /// What each entry of the battery goes back to: "when what <- cause <- ...", a line each.
  std::vector<std::string> chains() const {
    std::vector<std::string> out;
    for (const LogEntry& entry : log) {
      if (entry.subject != "battery" || entry.kind != EventKind::failure) continue;
      std::string chain = std::to_string(entry.when.ms / 60000);
      for (EventId id = entry.id; id != kNoEvent; id = log[static_cast<std::size_t>(id)].cause)
        chain += " " + log[static_cast<std::size_t>(id)].what + ";";
      out.push_back(chain);
    }
    return out;
  }

 private:
  struct Drawn {
    static constexpr std::string_view kName = "drawn";
    static constexpr int kInputs = 1, kFluxes = 1;
    static constexpr std::array<Quantity, 1> kCarries{Quantity::charge};
    template <class S>
    void flux(const std::array<S, 1>& in, std::array<S, 1>& q) const {
      q[0] = in[0];
    }
  };
  template <class A>
  void add(typename A::Parameters parameters) {
    plan.agents.push_back(std::make_unique<PlanOf<A>>(std::move(parameters)));
  }
};

// Of 900 J three quarters go with the cells; 225 J are far below 500 J as soon as all cells are there again.
TEST(CellsThatCameBackEmpty, AreTheCauseOfACutOffAfterTheyArePutRight) {
  EXPECT_THAT(
      CellsStage(900.0, 0.25, 0.0).chains(),
      ElementsAre("20 cuts all loads off; is down to its cut-off: dead cells took 68 % of what it holds when full "
                  "and came back empty; loses cells;"));
}

// 90 J go, 810 J are left: at 500 J the loads have taken 310 J of the 500 J that it lacks.
TEST(CellsThatCameBackEmpty, AreTheLesserReasonWhereLoadsTookMore) {
  EXPECT_THAT(
      CellsStage(900.0, 0.9, 0.1).chains(),
      ElementsAre("111 cuts all loads off; is down to its cut-off: the loads drew more than the panel gave, and "
                  "dead cells took 9 % of what it holds when full and came back empty;"));
}

// 600 J of 900 J go; charged full in between, the battery has made up for it.
TEST(CellsThatCameBackEmpty, AreForgottenOnceTheBatteryHasBeenFull) {
  const auto chains = CellsStage(900.0, 1.0 / 3.0, 0.2, 0.38888).chains();
  ASSERT_THAT(chains, SizeIs(2));
  EXPECT_THAT(chains[0], HasSubstr("dead cells took 60 %"));
  EXPECT_THAT(chains[1], HasSubstr("the loads drew more than the panel gave;"));
}

}  // namespace
}  // namespace noonhouse
