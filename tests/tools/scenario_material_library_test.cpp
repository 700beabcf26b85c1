// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "models/envelope/cover_material.hpp"
#include "models/envelope/shade_material.hpp"
#include "models/ground/soil_material.hpp"
#include "tests/support/small_scenario.hpp"
#include "tools/scenario/assemble.hpp"

namespace noonhouse {
namespace {

/// The small scenario with further lines of its house, and others at the end; assembled as its first plan.
Assembly house_with(const std::string& of_house, const std::string& at_end = "") {
  std::string text = small_scenario::with(small_scenario::kText, "  length: 2 d\n", "  length: 2 d\n  warm_up: 0 s\n");
  text.insert(text.find("  bays:\n"), of_house);
  text += at_end;
  const Scenario scenario = read_scenario_text(text, "library.yaml");
  const PlanScenario& plan = scenario.plans.front();
  const WeatherSeries weather = weather_of(scenario, plan);
  return assemble(plan, site_table(plan, weather), weather);
}

bool has_node(const Assembly& assembly, const std::string& part_of_name) {
  return std::any_of(assembly.plan.house.nodes.begin(), assembly.plan.house.nodes.end(),
                     [&](const auto& node) { return node.name.find(part_of_name) != std::string::npos; });
}

/// Every material makes a house, as roof and as a part of the cover; those that insulate have two faces.
TEST(MaterialLibrary, EveryCoverMakesAHouse) {
  for (const CoverMaterial& material : cover_materials()) {
    SCOPED_TRACE(material.name);
    const std::string name = material.name;
    const Assembly house = house_with("  cover:\n    roof: { material: " + name +
                                      " }\n    parts:\n      back: { side: back wall, material: " + name + " }\n");
    EXPECT_EQ(has_node(house, "outer face of the front roof"), material.resistance_m2_k_w.value > 0.02);
    EXPECT_FALSE(has_node(house, "outer face of the front wall"));
  }
}

TEST(MaterialLibrary, EverySoilMakesAFloor) {
  for (const SoilMaterial& material : soil_materials()) {
    SCOPED_TRACE(material.name);
    const std::string name = material.name;
    const Assembly house = house_with("  floor:\n    soil: " + name + "\n    courses:\n      top: { material: " + name +
                                      ", thickness: 12 cm }\n");
    EXPECT_TRUE(has_node(house, "top slice 2 under the west bay"));
  }
}

/// A net of a material that hangs somewhere, over a cover.
Assembly house_under(const std::string& material, const std::string& where, const std::string& cover) {
  return house_with("  cover: { roof: { material: " + cover + " }, walls: { material: " + cover + " } }\n",
                    "shades:\n  net: { material: " + material + where + " }\n");
}

TEST(MaterialLibrary, EveryClothMakesAHouse) {
  for (const ShadeMaterial& material : shade_materials()) {
    SCOPED_TRACE(material.name);
    EXPECT_TRUE(has_node(house_under(material.name, "", "clear glass 3 mm"), "cloth of the net"));
  }
}

TEST(MaterialLibrary, AClothMayHangAnywhere) {
  for (const char* cover : {"clear glass 3 mm", "polyethylene film", "twin-wall polycarbonate 10 mm"})
    for (const char* hangs : {", hangs: outside", ", hangs: inside"})
      for (const char* over : {", over: roof", ", over: walls", ", over: all"}) {
        const std::string where = std::string(hangs) + over;
        SCOPED_TRACE(cover + where);
        EXPECT_TRUE(has_node(house_under("black knitted net 50 %", where, cover), "cloth of the net"));
      }
}

}  // namespace
}  // namespace noonhouse
