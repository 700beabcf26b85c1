// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <atomic>

#include "tools/compare/plan_run.hpp"

namespace noonhouse {
namespace {

const Scenario& demo() {
  static const Scenario scenario =
      read_scenario(std::string(NOONHOUSE_SOURCE_DIR) + "/scenarios/heatwave/heatwave.yaml");
  return scenario;
}

/// Runs one plan; returns the error that ends it.
UserError error_of(const std::atomic<bool>& stop, const std::function<void(double)>& progress) {
  try {
    run_plans(demo(), {&demo().plans.front()}, 1, progress, &stop);
  } catch (const UserError& error) {
    return error;
  }
  return {ErrorKind::usage, "the run was not stopped"};
}

TEST(Interrupt, AFlagSetBeforehandStopsBeforeAnyRun) {
  const std::atomic<bool> stop{true};
  double share = 0.0;
  const UserError error = error_of(stop, [&](double s) { share = s; });
  EXPECT_EQ(error.exit_status(), 130) << error.what();
  EXPECT_EQ(share, 0.0);
}

TEST(Interrupt, AFlagSetWhileItRunsStopsTheRunUnderWay) {
  std::atomic<bool> stop{false};
  double share_at_stop = 0.0, last = 0.0;
  const UserError error = error_of(stop, [&](double share) {
    last = share;
    if (share <= 0.0 || stop) return;
    share_at_stop = share;
    stop = true;
  });
  EXPECT_EQ(error.kind(), ErrorKind::interrupted) << error.what();
  EXPECT_GT(share_at_stop, 0.0);
  EXPECT_LT(last, 0.9);
}

}  // namespace
}  // namespace noonhouse
