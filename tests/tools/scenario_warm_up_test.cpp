// SPDX-License-Identifier: Apache-2.0
// The ground's layers, where they come to rest, what leaves at the edge, and a start-up that needs no year of running
// in: against the first day run again and again.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "tests/support/small_scenario.hpp"
#include "tools/scenario/ground_plan.hpp"
#include "tools/scenario/warm_up.hpp"

namespace noonhouse {
namespace {

constexpr double kRounding = 1e-12;

FloorSpec bare_floor() {
  FloorSpec out;
  out.conductivity_w_m_k = 0.99;
  out.heat_capacity_j_m3_k = 1.99e6;
  out.depth_m = 2.0;
  out.layers = 6;
  return out;
}

HouseSpec house_of(double length_m, double width_m, std::vector<Named<BaySpec>> bays) {
  HouseSpec out;
  out.form = HouseForm::flat_roof;
  out.length_m = length_m;
  out.width_m = width_m;
  out.eaves_m = out.ridge_m = 2.0;
  out.layers = 2;
  out.bays = std::move(bays);
  out.floor = bare_floor();
  return out;
}

TEST(GroundPlan, CoursesAreCutBelowAThinSkin) {
  // 10 cm of gravel: a skin of 2 cm, and 8 cm in two slices, as none is thicker than 5 cm; then the soil's 2 m.
  FloorSpec floor = bare_floor();
  floor.courses = {{"gravel", {"dry gravel", 0.10, 0.4, 1.5e6}}};
  const auto layers = ground_layers(floor);
  ASSERT_EQ(layers.size(), 3U + 6U);
  EXPECT_NEAR(layers[0].thickness_m, 0.02, kRounding);
  EXPECT_NEAR(layers[1].thickness_m, 0.04, kRounding);
  EXPECT_NEAR(layers[2].thickness_m, 0.04, kRounding);
  EXPECT_DOUBLE_EQ(layers[2].conductivity_w_m_k, 0.4);
  EXPECT_DOUBLE_EQ(layers[3].conductivity_w_m_k, 0.99);
  EXPECT_NEAR(ground_depth_m(layers), 2.10, kRounding);
  for (std::size_t i = 4; i < layers.size(); ++i) EXPECT_GT(layers[i].thickness_m, layers[i - 1].thickness_m);
  EXPECT_NEAR(ground_depth_m(ground_layers(bare_floor())), 2.02, kRounding) << "a skin of the soil itself";
}

/// A skin of 2 cm, then 0.2 m and 0.4 m, all of 1 W/(m K): 0.11, 0.3 and 0.2 m2 K/W from middle to middle to the end.
std::vector<GroundLayer> three_layers() {
  return {{"skin", 0.02, 1.0, 2e6}, {"upper", 0.2, 1.0, 2e6}, {"lower", 0.4, 1.0, 2e6}};
}

TEST(GroundAtRest, IsAStraightCourseByResistance) {
  const auto at_rest = ground_at_rest(three_layers(), {293.15, 283.15, 250.0, 0.0});
  ASSERT_EQ(at_rest.size(), 2U);
  EXPECT_NEAR(at_rest[0], 293.15 - 10.0 * 0.11 / 0.61, 1e-9);
  EXPECT_NEAR(at_rest[1], 293.15 - 10.0 * 0.41 / 0.61, 1e-9);
}

TEST(GroundAtRest, TheEdgeTakesHeatFromTheFirstLayer) {
  // T1 joins floor (1 / 0.11), outdoors (2 W/(m2 K)) and, through 0.5 m2 K/W, the deep ground:
  // T1 = (20 / 0.11 + 2 x 0 + 10 / 0.5) / (1 / 0.11 + 2 + 2) degC; T2 lies 0.3 / 0.5 of the way from there to 10 degC.
  const auto at_rest = ground_at_rest(three_layers(), {293.15, 283.15, 273.15, 2.0});
  const double first = (20.0 / 0.11 + 10.0 / 0.5) / (1.0 / 0.11 + 2.0 + 2.0);
  EXPECT_NEAR(at_rest[0] - 273.15, first, 1e-9);
  EXPECT_NEAR(at_rest[1] - 273.15, first + 0.6 * (10.0 - first), 1e-9);
}

TEST(GroundAtRest, Limits) {
  for (const double edge : {0.0, 3.0}) {
    for (const double t : ground_at_rest(three_layers(), {280.0, 280.0, 280.0, edge})) EXPECT_NEAR(t, 280.0, 1e-9);
  }
  EXPECT_NEAR(ground_at_rest(three_layers(), {293.15, 283.15, 270.0, 1e9})[0], 270.0, 1e-6);
  const std::vector<GroundLayer> one{{"skin", 0.02, 1.0, 2e6}, {"soil", 0.2, 1.0, 2e6}};
  EXPECT_NEAR(ground_at_rest(one, {293.15, 283.15, 0.0, 0.0})[0], 293.15 - 10.0 * 0.11 / 0.21, 1e-9);
}

TEST(EdgeConductance, AStatedLossGoesByOuterWall) {
  // 6 m x 3 m in bays of 50, 30 and 20 %: outer walls of 6 + 3, 3.6 and 2.4 + 3 m, the perimeter in all.
  HouseSpec house = house_of(6.0, 3.0, {{"a", {0.5}}, {"b", {0.3}}, {"c", {0.2}}});
  house.floor.edge_loss_w_m_k = 1.5;
  const HouseShape shape = shape_of(house);
  EXPECT_NEAR(edge_conductance_w_k(house, shape, 0), 1.5 * 9.0, 1e-9);
  EXPECT_NEAR(edge_conductance_w_k(house, shape, 1), 1.5 * 3.6, 1e-9);
  EXPECT_NEAR(edge_conductance_w_k(house, shape, 2), 1.5 * 5.4, 1e-9);
  house.floor.edge_loss_w_m_k = 0.0;
  EXPECT_EQ(edge_conductance_w_k(house, shape, 0), 0.0);
}

TEST(EdgeConductance, WithoutOneItIsTheStandardsBeyondWhatGoesDown) {
  // EN ISO 13370:2007, 8.1, 9.1 (from memory), by hand for 6 m x 3 m on 0.99 W/(m K): B' = 18 / 9 = 2 m,
  // d_t = 0.99 x 0.21 = 0.2079 m, U = 1.98 / (6.2832 + 0.2079) ln(6.2832 / 0.2079 + 1) = 1.0496 W/(m2 K). Straight down
  // 2.02 m of soil: 0.4901. The rest, 0.5595, times 18 m2.
  const HouseSpec house = house_of(6.0, 3.0, {{"a", {0.6}}, {"b", {0.4}}});
  const HouseShape shape = shape_of(house);
  const double first = edge_conductance_w_k(house, shape, 0), second = edge_conductance_w_k(house, shape, 1);
  EXPECT_NEAR(first + second, 18.0 * 0.5595, 18.0 * 0.0001);
  EXPECT_NEAR(first / second, 10.2 / 7.8, 1e-9);
}

TEST(EdgeConductance, Limits) {
  // A floor so large that the edge hardly counts: the standard gives less than what goes down 2 m, so nothing is added.
  const HouseSpec hall = house_of(200.0, 50.0, {{"all", {1.0}}});
  EXPECT_EQ(edge_conductance_w_k(hall, shape_of(hall), 0), 0.0);
  // The deeper the undisturbed ground, the less goes straight down and the more by the edge, up to the standard's all.
  HouseSpec house = house_of(6.0, 3.0, {{"all", {1.0}}});
  const HouseShape shape = shape_of(house);
  double before = 0.0;
  for (const double depth_m : {1.0, 2.0, 5.0, 20.0}) {
    house.floor.depth_m = depth_m;
    const double edge = edge_conductance_w_k(house, shape, 0);
    EXPECT_GT(edge, before);
    EXPECT_LT(edge, 18.0 * 1.0497);
    before = edge;
  }
  // Insulation of 10 m2 K/W all over: U = 0.99 / (0.457 x 2 + 0.99 x 10.21) = 0.0898 W/(m2 K), of which 1 / 12.02 =
  // 0.0832 goes down; the 0.0066 left are little more than a hundredth of the bare floor's 0.5595.
  house.floor.depth_m = 2.0;
  const double bare = edge_conductance_w_k(house, shape, 0);
  house.floor.courses = {{"foam", {"foam", 0.4, 0.04, 5e4}}};
  EXPECT_NEAR(bare, 18.0 * 0.5595, 18.0 * 0.0001);
  EXPECT_NEAR(edge_conductance_w_k(house, shape, 0), 18.0 * 0.0066, 18.0 * 0.0001);
}

TEST(DeepGround, FollowsTheYearOfTheRun) {
  RunSpec run;
  run.start = std::chrono::year{2024} / 3 / 1;
  EXPECT_DOUBLE_EQ(day_of_run_year(run, Tick{0}), 60.0);  // a leap year: 31 + 29
  EXPECT_DOUBLE_EQ(day_of_run_year(run, Tick{kDay.ms / 2}), 60.5);
  ScenarioSpec spec;
  spec.site.deep_soil_k = 283.15;
  spec.site.coldest_day = 25;
  spec.house.floor = bare_floor();
  EXPECT_DOUBLE_EQ(deep_ground_k(spec, 100.0, 1.0), 283.15) << "no swing: the same all year";
  spec.site.soil_swing_k = 8.0;
  EXPECT_NEAR(deep_ground_k(spec, 24.5, 0.0), 275.15, 1e-9) << "the middle of day 25";
  EXPECT_NEAR(deep_ground_k(spec, 24.5 + 182.5, 0.0), 291.15, 1e-9);
  EXPECT_NEAR(deep_ground_k(spec, 24.5, 50.0), 283.15, 1e-4) << "deep down there is no year";
}

const std::string kGlassRoof = "{roof: {}}";
const std::string kOpaque = "{roof: {opaque_reflects: 80 %}, walls: {opaque_reflects: 80 %}}";

/// The small house with nothing in service, and its cover and ground as the test wants them.
std::string still_house(const char* warm_up, const std::string& cover = kGlassRoof) {
  using small_scenario::with;
  const std::string text =
      with(small_scenario::kText, "  length: 2 d", fmt::format("  length: 2 d\n  warm_up: {}", warm_up));
  const std::string mild =
      with(text, "  peak_day: 2", "  peak_day: 2\n  first_day_high: 28 degC\n  first_night_low: 12 degC");
  return with(mild, "  length: 6 m", "  length: 6 m\n  floor:\n    layers: 5\n    depth: 1.5 m\n  cover: " + cover);
}

Assembly assembled(const std::string& text) {
  const Scenario scenario = small_scenario::read(text);
  const PlanScenario& plan = scenario.plan("nothing runs");
  const WeatherSeries weather = weather_of(scenario, plan);
  return assemble(plan, site_table(plan, weather), weather);
}

/// Temperatures of a bay's ground from the floor down [K].
std::vector<double> ground_of(const Assembly& assembly, std::size_t bay, const std::vector<double>& amounts) {
  const House& house = assembly.plan.house;
  std::vector<double> potentials(static_cast<std::size_t>(house.states)), out;
  for (const auto& batch : house.store_batches) batch->potentials(amounts.data(), potentials.data());
  for (const NodeId id : assembly.bays[bay].soil)
    out.push_back(potentials[static_cast<std::size_t>(house.nodes[static_cast<std::size_t>(id.index)].first_state)]);
  return out;
}

/// The house's state after a day, with all water but the air's and all charge as they were given: pots, films and tank
/// do not run dry while the same day comes again.
std::vector<double> with_stores_of(const Assembly& assembly, const std::vector<double>& given,
                                   const std::vector<double>& after) {
  const House& house = assembly.plan.house;
  std::vector<double> given_p(static_cast<std::size_t>(house.states)), p(given_p), out(given);
  for (const auto& batch : house.store_batches) {
    batch->potentials(given.data(), given_p.data());
    batch->potentials(after.data(), p.data());
  }
  for (int n = 0; n < static_cast<int>(house.nodes.size()); ++n) {
    const auto& node = house.nodes[static_cast<std::size_t>(n)];
    const bool air = std::any_of(assembly.bays.begin(), assembly.bays.end(), [n](const BayParts& bay) {
      return std::find(bay.air.begin(), bay.air.end(), NodeId{n}) != bay.air.end();
    });
    for (int k = 0; k < node.states && !air; ++k) {
      const Quantity counts = node.counts[static_cast<std::size_t>(k)];
      const auto state = static_cast<std::size_t>(node.first_state) + static_cast<std::size_t>(k);
      if (counts == Quantity::water || counts == Quantity::charge) p[state] = given_p[state];
    }
  }
  for (const auto& batch : house.store_batches) batch->amounts(p.data(), out.data());
  return out;
}

/// Largest miss of the ground's layers after a start-up, and without one [K].
struct Misses {
  double warm_k = 0.0, cold_k = 0.0;
};

/// Against the first day run 150 times from the cold start. 1.5 m of moist loam (0.5e-6 m2/s) forgets its start by 1 /
/// e in 4 L^2 / (pi^2 alpha) = 21 d, so less than a thousandth of it is left.
class DayAgain {
 public:
  explicit DayAgain(const std::string& cover) : cover_(cover), cold_(assembled(still_house("0 s", cover))) {
    const std::vector<double> given = cold_.plan.house.initial_amounts;
    std::vector<double>& amounts = cold_.plan.house.initial_amounts;
    cold_.plan.length = kDay;
    for (std::size_t bay = 0; bay < 2; ++bay) start_.push_back(ground_of(cold_, bay, given));
    for (int day = 0; day < 150; ++day) {
      noonhouse::Run run(cold_.plan);
      amounts = with_stores_of(cold_, given, run.go().state.amounts);
    }
    for (std::size_t bay = 0; bay < 2; ++bay) end_.push_back(ground_of(cold_, bay, amounts));
  }
  Misses misses(const char* warm_up) const {
    const Assembly warm = assembled(still_house(warm_up, cover_));
    Misses out;
    for (std::size_t bay = 0; bay < 2; ++bay) {
      const auto ground = ground_of(warm, bay, warm.plan.house.initial_amounts);
      EXPECT_EQ(ground.size(), 5U);
      for (std::size_t i = 0; i < ground.size(); ++i) {
        out.warm_k = std::max(out.warm_k, std::abs(ground[i] - end_[bay][i]));
        out.cold_k = std::max(out.cold_k, std::abs(start_[bay][i] - end_[bay][i]));
      }
    }
    return out;
  }

