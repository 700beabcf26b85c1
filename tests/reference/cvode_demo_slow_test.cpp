// SPDX-License-Identifier: Apache-2.0
// The project's own method against an independent one, over the week of the demonstration scenario, with all models.
#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "tests/support/cross_check.hpp"
#include "tests/support/demo_plan.hpp"

namespace noonhouse {
namespace {

class CvodeDemo : public ::testing::TestWithParam<std::string> {};
INSTANTIATE_TEST_SUITE_P(Plans, CvodeDemo,
                         ::testing::Values("all shut", "vents and fan", "mist alone", "vents, mist and shade"),
                         [](const auto& plan) { return "plan" + std::to_string(plan.index); });

/// A plant's tissue may creep over its limit by millikelvins a minute: its instant asks for more than a state does.
constexpr double kEventTolerance = 0.05;

TEST_P(CvodeDemo, WithoutAgentsEveryNodeAgreesAtEveryHour) {
  RunPlan plan = demo_plan(GetParam());
  plan.agents.clear();
  const MarkedRun reference = run_reference(plan, 1_h), own = run_own(plan, 1_h, plan.steps.tolerance);
  ASSERT_EQ(own.marks.marks(), 7U * 24U + 1U);
  // 0.02 K, and 0.005 K more for a cover on which dew begins within a step: the method's stages do not see it before
  // the step's end, so dew falls up to a step late (found: 0.024 K at one hour on one facet; gone at a third of the
  // tolerance).
  expect_marks_near(plan.house, own.marks, reference.marks, 0.025);
}

TEST_P(CvodeDemo, WithAgentsTheFirstTwentyEventsFallWithinASecondAndTheDailyMeansAgree) {
  RunPlan plan = demo_plan(GetParam());
  const MarkedRun reference = run_reference(plan, 15_min), own = run_own(plan, 15_min, kEventTolerance);
  const std::size_t events = std::min(reference.marks.events().size(), std::size_t{20});
  ASSERT_GE(own.marks.events().size(), events);
  EXPECT_LT(worst_event_s(own.marks, reference.marks, events), 1.0);
  expect_daily_means_near(plan.house, own.marks, reference.marks, 0.1);
}

}  // namespace
}  // namespace noonhouse
