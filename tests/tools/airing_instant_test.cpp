// SPDX-License-Identifier: Apache-2.0
// What the air of a whole house does at an instant of its run, its tracer, its words.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <sstream>

#include "sim/core/errors.hpp"
#include "tests/support/small_scenario.hpp"
#include "tools/airing/airing.hpp"
#include "tools/airing/airing_text.hpp"

namespace noonhouse {
namespace {

using testing::HasSubstr;

const Scenario& demo() {
  static const Scenario scenario =
      read_scenario(std::string(NOONHOUSE_SOURCE_DIR) + "/scenarios/heatwave/heatwave.yaml");
  return scenario;
}

/// The vented demonstration house in the afternoon of its second day; run once for all tests of this file.
const Airing& afternoon() {
  static const Airing airing =
      airing_at(demo(), demo().plan("vents and fan"), instant_of("day 2 15:00", demo().plan("vents and fan")));
  return airing;
}

TEST(Airing, AsMuchComesInAsGoesOut) {
  EXPECT_GT(afternoon().in_kg_s(), 0.1);
  EXPECT_NEAR(afternoon().in_kg_s(), afternoon().out_kg_s(), 1e-9);
  double bays = 0.0;
  for (const BayAir& bay : afternoon().bays) bays += bay.in_kg_s;
  EXPECT_NEAR(bays, afternoon().in_kg_s(), 1e-12);
  // Bay by bay: what leaves the west bay for the east one and is not given back goes out there.
  const BayAir &west = afternoon().bays[0], &east = afternoon().bays[1];
  EXPECT_NEAR(west.in_kg_s - west.out_kg_s, west.to_next_kg_s - west.from_next_kg_s, 1e-9);
  EXPECT_NEAR(east.out_kg_s - east.in_kg_s, west.to_next_kg_s - west.from_next_kg_s, 1e-9);
}

/// By the day's means: 24 hours, and the instant's flow is of the size of its hour's.
TEST(Airing, HoursCoverTheDay) {
  ASSERT_EQ(afternoon().hourly_1_s.size(), 24U);
  for (const double hour : afternoon().hourly_1_s) EXPECT_GT(hour, 0.0);
  const double now = afternoon().in_kg_s() / afternoon().dry_air_kg();
  EXPECT_GT(now, 0.2 * afternoon().hourly_1_s[14]);
  EXPECT_LT(now, 5.0 * afternoon().hourly_1_s[14]);
  EXPECT_LT(afternoon().hourly_1_s[3], 0.1 * afternoon().hourly_1_s[14]) << "the vents are shut at night";
}

/// Midnight begins a day, and the run's last instant ends one.
TEST(Airing, MidnightBelongsToTheDayItBegins) {
  const Scenario scenario = read_scenario_text(small_scenario::kText, "small.yaml");
  const PlanScenario& plan = scenario.plans.front();
  EXPECT_EQ(airing_at(scenario, plan, instant_of("day 1 24:00", plan)).day, 2);
  const Airing last = airing_at(scenario, plan, instant_of("day 2 24:00", plan));
  EXPECT_EQ(last.day, 2);
  EXPECT_NEAR(last.in_kg_s(), last.out_kg_s(), 1e-9);
  EXPECT_GT(last.in_kg_s(), 0.0);
  EXPECT_THAT(airing_text(last, UnitSystem::metric, 100), HasSubstr("day 2 24:00"));
  EXPECT_GT(airing_at(scenario, plan, Tick{0}).in_kg_s(), 0.0);
}

/// A run of hours starts as assembled, all its air like that outdoors: streams are unknown then, and it says so.
TEST(Airing, AirThatIsAllAlikeHasNoTracer) {
  const std::string text = small_scenario::with(
      small_scenario::with(small_scenario::kText, "length: 2 d", "length: 6 h"), "peak_day: 2", "peak_day: 1");
  const Scenario scenario = read_scenario_text(text, "small.yaml");
  const Airing start = airing_at(scenario, scenario.plans.front(), Tick{0});
  EXPECT_FALSE(start.tracer.has_value());
  EXPECT_THAT(airing_text(start, UnitSystem::metric, 100), HasSubstr("is all alike at this instant"));
  EXPECT_TRUE(airing_at(scenario, scenario.plans.front(), Tick{1_h}).tracer.has_value());
}

/// A run cut short leaves the rest of its last day unknown.
TEST(Airing, HoursBeyondTheRunAreNotANumber) {
  const std::string text = small_scenario::with(
      small_scenario::with(small_scenario::kText, "length: 2 d", "length: 6 h"), "peak_day: 2", "peak_day: 1");
  const Scenario scenario = read_scenario_text(text, "small.yaml");
  const Airing airing = airing_at(scenario, scenario.plans.front(), Tick{5_h});
  EXPECT_FALSE(std::isnan(airing.hourly_1_s[5]));
  EXPECT_TRUE(std::isnan(airing.hourly_1_s[6]));
}

/// A shut house of one bay over its warm floor at night: what rises keeps all its air alike, and a tracer in it decays
/// as fast as it takes in air. The method's bound: a column that takes on its layer's air in 60 s, with 5 % of it, lags
/// by far less than 1 % where the air changes once an hour.
constexpr const char* kOneBay = R"(title: A mixed box
run: { start: 2025-07-14, length: 1 d }
site: { latitude: 35 deg, longitude: 0 deg, altitude: 0 m, utc_offset: "+00:00", deep_soil: 16 degC }
weather: { kind: invented heatwave, peak_day: 1, wind_by_day: 6 m/s, wind_by_night: 6 m/s }
house:
  length: 4 m
  width: 3 m
  eaves: 2 m
  ridge: 2.8 m
  layers: 2
  leakage: 1 /h
  bays: { all: { share: 100 % } }
tank: { capacity: 300 L, starts_with: 250 L, low_mark: 20 L, restart_mark: 40 L }
power: { panel_area: 1 m2, battery: 600 Wh }
)";

TEST(Airing, ATracerInAMixedHouseShowsTheNetworksAirChange) {
  const Scenario scenario = read_scenario_text(kOneBay, "mixed.yaml");
  const Airing airing = airing_at(scenario, scenario.plans.front(), Tick{3_h});
  const TracerCheck& tracer = airing.tracer.value();
  EXPECT_GT(tracer.network_1_s * 3600.0, 0.2);
  EXPECT_NEAR(tracer.decay_1_s, tracer.network_1_s, 0.01 * tracer.network_1_s);
  EXPECT_NEAR(tracer.slowest_1_s, tracer.network_1_s, 0.01 * tracer.network_1_s);
  EXPECT_NEAR(tracer.efficiency, 0.5, 0.005);
}

/// In a through draught of poorly mixed air they part, so the check above can fail.
TEST(Airing, ATracerInAThroughDraughtLeavesFasterThanMixedAir) {
  const TracerCheck& tracer = afternoon().tracer.value();
  EXPECT_GT(tracer.efficiency, 0.55);
  EXPECT_GT(std::abs(tracer.slowest_1_s / tracer.network_1_s - 1.0), 0.05);
}

TEST(Airing, WarmAirHasItsNeutralLevelInsideACalmShutHouse) {
  const std::string text = small_scenario::with(kOneBay, "wind_by_day: 6 m/s, wind_by_night: 6 m/s",
                                                "wind_by_day: 0 m/s, wind_by_night: 0 m/s");
  const Scenario scenario = read_scenario_text(text, "calm.yaml");
  const Airing airing = airing_at(scenario, scenario.plans.front(), Tick{13_h});
  ASSERT_GT(airing.layers.front().air.temperature_k, airing.outdoors.temperature_k + 2.0);
  ASSERT_TRUE(airing.bays.front().neutral_m.has_value());
  EXPECT_GT(*airing.bays.front().neutral_m, 0.5);
  EXPECT_LT(*airing.bays.front().neutral_m, 2.5);
  EXPECT_LT(airing.bays.front().excess_at_floor_pa, 0.0) << "warm air draws in below its neutral level";
}

TEST(AiringInstant, DaysCountFromOne) {
  const PlanScenario& plan = demo().plans.front();
  EXPECT_EQ(instant_of("day 1 00:00", plan), Tick{0});
  EXPECT_EQ(instant_of("day 4 15:30", plan), kDay * 3 + 15_h + 30_min);
  EXPECT_EQ(instant_of("day 7 24:00", plan), kDay * 7);
}

TEST(AiringInstant, OtherTextAndTimesBeyondTheRunAreRefused) {
  const PlanScenario& plan = demo().plans.front();
  for (const char* text : {"", "noon", "day", "day 4", "day four 15:00", "day 0 12:00", "day -1 12:00", "day 4 25:00",
                           "day 8 00:01", "day 99999999999 12:00", "4 15:00"}) {
    try {
      static_cast<void>(instant_of(text, plan));
      ADD_FAILURE() << "taken: " << text;
    } catch (const UserError& error) {
      EXPECT_EQ(error.kind(), ErrorKind::usage) << text;
      EXPECT_THAT(error.what(), HasSubstr("--at"));
    }
  }
}

TEST(AiringText, NamesEveryOpeningBayAndLayer) {
  const std::string text = airing_text(afternoon(), UnitSystem::metric, 100);
  for (const char* name : {"west ridge vent", "east side vent", "door", "gable fan", "louvre of gable fan",
                           "cracks of the front wall", "west bay", "0.33 m", "day 2 15:00", "m³/h", "Neutral level"})
    EXPECT_THAT(text, HasSubstr(name));
}

TEST(AiringText, SaysTheSameInOtherUnits) {
  const std::string text = airing_text(afternoon(), UnitSystem::us, 100);
  EXPECT_THAT(text, HasSubstr("ft³/min"));
  EXPECT_THAT(text, HasSubstr("°F"));
  EXPECT_EQ(text.find("m³/h"), std::string::npos);
  // 1 ft = 0.3048 m exactly: a flow of the house's own air in a minute.
  Airing one = afternoon();
  for (AirFlow& flow : one.flows) flow.in_kg_s = flow.out_kg_s = 0.0;
  one.flows.front().in_kg_s = one.flows.front().out_kg_s = 100.0 * 0.3048 * 0.3048 * 0.3048 / 60.0 * one.dry_air_kg_m3;
  EXPECT_THAT(airing_text(one, UnitSystem::us, 100), HasSubstr("100 ft³/min in and 100 ft³/min out"));
}

TEST(AiringText, KeepsToItsWidth) {
  for (const int width : {10, kNarrowestAiringText, 90, 500}) {
    std::istringstream lines(airing_text(afternoon(), UnitSystem::metric, width));
    const auto most = static_cast<std::size_t>(std::clamp(width, kNarrowestAiringText, kWidestAiringText));
    for (std::string line; std::getline(lines, line);) {
      const auto shown = std::count_if(line.begin(), line.end(), [](char c) { return (c & 0xC0) != 0x80; });
      EXPECT_LE(static_cast<std::size_t>(shown), most) << line;
    }
  }
}

}  // namespace
}  // namespace noonhouse
