// SPDX-License-Identifier: Apache-2.0
// What a place, its pots and its water make of one kind of plant in a whole house through a hot clear day.
#include <gtest/gtest.h>

#include <cmath>
#include <string>

#include "models/properties/constants.hpp"
#include "sim/integrate/evaluation.hpp"
#include "tests/support/run_marks.hpp"
#include "tests/support/small_scenario.hpp"
#include "tools/scenario/assemble.hpp"

namespace noonhouse {
namespace {

constexpr double kPlantsFrom = 11.0, kPlantsTo = 15.0;  // hours that are averaged

/// The small house for one day, with other plants and what is put after them; `plan` by its number.
struct PlantDay {
  Assembly house;
  MarkedRun marked{RunMarks(House{}, 10_min), {}};

  explicit PlantDay(const std::string& plants, const std::string& more = "", const std::string& in_service = "",
                    const std::string& length = "24 h") {
    using small_scenario::with;
    std::string text = with(small_scenario::kText, "  length: 2 d\n", "  length: " + length + "\n  warm_up: 1 d\n");
    text = with(text, "  peak_day: 2\n", "  peak_day: 1\n");
    text = with(text, "  ferns:\n    kind: fern\n    place: long bench\n    area: 2 m2\n", plants);
    text = with(text, "grower:\n  visits:\n    morning:\n      at: 07:00\n      waters: [ferns]\n", more);
    if (plants.find("place: rail") != std::string::npos)
      text = with(text, "benches:\n",
                  "benches:\n  rail: { bay: east, hangs: true, height: 1.9 m, length: 2 m, width: 60 cm }\n");
    if (!in_service.empty()) text = with(text, "    in_service: []\n", "    in_service: [" + in_service + "]\n");
    const Scenario scenario = read_scenario_text(text, "plants.yaml");
    const PlanScenario& plan = scenario.plans.at(0);
    const WeatherSeries weather = weather_of(scenario, plan);
    house = assemble(plan, site_table(plan, weather), weather);
    marked = run_with_marks(house.plan, 10_min);
  }
  double mean(const Input& input, double from_h = kPlantsFrom, double to_h = kPlantsTo) const {
    return marked.marks.mean(house.plan.house.position(input), mark(from_h), mark(to_h));
  }
  double at(double hour, const Input& input) const {
    return marked.marks.value(mark(hour), house.plan.house.position(input));
  }
  const PlantParts& plant(const std::string& name) const {
    for (const PlantParts& parts : house.plants)
      if (parts.name == name) return parts;
    throw std::runtime_error("no plants " + name);
  }
  NodeId air_beside(const PlantParts& parts) const {
    return house.bays[static_cast<std::size_t>(parts.bay_index)].air[static_cast<std::size_t>(parts.layer)];
  }
  NodeId draught_past(const PlantParts& parts) const {
    return house.bays[static_cast<std::size_t>(parts.bay_index)].draught.at(parts.layer);
  }
  /// What an exchange carried over the day [kg, J].
  double carried(const std::string& exchange, int which = 0) const {
    const auto id = house.plan.house.find_exchange(exchange);
    if (!id) throw std::runtime_error("no exchange " + exchange);
    const auto& info = house.plan.house.exchanges[static_cast<std::size_t>(id->index)];
    return marked.result.state.carried[static_cast<std::size_t>(info.first_flux + which)];
  }
  /// What an exchange carries at the run's end, all its fluxes together [W].
  double power_at_end(const std::string& exchange) const {
    const House& h = house.plan.house;
    Evaluation evaluation(h);
    std::vector<double> rates(static_cast<std::size_t>(h.states));
    evaluation.rates(marked.result.state.amounts.data(), marked.result.channels.data(), rates.data());
    const auto& info = h.exchanges[static_cast<std::size_t>(h.find_exchange(exchange).value().index)];
    double sum = 0.0;
    for (int k = 0; k < info.fluxes; ++k) sum += evaluation.fluxes()[static_cast<std::size_t>(info.first_flux + k)];
    return sum;
  }

