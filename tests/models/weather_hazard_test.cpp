// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "models/properties/constants.hpp"
#include "models/properties/irradiance.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/properties/sky.hpp"
#include "models/properties/sun.hpp"
#include "models/weather/finer_rows.hpp"
#include "models/weather/hazard_weather.hpp"
#include "models/weather/weather_signal.hpp"
#include "sim/core/tick.hpp"

namespace noonhouse {
namespace {

using std::chrono::hours;
using std::chrono::minutes;
using std::chrono::sys_days;

const sys_days kFirst = std::chrono::year{2025} / 4 / 10;

/// Four invented spring days with a hazy clear sky; rows have the means of a minute's samples.
WeatherSeries spring(double step_s = 3600.0, double instant_share = 1.0) {
  WeatherSeries series;
  series.latitude_deg = 48.0;
  series.longitude_deg = 8.0;
  series.altitude_m = 300.0;
  series.utc_offset_s = 3600.0;
  series.start = kFirst;
  series.step_s = step_s;
  series.instant_share = instant_share;
  series.rows.resize(static_cast<std::size_t>(4.0 * kSecondsPerDay / step_s));
  const double start_julian =
      kUnixEpochJulianDay + static_cast<double>(series.start.time_since_epoch().count()) / kSecondsPerDay;
  for (std::size_t i = 0; i < series.rows.size(); ++i) {
    WeatherRow& row = series.rows[i];
    const double t_s = (static_cast<double>(i) + instant_share) * step_s;
    row.temperature_k = 281.15 + 6.0 * std::sin(2.0 * kPi * (t_s / kSecondsPerDay - 0.375));
    row.pressure_pa = 97800.0;
    row.humidity_ratio = 0.0042;
    row.wind_m_s = 2.0 + std::sin(t_s / 7000.0);
    row.wind_from_rad = 1.0;
    row.rain_kg_m2_s = i % 7 == 0 ? 1e-4 : 0.0;
    row.cloud_share = 0.3;
    row.longwave_down_w_m2 = 300.0;
    const int samples = static_cast<int>(step_s / 60.0);
    for (int k = 0; k < samples; ++k) {
      const double utc_s = static_cast<double>(i) * step_s + 60.0 * k + 30.0 - series.utc_offset_s;
      const SunPosition sun =
          sun_position(start_julian + utc_s / kSecondsPerDay, 48.0 * kRadiansPerDegree, 8.0 * kRadiansPerDegree);
      const SolarSplit sky = clear_sky(sun.elevation_rad, row.pressure_pa, 4.0, 1360.0);
      row.beam_normal_w_m2 += sky.beam_normal_w_m2 / samples;
      row.diffuse_horizontal_w_m2 += sky.diffuse_w_m2 / samples;
      row.global_horizontal_w_m2 += sky.global_w_m2 / samples;
    }
  }
  return series;
}

double sum(const WeatherSeries& series, double WeatherRow::*value, double begin_s = 0.0,
           double end_s = 4.0 * kSecondsPerDay) {
  double out = 0.0;
  for (std::size_t i = 0; i < series.rows.size(); ++i) {
    const double middle_s = (static_cast<double>(i) + 0.5) * series.step_s;
    if (middle_s > begin_s && middle_s < end_s) out += series.rows[i].*value * series.step_s;
  }
  return out;
}

void expect_physical(const WeatherSeries& series) {
  for (const WeatherRow& row : series.rows) {
    EXPECT_LE(row.humidity_ratio, saturation_humidity_ratio(row.temperature_k, row.pressure_pa) + 1e-15);
    EXPECT_GE(row.humidity_ratio, 0.0);
    EXPECT_GE(row.rain_kg_m2_s, 0.0);
    EXPECT_GE(row.wind_m_s, 0.0);
    EXPECT_GE(row.beam_normal_w_m2, 0.0);
    EXPECT_GE(row.diffuse_horizontal_w_m2, 0.0);
    // The level beam is the beam times a sine: no more than the beam, nothing without it.
    const double level = row.global_horizontal_w_m2 - row.diffuse_horizontal_w_m2;
    EXPECT_GE(level, -1e-9);
    EXPECT_LE(level, row.beam_normal_w_m2 + 1e-9);
    EXPECT_GE(row.cloud_share, 0.0);
    EXPECT_LE(row.cloud_share, 1.0);
    EXPECT_LE(row.longwave_down_w_m2, blackbody_emission(row.temperature_k) + 1e-9);
  }
}

WeatherSignal signal_of(const WeatherSeries& series) { return {series, series.start, series.duration_s()}; }

// States to rounding; light to 6 W/m2, as the index of each finer row has its own bends near sunrise and sunset.
TEST(FinerRows, AreReadAsTheSeriesWas) {
  for (const double share : {0.0, 0.5, 1.0}) {
    const WeatherSeries coarse = spring(3600.0, share), fine = with_finer_rows(coarse, 600.0);
    const WeatherSignal was = signal_of(coarse), is = signal_of(fine);
    for (double t_s = 0.0; t_s <= 4.0 * kSecondsPerDay; t_s += 700.0) {
      const WeatherRow a = was.at(ticks(t_s)), b = is.at(ticks(t_s));
      EXPECT_NEAR(a.temperature_k, b.temperature_k, 1e-9) << share << " at " << t_s;
      EXPECT_NEAR(a.humidity_ratio, b.humidity_ratio, 1e-12) << share << " at " << t_s;
      EXPECT_NEAR(a.wind_m_s, b.wind_m_s, 1e-9) << share << " at " << t_s;
      EXPECT_EQ(a.rain_kg_m2_s, b.rain_kg_m2_s) << share << " at " << t_s;
      EXPECT_NEAR(a.global_horizontal_w_m2, b.global_horizontal_w_m2, 6.0) << share << " at " << t_s;
    }
  }
}

TEST(FinerRows, KeepTheEnergyOfEachRow) {
  const WeatherSeries coarse = spring(), fine = with_finer_rows(coarse, 150.0);
  ASSERT_EQ(fine.rows.size(), 24u * coarse.rows.size());
  for (std::size_t i = 0; i < coarse.rows.size(); ++i) {
    const double begin_s = static_cast<double>(i) * 3600.0, end_s = begin_s + 3600.0;
    for (const auto value : {&WeatherRow::beam_normal_w_m2, &WeatherRow::diffuse_horizontal_w_m2})
      EXPECT_NEAR(sum(fine, value, begin_s, end_s), coarse.rows[i].*value * 3600.0, 1e-6) << i;
  }
  EXPECT_NEAR(sum(fine, &WeatherRow::global_horizontal_w_m2) / sum(coarse, &WeatherRow::global_horizontal_w_m2), 1.0,
              0.005);
  expect_physical(fine);
}

TEST(FinerRows, OfTheSameLengthAreTheSeries) { EXPECT_EQ(with_finer_rows(spring(), 3600.0).rows, spring().rows); }

const Cloudburst kTenMinutes{kFirst + hours{36} + minutes{20}, 600.0, 25.0};

TEST(CloudburstWeather, BringsItsDepthInItsTime) {
  const WeatherSeries was = spring(), is = with_cloudburst(was, kTenMinutes);
  EXPECT_TRUE(is.invented);
  const double begin_s = 36.0 * 3600.0 + 1200.0, own = sum(was, &WeatherRow::rain_kg_m2_s);
  EXPECT_NEAR(sum(is, &WeatherRow::rain_kg_m2_s), own + 25.0, 1e-9);
  EXPECT_NEAR(sum(is, &WeatherRow::rain_kg_m2_s, begin_s, begin_s + 600.0), 25.0, 1e-9);
  EXPECT_NEAR(sum(is, &WeatherRow::rain_kg_m2_s, begin_s, begin_s + 300.0), 12.5, 1e-9) << "symmetric";
  EXPECT_NEAR(sum(is, &WeatherRow::rain_kg_m2_s, begin_s, begin_s + 150.0), 3.125, 1e-9) << "a triangle's eighth";
  expect_physical(is);
}

TEST(CloudburstWeather, ReachesTheSignal) {
  const WeatherSignal signal = signal_of(with_cloudburst(spring(), kTenMinutes));
  double fallen = 0.0;
  for (int s = 0; s < 3600; s += 10) fallen += 10.0 * signal.at(36_h + Tick{1000} * s).rain_kg_m2_s;
  EXPECT_NEAR(fallen, 25.0, 1e-9);
  const WeatherRow middle = signal.at(36_h + 25_min), before = signal.at(36_h + 15_min);
  EXPECT_EQ(middle.beam_normal_w_m2, 0.0);
  EXPECT_LT(middle.global_horizontal_w_m2, 0.2 * before.global_horizontal_w_m2);
  EXPECT_DOUBLE_EQ(middle.cloud_share, 1.0);
  EXPECT_GT(middle.longwave_down_w_m2, 0.9 * blackbody_emission(middle.temperature_k));
  EXPECT_GT(before.beam_normal_w_m2, 100.0);
}

TEST(CloudburstWeather, LeavesRowsOutsideAsTheyWere) {
  const WeatherSeries is = with_cloudburst(spring(), kTenMinutes);
  const WeatherSeries was = with_finer_rows(spring(), is.step_s);
  ASSERT_EQ(is.rows.size(), was.rows.size());
  EXPECT_EQ(is.step_s, 150.0);
  std::size_t changed = 0;
  for (std::size_t i = 0; i < is.rows.size(); ++i) changed += is.rows[i] == was.rows[i] ? 0 : 1;
  EXPECT_EQ(changed, 5u) << "four rows, and the one before whose instant is the beginning";
}

TEST(CloudburstWeather, KeepsWhatIsUnknownUnknown) {
  WeatherSeries was = spring();
  for (WeatherRow& row : was.rows) row.longwave_down_w_m2 = kUnknownWeather;
  const WeatherSeries is = with_cloudburst(was, kTenMinutes);
  EXPECT_TRUE(std::all_of(is.rows.begin(), is.rows.end(),
                          [](const WeatherRow& r) { return std::isnan(r.longwave_down_w_m2); }));
}

TEST(FrostNightWeather, ComesDownToItsColdestAtDawn) {
  const WeatherSeries was = spring();
  const auto night = night_after(was, kFirst + std::chrono::days{1});
  ASSERT_TRUE(night.has_value());
  // 48 N, 8 E, 11 and 12 April: sunset 19:08, sunrise 5:44 in this zone without summer time (from memory, 5 min).
  EXPECT_NEAR(night->dusk_s - kSecondsPerDay, 19.0 * 3600.0 + 8.0 * 60.0, 300.0);
  EXPECT_NEAR(night->dawn_s - 2.0 * kSecondsPerDay, 5.0 * 3600.0 + 44.0 * 60.0, 300.0);
  const WeatherSeries is = with_frost_night(was, {kFirst + std::chrono::days{1}, 270.15});
  const auto colder = [](const WeatherRow& a, const WeatherRow& b) { return a.temperature_k < b.temperature_k; };
  const auto coldest = std::min_element(is.rows.begin(), is.rows.end(), colder);
  EXPECT_DOUBLE_EQ(coldest->temperature_k, 270.15);
  const double coldest_at_s = static_cast<double>(coldest - is.rows.begin() + 1) * 3600.0;
  EXPECT_NEAR(coldest_at_s, night->dawn_s, 1800.0);
  EXPECT_EQ(coldest->cloud_share, 0.0);
  EXPECT_EQ(coldest->wind_m_s, 0.5);
  EXPECT_LT(coldest->longwave_down_w_m2, 250.0);
  expect_physical(is);
}

TEST(FrostNightWeather, ChangesNothingOutsideItsNight) {
  const WeatherSeries was = spring(), is = with_frost_night(was, {kFirst + std::chrono::days{1}, 270.15});
  const auto night = night_after(was, kFirst + std::chrono::days{1});
  for (std::size_t i = 0; i < was.rows.size(); ++i) {
    const double t_s = static_cast<double>(i + 1) * 3600.0;
    if (t_s < night->dusk_s || t_s > night->dawn_s + 4.0 * 3600.0) {
      EXPECT_EQ(is.rows[i], was.rows[i]) << i;
    }
    EXPECT_LE(is.rows[i].temperature_k, was.rows[i].temperature_k);
    EXPECT_EQ(is.rows[i].global_horizontal_w_m2, was.rows[i].global_horizontal_w_m2);
  }
}

TEST(FrostNightWeather, LeavesWhatIsColderAlready) {
  const WeatherSeries was = spring(), is = with_frost_night(was, {kFirst + std::chrono::days{1}, 290.0});
  for (std::size_t i = 0; i < was.rows.size(); ++i) EXPECT_EQ(is.rows[i].temperature_k, was.rows[i].temperature_k);
}

TEST(FrostNightWeather, NeedsANight) {
  WeatherSeries north = spring();
  north.latitude_deg = 80.0;
  north.start = sys_days{std::chrono::year{2025} / 6 / 20};
  EXPECT_FALSE(night_after(north, std::chrono::year{2025} / 6 / 20).has_value());
}

TEST(DustWeather, OfNoDepthChangesNothing) {
  EXPECT_EQ(with_dust(spring(), {kFirst, 4, 0.0, 0.7}).rows, spring().rows);
}

TEST(DustWeather, CutsTheBeamByBeerAndLambertAndClosesTheLight) {
  const WeatherSeries was = spring(), is = with_dust(was, {kFirst + std::chrono::days{1}, 2, 0.8, 0.7});
  expect_physical(is);
  for (std::size_t i = 0; i < was.rows.size(); ++i) {
    const WeatherRow &a = was.rows[i], &b = is.rows[i];
    if (i < 24 || i >= 72 || a.beam_normal_w_m2 == 0.0) {
      EXPECT_EQ(a, b) << i;
      continue;
    }
    const double level_a = a.global_horizontal_w_m2 - a.diffuse_horizontal_w_m2;
    const double level_b = b.global_horizontal_w_m2 - b.diffuse_horizontal_w_m2;
    EXPECT_NEAR(level_b * a.beam_normal_w_m2, level_a * b.beam_normal_w_m2, 1e-6) << "the same sun";
    EXPECT_NEAR(a.global_horizontal_w_m2 - b.global_horizontal_w_m2, 0.3 * (level_a - level_b), 1e-9);
    EXPECT_LT(b.global_horizontal_w_m2, a.global_horizontal_w_m2);
  }
}

// A sun overhead (air mass 1): exp(-0.5) = 0.60653. One at 30 degrees (air mass 1.994, Kasten & Young): 0.36898.
TEST(DustWeather, TakesMoreFromALowerSun) {
  WeatherSeries series = spring();
  series.rows[12].beam_normal_w_m2 = series.rows[13].beam_normal_w_m2 = 800.0;
  series.rows[12].diffuse_horizontal_w_m2 = series.rows[13].diffuse_horizontal_w_m2 = 100.0;
  series.rows[12].global_horizontal_w_m2 = 900.0;
  series.rows[13].global_horizontal_w_m2 = 500.0;
  const WeatherSeries is = with_dust(series, {kFirst, 1, 0.5, 0.7});
  EXPECT_NEAR(is.rows[12].beam_normal_w_m2 / 800.0, 0.60653, 3e-4);
  EXPECT_NEAR(is.rows[13].beam_normal_w_m2 / 800.0, 0.36898, 3e-4);
  const double lost = 800.0 * (1.0 - is.rows[12].beam_normal_w_m2 / 800.0);
  EXPECT_NEAR(is.rows[12].diffuse_horizontal_w_m2, 100.0 + 0.7 * lost, 1e-9);
}

TEST(DustWeather, OfGreatDepthLeavesDiffuseLightAlone) {
  const WeatherSeries was = spring(), is = with_dust(was, {kFirst, 4, 1e3, 0.0});
  for (std::size_t i = 0; i < was.rows.size(); ++i) {
    EXPECT_EQ(is.rows[i].beam_normal_w_m2, 0.0);
    EXPECT_NEAR(is.rows[i].global_horizontal_w_m2, was.rows[i].diffuse_horizontal_w_m2, 1e-9);
  }
}

}  // namespace
}  // namespace noonhouse
