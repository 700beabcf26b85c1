// SPDX-License-Identifier: Apache-2.0
// A house shut in a clear, calm, dry night under three covers: how cold it gets inside is a matter of what thermal
// radiation the cover lets out.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <stdexcept>
#include <string>
#include <vector>

#include "sim/run/run.hpp"
#include "tests/support/run_marks.hpp"
#include "tests/support/weather_folder.hpp"
#include "tools/scenario/assemble.hpp"

namespace noonhouse {
namespace {

constexpr double kOutdoorsK = 276.15;  ///< of the air, all night [K]

/// A night's sky and wind, all of it alike: 16 h without sun at 3 degC and a dew point of -10 degC.
struct Night {
  double longwave_w_m2 = 240.0;  ///< 90 W/m2 less than a black plane at the air's temperature (329.7 W/m2) sends up
  double wind_m_s = 1.0;
};

std::string weather_text(const Night& night) {
  std::string text =
      "# noonhouse weather 1\n# name: Clear night\n# origin: invented for this test\n# invented: yes\n"
      "# latitude: 50 deg\n# longitude: 0 deg\n# altitude: 0 m\n# utc_offset: 0 h\n# step: 1 h\n"
      "time,temperature[degC],dew_point[degC],global[W/m2],wind[m/s],longwave_down[W/m2]\n";
  for (int hour = 0; hour < 24; ++hour)
    text += fmt::format("2025-10-20 {:02}:00,3,-10,0,{},{}\n", hour, night.wind_m_s, night.longwave_w_m2);
  return text;
}

constexpr const char* kText = R"(title: Clear night
run:
  start: 2025-10-20
  length: 16 h
  warm_up: 0 s
site:
  latitude: 50 deg
  longitude: 0 deg
  altitude: 0 m
  utc_offset: "+00:00"
  deep_soil: 12 degC
weather:
  kind: plain weather file
  file: night.csv
house:
  length: 8 m
  width: 5 m
  eaves: 2 m
  ridge: 3 m
  leakage: 0.5 /h
  bays:
    all:
      share: 100 %
  floor:
    soil: moist loam
  cover:
    roof:
      material: COVER
    walls:
      material: COVER
benches:
  bench:
    bay: all
    height: 80 cm
    length: 6 m
    width: 1.5 m
plant_kinds:
  fern:
    leaf_area_index: 2
    tissue: 1.5 kg/m2
    harm_above: 36 degC
    lethal_above: 42 degC
    harm_below: 0 degC
    lethal_below: -4 degC
plants:
  ferns:
    kind: fern
    place: bench
    area: 6 m2
tank:
  capacity: 300 L
  starts_with: 250 L
  low_mark: 20 L
  restart_mark: 40 L
power:
  panel_area: 1 m2
  battery: 600 Wh
)";

/// Temperatures at the end of the night less that of the air outdoors [K].
struct Morning {
  double bench = 0.0, plants = 0.0, low_air = 0.0, high_air = 0.0, roof = 0.0, floor = 0.0;
  double roof_water_kg_m2 = 0.0;
};

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size()))
    text.replace(at, from.size(), to);
  return text;
}

/// Puts water on the floor before the run [kg/m2].
void wet_floor(Assembly& assembly, double water_kg_m2) {
  House& house = assembly.plan.house;
  std::vector<double> potentials(static_cast<std::size_t>(house.states));
  for (const auto& batch : house.store_batches) batch->potentials(house.initial_amounts.data(), potentials.data());
  const auto& floor = house.nodes[static_cast<std::size_t>(assembly.bays[0].floor.index)];
  potentials[static_cast<std::size_t>(floor.first_state) + 1] = water_kg_m2 * assembly.shape.bays[0].floor_m2;
  for (const auto& batch : house.store_batches) batch->amounts(potentials.data(), house.initial_amounts.data());
}

Morning morning_in(const std::string& cover, double floor_water_kg_m2 = 0.0, const Night& night = {}) {
  const WeatherFolder folder("night.csv", weather_text(night));
  const std::string text = replaced(kText, "COVER", cover);
  const Scenario scenario = read_scenario_text(text, folder.path() / "night.yaml");
  const PlanScenario& plan = scenario.plans.front();
  const WeatherSeries weather = weather_of(scenario, plan);
  Assembly assembly = assemble(plan, site_table(plan, weather), weather);
  if (floor_water_kg_m2 > 0.0) wet_floor(assembly, floor_water_kg_m2);
  const MarkedRun run = run_with_marks(assembly.plan, 1_h);
  const House& house = assembly.plan.house;
  const auto state = [&](NodeId id) { return house.nodes[static_cast<std::size_t>(id.index)].first_state; };
  const std::size_t last = run.marks.marks() - 1;
  const auto above = [&](NodeId id) { return run.marks.value(last, state(id)) - kOutdoorsK; };
  const NodeId bench = [&] {
    for (std::size_t n = 0; n < house.nodes.size(); ++n)
      if (house.nodes[n].name == "bench") return NodeId{static_cast<int>(n)};
    throw std::runtime_error("no bench");
  }();
  const auto roof = static_cast<std::size_t>(assembly.shape.facet_index(0, WallSide::roof_front));
  const NodeId roof_node = assembly.bays[0].covers[roof];
  return {above(bench),
          above(assembly.plants[0].tissue),
          above(assembly.bays[0].air.front()),
          above(assembly.bays[0].air.back()),
          above(roof_node),
          above(assembly.bays[0].floor),
          run.marks.value(last, state(roof_node) + 1) / assembly.shape.facets[roof].area_m2};
}

