// SPDX-License-Identifier: Apache-2.0
// Hail on a facet in the engine's own run, under covers that a hand draws.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "models/hazard/hail.hpp"
#include "models/hazard/hail_strike.hpp"
#include "tests/support/agent_stage.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

/// Ten minutes of hail from 600 s: stones of 5 J on a facet that bears 3.5 J, one hit a pane in 500 s.
struct HailStage {
  AgentStage stage{1_h};
  ChannelId broken = stage.channel("broken"), hailing = stage.channel("hailing");
  ChannelId net = stage.channel("net position"), cloth = stage.channel("cloth position");
  HailStrike::Parameters p{
      "front roof", 600_s, 1200_s, 5.0, 3.5, 0.004, 0.5, {{"net", net, 2.0}, {"cloth", cloth, 1.0}}, broken, hailing};
  std::vector<std::string> run() {
    stage.agent<HailStrike>(p);
    stage.run();
    return stage.said_by("front roof");
  }
  double share() const { return stage.last(broken); }
};

/// A cover that fails at the start and stays open.
class JammedCover final : public Agent {
 public:
  struct Parameters {
    std::string name;
  };
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters&) { return {}; }
  explicit JammedCover(Parameters p) : p_(std::move(p)) {}
  std::string_view name() const override { return p_.name; }
  void react(const Situation&, const Trigger& trigger, Actions& actions) override {
    if (trigger.kind == Trigger::Kind::start) actions.log(EventKind::failure, "jams");
  }

 private:
  Parameters p_;
};

double broken_after(double exposed_s) { return 1.0 - std::exp(-exposed_s / 500.0); }

TEST(HailStrike, BreaksWhatLiesOpenUntilItIsOver) {
  HailStage s;
  EXPECT_THAT(s.run(),
              ElementsAre("660 is broken by hail of 5 J: it bears 3.5 J", "1200 hail is over: 70 % of it is broken"));
  EXPECT_NEAR(s.share(), broken_after(600.0), 1e-12);
}

TEST(HailStrike, TellsTheGrowingShareOnceAMinute) {
  HailStage s;
  s.p.until = 600_s + 90_s;
  s.run();
  EXPECT_NEAR(s.share(), broken_after(90.0), 1e-12);
  EXPECT_LT(s.stage.steps(), 100);
}

TEST(HailStrike, StopsWhenACoverIsDrawnMidway) {
  HailStage s;
  s.stage.hand(s.net, {{750_s, 1.0}});
  EXPECT_THAT(s.run(),
              ElementsAre("660 is broken by hail of 5 J: it bears 3.5 J", "1200 hail is over: 26 % of it is broken"));
  EXPECT_NEAR(s.share(), broken_after(150.0), 1e-12) << "the 30 s since the last minute count too";
}

TEST(HailStrike, GoesOnWhenACoverIsTakenOff) {
  HailStage s;
  s.stage.hand(s.net, {{100_s, 1.0}, {1000_s, 0.0}});
  EXPECT_THAT(s.run(),
              ElementsAre("1060 is broken by hail of 5 J: it bears 3.5 J", "1200 hail is over: 33 % of it is broken"));
  EXPECT_NEAR(s.share(), broken_after(200.0), 1e-12);
}

TEST(HailStrike, HoldsUnderItsCoverAndSaysSoOnce) {
  HailStage s;
  s.stage.hand(s.net, {{100_s, 1.0}});
  EXPECT_THAT(s.run(), ElementsAre("1200 held the hail: stones of 5 J"));
  EXPECT_EQ(s.share(), 0.0);
}

TEST(HailStrike, HoldsWhatItJustBears) {
  HailStage s;
  s.p.bears_j = 5.0;
  EXPECT_THAT(s.run(), ElementsAre("1200 held the hail: stones of 5 J"));
}

TEST(HailStrike, AddsCoversUpAndCountsNoneThatIsNotFullyDrawn) {
  HailStage s;
  s.p.stone_j = 6.5;
  s.stage.hand(s.net, {{100_s, 1.0}});
  s.stage.hand(s.cloth, {{100_s, 0.95}, {900_s, 0.96}});
  EXPECT_THAT(s.run(),
              ElementsAre("660 is broken by hail of 4.5 J: it bears 3.5 J", "1200 hail is over: 45 % of it is broken"));
  EXPECT_NEAR(s.share(), broken_after(300.0), 1e-12) << "both together leave 3.5 J, which it bears";
}

TEST(HailStrike, AddsToWhatIsBrokenAlready) {
  HailStage s;
  s.stage.hand(s.broken, {{10_s, 0.5}});
  s.run();
  EXPECT_NEAR(s.share(), 1.0 - 0.5 * (1.0 - broken_after(600.0)), 1e-12);
}

