// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <thread>

#include "sim/core/errors.hpp"
#include "sim/run/run.hpp"
#include "tests/support/toy_run.hpp"

namespace noonhouse {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using toy::scripted;
using HouseRun = Run;  // inside a test, Run names the test's own

/// A lump [1e4 J/K] that loses 10 W/K to a channel's temperature and is heated by another channel [W].
struct Lump {
  RunPlan plan;
  NodeId lump;
  ChannelId outdoor_k, heat_w;
  ExchangeId heating;
  static constexpr double kTimeConstant_s = 1000.0;
  explicit Lump(Tick length, double start_k = 290.0) {
    HouseGraph graph;
    lump = graph.node("lump", ThermalMass{1e4}, {start_k}, {1e-5});
    outdoor_k = graph.channel("outdoor", "K", 280.0);
    heat_w = graph.channel("heat", "W", 0.0);
    const auto out = graph.account("out", Quantity::energy), mains = graph.account("mains", Quantity::energy);
    graph.exchange("loss", "x", toy::Conduction{10.0}, {lump, outdoor_k}, {{{lump, out}}});
    heating = graph.exchange("heating", "x", toy::Supply<Quantity::energy>{}, {heat_w}, {{{mains, lump}}});
    plan.house = graph.compile();
    plan.forcing =
        std::make_unique<toy::LineForcing>(1_h, std::vector<std::pair<ChannelId, toy::LineForcing::Signal>>{});
    plan.length = length;
  }
  void agent(std::string name, toy::Scripted::Reaction reaction, std::vector<ChannelId> follows = {},
             bool decides = false) {
    plan.agents.push_back(scripted(std::move(name), std::move(reaction), std::move(follows), decides));
  }
};

std::vector<double> times_s(const std::vector<LogEntry>& log) {
  std::vector<double> out;
  for (const auto& entry : log) out.push_back(seconds(entry.when));
  return out;
}

std::vector<std::string> texts(const std::vector<LogEntry>& log) {
  std::vector<std::string> out;
  for (const auto& entry : log) out.push_back(entry.what);
  return out;
}

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
  Lump lump(1_h);
  lump.agent("pump", [&](const Situation& s, const Trigger& t, Actions& act) {
    if (t.kind == Trigger::Kind::start) return act.wake(0, 10_s), act.wake(1, 30_s);
    if (t.slot == 1) return act.clear_failure();
    EXPECT_EQ(s.standing_failure(), kNoEvent);
    const auto first = act.log(EventKind::warning, "tank low");
    const auto second = act.log(EventKind::failure, "pump out");
    act.log(EventKind::action, "alone", kNoEvent);
    EXPECT_EQ(second, first + 1);
  });
  std::vector<EventId> seen;
  lump.agent("grower", [&](const Situation& s, const Trigger&, Actions& act) {
    seen.push_back(s.standing_failure());
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

TEST(Run, AWatchArmedBeyondItsLimitFiresAtThatInstantAndOnce) {
  Lump lump(1_h);
  int fired = 0;
  lump.agent("guard", [&](const Situation& s, const Trigger& t, Actions& act) {
    if (t.kind == Trigger::Kind::start) return act.wake(0, 60_s);
    if (t.kind == Trigger::Kind::wake) return act.arm(0, {lump.lump, 295.0, Watch::Direction::falling});
    ++fired;
    EXPECT_EQ(s.now(), 60_s);
  });
  HouseRun(lump.plan).go();
  EXPECT_EQ(fired, 1);
}

TEST(Run, DisarmingOrReplacingAWatchTakesBackItsCrossingOfTheSameInstant) {
  Lump lump(1_h);
  std::vector<int> heard;
  lump.agent("guard", [&](const Situation&, const Trigger& t, Actions& act) {
    const auto watch_at = [&](double k) { return Watch{lump.lump, k, Watch::Direction::falling}; };
    if (t.kind == Trigger::Kind::start)
      for (int slot : {0, 1, 2}) act.arm(slot, watch_at(288.0));
    if (t.kind != Trigger::Kind::crossing) return;
    heard.push_back(t.slot);
    if (t.slot == 0) {
      act.disarm(1);
      act.arm(2, watch_at(286.0));
    }
  });
  HouseRun(lump.plan).go();
  EXPECT_THAT(heard, ElementsAre(0, 2));
}

TEST(Run, AgentsAtABreakSeeTheForcingThatHoldsFromThere) {
  Lump lump(3_h);
  // A staircase: the forcing jumps at each hour.
  struct Stairs final : Forcing {
    ChannelId channel;
    explicit Stairs(ChannelId c) : channel(c) {}
    Tick next_break(Tick t) const override { return Tick{(t.ms / 3'600'000 + 1) * 3'600'000}; }
    void fill(Tick from, Tick, std::span<const double>, std::span<double> a, std::span<double> b) const override {
      const auto i = static_cast<std::size_t>(channel.index);
      a[i] = b[i] = 280.0 + static_cast<double>(from.ms / 3'600'000);
    }
  };
  lump.plan.forcing = std::make_unique<Stairs>(lump.outdoor_k);
  std::vector<double> seen;
  lump.agent("observer", [&](const Situation& s, const Trigger&, Actions& act) {
    seen.push_back(s.value(lump.outdoor_k));
    if (s.now() < 2_h) act.wake(0, s.now() + 1_h);
  });
  int fired = 0;
  lump.agent("guard", [&](const Situation& s, const Trigger& t, Actions& act) {
    if (t.kind == Trigger::Kind::start) return act.arm(0, {lump.outdoor_k, 281.5, Watch::Direction::rising});
    ++fired;
    EXPECT_LE(s.now() - 2_h, Tick{1}) << "a jump at a break is passed at once";
  });
  HouseRun(lump.plan).go();
  EXPECT_THAT(seen, ElementsAre(280.0, 281.0, 282.0));
  EXPECT_EQ(fired, 1);
}

TEST(Run, ATransferMovesTheAmountAtOnceAndKeepsTheSum) {
  Lump lump(1_h, 280.0);  // at rest with its surroundings
  lump.agent("hand", [&](const Situation& s, const Trigger& t, Actions& act) {
    if (t.kind == Trigger::Kind::start) return act.wake(0, 600_s);
    EXPECT_NEAR(s.value(lump.lump), 280.0, 1e-9);
    act.transfer(lump.heating, 0, 5e4);
    EXPECT_NEAR(s.value(lump.lump), 285.0, 1e-9);
  });
  toy::Recorder recorder;
  double carried = 0.0;
  recorder.each = [&](const Stretch& stretch) { carried = stretch.carried_at(stretch.end())[1]; };
  HouseRun run(lump.plan);
  run.add_observer(recorder);
  const auto result = run.go();
  const auto& amounts = result.state.amounts;
  EXPECT_NEAR(amounts[0] + amounts[1] + amounts[2], lump.plan.house.initial_amounts[0], 1e-9);
  EXPECT_NEAR(amounts[0] / 1e4 + kEnergyZeroK, 280.0 + 5.0 * std::exp(-3.0), 1e-4);
  EXPECT_NEAR(carried, 5e4, 1e-9);
}

TEST(Run, ATransferOverALimitFiresItsWatchEvenIfItDoesNotLast) {
  Lump lump(1_h, 280.0);
  std::vector<double> fired;
  lump.agent("hand", [&](const Situation&, const Trigger& t, Actions& act) {
    if (t.kind == Trigger::Kind::start) return act.wake(0, 600_s);
    act.transfer(lump.heating, 0, 5e4);
  });
  lump.agent("guard", [&](const Situation& s, const Trigger& t, Actions& act) {
    if (t.kind == Trigger::Kind::start) return act.arm(0, {lump.lump, 284.9999, Watch::Direction::rising});
    fired.push_back(seconds(s.now()));
  });
  HouseRun(lump.plan).go();
  EXPECT_THAT(fired, ElementsAre(600.001));
}

TEST(Run, ADeviceThatSwitchesWithoutEndIsAnErrorThatNamesIt) {
  Lump lump(1_h);
  // Both limits on one value: on at 289 or below, off at 289 or above.
  lump.agent("nervous heater", toy::Thermostat{lump.lump, lump.heat_w, 289.0, 289.0, 200.0});
  try {
    HouseRun(lump.plan).go();
    FAIL() << "chatter went unnoticed";
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::chatter);
    EXPECT_THAT(error.what(), HasSubstr("'nervous heater'"));
    EXPECT_THAT(error.what(), HasSubstr("60 s"));
  }
}

TEST(Run, AgentsThatKeepSettingEachOtherOffAreAnErrorToo) {
  Lump lump(1_h);
  for (const std::string name : {"this", "that"})
    lump.agent(name,
               [&](const Situation& s, const Trigger& t, Actions& act) {
                 if (t.kind == Trigger::Kind::start && name == "that") return;
                 act.set(lump.heat_w, s.value(lump.heat_w) + 1.0, kNoEvent);
               },
               {lump.heat_w});
  EXPECT_THROW(HouseRun(lump.plan).go(), UserError);
}

TEST(Run, MinimumTimesByWakesAreKept) {
  Lump lump(10_h);
  lump.agent("slow heater", [&](const Situation& s, const Trigger& t, Actions& act) {
    const bool on = s.value(lump.heat_w) > 0.0;
    const auto limit = on ? Watch::Direction::rising : Watch::Direction::falling;
    if (t.kind == Trigger::Kind::crossing) {
      act.set(lump.heat_w, on ? 0.0 : 200.0, act.log(EventKind::action, on ? "off" : "on"));
      return act.wake(0, s.now() + 5_min);
    }
    act.arm(0, {lump.lump, 289.0, limit});
  });
  HouseRun run(lump.plan);
  run.go();
  ASSERT_GT(run.log().size(), 30U);
  for (std::size_t i = 1; i < run.log().size(); ++i)
    EXPECT_EQ(run.log()[i].when - run.log()[i - 1].when, 5_min) << "one limit for both: always the minimum time";
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
