// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <memory>

#include "tests/support/cvode_method.hpp"
#include "tests/support/run_marks.hpp"

/// Whole runs of the project's own method beside an independent one: the same house, agents and loop, and nothing
/// in common in the stepping. The reference runs at a relative tolerance of 1e-9.
namespace noonhouse {

inline MarkedRun run_reference(RunPlan& plan, Tick interval) {
  plan.method = [](const House& house) { return std::make_unique<CvodeMethod>(house, CvodeSettings::reference()); };
  MarkedRun out = run_with_marks(plan, interval);
  plan.method = {};
  return out;
}

inline MarkedRun run_own(RunPlan& plan, Tick interval, double tolerance) {
  plan.method = {};
  plan.steps.tolerance = tolerance;
  return run_with_marks(plan, interval);
}

/// Largest difference [s] between the first `count` events of two runs, which must be the same events.
inline double worst_event_s(const RunMarks& a, const RunMarks& b, std::size_t count) {
  double worst = 0.0;
  for (std::size_t i = 0; i < count; ++i) {
    EXPECT_EQ(a.labels().at(i), b.labels().at(i)) << "event " << i;
    worst = std::max(worst, std::abs(seconds(a.events().at(i)) - seconds(b.events().at(i))));
  }
  return worst;
}

/// Every node's temperature within a tolerance [K] at every mark.
inline void expect_marks_near(const House& house, const RunMarks& own, const RunMarks& reference, double tolerance_k) {
  ASSERT_EQ(own.marks(), reference.marks());
  for (std::size_t mark = 0; mark < own.marks(); ++mark)
    for (int state : temperature_states(house))
      ASSERT_NEAR(own.value(mark, state), reference.value(mark, state), tolerance_k)
          << house.state_names[static_cast<std::size_t>(state)] << " at mark " << mark;
}

/// Every node's mean temperature of every whole day within a tolerance [K], of runs with marks every 15 minutes.
inline void expect_daily_means_near(const House& house, const RunMarks& own, const RunMarks& reference,
                                    double tolerance_k) {
  constexpr std::size_t kADay = 96;
  ASSERT_EQ(own.marks(), reference.marks());
  ASSERT_GT(own.marks(), kADay);
  for (std::size_t begin = 0; begin + kADay < own.marks(); begin += kADay)
    for (int state : temperature_states(house))
      EXPECT_NEAR(own.mean(state, begin, begin + kADay), reference.mean(state, begin, begin + kADay), tolerance_k)
          << house.state_names[static_cast<std::size_t>(state)] << " on day " << begin / kADay;
}

}  // namespace noonhouse