const std::string kFilm = "polyethylene film", kThermalFilm = "thermal polyethylene film", kGlass = "clear glass 4 mm";

// The ground starts at 12 degC, as in autumn. Dry polyethylene film lets three quarters of thermal radiation pass: what
// stands inside sees the sky and cools, as it would in the open, but gets its heat from the air outdoors only by way of
// the film and the air inside. Glass takes that radiation up and gives half of it back; it is itself the coldest part.

TEST(ClearNight, UnderDryFilmItGetsColderThanOutdoors) {
  // Temperature inversion under film (common practice). Band: exposed surfaces cool 2 to 5 K below the air on clear,
  // calm nights [FAO 2005, Frost Protection: fundamentals, practice and economics, ch. 3; from memory].
  const Morning film = morning_in(kFilm);
  for (const double surface : {film.bench, film.plants}) {
    EXPECT_LT(surface, -2.0);
    EXPECT_GT(surface, -5.0);
  }
  EXPECT_LT(film.low_air, -0.5);
  EXPECT_LT(film.high_air, -0.5);
  EXPECT_LT(film.bench, film.low_air) << "the air is cooled by what stands in it";
  EXPECT_LT(film.low_air, film.high_air) << "cold air lies below";
  EXPECT_EQ(film.roof_water_kg_m2, 0.0);
}

TEST(ClearNight, FilmIsColdestInsideAndWarmestItself) {
  const Morning film = morning_in(kFilm), thermal = morning_in(kThermalFilm), glass = morning_in(kGlass);
  EXPECT_LT(film.bench, thermal.bench);
  EXPECT_LT(thermal.bench, glass.bench);
  EXPECT_LT(film.plants, thermal.plants);
  EXPECT_LT(thermal.plants, glass.plants);
  EXPECT_LT(film.floor, thermal.floor);
  EXPECT_LT(thermal.floor, glass.floor);
  EXPECT_LT(film.low_air, glass.low_air);
  // Film hardly radiates, so it stays nearer the air outdoors, warmer than the bench beneath; glass is colder than it.
  EXPECT_GT(film.roof, glass.roof);
  EXPECT_GT(film.roof, film.bench);
  EXPECT_LT(glass.roof, glass.bench);
}

TEST(ClearNight, WaterOnTheFilmShrinksTheEffect) {
  // A litre of water on each square metre of warm floor evaporates, condenses on the film and stops the radiation.
  const Morning dry = morning_in(kFilm), wet = morning_in(kFilm, 1.0);
  EXPECT_GT(wet.roof_water_kg_m2, 0.01);
  EXPECT_GT(wet.bench, dry.bench + 0.5);
  EXPECT_GT(wet.plants, dry.plants + 0.5);
  // Glass stops it anyway: what water does there is only to carry heat.
  const Morning dry_glass = morning_in(kGlass), wet_glass = morning_in(kGlass, 1.0);
  EXPECT_GT(wet.bench - dry.bench, 2.0 * std::abs(wet_glass.bench - dry_glass.bench));
}

TEST(ClearNight, WetFilmKeepsNoMoreHeatThanWetGlass) {
  // Water that takes up what would pass the film radiates as much back through it (Kirchhoff): with the film's own 0.2
  // the wet cover sends 0.2 + 0.75 = 0.95 of a black one's radiation to the sky, or passes it; glass sends 0.84. So a
  // house under wet film cannot stay warmer than one under wet glass; 0.3 K for what the two hold of heat and water.
  const Morning film = morning_in(kFilm, 1.0), glass = morning_in(kGlass, 1.0);
  EXPECT_LT(film.bench, glass.bench + 0.3);
  EXPECT_LT(film.plants, glass.plants + 0.3);
}

TEST(ClearNight, CloudAndWindTakeTheEffectAway) {
  // Under a sky as warm as the air nothing cools below outdoors, whatever the cover, but by a little transpiration; the
  // ground warms the house. Wind brings the cover, and so the house, nearer to outdoors.
  const Night overcast{329.7, 1.0}, windy{240.0, 6.0};
  for (const std::string& cover : {kFilm, kThermalFilm, kGlass}) {
    const Morning m = morning_in(cover, 0.0, overcast);
    EXPECT_GT(m.bench, 0.0) << cover;
    EXPECT_GT(m.plants, -0.1) << cover;
    EXPECT_GT(m.low_air, 0.0) << cover;
    EXPECT_GT(morning_in(cover, 0.0, windy).roof, morning_in(cover).roof) << cover;
    EXPECT_GT(morning_in(cover, 0.0, windy).low_air, morning_in(cover).low_air) << cover;
  }
}

}  // namespace
}  // namespace noonhouse