TEST(HailStrike, BreaksNothingOfWhatIsAllBroken) {
  HailStage s;
  s.stage.hand(s.broken, {{10_s, 0.996}});
  EXPECT_THAT(s.run(), ElementsAre("1200 lost no more to stones of 5 J: 100 % of it is broken already"));
  EXPECT_EQ(s.share(), 0.996);
}

TEST(HailStrike, DoesNotSayThatItHeldWhereAnotherStormBrokeIt) {
  HailStage s;
  HailStrike::Parameters before = s.p, beside = s.p;
  before.stone_j = beside.stone_j = 1.0;
  before.from = 100_s;
  before.until = 500_s;
  beside.from = 900_s;
  beside.until = 1500_s;
  s.stage.agent<HailStrike>(before);
  s.stage.agent<HailStrike>(beside);
  EXPECT_THAT(s.run(), ElementsAre("500 held the hail: stones of 1 J", "660 is broken by hail of 5 J: it bears 3.5 J",
                                   "1200 hail is over: 70 % of it is broken",
                                   "1500 lost no more to stones of 1 J: 70 % of it is broken already"));
}

TEST(HailStrike, LeadsBackToTheHailOrToTheCoverThatFailed) {
  HailStage open;
  open.stage.hand(open.hailing, {{600_s, 1.0}});
  open.run();
  EXPECT_EQ(
      open.stage.chain_of("is over"),
      "front roof hail is over: 70 % of it is broken <- front roof is broken by hail of 5 J: it bears 3.5 J <- hand "
      "moves");

  HailStage failed;
  failed.stage.agent<JammedCover>({"net"});
  failed.run();
  EXPECT_EQ(failed.stage.chain_of("is broken by hail"),
            "front roof is broken by hail of 5 J: it bears 3.5 J <- net jams");
}

TEST(HailStrike, IsNothingOutsideItsTimeAndPartOfItWhenTheRunCutsIt) {
  HailStage never;
  never.p.from = never.p.until = 600_s;
  EXPECT_THAT(never.run(), IsEmpty());
  HailStage later;
  later.p.from = 2_h;
  later.p.until = 3_h;
  EXPECT_THAT(later.run(), IsEmpty());
  EXPECT_EQ(later.share(), 0.0);
  HailStage at_once;
  at_once.p.from = Tick{0};
  at_once.p.until = 200_s;
  at_once.run();
  EXPECT_NEAR(at_once.share(), broken_after(200.0), 1e-12);
}

TEST(HailStrike, BeforeTheRunIsNothingAndAcrossItsStartCountsFromThere) {
  HailStage past;
  past.p.from = Tick{-600'000};
  past.p.until = Tick{-1};
  EXPECT_THAT(past.run(), IsEmpty());
  HailStage ends_at_the_start;
  ends_at_the_start.p.from = Tick{-600'000};
  ends_at_the_start.p.until = Tick{0};
  EXPECT_THAT(ends_at_the_start.run(), IsEmpty());
  HailStage across;
  across.p.from = Tick{-600'000};
  across.p.until = 200_s;
  across.run();
  EXPECT_NEAR(across.share(), broken_after(200.0), 1e-12);
}

TEST(HailStrike, AtTheRunsEndIsToldAsFarAsItCame) {
  HailStage to_the_end;
  to_the_end.p.from = 3000_s;
  to_the_end.p.until = 3600_s;
  EXPECT_THAT(to_the_end.run(),
              ElementsAre("3060 is broken by hail of 5 J: it bears 3.5 J", "3600 hail is over: 70 % of it is broken"));
  EXPECT_NEAR(to_the_end.share(), broken_after(600.0), 1e-12);
  HailStage beyond;
  beyond.p.from = 3300_s;
  beyond.p.until = 4000_s;
  EXPECT_THAT(beyond.run(), ElementsAre("3360 is broken by hail of 5 J: it bears 3.5 J")) << "it is not over";
  EXPECT_NEAR(beyond.share(), broken_after(300.0), 1e-12);
  HailStage as_it_ends;
  as_it_ends.p.from = 3600_s;
  as_it_ends.p.until = 4000_s;
  EXPECT_THAT(as_it_ends.run(), IsEmpty());
  EXPECT_EQ(as_it_ends.share(), 0.0);
}

TEST(HailStrike, TellsNothingTwiceWhenACoverMovesAsAMinuteEnds) {
  HailStage s;
  s.stage.hand(s.net, {{660_s, 1.0}, {720_s, 0.0}, {1200_s, 1.0}});
  s.run();
  EXPECT_NEAR(s.share(), broken_after(540.0), 1e-12);
}

}  // namespace
}  // namespace noonhouse