 private:
  std::string cover_;
  Assembly cold_;
  std::vector<std::vector<double>> start_, end_;
};

TEST(WarmUp, TwoDaysPutTheGroundWhereItsFirstDayAgainAndAgainWould) {
  // A white, opaque house over ground of 16 degC on a day of 12 to 28 degC: it starts several kelvin too cold.
  const Misses misses = DayAgain(kOpaque).misses("2 d");
  EXPECT_GT(misses.cold_k, 3.0) << "or the test would show nothing";
  EXPECT_LT(misses.cold_k, 10.0);
  EXPECT_LT(misses.warm_k, 0.5);
}

TEST(WarmUp, ASunBakedFloorTakesADayOrTwoMore) {
  // Shut, under glass, in July: the ground must be warmed by more than 20 K, and each day the floor's own mean rises
  // with it. Two days bring nine tenths, four bring it within half a kelvin, and there it stays: the state is that of
  // the repeated day, not near it.
  const DayAgain day(kGlassRoof);
  const Misses two = day.misses("2 d");
  EXPECT_GT(two.cold_k, 15.0);
  EXPECT_LT(two.warm_k, 0.1 * two.cold_k);
  EXPECT_LT(day.misses("4 d").warm_k, 0.5);
  EXPECT_LT(day.misses("12 d").warm_k, 0.03);
}

double stored(const Assembly& a, NodeId id, std::size_t state) {
  const House& house = a.plan.house;
  return house
      .initial_amounts[static_cast<std::size_t>(house.nodes[static_cast<std::size_t>(id.index)].first_state) + state];
}

TEST(WarmUp, CountsWhatPlantsBearFromTheRunsStart) {
  const Assembly cold = assembled(still_house("0 s")), warm = assembled(still_house("2 d"));
  ASSERT_GE(warm.not_warmed_up.size(), 6U) << "doses of heat, cold, roots and sun, its habit, and light";
  for (const NodeId id : warm.not_warmed_up) EXPECT_EQ(stored(warm, id, 0), stored(cold, id, 0)) << id.index;
  EXPECT_NE(stored(warm, warm.plants[0].tissue, 0), stored(cold, cold.plants[0].tissue, 0)) << "though it was warm";
}

TEST(WarmUp, KeepsStoredWaterAndChargeAndTheRunItself) {
  Assembly cold = assembled(still_house("0 s")), warm = assembled(still_house("2 d"));
  EXPECT_DOUBLE_EQ(stored(warm, warm.tank, 1), stored(cold, cold.tank, 1));
  EXPECT_DOUBLE_EQ(stored(warm, warm.battery, 0), stored(cold, cold.battery, 0));
  EXPECT_EQ(warm.plan.length.ms, cold.plan.length.ms);
  EXPECT_EQ(warm.plan.forcing->next_break(Tick{0}).ms, cold.plan.forcing->next_break(Tick{0}).ms);
}

TEST(WarmUp, RunsShorterThanADayStartAsAssembled) {
  const auto shortened = [](const char* warm_up) {
    return assembled(small_scenario::with(small_scenario::with(still_house(warm_up), "length: 2 d", "length: 20 h"),
                                          "peak_day: 2", "peak_day: 1"));
  };
  const Assembly cold = shortened("0 s"), warm = shortened("2 d");
  EXPECT_EQ(cold.plan.house.initial_amounts, warm.plan.house.initial_amounts);
}

}  // namespace
}  // namespace noonhouse