 private:
  static std::size_t mark(double hour) { return static_cast<std::size_t>(std::lround(6.0 * hour)); }
};

std::string group(const std::string& name, const std::string& rest) {
  return "  " + name + ": { kind: fern, area: 1 m2, " + rest + " }\n";
}

TEST(PlantPlaces, UnderABenchItIsDimmerAndCoolerThanOnIt) {
  const PlantDay day(group("above", "place: long bench") + group("beneath", "place: long bench, under: true"));
  const PlantParts &above = day.plant("above"), &beneath = day.plant("beneath");
  const double light_above = day.at(24.0, above.doses.light_sum), light_beneath = day.at(24.0, beneath.doses.light_sum);
  EXPECT_GT(light_above, 3e6) << "a clear summer day: some of 25 MJ/m2 gets in";
  EXPECT_LT(light_beneath, 0.6 * light_above);
  EXPECT_GT(light_beneath, 0.0);
  EXPECT_LT(day.mean(beneath.tissue), day.mean(above.tissue) - 1.0);
  EXPECT_LT(day.mean(beneath.wall), day.mean(above.wall));
  const double moved = day.carried("transpiration of above"), beneath_moved = day.carried("transpiration of beneath");
  EXPECT_GT(beneath_moved, 0.0);
  EXPECT_LT(beneath_moved, moved);
}

TEST(PlantPlaces, HangingUnderTheRoofOfAShutHouseItIsHotterThanOnTheFloor) {
  const PlantDay day(group("high", "place: rail") + group("low", "place: east"));
  const PlantParts &high = day.plant("high"), &low = day.plant("low");
  EXPECT_GT(high.layer, low.layer);
  EXPECT_GT(day.mean(high.tissue), day.mean(low.tissue) + 2.0);
  EXPECT_GT(day.mean(day.air_beside(high)), day.mean(day.air_beside(low)) + 0.1) << "2.8 m of well stirred air";
}

TEST(PlantPots, DarkWallsGetHotterThanWhiteOnes) {
  const PlantDay dark(group("ferns", "place: long bench, pot_absorptance: 95 %"));
  const PlantDay white(group("ferns", "place: long bench, pot_absorptance: 25 %"));
  const PlantParts &in_dark = dark.plant("ferns"), &in_white = white.plant("ferns");
  EXPECT_GT(dark.mean(in_dark.wall), white.mean(in_white.wall) + 1.0);
  EXPECT_GT(dark.mean(in_dark.pot), white.mean(in_white.pot));
  EXPECT_GT(dark.mean(in_dark.wall), dark.mean(in_dark.pot)) << "the sun comes from outside";
  EXPECT_GT(dark.carried("sun on walls of the pots of ferns"),
            3.0 * white.carried("sun on walls of the pots of ferns"));
}

/// Nobody waters; a line drips for half an hour in the morning. Its water leaves the tank, all of it, and no more.
TEST(PlantPots, ADripLineKeepsThemWetAndItsWaterLeavesTheTank) {
  const std::string drip =
      "drip_lines:\n  drip: { waters: [ferns, others], flow: 12 L/h }\n"
      "timers:\n  mornings: { from: \"06:00\", until: \"06:30\", drives: [drip] }\n";
  const std::string plants = group("ferns", "place: long bench") + group("others", "place: east");
  const PlantDay on(plants, drip, "drip, mornings"), off(plants, drip);
  const auto water = [](const PlantDay& day, const char* name) { return day.at(24.0, Input(day.plant(name).pot, 1)); };
  EXPECT_GT(water(on, "ferns"), water(off, "ferns") + 1.0);
  EXPECT_GT(water(on, "others"), water(off, "others") + 1.0);
  const double to_ferns = on.carried("drip into the pots of ferns"),
               to_others = on.carried("drip into the pots of others");
  EXPECT_NEAR(to_ferns + to_others, 6.0, 0.01) << "half an hour of 12 L/h";
  EXPECT_NEAR(to_ferns, to_others, 1e-9) << "by the ground they cover";
  EXPECT_EQ(off.carried("drip into the pots of ferns"), 0.0);
  const double tank = on.at(24.0, Input(on.house.tank, 1)) - off.at(24.0, Input(off.house.tank, 1));
  EXPECT_NEAR(tank, -(to_ferns + to_others), 1e-9) << "all of it, and no more";
}

std::string fan_text(const std::string& fan) {
  return "fans:\n  fan: { " + fan +
         ", power: 0 W }\ntimers:\n  all day: { from: \"00:00\", until: \"24:00\", drives: [fan] }\n";
}
/// Thick plants whose stomata are shut by day, at one o'clock: sunlit tissue less the air beside it, and its film.
struct AtOne {
  double tissue_k = 0.0, apart_k = 0.0, draught_m_s = 0.0, film_w_m2_k = 0.0;
};
AtOne cacti_at_one(const std::string& fan, const std::string& in_service) {
  const PlantDay day("  cacti: { kind: sun succulent, area: 1 m2, place: long bench }\n", fan_text(fan), in_service,
                     "13 h");
  const PlantParts& plants = day.plant("cacti");
  AtOne out;
  out.tissue_k = day.at(13.0, plants.tissue);
  out.apart_k = out.tissue_k - day.at(13.0, day.air_beside(plants));
  out.draught_m_s = day.at(13.0, day.draught_past(plants));
  // Half of the tissue, 0.8 m2 of half surface over each square metre of ground.
  out.film_w_m2_k = day.power_at_end("heat between cacti and the air beside it") / (2.0 * 0.5 * 0.8 * out.apart_k);
  return out;
}

/// A fan that draws outdoor air through: the plants feel it, their film grows as the root of the speed says and they
/// are cooler. They are not closer to their air: that falls by more than roof, walls and floor do, and these warm the
/// plants by thermal radiation. h_F = 1006 rho 0.003 sqrt(u / 0.06 m) [Leuning et al. 1995] with u^2 = 0.1^2 +
/// draught^2, rho of 40 degC and 84 kPa; free convection is on top, by the third power.
TEST(PlantPlaces, AFanThatDrawsAirPastThemIsFeltAndCoolsThem) {
  const std::string fan =
      "bay: east, height: 1.2 m, inlet_bay: west, inlet_height: 1.2 m, flow: 1.5 m3/s, shut_off: 2 kPa";
  const AtOne on = cacti_at_one(fan, "fan, all day"), off = cacti_at_one(fan, "");
  EXPECT_GT(on.draught_m_s, off.draught_m_s + 0.1);
  EXPECT_LT(on.draught_m_s, 1.5) << "1.5 m3/s through some square metres";
  EXPECT_LT(on.tissue_k, off.tissue_k - 5.0);
  EXPECT_GT(on.film_w_m2_k, 1.2 * off.film_w_m2_k);
  const double forced = kDryAirHeat * 0.93 * 0.003 * std::sqrt(std::hypot(0.1, on.draught_m_s) / 0.06);
  EXPECT_GT(on.film_w_m2_k, 0.98 * forced);
  EXPECT_LT(on.film_w_m2_k, 1.3 * forced);
  RecordProperty("drawn", std::to_string(off.draught_m_s) + " " + std::to_string(on.draught_m_s) + " apart " +
                              std::to_string(off.apart_k) + " " + std::to_string(on.apart_k) + " film " +
                              std::to_string(off.film_w_m2_k) + " " + std::to_string(on.film_w_m2_k));
}

/// One that moves the house's own air around changes no air: only the film, and the tissue comes closer to its air.
TEST(PlantPlaces, AFanThatStirsTheAirBringsTheirTissueCloserToIt) {
  const std::string fan =
      "bay: west, inlet_bay: west, moves: air around, height: 1.2 m, inlet_height: 1.2 m, flow: 1.5 m3/s, width: 50 cm";
  const AtOne on = cacti_at_one(fan, "fan, all day"), off = cacti_at_one(fan, "");
  EXPECT_GT(on.film_w_m2_k, 1.2 * off.film_w_m2_k);
  EXPECT_LT(on.apart_k, off.apart_k - 0.5);
  EXPECT_GT(on.apart_k, 1.0);
  RecordProperty("stirred", "apart " + std::to_string(off.apart_k) + " " + std::to_string(on.apart_k) + " film " +
                                std::to_string(off.film_w_m2_k) + " " + std::to_string(on.film_w_m2_k));
}

}  // namespace
}  // namespace noonhouse
