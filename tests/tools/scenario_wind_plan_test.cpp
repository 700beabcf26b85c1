// SPDX-License-Identifier: Apache-2.0
// Which facet the wind presses on, and how leaky a house is made by the air changes that it states.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cmath>

#include "models/air/air_network.hpp"
#include "models/properties/constants.hpp"
#include "sim/integrate/evaluation.hpp"
#include "sim/integrate/junctions.hpp"
#include "tests/support/weather_folder.hpp"
#include "tools/scenario/assemble.hpp"
#include "tools/scenario/wind_plan.hpp"

namespace noonhouse {
namespace {

HouseShape house_that_faces(double bearing_deg, double length_m = 8.0, double width_m = 4.0) {
  HouseSpec spec;
  spec.length_m = length_m;
  spec.width_m = width_m;
  spec.eaves_m = 2.0;
  spec.ridge_m = 3.0;
  spec.faces_rad = bearing_deg * kRadiansPerDegree;
  spec.layers = 4;
  spec.bays = {{"whole", {1.0}}};
  return shape_of(spec);
}

double on(const HouseShape& shape, WallSide side, double wind_from_deg) {
  for (const Facet& facet : shape.facets)
    if (facet.side == side)
      return wind_coefficient(shape, facet, Surroundings::open, wind_from_deg * kRadiansPerDegree);
  ADD_FAILURE() << "no such side";
  return NAN;
}

TEST(WindPlan, PressesOnTheWallItMeetsAndPullsAtTheOthersHoweverTheHouseIsTurned) {
  for (const double faces : {0.0, 90.0, 180.0, 215.0}) {
    const HouseShape shape = house_that_faces(faces);
    EXPECT_GT(on(shape, WallSide::front, faces), 0.4) << faces;
    EXPECT_LT(on(shape, WallSide::back, faces), 0.0) << faces;
    EXPECT_GT(on(shape, WallSide::back, faces + 180.0), 0.4) << faces;
    EXPECT_LT(on(shape, WallSide::front, faces + 180.0), 0.0) << faces;
    EXPECT_LT(on(shape, WallSide::first_end, faces), 0.0) << faces;
    EXPECT_LT(on(shape, WallSide::roof_back, faces), 0.0) << faces;
  }
}

/// Along the ridge the front wall's left is the first end for somebody who looks at it, or its right: as shaped, a
/// quarter turn clockwise from where the front looks.
TEST(WindPlan, MeetsTheEndThatLooksIntoIt) {
  const HouseShape shape = house_that_faces(180.0);
  for (const Facet& facet : shape.facets)
    if (facet.side == WallSide::first_end || facet.side == WallSide::last_end) {
      const double looks_deg = facet.azimuth_rad / kRadiansPerDegree;
      EXPECT_GT(on(shape, facet.side, looks_deg), 0.4);
      EXPECT_LT(on(shape, facet.side, looks_deg + 180.0), 0.0);
    }
}

/// Tables know long walls and gable walls; a house wider than long has its long walls at the ends.
TEST(WindPlan, TakesTheLongerSidesForTheLongWalls) {
  const HouseShape slim = house_that_faces(180.0, 8.0, 4.0), broad = house_that_faces(180.0, 4.0, 8.0);
  for (const double a : {0.0, 45.0, 90.0, 135.0})
    EXPECT_EQ(on(slim, WallSide::front, 180.0 + a), on(broad, WallSide::first_end, 270.0 + a)) << a;
}

TEST(WindPlan, LeakinessGoesWithTheAirChangesAndFallsWithShelter) {
  const HouseShape shape = house_that_faces(180.0);
  const double once = leakiness_m_s(shape, Surroundings::open, 0.65, 1.0 / 3600.0, 1.2);
  EXPECT_GT(once, 0.0);
  EXPECT_NEAR(leakiness_m_s(shape, Surroundings::open, 0.65, 2.0 / 3600.0, 1.2), 2.0 * once, 1e-9 * once);
  EXPECT_GT(leakiness_m_s(shape, Surroundings::full_height, 0.65, 1.0 / 3600.0, 1.2), once)
      << "a sheltered house must be leakier to change as much";
}

/// Dry air [kg/s] that comes into a shut house of 1.5 air changes an hour, in air of one temperature, wind of 4 m/s.
double drawn_in(double wind_from_deg, double& stated) {
  const std::string weather = fmt::format(
      "# noonhouse weather 1\n# name: Wind\n# origin: invented for this test\n# invented: yes\n# latitude: 50 deg\n"
      "# longitude: 0 deg\n# altitude: 0 m\n# utc_offset: 0 h\n# step: 1 h\n"
      "time,temperature[degC],dew_point[degC],global[W/m2],wind[m/s],wind_from[deg]\n2025-03-01 00:00,15,5,0,4,{0}\n"
      "2025-03-01 01:00,15,5,0,4,{0}\n2025-03-01 02:00,15,5,0,4,{0}\n",
      wind_from_deg);
  const WeatherFolder folder("wind.csv", weather);
  const std::string text =
      "title: Leaks\nrun:\n  start: 2025-03-01\n  length: 1 h\n  warm_up: 0 s\nsite:\n  latitude: 50 deg\n"
      "  longitude: 0 deg\n  altitude: 0 m\n  utc_offset: \"+00:00\"\n  deep_soil: 10 degC\n  wind_share: 100 %\n"
      "weather:\n  kind: plain weather file\n  file: wind.csv\n"
      "house:\n  length: 8 m\n  width: 4 m\n  eaves: 2 m\n  ridge: 3 m\n  leakage: 1.5 /h\n  bays:\n"
      "    west: { share: 50 % }\n    east: { share: 50 % }\n"
      "tank:\n  capacity: 300 L\n  starts_with: 100 L\n  low_mark: 10 L\n  restart_mark: 20 L\n"
      "power:\n  panel_area: 1 m2\n  battery: 500 Wh\nplans:\n  shut: { in_service: [] }\n";
  const Scenario scenario = read_scenario_text(text, (folder.path() / "leaks.yaml").string());
  const PlanScenario& plan = scenario.plans.front();
  const WeatherSeries series = weather_of(scenario, plan);
  const Assembly assembly = assemble(plan, site_table(plan, series), series);
  const House& house = assembly.plan.house;
  std::vector<double> y = house.initial_amounts, rates(static_cast<std::size_t>(house.states));
  Junctions junctions(house);
  EXPECT_TRUE(junctions.settle(y.data(), house.initial_channels.data()));
  Evaluation evaluation(house);
  evaluation.rates(y.data(), house.initial_channels.data(), rates.data());
  double in = 0.0, volume = 0.0;
  for (const ExchangeInfo& e : house.exchanges)
    if (e.path == "leakage") in -= std::min(0.0, evaluation.fluxes()[static_cast<std::size_t>(e.first_flux)]);
  for (const BayShape& bay : assembly.shape.bays) volume += bay.volume_m3;
  stated = 1.5 / 3600.0 * volume * assembly.air_density_kg_m3;
  return in;
}

/// The whole network of a house at one temperature gives back what its scenario states, on the mean of eight bearings.
TEST(WindPlan, AShutHouseChangesItsAirAsStatedInAWindOfFourMetresPerSecond) {
  double sum = 0.0, stated = 0.0;
  for (int k = 0; k < 8; ++k) sum += drawn_in(45.0 * k, stated) / 8.0;
  EXPECT_NEAR(sum, stated, 0.02 * stated);
}

}  // namespace
}  // namespace noonhouse
