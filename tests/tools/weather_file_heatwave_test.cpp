// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <functional>
#include <string>

#include "models/properties/constants.hpp"
#include "models/properties/irradiance.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/weather/weather_digest.hpp"
#include "models/weather/weather_signal.hpp"
#include "sim/core/errors.hpp"
#include "tools/weather_file/heatwave_generator.hpp"
#include "tools/weather_file/irradiance_completion.hpp"

namespace noonhouse {
namespace {

constexpr std::size_t kRowsPerDay = 144;

/// The row at which a quantity is greatest on a day (1 = first).
std::size_t row_of_greatest(const WeatherSeries& series, int day, double WeatherRow::*value) {
  const auto begin = series.rows.begin() + (day - 1) * static_cast<std::ptrdiff_t>(kRowsPerDay);
  const auto found = std::max_element(begin, begin + kRowsPerDay,
                                      [&](const WeatherRow& a, const WeatherRow& b) { return a.*value < b.*value; });
  return static_cast<std::size_t>(found - series.rows.begin());
}

double greatest(const WeatherSeries& series, int day, double WeatherRow::*value) {
  return series.rows[row_of_greatest(series, day, value)].*value;
}

double daily_sum(const WeatherSeries& series, int day, double WeatherRow::*value) {
  double sum = 0.0;
  for (std::size_t i = 0; i < kRowsPerDay; ++i) {
    sum += series.rows[static_cast<std::size_t>(day - 1) * kRowsPerDay + i].*value * series.step_s;
  }
  return sum;
}

std::string digest_of_day(const WeatherSeries& series, int day) {
  WeatherSeries one = series;
  const auto begin = series.rows.begin() + (day - 1) * static_cast<std::ptrdiff_t>(kRowsPerDay);
  one.rows.assign(begin, begin + kRowsPerDay);
  return weather_digest(one);
}

double hour_of(const WeatherSeries& series, std::size_t row) {
  return static_cast<double>(row % kRowsPerDay) * series.step_s / 3600.0;
}

double sine_at_noon(const WeatherSeries& series) { return mean_sine_elevation(series, kRowsPerDay / 2); }

TEST(Heatwave, DailyHighsAreAsAskedAtTheHourAsked) {
  const HeatwaveSettings settings;
  const WeatherSeries series = make_heatwave(settings);
  ASSERT_EQ(series.rows.size(), 7 * kRowsPerDay);
  EXPECT_TRUE(series.invented);
  // Straight from 306.15 K on day 1 to 313.15 K on day 5, to 309.15 K on day 7.
  const double highs_k[] = {306.15, 307.90, 309.65, 311.40, 313.15, 311.15, 309.15};
  for (int day = 1; day <= 7; ++day) {
    EXPECT_NEAR(greatest(series, day, &WeatherRow::temperature_k), highs_k[day - 1], 1e-9) << day;
    EXPECT_NEAR(hour_of(series, row_of_greatest(series, day, &WeatherRow::temperature_k)), 15.5, 1e-9) << day;
  }
}

TEST(Heatwave, MorningsAreColdestShortlyAfterSunrise) {
  const WeatherSeries series = make_heatwave({});
  const WeatherSignal signal(series, series.start, series.duration_s());
  Tick sunrise{0};
  for (int day = 1; day <= 7; ++day) {
    sunrise = signal.next_sunrise(sunrise);
    const auto begin = series.rows.begin() + (day - 1) * static_cast<std::ptrdiff_t>(kRowsPerDay);
    const auto coldest =
        std::min_element(begin, begin + kRowsPerDay * 5 / 8,
                         [](const WeatherRow& a, const WeatherRow& b) { return a.temperature_k < b.temperature_k; });
    const double coldest_s = static_cast<double>(coldest - series.rows.begin()) * series.step_s;
    // Half an hour after the sun shows; the geometric sunrise is a few minutes later, rows are ten apart.
    EXPECT_NEAR(coldest_s - seconds(sunrise), 1800.0, 900.0) << day;
  }
  // 289.15 K on day 1 and 294.15 K on day 5; rows miss the turning point by up to 5 min.
  const auto lowest = [&](int day) {
    double low_k = 1e3;
    for (std::size_t i = 0; i < kRowsPerDay; ++i) {
      low_k = std::min(low_k, series.rows[static_cast<std::size_t>(day - 1) * kRowsPerDay + i].temperature_k);
    }
    return low_k;
  };
  EXPECT_NEAR(lowest(1), 289.15, 0.05);
  EXPECT_NEAR(lowest(5), 294.15, 0.05);
}

TEST(Heatwave, TemperatureNeverJumps) {
  const WeatherSeries series = make_heatwave({});
  for (std::size_t i = 1; i < series.rows.size(); ++i) {
    // The steepest of a half wave of 19 K over 9 h is 3.3 K/h, the evening's head start a little more.
    EXPECT_LT(std::abs(series.rows[i].temperature_k - series.rows[i - 1].temperature_k), 0.75) << i;
  }
}

TEST(Heatwave, NothingIsNegativeOrBeyondNature) {
  const WeatherSeries series = make_heatwave({.wind_variation = 1.0, .dust_day = 3, .storm_day = 6});
  for (std::size_t i = 0; i < series.rows.size(); ++i) {
    const WeatherRow& row = series.rows[i];
    ASSERT_GE(row.beam_normal_w_m2, 0.0) << i;
    ASSERT_GE(row.diffuse_horizontal_w_m2, 0.0) << i;
    ASSERT_GE(row.global_horizontal_w_m2, 0.0) << i;
    ASSERT_LT(row.beam_normal_w_m2, 1100.0) << i;
    ASSERT_GE(row.wind_m_s, 0.0) << i;
    ASSERT_GE(row.rain_kg_m2_s, 0.0) << i;
    ASSERT_GT(row.humidity_ratio, 0.0) << i;
    ASSERT_LE(relative_humidity(row.temperature_k, row.humidity_ratio, row.pressure_pa), 1.0 + 1e-12) << i;
    ASSERT_GE(row.cloud_share, 0.0) << i;
    ASSERT_LE(row.cloud_share, 1.0) << i;
    ASSERT_GE(row.wind_from_rad, 0.0) << i;
    ASSERT_LT(row.wind_from_rad, 2.0 * kPi) << i;
  }
}

TEST(Heatwave, GlobalIsBeamOnTheLevelPlusDiffuse) {
  const WeatherSeries series = make_heatwave({.dust_day = 3, .storm_day = 6});
  for (std::size_t i = 0; i < series.rows.size(); ++i) {
    const WeatherRow& row = series.rows[i];
    const double closed = row.beam_normal_w_m2 * mean_sine_elevation(series, i) + row.diffuse_horizontal_w_m2;
    // Means of products against products of means: within one step beam and sine change together.
    EXPECT_NEAR(row.global_horizontal_w_m2, closed, 2.0) << i;
  }
}

TEST(Heatwave, ClearDaysHaveAClearSummersSun) {
  const WeatherSeries series = make_heatwave({});
  // Clear-sky global by another law: FAO-56 eq. (37) of the day's extraterrestrial energy; 14 July is day 195.
  const double expected = fao_clear_sky(1600.0, extraterrestrial_daily(35.0 * kRadiansPerDegree, 195));
  EXPECT_NEAR(daily_sum(series, 1, &WeatherRow::global_horizontal_w_m2) / expected, 1.0, 0.07);
  EXPECT_GT(sine_at_noon(series), 0.9);
}

TEST(Heatwave, DustMovesBeamIntoDiffuse) {
  const WeatherSeries clear = make_heatwave({});
  const WeatherSeries dusty = make_heatwave({.dust_day = 3, .dust_strength = 0.6});
  const auto change = [&](int day, double WeatherRow::*value) {
    return daily_sum(dusty, day, value) - daily_sum(clear, day, value);
  };
  EXPECT_LT(daily_sum(dusty, 3, &WeatherRow::beam_normal_w_m2),
            0.7 * daily_sum(clear, 3, &WeatherRow::beam_normal_w_m2));
  // Two thirds of what the beam on the level loses come back as diffuse, so the global loses half as much as that.
  EXPECT_GT(change(3, &WeatherRow::diffuse_horizontal_w_m2), 0.0);
  EXPECT_NEAR(change(3, &WeatherRow::global_horizontal_w_m2) / change(3, &WeatherRow::diffuse_horizontal_w_m2), -0.5,
              1e-9);
  // At noon the optical depth is as asked: beam falls by exp(-depth over the sine of the sun).
  const std::size_t noon = 2 * kRowsPerDay + kRowsPerDay / 2;
  EXPECT_NEAR(dusty.rows[noon].beam_normal_w_m2 / clear.rows[noon].beam_normal_w_m2,
              std::exp(-0.6 / sine_at_noon(clear)), 0.005);
  EXPECT_EQ(digest_of_day(dusty, 2), digest_of_day(clear, 2)) << "other days stay as they were";
  EXPECT_EQ(digest_of_day(dusty, 4), digest_of_day(clear, 4));
  EXPECT_NE(digest_of_day(dusty, 3), digest_of_day(clear, 3));
}

TEST(Heatwave, TheStormBringsTheRainAndGustAskedFor) {
  const HeatwaveSettings settings{.storm_day = 6, .storm_minutes = 35.0, .storm_rain_mm = 14.5, .storm_gust_m_s = 21.0};
  const WeatherSeries series = make_heatwave(settings);
  double rain = 0.0;
  for (const WeatherRow& row : series.rows) rain += row.rain_kg_m2_s * series.step_s;
  EXPECT_NEAR(rain, 14.5, 1e-12);
  EXPECT_NEAR(daily_sum(series, 6, &WeatherRow::rain_kg_m2_s), 14.5, 1e-12);
  EXPECT_DOUBLE_EQ(greatest(series, 6, &WeatherRow::wind_m_s), 21.0);
  EXPECT_NEAR(hour_of(series, row_of_greatest(series, 6, &WeatherRow::wind_m_s)), 17.0, 1e-9);
  EXPECT_DOUBLE_EQ(greatest(series, 6, &WeatherRow::cloud_share), 1.0);
}

TEST(Heatwave, TheStormCoolsAndMoistensTheAirAndHidesTheSun) {
  const WeatherSeries calm = make_heatwave({});
  const WeatherSeries stormy = make_heatwave({.storm_day = 6});
  const std::size_t in_storm = 5 * kRowsPerDay + 17 * 6 + 3;  // 17:30
  EXPECT_NEAR(calm.rows[in_storm].temperature_k - stormy.rows[in_storm].temperature_k, 9.0, 1e-9);
  const auto humidity = [&](const WeatherRow& row) {
    return relative_humidity(row.temperature_k, row.humidity_ratio, row.pressure_pa);
  };
  EXPECT_GT(humidity(stormy.rows[in_storm]), 1.5 * humidity(calm.rows[in_storm]));
  EXPECT_EQ(stormy.rows[in_storm].beam_normal_w_m2, 0.0);
  // Under a full cover a quarter of the global is left (Kasten & Czeplak 1980: 1 - 0.75).
  EXPECT_NEAR(stormy.rows[in_storm].global_horizontal_w_m2 / calm.rows[in_storm].global_horizontal_w_m2, 0.25, 1e-9);
  EXPECT_EQ(digest_of_day(stormy, 5), digest_of_day(calm, 5)) << "the day before nothing tells of it";
  EXPECT_LT(std::abs(stormy.rows.back().temperature_k - calm.rows.back().temperature_k), 0.01) << "it passes";
}

TEST(Heatwave, WindFollowsDayAndNightAndItsSeed) {
  const WeatherSeries steady = make_heatwave({.wind_variation = 0.0});
  EXPECT_DOUBLE_EQ(steady.rows[15 * 6].wind_m_s, 3.5);
  EXPECT_DOUBLE_EQ(steady.rows[3 * 6].wind_m_s, 1.0);
  EXPECT_NEAR(steady.rows[15 * 6].wind_from_rad, 225.0 * kRadiansPerDegree, 1e-12);
  EXPECT_NEAR(steady.rows[3 * 6].wind_from_rad, 60.0 * kRadiansPerDegree, 1e-12);
  // The variation's mean is one and its relative deviation as asked; 60 days of half-hour memory.
  const HeatwaveSettings varied{.days = 60, .wind_variation = 0.25};
  const WeatherSeries windy = make_heatwave(varied);
  double sum = 0.0, squares = 0.0;
  for (std::size_t i = 0; i < windy.rows.size(); ++i) {
    const double factor = windy.rows[i].wind_m_s / steady.rows[i % kRowsPerDay].wind_m_s;
    sum += factor;
    squares += factor * factor;
  }
  const double count = static_cast<double>(windy.rows.size());
  const double mean = sum / count;
  EXPECT_NEAR(mean, 1.0, 0.02);
  EXPECT_NEAR(std::sqrt(squares / count - mean * mean), 0.25, 0.02);
}

TEST(Heatwave, TheSameSettingsGiveTheSameWeatherAndOtherSeedsOtherWind) {
  const HeatwaveSettings settings{.dust_day = 2, .storm_day = 4, .seed = 7};
  EXPECT_EQ(weather_digest(make_heatwave(settings)), weather_digest(make_heatwave(settings)));
  HeatwaveSettings other = settings;
  other.seed = 8;
  const WeatherSeries a = make_heatwave(settings), b = make_heatwave(other);
  EXPECT_NE(weather_digest(a), weather_digest(b));
  EXPECT_EQ(a.rows[100].temperature_k, b.rows[100].temperature_k);
}

TEST(Heatwave, ItsSunComesBackFromTheSignalAtInstants) {
  const WeatherSeries series = make_heatwave({.days = 2, .peak_day = 2});
  const WeatherSignal signal(series, series.start, series.duration_s());
  double got = 0.0;
  for (Tick t = 30_s; t < kDay; t = t + 1_min) got += signal.at(t).global_horizontal_w_m2 * 60.0;
  EXPECT_NEAR(got / daily_sum(series, 1, &WeatherRow::global_horizontal_w_m2), 1.0, 0.002);
}

TEST(Heatwave, ContradictionsAreRefused) {
  const auto refusal = [](const HeatwaveSettings& settings) {
    try {
      make_heatwave(settings);
    } catch (const UserError& error) {
      EXPECT_EQ(error.kind(), ErrorKind::out_of_range);
      return std::string{error.what()};
    }
    return std::string{"no error"};
  };
  using testing::HasSubstr;
  EXPECT_THAT(refusal({.days = 0}), HasSubstr("days: read 0"));
  EXPECT_THAT(refusal({.days = 3, .peak_day = 4}), HasSubstr("peak_day: read 4"));
  EXPECT_THAT(refusal({.latitude_deg = 80.0}), HasSubstr("latitude"));
  EXPECT_THAT(refusal({.first_night_low_k = 310.0}), HasSubstr("day 1: the lowest temperature"));
  EXPECT_THAT(refusal({.dust_day = 8}), HasSubstr("dust_day"));
  EXPECT_THAT(refusal({.storm_day = 8}), HasSubstr("storm_day"));
  EXPECT_THAT(refusal({.storm_day = 3, .storm_start_h = 23.8}), HasSubstr("storm"));
  EXPECT_THAT(refusal({.step_s = 700.0}), HasSubstr("step: read 700 s"));
}

}  // namespace
}  // namespace noonhouse
