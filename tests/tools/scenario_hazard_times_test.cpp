// SPDX-License-Identifier: Apache-2.0
// Short weather at odd times: the grid of sun and weather has its instants, and the house meets the whole of it.
// Hazards and failures at the run's edges: refused with their line, or silent.
#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "tests/support/small_day.hpp"
#include "tests/support/small_scenario.hpp"

namespace noonhouse {
namespace {

using small_faults::SmallDay;
using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

struct ShortWeather {
  const char* at;
  double begin_min, lasts_min;  ///< the grid is regular each 15 min
};
const ShortWeather kShort[] = {
    {"14:07", 847, 3},    {"00:00", 0, 2},    {"00:06", 6, 9},
    {"13:55", 835, 25},   {"12:30", 750, 30}, {"23:57", 1437, 3},
    {"09:59", 599, 61},   {"12:15", 735, 1},  {"14:15:40", 855 + 40.0 / 60, 5},
    {"12:00", 720, 1.75},
};

std::string hazard(const char* kind, const ShortWeather& w, const char* how_much) {
  return fmt::format("hazards:\n  storm: {{ kind: {}, day: 1, at: \"{}\", lasts: {} s, {} }}\n", kind, w.at,
                     60.0 * w.lasts_min, how_much);
}

/// Whether the interval that begins at a grid instant is one of the weather's.
bool within(const ShortWeather& w, Tick when) {
  return when >= ticks(60.0 * w.begin_min) && when < ticks(60.0 * (w.begin_min + w.lasts_min));
}

std::shared_ptr<const SiteTable> table_of(const Scenario& scenario) {
  const PlanScenario& plan = scenario.plans.front();
  return site_table(plan, weather_of(scenario, plan));
}

TEST(HazardTimes, AGustHasItsFullStrengthAndTime) {
  for (const ShortWeather& w : kShort) {
    const auto table = table_of(small_faults::read(hazard("gusts", w, "speed: 24 m/s")));
    double blown_min = 0.0;
    for (std::size_t k = 0; k + 1 < table->instants(); ++k) {
      const Tick when = table->grid().when(k);
      const auto& interval = table->instant(k);
      for (const double wind : {interval.wind_m_s, interval.wind_at_end_m_s}) {
        const double gust = table->gust_factor() * wind;
        if (within(w, when)) {
          EXPECT_NEAR(gust, 24.0, 1e-9) << w.at << ", at " << when.ms;
        } else {
          EXPECT_LT(gust, 16.0) << w.at << ", at " << when.ms << ": it sets in and ceases at once";
        }
      }
      if (within(w, when)) blown_min += seconds(table->grid().when(k + 1) - when) / 60.0;
    }
    EXPECT_NEAR(blown_min, w.lasts_min, 1e-9) << w.at;
  }
}

/// A vent that bears 14 m/s open, and a rule that shuts it in gusts: what is seen of a front is seen when it is there.
TEST(HazardTimes, NothingFeelsAGustBeforeItBegins) {
  const std::string squall =
      "hazards:\n  squall: { kind: gusts, day: 1, at: \"14:30\", lasts: 20 min, speed: 25 m/s }\n";
  const std::string weak =
      small_scenario::with(small_faults::kText, "centre: 2.1 m }", "centre: 2.1 m, withstands: 14 m/s }");
  SmallDay torn(read_scenario_text(weak + squall, "torn.yaml"));
  torn.run();
  EXPECT_THAT(torn.said_by("vent"), Contains(HasSubstr("14:30")));
  EXPECT_THAT(torn.chain_of("torn"), HasSubstr("gusts of 25 m/s begin"));
  SmallDay ruled(small_faults::read(squall + "rules:\n  storm: { gusts_above: 8 m/s, forbids: [vent] }\n"));
  ruled.run();
  EXPECT_THAT(ruled.said_by("storm"), Contains(HasSubstr("14:30")));
}

TEST(HazardTimes, ACloudburstBringsItsWholeRainWithinItsTime) {
  for (const ShortWeather& w : kShort) {
    const auto table = table_of(small_faults::read(hazard("cloudburst", w, "rain: 12 mm")));
    double fallen_mm = 0.0;
    for (std::size_t k = 0; k + 1 < table->instants(); ++k) {  // no interval begins at the run's end
      const Tick when = table->grid().when(k);
      const double rain = table->instant(k).rain_kg_m2_s;
      EXPECT_EQ(rain > 0.0, within(w, when)) << w.at << ", at " << when.ms;
      fallen_mm += rain * seconds(table->grid().when(k + 1) - when);
    }
    EXPECT_NEAR(fallen_mm, 12.0, 1e-9) << w.at;
  }
}

TEST(HazardTimes, LeaveTheScenarioAndTheUsualLightAsTheyAre) {
  const std::string burst = hazard("cloudburst", {"12:07", 727, 1}, "rain: 5 mm");
  const Scenario calm = small_faults::read(""), stormy = small_faults::read(burst);
  EXPECT_EQ(stormy.plans.front().spec.run.sun_every_s, 900.0);
  const auto a = table_of(calm), b = table_of(stormy);
  EXPECT_EQ(a->mean_outdoor_k(), b->mean_outdoor_k());
  EXPECT_EQ(usual_direct(*a, 0), usual_direct(*b, 0));
}

/// What a house meets: how long the gusts reach a speed, and the rain that falls [mm].
class Met final : public Observer {
 public:
  Met(const Assembly& assembly, double gust_m_s)
      : gust_at_(index(assembly, assembly.site.gust)),
        rain_at_(index(assembly, assembly.site.rain)),
        speed_(gust_m_s) {}
  void see_start(const Stretch&) override {}
  void see_stretch(const Stretch& stretch) override {
    for (; next_ <= stretch.end(); next_ = next_ + kEvery) {
      const auto p = stretch.potentials_at(next_);
      if (p[gust_at_] >= speed_ - 1e-9) blown_s += seconds(kEvery);
      rain_mm += p[rain_at_] * seconds(kEvery);
    }
  }
  double blown_s = 0.0, rain_mm = 0.0;

