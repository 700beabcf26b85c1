// SPDX-License-Identifier: Apache-2.0
// What the engine conserves, whatever the laws: every exchange subtracts at one end what it adds at the other.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "sim/run/run.hpp"
#include "tests/support/toy_run.hpp"

namespace noonhouse {
namespace {

using HouseRun = Run;  // inside a test, Run names the test's own
constexpr double kRelative = 1e-12;

/// Sum of one quantity over nodes and accounts.
double total(const House& house, const std::vector<double>& amounts, Quantity quantity) {
  double sum = 0.0;
  for (const auto& node : house.nodes)
    for (int k = 0; k < node.states; ++k)
      if (node.counts[static_cast<std::size_t>(k)] == quantity)
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

TEST(EngineConservation, AYearOfThousandsOfEventsKeepsEnergyWaterAndCharge) {
  const auto plan = toy::busy_plan(kDay * 365);
  HouseRun run(plan);
  const auto result = run.go();
  EXPECT_GT(run.log().size(), 3'000U);
  const auto watered =
      std::count_if(run.log().begin(), run.log().end(), [](const auto& e) { return e.what == "watered"; });
  EXPECT_GT(watered, 100) << "water poured by hand is part of the sum";
  for (const Quantity quantity : {Quantity::energy, Quantity::water, Quantity::charge}) {
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

}  // namespace
}  // namespace noonhouse
