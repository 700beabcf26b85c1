// SPDX-License-Identifier: Apache-2.0
// A leaking tank in the engine's own run: it loses what the failure says, never more than there is.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "models/control/script.hpp"
#include "models/water/leak.hpp"
#include "models/water/leak_flow.hpp"
#include "sim/graph/balance.hpp"
#include "tests/support/agent_stage.hpp"

namespace noonhouse {
namespace {

/// The least that a tank held in a run, read from the dense output.
class LeastContent final : public Observer {
 public:
  explicit LeastContent(int state) : state_(static_cast<std::size_t>(state)) {}
  void see_start(const Stretch& stretch) override { look(stretch, stretch.begin()); }
  void see_stretch(const Stretch& stretch) override {
    constexpr int kParts = 64;
    const std::int64_t length = (stretch.end() - stretch.begin()).ms;
    for (int i = 1; i <= kParts; ++i) look(stretch, stretch.begin() + Tick{length * i / kParts});
  }
  double kg() const { return least_; }

 private:
  void look(const Stretch& stretch, Tick when) { least_ = std::min(least_, stretch.potentials_at(when)[state_]); }
  std::size_t state_;
  double least_ = 1e9;
};

/// A tank with a leak that a script opens and shuts, and rain that the test moves [kg/s]; half a kilogram lies below
/// the hole.
struct LeakStage {
  HouseGraph graph;
  RunPlan plan;
  NodeId tank;
  ChannelId leak = graph.channel("leak", "kg s-1", 0.0), flow = graph.channel("flow", "kg s-1", 0.0);
  ChannelId rain = graph.channel("rain", "kg s-1", 0.0);
  std::unique_ptr<PolylineForcing> forcing = std::make_unique<PolylineForcing>();
  RunResult result;
  double least_kg = 0.0;
  static constexpr double kLeft = 0.5;

