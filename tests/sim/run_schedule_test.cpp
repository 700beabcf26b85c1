// SPDX-License-Identifier: Apache-2.0
// Random schedules of timers against a brute-force list of what must happen when.
#include <gtest/gtest.h>

#include <algorithm>
#include <boost/random/mersenne_twister.hpp>
#include <boost/random/uniform_int_distribution.hpp>
#include <map>
#include <tuple>

#include "sim/run/run.hpp"
#include "tests/support/toy_run.hpp"

namespace noonhouse {
namespace {

using HouseRun = Run;  // inside a test, Run names the test's own

/// What one timer does when it rings: a wake of some slot after some time, or a cancellation.
struct Ring {
  int slot = 0;
  std::int64_t after_ms = 0;
  bool cancel = false;
};
/// Per agent: what it does at its start and at each ring in turn.
using Script = std::vector<std::vector<Ring>>;
struct Schedule {
  std::vector<Script> agents;
  std::vector<bool> decides;
  Tick length;
};
/// When, which agent, which slot.
using Heard = std::vector<std::tuple<std::int64_t, std::size_t, int>>;

Schedule random_schedule(boost::random::mt19937_64& random) {
  const auto draw = [&](int below) { return boost::random::uniform_int_distribution<int>(0, below - 1)(random); };
  Schedule schedule;
  schedule.length = Tick{1 + draw(200'000)};
  const int grain = draw(2) == 0 ? 1 : 5'000;  // coarse times bring many rings to one instant
  for (int agents = 1 + draw(4); agents > 0; --agents) {
    Script script;
    for (int rings = 2 + draw(12); rings > 0; --rings) {
      std::vector<Ring> actions;
      for (int n = draw(4); n > 0; --n)
        actions.push_back({draw(3), std::int64_t{draw(60'000 / grain)} * grain, draw(6) == 0});
      script.push_back(actions);
    }
    schedule.agents.push_back(script);
    schedule.decides.push_back(draw(3) == 0);
  }
  return schedule;
}

/// The oracle: a plain list searched from end to end for the least (instant, phase, order of booking).
Heard expected(const Schedule& schedule) {
  struct Entry {
    std::int64_t when;
    int phase;
    int booked;
    std::size_t agent;
    int slot;
  };
  std::vector<Entry> list;
  std::vector<std::size_t> turn(schedule.agents.size(), 0);
  int booked = 0;
  const auto phase = [&](std::size_t agent) { return schedule.decides[agent] ? 0 : 1; };
  for (std::size_t a = 0; a < schedule.agents.size(); ++a) list.push_back({0, phase(a), booked++, a, -1});
  Heard out;
  while (!list.empty()) {
    const auto next = std::min_element(list.begin(), list.end(), [](const Entry& x, const Entry& y) {
      return std::tie(x.when, x.phase, x.booked) < std::tie(y.when, y.phase, y.booked);
    });
    const Entry due = *next;
    if (due.when > schedule.length.ms) break;
    list.erase(next);
    if (due.slot >= 0) out.emplace_back(due.when, due.agent, due.slot);
    const Script& script = schedule.agents[due.agent];
    if (turn[due.agent] >= script.size()) continue;
    for (const Ring& ring : script[turn[due.agent]++]) {
      std::erase_if(list, [&](const Entry& e) { return e.agent == due.agent && e.slot == ring.slot; });
      if (!ring.cancel) list.push_back({due.when + ring.after_ms, phase(due.agent), booked++, due.agent, ring.slot});
    }
  }
  return out;
}

Heard heard(const Schedule& schedule) {
  HouseGraph graph;
  const auto lump = graph.node("lump", ThermalMass{1e4}, {290.0}, {1.0});
  const auto out = graph.account("out", Quantity::energy);
  graph.exchange("loss", "x", toy::Decay<Quantity::energy>{1e-4}, {lump}, {{{lump, out}}});
  RunPlan plan;
  plan.house = graph.compile();
  plan.forcing =
      std::make_unique<toy::LineForcing>(1_min, std::vector<std::pair<ChannelId, toy::LineForcing::Signal>>{});
  plan.length = schedule.length;
  Heard result;
  for (std::size_t a = 0; a < schedule.agents.size(); ++a) {
    std::size_t turn = 0;
    auto react = [&, a, turn](const Situation& s, const Trigger& t, Actions& act) mutable {
      if (t.kind == Trigger::Kind::wake) result.emplace_back(s.now().ms, a, t.slot);
      if (turn >= schedule.agents[a].size()) return;
      for (const Ring& ring : schedule.agents[a][turn++])
        act.wake(ring.slot, ring.cancel ? kNever : s.now() + Tick{ring.after_ms});
    };
    plan.agents.push_back(toy::scripted("agent " + std::to_string(a), react, {}, schedule.decides[a]));
  }
  HouseRun(plan).go();
  return result;
}

TEST(Schedules, EveryTimerRingsAtItsInstantInOrderAndNoneTwice) {
  boost::random::mt19937_64 random(2024);
  std::size_t rings = 0, shared = 0;
  for (int round = 0; round < 2'000; ++round) {
    const Schedule schedule = random_schedule(random);
    const Heard wanted = expected(schedule);
    ASSERT_EQ(heard(schedule), wanted) << "round " << round;
    rings += wanted.size();
    for (std::size_t i = 1; i < wanted.size(); ++i) shared += std::get<0>(wanted[i]) == std::get<0>(wanted[i - 1]);
  }
  EXPECT_GT(rings, 5'000U);
  EXPECT_GT(shared, 300U) << "many instants are shared, or the order was never tried";
}

}  // namespace
}  // namespace noonhouse
