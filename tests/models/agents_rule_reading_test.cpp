// SPDX-License-Identifier: Apache-2.0
// A rule whose reading comes by radio: without it the rule neither calls nor forbids, and lets go of what it held.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/control/instrument.hpp"
#include "models/control/standing_rule.hpp"
#include "tests/support/device_works.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

/// An instrument that is polled every minute and lost after three; a rule that holds from 30 until 28, or where it
/// `is_cold` from 10 until 12, calls the vent and forbids the mist, which is called from 10 s on.
struct RadioRule {
  AgentStage stage{1_h};
  ChannelId told = stage.channel("told"), good = stage.channel("good", 1.0), holds = stage.channel("holds");
  ChannelId radio, mist_call = stage.channel("mist call");
  StandingRule::Parameters rule{"rule", holds, {{good, {0.5, 0.4}, true}, {told, {30.0, 28.0}}}};

  /// The radio's faults; with `lost_at_first` it is lost before anything has been told.
  RadioRule(const Points& reading, const Moves& faults, bool lost_at_first = false)
      : radio(stage.channel("radio", lost_at_first ? 2.0 : 0.0)) {
    Instrument::Parameters p;
    p.name = "sensor";
    p.reading = stage.moved("reading", reading);
    p.told = told;
    p.good = good;
    p.every = 1_min;
    p.lost_after = 3_min;
    p.fault = radio;
    stage.agent<Instrument>(std::move(p));
    if (!faults.empty()) stage.hand(radio, faults);
    stage.hand(mist_call, {{10_s, 1.0}});
    rule.begins = "on";
    rule.ends = "off";
    stage.agent<Device>({"vent", "opens", "shuts", {holds}});
    Device::Parameters mist{"mist", "starts", "stops", {mist_call}};
    mist.forbids = {{holds, "by the rule"}};
    stage.agent<Device>(std::move(mist));
  }
  void is_cold() { rule.tests[1].limits = {10.0, 12.0}; }
  std::vector<std::string> run() {
    stage.agent<StandingRule>(rule);
    stage.run();
    return stage.said_by("rule");
  }
};

constexpr double kLost = 2.0;  // as InstrumentFault numbers it
const Points kHotFrom5Min{{0_s, 20}, {290_s, 20}, {291_s, 35}};

TEST(RuleReading, ReleasesWhatItHeldWhenTheReadingIsLostAndTakesItAgain) {
  RadioRule r(kHotFrom5Min, {{630_s, kLost}, {1230_s, 0.0}});
  // Heard last at 600 s, so lost at 780 s; the radio is back at 1230 s and the next poll is at 1260 s.
  EXPECT_THAT(r.run(), ElementsAre("300 on", "780 off", "1260 on"));
  EXPECT_THAT(r.stage.said_by("vent"), ElementsAre("300 opens", "780 shuts", "1260 opens"));
  EXPECT_THAT(r.stage.said_by("mist"), ElementsAre("10 starts", "300 is held back: by the rule", "780 starts",
                                                   "1260 is held back: by the rule"));
  EXPECT_EQ(r.stage.chain_of("off"), "rule off <- sensor is lost: not heard for 3 min <- hand moves");
}

TEST(RuleReading, KeepsWhatItHeldThroughAGapThatIsNoLoss) {
  RadioRule r(kHotFrom5Min, {{630_s, kLost}, {770_s, 0.0}});
  EXPECT_THAT(r.run(), ElementsAre("300 on")) << "the poll at 780 s comes through as the reading would be lost";
}

TEST(RuleReading, DoesNotHoldBeforeAnythingWasRead) {
  // What is told before the first poll comes through is the channel's zero: colder than any limit.
  RadioRule never({{0_s, 20}}, {}, true), later({{0_s, 5}}, {{630_s, 0.0}}, true);
  never.is_cold();
  EXPECT_THAT(never.run(), IsEmpty());
  EXPECT_THAT(never.stage.said_by("vent"), IsEmpty());
  EXPECT_THAT(never.stage.said_by("mist"), ElementsAre("10 starts"));
  later.is_cold();
  EXPECT_THAT(later.run(), ElementsAre("660 on"));
}

TEST(RuleReading, IsNotHeldByWhatIsToldNoMore) {
  // It cools while nobody hears it: the rule is off already, and stays so when the reading is back.
  RadioRule r({{0_s, 35}, {700_s, 35}, {701_s, 20}}, {{630_s, kLost}, {1230_s, 0.0}});
  EXPECT_THAT(r.run(), ElementsAre("0 on", "780 off"));
}

TEST(RuleReading, ReleasesBeforeItsLeastTimeIsOverAndWaitsAnewForTheReading) {
  RadioRule least(kHotFrom5Min, {{370_s, kLost}, {1230_s, 0.0}}), after(kHotFrom5Min, {{430_s, kLost}, {1230_s, 0.0}});
  least.rule.least_hold = 900_s;
  EXPECT_THAT(least.run(), ElementsAre("300 on", "540 off", "1260 on")) << "it knows nothing any more";
  after.rule.after = 400_s;  // from 300 s it would hold at 700 s, but is lost at 600 s
  EXPECT_THAT(after.run(), ElementsAre("1660 on"));
}

}  // namespace
}  // namespace noonhouse