  LeakStage(double start_kg, Tick length) {
    plan.length = length;
    tank = graph.node("tank", WetMass{1e5}, {290.0, start_kg}, {0.01, 0.01});
    const AccountId out = graph.account("lost", Quantity::water), heat = graph.account("its heat", Quantity::energy);
    graph.exchange("leak", "leak", TankLeak{}, {tank, Input(flow)}, {{{End(tank, 1), out}, {tank, heat}}});
    const AccountId sky = graph.account("rain", Quantity::water), its = graph.account("rain's", Quantity::energy);
    graph.exchange("rain", "rain", TankLeak{}, {tank, Input(rain)}, {{{sky, End(tank, 1)}, {its, tank}}});
    plan.agents.push_back(
        std::make_unique<PlanOf<LeakFlow>>(LeakFlow::Parameters{"leak", Input(tank, 1), leak, flow, kLeft}));
  }
  /// The leak's rates [L/h], each from its instant on.
  void seam(const std::vector<std::pair<Tick, double>>& rates) {
    Script::Parameters script{"seam", {}};
    for (const auto& [when, rate] : rates)
      script.lines.push_back({when, "", EventKind::failure, {{leak, rate / 3600.0}}});
    plan.agents.push_back(std::make_unique<PlanOf<Script>>(std::move(script)));
  }
  void run() {
    plan.house = graph.compile();
    plan.forcing = std::move(forcing);
    LeastContent least(plan.house.position(End(tank, 1)));
    Run it(plan);
    it.add_observer(least);
    result = it.go();
    least_kg = least.kg();
  }
  double content_kg() const {
    return result.state.amounts[static_cast<std::size_t>(plan.house.position(End(tank, 1)))];
  }
  double leaked_kg() const { return result.state.carried[0]; }
  double rained_kg() const { return result.state.carried[2]; }
  void expect_conserved() const {
    const BalanceAudit audit =
        audit_balance(plan.house, plan.house.initial_amounts, result.state.amounts, result.state.carried);
    EXPECT_LT(audit.total(Quantity::water).relative(), 1e-9);
    EXPECT_LT(audit.total(Quantity::energy).relative(), 1e-9);
  }
};

constexpr std::array kRates{1.0, 3.0, 10.0, 60.0, 200.0, 500.0, 1000.0, 2000.0};  ///< [L/h]

// Whatever the leak and however full the tank, what is lost is what the tank held above the hole.
TEST(LeakFlow, EmptiesTheTankDownToTheHoleAndNoFurther) {
  for (const double rate : kRates)
    for (const double start_kg : {0.6, 1.0, 7.3, 30.0, 120.0}) {
      LeakStage s(start_kg, kDay * 6);
      s.seam({{17_min, rate}});
      s.run();
      EXPECT_GE(s.least_kg, -1e-6) << rate << " L/h from " << start_kg << " kg";
      const double may_lose = std::max(0.0, start_kg - LeakStage::kLeft);
      const double by_the_clock = rate / 3600.0 * seconds(kDay * 6 - 17_min);
      // The event comes a tenth of a second early, and is found within the run's isolation width.
      EXPECT_NEAR(s.leaked_kg(), std::min(may_lose, by_the_clock), 0.11 * rate / 3600.0 + 1e-9)
          << rate << " L/h from " << start_kg << " kg";
      EXPECT_LE(s.leaked_kg(), may_lose + 1e-9);
      EXPECT_NEAR(s.content_kg(), start_kg - s.leaked_kg(), 1e-9 * start_kg);
      s.expect_conserved();
    }
}

// 60 L/h for one hour and then not: 60 kg less, to rounding.
TEST(LeakFlow, LosesTheStatedRateWhileTheSeamIsOpen) {
  LeakStage s(200.0, 6_h);
  s.seam({{1_h, 60.0}, {2_h, 0.0}});
  s.run();
  EXPECT_NEAR(s.leaked_kg(), 60.0, 1e-9);
  EXPECT_NEAR(s.content_kg(), 140.0, 1e-9);
  s.expect_conserved();
}

// The largest leak that a scenario may state, 1 m3/s: the moment in which the end is found is worth ten kilograms.
TEST(LeakFlow, EndsInTimeWhenTheTankIsGoneInAnInstant) {
  LeakStage s(300.0, 6_h);
  s.seam({{17_min, 3.6e6}});
  s.run();
  EXPECT_GE(s.least_kg, -1e-6);
  EXPECT_GT(s.leaked_kg(), 150.0);
  s.expect_conserved();
}

TEST(LeakFlow, FindsNothingToLoseInATankThatIsEmptyWhenItBegins) {
  for (const double start_kg : {0.0, 0.3, 0.5}) {
    LeakStage s(start_kg, 6_h);
    s.seam({{Tick{0}, 200.0}});
    s.run();
    EXPECT_EQ(s.leaked_kg(), 0.0) << start_kg;
    EXPECT_EQ(s.content_kg(), start_kg);
  }
}

// Empty within the first hour, then two hours of rain at half the leak's rate, then at twice: what comes in goes out or
// stays.
TEST(LeakFlow, RunsAgainWhenRainRefillsTheTank) {
  for (const double rate : kRates) {
    const double leak_kg_s = rate / 3600.0;
    LeakStage s(0.3 * rate + 1.0, 8_h);
    s.seam({{Tick{0}, rate}});
    s.forcing->add(s.rain, {{0_s, 0.0},
                            {2_h, 0.0},
                            {2_h, 0.5 * leak_kg_s},
                            {4_h, 0.5 * leak_kg_s},
                            {4_h, 2.0 * leak_kg_s},
                            {5_h, 2.0 * leak_kg_s},
                            {5_h, 0.0}});
    s.run();
    EXPECT_GE(s.least_kg, -1e-6) << rate;
    EXPECT_NEAR(s.rained_kg(), 3.0 * rate, 1e-6 * rate);
    EXPECT_NEAR(s.content_kg(), 0.3 * rate + 1.0 + s.rained_kg() - s.leaked_kg(), 1e-9 * rate);
    EXPECT_LE(s.content_kg(), LeakStage::kLeft + 2.0 + 0.2 * leak_kg_s) << "it has leaked out again, " << rate;
    EXPECT_GE(s.content_kg(), LeakStage::kLeft);
    s.expect_conserved();
  }
}

// A worse leak in the same tank, a lesser one, a seam that is mended while there is nothing left to lose.
TEST(LeakFlow, FollowsAFailureThatChangesItsRate) {
  LeakStage s(100.0, 8_h);
  s.seam({{1_h, 10.0}, {2_h, 60.0}, {3_h, 5.0}});
  s.run();
  EXPECT_NEAR(s.leaked_kg(), 10.0 + 60.0 + 25.0, 1e-9);
  LeakStage mended(10.0, 8_h);
  mended.seam({{1_h, 60.0}, {3_h, 0.0}});
  mended.forcing->add(mended.rain, {{0_s, 0.0}, {4_h, 0.0}, {4_h, 0.01}, {5_h, 0.01}, {5_h, 0.0}});
  mended.run();
  EXPECT_NEAR(mended.leaked_kg(), 9.5, 0.002);
  EXPECT_NEAR(mended.content_kg(), 0.5 + 36.0, 0.002) << "a mended tank keeps its rain";
}

}  // namespace
}  // namespace noonhouse
