// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "models/envelope/cover_material.hpp"
#include "models/properties/constants.hpp"
#include "tests/support/small_scenario.hpp"
#include "tools/scenario/assemble.hpp"

namespace noonhouse {
namespace {

using testing::HasSubstr;

ShadeSpec net(ShadeSide hangs) {
  ShadeSpec out;
  out.hangs = hangs;
  out.transmits = 0.2;
  out.absorbs = 0.1;
  out.straight = 0.05;
  return out;
}

/// What FacetOptics says sums to one at every angle, and no share is negative.
TEST(FacetOptics, BeamIsSharedOutWhollyAtEveryAngle) {
  const CoverOptics glass(make_of(cover_materials().front()));
  for (const ShadeSide hangs : {ShadeSide::outside, ShadeSide::inside}) {
    const ShadeSpec cloth = net(hangs);
    const FacetOptics facet(&glass, &cloth);
    for (double angle = 0.0; angle < 90.0; angle += 5.0) {
      const FacetOptics::Taken t = facet.beam(angle * kRadiansPerDegree);
      EXPECT_NEAR(t.passes + t.returns + t.cover + t.cloth, 1.0, 1e-12) << angle;
      for (const double share : {t.passes, t.returns, t.cover, t.cloth, t.scatters}) EXPECT_GE(share, 0.0) << angle;
    }
    for (const FacetOptics::Taken& t : {facet.diffuse(), facet.from_inside()})
      EXPECT_NEAR(t.passes + t.returns + t.cover + t.cloth, 1.0, 1e-12);
  }
}

/// By hand, to and fro to every order: glass passes T at the beam's angle, the cloth beneath returns r = 0.7 of it,
/// evenly; the glass sends back R' of that, and so on. On the cloth falls T / (1 - R' r); 0.2 of it passes, 0.1 stays.
TEST(FacetOptics, AClothInsideReturnsLightToTheGlassFromEverywhere) {
  const CoverOptics glass(make_of(cover_materials().front()));
  const ShadeSpec cloth = net(ShadeSide::inside);
  const FacetOptics facet(&glass, &cloth);
  const LayerOptics& soft = glass.diffuse();
  for (const double degrees : {0.0, 60.0, 80.0}) {
    const LayerOptics beam = glass.at(degrees * kRadiansPerDegree);
    const double falls = beam.transmittance / (1.0 - soft.reflectance_back * 0.7);
    const FacetOptics::Taken t = facet.beam(degrees * kRadiansPerDegree);
    EXPECT_NEAR(t.passes, 0.2 * falls, 1e-12);
    EXPECT_NEAR(t.cloth, 0.1 * falls, 1e-12);
    EXPECT_NEAR(t.cover, beam.absorptance_front() + 0.7 * falls * soft.absorptance_back(), 1e-12);
  }
}

/// The small house under a cloth, with its first plan (nothing in service) or its second.
Assembly house_under_cloth(const std::string& material, std::size_t plan_number = 0) {
  const std::string text =
      small_scenario::with(small_scenario::kText, "  length: 2 d\n", "  length: 2 d\n  warm_up: 0 s\n") +
      "shades:\n  net: { material: " + material + " }\n";
  const Scenario scenario = read_scenario_text(text, "cloth.yaml");
  const PlanScenario& plan = scenario.plans.at(plan_number);
  const WeatherSeries weather = weather_of(scenario, plan);
  return assemble(plan, site_table(plan, weather), weather);
}

RunResult run_of(const Assembly& assembly) {
  noonhouse::Run run(assembly.plan);
  return run.go();
}

/// What an exchange's first flux has carried over a run [J].
double carried(const Assembly& assembly, const RunResult& result, const std::string& name) {
  const auto id = assembly.plan.house.find_exchange(name);
  if (!id) ADD_FAILURE() << "no exchange '" << name << "'";
  const auto index = static_cast<std::size_t>(id.value_or(ExchangeId{0}).index);
  return result.state.carried[static_cast<std::size_t>(assembly.plan.house.exchanges[index].first_flux)];
}

/// A cloth that is rolled up sees neither sky nor surroundings, so it moves no heat to speak of; drawn, it does.
TEST(Cloth, RolledUpItMovesNoHeat) {
  Assembly away = house_under_cloth("green knitted net 50 %");
  const RunResult result = run_of(away);
  EXPECT_EQ(carried(away, result, "sky over the net"), 0.0);
  EXPECT_EQ(carried(away, result, "surroundings of the net"), 0.0);
  EXPECT_GT(carried(away, result, "sky over the front roof of the west bay"), 1e6);
  Assembly drawn = house_under_cloth("green knitted net 50 %");
  for (const ChannelId channel : drawn.site.drawn)
    drawn.plan.house.initial_channels[static_cast<std::size_t>(channel.index)] = 1.0;
  const RunResult with = run_of(drawn);
  EXPECT_GT(carried(drawn, with, "sky over the net"), 1e6);
  const double bare = carried(away, result, "sky over the front roof of the west bay");
  const double screened = carried(drawn, with, "sky over the front roof of the west bay");
  EXPECT_GT(screened, 0.1 * bare) << "a net's holes let thermal radiation pass";
  EXPECT_LT(screened, 0.6 * bare);
}

/// A shiny cloth drawn inside holds the night's heat back better than a dark one: what it does not send out itself.
TEST(Cloth, InsideShinyOneKeepsTheHouseWarmerByNightThanADarkOne) {
  double floor_k[2] = {};
  for (const int dark : {0, 1}) {
    Assembly house =
        house_under_cloth(std::string("green knitted net 50 %, hangs: inside, over: all, infrared_passes: 5 %, ") +
                          "emissivity: " + (dark == 1 ? "90 %" : "10 %"));
    for (const ChannelId channel : house.site.drawn)
      house.plan.house.initial_channels[static_cast<std::size_t>(channel.index)] = 1.0;
    house.plan.length = 4_h;  // from midnight to before sunrise
    const RunResult result = run_of(house);
    std::vector<double> p(static_cast<std::size_t>(house.plan.house.states + house.plan.house.channels));
    for (const auto& batch : house.plan.house.store_batches) batch->potentials(result.state.amounts.data(), p.data());
    floor_k[dark] = p[static_cast<std::size_t>(house.plan.house.position(Input(house.bays.front().floor)))];
  }
  EXPECT_GT(floor_k[0], floor_k[1] + 0.2);
}

/// Sun on an insulated wall is taken up at its outer face, light from inside at its inner one.
TEST(Walls, TakeUpLightAtTheFaceThatMeetsIt) {
  const std::string text = small_scenario::with(
      small_scenario::kText, "  bays:\n",
      "  cover:\n    parts:\n      south: { side: front wall, material: insulated panel }\n  bays:\n");
  const Scenario scenario = read_scenario_text(text, "wall.yaml");
  const PlanScenario& plan = scenario.plans.front();
  const auto table = site_table(plan, weather_of(scenario, plan));
  const double* noon = table->sunlight(12 * 4, 0);
  const SunRow& row = table->row();
  EXPECT_GT(noon[row.outer_face(0)], 1.5 * noon[row.facet(0)]);
  EXPECT_GT(noon[row.facet(0)], 0.0);
  EXPECT_EQ(noon[row.outer_face(1)], noon[row.facet(1)]) << "glass takes it up throughout";
}

/// Sparse leaves catch less light and hide less of the bench than dense ones.
TEST(Leaves, CatchLightByTheirAreaIndex) {
  double last = 0.0;
  for (const char* index : {"0.3", "1", "2", "6"}) {
    const std::string text = small_scenario::with(small_scenario::kText, "leaf_area_index: 2\n",
                                                  std::string("leaf_area_index: ") + index + "\n");
    const Scenario scenario = read_scenario_text(text, "leaves.yaml");
    const PlanScenario& plan = scenario.plans.front();
    const auto table = site_table(plan, weather_of(scenario, plan));
    const double* noon = table->sunlight(12 * 4, 0);
    const SunRow& row = table->row();
    const double caught = noon[row.sunlit(0)] + noon[row.shaded(0)];
    EXPECT_GT(caught, 1.05 * last) << index;
    last = caught;
  }
}

TEST(Places, UnderABenchThatStandsOverAnotherThereIsNoFloor) {
  std::string text = small_scenario::with(small_scenario::kText, "plant_kinds:\n",
                                          "  shelf:\n    bay: west\n    height: 1.4 m\n    length: 2 m\n    width: 40 "
                                          "cm\n    from_front: 1.2 m\nplant_kinds:\n");
  text = small_scenario::with(text, "    width: 90 cm\n", "    width: 90 cm\n    from_front: 1 m\n");
  text = small_scenario::with(text, "    place: long bench\n", "    place: shelf\n    under: true\n");
  text = small_scenario::with(text, "    area: 2 m2\n", "    area: 0.5 m2\n");
  try {
    read_scenario_text(text, "under.yaml");
    FAIL() << "plants stand where a lower bench is";
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::does_not_fit);
    EXPECT_THAT(error.what(), HasSubstr("under a lower bench"));
  }
}

}  // namespace
}  // namespace noonhouse
