// SPDX-License-Identifier: Apache-2.0
// The generator's own defaults are those of the scenario's field list: one parameter, one value.
#include <gtest/gtest.h>

#include "tests/support/small_scenario.hpp"
#include "tools/weather_file/heatwave_generator.hpp"

namespace noonhouse {
namespace {

TEST(HeatwaveDefaults, AreTheSameInTheFieldListAndInTheGenerator) {
  const Scenario scenario = small_scenario::read(small_scenario::with(small_scenario::kText, "  peak_day: 2\n", ""));
  const ScenarioSpec& spec = scenario.plans.front().spec;
  const auto& listed = std::get<InventedHeatwave>(spec.weather.source);
  const HeatwaveSettings own;
  EXPECT_DOUBLE_EQ(own.albedo, spec.site.albedo);
  EXPECT_DOUBLE_EQ(own.first_day_high_k, listed.first_day_high_k);
  EXPECT_DOUBLE_EQ(own.peak_high_k, listed.peak_high_k);
  EXPECT_DOUBLE_EQ(own.last_day_high_k, listed.last_day_high_k);
  EXPECT_EQ(own.peak_day, listed.peak_day);
  EXPECT_DOUBLE_EQ(own.first_night_low_k, listed.first_night_low_k);
  EXPECT_DOUBLE_EQ(own.peak_night_low_k, listed.peak_night_low_k);
  EXPECT_DOUBLE_EQ(own.dew_point_k, listed.dew_point_k);
  EXPECT_DOUBLE_EQ(own.wind_day_m_s, listed.wind_day_m_s);
  EXPECT_DOUBLE_EQ(own.wind_night_m_s, listed.wind_night_m_s);
  EXPECT_DOUBLE_EQ(own.linke_turbidity, listed.turbidity);
  EXPECT_EQ(own.dust_day, listed.dust_day);
  EXPECT_DOUBLE_EQ(own.dust_strength, listed.dust_strength);
  EXPECT_EQ(own.storm_day, listed.storm_day);
  EXPECT_DOUBLE_EQ(own.storm_start_h * 3600.0, listed.storm_start_s);
  EXPECT_DOUBLE_EQ(own.storm_minutes * 60.0, listed.storm_length_s);
  EXPECT_DOUBLE_EQ(own.storm_rain_mm * 1e-3, listed.storm_rain_m);
  EXPECT_DOUBLE_EQ(own.storm_gust_m_s, listed.storm_gust_m_s);
}

}  // namespace
}  // namespace noonhouse
