// SPDX-License-Identifier: Apache-2.0
// The watch over a plant group in the engine's own run, on a tissue temperature that the test moves.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/plants/plant_watch.hpp"
#include "models/power/battery_guard.hpp"
#include "tests/support/agent_stage.hpp"

namespace noonhouse {
namespace {

using Points = PolylineForcing::Points;

struct WatchRow {
  std::string what;
  Points tissue;  ///< [degC]
  std::vector<std::string> says;
};
void PrintTo(const WatchRow& row, std::ostream* out) { *out << row.what; }

PlantWatch::Parameters herbs(ChannelId tissue) {
  PlantWatch::Parameters p;
  p.name = "herbs";
  p.tissue = tissue;
  p.harm_above_k = 40.0 + kZeroCelsius;
  p.lethal_above_k = 48.0 + kZeroCelsius;
  p.harm_below_k = 5.0 + kZeroCelsius;
  p.lethal_below_k = -2.0 + kZeroCelsius;
  p.strained_after = 10_min;
  p.harmed_after = 1_h;
  p.lost_after = 30_min;
  p.when_nothing_failed = "nothing cools";
  return p;
}

Points in_kelvins(Points points) {
  for (auto& point : points) point.second += kZeroCelsius;
  return points;
}

/// What the watch logs as harm: "instant state".
std::vector<std::string> harm(const AgentStage& stage) {
  std::vector<std::string> out;
  for (const auto& entry : stage.log())
    if (entry.kind == EventKind::harm)
      out.push_back(std::to_string(entry.when.ms / 1000) + " " + entry.what.substr(0, entry.what.find(" in all") + 7));
  return out;
}

class WatchTable : public testing::TestWithParam<WatchRow> {};

TEST_P(WatchTable, StepsDownByTheTimeSpentBeyondItsLimits) {
  AgentStage stage(6_h);
  stage.agent<PlantWatch>(herbs(stage.moved("tissue", in_kelvins(GetParam().tissue))));
  stage.run();
  EXPECT_EQ(harm(stage), GetParam().says);
}

// A jump is written as two points at one instant.
const WatchRow kWatch[] = {
    {"is fine within its limits", {{0_s, 5.01}, {1_h, 39.99}}, {}},
    {"bears a short spell", {{0_s, 20}, {600_s, 20}, {600_s, 45}, {1199_s, 45}, {1199_s, 20}}, {}},
    {"is strained, then harmed",
     {{0_s, 20}, {600_s, 20}, {600_s, 45}},
     {"1200 strained: tissue above 40 degC for 10 min in all", "4200 harmed: tissue above 40 degC for 60 min in all"}},
    {"adds up spells",
     {{0_s, 45}, {300_s, 45}, {300_s, 20}, {7200_s, 20}, {7200_s, 45}},
     {"7500 strained: tissue above 40 degC for 10 min in all", "10500 harmed: tissue above 40 degC for 60 min in all"}},
    {"is lost by the time beyond its lethal limit",
     {{0_s, 50}},
     {"600 strained: tissue above 40 degC for 10 min in all", "1800 lost: tissue above 48 degC for 30 min in all"}},
    {"is not lost between its limits",
     {{0_s, 47.9}, {5_h, 47.9}, {5_h, 20}},
     {"600 strained: tissue above 40 degC for 10 min in all", "3600 harmed: tissue above 40 degC for 60 min in all"}},
    {"suffers cold too",
     {{0_s, 3}},
     {"600 strained: tissue below 5 degC for 10 min in all", "3600 harmed: tissue below 5 degC for 60 min in all"}},
    {"dies of frost",
     {{0_s, -5}},
     {"600 strained: tissue below 5 degC for 10 min in all", "1800 lost: tissue below -2 degC for 30 min in all"}},
};
INSTANTIATE_TEST_SUITE_P(Rows, WatchTable, testing::ValuesIn(kWatch), [](const auto& tested) {
  std::string name;
  for (char c : tested.param.what)
    if (c != ',') name += c == ' ' ? '_' : c;
  return name;
});

TEST(PlantWatch, SaysWhyItIsTooHotAlthoughNothingFailed) {
  AgentStage stage(1_h);
  stage.agent<PlantWatch>(herbs(stage.moved("tissue", in_kelvins({{0_s, 45}}))));
  stage.run();
  EXPECT_EQ(stage.chain_of("strained"),
            "herbs strained: tissue above 40 degC for 10 min in all, 45.0 degC at that moment <- herbs nothing cools");
}

TEST(PlantWatch, LeadsBackToTheFailureThatStandsAndForgetsOneThatIsOver) {
  for (const bool mended : {false, true}) {
    AgentStage stage(2_h);
    const ChannelId permit = stage.channel("permit", 1.0);
    Points charge{{0_s, 1000.0}, {100_s, 0.0}};
    if (mended) charge.emplace_back(200_s, 1000.0);
    stage.agent<BatteryGuard>({"battery", stage.moved("charge", charge), 100.0, 300.0, permit});
    stage.agent<PlantWatch>(herbs(stage.moved("tissue", in_kelvins({{0_s, 20}, {300_s, 20}, {300_s, 45}}))));
    stage.run();
    const std::string chain = stage.chain_of("strained");
    EXPECT_NE(chain.find(mended ? "<- herbs nothing cools" : "<- battery cuts all loads off"), std::string::npos)
        << chain;
  }
}

}  // namespace
}  // namespace noonhouse
