// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <thread>

#include "sim/core/errors.hpp"
#include "sim/run/run.hpp"
#include "tests/support/toy_lump.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;
using toy::Lump;
using toy::texts;
using toy::times_s;
using HouseRun = Run;  // inside a test, Run names the test's own

TEST(Run, ABouncingThermostatSwitchesWhenTheClosedFormSays) {
  Lump lump(15_h);
  lump.plan.isolation = Tick{1};
  lump.agent("thermostat", toy::Thermostat{lump.lump, lump.heat_w, 290.0 - 1.0, 290.0 + 1.0, 200.0});
  HouseRun run(lump.plan);
  run.go();
  const auto when = times_s(run.log());
  ASSERT_GT(when.size(), 100U);
  // T relaxes to 280 K with the heat off and to 280 + 200/10 = 300 K with it on.
  const double tau = Lump::kTimeConstant_s;
  const double heating = tau * std::log((300.0 - 289.0) / (300.0 - 291.0));
  const double cooling = tau * std::log((291.0 - 280.0) / (289.0 - 280.0));
  double expected = tau * std::log((290.0 - 280.0) / (289.0 - 280.0));
  // Each switch is late by the width and a rounding to ticks at most; 100 of them by 100 times that. The steps' own
  // error of 1e-5 K is 1e-3 s at 0.01 K/s.
  constexpr double kLate_s = 0.002 + 0.001;
  EXPECT_NEAR(when[0], expected, kLate_s);
  for (std::size_t i = 1; i <= 100; ++i) {
    const double interval = i % 2 == 1 ? heating : cooling;
    EXPECT_NEAR(when[i] - when[i - 1], interval, kLate_s) << i;
    expected += interval;
    EXPECT_NEAR(when[i], expected, kLate_s * static_cast<double>(i + 1));
  }
}

TEST(Run, AStartIsHeardOnceByEveryAgentInOrderAndControllersFirst) {
  Lump lump(1_h);
  std::vector<std::string> heard;
  const auto hear = [&](const std::string& name) {
    return [&heard, name](const Situation& s, const Trigger& t, Actions&) {
      EXPECT_EQ(t.kind, Trigger::Kind::start);
      EXPECT_EQ(s.now(), Tick{0});
      heard.push_back(name);
    };
  };
  lump.agent("device 1", hear("device 1"));
  lump.agent("controller 1", hear("controller 1"), {}, true);
  lump.agent("device 2", hear("device 2"));
  lump.agent("controller 2", hear("controller 2"), {}, true);
  HouseRun(lump.plan).go();
  EXPECT_THAT(heard, ElementsAre("controller 1", "controller 2", "device 1", "device 2"));
}

TEST(Run, WakesComeAtTheirInstantAndAreReplacedOrCancelled) {
  Lump lump(1_h);
  std::vector<std::pair<int, double>> heard;
  lump.agent("sleeper", [&](const Situation& s, const Trigger& t, Actions& act) {
    if (t.kind == Trigger::Kind::start) {
      act.wake(0, Tick{1'234'567});
      act.wake(1, 10_s);
      act.wake(2, 20_s);
      act.wake(2, 30_s);  // replaces 20 s
      act.wake(3, 40_s);
      act.wake(3, kNever);   // cancels
      act.wake(4, Tick{0});  // at this same instant
      act.wake(5, 1_h);      // the last instant of the run
      act.wake(6, 2_h);      // beyond it
      return;
    }
    ASSERT_EQ(t.kind, Trigger::Kind::wake);
    heard.emplace_back(t.slot, seconds(s.now()));
    if (t.slot == 1) act.wake(1, s.now() + 5_s);
    if (heard.size() > 4) act.wake(1, kNever);
  });
  HouseRun(lump.plan).go();
  using P = std::pair<int, double>;
  ASSERT_GE(heard.size(), 6U);
  EXPECT_EQ(heard.front(), P(4, 0.0));
  EXPECT_EQ(heard[1], P(1, 10.0));
  EXPECT_EQ(heard[2], P(1, 15.0));
  EXPECT_EQ(std::count(heard.begin(), heard.end(), P(2, 30.0)), 1);
  EXPECT_EQ(std::count(heard.begin(), heard.end(), P(0, 1234.567)), 1);
  EXPECT_EQ(heard.back(), P(5, 3600.0));
  EXPECT_TRUE(std::none_of(heard.begin(), heard.end(), [](const P& p) { return p.first == 3 || p.first == 6; }));
}

