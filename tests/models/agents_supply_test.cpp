// SPDX-License-Identifier: Apache-2.0
// The tank's and the battery's guards, the load meter and the grower in the engine's own run.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/control/device.hpp"
#include "models/control/grower.hpp"
#include "models/control/running_sum.hpp"
#include "models/control/script.hpp"
#include "models/control/weather_diary.hpp"
#include "models/power/battery_guard.hpp"
#include "models/water/tank_guard.hpp"
#include "tests/support/agent_stage.hpp"
#include "tests/support/device_works.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

/// A tank whose content the test moves, with its guard (low at 20 kg, restart at 40 kg) and a pump.
struct TankStage {
  AgentStage stage{6_h};
  ChannelId permit = stage.channel("permit", 1.0), raining = stage.channel("raining"), call = stage.channel("call");
  explicit TankStage(Points content, std::vector<WeatherDiary::Note> notes = {}) {
    stage.agent<WeatherDiary>({"weather", raining, std::move(notes)});
    stage.agent<TankGuard>({"tank", stage.moved("content", std::move(content)), 20.0, 40.0, permit, raining});
    stage.agent<Device>({"mist", "starts", "stops", {call}, {{permit, "no water"}}, {}});
    stage.hand(call, {{1_s, 1.0}});
    stage.run();
  }
};

TEST(TankGuard, CutsOutAtItsLowMarkAndGivesBackAtItsRestartMark) {
  const TankStage t({{0_s, 50.0}, {1000_s, 0.0}, {2000_s, 50.0}, {3000_s, 30.0}});
  EXPECT_THAT(t.stage.said_by("tank"),
              ElementsAre("600 no rain since the run began", "600 is down to its low mark", "600 cuts the pump out",
                          "1800 is refilled to its restart mark; the pump may run"));
  EXPECT_THAT(t.stage.said_by("mist"), ElementsAre("1 starts", "600 stops: no water", "1800 starts"));
  EXPECT_EQ(t.stage.last(t.permit), 1.0);
}

TEST(TankGuard, DoesNotGiveBackBelowItsRestartMark) {
  const TankStage t({{0_s, 50.0}, {1000_s, 0.0}, {2000_s, 39.9}});
  EXPECT_EQ(t.stage.last(t.permit), 0.0);
}

TEST(TankGuard, BeginsCutOutWithAnEmptyTank) {
  const TankStage t({{0_s, 5.0}});
  EXPECT_EQ(t.stage.last(t.permit), 0.0);
  EXPECT_THAT(t.stage.said_by("mist"), ElementsAre("1 is called but stays off: no water"));
}

TEST(TankGuard, BlamesThatNoRainCame) {
  const TankStage t({{0_s, 50.0}, {1000_s, 0.0}});
  EXPECT_EQ(t.stage.chain_of("stops"),
            "mist stops: no water <- tank cuts the pump out <- tank is down to its low mark <- tank no rain since the "
            "run began");
}

TEST(TankGuard, BlamesTheLastRain) {
  const TankStage t({{0_s, 50.0}, {1000_s, 0.0}}, {{100_s, "rain begins", 1.0}, {200_s, "rain ends: 2 mm", 0.0}});
  EXPECT_EQ(
      t.stage.chain_of("stops"),
      "mist stops: no water <- tank cuts the pump out <- tank is down to its low mark <- weather rain ends: 2 mm");
}

TEST(TankGuard, BlamesWhatDrainsItBeforeTheWeather) {
  AgentStage stage(1_h);
  const ChannelId permit = stage.channel("permit", 1.0), raining = stage.channel("raining");
  TankGuard::Parameters p{"tank", stage.moved("content", {{Tick{0}, 100.0}, {1_h, 0.0}}), 20.0, 40.0, permit, raining};
  p.drained_by = {"line"};
  stage.agent<TankGuard>(p);
  stage.agent<Script>({"line", {{10_min, "is cut", EventKind::failure, {}}}});
  stage.run();
  EXPECT_THAT(stage.chain_of("cuts the pump out"), HasSubstr("line is cut"));
}

TEST(TankGuard, ThanksTheRainThatRefilledIt) {
  const TankStage t({{0_s, 50.0}, {1000_s, 0.0}, {2000_s, 50.0}}, {{1500_s, "rain begins", 1.0}});
  EXPECT_EQ(t.stage.chain_of("restart mark"),
            "tank is refilled to its restart mark; the pump may run <- weather rain begins");
}

/// A battery whose charge the test moves: 1000 J when full, cut-off at 10 %, reconnect at 30 %; a fan of 20 W, a pump
/// of 60 W.
struct BatteryStage {
  AgentStage stage{6_h};
  ChannelId permit = stage.channel("permit", 1.0), load = stage.channel("load");
  ChannelId fan = stage.channel("fan"), pump = stage.channel("pump"), fan_call = stage.channel("fan call");
  explicit BatteryStage(Points charge) {
    stage.agent<BatteryGuard>({"battery",
                               stage.moved("charge", std::move(charge)),
                               1000.0,
                               {{permit, 0.1, 0.3, "", BatteryGuard::Act::cuts_off}}});
    stage.agent<Device>({"fan", "starts", "stops", {fan_call}, {{permit, "no power"}}, {{fan, 1.0, 0.0}}});
    stage.agent<RunningSum>({"loads", {{fan, 20.0}, {pump, 60.0}}, 3.0, permit, load});
  }
};

