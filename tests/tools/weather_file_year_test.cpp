// SPDX-License-Identifier: Apache-2.0
// Long because each promise of the generator's docstring has its own test, and all share the sums over days below.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <functional>
#include <string>
#include <vector>

#include "models/properties/constants.hpp"
#include "models/properties/irradiance.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/properties/sun.hpp"
#include "models/weather/weather_digest.hpp"
#include "sim/core/errors.hpp"
#include "tools/weather_file/irradiance_completion.hpp"
#include "tools/weather_file/year_generator.hpp"

namespace noonhouse {
namespace {

using namespace std::chrono_literals;
using std::chrono::sys_days;
using std::chrono::year_month_day;

/// The default year, made once.
const WeatherSeries& default_year() {
  static const WeatherSeries series = make_year({});
  return series;
}

YearSettings cloudless() {
  YearSettings s;
  s.rain_a_year_mm = s.cloudy_days = s.clear_cover = s.cloudy_cover = 0.0;
  s.rain_days_a_year = 0;
  return s;
}

std::size_t rows_per_day(const WeatherSeries& series) { return static_cast<std::size_t>(86400.0 / series.step_s); }

year_month_day date_of(const WeatherSeries& series, std::size_t day) {
  return year_month_day{std::chrono::floor<std::chrono::days>(series.start) + std::chrono::days{day}};
}

/// One value for each day from the day's rows.
std::vector<double> daily(const WeatherSeries& series,
                          const std::function<double(const WeatherRow*, std::size_t)>& of) {
  std::vector<double> out;
  const std::size_t count = rows_per_day(series);
  for (std::size_t i = 0; i + count <= series.rows.size(); i += count) out.push_back(of(&series.rows[i], count));
  return out;
}

std::vector<double> daily_mean(const WeatherSeries& series, double WeatherRow::*value) {
  return daily(series, [value](const WeatherRow* rows, std::size_t count) {
    double sum = 0.0;
    for (std::size_t i = 0; i < count; ++i) sum += rows[i].*value;
    return sum / static_cast<double>(count);
  });
}

std::vector<double> daily_rain_mm(const WeatherSeries& series) {
  std::vector<double> out = daily_mean(series, &WeatherRow::rain_kg_m2_s);
  for (double& rain : out) rain *= 86400.0;
  return out;
}

std::vector<double> daily_swing_k(const WeatherSeries& series) {
  return daily(series, [](const WeatherRow* rows, std::size_t count) {
    const auto [low, high] = std::minmax_element(
        rows, rows + count, [](const WeatherRow& a, const WeatherRow& b) { return a.temperature_k < b.temperature_k; });
    return high->temperature_k - low->temperature_k;
  });
}

double mean(const std::vector<double>& values) {
  double sum = 0.0;
  for (const double value : values) sum += value;
  return sum / static_cast<double>(values.size());
}

double mean_of_month(const WeatherSeries& series, const std::vector<double>& days, std::chrono::month month) {
  std::vector<double> of_month;
  for (std::size_t day = 0; day < days.size(); ++day)
    if (date_of(series, day).month() == month) of_month.push_back(days[day]);
  return mean(of_month);
}

TEST(InventedYear, SaysThatItIsInventedAndHoldsTheDaysAskedFor) {
  const WeatherSeries& series = default_year();
  EXPECT_TRUE(series.invented);
  EXPECT_THAT(series.origin, testing::HasSubstr("invented"));
  EXPECT_EQ(series.start, sys_days(2025y / 1 / 1));
  EXPECT_EQ(series.rows.size(), 365u * 48u);
}

TEST(InventedYear, WithoutWeathersSwingTheMonthsMeansAreTheOnesAskedFor) {
  YearSettings s;
  s.weather_swing_k = 0.0;
  const WeatherSeries series = make_year(s);
  const std::vector<double> days = daily_mean(series, &WeatherRow::temperature_k);
  // What is left: the first and the last day's waves are not those between, at most half a swing over 31 days.
  EXPECT_NEAR(mean_of_month(series, days, std::chrono::July), s.warmest_month_mean_k, 6.5 / 31.0);
  EXPECT_NEAR(mean_of_month(series, days, std::chrono::January), s.coldest_month_mean_k, 3.5 / 31.0);
  EXPECT_NEAR(mean(days), 0.5 * (s.warmest_month_mean_k + s.coldest_month_mean_k), 0.05);
}

TEST(InventedYear, DeparturesHaveTheSwingAndTheMemoryAskedFor) {
  YearSettings steady;
  steady.weather_swing_k = 0.0;
  const std::vector<double> a = daily_mean(default_year(), &WeatherRow::temperature_k);
  const std::vector<double> b = daily_mean(make_year(steady), &WeatherRow::temperature_k);
  double sum = 0.0, squares = 0.0, apart = 0.0;
  for (std::size_t day = 0; day < a.size(); ++day) {
    sum += a[day] - b[day];
    squares += (a[day] - b[day]) * (a[day] - b[day]);
    if (day >= 3) apart += (a[day] - b[day]) * (a[day - 3] - b[day - 3]);
  }
  // Of a series that fades by c = exp(-1/3) a day, n = 365 days tell the mean as n (1 - c) / (1 + c) = 60 independent
  // ones would, the variance as n (1 - c^2) / (1 + c^2) = 117; three standard errors.
  const double count = 365.0;
  EXPECT_NEAR(sum / count, 0.0, 3.0 * 3.5 / std::sqrt(60.0));
  EXPECT_NEAR(std::sqrt(squares / count) / 3.5, 1.0, 3.0 / std::sqrt(2.0 * 117.0));
  // Three days on: exp(-1) of the noons, 0.43 of daily means of lines between them (by hand); memories of one and of
  // ten days give 0.07 and 0.75. Standard error about 0.09.
  EXPECT_NEAR(apart / squares, 0.43, 0.27);
}

TEST(InventedYear, MonthsMeansHitWhatWasAskedWithinTheWeathersSwing) {
  const YearSettings s;
  const std::vector<double> days = daily_mean(default_year(), &WeatherRow::temperature_k);
  // 31 days are worth 31 / 6.05 independent ones: standard error 3.5 K / sqrt(5.1) = 1.55 K; three of them.
  EXPECT_NEAR(mean_of_month(default_year(), days, std::chrono::July), s.warmest_month_mean_k, 4.65);
  EXPECT_NEAR(mean_of_month(default_year(), days, std::chrono::January), s.coldest_month_mean_k, 4.65);
}

TEST(InventedYear, SwingsOfClearDaysAreAsAskedAndCloudsFlattenThem) {
  YearSettings s = cloudless();
  s.weather_swing_k = 0.0;
  const WeatherSeries clear = make_year(s);
  const std::vector<double> swings = daily_swing_k(clear);
  // Rows miss the turn by up to 15 min, and the season climbs by 0.2 K a day at most.
  EXPECT_NEAR(swings[196], 13.0, 0.15) << "16 July";
  EXPECT_NEAR(swings[15], 7.0, 0.15) << "16 January";
  // Lowest soon after sunrise (about 4 h local standard time on 16 July at 50 N, 10 E, by the almanac), highest at 15.
  const auto first = clear.rows.begin() + 196 * 48;
  const auto [low, high] = std::minmax_element(
      first, first + 48, [](const WeatherRow& x, const WeatherRow& y) { return x.temperature_k < y.temperature_k; });
  EXPECT_NEAR(static_cast<double>(low - first) / 2.0, 5.0, 0.8);
  EXPECT_DOUBLE_EQ(static_cast<double>(high - first) / 2.0, 15.0);
  // A whole year under 90 % cover lets 1 - 0.75 0.9^3.4 = 0.476 of the light through; the swing goes with its square.
  s.clear_cover = 0.0;
  s.cloudy_days = 1.0;
  s.cloudy_cover = 0.9;
  EXPECT_NEAR(daily_swing_k(make_year(s))[196] / 13.0, 0.476 * 0.476, 0.015);
}

TEST(InventedYear, RainIsThatOfTheYearAndOfItsDays) {
  for (const int year : {2024, 2025}) {
    YearSettings s;
    s.start = std::chrono::year{year} / 1 / 1;
    s.days = year == 2024 ? 366 : 365;
    s.rain_a_year_mm = 640.0;
    s.wetter_share = 0.8;
    const WeatherSeries series = make_year(s);
    double sum = 0.0;
    int rain_days = 0, in_summer = 0;
    const std::vector<double> rain = daily_rain_mm(series);
    for (std::size_t day = 0; day < rain.size(); ++day) {
      sum += rain[day];
      if (rain[day] == 0.0) continue;
      ++rain_days;
      EXPECT_GE(rain[day], 1.0 - 1e-9) << day;
      const auto from_mid_july = (sys_days{date_of(series, day)} - sys_days{s.start.year() / 7 / 16}).count();
      if (std::abs(from_mid_july) <= 91) ++in_summer;
    }
    EXPECT_NEAR(sum, 640.0, 1e-8);
    EXPECT_EQ(rain_days, 120);
    // 80 % of 120; a day at the half year's border may count otherwise here.
    EXPECT_NEAR(in_summer, 96, 2);
  }
}

TEST(InventedYear, AmountsOfRainAreSpreadAsAnExponentialLawHasThem) {
  std::vector<double> rest;
  for (const double rain : daily_rain_mm(default_year()))
    if (rain > 0.0) rest.push_back(rain - 1.0);
  const double average = mean(rest);
  EXPECT_NEAR(average, 580.0 / 120.0, 1e-9);
  // exp(-1) of the amounts are above their mean; binomial standard error sqrt(0.368 0.632 / 120) = 0.044.
  const auto above = std::count_if(rest.begin(), rest.end(), [&](double r) { return r > average; });
  EXPECT_NEAR(static_cast<double>(above) / 120.0, std::exp(-1.0), 3.0 * 0.044);
}

TEST(InventedYear, ItRainsOnCloudyDaysAndUnderFullCover) {
  const WeatherSeries& series = default_year();
  const std::vector<double> cover = daily_mean(series, &WeatherRow::cloud_share), rain = daily_rain_mm(series);
  int cloudy = 0;
  for (std::size_t day = 0; day < cover.size(); ++day) {
    // Covers of 20 and 90 % that vary by 16 and 9 % a knot are told apart half way.
    if (cover[day] > 0.55) ++cloudy;
    if (rain[day] > 0.0) {
      EXPECT_GT(cover[day], 0.55) << day;
    }
  }
  EXPECT_NEAR(cloudy, 219, 12) << "60 % of 365, give or take days that the lines between spells cut into";
  for (std::size_t i = 1; i < series.rows.size(); ++i) {
    if (series.rows[i - 1].rain_kg_m2_s > 0.0 && series.rows[i].rain_kg_m2_s > 0.0) {
      ASSERT_EQ(series.rows[i].cloud_share, 1.0) << i;
    }
  }
}

TEST(InventedYear, NothingIsNegativeUnknownOrAboveSaturation) {
  const WeatherSeries& series = default_year();
  int saturated = 0;
  for (std::size_t i = 0; i < series.rows.size(); ++i) {
    const WeatherRow& row = series.rows[i];
    for (const double value :
         {row.temperature_k, row.humidity_ratio, row.pressure_pa, row.beam_normal_w_m2, row.diffuse_horizontal_w_m2,
          row.global_horizontal_w_m2, row.wind_m_s, row.wind_from_rad, row.rain_kg_m2_s, row.cloud_share})
      ASSERT_TRUE(std::isfinite(value) && value >= 0.0) << i;
    ASSERT_LE(row.cloud_share, 1.0) << i;
    ASSERT_LT(row.wind_from_rad, 2.0 * kPi) << i;
    ASSERT_GT(row.humidity_ratio, 0.0) << i;
    const double humidity = relative_humidity(row.temperature_k, row.humidity_ratio, row.pressure_pa);
    ASSERT_LE(humidity, 1.0 + 1e-12) << i;
    if (humidity > 1.0 - 1e-9) ++saturated;
  }
  EXPECT_GT(saturated, 100) << "some nights have dew or fog";
  EXPECT_LT(saturated, 365 * 48 / 3) << "most hours have none";
}

TEST(InventedYear, DewPointsAtDawnAreBelowTheAirByTheGapAskedFor) {
  YearSettings s = cloudless();
  s.weather_swing_k = 0.0;
  s.summer_dew_gap_k = 8.0;
  s.winter_dew_gap_k = 2.0;
  const WeatherSeries series = make_year(s);
  const std::vector<double> gaps = daily(series, [](const WeatherRow* rows, std::size_t count) {
    const WeatherRow& dawn =
        *std::min_element(rows, rows + count * 5 / 8,
                          [](const WeatherRow& a, const WeatherRow& b) { return a.temperature_k < b.temperature_k; });
    return dawn.temperature_k - dew_point_k(dawn.humidity_ratio, dawn.pressure_pa);
  });
  // Even between 0 and twice the gap: standard deviation gap / sqrt(3), over 31 days; three standard errors.
  const double three_errors = 3.0 / std::sqrt(3.0 * 31.0);
  EXPECT_NEAR(mean_of_month(series, gaps, std::chrono::July), 8.0, 8.0 * three_errors);
  EXPECT_NEAR(mean_of_month(series, gaps, std::chrono::January), 2.0, 2.0 * three_errors + 0.2);
}

TEST(InventedYear, GlobalIsBeamOnTheLevelPlusDiffuse) {
  YearSettings fine;
  fine.start = 2025y / 6 / 20;
  fine.days = 3;
  fine.step_s = 60.0;
  const WeatherSeries minutes = make_year(fine);
  for (std::size_t i = 0; i < minutes.rows.size(); ++i) {
    const WeatherRow& row = minutes.rows[i];
    // Within a minute the sine changes by 0.004 at most, sampled in the middle here and averaged there.
    ASSERT_NEAR(row.global_horizontal_w_m2,
                row.beam_normal_w_m2 * mean_sine_elevation(minutes, i) + row.diffuse_horizontal_w_m2, 0.5)
        << i;
  }
  const WeatherSeries& series = default_year();
  for (std::size_t i = 0; i < series.rows.size(); ++i) {
    const WeatherRow& row = series.rows[i];
    // Means of products against products of means: over half an hour beam and sine change together, the sine by up to
    // 0.13 and the beam by 300 W/m2 near the horizon, of which a twelfth of the product is 3 W/m2; clouds come on top.
    const double closed = row.beam_normal_w_m2 * mean_sine_elevation(series, i) + row.diffuse_horizontal_w_m2;
    ASSERT_NEAR(row.global_horizontal_w_m2, closed, 6.0) << i;
  }
}

/// Sine of the sun's elevation as a row begins.
double sine_of_the_sun(const WeatherSeries& series, std::size_t row) {
  const double local_s =
      static_cast<double>(series.start.time_since_epoch().count()) + static_cast<double>(row) * series.step_s;
  return std::sin(sun_position(2440587.5 + (local_s - series.utc_offset_s) / 86400.0,
                               series.latitude_deg * kRadiansPerDegree, series.longitude_deg * kRadiansPerDegree)
                      .elevation_rad);
}

TEST(InventedYear, NoRowIsBrighterThanItsClearSkyAndNightsAreDark) {
  const WeatherSeries clear = make_year(cloudless());
  const WeatherSeries& series = default_year();
  std::size_t dark = 0;
  for (std::size_t i = 0; i < series.rows.size(); ++i) {
    ASSERT_LE(series.rows[i].global_horizontal_w_m2, clear.rows[i].global_horizontal_w_m2 * (1.0 + 1e-12)) << i;
    ASSERT_LE(series.rows[i].beam_normal_w_m2, clear.rows[i].beam_normal_w_m2 * (1.0 + 1e-12)) << i;
    // The sun's centre is below the horizon as the half hour begins and as it ends.
    if (sine_of_the_sun(series, i) > 0.0 || sine_of_the_sun(series, i + 1) > 0.0) continue;
    ++dark;
    ASSERT_EQ(series.rows[i].global_horizontal_w_m2, 0.0) << i;
    ASSERT_EQ(series.rows[i].beam_normal_w_m2, 0.0) << i;
  }
  EXPECT_NEAR(static_cast<double>(dark) / static_cast<double>(series.rows.size()), 0.5, 0.03)
      << "half the year is night";
  // The clear sky itself by another law: FAO-56 eq. (37); 21 June is day 172, and 365 days in all.
  const std::vector<double> days = daily_mean(clear, &WeatherRow::global_horizontal_w_m2);
  const double expected = fao_clear_sky(300.0, extraterrestrial_daily(50.0 * kRadiansPerDegree, 172));
  EXPECT_NEAR(days[171] * 86400.0 / expected, 1.0, 0.07);
}

TEST(InventedYear, TheYearsSunIsPlausibleForItsLatitude) {
  for (const double latitude_deg : {0.0, 35.0, 50.0, -50.0}) {
    YearSettings s;
    s.latitude_deg = latitude_deg;
    const WeatherSeries series = make_year(s);
    const std::vector<double> days = daily_mean(series, &WeatherRow::global_horizontal_w_m2);
    double sum = 0.0, outside = 0.0;
    for (int day = 1; day <= 365; ++day) {
      const double energy = days[static_cast<std::size_t>(day - 1)] * 86400.0;
      const double extraterrestrial = extraterrestrial_daily(latitude_deg * kRadiansPerDegree, day);
      ASSERT_LT(energy, 0.85 * extraterrestrial) << latitude_deg << " on day " << day;
      sum += energy;
      outside += extraterrestrial;
    }
    // Angstrom's law [FAO-56, eq. (35)] for the share of clear sky, 0.4 0.8 + 0.6 0.1 = 0.38: 0.25 + 0.5 0.38 = 0.44;
    // laws of cloud cover and of sunshine differ by a tenth.
    EXPECT_NEAR(sum / outside, 0.44, 0.06) << latitude_deg;
  }
}

TEST(InventedYear, WindHasTheMeansAskedForAndVaries) {
  const WeatherSeries& series = default_year();
  double by_day = 0.0, by_night = 0.0, squares = 0.0;
  for (std::size_t day = 0; day < 365; ++day) {
    by_day += series.rows[day * 48 + 30].wind_m_s / 365.0;
    by_night += series.rows[day * 48 + 6].wind_m_s / 365.0;
    squares += series.rows[day * 48 + 30].wind_m_s * series.rows[day * 48 + 30].wind_m_s / 365.0;
  }
  // Knots a day apart are alike by exp(-2): 365 days are worth 278; relative deviation 0.5, three errors 0.09.
  EXPECT_NEAR(by_day, 3.0, 3.0 * 0.09);
  EXPECT_NEAR(by_night, 1.5, 1.5 * 0.09);
  EXPECT_NEAR(std::sqrt(squares - by_day * by_day) / by_day, 0.5, 0.12);
}

TEST(InventedYear, TheSameSettingsGiveTheSameBytesAndSeedsDiffer) {
  YearSettings s;
  s.days = 40;
  YearSettings other = s;
  other.seed = 2;
  EXPECT_EQ(weather_digest(make_year(s)), weather_digest(make_year(s)));
  const std::vector<double> a = daily_mean(make_year(s), &WeatherRow::temperature_k);
  const std::vector<double> b = daily_mean(make_year(other), &WeatherRow::temperature_k);
  double apart = 0.0;
  for (std::size_t day = 0; day < a.size(); ++day) apart += std::abs(a[day] - b[day]);
  EXPECT_GT(apart / 40.0, 1.0) << "two seeds are two winters";
}

/// The bytes of the rows from one instant on, as a digest of that part alone.
std::string digest_of_part(WeatherSeries series, std::chrono::sys_seconds from, std::size_t count) {
  const auto first = static_cast<std::ptrdiff_t>(static_cast<double>((from - series.start).count()) / series.step_s);
  series.rows.assign(series.rows.begin() + first, series.rows.begin() + first + static_cast<std::ptrdiff_t>(count));
  series.start = from;
  return weather_digest(series);
}

TEST(InventedYear, ADaysWeatherIsTheSameFromWhereverTheSeriesStarts) {
  YearSettings may;
  may.start = 2025y / 5 / 10;
  may.days = 70;
  const WeatherSeries part = make_year(may);
  EXPECT_EQ(weather_digest(part), digest_of_part(default_year(), part.start, part.rows.size()));
  YearSettings over_new_year;
  over_new_year.start = 2025y / 12 / 20;
  over_new_year.days = 30;
  const WeatherSeries over = make_year(over_new_year);
  EXPECT_EQ(digest_of_part(over, sys_days(2025y / 12 / 20), 12 * 48u),
            digest_of_part(default_year(), sys_days(2025y / 12 / 20), 12 * 48u));
  YearSettings january = over_new_year;
  january.start = 2026y / 1 / 1;
  january.days = 18;
  EXPECT_EQ(weather_digest(make_year(january)), digest_of_part(over, sys_days(2026y / 1 / 1), 18 * 48u));
  EXPECT_NE(digest_of_part(over, sys_days(2026y / 1 / 1), 48),
            digest_of_part(default_year(), sys_days(2025y / 1 / 1), 48));
}

TEST(InventedYear, TemperatureNeverJumpsNotEvenOverNewYear) {
  YearSettings s;
  s.start = 2025y / 12 / 1;
  s.days = 60;
  const WeatherSeries series = make_year(s);
  for (std::size_t i = 1; i < series.rows.size(); ++i) {
    // Half an hour of a half wave of 7 K over 5 h is 1.1 K at its steepest, the departure's slope 0.2 K at most.
    ASSERT_LT(std::abs(series.rows[i].temperature_k - series.rows[i - 1].temperature_k), 1.5) << i;
  }
}

TEST(InventedYear, SouthOfTheEquatorTheSeasonsAreTheOtherWayRound) {
  YearSettings s;
  s.latitude_deg = -40.0;
  s.weather_swing_k = 0.0;
  s.wetter_season = Season::winter;
  s.wetter_share = 1.0;
  const WeatherSeries series = make_year(s);
  const std::vector<double> days = daily_mean(series, &WeatherRow::temperature_k);
  EXPECT_NEAR(mean_of_month(series, days, std::chrono::January), s.warmest_month_mean_k, 0.25);
  EXPECT_NEAR(mean_of_month(series, days, std::chrono::July), s.coldest_month_mean_k, 0.25);
  const std::vector<double> rain = daily_rain_mm(series);
  EXPECT_EQ(mean_of_month(series, rain, std::chrono::January), 0.0);
  EXPECT_GT(mean_of_month(series, rain, std::chrono::July), 1.0);
  const std::vector<double> sun = daily_mean(series, &WeatherRow::global_horizontal_w_m2);
  EXPECT_GT(mean_of_month(series, sun, std::chrono::January), 2.0 * mean_of_month(series, sun, std::chrono::July));
}

TEST(InventedYear, ContradictionsAreRefused) {
  const auto refusal = [](const std::function<void(YearSettings&)>& mistake) {
    YearSettings s;
    s.days = 1;
    mistake(s);
    try {
      make_year(s);
    } catch (const UserError& error) {
      EXPECT_EQ(error.kind(), ErrorKind::out_of_range);
      return std::string{error.what()};
    }
    return std::string{"no error"};
  };
  using testing::HasSubstr;
  EXPECT_EQ(refusal([](YearSettings&) {}), "no error");
  EXPECT_THAT(refusal([](YearSettings& s) { s.days = 0; }), HasSubstr("days: read 0"));
  EXPECT_THAT(refusal([](YearSettings& s) { s.latitude_deg = 70.0; }), HasSubstr("latitude: read 70"));
  EXPECT_THAT(refusal([](YearSettings& s) { s.step_s = 700.0; }), HasSubstr("step: read 700 s"));
  EXPECT_THAT(refusal([](YearSettings& s) { s.utc_offset_s = -7.0 * 3600.0; }), HasSubstr("utc_offset: read -7.00 h"));
  EXPECT_THAT(refusal([](YearSettings& s) { s.warmest_month_mean_k = 270.0; }), HasSubstr("below coldest_month_mean"));
  EXPECT_THAT(refusal([](YearSettings& s) { s.weather_swing_k = -1.0; }), HasSubstr("weather_swing"));
  EXPECT_THAT(refusal([](YearSettings& s) { s.summer_dew_gap_k = 30.0; }), HasSubstr("summer_dew_gap"));
  EXPECT_THAT(refusal([](YearSettings& s) { s.clear_cover = 0.95; }), HasSubstr("above cloudy_cover"));
  EXPECT_THAT(refusal([](YearSettings& s) { s.cloudy_days = 0.2; }), HasSubstr("makes 73 of them"));
  EXPECT_THAT(refusal([](YearSettings& s) { s.rain_days_a_year = 0; }), HasSubstr("no rain days"));
  EXPECT_THAT(refusal([](YearSettings& s) { s.rain_a_year_mm = 90.0; }), HasSubstr("at least 120 mm"));
  EXPECT_THAT(refusal([](YearSettings& s) {
                s.rain_days_a_year = 200;
                s.cloudy_days = s.wetter_share = 1.0;
              }),
              HasSubstr("wetter_share: 100 % of 200 rain days"));
}

}  // namespace
}  // namespace noonhouse