TEST(Run, FollowersHearAChannelAtTheSameInstantWithItsCause) {
  Lump lump(1_h);
  std::vector<std::string> order;
  lump.agent("follower",
             [&](const Situation& s, const Trigger& t, Actions& act) {
               if (t.kind != Trigger::Kind::channel_changed) return;
               EXPECT_EQ(s.now(), 100_s);
               EXPECT_EQ(t.channel, lump.heat_w);
               EXPECT_EQ(s.value(lump.heat_w), 50.0);
               EXPECT_EQ(s.last_change(lump.heat_w), t.cause);
               order.push_back("follower");
               act.log(EventKind::action, "followed");
             },
             {lump.heat_w});
  lump.agent("setter", [&](const Situation& s, const Trigger& t, Actions& act) {
    if (t.kind == Trigger::Kind::start) return act.wake(0, 100_s);
    EXPECT_EQ(s.last_change(lump.heat_w), kNoEvent);
    const auto event = act.log(EventKind::action, "set");
    act.set(lump.heat_w, 50.0, event);
    act.set(lump.heat_w, 50.0, event);  // no change, nobody hears
    order.push_back("setter");
  });
  HouseRun run(lump.plan);
  run.go();
  EXPECT_THAT(order, ElementsAre("setter", "follower"));
  EXPECT_THAT(texts(run.log()), ElementsAre("set", "followed"));
  EXPECT_EQ(run.log()[1].cause, run.log()[0].id);
  EXPECT_EQ(run.log()[0].subject, "setter");
}

TEST(Run, CausesChainAndStandingFailuresAreSeenUntilTheyAreCleared) {
  const std::vector<std::string> pump{"pump"};
  Lump lump(1_h);
  lump.agent("pump", [&](const Situation& s, const Trigger& t, Actions& act) {
    if (t.kind == Trigger::Kind::start) return act.wake(0, 10_s), act.wake(1, 30_s);
    if (t.slot == 1) return act.clear_failure();
    EXPECT_EQ(s.standing_failure(pump), kNoEvent);
    const auto first = act.log(EventKind::warning, "tank low");
    const auto second = act.log(EventKind::failure, "pump out");
    act.log(EventKind::action, "alone", kNoEvent);
    EXPECT_EQ(second, first + 1);
  });
  std::vector<EventId> seen;
  lump.agent("grower", [&](const Situation& s, const Trigger&, Actions& act) {
    seen.push_back(s.standing_failure(pump));
    if (s.now() < 40_s) act.wake(0, s.now() + 20_s);
  });
  HouseRun run(lump.plan);
  run.go();
  ASSERT_EQ(run.log().size(), 3U);
  EXPECT_EQ(run.log()[0].cause, kNoEvent);
  EXPECT_EQ(run.log()[1].cause, 0) << "what follows in a reaction follows from what was logged before";
  EXPECT_EQ(run.log()[2].cause, kNoEvent);
  EXPECT_THAT(seen, ElementsAre(kNoEvent, 1, kNoEvent));
}

TEST(Run, AStandingFailureIsSeenOnlyByWhoNamesItsAgent) {
  Lump lump(1_h);
  for (const char* name : {"pump", "fan"})
    lump.agent(name, [](const Situation&, const Trigger&, Actions& act) { act.log(EventKind::failure, "out"); });
  std::vector<EventId> seen;
  lump.agent("asker", [&](const Situation& s, const Trigger& t, Actions& act) {
    if (t.kind == Trigger::Kind::start) return act.wake(0, 10_s);
    for (const std::vector<std::string>& of :
         {std::vector<std::string>{}, {"pump"}, {"fan"}, {"fan", "pump"}, {"pumps", "asker"}})
      seen.push_back(s.standing_failure(of));
  });
  HouseRun run(lump.plan);
  run.go();
  EXPECT_THAT(seen, ElementsAre(kNoEvent, 0, 1, 1, kNoEvent));
}

