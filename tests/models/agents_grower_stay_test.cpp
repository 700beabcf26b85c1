// SPDX-License-Identifier: Apache-2.0
// A grower who came because called, and what is seen meanwhile.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/control/grower_response.hpp"
#include "tests/support/agent_stage.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;

/// Two responses of a grower who is there from 8 to 9, needs five minutes, comes within two hours and stays for one.
/// The first has an alarm. Says what each does by the minute of the run.
struct StayStage {
  AgentStage stage{48_h};
  ChannelId alarm_sign = stage.channel("alarm sign"), plain_sign = stage.channel("plain sign");
  ChannelId stays_until = stage.channel("stays until");
  bool both_call = false;
  Tick stays = 1_h;
  Said run(const Moves& first, const Moves& second) {
    stage.hand(alarm_sign, first);
    stage.hand(plain_sign, second);
    for (const auto& [name, sign] : {std::pair("a", alarm_sign), std::pair("b", plain_sign)}) {
      GrowerResponse::Parameters p;
      p.name = name;
      p.sign = sign;
      p.limits = {0.5, 0.5};
      p.sees = "sees";
      p.does = "does";
      p.undoes = "undoes";
      p.moves = {{stage.channel(std::string("hand of ") + name), 1.0}};
      p.undo = true;
      p.presence = {{8_h, 9_h}};
      p.reaction = 5_min;
      p.alarm = name == std::string("a") || both_call;
      p.returns_within = 2_h;
      p.stays = stays;
      p.stays_until = stays_until;
      stage.agent<GrowerResponse>(std::move(p));
    }
    stage.run();
    Said out;
    for (const auto& entry : stage.log())
      if (entry.subject != "hand" && entry.what != "sees")
        out.push_back(std::to_string(entry.when.ms / 60'000) + " " + entry.subject + " " + entry.what);
    return out;
  }
};

TEST(GrowerStay, OtherSignsAreSeenOnTheArrivalAndDuringTheStay) {
  StayStage before, during, after, none;
  none.stays = Tick{0};
  EXPECT_THAT(before.run({{10_h, 1}}, {{11_h, 1}}),
              ElementsAre("600 a is called by the alarm", "720 a does", "725 b does"));
  EXPECT_THAT(during.run({{10_h, 1}}, {{12_h + 59_min, 1}}),
              ElementsAre("600 a is called by the alarm", "720 a does", "784 b does"));
  EXPECT_THAT(after.run({{10_h, 1}}, {{13_h, 1}}),
              ElementsAre("600 a is called by the alarm", "720 a does", "1925 b does"));
  EXPECT_THAT(none.run({{10_h, 1}}, {{12_h + 30_min, 1}}),
              ElementsAre("600 a is called by the alarm", "720 a does", "1925 b does"));
}

TEST(GrowerStay, WhoHasSeenASignAlreadyDoesNotBeginAnew) {
  StayStage s;
  EXPECT_THAT(s.run({{6_h + 2_min, 1}}, {{7_h, 1}}),
              ElementsAre("362 a is called by the alarm", "482 a does", "485 b does"));
}

TEST(GrowerStay, WhatWasDoneIsUndoneDuringIt) {
  StayStage s;
  EXPECT_THAT(s.run({{10_h, 1}, {12_h + 30_min, 0}}, {{50_h, 1}}),
              ElementsAre("600 a is called by the alarm", "720 a does", "755 a undoes"));
}

TEST(GrowerStay, NobodyIsCalledWhileTheyAreThereAnyway) {
  StayStage s;
  s.both_call = true;
  EXPECT_THAT(s.run({{10_h, 1}}, {{12_h + 30_min, 1}}),
              ElementsAre("600 a is called by the alarm", "720 a does", "755 b does"));
  EXPECT_EQ(s.stage.last(s.stays_until), 13.0 * 3600.0) << "who is there already does not begin to stay anew";
}

TEST(GrowerStay, CalledTwiceStaysFromTheLaterArrival) {
  StayStage apart, on_the_way;
  apart.both_call = on_the_way.both_call = true;
  EXPECT_THAT(apart.run({{10_h, 1}, {15_h + 20_min, 0}}, {{13_h, 1}}),
              ElementsAre("600 a is called by the alarm", "720 a does", "780 b is called by the alarm", "900 b does",
                          "925 a undoes"));
  EXPECT_EQ(apart.stage.last(apart.stays_until), 16.0 * 3600.0);
  EXPECT_THAT(on_the_way.run({{10_h, 1}}, {{10_h + 2_min, 1}}),
              ElementsAre("600 a is called by the alarm", "602 b is called by the alarm", "720 a does", "722 b does"))
      << "a call of its own may end sooner than the reaction";
  EXPECT_EQ(on_the_way.stage.last(on_the_way.stays_until), 13.0 * 3600.0 + 120.0);
}

TEST(GrowerStay, GoesOverMidnight) {
  StayStage s;
  EXPECT_THAT(s.run({{21_h + 30_min, 1}}, {{24_h + 10_min, 1}}),
              ElementsAre("1290 a is called by the alarm", "1410 a does", "1455 b does"));
  StayStage too_late;
  EXPECT_THAT(too_late.run({{21_h + 30_min, 1}}, {{24_h + 31_min, 1}}),
              ElementsAre("1290 a is called by the alarm", "1410 a does", "1925 b does"));
}

}  // namespace
}  // namespace noonhouse
