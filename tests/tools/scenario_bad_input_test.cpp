// SPDX-License-Identifier: Apache-2.0
// One mistake at a time in a sound scenario: its kind, its line and column, and what the message offers.
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/support/small_scenario.hpp"
#include "tools/scenario/assemble.hpp"

namespace noonhouse {
namespace {

using small_scenario::kText;
using small_scenario::with;

UserError error_of(const std::string& text) {
  try {
    small_scenario::read(text);
  } catch (const UserError& error) {
    return error;
  }
  ADD_FAILURE() << "nothing was thrown for\n" << text;
  return {ErrorKind::usage, ""};
}

/// "small.yaml:LINE:COLUMN" of the mark in a text, counted from 1; the mark is taken out.
std::string take_mark(std::string& text) {
  const std::size_t at = text.find('@');
  NOON_ASSERT(at != std::string::npos && text.find('@', at + 1) == std::string::npos);
  text.erase(at, 1);
  const auto line = 1 + std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n');
  const std::size_t start = at == 0 ? 0 : text.rfind('\n', at - 1) + 1;
  return "small.yaml:" + std::to_string(line) + ":" + std::to_string(at - start + 1) + ": ";
}

struct Mistake {
  const char* name;
  const char* from;
  const char* to;  ///< @ stands where the message must point
  ErrorKind kind;
  const char* says;
};

void PrintTo(const Mistake& mistake, std::ostream* out) { *out << mistake.name; }

class ScenarioBadInput : public testing::TestWithParam<Mistake> {};

TEST_P(ScenarioBadInput, IsRefusedAtItsPlaceWithHelp) {
  const Mistake& mistake = GetParam();
  std::string text = with(kText, mistake.from, mistake.to);
  const std::string place = take_mark(text);
  const UserError error = error_of(text);
  const std::string message = error.what();
  EXPECT_EQ(error.kind(), mistake.kind) << message;
  EXPECT_TRUE(message.starts_with(place)) << place << message;
  EXPECT_NE(message.find(mistake.says), std::string::npos) << mistake.says << "\n" << message;
}

constexpr Mistake kKeys[] = {
    {"UnknownKey", "altitude: 1600 m", "@altitud: 1600 m", ErrorKind::unknown_key, "did you mean \"altitude\"?"},
    {"UnknownKeyAtTheTop", "thermostats:\n  heat", "@thermostat:\n  heat", ErrorKind::unknown_key,
     "did you mean \"thermostats\"?"},
    {"MissingKey", "site:\n  latitude: 35 deg\n  longitude: -106.6 deg\n  altitude: 1600 m",
     "@site:\n  latitude: 35 deg\n  longitude: -106.6 deg", ErrorKind::missing_key, "altitude"},
    {"MissingWeatherKind", "weather:\n  kind: invented heatwave", "@weather:", ErrorKind::missing_key,
     "invented heatwave, invented year, typical year file, plain weather file"},
    {"DuplicateKey", "eaves: 2 m", "eaves: 2 m\n  @eaves: 3 m", ErrorKind::duplicate_key, "small.yaml:18:3"},
    {"PlanWithoutService", "  nothing runs:\n    in_service: []", "  nothing runs:\n    @about: quiet",
     ErrorKind::missing_key, "in_service"},
    {"UnknownKeyOfAPlan", "about: cooled by one thermostat", "@abuot: cooled", ErrorKind::unknown_key,
     "did you mean \"about\"?"},
    {"UnknownKeyInAChange", "starts_at: 31 degC", "@strats_at: 31 degC", ErrorKind::unknown_key,
     "did you mean \"starts_at\"?"},
    {"Loop", "drives: [ridge vent, high mist]", "drives: &loop [@*loop]", ErrorKind::anchor_cycle, "loop"},
};

constexpr Mistake kValues[] = {
    {"WrongUnit", "length: 6 m", "length: @6 L", ErrorKind::wrong_unit, "a unit of volume, and this is a length"},
    {"LetterCaseOfAUnit", "height: 80 cm", "height: @80 CM", ErrorKind::wrong_unit, "did you mean \"80 cm\"?"},
    {"NoUnit", "altitude: 1600 m", "altitude: @1600", ErrorKind::wrong_unit, "did you mean \"1600 m\"?"},
    {"ShareAsAFraction", "share: 60 %", "share: @0.6", ErrorKind::wrong_unit, "did you mean \"60 %\"?"},
    {"Coulombs", "harm_above: 36 degC", "harm_above: @36 C", ErrorKind::wrong_unit, "did you mean \"36 degC\"?"},
    {"DecimalComma", "ridge: 2.8 m", "ridge: @2,8 m", ErrorKind::wrong_type, "did you mean \"2.8 m\"?"},
    {"NegativeArea", "area: 0.8 m2", "area: @-0.8 m2", ErrorKind::out_of_range, "above 0 m2"},
    {"OctalLetters", "nozzles: 6", "nozzles: @0o10", ErrorKind::wrong_type, "whole number"},
    {"BelowAbsoluteZero", "deep_soil: 16 degC", "deep_soil: @-300 degC", ErrorKind::out_of_range, "absolute zero"},
    {"NoSuchDay", "start: 2025-07-14", "start: @2025-06-31", ErrorKind::wrong_type, "June has 30 days; this must be"},
    {"ABatteryByItsCharge", "battery: 600 Wh", "battery: @100 Ah", ErrorKind::wrong_unit,
     "times volts: 100 Ah at 12 V is 1200 Wh"},
    {"NoSuchTime", "at: 07:00", "at: @25:00", ErrorKind::wrong_type, "time"},
    {"ATimeThatWasMadeANumber", "at: 07:00", "at: @1025", ErrorKind::wrong_type,
     "a time of day from 00:00 to 24:00, such as \"08:30\""},
    {"NoSuchSide", "side: back roof", "side: @back rof", ErrorKind::wrong_type, "did you mean \"back roof\"?"},
    {"QuotedNumber", "nozzles: 6", "nozzles: @\"6\"", ErrorKind::wrong_type, "remove the quotes"},
    {"WordForAMapping", "sensors:\n  bench sensor:\n    bay: west\n    height: 1 m", "sensors: @none",
     ErrorKind::wrong_type, "a mapping"},
    {"WordForAChange", "change:\n      thermostats:\n        heat watch:\n          starts_at: 31 degC",
     "change: @none", ErrorKind::wrong_type, "a mapping"},
};

constexpr Mistake kNames[] = {
    {"UnknownBay", "bay: west\n    side", "bay: @wset\n    side", ErrorKind::unknown_name, "did you mean \"west\"?"},
    {"UnknownPlantKind", "kind: fern", "kind: @fren", ErrorKind::unknown_name, "did you mean \"fern\"?"},
    {"UnknownKindOfTheLibrary", "leaf_area_index: 2\n", "like: @leafy corp\n", ErrorKind::wrong_type,
     "did you mean \"leafy crop\"?"},
    {"UnknownBench", "place: long bench", "place: @long bnech", ErrorKind::unknown_name,
     "did you mean \"long bench\"?"},
    {"UnknownDriven", "drives: [ridge vent, high mist]", "drives: [ridge vent, @high mits]", ErrorKind::unknown_name,
     "did you mean \"high mist\"?"},
    {"UnknownInService", "[ridge vent, high mist, heat watch]", "[ridge vent, @hihg mist, heat watch]",
     ErrorKind::unknown_name, "did you mean \"high mist\"?"},
    {"UnknownInChange", "thermostats:\n        heat watch:\n          starts_at: 31 degC",
     "openings:\n        @rigde vent:\n          area: 1 m2", ErrorKind::unknown_name, "did you mean \"ridge vent\"?"},
    {"ChangeOfWhatIsNotThere", "thermostats:\n        heat watch:\n          starts_at: 31 degC",
     "fans:\n        @gable fan:\n          flow: 100 m3/h", ErrorKind::unknown_name, "there is none"},
};

constexpr Mistake kGeometry[] = {
    {"BenchAboveRidge", "height: 80 cm", "height: @3 m", ErrorKind::outside_house, "2.8 m high"},
    {"BenchLongerThanItsBay", "length: 3 m\n    width: 90 cm", "length: @4 m\n    width: 90 cm",
     ErrorKind::outside_house, "3.6 m long"},
    {"BenchWiderThanTheHouse", "width: 90 cm", "width: @3.2 m", ErrorKind::outside_house, "3 m wide"},
    {"SensorAboveRidge", "bench sensor:\n    bay: west\n    height: 1 m",
     "bench sensor:\n    bay: west\n    height: @2.9 m", ErrorKind::outside_house, "2.8 m high"},
    {"MistAboveRidge", "height: 2.2 m", "height: @2.8 m", ErrorKind::outside_house,
     "2.8 m high at the ridge; give at least 0 m and less than that"},
    {"RoofLineFarAboveRidge", "height: 2.2 m", "wets: roof\n    height: @5.9 m", ErrorKind::outside_house,
     "a line that wets the roof is at most 5.8 m high"},
    {"OpeningLargerThanItsRoof", "area: 0.8 m2", "area: @40 m2", ErrorKind::does_not_fit, "back roof of the west bay"},
    {"VentOffTheRoof", "centre: 2.6 m", "centre: @1.5 m", ErrorKind::outside_house, "from 2 m to 2.8 m"},
    {"EndOfAnotherBay", "side: back roof", "side: @last end", ErrorKind::outside_house, "no such side"},
    {"RidgeBelowEaves", "ridge: 2.8 m", "ridge: @1.9 m", ErrorKind::does_not_fit, "2 m"},
    {"SharesOfBays", "bays:\n    west:\n      share: 60 %\n    east:\n      share: 40 %",
     "@bays:\n    west:\n      share: 60 %\n    east:\n      share: 30 %", ErrorKind::does_not_fit, "add up to 90 %"},
    {"UnderABaysFloor", "    place: long bench\n", "    place: west\n    under: @true\n", ErrorKind::does_not_fit,
     "nothing stands under the west"},
    {"PlantsLargerThanTheFloor", "place: long bench\n    area: 2 m2", "place: east\n    area: @8 m2",
     ErrorKind::does_not_fit, "7.2 m² of it are not under benches"},
    {"PlantsLargerThanTheOpenFloor", "place: long bench\n    area: 2 m2", "place: west\n    area: @9 m2",
     ErrorKind::does_not_fit, "8.1 m² of it are not under benches"},
    {"PlantsLargerThanTheirBench", "area: 2 m2", "area: @3 m2", ErrorKind::does_not_fit, "it has 2.7 m²"},
};

constexpr Mistake kContradictions[] = {
    {"APadLargerThanAnyWall", "benches:\n",
     "pads:\n  wall: { bay: west, area: @100 m2, centre: 1 m, pump_power: 9 W }\nbenches:\n", ErrorKind::does_not_fit,
     "the largest wall of the west bay"},
    {"StopsWhereItStarts", "stops_at: 29 degC", "stops_at: @32 degC", ErrorKind::out_of_range, "differ from starts_at"},
    {"StopsWhereItStartsByAPlan", "    stops_at: 29 degC", "    stops_at: @31 degC", ErrorKind::out_of_range,
     "differ from starts_at"},
    {"ThermostatOnHumidity", "height: 1 m\nthermostats:\n  heat watch:\n    sensor: bench sensor",
     "height: 1 m\n    measures: humidity\nthermostats:\n  heat watch:\n    sensor: @bench sensor",
     ErrorKind::wrong_type, "measures temperature"},
    {"TankMarksCrossed", "restart_mark: 40 L", "restart_mark: @10 L", ErrorKind::out_of_range, "above low_mark, 20 L"},
    {"TankTooFull", "starts_with: 250 L", "starts_with: @350 L", ErrorKind::does_not_fit, "than the tank holds, 300 L"},
    {"RestartAboveBrim", "restart_mark: 40 L", "restart_mark: @400 L", ErrorKind::does_not_fit, "brim, 300 L"},
    {"LethalBelowHarm", "lethal_above: 42 degC", "lethal_above: @30 degC", ErrorKind::out_of_range, "harm limit"},
    {"RuleThatAlwaysHolds", "tank:\n  capacity", "rules:\n  @idle:\n    forbids: [high mist]\ntank:\n  capacity",
     ErrorKind::missing_key, "has no condition and would always hold; give one"},
    {"RuleOfTheWholeDay", "tank:\n  capacity",
     "rules:\n  @idle:\n    from: 06:00\n    until: 06:00\n    calls: [high mist]\ntank:\n  capacity",
     ErrorKind::missing_key, "has no condition and would always hold; give one"},
    {"RuleWithLimitsOfNoReading", "tank:\n  capacity",
     "rules:\n  @idle:\n    warmer_than: 30 degC\n    calls: [high mist]\ntank:\n  capacity", ErrorKind::missing_key,
     "limits of a reading need the sensor that they are for"},
    {"VisitThatOpensWhatItShuts", "      waters: [ferns]", "      opens: [ridge vent]\n      @shuts: [ridge vent]",
     ErrorKind::does_not_fit, "the ridge vent stands under opens too"},
    {"VisitThatDoesNothing", "    morning:\n      at: 07:00\n      waters: [ferns]", "    @morning:\n      at: 07:00",
     ErrorKind::missing_key,
     "nothing is done; say what with waters, opens or shuts (waters: [] only looks), or take it out"},
    {"ResponseThatOpensWhatItShuts", "grower:\n",
     "rules:\n  wet: { raining: true }\ngrower:\n  responses:\n    hurry:\n      sign: wet\n      opens: [ridge vent]\n"
     "      @shuts: [high mist, ridge vent]\n",
     ErrorKind::does_not_fit, "the ridge vent stands under opens too"},
    {"ResponseThatDoesNothing", "grower:\n",
     "rules:\n  wet: { raining: true }\ngrower:\n  responses:\n    @hurry:\n      sign: wet\n", ErrorKind::missing_key,
     "nothing is done; say what with opens or shuts"},
    {"RuleThatCallsAndForbids", "tank:\n  capacity",
     "rules:\n  idle:\n    raining: true\n    @calls: [high mist]\n    forbids: [high mist]\ntank:\n  capacity",
     ErrorKind::does_not_fit, "forbidding would always win"},
    {"BatteryMarksCrossed", "battery: 600 Wh", "battery: 600 Wh\n  reconnect_at: @10 %", ErrorKind::out_of_range,
     "above cut_off_at, 20 % (not given)"},
    {"CutOffAboveTheReconnectionNotGiven", "battery: 600 Wh", "battery: 600 Wh\n  cut_off_at: @98 %",
     ErrorKind::out_of_range, "must be below reconnect_at, 97 % (not given)"},
    {"RefillCalledAtTheBrim", "tank:\n  capacity",
     "refills:\n  cart: { called_at: @0.3 m3, brings: 100 L }\ntank:\n  capacity", ErrorKind::does_not_fit,
     "must be below the tank's brim, 0.3 m3"},
    {"APumpTooWeakForItsLift", "mist_lines:\n",
     "pumps:\n  hill: { shut_off: @0.05 bar, most_flow: 5 L/min, power: 55 W, lift: 1.2 m }\nmist_lines:\n",
     ErrorKind::does_not_fit, "the lift, 1.2 m, takes 0.118 bar; allowed: above that, or a lift below 0.511 m"},
    {"ADayBeyondTheRun", "tank:\n  capacity",
     "hazards:\n  gust: { kind: gusts, day: @9, at: 15:00, speed: 18 m/s }\ntank:\n  capacity", ErrorKind::out_of_range,
     "the run has 2 days; give 1 to 2"},
    {"LethalInFahrenheit", "lethal_above: 42 degC", "lethal_above: @42 degF", ErrorKind::out_of_range,
     "that is 5.6 °C and must not be below the harm limit, harm_above, 36.0 °C; did you mean \"42 degC\"?"},
    {"HarmInFahrenheit", "harm_above: 36 degC", "harm_above: @36 degF", ErrorKind::out_of_range,
     "that is 2.2 °C and must be warmer than harm_below, 4.0 °C; did you mean \"36 degC\"?"},
    {"HarmInFahrenheitBelowADefault",
     "    harm_above: 36 degC\n    lethal_above: 42 degC\n    harm_below: 4 degC\n"
     "    lethal_below: 0 degC\n",
     "    like: fruiting crop\n    harm_above: @37 degF\n", ErrorKind::out_of_range,
     "that is 2.8 °C and must be warmer than harm_below, 4.0 °C (not given); did you mean \"37 degC\"?"},
    {"HarmAboveTheLethalDefault", "    harm_above: 36 degC\n    lethal_above: 42 degC\n", "    harm_above: @60 degC\n",
     ErrorKind::out_of_range, "must not be above the lethal limit, lethal_above, "},
};

const auto kName = [](const testing::TestParamInfo<Mistake>& it) { return std::string(it.param.name); };
INSTANTIATE_TEST_SUITE_P(Keys, ScenarioBadInput, testing::ValuesIn(kKeys), kName);
INSTANTIATE_TEST_SUITE_P(Values, ScenarioBadInput, testing::ValuesIn(kValues), kName);
INSTANTIATE_TEST_SUITE_P(Names, ScenarioBadInput, testing::ValuesIn(kNames), kName);
INSTANTIATE_TEST_SUITE_P(Geometry, ScenarioBadInput, testing::ValuesIn(kGeometry), kName);
INSTANTIATE_TEST_SUITE_P(Contradictions, ScenarioBadInput, testing::ValuesIn(kContradictions), kName);

TEST(ScenarioBadText, NothingOrNoMapping) {
  EXPECT_EQ(error_of("").kind(), ErrorKind::file_empty);
  EXPECT_EQ(error_of("# only a comment\n\n").kind(), ErrorKind::file_empty);
  EXPECT_EQ(error_of("- a\n- list\n").kind(), ErrorKind::wrong_type);
  EXPECT_TRUE(std::string(error_of("- a\n").what()).starts_with("small.yaml:1:1: ")) << error_of("- a\n").what();
  const std::string whole = kText;
  const std::string without_plans = whole.substr(0, whole.find("plans:"));
  EXPECT_EQ(error_of(without_plans + "plans: []\n").kind(), ErrorKind::wrong_type);
  EXPECT_EQ(error_of(without_plans + "plans: {}\n").kind(), ErrorKind::wrong_type);
  EXPECT_EQ(error_of(without_plans + "plans:\n  quiet: 3\n").kind(), ErrorKind::wrong_type);
}

TEST(ScenarioBadText, AnUnknownPlanNamesThePlansThereAre) {
  const Scenario scenario = small_scenario::read();
  try {
    scenario.plan("vent and mits");
    FAIL();
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::unknown_name);
    EXPECT_STREQ(error.what(),
                 "small.yaml: no plan is named \"vent and mits\"; its plans are \"nothing runs\", \"vent and mist\", "
                 "did you mean \"vent and mist\"?");
  }
}

TEST(ScenarioBadText, WhatLooksOctalIsDecimal) {
  const ScenarioSpec spec =
      small_scenario::read(with(with(kText, "nozzles: 6", "nozzles: 010"), "power: 60 W", "power: 060 W"))
          .plans.front()
          .spec;
  EXPECT_EQ(spec.mist_lines.front().value.nozzles, 10);
  EXPECT_EQ(*spec.mist_lines.front().value.pump_power_w, 60.0);
}

TEST(ScenarioBadText, WhatLooksLikeBaseSixtyIsATime) {
  const auto plan = small_scenario::read(with(kText, "at: 07:00", "at: 17:05")).plans.front();
  EXPECT_EQ(plan.spec.grower.visits.front().value.at_s, 61'500.0);
}

TEST(ScenarioBadText, AMissingBlockIsSaidWithOneToCopyThatRuns) {
  const std::string offer = "; put one in, such as ";
  std::string text = "title: built from what the messages offer\n";
  std::vector<std::string> blocks;
  for (int i = 0; i < 6; ++i) {
    const UserError error = error_of(text);
    const std::string message = error.what(), named = message.substr(0, message.find(": there is no such block ("));
    EXPECT_EQ(error.kind(), ErrorKind::missing_key) << message;
    blocks.push_back(named.substr(named.rfind(' ') + 1));
    const std::size_t example = message.find(offer) + offer.size();
    text += message.substr(example, message.find('\n') - example) + "\n";
  }
  EXPECT_EQ(blocks, (std::vector<std::string>{"run", "site", "weather", "house", "tank", "power"}));
  const Scenario scenario = small_scenario::read(text);
  EXPECT_NO_THROW(weather_of(scenario, scenario.plans.front()));
}

}  // namespace
}  // namespace noonhouse
