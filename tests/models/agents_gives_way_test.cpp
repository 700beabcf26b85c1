// SPDX-License-Identifier: Apache-2.0
// What the wind takes.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/control/gives_way.hpp"
#include "models/control/script.hpp"
#include "tests/support/agent_stage.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

/// A vent that the wind takes at 20 m/s.
struct WindStage {
  AgentStage stage{1_h};
  ChannelId position = stage.channel("position"), fault = stage.channel("fault");
  Said run(const PolylineForcing::Points& gust, const Moves& moves) {
    const ChannelId wind = stage.moved("gust", gust);
    stage.hand(position, moves);
    stage.agent<GivesWay>({"vent", wind, 20.0, position, fault, 0.7, "is torn open"});
    stage.run();
    return stage.said_by("vent");
  }
};

TEST(GivesWay, FailsOnceWhenTheGustReachesItsLimitWhileExposed) {
  WindStage w;
  EXPECT_THAT(w.run({{0_s, 0}, {1000_s, 25}, {2000_s, 0}, {3000_s, 25}}, {{100_s, 1.0}, {2500_s, 0.0}, {3100_s, 1.0}}),
              ElementsAre("800 meets a gust of 20.0 m/s or more", "800 is torn open"));
  EXPECT_EQ(w.stage.last(w.fault), 0.7);
  EXPECT_EQ(w.stage.chain_of("torn"), "vent is torn open <- vent meets a gust of 20.0 m/s or more")
      << "not the hand that opened it in calm air";
}

TEST(GivesWay, FailsWhenItIsExposedInTheStorm) {
  WindStage w;
  EXPECT_THAT(w.run({{0_s, 25}}, {{100_s, 0.5}, {200_s, 0.51}}), ElementsAre("200 is torn open"));
  EXPECT_EQ(w.stage.chain_of("torn"), "vent is torn open <- hand moves") << "the wind blew so already";
}

TEST(GivesWay, FailsWhenItIsExposedToAGustOfJustItsLimit) {
  WindStage w;
  EXPECT_THAT(w.run({{0_s, 20}}, {{200_s, 1.0}}), ElementsAre("200 is torn open"));
  EXPECT_EQ(w.stage.chain_of("torn"), "vent is torn open <- hand moves");
}

TEST(GivesWay, StandsAGustUnderItsLimitAndAStormWhileShut) {
  WindStage under, shut;
  EXPECT_THAT(under.run({{0_s, 19.999}}, {{100_s, 1.0}}), IsEmpty());
  EXPECT_EQ(under.stage.last(under.fault), 0.0);
  EXPECT_THAT(shut.run({{0_s, 0}, {1000_s, 25}, {1100_s, 0}}, {{100_s, 1.0}, {700_s, 0.0}, {1200_s, 1.0}}), IsEmpty());
}

TEST(GivesWay, BlamesTheStormThatAScriptBrought) {
  AgentStage stage(1_h);
  const ChannelId gust = stage.channel("gust"), position = stage.channel("position", 1.0);
  stage.agent<Script>({"sky", {{600_s, "a squall comes", EventKind::weather, {{gust, 30.0}}}}});
  stage.agent<GivesWay>({"cover", gust, 20.0, position, stage.channel("fault")});
  stage.run();
  EXPECT_EQ(stage.said_by("cover"), (Said{"600 meets a gust of 20.0 m/s or more", "600 is torn off by the wind"}));
  EXPECT_EQ(stage.chain_of("torn"),
            "cover is torn off by the wind <- cover meets a gust of 20.0 m/s or more <- sky a squall comes");
}

TEST(GivesWay, GoesBackToTheStormThatWasAnnouncedWhileThatLasts) {
  for (const bool lasts : {true, false}) {
    AgentStage stage(1_h);
    const ChannelId until = stage.channel("gusts blow until");
    stage.agent<Script>({"sky", {{500_s, "gusts begin", EventKind::weather, {{until, lasts ? 800.0 : 799.0}}}}});
    GivesWay::Parameters p{"vent", stage.moved("gust", {{0_s, 0}, {1000_s, 25}}), 20.0, stage.channel("position", 1.0),
                           stage.channel("fault")};
    p.storm_until = until;
    stage.agent<GivesWay>(std::move(p));
    stage.run();
    EXPECT_EQ(stage.chain_of("torn"),
              std::string("vent is torn off by the wind <- vent meets a gust of 20.0 m/s or more") +
                  (lasts ? " <- sky gusts begin" : ""));
  }
}

TEST(GivesWay, GoesBackToTheFailureThatKeptItOpen) {
  AgentStage stage(1_h);
  const ChannelId position = stage.channel("position");
  stage.agent<Script>({"vent", {{100_s, "sticks open", EventKind::failure, {{position, 1.0}}}}});
  stage.agent<GivesWay>(
      {"vent", stage.moved("gust", {{0_s, 0}, {1000_s, 25}}), 20.0, position, stage.channel("fault")});
  stage.run();
  EXPECT_EQ(stage.chain_of("torn"), "vent is torn off by the wind <- vent sticks open");
}

}  // namespace
}  // namespace noonhouse
