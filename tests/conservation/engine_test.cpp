// SPDX-License-Identifier: Apache-2.0
// What the engine conserves, whatever the laws: every exchange subtracts at one end what it adds at the other.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "sim/graph/balance.hpp"
#include "sim/run/run.hpp"
#include "tests/support/toy_junctions.hpp"
#include "tests/support/toy_run.hpp"

namespace noonhouse {
namespace {

using HouseRun = Run;  // inside a test, Run names the test's own
constexpr double kRelative = 1e-12;

/// Sum of one quantity over accounts and the nodes that store it.
double total(const House& house, const std::vector<double>& amounts, Quantity quantity) {
  double sum = 0.0;
  for (const auto& node : house.nodes)
    for (int k = 0; k < node.states; ++k)
      if (node.stores && node.counts[static_cast<std::size_t>(k)] == quantity)
        sum += amounts[static_cast<std::size_t>(node.first_state + k)];
  for (int a = 0; a < house.accounts; ++a)
    if (house.account_quantity[static_cast<std::size_t>(a)] == quantity)
      sum += amounts[static_cast<std::size_t>(house.states + a)];
  return sum;
}

/// All of one quantity that its fluxes moved: what rounding is relative to.
double throughput(const House& house, const std::vector<double>& carried, Quantity quantity) {
  double sum = 0.0;
  for (std::size_t j = 0; j < carried.size(); ++j)
    if (house.flux[j].quantity == quantity) sum += std::abs(carried[j]);
  return sum;
}

TEST(EngineConservation, AYearOfThousandsOfEventsKeepsEnergyWaterChargeAndAir) {
  const auto plan = toy::busy_plan(kDay * 365, toy::build_breathing);
  HouseRun run(plan);
  const auto result = run.go();
  EXPECT_GT(run.log().size(), 3'000U);
  const auto watered =
      std::count_if(run.log().begin(), run.log().end(), [](const auto& e) { return e.what == "watered"; });
  EXPECT_GT(watered, 100) << "water poured by hand is part of the sum";
  for (const Quantity quantity : {Quantity::energy, Quantity::water, Quantity::charge, Quantity::air}) {
    const double before = total(plan.house, plan.house.initial_amounts, quantity);
    const double moved = throughput(plan.house, result.state.carried, quantity);
    EXPECT_GT(moved, 1.5 * std::abs(before)) << "a year moves more than is there";
    EXPECT_NEAR(total(plan.house, result.state.amounts, quantity), before, kRelative * moved)
        << quantity_name(quantity);
  }
}

TEST(EngineConservation, EachAmountIsItsStartAndWhatItsFluxesCarried) {
  const auto plan = toy::busy_plan(kDay * 60);
  const auto result = HouseRun(plan).go();
  auto expected = plan.house.initial_amounts;
  std::vector<double> moved(expected.size(), 0.0);
  for (std::size_t j = 0; j < result.state.carried.size(); ++j) {
    const auto& flux = plan.house.flux[j];
    for (const int end : {flux.from, flux.to})
      moved[static_cast<std::size_t>(end)] += std::abs(result.state.carried[j]);
    expected[static_cast<std::size_t>(flux.from)] -= result.state.carried[j];
    expected[static_cast<std::size_t>(flux.to)] += result.state.carried[j];
  }
  for (std::size_t i = 0; i < expected.size(); ++i)
    EXPECT_NEAR(result.state.amounts[i], expected[i], kRelative * (moved[i] + std::abs(expected[i])));
}

TEST(EngineConservation, NothingIsStoredInJunctions) {
  const auto plan = toy::busy_plan(kDay * 20, toy::build_breathing);
  const auto result = HouseRun(plan).go();
  const auto audit = audit_balance(plan.house, plan.house.initial_amounts, result.state.amounts, result.state.carried);
  EXPECT_EQ(audit.total(Quantity::air).change, 0.0);
  EXPECT_GT(audit.total(Quantity::air).crossed, 1e3) << "tons of air went through";
  for (const Quantity quantity : {Quantity::energy, Quantity::water, Quantity::charge, Quantity::air})
    EXPECT_LT(audit.total(quantity).relative(), kRelative) << quantity_name(quantity);
  int junctions = 0, moved = 0;
  for (const auto& node : audit.nodes) {
    if (node.quantity != Quantity::air) continue;
    ++junctions;
    const auto state = static_cast<std::size_t>(plan.house.nodes[static_cast<std::size_t>(node.node)].first_state);
    if (result.state.amounts[state] != plan.house.initial_amounts[state]) ++moved;
    EXPECT_EQ(node.change, 0.0);
    EXPECT_LT(std::abs(node.inflow), 1e-10 * seconds(kDay * 20)) << "1e-10 kg/s counts as nothing";
  }
  EXPECT_EQ(junctions, 2);
  EXPECT_EQ(moved, 2) << "pressures are no amounts, but they do move";
}

}  // namespace
}  // namespace noonhouse
