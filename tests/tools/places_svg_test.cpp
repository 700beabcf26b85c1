// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "tests/support/invented_day_light.hpp"
#include "tests/support/strict_xml.hpp"
#include "tools/places/light_svg.hpp"

namespace noonhouse {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

/// The rectangles of a kind of light as (left, width, height); the last of each is the legend's.
std::vector<std::array<double, 3>> bands_of(const std::string& svg, const std::string& kind) {
  std::vector<std::array<double, 3>> bands;
  for (const StrictXml::Element& found : StrictXml::elements_of(svg)) {
    if (found.name != "rect" || !found.attributes.contains("class") || found.attributes.at("class") != kind) continue;
    bands.push_back({std::stod(found.attributes.at("x")), std::stod(found.attributes.at("width")),
                     std::stod(found.attributes.at("height"))});
  }
  return bands;
}

TEST(StrictXml, RefusesWhatIsNotWellFormed) {
  EXPECT_FALSE(StrictXml::fault_of("<a b=\"1\"><c/>x &amp; y</a>\n"));
  for (const char* bad : {"<a>", "<a></b>", "<a b=1/>", "<a b=\"1\" b=\"2\"/>", "<a>x & y</a>", "<a b=\"<\"/>",
                          "<a/><a/>", "x<a/>", "<a>&nbsp;</a>", "<!-- x --><a/>", "<a>\x01</a>", ""})
    EXPECT_TRUE(StrictXml::fault_of(bad)) << bad;
}

TEST(LightSvg, IsOnePictureWithNameAndDescription) {
  const std::string svg = light_svg(invented::clear_day());
  const std::vector<StrictXml::Element> elements = StrictXml::elements_of(svg);
  ASSERT_GT(elements.size(), 3U);
  EXPECT_EQ(elements[0].name, "svg");
  EXPECT_EQ(elements[0].attributes.at("role"), "img");
  EXPECT_EQ(elements[0].attributes.at("xmlns"), "http://www.w3.org/2000/svg");
  EXPECT_THAT(elements[0].attributes.at("viewBox"), StartsWith("0 0 640 "));
  EXPECT_EQ(elements[1].name, "title");
  EXPECT_EQ(elements[1].text, "Light in The long house on 2025-06-21");
  EXPECT_EQ(elements[2].name, "desc");
  EXPECT_THAT(elements[2].text, HasSubstr("on the west low bench: sun between 06:40 and 17:59, 10.0 h in the sun"));
  EXPECT_THAT(elements[2].text, HasSubstr("in the seed cupboard: no sun, "));
}

TEST(LightSvg, StandsAlone) {
  const std::string svg = light_svg(invented::clear_day());
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
  EXPECT_EQ(svg.find("url("), svg.rfind("url(")) << "only the pattern of its own";
  EXPECT_THAT(svg, HasSubstr("url(#noonhouse-light-flecks)"));
  EXPECT_THAT(svg, HasSubstr("prefers-color-scheme: dark"));
}

TEST(LightSvg, NamesEveryPlaceAndEveryKindOfLight) {
  const DayLight day = invented::clear_day();
  const std::vector<std::string> texts = texts_of(light_svg(day), "text");
  for (const PlaceLight& place : day.places) EXPECT_THAT(texts, Contains(place.name));
  for (const char* kind : {"full sun", "sun flecks", "soft light", "dark", "dim: below 5 % of the light outdoors"})
    EXPECT_THAT(texts, Contains(kind));
}

TEST(LightSvg, NamesFromOutsideStayText) {
  DayLight day = invented::clear_day();
  day.house = "<script>alert(1)</script> & \"co\"\x01";
  day.plan = "a < b";
  day.places[0].name = "shelf \"A\" & <b>'s";
  const std::string svg = light_svg(day);
  EXPECT_THAT(texts_of(svg, "script"), testing::IsEmpty());
  EXPECT_THAT(texts_of(svg, "text"), Contains("shelf \"A\" & <b>'s"));
  EXPECT_THAT(texts_of(svg, "title"), Contains("Light in <script>alert(1)</script> & \"co\" on 2025-06-21"));
}

TEST(LightSvg, BandsLieWhereTheLightIs) {
  // Light from 06:00 to 18:00 is 612 units wide from 14, 51 an hour. Sun from 10:00 to 14:00, on half from 14 to 15.
  DayLight day = invented::polar_night();
  PlaceLight& bench = day.places[0];
  for (std::size_t m = 360; m < 1080; ++m) {
    day.outdoors_w_m2[m] = 500.0, bench.soft_w_m2[m] = m < 960 ? 100.0 : 10.0;  // dim from 16:00
    if (m >= 600 && m < 900) bench.direct_w_m2[m] = 200.0, bench.sunlit[m] = m < 840 ? 1.0 : 0.5;
  }
  const std::string svg = light_svg(day);
  const auto direct = bands_of(svg, "direct"), flecked = bands_of(svg, "flecked"), soft = bands_of(svg, "soft"),
             dim = bands_of(svg, "dim");
  using Band = std::array<double, 3>;
  ASSERT_EQ(direct.size(), 2U);
  EXPECT_EQ(direct[0], (Band{218.0, 204.0, 26.0}));
  ASSERT_EQ(flecked.size(), 2U);
  EXPECT_EQ(flecked[0], (Band{422.0, 51.0, 26.0}));
  ASSERT_EQ(soft.size(), 3U);
  EXPECT_EQ(soft[0], (Band{14.0, 204.0, 13.0}));
  EXPECT_EQ(soft[1], (Band{473.0, 51.0, 13.0}));
  ASSERT_EQ(dim.size(), 2U);
  EXPECT_EQ(dim[0], (Band{524.0, 102.0, 5.0}));
}

TEST(LightSvg, ADayWithoutLightAndAHouseWithoutPlacesAreDrawn) {
  EXPECT_FALSE(StrictXml::fault_of(light_svg(invented::polar_night())));
  EXPECT_THAT(light_svg(invented::polar_night()), Not(HasSubstr("nan")));
  DayLight day = invented::clear_day();
  day.places.clear();
  EXPECT_FALSE(StrictXml::fault_of(light_svg(day)));
}

TEST(LightSvg, LongNamesTakeMoreLines) {
  DayLight day = invented::clear_day();
  day.places[0].name = "on the shelf of seedlings along the wall between the two doors";
  const std::vector<std::string> texts = texts_of(light_svg(day), "text");
  EXPECT_THAT(texts, Contains("on the shelf of seedlings along the"));
  EXPECT_THAT(texts, Contains("wall between the two doors"));
}

}  // namespace
}  // namespace noonhouse