TEST(Run, ObserversCanReadTheStartAndARunGoesOnce) {
  Lump lump(1_h);
  class StartReader final : public Observer {
   public:
    void see_start(const Stretch& stretch) override {
      const auto c = stretch.carried_at(Tick{0}), p = stretch.potentials_at(Tick{0});
      carried.assign(c.begin(), c.end());
      potentials.assign(p.begin(), p.end());
    }
    void see_stretch(const Stretch&) override {}
    std::vector<double> carried, potentials;
  } reader;
  HouseRun run(lump.plan);
  run.add_observer(reader);
  run.go();
  EXPECT_THAT(reader.carried, ElementsAre(0.0, 0.0));
  EXPECT_THAT(reader.potentials, ElementsAre(testing::DoubleEq(290.0), 280.0, 0.0, 0.0))
      << "lump, outdoor, heat, what forbids";
  EXPECT_DEATH(run.go(), "begun_");
}

TEST(Run, ObserversSeeEveryInstantOnceAndValuesThatJoin) {
  const auto plan = toy::busy_plan(6_h);
  toy::Recorder recorder;
  Tick last{0};
  std::vector<double> carried;
  recorder.each = [&](const Stretch& stretch) {
    EXPECT_EQ(stretch.begin(), last);
    last = stretch.end();
    const auto now = stretch.carried_at(stretch.begin());
    if (!carried.empty())
      for (std::size_t j = 0; j < now.size(); ++j)
        if (static_cast<int>(j) != plan.house.exchanges[11].first_flux) {  // the watering can pours at once
          ASSERT_NEAR(now[j], carried[j], 1e-12 * std::abs(carried[j]) + 1e-12) << j;
        }
    const auto end = stretch.carried_at(stretch.end());
    carried.assign(end.begin(), end.end());
  };
  HouseRun run(plan);
  run.add_observer(recorder);
  const auto result = run.go();
  EXPECT_EQ(last, 6_h);
  EXPECT_EQ(carried, result.state.carried);
  EXPECT_EQ(recorder.events.size(), run.log().size());
  EXPECT_EQ(result.events, static_cast<std::int64_t>(run.log().size()));
}

struct Outcome {
  HouseState state;
  std::vector<LogEntry> log;
  std::int64_t steps = 0;
};
Outcome outcome(const RunPlan& plan, Observer* observer = nullptr) {
  HouseRun run(plan);
  if (observer) run.add_observer(*observer);
  const auto result = run.go();
  return {result.state, run.log(), result.steps};
}
void expect_same(const Outcome& a, const Outcome& b) {
  EXPECT_EQ(a.state.amounts, b.state.amounts);  // bit for bit
  EXPECT_EQ(a.state.carried, b.state.carried);
  EXPECT_EQ(a.steps, b.steps);
  EXPECT_EQ(times_s(a.log), times_s(b.log));
  EXPECT_EQ(texts(a.log), texts(b.log));
}

TEST(Run, IsTheSameBitForBitAgainWatchedAndOnAnotherThread) {
  const auto plan = toy::busy_plan(kDay * 5);
  const Outcome alone = outcome(plan);
  EXPECT_GT(alone.log.size(), 50U);
  toy::Recorder recorder;
  expect_same(alone, outcome(plan, &recorder));
  EXPECT_GT(recorder.ends.size(), 500U);
  Outcome first, second;
  {
    std::jthread one([&] { first = outcome(plan); });
    std::jthread two([&] { second = outcome(plan); });
  }
  expect_same(alone, first);
  expect_same(alone, second);
  expect_same(alone, outcome(toy::busy_plan(kDay * 5)));
}

TEST(Run, ProgressRunsUpToOne) {
  Lump lump(1_h);
  HouseRun run(lump.plan);
  std::vector<double> shares;
  run.on_progress([&](double share) { shares.push_back(share); });
  run.go();
  ASSERT_FALSE(shares.empty());
  EXPECT_TRUE(std::is_sorted(shares.begin(), shares.end()));
  EXPECT_EQ(shares.back(), 1.0);
}

}  // namespace
}  // namespace noonhouse
