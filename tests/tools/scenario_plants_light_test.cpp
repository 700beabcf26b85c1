// SPDX-License-Identifier: Apache-2.0
// Where the light that falls on a group of plants ends up: leaves, pots, thrown back.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cmath>
#include <string>

#include "models/plants/plant_sides.hpp"
#include "models/properties/constants.hpp"
#include "tests/support/run_marks.hpp"
#include "tests/support/small_scenario.hpp"
#include "tools/scenario/assemble.hpp"

namespace noonhouse {
namespace {

/// What a square metre of ferns gets and takes in a day [J/m2 of ground].
struct Taken {
  double falls = 0.0, sunlit = 0.0, shaded = 0.0, walls = 0.0;
};
Taken of_ferns(const std::string& bench, double leaf_area_index) {
  using small_scenario::with;
  std::string text = with(small_scenario::kText, "  length: 2 d\n", "  length: 1 d\n  warm_up: 0 s\n");
  text = with(text, "  peak_day: 2\n", "  peak_day: 1\n");
  text = with(text, "    leaf_area_index: 2\n",
              fmt::format("    leaf_area_index: {}\n    absorptance: 50 %\n", leaf_area_index));
  text = with(text, "    width: 90 cm\n", "    width: 90 cm\n" + bench);
  text = with(text, "    area: 2 m2\n", "    area: 1 m2\n    pot_absorptance: 75 %\n");
  const Scenario scenario = read_scenario_text(text, "light.yaml");
  const PlanScenario& plan = scenario.plans.at(0);
  const WeatherSeries weather = weather_of(scenario, plan);
  const Assembly house = assemble(plan, site_table(plan, weather), weather);
  const MarkedRun run = run_with_marks(house.plan, 1_h);
  const auto carried = [&](const char* name) {
    const auto id = house.plan.house.find_exchange(name).value();
    const auto& info = house.plan.house.exchanges[static_cast<std::size_t>(id.index)];
    return run.result.state.carried[static_cast<std::size_t>(info.first_flux)];
  };
  const double falls = run.marks.value(24, house.plan.house.position(Input(house.plants.at(0).doses.light_sum)));
  return {falls, carried("sun on ferns"), carried("sun on the shaded side of ferns"),
          carried("sun on walls of the pots of ferns")};
}

/// Of the light on their level leaves meet 1 - exp(-0.7 L) first [Monsi & Saeki 1953]. A thin canopy of leaves that
/// keep half (Gates 1980, leaves; from memory) keeps half of that, a deeper one more, since leaves throw light to one
/// another; pots get no less than what no leaf meets, and keep three quarters.
TEST(PlantLight, LeavesTakeWhatTheyCatchAndPotsWhatPassesThem) {
  for (const double index : {0.05, 0.5, 2.0, 4.0}) {
    const Taken it = of_ferns("", index);
    const double passes = std::exp(-0.7 * index), first = 0.5 * (1.0 - passes);
    ASSERT_GT(it.falls, 5e6);
    EXPECT_GT(it.sunlit + it.shaded, (first - 2e-3) * it.falls);
    EXPECT_LT(it.sunlit + it.shaded, first * (1.0 + 0.5 * index) * it.falls);
    EXPECT_GT(it.walls, (0.75 * passes - 2e-3) * it.falls);
    EXPECT_LT(it.sunlit + it.shaded + it.walls, it.falls);
    EXPECT_GT(it.sunlit, it.shaded);
    EXPECT_GT(it.shaded, 0.0);
  }
}

/// Pots that hang from a rail stand in no less light than those on a bench.: what a group hides is the
/// ground it covers, leaves and pots together.
TEST(PlantLight, PotsThatHangTakeTheirLightToo) {
  const Taken it = of_ferns("    hangs: true\n", 2.0);
  EXPECT_NEAR(it.walls / it.falls, of_ferns("", 2.0).walls / of_ferns("", 2.0).falls, 5e-3);
}

/// What one leaf scatters, by half downwards, others take up: a mature rose crop under glass threw back 20 % of the sun
/// that reached it where its single leaves throw back 28 %, and let 30 % through to the floor [Stanhill, Fuchs, Bakker
/// & Moreshet 1973, Agric. Meteorol. 11, 385, abstract]; 0.23 for a closed crop in FAO-56. By two streams leaves that
/// keep a share a reflect (1 - sqrt a) / (1 + sqrt a), 0.17 with half, and take up the rest with the extinction k sqrt
/// a [Goudriaan 1977, Crop Micrometeorology; from memory]: 0.52 of the light with an index of 2, 0.64 with 3.
TEST(PlantLight, ACanopyKeepsMoreThanOneOfItsLeaves) {
  for (const double index : {2.0, 3.0}) {
    const Taken it = of_ferns("", index);
    const double root = std::sqrt(0.5), reflects = (1.0 - root) / (1.0 + root);
    const double keeps = (1.0 - reflects) * (1.0 - std::exp(-kLeafExtinction * root * index));
    EXPECT_NEAR((it.sunlit + it.shaded) / it.falls, keeps, 0.1 * keeps) << index;
    EXPECT_NEAR(1.0 - (it.sunlit + it.shaded + it.walls) / it.falls, 0.21, 0.06) << index;
  }
}

}  // namespace
}  // namespace noonhouse
