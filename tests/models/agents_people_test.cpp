// SPDX-License-Identifier: Apache-2.0
// The grower's answer to a sign, and scripts of what is known to happen.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/control/grower_response.hpp"
#include "models/control/limits.hpp"
#include "models/control/script.hpp"
#include "tests/support/agent_stage.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

/// The grower is there from 8 to 9 and from 17 to 18, needs five minutes, and takes two hours to come when called.
struct ResponseRow {
  std::string what;
  Moves sign;  ///< moves of a flag that begins at 0
  Said says;   ///< by the minute of the run
  bool alarm = false, undo = false;
  Moves away{};
};
void PrintTo(const ResponseRow& row, std::ostream* out) { *out << row.what; }

/// "480 opens" for a thing said at 8:00.
Said by_the_minute(const AgentStage& stage) {
  Said out;
  for (const auto& entry : stage.log())
    if (entry.subject == "grower") out.push_back(std::to_string(entry.when.ms / 60'000) + " " + entry.what);
  return out;
}

class Responses : public testing::TestWithParam<ResponseRow> {};

TEST_P(Responses, SaysWhatIsDoneAndWhen) {
  const auto& row = GetParam();
  AgentStage stage(48_h);
  const ChannelId sign = stage.channel("sign"), away = stage.channel("away"), hand = stage.channel("hand", 0.25);
  if (!row.away.empty()) stage.hand(away, row.away);
  stage.hand(sign, row.sign);
  GrowerResponse::Parameters p;
  p.sign = sign;
  p.limits = {0.5, 0.5};
  p.sees = "sees it";
  p.does = "opens";
  p.undoes = "shuts";
  p.moves = {{hand, 1.0}};
  p.undo = row.undo;
  p.presence = {{8_h, 9_h}, {17_h, 18_h}};
  p.away = away;
  p.reaction = 5_min;
  p.alarm = row.alarm;
  p.returns_within = 2_h;
  stage.agent<GrowerResponse>(std::move(p));
  stage.run();
  EXPECT_EQ(by_the_minute(stage), row.says);
  double expected = 0.25;  // as it was found
  for (const std::string& said : row.says) {
    if (said.find("opens") != std::string::npos) expected = 1.0;
    if (said.find("shuts") != std::string::npos) expected = 0.25;
  }
  EXPECT_EQ(stage.last(hand), expected);
}

const ResponseRow kResponses[] = {
    {"present", {{8_h + 30_min, 1}}, {"515 sees it", "515 opens"}},
    {"there as it comes", {{8_h, 1}}, {"485 sees it", "485 opens"}},
    {"leaving as it comes", {{9_h, 1}}, {"1025 sees it", "1025 opens"}},
    {"seen in the last minute", {{8_h + 59_min, 1}}, {"544 sees it", "544 opens"}},
    {"absent", {{6_h, 1}}, {"485 sees it", "485 opens"}},
    {"absent over night", {{20_h, 1}}, {"1925 sees it", "1925 opens"}},
    {"gone before it is seen", {{6_h, 1}, {7_h, 0}}, {}},
    {"gone as it would be acted on", {{6_h, 1}, {8_h + 5_min, 0}}, {}},
    {"gone and back before it is seen", {{6_h, 1}, {7_h, 0}, {8_h + 2_min, 1}}, {"487 sees it", "487 opens"}},
    {"called", {{10_h, 1}}, {"600 is called by the alarm", "720 sees it", "720 opens"}, true},
    {"called shortly before coming anyway",
     {{16_h, 1}},
     {"960 is called by the alarm", "1025 sees it", "1025 opens"},
     true},
    {"called in vain", {{10_h, 1}, {11_h, 0}}, {"600 is called by the alarm"}, true},
    {"there and so not called", {{8_h, 1}}, {"485 sees it", "485 opens"}, true},
    {"called twice",
     {{10_h, 1}, {11_h, 0}, {11_h + 30_min, 1}},
     {"600 is called by the alarm", "690 is called by the alarm", "810 sees it", "810 opens"},
     true},
    {"away", {{10_h, 1}}, {}, false, false, {{1_h, 1}}},
    {"away and called", {{10_h, 1}}, {"600 the alarm calls, but nobody can come"}, true, false, {{1_h, 1}}},
    {"away by exception and called",
     {{8_h + 30_min, 1}},
     {"510 the alarm calls, but nobody can come"},
     true,
     false,
     {{1_h, 1}}},
    {"gone before there was anything to undo", {{6_h, 1}, {7_h, 0}}, {}, false, true},
    {"going away on the way", {{10_h, 1}}, {"600 is called by the alarm"}, true, false, {{11_h, 1}}},
    {"going away while present", {{8_h, 1}}, {}, false, false, {{8_h + 4_min, 1}}},
    {"back after all", {{10_h, 1}}, {"1055 sees it", "1055 opens"}, false, false, {{1_h, 1}, {17_h + 30_min, 0}}},
    {"left as it is", {{6_h, 1}, {10_h, 0}}, {"485 sees it", "485 opens"}},
    {"undone", {{6_h, 1}, {10_h, 0}}, {"485 sees it", "485 opens", "1025 shuts"}, false, true},
    {"undone at once", {{6_h, 1}, {8_h + 30_min, 0}}, {"485 sees it", "485 opens", "515 shuts"}, false, true},
    {"not called to undo",
     {{6_h, 1}, {10_h, 0}},
     {"360 is called by the alarm", "480 sees it", "480 opens", "1025 shuts"},
     true,
     true},
    {"back before it is undone", {{6_h, 1}, {10_h, 0}, {16_h, 1}}, {"485 sees it", "485 opens"}, false, true},
    {"back and gone again",
     {{6_h, 1}, {10_h, 0}, {16_h, 1}, {20_h, 0}},
     {"485 sees it", "485 opens", "1925 shuts"},
     false,
     true},
    {"away before it is undone", {{6_h, 1}, {10_h, 0}}, {"485 sees it", "485 opens"}, false, true, {{12_h, 1}}},
    {"two signs", {{6_h, 1}, {10_h, 0}, {16_h, 1}}, {"485 sees it", "485 opens", "1025 sees it", "1025 opens"}},
};
INSTANTIATE_TEST_SUITE_P(Rows, Responses, testing::ValuesIn(kResponses), [](const auto& tested) {
  std::string name = tested.param.what;
  std::replace(name.begin(), name.end(), ' ', '_');
  return name;
});

/// A response to a tank below 20 kg, until it is above 40.
GrowerResponse::Parameters tank_response(const Input& tank) {
  GrowerResponse::Parameters p;
  p.sign = tank;
  p.limits = {20.0, 40.0};
  p.sees = "finds the tank nearly empty";
  p.does = "carries water";
  p.presence = {{}};
  return p;
}

TEST(GrowerResponse, ReadsATankWithTwoLimitsAndGoesBackToTheFailureBehindIt) {
  AgentStage stage(1_h);
  auto p = tank_response(stage.moved("tank", {{0_s, 50}, {1000_s, 10}, {2000_s, 39}, {3000_s, 10}}));
  p.blames = {"pump"};
  stage.agent<Script>({"pump", {{100_s, "seizes", EventKind::failure}}});
  stage.agent<GrowerResponse>(std::move(p));
  stage.run();
  EXPECT_THAT(stage.said_by("grower"), ElementsAre("750 finds the tank nearly empty", "750 carries water"))
      << "not again: it was never above its second limit";
  EXPECT_EQ(stage.chain_of("carries"), "grower carries water <- grower finds the tank nearly empty <- pump seizes");
  for (const auto& entry : stage.log()) EXPECT_EQ(entry.kind == EventKind::people, entry.subject == "grower");
}

TEST(GrowerResponse, GoesBackToEachSignsOwnCause) {
  AgentStage stage(1_h);
  const ChannelId sign = stage.channel("sign");
  stage.agent<Script>({"sky",
                       {{600_s, "first rain", EventKind::weather, {{sign, 1.0}}},
                        {700_s, "it is dry", EventKind::weather, {{sign, 0.0}}},
                        {800_s, "second rain", EventKind::weather, {{sign, 1.0}}}}});
  auto p = tank_response(sign);
  p.limits = {0.5, 0.5};
  stage.agent<GrowerResponse>(std::move(p));
  stage.run();
  EXPECT_EQ(stage.said_by("grower").size(), 4U);
  EXPECT_EQ(stage.chain_of("carries"), "grower carries water <- grower finds the tank nearly empty <- sky second rain");
}

TEST(GrowerResponse, WithoutPresenceOrAlarmDoesNothing) {
  AgentStage stage(48_h);
  auto p = tank_response(stage.moved("tank", {{0_s, 10}}));
  p.presence.clear();
  stage.agent<GrowerResponse>(std::move(p));
  stage.run();
  EXPECT_THAT(stage.said_by("grower"), IsEmpty());
}

/// What is said when an alarm, fitted or not, calls at 3:00, the grower being away or not.
Said said_of_alarm(bool fitted, Moves away) {
  AgentStage stage(12_h);
  const ChannelId sign = stage.channel("sign"), gone = stage.channel("away");
  const ChannelId not_fitted = stage.channel("not fitted", fitted ? 0.0 : 1.0);
  stage.hand(sign, {{3_h, 1.0}});
  if (!away.empty()) stage.hand(gone, std::move(away));
  auto p = tank_response(sign);
  p.limits = {0.5, 0.5};
  p.presence = {{8_h, 9_h}};
  p.alarm = true;
  p.returns_within = 30_min;
  p.away = gone;
  p.not_fitted = not_fitted;
  stage.agent<GrowerResponse>(std::move(p));
  stage.run();
  return by_the_minute(stage);
}

TEST(GrowerResponse, AnAlarmReachesNobodyWhoIsAwayAndIsSilentWhereItIsNotFitted) {
  EXPECT_THAT(said_of_alarm(true, {}),
              ElementsAre("180 is called by the alarm", "210 finds the tank nearly empty", "210 carries water"));
  EXPECT_THAT(said_of_alarm(true, {{1_h, 1.0}}), ElementsAre("180 the alarm calls, but nobody can come"));
  EXPECT_THAT(said_of_alarm(false, {}), IsEmpty());
  EXPECT_THAT(said_of_alarm(false, {{1_h, 1.0}, {4_h, 0.0}}), IsEmpty());
}

TEST(GrowerResponse, WithoutPresenceComesWhenCalled) {
  AgentStage stage(48_h);
  const ChannelId sign = stage.channel("sign");
  stage.agent<Script>({"frost", {{1_h, "begins", EventKind::weather, {{sign, 1.0}}}}});
  auto p = tank_response(sign);
  p.limits = {0.5, 0.5};
  p.presence.clear();
  p.alarm = true;
  p.returns_within = 30_min;
  stage.agent<GrowerResponse>(std::move(p));
  stage.run();
  EXPECT_EQ(stage.chain_of("carries"),
            "grower carries water <- grower finds the tank nearly empty <- grower is called by the alarm <- frost "
            "begins");
}

TEST(Script, SetsAndSaysInOrderWithCausesAndKinds) {
  AgentStage stage(1_h);
  const ChannelId storm = stage.channel("storm"), fault = stage.channel("fault");
  stage.agent<Script>({"what comes",
                       {{0_s, "a hot day is forecast", EventKind::weather, {}},
                        {600_s, "a storm begins", EventKind::weather, {{storm, 1.0}}},
                        {600_s, "the mains fail", EventKind::failure, {{fault, 1.0}}, 1},
                        {700_s, "", EventKind::weather, {{storm, 0.5}}},
                        {900_s, "the mains are back", EventKind::action, {{fault, 0.0}}, 2, true}}});
  // Asked at 800 s and at 950 s, with the failure standing and cleared.
  for (const Tick asked : {800_s, 950_s}) {
    GrowerResponse::Parameters p =
        tank_response(stage.moved("tank at " + std::to_string(asked.ms), {{asked, 50}, {asked, 10}}));
    p.name = "asked at " + std::to_string(asked.ms / 1000);
    p.blames = {"what comes"};
    stage.agent<GrowerResponse>(std::move(p));
  }
  stage.run();
  EXPECT_THAT(stage.said_by("what comes"), ElementsAre("0 a hot day is forecast", "600 a storm begins",
                                                       "600 the mains fail", "900 the mains are back"));
  EXPECT_EQ(stage.chain_of("mains are back"),
            "what comes the mains are back <- what comes the mains fail <- what comes a storm begins");
  EXPECT_EQ(stage.last(storm), 0.5);
  EXPECT_EQ(stage.last(fault), 0.0);
  const auto cause_at = [&](const std::string& who) {
    for (const auto& entry : stage.log())
      if (entry.subject == who) return entry.cause;
    return EventId{-2};
  };
  EXPECT_EQ(cause_at("asked at 800"), 2);
  EXPECT_EQ(cause_at("asked at 950"), kNoEvent) << "no failure stands any more";
}

}  // namespace
}  // namespace noonhouse
