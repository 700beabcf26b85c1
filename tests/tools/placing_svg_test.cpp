// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "tests/support/strict_xml.hpp"
#include "tests/tools/placing_answer_sample.hpp"
#include "tools/placing/place_svg.hpp"

namespace noonhouse {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

/// Where the paths of a class go, in the order of the document; the last of each is the legend's.
std::vector<std::string> paths_of(const std::string& svg, const std::string& look) {
  std::vector<std::string> paths;
  for (const StrictXml::Element& found : StrictXml::elements_of(svg))
    if (found.name == "path" && found.attributes.at("class") == look) paths.push_back(found.attributes.at("d"));
  return paths;
}

/// One group on one place, its limits 34 and 10 degC, with these peaks; never colder than 20 degC.
PlaceAnswer one_row(const std::vector<double>& peaks_c) {
  PlaceAnswer answer = invented::sample_answer();
  answer.places.resize(1);
  answer.groups.resize(1);
  GroupShown& group = answer.groups[0];
  group.harm_above_k = invented::kIce + 34.0;
  group.harm_below_k = invented::kIce + 10.0;
  group.stands_on = group.should_stand_on = 0;
  group.cannot = {""};
  group.felt.resize(1);
  group.felt[0].days.clear();
  for (const double peak_c : peaks_c) {
    DayFelt day;
    day.peak_k = invented::kIce + peak_c;
    day.lowest_k = invented::kIce + 20.0;
    group.felt[0].days.push_back(day);
  }
  StandingPlan plan;
  plan.place = {0};
  answer.standing = plan;
  return answer;
}

TEST(PlaceSvg, IsOnePictureWithNameAndDescription) {
  const std::string svg = place_svg(invented::sample_answer());
  const std::vector<StrictXml::Element> elements = StrictXml::elements_of(svg);
  ASSERT_GT(elements.size(), 3U);
  EXPECT_EQ(elements[0].name, "svg");
  EXPECT_EQ(elements[0].attributes.at("role"), "img");
  EXPECT_THAT(elements[0].attributes.at("viewBox"), StartsWith("0 0 640 "));
  EXPECT_EQ(elements[1].name, "title");
  EXPECT_EQ(elements[1].text, "Where the plants of The long house should stand");
  EXPECT_EQ(elements[2].name, "desc");
  EXPECT_EQ(elements[2].text,
            "One group should move. lettuce: Should move: now on the high bench, better under the low bench. "
            "on the high bench: harmed, peak 36.0 °C. under the low bench: kept, peak 27.0 °C. "
            "hanging from the rail: strained, peak 34.5 °C. basil: Stays on the high bench. "
            "on the high bench: kept, peak 38.5 °C. under the low bench: lost, peak 25.0 °C. "
            "hanging from the rail: cannot stand there.");
}

TEST(PlaceSvg, StandsAlone) {
  const std::string svg = place_svg(invented::sample_answer());
  std::set<std::string> names;
  for (const StrictXml::Element& element : StrictXml::elements_of(svg)) {
    names.insert(element.name);
    for (const auto& [attribute, value] : element.attributes) {
      EXPECT_THAT(attribute, Not(StartsWith("on")));
      EXPECT_THAT(attribute, Not(HasSubstr("href")));
    }
  }
  EXPECT_EQ(names, (std::set<std::string>{"svg", "title", "desc", "style", "defs", "pattern", "rect", "path", "text"}));
  EXPECT_THAT(svg, Not(HasSubstr("@import")));
  for (std::size_t at = svg.find("url("); at != std::string::npos; at = svg.find("url(", at + 1))
    EXPECT_THAT(svg.substr(at), StartsWith("url(#noonhouse-place-")) << "only patterns of its own";
  EXPECT_THAT(svg, HasSubstr("prefers-color-scheme: dark"));
  EXPECT_THAT(svg, HasSubstr("max-width: 480px"));
}

TEST(PlaceSvg, NamesGroupsPlacesAndWhyAPlaceIsNone) {
  const std::vector<std::string> texts = texts_of(place_svg(invented::sample_answer()), "text");
  for (const char* text :
       {"The long house", "lettuce", "basil", "on the high bench", "under the low bench",
        "cannot stand here: the rail bears no pots", "harmed, peak 36.0 °C", "One group should move.",
        "On the high bench its leaves reach 36.0 °C.", "Harmed above 34.0 °C, below 0.0 °C.", "within 2 K of a limit"})
    EXPECT_THAT(texts, Contains(text));
}

TEST(PlaceSvg, CellsLieWhereTheDaysAreAndLookAsTheyWere) {
  // Four days, 153 units wide each from 14 on: far below, below, within 2 K of and above the limit of 34.
  const std::string svg = place_svg(one_row({25.0, 30.0, 33.0, 35.0}));
  const auto begins = [&](const std::string& look) { return paths_of(svg, look).at(0).substr(0, 5); };
  const auto runs = [&](const std::string& look) {
    return paths_of(svg, look).at(0).find("h153.0v") != std::string::npos;
  };
  EXPECT_EQ(begins("cool"), "M14.0");
  EXPECT_EQ(begins("warm"), "M167.");
  EXPECT_EQ(begins("near"), "M320.");
  EXPECT_EQ(begins("hot"), "M473.");
  for (const char* look : {"cool", "warm", "near", "hot"}) EXPECT_TRUE(runs(look)) << look;
  for (const char* look : {"near", "hot"}) {
    const std::string strip = paths_of(svg, std::string(look) + "-mark").at(0);
    EXPECT_EQ(strip.substr(0, 5), begins(look)) << "a pattern along what it marks";
    EXPECT_THAT(strip, HasSubstr("h153.0v8h-153.0z"));
  }
  EXPECT_EQ(paths_of(svg, "cold").size(), 1U) << "of the legend only";
  EXPECT_EQ(paths_of(svg, "far").size(), 1U);
  const std::vector<std::string> texts = texts_of(svg, "text");
  for (const char* number : {"25.0", "30.0", "33.0", "35.0", "07-14", "07-17"}) EXPECT_THAT(texts, Contains(number));
}

TEST(PlaceSvg, ColdAndFarBeyondTheLimitLookTheirOwn) {
  PlaceAnswer answer = one_row({37.0, 20.5});
  answer.groups[0].felt[0].days[1].lowest_k = invented::kIce + 9.0;
  const std::string svg = place_svg(answer);
  EXPECT_EQ(paths_of(svg, "far").size(), 2U);
  EXPECT_THAT(paths_of(svg, "far").at(0), StartsWith("M14.0 "));
  EXPECT_EQ(paths_of(svg, "cold").size(), 2U);
  EXPECT_THAT(paths_of(svg, "cold").at(0), StartsWith("M320.0 "));
  EXPECT_THAT(paths_of(svg, "far-mark").at(0), StartsWith("M14.0 "));
  EXPECT_THAT(paths_of(svg, "cold-mark").at(0), StartsWith("M320.0 "));
}

TEST(PlaceSvg, MarksWhereAGroupStandsAndWhereItShould) {
  // Lettuce stands on the first place and should on the second; basil stands and should on the first.
  const std::string svg = place_svg(invented::sample_answer());
  EXPECT_EQ(paths_of(svg, "now").size(), 3U) << "two groups and the legend";
  EXPECT_EQ(paths_of(svg, "ink").size(), 3U);
  const std::string nowhere = place_svg(invented::unhoused_answer());
  EXPECT_EQ(paths_of(nowhere, "now").size(), 3U);
  EXPECT_EQ(paths_of(nowhere, "ink").size(), 1U) << "nowhere to go: the legend's alone";
  EXPECT_THAT(nowhere, HasSubstr("The lettuce need 6 m²"));
}

TEST(PlaceSvg, NamesFromOutsideStayText) {
  PlaceAnswer answer = invented::sample_answer();
  answer.house = "<script>alert(1)</script> & \"co\"\x01";
  answer.plan = "a < b";
  answer.places[0].name = "shelf \"A\" & <b>'s";
  answer.groups[0].name = "Bob's & <i>";
  answer.groups[1].cannot[2] = "rail < 2 & 'thin'";
  const std::string svg = place_svg(answer);
  EXPECT_THAT(texts_of(svg, "script"), testing::IsEmpty());
  const std::vector<std::string> texts = texts_of(svg, "text");
  EXPECT_THAT(texts, Contains("shelf \"A\" & <b>'s"));
  EXPECT_THAT(texts, Contains("Bob's & <i>"));
  EXPECT_THAT(texts, Contains("cannot stand here: rail < 2 & 'thin'"));
}

TEST(PlaceSvg, ManyDaysHaveNoNumbersAndAYearIsShownByWeeks) {
  const auto has_tenths = [](const std::string& svg) {
    const std::vector<std::string> texts = texts_of(svg, "text");
    return std::find(texts.begin(), texts.end(), "33.0") != texts.end();
  };
  EXPECT_TRUE(has_tenths(place_svg(invented::sample_answer(11))));
  EXPECT_FALSE(has_tenths(place_svg(invented::sample_answer(12))));
  EXPECT_THAT(texts_of(place_svg(invented::sample_answer(14)), "text"), Contains("33"));
  EXPECT_THAT(texts_of(place_svg(invented::sample_answer(15)), "text"), Not(Contains("33")));
  EXPECT_THAT(texts_of(place_svg(invented::sample_answer(15)), "text"), Contains("Each cell is a day."));
  const std::string year = place_svg(invented::sample_answer(365));
  EXPECT_THAT(texts_of(year, "text"), Contains("Each cell is the worst of 7 days."));
  // The worst of every week is above the limit by 2 K at most, but for the last week, which is one day at 33.0.
  EXPECT_THAT(paths_of(year, "hot").at(0), StartsWith("M14.0 "));
  EXPECT_THAT(paths_of(year, "near").at(0), StartsWith("M614.5 "));
}

TEST(PlaceSvg, AYearOfManyGroupsAndPlacesStaysSmall) {
  PlaceAnswer answer = invented::sample_answer(365);
  GroupShown group = answer.groups[0];
  for (std::size_t p = answer.places.size(); p < 12; ++p) {
    answer.places.push_back(answer.places[0]);
    group.felt.push_back(group.felt[p % 3]);
    group.cannot.emplace_back();
  }
  for (PlaceFelt& felt : group.felt)
    for (std::size_t i = 0; i < felt.days.size(); ++i) felt.days[i].peak_k += i / 7 % 2 == 0 ? 0.0 : 4.0;
  answer.groups.assign(8, group);
  const std::string svg = place_svg(answer);
  EXPECT_LT(svg.size(), 400'000U);
  EXPECT_FALSE(StrictXml::fault_of(svg));
}

TEST(PlaceSvg, TheSameAnswerIsTheSameBytes) {
  EXPECT_EQ(place_svg(invented::sample_answer()), place_svg(invented::sample_answer()));
}

TEST(PlaceSvg, AHouseWithoutDaysPlacesOrPlantsIsDrawn) {
  PlaceAnswer answer = invented::sample_answer(0);
  EXPECT_FALSE(StrictXml::fault_of(place_svg(answer)));
  EXPECT_THAT(place_svg(answer), Not(HasSubstr("nan")));
  answer.groups.clear();
  answer.places.clear();
  EXPECT_FALSE(StrictXml::fault_of(place_svg(answer)));
}

TEST(PlaceSvg, LongNamesTakeMoreLines) {
  PlaceAnswer answer = invented::sample_answer();
  answer.places[0].name = "on the shelf of seedlings along the wall between the two doors";
  const std::vector<std::string> texts = texts_of(place_svg(answer), "text");
  EXPECT_THAT(texts, Contains("on the shelf of seedlings along"));
  EXPECT_THAT(texts, Contains("the wall between the two doors"));
}

}  // namespace
}  // namespace noonhouse