 private:
  static constexpr Tick kEvery = 1_s;
  static std::size_t index(const Assembly& assembly, ChannelId id) {
    return static_cast<std::size_t>(assembly.plan.house.states) + static_cast<std::size_t>(id.index);
  }
  std::size_t gust_at_, rain_at_;
  double speed_;
  Tick next_{500};
};

TEST(HazardTimes, TheHouseMeetsTheWholeOfBoth) {
  SmallDay day(
      small_faults::read("hazards:\n  squall: { kind: gusts, day: 1, at: \"14:07\", lasts: 3 min, speed: 24 m/s }\n"
                         "  burst: { kind: cloudburst, day: 1, at: \"16:11\", lasts: 7 min, rain: 12 mm }\n"));
  Met met(day.assembly(), 24.0);
  day.run(&met);
  EXPECT_EQ(met.blown_s, 180.0);
  EXPECT_NEAR(met.rain_mm, 12.0, 1e-6);
  EXPECT_THAT(day.said_by("hazard"), Contains(HasSubstr("14:07 squall: gusts of 24 m/s begin")));
  EXPECT_THAT(day.said_by("weather"), Contains("16:11 rain begins"));
  EXPECT_THAT(day.said_by("weather"), Contains("16:18 rain ends: 12 mm"));
}

/// The message about a scenario of 12 h, with more lines, and its kind; "" where it is read.
std::pair<std::string, ErrorKind> refused_by_half_a_day(const std::string& more) {
  try {
    read_scenario_text(small_scenario::with(small_faults::kText, "length: 1 d", "length: 12 h") + more,
                       "small_faults.yaml");
  } catch (const UserError& error) {
    return {error.what(), error.kind()};
  }
  return {"", ErrorKind::usage};
}

struct EdgeRow {
  const char* what;
  const char* line;  ///< the second of what is added
  ErrorKind kind;
  const char* says;  ///< nothing: it is read
};
const EdgeRow kEdges[] = {
    {"gusts to the end", "storm: { kind: gusts, day: 1, at: \"11:57\", lasts: 3 min, speed: 20 m/s }", ErrorKind::usage,
     ""},
    {"gusts beyond the end", "storm: { kind: gusts, day: 1, at: \"11:58\", lasts: 3 min, speed: 20 m/s }",
     ErrorKind::does_not_fit, "it would end 1 min after the run does"},
    {"a cloudburst beyond the end", "storm: { kind: cloudburst, day: 1, at: \"11:50\", lasts: 20 min, rain: 9 mm }",
     ErrorKind::does_not_fit, "it would end 10 min after the run does"},
    {"hail after the end", "storm: { kind: hail, day: 1, at: \"18:00\", lasts: 10 min, stone: 20 mm }",
     ErrorKind::does_not_fit, "it would end 370 min after the run does"},
    {"smoke for longer than the run", "storm: { kind: smoke or dust, day: 1, days: 2 }", ErrorKind::does_not_fit,
     "it would last beyond the end of the run"},
    {"gusts on a day after the last", "storm: { kind: gusts, day: 2, at: \"01:00\", speed: 20 m/s }",
     ErrorKind::out_of_range, "the run has 0.5 days; give 1"},
    {"hail before the first day", "storm: { kind: hail, day: 0, at: \"01:00\", stone: 20 mm }", ErrorKind::out_of_range,
     "day"},
    {"frost before the first day", "storm: { kind: frost night, day: -1, lowest: 0 degC }", ErrorKind::out_of_range,
     "day"},
};

TEST(HazardTimes, OutsideTheRunIsRefusedWithItsLine) {
  const auto lines =
      std::count(small_faults::kText, small_faults::kText + std::string(small_faults::kText).size(), '\n');
  for (const EdgeRow& row : kEdges) {
    const auto [message, kind] = refused_by_half_a_day(fmt::format("hazards:\n  {}\n", row.line));
    EXPECT_EQ(kind, row.kind) << row.what << ": " << message;
    EXPECT_THAT(message, HasSubstr(row.says)) << row.what;
    if (row.kind == ErrorKind::usage)
      EXPECT_EQ(message, "") << row.what;
    else
      EXPECT_THAT(message, testing::StartsWith(fmt::format("small_faults.yaml:{}:", lines + 2))) << row.what;
  }
}

// A day that begins as the run ends is none of its days.
TEST(HazardTimes, AFailureOnADayThatTheRunDoesNotHaveIsRefused) {
  const std::string late = "faults:\n  late: { what: stuck off, of: vent, day: 2, at: \"00:00\" }\n";
  const auto [message, kind] = refused_by_half_a_day(late);
  EXPECT_EQ(kind, ErrorKind::out_of_range);
  EXPECT_THAT(message, HasSubstr("the run has 0.5 days"));
  try {
    small_faults::read(late);
    ADD_FAILURE() << "day 2 of a run of one day";
  } catch (const UserError& error) {
    EXPECT_THAT(error.what(), HasSubstr("the run has 1 day; give 1\n"));
    EXPECT_THAT(error.what(), Not(HasSubstr("1 days")));
  }
}

TEST(HazardTimes, AFailureAfterTheRunsEndIsRefusedWithItsLine) {
  const auto lines =
      std::count(small_faults::kText, small_faults::kText + std::string(small_faults::kText).size(), '\n');
  const auto late = [](const char* at) {
    return refused_by_half_a_day(
        fmt::format("faults:\n  late: {{ what: stuck off, of: vent, day: 1, at: \"{}\" }}\n", at));
  };
  EXPECT_EQ(late("12:00").first, "") << "as the run ends";
  const auto [message, kind] = late("18:00");
  EXPECT_EQ(kind, ErrorKind::does_not_fit);
  EXPECT_THAT(message, testing::StartsWith(fmt::format("small_faults.yaml:{}:", lines + 2)));
  EXPECT_THAT(message, HasSubstr("faults › late › at: read \"18:00\"; the run ends 360 min before"));
}

TEST(HazardTimes, ALeakIsToldInPlainFigures) {
  for (const auto& [leak, told] :
       {std::pair{"2.5 L/h", "leaks 2.5 L an hour"}, std::pair{"1000 L/h", "leaks 1000 L an hour"},
        std::pair{"12345 L/h", "leaks 12345 L an hour"}}) {
    SmallDay day(small_faults::read(
        fmt::format("faults:\n  seam: {{ what: tank leaks, of: tank, day: 1, at: \"00:10\", leak: {} }}\n", leak)));
    day.run();
    EXPECT_THAT(day.said_by("seam"), Contains(HasSubstr(told)));
  }
}

// While the roof breaks, a weaker storm begins or ends: neither is to blame.
TEST(HazardTimes, OverlappingHailBlamesTheStormThatBreaks) {
  for (const char* weak : {"at: \"13:58\", lasts: 150 s", "at: \"14:00:30\", lasts: 40 min"}) {
    SmallDay day(small_faults::read(
        fmt::format("hazards:\n  big: {{ kind: hail, day: 1, at: \"14:00\", lasts: 10 min, stone: 60 mm }}\n"
                    "  weak: {{ kind: hail, day: 1, {}, stone: 4 mm }}\n",
                    weak)));
    day.run();
    EXPECT_THAT(day.chain_of("is broken by hail"), testing::EndsWith("hazard big: hail begins, stones of 60 mm"))
        << weak;
  }
}

// All kinds of bad weather up to the run's last instant, a night that goes on after it, and a failure as it ends.
TEST(HazardTimes, AtTheVeryEndOfTheRunAreRunThrough) {
  // The frost first: what comes on top of its clear and calm night stays.
  SmallDay day(small_faults::read(R"(hazards:
  frost: { kind: frost night, day: 1, lowest: 0 degC }
  squall: { kind: gusts, day: 1, at: "23:57", lasts: 3 min, speed: 24 m/s }
  burst: { kind: cloudburst, day: 1, at: "23:53", lasts: 7 min, rain: 12 mm }
  hail: { kind: hail, day: 1, at: "23:50", lasts: 10 min, stone: 60 mm }
  smoke: { kind: smoke or dust, day: 1 }
faults:
  last: { what: tank leaks, of: tank, day: 1, at: "24:00" }
)"));
  Met met(day.assembly(), 24.0);
  day.run(&met);
  EXPECT_EQ(met.blown_s, 180.0);
  EXPECT_NEAR(met.rain_mm, 12.0, 1e-6);
  EXPECT_THAT(day.said_by("hazard"), Contains("24:00 hail: hail ends"));
  EXPECT_THAT(day.chain_of("hail is over"), HasSubstr("is broken by hail"));
  EXPECT_THAT(day.said_by("last"), Contains(HasSubstr("24:00 tank leaks")));
}

TEST(HazardTimes, AfterTheRunsEndRepairsAndNightsAreSilent) {
  SmallDay day(read_scenario_text(
      small_scenario::with(small_faults::kText, "length: 1 d", "length: 12 h") +
          "hazards:\n  frost: { kind: frost night, day: 1, lowest: 0 degC }\n"
          "faults:\n  mended late: { what: stuck on, of: vent, day: 1, at: \"11:30\", lasts: 2 h }\n",
      "small_faults.yaml"));
  day.run();
  EXPECT_THAT(day.said_by("hazard"), IsEmpty());
  EXPECT_EQ(day.said_by("mended late").size(), 1U);
  EXPECT_THAT(day.said_by("vent"), Not(IsEmpty()));
}

}  // namespace
}  // namespace noonhouse
