// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "models/properties/constants.hpp"
#include "models/properties/irradiance.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/properties/sky.hpp"
#include "models/properties/sun.hpp"
#include "models/weather/cloudburst.hpp"
#include "models/weather/hazard_weather.hpp"
#include "models/weather/weather_digest.hpp"
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

const Cloudburst kTenMinutes{kFirst + hours{36} + minutes{20}, 600.0, 25.0};
constexpr Tick kBurstBegin = 36_h + 20_min;

WeatherSeries with_cloudbursts(WeatherSeries series, const std::vector<Cloudburst>& bursts) {
  series.cloudbursts = bursts;
  return series;
}

// A triangle: half by the middle, an eighth by the first quarter, twice the mean rate in the middle.
TEST(Cloudburst, RainsATriangleOfItsDepth) {
  EXPECT_EQ(kTenMinutes.fallen_kg_m2(-1.0), 0.0);
  EXPECT_EQ(kTenMinutes.fallen_kg_m2(0.0), 0.0);
  EXPECT_DOUBLE_EQ(kTenMinutes.fallen_kg_m2(150.0), 3.125);
  EXPECT_DOUBLE_EQ(kTenMinutes.fallen_kg_m2(300.0), 12.5);
  EXPECT_DOUBLE_EQ(kTenMinutes.fallen_kg_m2(450.0), 21.875);
  EXPECT_EQ(kTenMinutes.fallen_kg_m2(600.0), 25.0);
  EXPECT_EQ(kTenMinutes.fallen_kg_m2(1e9), 25.0);
  EXPECT_DOUBLE_EQ(kTenMinutes.rain_kg_m2_s(300.0), 2.0 * 25.0 / 600.0);
  EXPECT_EQ(kTenMinutes.rain_kg_m2_s(0.0), 0.0);
  EXPECT_EQ(kTenMinutes.rain_kg_m2_s(600.0), 0.0);
  double sum = 0.0;
  for (int s = 0; s < 600; ++s) sum += kTenMinutes.rain_kg_m2_s(s + 0.5);
  EXPECT_NEAR(sum, 25.0, 1e-9) << "the rate is the depth's slope";
}

TEST(Cloudburst, DarkensWithinItsTimeAlone) {
  for (const auto& [lasts_s, edge_s] : {std::pair{600.0, 60.0}, std::pair{60.0, 15.0}, std::pair{240.0, 60.0}}) {
    const Cloudburst burst{kFirst, lasts_s, 5.0};
    for (const double outside_s : {-1.0, 0.0, lasts_s, lasts_s + 1.0}) EXPECT_EQ(burst.dark_share(outside_s), 0.0);
    EXPECT_DOUBLE_EQ(burst.dark_share(0.5 * edge_s), 0.5);
    EXPECT_EQ(burst.dark_share(edge_s), 1.0);
    EXPECT_EQ(burst.dark_share(lasts_s - edge_s), 1.0);
    EXPECT_DOUBLE_EQ(burst.dark_share(lasts_s - 0.5 * edge_s), 0.5);
    const auto bends = burst.bends_s();
    EXPECT_TRUE(std::is_sorted(bends.begin(), bends.end()));
    EXPECT_EQ(bends.front(), 0.0);
    EXPECT_EQ(bends[1], edge_s);
    EXPECT_EQ(bends.back(), lasts_s);
  }
}

TEST(Cloudburst, LeavesItsShareOfTheLightAllDiffuseAndAnOvercastSky) {
  const WeatherRow before = signal_of(spring()).at(kBurstBegin);
  WeatherRow half = before, dark = before, outside = before;
  kTenMinutes.darken(30.0, half);
  kTenMinutes.darken(300.0, dark);
  kTenMinutes.darken(600.0, outside);
  EXPECT_EQ(outside, before);
  EXPECT_EQ(dark.beam_normal_w_m2, 0.0);
  EXPECT_NEAR(dark.global_horizontal_w_m2, 0.15 * before.global_horizontal_w_m2, 1e-9);
  EXPECT_EQ(dark.diffuse_horizontal_w_m2, dark.global_horizontal_w_m2);
  EXPECT_EQ(dark.cloud_share, 1.0);
  // e' = 1 - 0.16 (1 - e_clear), e_clear from the row's own 0.3 of cloud: e = (1 - 0.84 c) e_clear + 0.84 c.
  const double black = blackbody_emission(before.temperature_k), e = before.longwave_down_w_m2 / black;
  const double clear = (e - 0.84 * 0.3) / (1.0 - 0.84 * 0.3);
  EXPECT_NEAR(dark.longwave_down_w_m2, black * (1.0 - 0.16 * (1.0 - clear)), 1e-9);
  EXPECT_NEAR(half.beam_normal_w_m2, 0.5 * before.beam_normal_w_m2, 1e-9);
  EXPECT_NEAR(half.global_horizontal_w_m2, 0.575 * before.global_horizontal_w_m2, 1e-9);
  WeatherSeries rows = spring();
  rows.rows = {half, dark};
  expect_physical(rows);
}

