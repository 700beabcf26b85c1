// SPDX-License-Identifier: Apache-2.0
// A year that closes on itself, from a warmed-up start: what the ground has to make up shows how far the start was off.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "tools/scenario/assemble.hpp"
#include "tools/weather_file/plain_weather.hpp"

namespace noonhouse {
namespace {

constexpr double kMeanC = 10.0, kColdestDay = 25.0;
constexpr double kYearK = 9.0, kDayK = 4.0;  ///< half of warmest minus coldest

/// Air that swings about 10 degC in the year and in the day, without sun, under a sky as warm as the air.
std::string weather_text(double year_k, double day_k) {
  constexpr double kTurn = 2.0 * std::numbers::pi;
  std::string text =
      "# noonhouse weather 1\n# name: Even year\n# origin: invented for this test\n# invented: yes\n"
      "# latitude: 50 deg\n# longitude: 0 deg\n# altitude: 0 m\n# utc_offset: 0 h\n# step: 1 h\n"
      "time,temperature[degC],relative_humidity[%],global[W/m2],wind[m/s],longwave_down[W/m2]\n";
  const auto first = std::chrono::sys_days(std::chrono::year{2025} / 1 / 1);
  for (int hour = 0; hour < 366 * 24; ++hour) {
    const double day = (hour + 0.5) / 24.0;
    const double celsius = kMeanC - year_k * std::cos(kTurn * (day - kColdestDay + 0.5) / 365.0) -
                           day_k * std::cos(kTurn * (day - 3.0 / 24.0));
    const std::chrono::year_month_day date(first + std::chrono::days(hour / 24));
    text += fmt::format("{}-{:02}-{:02} {:02}:00,{:.3f},60,0,2,{:.2f}\n", static_cast<int>(date.year()),
                        static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()), hour % 24, celsius,
                        5.670374419e-8 * std::pow(celsius + 273.15, 4));
  }
  return text;
}

constexpr const char* kEvenYear = R"(title: Even year
run:
  start: 2025-01-01
  length: 365 d
  warm_up: WARM_UP
  sun_every: 1 h
  tolerance: 0.02 K
site:
  latitude: 50 deg
  longitude: 0 deg
  altitude: 0 m
  utc_offset: "+00:00"
  deep_soil: 10 degC
  soil_swing: 9 K
weather:
  kind: plain weather file
  file: year.csv
house:
  length: 6 m
  width: 3 m
  eaves: 2 m
  ridge: 2.8 m
  layers: 2
  bays:
    all:
      share: 100 %
  cover:
    roof:
      opaque_reflects: 50 %
    walls:
      opaque_reflects: 50 %
tank:
  capacity: 300 L
  starts_with: 250 L
  low_mark: 20 L
  restart_mark: 40 L
power:
  panel_area: 1 m2
  battery: 600 Wh
)";

/// Temperatures of the ground from the floor down [K], at the start and after 365 days.
struct Year {
  std::vector<double> start_k, end_k;
  double worst_k() const {
    double out = 0.0;
    for (std::size_t i = 0; i < start_k.size(); ++i) out = std::max(out, std::abs(start_k[i] - end_k[i]));
    return out;
  }
};

Year year_from(const std::string& warm_up, const std::string& swing, double year_k = kYearK, double day_k = kDayK) {
  std::string text = kEvenYear;
  text.replace(text.find("WARM_UP"), 7, warm_up);
  text.replace(text.find("soil_swing: 9 K"), 15, "soil_swing: " + swing);
  const PlanScenario plan = read_scenario_text(text, "year.yaml").plans.front();
  const WeatherSeries weather = parse_plain_weather(weather_text(year_k, day_k), "year.csv");
  const Assembly assembly = assemble(plan, site_table(plan, weather), weather);
  const House& house = assembly.plan.house;
  const auto ground = [&](const std::vector<double>& amounts) {
    std::vector<double> potentials(static_cast<std::size_t>(house.states)), out;
    for (const auto& batch : house.store_batches) batch->potentials(amounts.data(), potentials.data());
    for (const NodeId id : assembly.bays[0].soil)
      out.push_back(potentials[static_cast<std::size_t>(house.nodes[static_cast<std::size_t>(id.index)].first_state)]);
    return out;
  };
  noonhouse::Run run(assembly.plan);
  return {ground(house.initial_amounts), ground(run.go().state.amounts)};
}

TEST(WarmUpYear, AYearFromTheFirstOfJanuaryClosesOnItself) {
  // The ground stores half a year, so what starts wrong shows at the end: a start in season is back within half a
  // kelvin in every layer, where one at the deep ground's yearly mean is off by several.
  const Year year = year_from("2 d", "9 K");
  ASSERT_EQ(year.start_k.size(), 6U);
  for (std::size_t i = 0; i < year.start_k.size(); ++i)
    EXPECT_NEAR(year.end_k[i], year.start_k[i], 0.5) << "soil layer " << i + 1;
  EXPECT_GT(year_from("0 s", "0 K").worst_k(), 5.0) << "or the test would show nothing";
}

TEST(WarmUpYear, InJanuaryTheGroundIsWarmerTheDeeper) {
  // Kusuda & Achenbach's wave is late with depth; at 2.02 m, 0.90 of its damping depth of 2.23 m, it is at
  // 10 - 9 exp(-0.90) cos(-0.42 - 0.90) = 9.1 degC on the first of January. The layers under the house stand between
  // the day's mean outdoors, 10 - 9 cos(0.42) = 1.8 degC, and that.
  const Year year = year_from("2 d", "9 K");
  for (std::size_t i = 1; i < year.start_k.size(); ++i) EXPECT_GT(year.start_k[i], year.start_k[i - 1]);
  EXPECT_GT(year.start_k.front(), 273.15 + 1.8);
  EXPECT_LT(year.start_k.back(), 273.15 + 9.1);
}

TEST(WarmUpYear, WithoutSwingOrSeasonNothingMoves) {
  // All at one temperature: the yearly mean outdoors, above and below.
  const Year year = year_from("2 d", "0 K", 0.0, 0.0);
  for (std::size_t i = 0; i < year.start_k.size(); ++i) {
    EXPECT_NEAR(year.start_k[i], 283.15, 0.05) << "soil layer " << i + 1;
    EXPECT_NEAR(year.end_k[i], 283.15, 0.05) << "soil layer " << i + 1;
  }
}

}  // namespace
}  // namespace noonhouse
