// SPDX-License-Identifier: Apache-2.0
// Several failures of one part at once, in the engine's own run.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/control/device.hpp"
#include "models/control/fault_causes.hpp"
#include "models/control/script.hpp"
#include "tests/support/agent_stage.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;

/// A part with three causes; each change of its fault channel, and what it follows from, is noted.
struct CausesStage {
  AgentStage stage{1_h};
  ChannelId fault, a, b, torn;
  FaultCauses::Parameters p;
  explicit CausesStage(double healthy = 0.0)
      : fault(stage.channel("fault", healthy)),
        a(stage.channel("a", healthy)),
        b(stage.channel("b", healthy)),
        torn(stage.channel("torn", healthy)),
        p{"part", fault, healthy, false, {a, b, torn}, {}} {}
  void fails(const std::string& name, ChannelId cause, Tick from, double value, Tick until = kNever) {
    Script::Parameters script{name, {{from, "fails", EventKind::failure, {{cause, value}}}}};
    if (until != kNever) script.lines.push_back({until, "is over", EventKind::action, {{cause, p.healthy}}, 0, true});
    stage.agent<Script>(std::move(script));
  }
  Said run() {
    stage.agent<FaultCauses>(p);
    stage.agent<Note>({fault});
    stage.run();
    return stage.said_by("note");
  }

 private:
  class Note final : public Agent {
   public:
    struct Parameters {
      ChannelId fault;
    };
    static constexpr bool kDecides = false;
    static std::vector<ChannelId> follows(const Parameters& p) { return {p.fault}; }
    explicit Note(Parameters p) : p_(p) {}
    std::string_view name() const override { return "note"; }
    void react(const Situation& situation, const Trigger& trigger, Actions& actions) override {
      if (trigger.kind == Trigger::Kind::channel_changed)
        actions.log(EventKind::action, std::to_string(situation.value(p_.fault)).substr(0, 4), trigger.cause);
    }

   private:
    Parameters p_;
  };
};

TEST(FaultCauses, KeepTheNewestThatStandsUntilTheLastIsOver) {
  CausesStage s;
  s.fails("first", s.a, 100_s, 1.0, 300_s);
  s.fails("second", s.b, 200_s, 2.0, 400_s);
  EXPECT_THAT(s.run(), ElementsAre("100 1.00", "200 2.00", "400 0.00"));
  EXPECT_EQ(s.stage.chain_of("0.00"), "note 0.00 <- second is over <- second fails");
}

TEST(FaultCauses, GoBackToTheOlderOneWhenTheNewerIsOver) {
  CausesStage s;
  s.fails("older", s.a, 100_s, 1.0);
  s.fails("newer", s.b, 200_s, 2.0, 300_s);
  EXPECT_THAT(s.run(), ElementsAre("100 1.00", "200 2.00", "300 1.00"));
  EXPECT_EQ(s.stage.chain_of("1.00"), "note 1.00 <- older fails") << "not from the end of the newer";
}

TEST(FaultCauses, TellWhereOneTakesOverFromAnotherThatDoesTheSame) {
  CausesStage s;
  s.fails("first", s.a, 100_s, 2.0, 300_s);
  s.fails("second", s.b, 200_s, 2.0, 400_s);
  EXPECT_THAT(s.run(), ElementsAre("100 2.00", "200 2.00", "400 0.00")) << "the end of the first changes nothing";
}

// A fan is dead by its bearing, then by its wire; the bearing is mended. What is missed then is missed for the wire.
TEST(FaultCauses, BlameTheFailureThatStandsAndNotOneThatIsOver) {
  CausesStage s;
  const ChannelId call = s.stage.channel("call"), position = s.stage.channel("position");
  s.fails("bearing", s.a, 100_s, 1.0, 300_s);
  s.fails("wire", s.b, 200_s, 1.0);
  Device::Parameters fan{"fan", "starts", "stops", {call}, {}, {{position, 1.0, 0.0}}};
  fan.fault = s.fault;
  s.stage.agent<Device>(std::move(fan));
  s.stage.hand(call, {{400_s, 1.0}});
  s.run();
  EXPECT_THAT(s.stage.said_by("fan"),
              ElementsAre("100 is stuck off", "200 is stuck off", "400 is called but stays off: it is stuck"));
  EXPECT_EQ(s.stage.chain_of("is called but"),
            "fan is called but stays off: it is stuck <- fan is stuck off <- wire fails");
}

TEST(FaultCauses, StandFromTheRunsStart) {
  CausesStage s;
  s.fails("first", s.a, 0_s, 1.0, 300_s);
  s.fails("second", s.b, 0_s, 2.0, 200_s);
  EXPECT_THAT(s.run(), ElementsAre("0 2.00", "200 1.00", "300 0.00"));
}

TEST(FaultCauses, TakeAChangedOneAsNew) {
  CausesStage s;
  s.fails("first", s.a, 100_s, 1.0);
  s.fails("second", s.b, 200_s, 2.0);
  s.fails("first again", s.a, 300_s, 3.0);
  EXPECT_THAT(s.run(), ElementsAre("100 1.00", "200 2.00", "300 3.00"));
}

TEST(FaultCauses, AddUpFromTheHealthyValue) {
  CausesStage s(0.5);
  s.p.adds = true;
  s.fails("low", s.a, 100_s, -4.5, 300_s);  // 5 less
  s.fails("high", s.b, 200_s, 2.5, 400_s);  // 2 more
  s.fails("high too", s.torn, 250_s, 1.5);  // 1 more
  EXPECT_THAT(s.run(), ElementsAre("100 -4.5", "200 -2.5", "250 -1.5", "300 3.50", "400 1.50"));
}

TEST(FaultCauses, LetWhatIsGoneForGoodOverruleWhatComesAndGoes) {
  CausesStage s;
  s.p.lasting = s.torn;
  s.fails("before", s.a, 100_s, 1.0, 400_s);
  s.fails("torn", s.torn, 200_s, 2.0);
  s.fails("after", s.b, 300_s, 1.0, 500_s);
  EXPECT_THAT(s.run(), ElementsAre("100 1.00", "200 2.00"));
  EXPECT_EQ(s.stage.chain_of("2.00"), "note 2.00 <- torn fails");
}

// A device goes by its fault before it goes by a call of the same instant.
TEST(FaultCauses, AreThereBeforeDevicesActAtThatInstant) {
  CausesStage s;
  const ChannelId call = s.stage.channel("call");
  Device::Parameters vent{"vent", "opens", "shuts", {call}, {}, {}};
  vent.fault = s.fault;
  s.stage.agent<Device>(std::move(vent));
  s.stage.hand(call, {{100_s, 1.0}});
  s.fails("rust", s.a, 100_s, 1.0, 200_s);
  s.run();
  EXPECT_THAT(s.stage.said_by("vent"), ElementsAre("100 is stuck off", "200 is repaired", "200 opens"));
}

}  // namespace
}  // namespace noonhouse
