// SPDX-License-Identifier: Apache-2.0
// The watches over a plant group in the engine's own run, on doses and pot water that the test moves.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/control/grower.hpp"
#include "models/plants/plant_watch.hpp"
#include "models/plants/pot_watch.hpp"
#include "models/power/battery_guard.hpp"
#include "tests/support/agent_stage.hpp"

namespace noonhouse {
namespace {

struct WatchRow {
  std::string what;
  Points values;  ///< of a dose [s] or of pot water [kg]
  std::vector<std::string> says;
};
void PrintTo(const WatchRow& row, std::ostream* out) { *out << row.what; }

/// Heat that strains at 10 min, harms at 1 h and kills at 3 h, which is what half an hour at the lethal limit comes to.
Hazard heat(ChannelId dose, ChannelId tissue) {
  return {"heat, in all as harmful as % at 40 degC",
          dose,
          {600.0, 3600.0, 10800.0},
          {"heat, in all as harmful as % at 48 degC", 1800.0},
          tissue,
          {"fan", "battery"},
          "nothing cools"};
}
/// A watch over one dose in tissue of 45 degC.
PlantWatch::Parameters herbs(AgentStage& stage, Points dose) {
  return {"herbs", {heat(stage.moved("dose", std::move(dose)), stage.moved("tissue", {{0_s, 45.0 + kZeroCelsius}}))}};
}

/// What the watch logs as harm: "instant state: what".
std::vector<std::string> harm(const AgentStage& stage) {
  std::vector<std::string> out;
  for (const auto& entry : stage.log())
    if (entry.kind == EventKind::harm)
      out.push_back(std::to_string(entry.when.ms / 1000) + " " + entry.what.substr(0, entry.what.find(';')));
  return out;
}

std::string row_name(const testing::TestParamInfo<WatchRow>& tested) {
  std::string name;
  for (char c : tested.param.what)
    if (c != ',') name += c == ' ' ? '_' : c;
  return name;
}

class WatchTable : public testing::TestWithParam<WatchRow> {};

TEST_P(WatchTable, StepsDownWhereItsDosePassesAMark) {
  AgentStage stage(6_h);
  stage.agent<PlantWatch>(herbs(stage, GetParam().values));
  stage.run();
  EXPECT_EQ(harm(stage), GetParam().says);
}

// Doses go along straight lines, so that marks are passed at full seconds.
const WatchRow kWatch[] = {
    {"is fine below every mark", {{0_s, 0}, {5_h, 599.9}, {6_h, 0}}, {}},
    {"is strained, then harmed, then lost",
     {{0_s, 0}, {5_h, 18000}},
     {"600 strained: heat, in all as harmful as 10 min at 40 degC",
      "3600 harmed: heat, in all as harmful as 1.0 h at 40 degC",
      "10800 lost: heat, in all as harmful as 30 min at 48 degC"}},
    {"is strained once however often its dose comes back",
     {{0_s, 0}, {700_s, 700}, {1400_s, 0}, {2100_s, 700}, {2800_s, 0}, {3500_s, 700}},
     {"600 strained: heat, in all as harmful as 10 min at 40 degC"}},
    {"goes on from where it stands when its dose comes back",
     {{0_s, 0}, {700_s, 700}, {1400_s, 0}, {5400_s, 4000}},
     {"600 strained: heat, in all as harmful as 10 min at 40 degC",
      "5000 harmed: heat, in all as harmful as 1.0 h at 40 degC"}},
    {"says at once what its dose has come to before",
     {{0_s, 5000}, {1_h, 0}},
     {"0 strained: heat, in all as harmful as 10 min at 40 degC",
      "0 harmed: heat, in all as harmful as 1.0 h at 40 degC"}},
};
INSTANTIATE_TEST_SUITE_P(Rows, WatchTable, testing::ValuesIn(kWatch), row_name);

/// Marks of strain, harm and loss [s], and what a dose that grows by a second a second comes to within six hours.
struct MarksRow {
  std::string what;
  std::array<double, 3> at;
  std::vector<std::string> says;
};
void PrintTo(const MarksRow& row, std::ostream* out) { *out << row.what; }
class MarksTable : public testing::TestWithParam<MarksRow> {};

TEST_P(MarksTable, ComesToTheSmallestMarkFurtherDownFirst) {
  AgentStage stage(6_h);
  auto p = herbs(stage, {{0_s, 0}, {6_h, 21600}});
  p.hazards[0].at = GetParam().at;
  stage.agent<PlantWatch>(p);
  stage.run();
  std::vector<std::string> states;
  for (const auto& line : harm(stage)) states.push_back(line.substr(0, line.find(':')));
  EXPECT_EQ(states, GetParam().says);
}

constexpr double kNot = Hazard::kNever;
const MarksRow kMarks[] = {
    {"in order", {600, 3600, 10800}, {"600 strained", "3600 harmed", "10800 lost"}},
    {"is lost before it would be harmed", {600, 3600, 1800}, {"600 strained", "1800 lost"}},
    {"is lost before it would be strained", {600, 3600, 60}, {"60 lost"}},
    {"is harmed before it would be strained", {3600, 600, 10800}, {"600 harmed", "10800 lost"}},
    {"is the worse of two at one mark", {600, 3600, 3600}, {"600 strained", "3600 lost"}},
    {"never dies of what does not kill", {600, 3600, kNot}, {"600 strained", "3600 harmed"}},
    {"has only what it can come to", {kNot, kNot, 7200}, {"7200 lost"}},
};
INSTANTIATE_TEST_SUITE_P(Rows, MarksTable, testing::ValuesIn(kMarks), [](const auto& tested) {
  return row_name({{tested.param.what, {}, {}}, tested.index});
});

TEST(PlantWatch, SaysADoseInTheUnitThatSuitsIt) {
  AgentStage stage(kDay * 4);
  auto p = herbs(stage, {{0_s, 0}, {kDay * 4, 4 * 86400.0}});
  p.hazards[0].what = "dry air for %";
  p.hazards[0].at = {3540.0, 47.5 * 3600.0, 60.0 * 3600.0};
  p.hazards[0].when_lost = {};  // no words of its own: the hazard's, with the dose that was reached
  stage.agent<PlantWatch>(p);
  stage.run();
  EXPECT_EQ(harm(stage),
            (std::vector<std::string>{"3540 strained: dry air for 59 min", "171000 harmed: dry air for 47.5 h",
                                      "216000 lost: dry air for 2.5 d"}));
}

TEST(PlantWatch, CountsEachHazardByItself) {
  AgentStage stage(2_h);
  auto p = herbs(stage, {{0_s, 0}, {2_h, 7200}});
  p.hazards.push_back({"cold of %",
                       stage.moved("cold", {{0_s, 0}, {2_h, 3600}}),
                       {900.0, kNot, 1500.0},
                       {},
                       stage.moved("cold tissue", {{0_s, 2.0 + kZeroCelsius}}),
                       {},
                       "nothing heats"});
  stage.agent<PlantWatch>(p);
  stage.run();
  EXPECT_EQ(harm(stage), (std::vector<std::string>{"600 strained: heat, in all as harmful as 10 min at 40 degC",
                                                   "1800 strained: cold of 15 min", "3000 lost: cold of 25 min",
                                                   "3600 harmed: heat, in all as harmful as 1.0 h at 40 degC"}));
}

TEST(PlantWatch, SaysWhyItCameToThatAlthoughNothingFailed) {
  AgentStage stage(1_h);
  stage.agent<PlantWatch>(herbs(stage, {{0_s, 0}, {1_h, 3000}}));
  stage.run();
  EXPECT_EQ(stage.chain_of("strained"),
            "herbs strained: heat, in all as harmful as 10 min at 40 degC; tissue 45.0 degC at that moment <- herbs "
            "nothing cools");
}

TEST(PlantWatch, LeadsBackToTheFailureThatStandsAndForgetsOneThatIsOver) {
  for (const bool mended : {false, true}) {
    AgentStage stage(2_h);
    const ChannelId permit = stage.channel("permit", 1.0);
    Points charge{{0_s, 1000.0}, {100_s, 0.0}};
    if (mended) charge.emplace_back(200_s, 1000.0);
    stage.agent<BatteryGuard>(
        {"battery", stage.moved("charge", charge), 1000.0, {{permit, 0.1, 0.3, "", BatteryGuard::Act::cuts_off}}});
    stage.agent<PlantWatch>(herbs(stage, {{300_s, 0}, {2_h, 6900}}));
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
    stage.agent<PlantWatch>(herbs(stage, {{0_s, 0}, {1_h, 3000}}));
    stage.run();
    const std::string chain = stage.chain_of("strained");
    EXPECT_TRUE(chain.ends_with(fan_too ? "<- fan fails" : "<- herbs nothing cools")) << chain;
  }
}

TEST(PlantWatch, BlamesNoDeviceForWhatNoneCouldKeepOff) {
  AgentStage stage(1_h);
  stage.agent<Failing>({"fan"});
  auto p = herbs(stage, {{0_s, 0}, {1_h, 3000}});
  p.hazards[0].failed_by = {};
  p.hazards[0].otherwise = "got too cold: nothing heats the house";
  stage.agent<PlantWatch>(p);
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
