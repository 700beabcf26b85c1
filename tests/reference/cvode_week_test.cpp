// SPDX-License-Identifier: Apache-2.0
// The project's own method against an independent one, over whole weeks of the synthetic house.
#include <gtest/gtest.h>

#include <cmath>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "tests/support/cross_check.hpp"
#include "tests/support/synthetic_house.hpp"

namespace noonhouse {
namespace {

/// One week with its reference, made once for all tests that look at it.
struct Week {
  RunPlan plan;
  Tick interval;
  MarkedRun reference;
  Week(bool thermostats, Tick marks)
      : plan(synthetic::make_plan({.thermostats = thermostats})),
        interval(marks),
        reference(run_reference(plan, marks)) {}
  static Week& free() {
    static Week week(false, 1_h);
    return week;
  }
  static Week& switched() {
    static Week week(true, 15_min);
    return week;
  }
};

TEST(CvodeWeek, WithoutEventsEveryNodeAgreesAtEveryHour) {
  Week& week = Week::free();
  const MarkedRun own = run_own(week.plan, week.interval, 1.0);
  ASSERT_EQ(own.result.events, 0);
  ASSERT_EQ(own.marks.marks(), 7U * 24U + 1U);
  expect_marks_near(week.plan.house, own.marks, week.reference.marks, 0.02);
}

TEST(CvodeWeek, WithoutEventsBothMethodsConvergeToTheSameSolution) {
  Week& week = Week::free();
  const auto worst = [&](double tolerance) {
    const MarkedRun own = run_own(week.plan, week.interval, tolerance);
    return temperature_differences(week.plan.house, own.marks, week.reference.marks).back();
  };
  const double tight = worst(1e-3);
  EXPECT_LT(tight, 1e-4);
  EXPECT_GT(worst(1.0), 10.0 * tight);
}

TEST(CvodeWeek, WithoutEventsEveryFluxCarriesTheSame) {
  Week& week = Week::free();
  const MarkedRun own = run_own(week.plan, week.interval, 1e-2);
  const House& house = week.plan.house;
  for (std::size_t j = 0; j < own.result.state.carried.size(); ++j) {
    const double expected = week.reference.result.state.carried[j];
    // One part in a hundred thousand of what moves in a week, and a floor for fluxes that come and go.
    const double floor = house.flux[j].quantity == Quantity::water ? 1e-4 : 1e3;
    EXPECT_NEAR(own.result.state.carried[j], expected, 1e-5 * std::abs(expected) + floor)
        << house.exchanges[static_cast<std::size_t>(house.flux[j].exchange)].name;
  }
}

TEST(CvodeWeek, WithThermostatsTheFirstTwentyEventsFallWithinASecond) {
  Week& week = Week::switched();
  const double a_day = static_cast<double>(week.reference.result.events) / 7.0;
  ASSERT_GT(a_day, 30.0);
  ASSERT_LT(a_day, 60.0);
  const MarkedRun own = run_own(week.plan, week.interval, 0.1);
  EXPECT_LT(worst_event_s(own.marks, week.reference.marks, 20), 1.0);
  EXPECT_EQ(own.result.events, week.reference.result.events);
}

/// What the thermometer of the bay named in an event reads at that instant, which is the end of a stretch.
class ReadingAtEvents final : public Observer {
 public:
  explicit ReadingAtEvents(const House& house) : house_(&house) {}
  void see_start(const Stretch& stretch) override { see_stretch(stretch); }
  void see_stretch(const Stretch& stretch) override {
    const auto now = stretch.potentials_at(stretch.end());
    potentials_.assign(now.begin(), now.end());
  }
  void see_event(const LogEntry& entry) override {
    const bool south = entry.subject.find("south") != std::string::npos;
    const auto node = house_->find_node(south ? "south thermometer" : "north thermometer");
    readings_.emplace_back(entry.what, potentials_.at(static_cast<std::size_t>(house_->position(Input(*node)))));
  }
  std::vector<std::pair<std::string, double>> readings() const { return readings_; }

 private:
  const House* house_;
  std::vector<double> potentials_;
  std::vector<std::pair<std::string, double>> readings_;
};

std::vector<std::pair<std::string, double>> readings_at_events(const RunPlan& plan) {
  ReadingAtEvents observer(plan.house);
  Run run(plan);
  run.add_observer(observer);
  run.go();
  return observer.readings();
}

// Both methods' runs share the search for crossings, so that their agreement cannot speak for it: this can.
TEST(CvodeWeek, AtEveryEventTheThermometerStandsOnItsLimit) {
  const synthetic::Options options;
  for (const bool independent : {false, true}) {
    RunPlan plan = synthetic::make_plan(options);
    if (independent)
      plan.method = [](const House& house) { return std::make_unique<CvodeMethod>(house, CvodeSettings{}); };
    const auto readings = readings_at_events(plan);
    ASSERT_GT(readings.size(), 200U);
    // Width of the search (10 ms) times the fastest reading (below 0.01 K/s).
    for (const auto& [what, reading] : readings) {
      const double past = what == "on" ? reading - options.on_above_k : options.off_below_k - reading;
      EXPECT_GE(past, 0.0);
      EXPECT_LT(past, 1e-4);
    }
  }
}

TEST(CvodeWeek, WithThermostatsEventTimesImproveWithTheTolerance) {
  Week& week = Week::switched();
  const auto worst = [&](double tolerance) {
    return worst_event_s(run_own(week.plan, week.interval, tolerance).marks, week.reference.marks, 20);
  };
  EXPECT_LT(worst(0.01), 0.3 * worst(1.0));
}

TEST(CvodeWeek, WithThermostatsTheDailyMeansAgreeInEveryNode) {
  Week& week = Week::switched();
  const MarkedRun own = run_own(week.plan, week.interval, 1.0);
  expect_daily_means_near(week.plan.house, own.marks, week.reference.marks, 0.1);
}

}  // namespace
}  // namespace noonhouse