TEST(RunningSum, TellsWhatStirsByTheCubeRootOfAllJetsTogether) {
  AgentStage stage{1_h};
  const ChannelId fan = stage.channel("fan"), other = stage.channel("other"), speed = stage.channel("speed");
  stage.agent<RunningSum>({"stirring", {{fan, 0.5}, {other, 0.5}}, 0.0, {}, speed, 1.0 / 3.0, 0.2});
  stage.hand(fan, {{10_s, 1.0}});
  stage.hand(other, {{20_s, 1.0}});
  stage.run();
  EXPECT_NEAR(stage.last(speed), 0.2, 1e-12);
}

// A net that stays drawn when its load is shed draws nothing more.
TEST(RunningSum, LeavesOutWhatIsShedThoughItStandsAsIfItRan) {
  AgentStage stage{1_h};
  const ChannelId net = stage.channel("net", 1.0), fan = stage.channel("fan", 1.0), load = stage.channel("load");
  const ChannelId shed = stage.channel("loads may draw above 80 %", 1.0), all = stage.channel("permit", 1.0);
  stage.agent<RunningSum>({"loads", {{net, 20.0, shed}, {fan, 5.0, all}}, 2.0, all, load});
  Said moves;
  stage.agent<Scribe>({load, &moves});
  stage.hand(shed, {{100_s, 0.0}, {300_s, 1.0}});
  stage.hand(all, {{200_s, 0.0}, {250_s, 1.0}});
  stage.run();
  EXPECT_THAT(moves, ElementsAre("0 27", "100 7", "200 0", "250 7", "300 27"));
}

TEST(RunningSum, AddsUpWhatRunsAndTheStandingDraw) {
  struct Row {
    double fan_call, pump, load_w;
  };
  for (const Row& row : {Row{0, 0, 3}, Row{1, 0, 23}, Row{0, 1, 63}, Row{1, 1, 83}, Row{0, 0.4, 27}}) {
    BatteryStage b({{0_s, 1000.0}});
    b.stage.hand(b.fan_call, {{10_s, row.fan_call}});
    b.stage.hand(b.pump, {{20_s, row.pump}});
    b.stage.run();
    EXPECT_EQ(b.stage.last(b.load), row.load_w);
  }
}

TEST(BatteryGuard, CutsAllLoadsOffAndReconnectsThem) {
  BatteryStage b({{0_s, 1000.0}, {1000_s, 0.0}, {2000_s, 1000.0}});
  b.stage.hand(b.fan_call, {{10_s, 1.0}});
  b.stage.run();
  EXPECT_THAT(b.stage.said_by("battery"),
              ElementsAre("900 is down to its cut-off: the loads drew more than the panel gave",
                          "900 cuts all loads off", "1300 is charged again: loads are back"));
  EXPECT_THAT(b.stage.said_by("fan"), ElementsAre("10 starts", "900 stops: no power", "1300 starts"));
  EXPECT_EQ(b.stage.last(b.load), 23.0);
  EXPECT_EQ(b.stage.chain_of("no power"),
            "fan stops: no power <- battery cuts all loads off <- battery is down to its cut-off: the loads drew more "
            "than the panel gave");
}

TEST(BatteryGuard, LeavesNothingDrawingWhileItIsCutOff) {
  BatteryStage b({{0_s, 1000.0}, {1000_s, 0.0}, {2000_s, 299.0}});
  b.stage.hand(b.fan_call, {{10_s, 1.0}});
  b.stage.run();
  EXPECT_EQ(b.stage.last(b.permit), 0.0);
  EXPECT_EQ(b.stage.last(b.load), 0.0) << "not even the standing draw";
}

/// A visit at 01:00 that fills the pot to 12 kg from a tank of which 10 kg cannot be reached.
struct VisitStage {
  AgentStage stage;
  ChannelId vent = stage.channel("hand on vent"), shade = stage.channel("hand on shade", 1.0);
  ChannelId permit = stage.channel("permit", 1.0);
  VisitStage(Tick length, double tank_kg, double pot_kg, double keeps_back_kg = 0.0) : stage(length, tank_kg, pot_kg) {
    GrowerVisit::Parameters p;
    p.name = "grower";
    p.at = 1_h;
    p.waters = {{"herbs", Input(stage.pot, 1), stage.can, 12.0}};
    p.moves = {{vent, 1.0}, {shade, 0.0}};
    p.tank_water = Input(stage.tank, 1);
    p.tank_temperature = stage.tank;
    p.tank_reserve_kg = 10.0;
    p.keeps_back_kg = keeps_back_kg;
    p.water_permit = permit;
    stage.agent<GrowerVisit>(std::move(p));
  }
};

