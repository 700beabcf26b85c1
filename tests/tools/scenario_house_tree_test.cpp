// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <sstream>

#include "tests/support/small_scenario.hpp"
#include "tools/scenario/field_facts.hpp"
#include "tools/scenario/field_tools.hpp"
#include "tools/scenario/house_hints.hpp"
#include "tools/scenario/scenario_fields.hpp"
#include "tools/scenario/tree_text.hpp"

namespace noonhouse {
namespace {

using small_scenario::kText;
using small_scenario::with;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

/// The text without its drawing and with every run of spaces made one: what it says, wherever it was broken.
std::string unfolded(const std::string& text) {
  std::string out;
  for (std::string line : lines_of(text)) {
    for (const std::string part : {"├─", "└─", "│"})
      for (std::size_t at = line.find(part); at != std::string::npos; at = line.find(part))
        line.replace(at, part.size(), "");
    std::istringstream words(line);
    for (std::string word; words >> word;) out += word + " ";
  }
  return out;
}

/// The line that holds a text; fails where there is none.
std::size_t line_with(const std::vector<std::string>& lines, const std::string& part, std::size_t from = 0) {
  for (std::size_t i = from; i < lines.size(); ++i)
    if (lines[i].find(part) != std::string::npos) return i;
  ADD_FAILURE() << "no line says " << part;
  return 0;
}

std::string tree(const std::string& text = kText, const std::string& plan = "vent and mist",
                 UnitSystem system = UnitSystem::metric) {
  return house_tree(small_scenario::read(text).plan(plan), system);
}

TEST(HouseTree, PutsEachThingIntoItsBayAndLayer) {
  const auto lines = lines_of(tree());
  const std::size_t west = line_with(lines, "west bay: share 60 %, length 3.6 m, floor 10.8 m², air 25.9 m³");
  const std::size_t top = line_with(lines, "layer 4, 2.1 m to 2.8 m above the floor, air 3.31 m³", west);
  const std::size_t third = line_with(lines, "layer 3, 1.4 m to 2.1 m above the floor", west);
  const std::size_t second = line_with(lines, "layer 2, 0.7 m to 1.4 m above the floor", west);
  const std::size_t first = line_with(lines, "layer 1, 0 m to 0.7 m above the floor", west);
  const std::size_t east = line_with(lines, "east bay: share 40 %");
  EXPECT_TRUE(west < top && top < third && third < second && second < first && first < east);
  const std::size_t vent = line_with(lines, "opening ridge vent: side back roof, area 0.8 m², height 0.4 m");
  const std::size_t mist = line_with(lines, "mist line high mist: ");
  EXPECT_TRUE(top < vent && vent < third && top < mist && mist < third);
  EXPECT_GT(line_with(lines, "mist line high mist", mist + 1), east);  // it sprays in both bays
  for (const char* what : {"bench long bench: height 0.8 m, length 3 m, width 0.9 m",
                           "plants ferns: fern on the long bench, area 2 m²", "sensor bench sensor: measures"}) {
    const std::size_t at = line_with(lines, what);
    EXPECT_TRUE(second < at && at < first) << what;
  }
}

TEST(HouseTree, AreasAndVolumesAreThoseOfTheGable) {
  // By hand: section 3 m x 2 m + 3 m x 0.8 m / 2 = 7.2 m2; roof slope length sqrt(1.5^2 + 0.8^2) = 1.7 m. The top
  // layer of the west bay above: 3 m x 0.7 / 0.8 = 2.625 m wide at 2.1 m, so 2.625 x 0.7 / 2 x 3.6 = 3.3075 m3.
  const std::string text = unfolded(tree());
  EXPECT_THAT(text, HasSubstr("floor 18 m², air 43.2 m³, cover 58.8 m²"));  // 2 (6 x 2 + 6 x 1.7 + 7.2)
  EXPECT_THAT(text, HasSubstr("cover: front wall 7.2 m², front roof 6.12 m², back roof 6.12 m², back wall 7.2 m², "
                              "first end 7.2 m²"));
}

TEST(HouseTree, MarksWhatRestsAndWhatControlsDrive) {
  const std::string still = unfolded(tree(kText, "nothing runs"));
  EXPECT_THAT(still, HasSubstr("centre 2.6 m, open when shut 0 % (assumed); at rest in this plan"));
  EXPECT_THAT(still, HasSubstr("drives ridge vent (at rest), high mist (at rest)"));
  EXPECT_THAT(still, HasSubstr("in service: none"));
  const std::string cooled = unfolded(tree());
  EXPECT_THAT(cooled, Not(HasSubstr("at rest")));
  EXPECT_THAT(cooled, HasSubstr("drives ridge vent, high mist tank"));
  EXPECT_THAT(cooled, HasSubstr("starts at 31.0 °C, stops at 29.0 °C"));  // the plan's own start
  EXPECT_THAT(cooled, HasSubstr("visit morning: at 07:00"));
  EXPECT_THAT(cooled, HasSubstr(" waters ferns"));
  EXPECT_THAT(cooled, HasSubstr("plan: vent and mist (cooled by one thermostat)"));
}

TEST(HouseTree, MarksAndListsEveryAssumption) {
  const PlanScenario plan = small_scenario::read().plan("vent and mist");
  const std::string text = unfolded(house_tree(plan));
  const std::size_t at = text.find("assumed, because the scenario does not say (");
  ASSERT_NE(at, std::string::npos);
  const std::string list = text.substr(at);
  int count = 0, folded = 0;
  const std::set<std::string> nothing{"0 s", "0 %",   "0 L",   "0 W", "0 K", "0 m",
                                      "0",   "00:00", "24:00", "any", "no",  "none"};
  for (const Fact& fact : facts_of(plan.spec, UnitSystem::metric, plan.places)) {
    if (!fact.assumed || fact.text.empty()) continue;
    const std::string of = fact.group.substr(0, fact.group.find('.'));
    const bool house =
        of == "house" || of == "site" || of == "weather" || of == "openings" || of == "benches" || of == "plants";
    if (!house && nothing.contains(fact.text)) {
      ++folded;
      continue;
    }
    EXPECT_THAT(list, HasSubstr(key_words(fact.key) + " " + fact.text)) << fact.group;
    ++count;
  }
  EXPECT_GT(count, 60);
  EXPECT_THAT(list, HasSubstr("(" + std::to_string(count) + " values)"));
  EXPECT_GT(folded, 10);
  EXPECT_THAT(list, HasSubstr(std::to_string(folded) + " defaults that do nothing, such as"));
  EXPECT_THAT(list, HasSubstr("house › cover › roof, walls: material clear glass 3 mm, sheets 1,"));
  EXPECT_THAT(text, HasSubstr("ridge 2.8 m and 5 defaults"));
  EXPECT_THAT(list, HasSubstr("house: form gable, arch parts 3, faces 180°, layers 4"));
  EXPECT_THAT(text, HasSubstr("frame 10 %, bears hail 0.7 J (all assumed)"));
  EXPECT_THAT(text, HasSubstr("length 6 m, width 3 m,"));
}

TEST(HouseTree, FoldsTheDefaultsOfARuleThatDoNothing) {
  const std::string rules = "rules:\n  rain: { raining: true, least: 5 min, forbids: [ridge vent] }\ntank:\n  capacity";
  const std::string text = unfolded(tree(with(kText, "tank:\n  capacity", rules)));
  EXPECT_THAT(text, HasSubstr("rule rain: raining yes, least 5 min and 6 defaults forbids ridge vent"));
  EXPECT_THAT(text, Not(HasSubstr("before dusk")));
  EXPECT_THAT(text, HasSubstr("open when shut 0 % (assumed)")) << "this one is a fact of the house";
}

TEST(HouseTree, WhatIsGivenIsNotCalledAssumed) {
  std::string whole = save_fields(small_scenario::read().plan("vent and mist").spec);
  const Scenario scenario = small_scenario::read(whole);
  EXPECT_THAT(house_tree(scenario.plan("base")), HasSubstr("nothing was assumed"));
  EXPECT_THAT(house_tree(scenario.plan("base")), Not(HasSubstr("(assumed)")));
}

TEST(HouseTree, SpeaksTheUnitsAskedFor) {
  const std::string us = unfolded(tree(kText, "vent and mist", UnitSystem::us));
  EXPECT_THAT(us, HasSubstr("floor 194 ft², air 1526 ft³"));  // 18 / 0.3048^2 = 193.75; 43.2 / 0.3048^3 = 1525.6
  EXPECT_THAT(us, HasSubstr("capacity 79.3 gal"));            // 0.3 / 3.785411784e-3 = 79.25
  EXPECT_THAT(us, HasSubstr("starts at 87.8 °F"));            // 31 degC
  EXPECT_THAT(us, Not(HasSubstr(" m²")));
  EXPECT_THAT(us, Not(HasSubstr("°C")));
}

TEST(HouseTree, NoLineIsWiderThanAHundredCharacters) {
  const std::string wordy = with(kText, "title: A small house", "title: A " + std::string(300, 'o') + " small house");
  for (const UnitSystem system : {UnitSystem::metric, UnitSystem::us})
    for (const std::string& line : lines_of(tree(wordy, "nothing runs", system)))
      EXPECT_LE(characters(line), 100U) << line;
}

/// Ferns on the floor of the east bay, orchids on a rail, and a drip line to both.
std::string hung_and_dripped() {
  std::string text =
      with(kText, "    width: 90 cm\n",
           "    width: 90 cm\n  rail: {bay: east, hangs: true, height: 1.7 m, length: 2 m, width: 20 cm}\n");
  text = with(text, "    place: long bench\n", "    place: east\n");
  text = with(text, "sensors:\n", "  orchids: {kind: orchid, place: rail, area: 0.3 m2}\nsensors:\n");
  text = with(text, "waters: [ferns]", "waters: []");
  text = with(text, "tank:\n", "drip_lines:\n  drippers: {waters: [ferns, orchids], flow: 4 L/h}\ntank:\n");
  return with(text, "[ridge vent, high mist, heat watch]", "[ridge vent, high mist, heat watch, drippers]");
}

TEST(HouseTree, ShowsWhatHangsWhatStandsOnTheFloorAndWhatDrips) {
  const auto lines = lines_of(tree(hung_and_dripped()));
  const std::size_t east = line_with(lines, "east bay: share 40 %");
  const std::size_t third = line_with(lines, "layer 3, 1.4 m to 2.1 m", east);
  const std::size_t second = line_with(lines, "layer 2, 0.7 m to 1.4 m", east);
  const std::size_t first = line_with(lines, "layer 1, 0 m to 0.7 m", east);
  const std::size_t rail = line_with(lines, "rail rail: height 1.7 m"),
                    orchids = line_with(lines, "plants orchids: orchid hanging from the rail, area 0.3 m²"),
                    ferns = line_with(lines, "plants ferns: fern on the floor of the east bay, area 2 m²");
  EXPECT_TRUE(third < rail && rail < orchids && orchids < second);
  EXPECT_LT(first, ferns);
  EXPECT_THAT(unfolded(tree(hung_and_dripped())), HasSubstr("drip lines drippers: "));
  EXPECT_THAT(unfolded(tree(hung_and_dripped())), HasSubstr("waters ferns, orchids"));
  EXPECT_THAT(unfolded(tree(hung_and_dripped(), "nothing runs")),
              HasSubstr("at rest in this plan waters ferns, orchids"));
}

TEST(HouseTree, ShowsALineOverTheRoofWithTheCover) {
  const auto lines = lines_of(tree(with(kText, "height: 2.2 m", "wets: roof\n    height: 2.8 m")));
  const std::size_t cover = line_with(lines, "cover: front wall"),
                    line = line_with(lines, "mist line high mist: height 2.8 m"), top = line_with(lines, "layer 4");
  EXPECT_TRUE(cover < line && line < top);
  EXPECT_EQ(std::count_if(lines.begin(), lines.end(),
                          [](const auto& text) { return text.find("mist line high mist") < text.size(); }),
            2)
      << "once in each bay";
}

TEST(HouseTree, SaysWhatAKindIsLikeAndWhatItBears) {
  const std::string text = unfolded(tree());
  EXPECT_THAT(text, HasSubstr("fern, like leafy crop limits: harm above 36.0 °C, lethal above 42.0 °C, heat tenfold"));
  EXPECT_THAT(text, HasSubstr("light: burns above"));
}

TEST(HouseHints, ASoundPlanHasNone) {
  EXPECT_THAT(house_hints(small_scenario::read().plan("vent and mist")), IsEmpty());
  EXPECT_THAT(tree(), Not(HasSubstr("worth a look")));
}

std::vector<std::string> hints(const std::string& service, const std::string& visit = "waters: [ferns]") {
  std::string text = with(kText, "[ridge vent, high mist, heat watch]", service);
  return house_hints(small_scenario::read(with(text, "waters: [ferns]", visit)).plan("vent and mist"));
}

TEST(HouseHints, NameWhatIsProbablyNotMeant) {
  EXPECT_THAT(hints("[ridge vent]"),
              ElementsAre("ridge vent is in service, but no control in service and no visit ever calls it"));
  EXPECT_THAT(hints("[ridge vent]", "opens: [ridge vent]\n      waters: [ferns]"), IsEmpty());
  EXPECT_THAT(hints("[heat watch]"),
              ElementsAre("heat watch is in service, but all it drives is at rest: ridge vent, high mist",
                          "no opening and no fan is in service: the house breathes by leakage alone"));
  EXPECT_THAT(hints("[ridge vent, heat watch]", "waters: []"),
              ElementsAre("ferns on the long bench are watered by no visit"));
  EXPECT_THAT(hints("[high mist, heat watch]", "opens: [ridge vent]\n      waters: [ferns]"),
              ElementsAre("the visit morning opens ridge vent, which this plan leaves at rest",
                          "no opening and no fan is in service: the house breathes by leakage alone"));
}

TEST(HouseHints, ADripLineWatersWhileItIsInService) {
  const Scenario scenario = small_scenario::read(hung_and_dripped());
  EXPECT_THAT(house_hints(scenario.plan("vent and mist")),
              ElementsAre("drippers is in service, but no control in service and no visit ever calls it"));
  EXPECT_THAT(
      house_hints(scenario.plan("nothing runs")),
      testing::IsSupersetOf({"ferns on the floor of the east bay are watered by no visit and no drip line in service",
                             "orchids hanging from the rail are watered by no visit and no drip line in service"}));
}

TEST(HouseHints, AFanBringsAirByItsInlet) {
  const std::string fan =
      "fans:\n  gable fan:\n    bay: east\n    height: 2 m\n    inlet_bay: west\n    inlet_height: 1 m\n"
      "    flow: 900 m3/h\n    power: 40 W\nmist_lines:";
  std::string text = with(kText, "mist_lines:", fan);
  text = with(text, "[ridge vent, high mist, heat watch]", "[gable fan, heat watch]");
  text = with(text, "drives: [ridge vent, high mist]", "drives: [gable fan]");
  EXPECT_THAT(house_hints(small_scenario::read(text).plan("vent and mist")),
              ElementsAre("no opening is in service: beside leakage, air comes in by the fans' inlets alone"));
  EXPECT_THAT(unfolded(tree(text)), HasSubstr("inlet of fan gable fan: inlet height 1 m"));
}

TEST(TreeText, WrapsAtSpacesAndKeepsNumbersWithTheirUnits) {
  EXPECT_THAT(wrapped("one two three", 7), ElementsAre("one two", "three"));
  EXPECT_THAT(wrapped("", 7), ElementsAre(""));
  EXPECT_THAT(wrapped("  one \n\t two ", 20), ElementsAre("one two"));
  EXPECT_THAT(wrapped("abcdefghij", 4), ElementsAre("abcd", "efgh", "ij"));
  EXPECT_THAT(wrapped("°°°° °°", 4), ElementsAre("°°°°", "°°"));  // characters, not bytes
  EXPECT_THAT(wrapped("width " + unbroken("2 m"), 8), ElementsAre("width", "2 m"));
  EXPECT_THAT(wrapped("red \x1B[31m alert", 40), ElementsAre("red [31m alert"));
}

TEST(TreeText, DrawsBranches) {
  EXPECT_EQ(tree_text({{"a", {{"b", {{"c"}}}, {"d"}}}, {"e"}}, 40),
            "├─ a\n"
            "│  ├─ b\n"
            "│  │  └─ c\n"
            "│  └─ d\n"
            "└─ e\n");
  EXPECT_EQ(tree_text({{"one two three", {{"b"}}}, {"four five six"}}, 15),
            "├─ one two\n"
            "│  │ three\n"
            "│  └─ b\n"
            "└─ four five\n"
            "     six\n");
  EXPECT_EQ(tree_text({}, 40), "");
}

}  // namespace
}  // namespace noonhouse
