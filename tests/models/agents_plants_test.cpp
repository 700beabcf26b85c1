// SPDX-License-Identifier: Apache-2.0
// The watches over a plant group in the engine's own run, on a tissue temperature and pot water that the test moves.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/control/grower.hpp"
#include "models/plants/plant_watch.hpp"
#include "models/plants/pot_watch.hpp"
#include "models/power/battery_guard.hpp"
#include "tests/support/agent_stage.hpp"

namespace noonhouse {
namespace {

using Points = PolylineForcing::Points;

struct WatchRow {
  std::string what;
  Points values;  ///< of tissue [degC] or of pot water [kg]
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
  p.cooled_by = {"fan", "battery"};
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

std::string row_name(const testing::TestParamInfo<WatchRow>& tested) {
  std::string name;
  for (char c : tested.param.what)
    if (c != ',') name += c == ' ' ? '_' : c;
  return name;
}

class WatchTable : public testing::TestWithParam<WatchRow> {};

TEST_P(WatchTable, StepsDownByTheTimeSpentBeyondItsLimits) {
  AgentStage stage(6_h);
  stage.agent<PlantWatch>(herbs(stage.moved("tissue", in_kelvins(GetParam().values))));
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
INSTANTIATE_TEST_SUITE_P(Rows, WatchTable, testing::ValuesIn(kWatch), row_name);

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

/// Says that it failed, at the start.
class Failing final : public Agent {
 public:
  struct Parameters {
    std::string name;
  };
  static constexpr bool kDecides = false;
  static std::vector<ChannelId> follows(const Parameters&) { return {}; }
  explicit Failing(Parameters p) : p_(std::move(p)) {}
  std::string_view name() const override { return p_.name; }
  void react(const Situation&, const Trigger&, Actions& actions) override { actions.log(EventKind::failure, "fails"); }

 private:
  Parameters p_;
};

TEST(PlantWatch, DoesNotBlameTheFailureOfWhatDoesNotCool) {
  for (const bool fan_too : {false, true}) {
    AgentStage stage(1_h);
    if (fan_too) stage.agent<Failing>({"fan"});
    stage.agent<Failing>({"tank"});  // the newest failure of all
    stage.agent<PlantWatch>(herbs(stage.moved("tissue", in_kelvins({{0_s, 45}}))));
    stage.run();
    const std::string chain = stage.chain_of("strained");
    EXPECT_TRUE(chain.ends_with(fan_too ? "<- fan fails" : "<- herbs nothing cools")) << chain;
  }
}

TEST(PlantWatch, BlamesNoDeviceForFrost) {
  AgentStage stage(1_h);
  stage.agent<Failing>({"fan"});
  stage.agent<PlantWatch>(herbs(stage.moved("tissue", in_kelvins({{0_s, 3}}))));
  stage.run();
  EXPECT_TRUE(stage.chain_of("strained").ends_with("<- herbs got too cold: nothing heats the house"))
      << stage.chain_of("strained");
}

constexpr Tick kTwoDays = kDay * 2;

/// Pots that count as dry at 1 kg; harmed after two days, lost after six.
PotWatch::Parameters dry_pots(Input water) { return {"herbs", water, 1.0, kTwoDays, kDay * 6, {"grower"}}; }

// A jump is written as two points at one instant, and is heard of at the first tick after it.
const WatchRow kPots[] = {
    {"is fine above its limit", {{0_s, 5.0}, {10_h, 1.001}}, {}},
    {"warns when the water falls to it", {{0_s, 5.0}, {4_h, 1.0}, {5_h, 5.0}}, {"14400 pots are dry"}},
    {"warns at the start", {{0_s, 0.5}, {1_h, 5.0}}, {"0 pots are dry"}},
    {"is harmed by two days and lost by six",
     {{0_s, 5.0}, {4_h, 1.0}, {5_h, 0.0}},
     {"14400 pots are dry", "187200 harmed: pots dry for 48 h", "532800 lost: pots dry for 144 h"}},
    {"is saved an instant before", {{0_s, 0.5}, {kTwoDays - 1_s, 0.5}, {kTwoDays - 1_s, 5.0}}, {"0 pots are dry"}},
    {"is not saved an instant after",
     {{0_s, 0.5}, {kTwoDays + 1_s, 0.5}, {kTwoDays + 1_s, 5.0}},
     {"0 pots are dry", "172800 harmed: pots dry for 48 h"}},
    {"is not saved by a sip",
     {{0_s, 0.5}, {kDay, 0.5}, {kDay, 1.09}},
     {"0 pots are dry", "172800 harmed: pots dry for 48 h", "518400 lost: pots dry for 144 h"}},
    {"counts each spell by itself",
     {{0_s, 0.5}, {kDay, 0.5}, {kDay, 5.0}, {kDay + 1_h, 5.0}, {kDay + 1_h, 0.5}, {kTwoDays, 0.5}, {kTwoDays, 5.0}},
     {"0 pots are dry", "90000001ms pots are dry"}},
    {"is harmed once and can be lost in a later spell",
     {{0_s, 0.5}, {kDay * 3, 0.5}, {kDay * 3, 5.0}, {kDay * 4, 5.0}, {kDay * 4, 0.5}},
     {"0 pots are dry", "172800 harmed: pots dry for 48 h", "345600001ms pots are dry",
      "864000001ms lost: pots dry for 144 h"}},
    {"is silent once it is lost",
     {{0_s, 0.5}, {kDay * 7, 0.5}, {kDay * 7, 5.0}, {kDay * 8, 5.0}, {kDay * 8, 0.5}},
     {"0 pots are dry", "172800 harmed: pots dry for 48 h", "518400 lost: pots dry for 144 h"}},
};

class PotTable : public testing::TestWithParam<WatchRow> {};

TEST_P(PotTable, SpellsOfDryPotsHarmAndKillByTheirLength) {
  AgentStage stage(kDay * 12);
  stage.agent<PotWatch>(dry_pots(stage.moved("pot water", GetParam().values)));
  stage.run();
  EXPECT_EQ(stage.said_by("herbs"), GetParam().says);
}
INSTANTIATE_TEST_SUITE_P(Rows, PotTable, testing::ValuesIn(kPots), row_name);

TEST(PotWatch, WatchesWhatIsReallyInThePotsAndIsHelpedByTheCan) {
  AgentStage stage(kDay * 2, 100.0, 0.4);
  stage.agent<PotWatch>(dry_pots(Input(stage.pot, 1)));
  GrowerVisit::Parameters visit;
  visit.name = "grower";
  visit.at = 8_h;
  visit.waters = {{"herbs", Input(stage.pot, 1), stage.can, 3.0}};
  visit.tank_water = Input(stage.tank, 1);
  visit.tank_temperature = stage.tank;
  visit.water_permit = stage.channel("permit", 1.0);
  stage.agent<GrowerVisit>(visit);
  stage.run();
  EXPECT_EQ(stage.said_by("herbs"), std::vector<std::string>{"0 pots are dry"});
}

TEST(PotWatch, LosesWhatKillsBeforeItHarms) {
  AgentStage stage(kDay * 3);
  auto p = dry_pots(stage.moved("pot water", {{0_s, 0.5}}));
  p.lost_after = 90_min;
  stage.agent<PotWatch>(p);
  stage.run();
  EXPECT_EQ(stage.said_by("herbs"), (std::vector<std::string>{"0 pots are dry", "5400 lost: pots dry for 1.5 h"}));
}

TEST(PotWatch, LeadsBackToTheFailedWateringAndToNoOtherFailure) {
  for (const std::string failing : {"grower", "fan"}) {
    AgentStage stage(kDay * 7);
    stage.agent<Failing>({failing});
    stage.agent<PotWatch>(dry_pots(stage.moved("pot water", {{0_s, 5.0}, {4_h, 1.0}})));
    stage.run();
    const std::string tail = failing == "grower" ? " <- grower fails" : "";
    EXPECT_EQ(stage.chain_of("harmed"), "herbs harmed: pots dry for 48 h <- herbs pots are dry" + tail);
    EXPECT_EQ(stage.chain_of("lost"), "herbs lost: pots dry for 144 h <- herbs pots are dry" + tail);
  }
}

}  // namespace
}  // namespace noonhouse
