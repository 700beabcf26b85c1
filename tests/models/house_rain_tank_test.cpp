// SPDX-License-Identifier: Apache-2.0
// A rain tank in the engine's own run against the rules that reckon it by whole days.
#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "models/water/drip.hpp"
#include "models/water/gutter.hpp"
#include "models/water/storage_rule.hpp"
#include "models/water/tank_guard.hpp"
#include "models/water/wet_mass.hpp"
#include "models/water/wet_surface.hpp"
#include "sim/run/run.hpp"
#include "tests/support/agent_stage.hpp"

namespace noonhouse {
namespace {

using Series = std::vector<double>;

/// What a pump draws [kg/s] while it may. Inputs: rate, permit, temperature.
struct PermittedDraw {
  static constexpr std::string_view kName = "draw";
  static constexpr int kInputs = 3, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::water, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 3>& in, std::array<S, 2>& q) const {
    q[0] = in[0] * in[1];
    q[1] = q[0] * liquid_enthalpy(in[2]);
  }
};

/// When in its day an amount comes or goes, from one instant to another.
struct PartOfDay {
  Tick from{0}, until = kDay;
};

/// A rate that brings each day's amount within its part of the day.
Points spread(const Series& daily_kg, const PartOfDay& part) {
  Points out{{0_s, 0.0}};
  const double length_s = seconds(part.until - part.from);
  for (std::size_t i = 0; i < daily_kg.size(); ++i) {
    const Tick day = kDay * static_cast<std::int64_t>(i);
    const double rate = daily_kg[i] / length_s;
    for (const auto& [when, value] : {std::pair{day + part.from, 0.0}, std::pair{day + part.from, rate},
                                      std::pair{day + part.until, rate}, std::pair{day + part.until, 0.0}})
      out.emplace_back(when, value);
  }
  return out;
}

RunResult outcome_of(const RunPlan& plan) {
  Run run(plan);
  return run.go();
}

double amount_at(const RunPlan& plan, const RunResult& result, const End& end) {
  return result.state.amounts[static_cast<std::size_t>(plan.house.position(end))];
}

struct RainTank {
  double supplied_kg = 0.0, spilled_kg = 0.0, left_kg = 0.0;
};

constexpr double kRestartKg = 0.1;

/// Runs a tank with what flows in, what is asked of it, an overflow that lets nothing stand above its brim, and a guard
/// that cuts the pump out when it is empty.
RainTank run_tank(double capacity_kg, double start_kg, const Series& inflow, PartOfDay rains, const Series& demand,
                  PartOfDay draws) {
  HouseGraph graph;
  const NodeId tank = graph.node("tank", WetMass{1e4}, {290.0, start_kg}, {0.01, 1e-3});
  const NodeId supplied = graph.node("supplied", WaterBucket{}, {0.0}, {1e-3});
  const NodeId spilled = graph.node("spilled", WaterBucket{}, {0.0}, {1e-3});
  const AccountId rain = graph.account("rain", Quantity::water), heat = graph.account("heat", Quantity::energy);
  const ChannelId in = graph.channel("inflow", "kg/s", 0.0), in_heat = graph.channel("its heat", "W", 0.0);
  const ChannelId out = graph.channel("demand", "kg/s", 0.0);
  graph.exchange("rain", "rain", GivenWater{}, {in, in_heat}, {{{rain, End(tank, 1)}, {heat, tank}}});
  const ChannelId permit = graph.channel("permit", "1", 1.0), raining = graph.channel("raining", "1", 0.0);
  graph.exchange("draw", "pump", PermittedDraw{}, {out, permit, tank}, {{{End(tank, 1), supplied}, {tank, heat}}});
  graph.exchange("overflow", "overflow", Runoff{capacity_kg, 2.0}, {tank, Input(tank, 1)},
                 {{{End(tank, 1), spilled}, {tank, heat}}});
  RunPlan plan;
  plan.house = graph.compile();
  auto forcing = std::make_unique<PolylineForcing>();
  forcing->add(in, spread(inflow, rains));
  forcing->add(out, spread(demand, draws));
  plan.forcing = std::move(forcing);
  plan.length = kDay * static_cast<std::int64_t>(inflow.size());
  plan.agents.push_back(std::make_unique<PlanOf<TankGuard>>(
      TankGuard::Parameters{"tank", Input(tank, 1), 0.0, kRestartKg, permit, raining}));
  const RunResult result = outcome_of(plan);
  const auto amount = [&](const End& end) { return amount_at(plan, result, end); };
  return {amount(supplied), amount(spilled), amount(End(tank, 1))};
}

Series drawn(std::mt19937& engine, std::size_t n, double most, double dry_share) {
  Series out;
  const auto unit = [&] { return static_cast<double>(engine()) / 4294967296.0; };
  for (std::size_t i = 0; i < n; ++i) {
    const bool dry = unit() < dry_share;
    out.push_back(dry ? 0.0 : most * unit());
  }
  return out;
}

double sum(const Series& all) {
  double out = 0.0;
  for (double x : all) out += x;
  return out;
}

/// Series of 20 days with showers up to four fifths of a tank and demands up to half of one.
struct Wet {
  double capacity_kg, start_kg;
  Series inflow, demand;
  explicit Wet(unsigned seed) {
    std::mt19937 engine(seed);
    capacity_kg = 300.0 + 100.0 * seed;
    start_kg = 0.4 * capacity_kg;
    inflow = drawn(engine, 20, 0.8 * capacity_kg, 0.4);
    demand = drawn(engine, 20, 0.5 * capacity_kg, 0.1);
  }
};

/// Each day the tank may keep back what the guard waits for, and what the overflow has not let out yet: its 2 s at the
/// rates of these series, less than 0.1 kg.
constexpr double kPerDay = kRestartKg + 0.1, kTwentyDays = 20 * kPerDay;

TEST(RainTank, SuppliesWithinWhatBothRulesSay) {
  const PartOfDay night{0_h, 6_h}, noon{10_h, 16_h}, all_day{};
  for (unsigned seed = 1; seed <= 4; ++seed)
    for (const auto& [rains, draws] : {std::pair{night, noon}, std::pair{noon, night}, std::pair{night, all_day}}) {
      const Wet w(seed);
      const auto tank = run_tank(w.capacity_kg, w.start_kg, w.inflow, rains, w.demand, draws);
      const double most = total_yield_kg(yield_before_spillage(w.capacity_kg, w.start_kg, w.inflow, w.demand));
      const double least = total_yield_kg(yield_after_spillage(w.capacity_kg, w.start_kg, w.inflow, w.demand));
      EXPECT_GT(most, least + 2.0 * kTwentyDays) << "rules that differ";
      EXPECT_LE(tank.supplied_kg, most + kTwentyDays) << seed;
      EXPECT_GE(tank.supplied_kg, least - kTwentyDays) << seed;
      EXPECT_NEAR(w.start_kg + sum(w.inflow), tank.supplied_kg + tank.spilled_kg + tank.left_kg, 1e-6);
    }
}

// Where both rates hold all day the content goes one way all day, so the tank does exactly what yield before spillage
// says: it empties only if the demand beats content and inflow, and spills only what does not fit at the day's end.
TEST(RainTank, IsYieldBeforeSpillageWhenRatesHoldAllDay) {
  for (unsigned seed = 1; seed <= 4; ++seed) {
    const Wet w(seed);
    const auto tank = run_tank(w.capacity_kg, w.start_kg, w.inflow, {}, w.demand, {});
    const auto days = yield_before_spillage(w.capacity_kg, w.start_kg, w.inflow, w.demand);
    EXPECT_NEAR(tank.supplied_kg, total_yield_kg(days), kTwentyDays) << seed;
    EXPECT_NEAR(tank.left_kg, days.back().level_kg, kPerDay) << seed;
  }
}

// A storm of 12 mm in an hour on 24 m2 of tiles, with a chamber of 5 kg that drains in four hours.
TEST(RainTank, TakesAStormThroughGutterAndFirstFlush) {
  const Gutter gutter{24.0, 0.80, 0.90, 0.8, 5.0};
  HouseGraph graph;
  const NodeId tank = graph.node("tank", WetMass{1e4}, {290.0, 50.0}, {0.01, 0.01});
  const NodeId chamber = graph.node("chamber", WaterBucket{}, {0.0}, {1e-3});
  const NodeId lost = graph.node("lost", WaterBucket{}, {0.0}, {1e-3});
  const NodeId drained = graph.node("drained", WaterBucket{}, {0.0}, {1e-3});
  const AccountId rain = graph.account("rain", Quantity::water), heat = graph.account("heat of rain", Quantity::energy);
  const AccountId ground = graph.account("ground", Quantity::energy);
  const ChannelId falls = graph.channel("rain", "kg/(m2 s)", 0.0), out_k = graph.channel("outdoors", "K", 285.0);
  graph.exchange("roof", "rain", gutter, {falls, out_k, chamber},
                 {{{rain, End(tank, 1)}, {heat, tank}, {rain, chamber}, {heat, ground}, {rain, lost}, {heat, ground}}});
  graph.exchange("drip", "drip", FlushDrain{}, {chamber}, {{{chamber, drained}}});
  RunPlan plan;
  plan.house = graph.compile();
  auto forcing = std::make_unique<PolylineForcing>();
  forcing->add(falls, {{0_h, 0.0}, {1_h, 0.0}, {1_h, 12.0 / 3600.0}, {2_h, 12.0 / 3600.0}, {2_h, 0.0}});
  plan.forcing = std::move(forcing);
  plan.length = kDay;
  const RunResult result = outcome_of(plan);
  const auto amount = [&](const End& end) { return amount_at(plan, result, end); };
  const double fallen = 24.0 * 0.80 * 12.0, gained = amount(End(tank, 1)) - 50.0;
  EXPECT_NEAR(gained + amount(chamber) + amount(lost) + amount(drained), fallen, 1e-9);
  // The chamber takes its 5 kg, and in the hour what drips away meanwhile: a quarter of it at the most.
  const double flushed = amount(chamber) + amount(drained);
  EXPECT_GT(flushed, 4.5);
  EXPECT_LT(flushed, 5.0 + 5.0 * 0.25);
  EXPECT_NEAR(gained, 0.90 * (fallen - flushed), 1e-6);
  EXPECT_LT(amount(chamber), 0.05) << "empty again at the day's end";
}

}  // namespace
}  // namespace noonhouse
