// SPDX-License-Identifier: Apache-2.0
// The generator's own defaults are those of the scenario's field list: one parameter, one value.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/properties/constants.hpp"
#include "tests/support/small_scenario.hpp"
#include "tools/scenario/assemble.hpp"
#include "tools/weather_file/year_generator.hpp"

namespace noonhouse {
namespace {

/// The small scenario under an invented year with these settings.
Scenario under_a_year(const std::string& settings = "") {
  return small_scenario::read(small_scenario::with(small_scenario::kText, "  kind: invented heatwave\n  peak_day: 2\n",
                                                   "  kind: invented year\n" + settings));
}

TEST(YearDefaults, AreTheSameInTheFieldListAndInTheGenerator) {
  const Scenario scenario = under_a_year();
  const ScenarioSpec& spec = scenario.plans.front().spec;
  const auto& listed = std::get<InventedYear>(spec.weather.source);
  const YearSettings own;
  EXPECT_DOUBLE_EQ(own.albedo, spec.site.albedo);
  EXPECT_DOUBLE_EQ(own.warmest_month_mean_k, listed.warmest_month_mean_k);
  EXPECT_DOUBLE_EQ(own.coldest_month_mean_k, listed.coldest_month_mean_k);
  EXPECT_DOUBLE_EQ(own.summer_daily_swing_k, listed.summer_daily_swing_k);
  EXPECT_DOUBLE_EQ(own.winter_daily_swing_k, listed.winter_daily_swing_k);
  EXPECT_DOUBLE_EQ(own.weather_swing_k, listed.weather_swing_k);
  EXPECT_DOUBLE_EQ(own.summer_dew_gap_k, listed.summer_dew_gap_k);
  EXPECT_DOUBLE_EQ(own.winter_dew_gap_k, listed.winter_dew_gap_k);
  EXPECT_DOUBLE_EQ(own.rain_a_year_mm * 1e-3, listed.rain_a_year_m);
  EXPECT_EQ(own.rain_days_a_year, listed.rain_days_a_year);
  EXPECT_EQ(own.wetter_season, listed.wetter_season);
  EXPECT_DOUBLE_EQ(own.wetter_share, listed.wetter_share);
  EXPECT_DOUBLE_EQ(own.cloudy_days, listed.cloudy_days);
  EXPECT_DOUBLE_EQ(own.clear_cover, listed.clear_cover);
  EXPECT_DOUBLE_EQ(own.cloudy_cover, listed.cloudy_cover);
  EXPECT_DOUBLE_EQ(own.wind_day_m_s, listed.wind_day_m_s);
  EXPECT_DOUBLE_EQ(own.wind_night_m_s, listed.wind_night_m_s);
  EXPECT_DOUBLE_EQ(own.wind_from_deg * kRadiansPerDegree, listed.wind_from_rad);
  EXPECT_DOUBLE_EQ(own.linke_turbidity, listed.turbidity);
}

TEST(YearDefaults, TheScenariosSettingsAndSeedReachTheWeather) {
  const Scenario plain = under_a_year(), warmer = under_a_year("  warmest_month_mean: 25 degC\n  turbidity: 5\n");
  const WeatherSeries a = weather_of(plain, plain.plans.front()), b = weather_of(warmer, warmer.plans.front());
  EXPECT_TRUE(a.invented);
  ASSERT_EQ(a.rows.size(), 2u * 48u);
  // The scenario's two days are 14 and 15 July, in the middle of the warmest month: 6 K warmer is 6 K warmer there,
  // and 1 % more at the peak of the year's wave than in the month's mean.
  EXPECT_NEAR(b.rows[20].temperature_k - a.rows[20].temperature_k, 6.0, 0.1);
  EXPECT_LT(b.rows[24].beam_normal_w_m2, a.rows[24].beam_normal_w_m2);
  Scenario other = under_a_year();
  other.plans.front().spec.run.seed = 9;
  EXPECT_NE(weather_of(other, other.plans.front()).rows[20].temperature_k, a.rows[20].temperature_k);
}

TEST(YearDefaults, AContradictionIsToldWithItsPlaceInTheFile) {
  const Scenario scenario = under_a_year("  rain_days_a_year: 300\n");
  try {
    weather_of(scenario, scenario.plans.front());
    FAIL() << "nothing was refused";
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::out_of_range);
    EXPECT_THAT(error.what(), testing::HasSubstr("small.yaml"));
    EXPECT_THAT(error.what(), testing::HasSubstr("it rains on cloudy days only"));
  }
}

}  // namespace
}  // namespace noonhouse