TEST(GrowerVisit, FillsThePotsAndSetsWhatIsSetByHand) {
  VisitStage v(2_h, 100.0, 5.0);
  v.stage.run();
  EXPECT_THAT(v.stage.said_by("grower"), ElementsAre("3600 visits", "3600 watered the pots: 7.0 L"));
  EXPECT_NEAR(v.stage.water(v.stage.pot), 12.0, 1e-12);
  EXPECT_NEAR(v.stage.water(v.stage.tank), 93.0, 1e-12);
  EXPECT_EQ(v.stage.last(v.vent), 1.0);
  EXPECT_EQ(v.stage.last(v.shade), 0.0);
}

TEST(GrowerVisit, ComesEveryDayAndLeavesFullPotsAlone) {
  VisitStage v(kDay * 2 + 2_h, 100.0, 12.0);
  v.stage.run();
  EXPECT_THAT(v.stage.said_by("grower"), ElementsAre("3600 visits", "90000 visits", "176400 visits"));
  EXPECT_EQ(v.stage.water(v.stage.tank), 100.0);
}

TEST(GrowerVisit, GivesWhatTheTankHasAndSaysWhatWasShort) {
  VisitStage v(2_h, 13.0, 5.0);
  v.stage.hand(v.permit, {{600_s, 0.0}});
  v.stage.run();
  EXPECT_THAT(v.stage.said_by("grower"),
              ElementsAre("3600 visits", "3600 could not water herbs fully: 4.0 L short, the tank is nearly empty",
                          "3600 watered the pots: 3.0 L"));
  EXPECT_NEAR(v.stage.water(v.stage.tank), 10.0, 1e-12) << "what the can does not reach stays";
  EXPECT_EQ(v.stage.chain_of("could not water"),
            "grower could not water herbs fully: 4.0 L short, the tank is nearly empty <- hand moves");
}

TEST(GrowerVisit, TakesNothingFromBelowItsReach) {
  VisitStage v(2_h, 9.0, 5.0);
  v.stage.run();
  EXPECT_EQ(v.stage.water(v.stage.tank), 9.0);
  EXPECT_EQ(v.stage.water(v.stage.pot), 5.0);
  EXPECT_THAT(v.stage.said_by("grower"),
              ElementsAre("3600 visits", "3600 could not water herbs fully: 7.0 L short, the tank is nearly empty"));
}

TEST(GrowerVisit, KeepsBackWhatOtherDrawsNeedAndCallsThatNoFailure) {
  VisitStage v(2_h, 63.0, 5.0, 60.0);
  v.stage.run();
  EXPECT_NEAR(v.stage.water(v.stage.tank), 60.0, 1e-12);
  EXPECT_THAT(v.stage.said_by("grower"), ElementsAre("3600 visits", "3600 leaves herbs 4.0 L short, to keep back 60 L",
                                                     "3600 watered the pots: 3.0 L"));
  for (const LogEntry& entry : v.stage.log()) EXPECT_NE(entry.kind, EventKind::failure) << entry.what;

  VisitStage below(2_h, 40.0, 5.0, 60.0);  // others have drawn into it
  below.stage.run();
  EXPECT_EQ(below.stage.water(below.stage.tank), 40.0);
  VisitStage enough(2_h, 67.0, 5.0, 60.0);
  enough.stage.run();
  EXPECT_NEAR(enough.stage.water(enough.stage.pot), 12.0, 1e-12);
  VisitStage under_reach(2_h, 13.0, 5.0, 8.0);  // below what a can reaches it decides nothing
  under_reach.stage.run();
  EXPECT_THAT(under_reach.stage.said_by("grower")[1], testing::HasSubstr("could not water herbs fully: 4.0 L short"));
}

const std::vector<std::string> kGrower{"grower"};

/// Notes at given instants whether a failure of the grower stands.
class FailureProbe final : public Agent {
 public:
  struct Parameters {
    std::vector<Tick> at;
    std::vector<bool>* stands = nullptr;
  };
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters&) { return {}; }
  explicit FailureProbe(Parameters p) : p_(std::move(p)) {}
  std::string_view name() const override { return "probe"; }
  void react(const Situation& situation, const Trigger& trigger, Actions& actions) override {
    if (trigger.kind == Trigger::Kind::wake) p_.stands->push_back(situation.standing_failure(kGrower) != kNoEvent);
    if (const auto n = p_.stands->size(); n < p_.at.size()) actions.wake(0, p_.at[n]);
  }

 private:
  Parameters p_;
};

TEST(GrowerVisit, IsNoLongerAFailureOnceThePotsAreWatered) {
  VisitStage v(kDay + 2_h, 13.0, 5.0);
  std::vector<bool> stands;
  v.stage.agent<FailureProbe>({{30_min, 90_min, kDay + 90_min}, &stands});
  v.stage.pour(12_h, 50.0);
  v.stage.run();
  EXPECT_THAT(stands, ElementsAre(false, true, false));
}

}  // namespace
}  // namespace noonhouse
