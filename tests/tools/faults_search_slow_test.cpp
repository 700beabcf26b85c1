// SPDX-License-Identifier: Apache-2.0
// The time left after a failure, as branches of one run find it, against whole runs with that failure put in by the
// scenario, minute by minute.
#include <gtest/gtest.h>

#include <cmath>

#include "tests/support/small_faults.hpp"
#include "tools/compare/in_parallel.hpp"
#include "tools/faults/fault_search.hpp"

namespace noonhouse {
namespace {

/// When a whole run with the failure in it first comes to harm that the sound run has not; kNever if it does not.
Tick harm_by_whole_run(const FaultBranches& sound, const std::string& what, const std::string& of, Tick when) {
  const Scenario scenario = small_faults::failing(what, of, seconds(when));
  const PlanScenario& plan = scenario.plans.front();
  const WeatherSeries weather = weather_of(scenario, plan);
  const Assembly assembly = assemble(plan, site_table(plan, weather), weather, true);
  Run run(assembly.plan);
  run.go();
  for (const LogEntry& entry : run.log())
    if (entry.when >= when && sound.is_new_harm(entry)) return entry.when;
  return kNever;
}

struct SmallHouse {
  Scenario scenario = small_faults::read();
  const PlanScenario& plan = scenario.plans.front();
  WeatherSeries weather = weather_of(scenario, plan);
  Assembly assembly = assemble(plan, site_table(plan, weather), weather, true);
  FaultBranches branches{assembly, nullptr};    ///< as the search has them
  FaultBranches exact{assembly, nullptr, 1.0};  ///< with the run's own tolerance
  const FaultPoint& point(FailureKind what, const std::string& of) const {
    for (const FaultPoint& p : assembly.fault_points)
      if (p.what == what && p.of == of) return p;
    throw std::logic_error("no such failure");
  }
};

const SmallHouse& small_house() {
  static const SmallHouse house;
  return house;
}

struct Tried {
  FailureKind what;
  const char *words, *of;
};

/// Times left by both ways at each minute of [from, until) [min]; NaN for none.
void expect_same_minute_by_minute(const Tried& failure, Tick from, Tick until) {
  const SmallHouse& house = small_house();
  const auto minutes = static_cast<std::size_t>((until - from).ms / (1_min).ms);
  std::vector<Tick> branched(minutes), exact(minutes), whole(minutes);
  in_parallel(minutes, 2, [&](std::size_t i) {
    const Tick when = from + 1_min * static_cast<std::int64_t>(i);
    branched[i] = house.branches.first_harm(house.point(failure.what, failure.of), when, house.branches.length()).when;
    exact[i] = house.exact.first_harm(house.point(failure.what, failure.of), when, house.exact.length()).when;
    whole[i] = harm_by_whole_run(house.branches, failure.words, failure.of, when);
  });
  int harms = 0;
  for (std::size_t i = 0; i < minutes; ++i) {
    EXPECT_EQ(branched[i] == kNever, whole[i] == kNever) << failure.words << " minute " << i;
    if (branched[i] == kNever || whole[i] == kNever) continue;
    ++harms;
    EXPECT_NEAR(seconds(exact[i]), seconds(whole[i]), 60.0) << failure.words << " minute " << i;
    EXPECT_NEAR(seconds(branched[i]), seconds(whole[i]), 180.0) << failure.words << " minute " << i;
  }
  EXPECT_GT(harms, 0) << "nothing was compared";
}

TEST(FaultGrace, OfADeadMistLineIsThatOfWholeRuns) {
  expect_same_minute_by_minute({FailureKind::stuck_off, "stuck off", "mist"}, 11_h, 13_h);
}

TEST(FaultGrace, OfAVentStuckShutIsThatOfWholeRuns) {
  expect_same_minute_by_minute({FailureKind::stuck_off, "stuck off", "vent"}, 10_h, 11_h);
}

TEST(FaultGrace, OfAThermometerThatReadsLowIsThatOfWholeRuns) {
  expect_same_minute_by_minute({FailureKind::reads_low, "reads low", "thermometer"}, 12_h, 13_h);
}

TEST(FaultGrace, OfAFailureBeforeItBitesIsCountedFromTheFailure) {
  const SmallHouse& house = small_house();
  const FaultPoint& dead = house.point(FailureKind::stuck_off, "mist");
  const Tick bites = house.branches.bites_at(dead, 3_h);
  EXPECT_GT(bites, 6_h) << "the mist is not called for by night";
  EXPECT_EQ(house.branches.bites_at(dead, 4_h), bites);
  const Tick early = house.branches.first_harm(dead, 3_h, house.branches.length()).when;
  const Tick late = house.branches.first_harm(dead, bites - 2_min, house.branches.length()).when;
  ASSERT_NE(early, kNever);
  EXPECT_NEAR(seconds(early), seconds(late), 60.0);
}

TEST(FaultSearchFull, FindsTheWorstMomentThatAScanByMinutesFinds) {
  const SmallHouse& house = small_house();
  FaultSearch how;
  how.threads = 2;
  const FaultSheet sheet = search_faults(house.scenario, house.plan, house.weather, how);
  const auto found = std::find_if(sheet.faults.begin(), sheet.faults.end(),
                                  [](const FaultOutcome& f) { return f.of == "mist" && f.words == "is stuck off"; });
  ASSERT_NE(found, sheet.faults.end());
  ASSERT_TRUE(found->harms);
  const FaultPoint& dead = house.point(FailureKind::stuck_off, "mist");
  std::vector<double> grace(24 * 60, std::nan(""));
  in_parallel(grace.size(), 2, [&](std::size_t i) {
    const Tick when = 1_min * static_cast<std::int64_t>(i);
    const Tick harm = house.branches.first_harm(dead, when, house.branches.length()).when;
    if (harm != kNever) grace[i] = seconds(harm - when);
  });
  double least = 1e18;
  for (const double g : grace)
    if (g < least) least = g;
  EXPECT_GE(found->worst_grace_s, least - 60.0);
  EXPECT_LE(found->worst_grace_s, least + 600.0) << "the search looks at every tenth minute around its worst hour";
}

/// Two days, the first hotter: the hours told are those of the day asked for, and the worst moment is no worse known.
TEST(FaultSearchFull, TellsTheHoursOfTheDayAskedFor) {
  std::string text = small_faults::kText;
  const auto put = [&](const std::string& from, const std::string& to) {
    text.replace(text.find(from), from.size(), to);
  };
  put("length: 1 d", "length: 2 d");
  put("last_day_high: 39 degC", "last_day_high: 38 degC");
  const Scenario scenario = read_scenario_text(text, "small_faults.yaml");
  const PlanScenario& plan = scenario.plans.front();
  const WeatherSeries weather = weather_of(scenario, plan);
  FaultSearch how;
  how.threads = 2;
  const FaultSheet usual = search_faults(scenario, plan, weather, how);
  how.told_day = kDay;
  const FaultSheet asked = search_faults(scenario, plan, weather, how);
  EXPECT_EQ(usual.told_day_s, 0.0);
  EXPECT_EQ(asked.hottest_day_s, 0.0);
  EXPECT_EQ(asked.told_day_s, 86400.0);
  const Assembly assembly = assemble(plan, site_table(plan, weather), weather, true);
  const FaultBranches branches(assembly, nullptr);
  const auto of = [](const FaultSheet& sheet) -> const FaultOutcome& {
    return *std::find_if(sheet.faults.begin(), sheet.faults.end(),
                         [](const FaultOutcome& f) { return f.of == "mist" && f.words == "is stuck off"; });
  };
  const auto dead = std::find_if(assembly.fault_points.begin(), assembly.fault_points.end(), [](const FaultPoint& p) {
    return p.of == "mist" && p.what == FailureKind::stuck_off;
  });
  for (const auto& [sheet, day] : {std::pair(&usual, Tick{0}), std::pair(&asked, kDay)})
    for (const int hour : {8, 9}) {
      const Tick when = day + 1_h * hour, at = std::max(when, branches.bites_at(*dead, when) - 2_min);
      const Tick harm = branches.first_harm(*dead, at, branches.length()).when;
      ASSERT_NE(harm, kNever) << "nothing was compared";
      EXPECT_EQ(of(*sheet).grace_by_hour_s[static_cast<std::size_t>(hour)], seconds(harm - when)) << hour;
    }
  EXPECT_LE(of(asked).worst_grace_s, of(usual).worst_grace_s);
}

/// One control more, which never calls, adds its reboots to the search and nothing else.
TEST(FaultSearchFull, TriesAControlThatRebootsAtEveryHour) {
  std::string text = small_faults::kText;
  const std::string after = "drives: [mist] }\n";
  text.insert(text.find(after) + after.size(),
              "  idle control: { sensor: thermometer, starts_at: 70 degC, stops_at: 68 degC, drives: [vent] }\n");
  const Scenario more = read_scenario_text(text, "small_faults.yaml");
  const SmallHouse& house = small_house();
  FaultSearch how;
  how.threads = 2;
  const FaultSheet without = search_faults(house.scenario, house.plan, house.weather, how);
  const FaultSheet with = search_faults(more, more.plans.front(), weather_of(more, more.plans.front()), how);
  EXPECT_EQ(with.faults.size(), without.faults.size() + 1);
  EXPECT_EQ(with.runs - without.runs, 24);
  std::size_t additions = 0;
  for (const FaultOutcome& fault : without.faults)
    for (const FaultAddition& addition : fault.additions) {
      EXPECT_EQ(addition.followed_s, 86400.0 - fault.worst_s) << addition.name << ": to the end of the day";
      ++additions;
    }
  EXPECT_GT(additions, 0U) << "nothing was looked at";
}

TEST(FaultSearchFull, IsTheSameOnAnyNumberOfThreads) {
  const SmallHouse& house = small_house();
  FaultSearch one, two;
  two.threads = 2;
  const FaultSheet a = search_faults(house.scenario, house.plan, house.weather, one);
  const FaultSheet b = search_faults(house.scenario, house.plan, house.weather, two);
  ASSERT_EQ(a.faults.size(), b.faults.size());
  for (std::size_t i = 0; i < a.faults.size(); ++i) {
    EXPECT_EQ(a.faults[i].of, b.faults[i].of);
    EXPECT_EQ(a.faults[i].words, b.faults[i].words);
    EXPECT_EQ(std::isnan(a.faults[i].worst_s), std::isnan(b.faults[i].worst_s));
    if (a.faults[i].harms) {
      EXPECT_EQ(a.faults[i].worst_grace_s, b.faults[i].worst_grace_s);
    }
    EXPECT_EQ(a.faults[i].chain, b.faults[i].chain);
  }
  EXPECT_EQ(a.runs, b.runs);
}

}  // namespace
}  // namespace noonhouse