TEST(Cloudburst, KeepsWhatIsUnknownUnknown) {
  WeatherRow row = signal_of(spring()).at(kBurstBegin);
  row.longwave_down_w_m2 = row.cloud_share = kUnknownWeather;
  kTenMinutes.darken(300.0, row);
  EXPECT_TRUE(std::isnan(row.longwave_down_w_m2));
  EXPECT_EQ(row.cloud_share, 1.0);
}

TEST(Cloudburst, ReachesTheSignalOnTopOfItsRows) {
  const WeatherSignal was = signal_of(spring()), is = signal_of(with_cloudbursts(spring(), {kTenMinutes}));
  const Tick end = kBurstBegin + 10_min;
  for (const Tick t : {kBurstBegin - Tick{1}, kBurstBegin, end, end + Tick{1}, 12_h}) {
    const WeatherRow a = was.at(t), b = is.at(t);
    EXPECT_EQ(a.global_horizontal_w_m2, b.global_horizontal_w_m2) << t.ms;
    EXPECT_EQ(a.rain_kg_m2_s, b.rain_kg_m2_s) << t.ms;
    EXPECT_EQ(a.cloud_share, b.cloud_share) << t.ms;
  }
  const WeatherRow middle = is.at(kBurstBegin + 5_min), before = was.at(kBurstBegin + 5_min);
  EXPECT_EQ(middle.beam_normal_w_m2, 0.0);
  EXPECT_NEAR(middle.global_horizontal_w_m2, 0.15 * before.global_horizontal_w_m2, 1e-9);
  EXPECT_NEAR(middle.rain_kg_m2_s, before.rain_kg_m2_s + 2.0 * 25.0 / 600.0, 1e-12);
  EXPECT_EQ(middle.temperature_k, before.temperature_k);
  EXPECT_EQ(is.next_break(kBurstBegin), kBurstBegin + 1_min);
  EXPECT_EQ(is.next_break(kBurstBegin + 7_min), kBurstBegin + 7_min + 30_s);
  EXPECT_NE(weather_digest(is.series()), weather_digest(was.series()));
}

// Spans that cut rows and cloudbursts anywhere; two overlap, one lasts seven seconds at an odd second.
TEST(MeanRain, IsExactOverAnySpan) {
  const Cloudburst odd{kFirst + hours{36} + minutes{25} + std::chrono::seconds{13}, 7.0, 3.0};
  const WeatherSignal signal = signal_of(with_cloudbursts(spring(), {kTenMinutes, odd}));
  const auto fallen = [&](Tick from, Tick to) { return signal.mean_rain(from, to) * seconds(to - from); };
  const double own = sum(spring(), &WeatherRow::rain_kg_m2_s);
  EXPECT_NEAR(fallen(Tick{0}, 96_h), own + 28.0, 1e-9);
  EXPECT_NEAR(fallen(kBurstBegin, kBurstBegin + 150_s), 3.125 + 1e-4 * (36 % 7 == 0 ? 150.0 : 0.0), 1e-9);
  const Tick cuts[] = {Tick{0}, 35_h + Tick{777}, kBurstBegin + 313_s, kBurstBegin + 314_s, 42_h + Tick{1}, 96_h};
  double parts = 0.0;
  for (std::size_t i = 0; i + 1 < std::size(cuts); ++i) parts += fallen(cuts[i], cuts[i + 1]);
  EXPECT_NEAR(parts, own + 28.0, 1e-9) << "parts add up";
  EXPECT_EQ(signal.mean_rain(42_h, 42_h), 1e-4) << "an instant has its rate: row 42 rains";
  EXPECT_EQ(signal.mean_rain(96_h, 97_h), signal.at(96_h).rain_kg_m2_s);
  EXPECT_NEAR(signal.mean_rain(84_h, 84_h + 30_min), 1e-4, 1e-18) << "within one row it is the row's";
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
