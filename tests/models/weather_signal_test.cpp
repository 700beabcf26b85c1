// SPDX-License-Identifier: Apache-2.0
#include "models/weather/weather_signal.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>

#include "models/properties/constants.hpp"
#include "models/properties/irradiance.hpp"
#include "models/properties/psychrometrics.hpp"
#include "sim/core/tick.hpp"

namespace noonhouse {
namespace {

using std::chrono::sys_days;
using std::chrono::sys_seconds;

const sys_seconds kMidsummer = sys_days{std::chrono::year{2025} / 6 / 21};

/// Invented rows at a high dry place; `fill` shapes row i.
WeatherSeries invented_series(std::size_t rows, double step_s, double instant_share,
                              const std::function<void(std::size_t, WeatherRow&)>& fill) {
  WeatherSeries series;
  series.name = "invented for this test";
  series.invented = true;
  series.latitude_deg = 35.0;
  series.longitude_deg = -106.6;
  series.altitude_m = 1600.0;
  series.utc_offset_s = -7.0 * 3600.0;
  series.start = kMidsummer;
  series.step_s = step_s;
  series.instant_share = instant_share;
  series.rows.resize(rows);
  for (std::size_t i = 0; i < rows; ++i) fill(i, series.rows[i]);
  return series;
}

double row_number(std::size_t i) { return static_cast<double>(i); }

/// The mean of a quantity of the signal over a span, by midpoints every two seconds.
double mean_over(const WeatherSignal& signal, double begin_s, double end_s, double WeatherRow::*value) {
  const int samples = static_cast<int>((end_s - begin_s) / 2.0);
  double sum = 0.0;
  for (int k = 0; k < samples; ++k) sum += signal.at(ticks(begin_s + 2.0 * k + 1.0)).*value;
  return sum / samples;
}

TEST(WeatherSignal, StatesGoStraightBetweenTheInstantsTheyBelongTo) {
  const auto fill = [](std::size_t i, WeatherRow& row) { row.temperature_k = 290.0 + 2.0 * row_number(i); };
  for (const double share : {0.0, 0.5, 1.0}) {
    const WeatherSignal signal(invented_series(24, 3600.0, share, fill), kMidsummer, kSecondsPerDay);
    for (int row : {3, 4, 5}) {
      const double instant_s = (row + share) * 3600.0;
      EXPECT_DOUBLE_EQ(signal.at(ticks(instant_s)).temperature_k, 290.0 + 2.0 * row) << share;
      EXPECT_NEAR(signal.at(ticks(instant_s + 900.0)).temperature_k, 290.0 + 2.0 * (row + 0.25), 1e-9) << share;
    }
  }
}

TEST(WeatherSignal, StatesAreFlatBeforeTheFirstAndAfterTheLastInstant) {
  const auto fill = [](std::size_t i, WeatherRow& row) { row.temperature_k = 290.0 + row_number(i); };
  const WeatherSignal late(invented_series(24, 3600.0, 1.0, fill), kMidsummer, kSecondsPerDay);
  EXPECT_DOUBLE_EQ(late.at(Tick{0}).temperature_k, 290.0);
  EXPECT_DOUBLE_EQ(late.at(30_min).temperature_k, 290.0);
  const WeatherSignal early(invented_series(24, 3600.0, 0.0, fill), kMidsummer, kSecondsPerDay);
  EXPECT_DOUBLE_EQ(early.at(kDay).temperature_k, 313.0);
  EXPECT_DOUBLE_EQ(early.at(kDay + 5_h).temperature_k, 313.0);
}

TEST(WeatherSignal, RunStartsInsideTheSeries) {
  const auto fill = [](std::size_t i, WeatherRow& row) { row.temperature_k = 280.0 + row_number(i); };
  const sys_seconds start = kMidsummer + std::chrono::hours{30} + std::chrono::minutes{30};
  const WeatherSignal signal(invented_series(72, 3600.0, 0.0, fill), start, 3600.0 * 10);
  EXPECT_DOUBLE_EQ(signal.at(Tick{0}).temperature_k, 310.5);
  EXPECT_EQ(signal.next_break(Tick{0}), 30_min);
  EXPECT_EQ(signal.end(), 10_h);
}

TEST(WeatherSignal, WindTurnsAlongTheShorterArc) {
  const auto fill = [](std::size_t i, WeatherRow& row) {
    row.wind_from_rad = (i % 2 == 0 ? 350.0 : 20.0) * kRadiansPerDegree;
  };
  const WeatherSignal signal(invented_series(24, 3600.0, 0.0, fill), kMidsummer, kSecondsPerDay);
  EXPECT_NEAR(signal.at(20_min).wind_from_rad, 0.0, 1e-9);
  EXPECT_NEAR(signal.at(40_min).wind_from_rad, 10.0 * kRadiansPerDegree, 1e-9);
  EXPECT_NEAR(signal.at(100_min).wind_from_rad, 0.0, 1e-9);
}

TEST(WeatherSignal, HumidityIsNeverAboveSaturation) {
  // Saturated at 10 and at 30 degC: the straight line between lies above the saturation curve.
  const auto fill = [](std::size_t i, WeatherRow& row) {
    row.temperature_k = i % 2 == 0 ? 283.15 : 303.15;
    row.humidity_ratio = saturation_humidity_ratio(row.temperature_k, row.pressure_pa);
  };
  const WeatherSignal signal(invented_series(24, 3600.0, 0.0, fill), kMidsummer, kSecondsPerDay);
  for (Tick t{0}; t < 3_h; t = t + 5_min) {
    const WeatherRow now = signal.at(t);
    EXPECT_LE(relative_humidity(now.temperature_k, now.humidity_ratio, now.pressure_pa), 1.0 + 1e-12) << t.ms;
  }
  EXPECT_NEAR(signal.at(30_min).humidity_ratio, saturation_humidity_ratio(293.15, 101325.0), 1e-12);
}

TEST(WeatherSignal, RainIsConstantWithinItsInterval) {
  const auto fill = [](std::size_t i, WeatherRow& row) { row.rain_kg_m2_s = i == 5 ? 0.001 : 0.0; };
  const WeatherSignal signal(invented_series(24, 3600.0, 1.0, fill), kMidsummer, kSecondsPerDay);
  EXPECT_EQ(signal.at(Tick{(5_h).ms - 1}).rain_kg_m2_s, 0.0);
  EXPECT_EQ(signal.at(5_h).rain_kg_m2_s, 0.001);
  EXPECT_EQ(signal.at(Tick{(6_h).ms - 1}).rain_kg_m2_s, 0.001);
  EXPECT_EQ(signal.at(6_h).rain_kg_m2_s, 0.0);
}

TEST(WeatherSignal, UnknownStaysUnknown) {
  const auto fill = [](std::size_t i, WeatherRow& row) {
    row.cloud_share = 0.5;
    if (i < 4) row.longwave_down_w_m2 = 330.0;
  };
  const WeatherSignal signal(invented_series(24, 3600.0, 0.0, fill), kMidsummer, kSecondsPerDay);
  EXPECT_DOUBLE_EQ(signal.at(150_min).longwave_down_w_m2, 330.0);
  EXPECT_DOUBLE_EQ(signal.at(3_h).longwave_down_w_m2, 330.0);
  EXPECT_TRUE(std::isnan(signal.at(200_min).longwave_down_w_m2));
  EXPECT_TRUE(std::isnan(signal.at(10_h).longwave_down_w_m2));
  EXPECT_DOUBLE_EQ(signal.at(10_h).cloud_share, 0.5);
}

TEST(WeatherSignal, BreaksAreEdgesInstantsAndSunCrossingsInOrder) {
  const WeatherSignal signal(invented_series(48, 3600.0, 0.25, [](std::size_t, WeatherRow&) {}), kMidsummer,
                             kSecondsPerDay);
  EXPECT_EQ(signal.next_break(Tick{0}), 15_min);
  EXPECT_EQ(signal.next_break(15_min), 1_h);
  const Tick sunrise = signal.next_sunrise(Tick{0}), sunset = signal.next_sunset(Tick{0});
  int breaks = 0;
  bool met_sunrise = false, met_sunset = false;
  for (Tick t = signal.next_break(Tick{0}); t != kNever; t = signal.next_break(t)) {
    ++breaks;
    met_sunrise = met_sunrise || t == sunrise;
    met_sunset = met_sunset || t == sunset;
    ASSERT_LE(t, kDay);
  }
  EXPECT_EQ(breaks, 24 + 24 + 2);
  EXPECT_TRUE(met_sunrise);
  EXPECT_TRUE(met_sunset);
  EXPECT_EQ(signal.next_break(kDay), kNever);
}

TEST(WeatherSignal, SunriseAndSunsetAreWhereTheSunCrossesTheHorizon) {
  const WeatherSignal signal(invented_series(72, 3600.0, 0.5, [](std::size_t, WeatherRow&) {}), kMidsummer,
                             3.0 * kSecondsPerDay);
  int days = 0;
  for (Tick rise = signal.next_sunrise(Tick{0}); rise != kNever; rise = signal.next_sunrise(rise), ++days) {
    const Tick set = signal.next_sunset(rise);
    EXPECT_LE(signal.sun(Tick{rise.ms - 1}).elevation_rad, 0.0);
    EXPECT_GT(signal.sun(rise).elevation_rad, 0.0);
    EXPECT_GT(signal.sun(Tick{set.ms - 1}).elevation_rad, 0.0);
    EXPECT_LE(signal.sun(set).elevation_rad, 0.0);
    // Length of the geometric day from the declination; 1 min for its change between rise and set.
    const double declination = signal.sun(rise).declination_rad;
    EXPECT_NEAR(seconds(set - rise) / 3600.0, daylight_h(35.0 * kRadiansPerDegree, declination), 1.0 / 60.0);
  }
  EXPECT_EQ(days, 3);
}

/// A clear sky by another law than the signal's own: Campbell & Norman 1998, An Introduction to Environmental
/// Biophysics, eqs 11.11 to 11.13 (from memory), transmissivity 0.72 at a pressure of 835 hPa.
WeatherRow other_clear_sky(const SunPosition& sun) {
  WeatherRow out;
  if (sun.elevation_rad <= 0.0) return out;
  const double outside = extraterrestrial_normal_at_distance(sun.distance_au);
  const double through = std::pow(0.72, 835.0 / 1013.25 * air_mass(kPi / 2.0 - sun.elevation_rad));
  out.beam_normal_w_m2 = outside * through;
  out.diffuse_horizontal_w_m2 = 0.3 * (1.0 - through) * outside * std::sin(sun.elevation_rad);
  out.global_horizontal_w_m2 = out.beam_normal_w_m2 * std::sin(sun.elevation_rad) + out.diffuse_horizontal_w_m2;
  return out;
}

/// A day of hourly means of other_clear_sky.
WeatherSeries clear_day_of_hours() {
  WeatherSeries series = invented_series(24, 3600.0, 0.5, [](std::size_t, WeatherRow&) {});
  const WeatherSignal place(series, kMidsummer, kSecondsPerDay);
  for (std::size_t i = 0; i < 24; ++i) {
    for (int k = 0; k < 360; ++k) {
      const WeatherRow now = other_clear_sky(place.sun(ticks(3600.0 * row_number(i) + 10.0 * k + 5.0)));
      series.rows[i].beam_normal_w_m2 += now.beam_normal_w_m2 / 360.0;
      series.rows[i].diffuse_horizontal_w_m2 += now.diffuse_horizontal_w_m2 / 360.0;
    }
  }
  return series;
}

TEST(WeatherSignal, HourlyMeansGiveBackTheClearSkyTheyCameFrom) {
  const WeatherSignal signal(clear_day_of_hours(), kMidsummer, kSecondsPerDay);
  double worst_w_m2 = 0.0;
  for (Tick t{0}; t < kDay; t = t + 1_min) {
    const WeatherRow truth = other_clear_sky(signal.sun(t));
    worst_w_m2 = std::max(worst_w_m2, std::abs(signal.at(t).global_horizontal_w_m2 - truth.global_horizontal_w_m2));
  }
  // Steps between hourly means would be off by half an hour's climb, about 110 W/m2 in the morning.
  EXPECT_LT(worst_w_m2, 25.0);
  RecordProperty("worst_w_m2", std::to_string(worst_w_m2));
}

TEST(WeatherSignal, EveryIntervalKeepsItsEnergyUnderBrokenClouds) {
  // Invented: clear and thick hours in a pattern without rhythm, from a short integer recurrence.
  for (const double step_s : {600.0, 3600.0}) {
    const auto rows = static_cast<std::size_t>(kSecondsPerDay / step_s);
    WeatherSeries series = invented_series(rows, step_s, 0.5, [](std::size_t, WeatherRow&) {});
    const WeatherSignal place(series, kMidsummer, kSecondsPerDay);
    unsigned state = 12345;
    for (std::size_t i = 0; i < rows; ++i) {
      state = state * 1103515245U + 12345U;
      const double share = static_cast<double>((state >> 16U) % 101U) / 100.0;
      const double sine = std::sin(place.sun(ticks(step_s * (row_number(i) + 0.5))).elevation_rad);
      series.rows[i].beam_normal_w_m2 = sine > 0.0 ? 900.0 * share * std::sqrt(sine) : 0.0;
      series.rows[i].diffuse_horizontal_w_m2 = sine > 0.0 ? (300.0 - 200.0 * share) * sine : 0.0;
    }
    const WeatherSignal signal(series, kMidsummer, kSecondsPerDay);
    int checked = 0;
    for (std::size_t i = 0; i < rows; ++i) {
      const double begin_s = step_s * row_number(i);
      if (place.sun(ticks(begin_s)).elevation_rad < 0.05) continue;
      if (place.sun(ticks(begin_s + step_s)).elevation_rad < 0.05) continue;
      ++checked;
      const WeatherRow& row = series.rows[i];
      const double beam = mean_over(signal, begin_s, begin_s + step_s, &WeatherRow::beam_normal_w_m2);
      const double diffuse = mean_over(signal, begin_s, begin_s + step_s, &WeatherRow::diffuse_horizontal_w_m2);
      EXPECT_NEAR(beam, row.beam_normal_w_m2, 0.01 * row.beam_normal_w_m2 + 0.5) << step_s << " row " << i;
      EXPECT_NEAR(diffuse, row.diffuse_horizontal_w_m2, 0.01 * row.diffuse_horizontal_w_m2) << step_s << " row " << i;
    }
    EXPECT_GT(checked, static_cast<int>(12 * 3600.0 / step_s));
  }
}

TEST(WeatherSignal, IrradianceIsContinuousAndNeverBeyondTheExtraterrestrial) {
  // Invented and absurd on purpose: full sun in every row, also by night and at dawn.
  const auto fill = [](std::size_t i, WeatherRow& row) {
    row.beam_normal_w_m2 = i % 3 == 0 ? 0.0 : 1000.0;
    row.diffuse_horizontal_w_m2 = i % 2 == 0 ? 30.0 : 400.0;
  };
  const WeatherSignal signal(invented_series(24, 3600.0, 0.5, fill), kMidsummer, kSecondsPerDay);
  double before = 0.0;
  for (Tick t{0}; t < kDay; t = t + 1_s) {
    const WeatherRow now = signal.at(t);
    const SunPosition sun = signal.sun(t);
    const double outside = extraterrestrial_normal_at_distance(sun.distance_au);
    const double sine = std::sin(sun.elevation_rad);
    ASSERT_GE(now.beam_normal_w_m2, 0.0);
    ASSERT_GE(now.diffuse_horizontal_w_m2, 0.0);
    ASSERT_LE(now.beam_normal_w_m2, outside);
    ASSERT_LE(now.diffuse_horizontal_w_m2, std::max(0.0, outside * sine));
    if (sun.elevation_rad <= 0.0) {
      ASSERT_EQ(now.global_horizontal_w_m2, 0.0);
    } else {
      ASSERT_NEAR(now.global_horizontal_w_m2, now.beam_normal_w_m2 * sine + now.diffuse_horizontal_w_m2, 1e-9);
    }
    // From nothing to full sun takes no less than half the ramps' 15 min: 3 W/m2 a second is ample.
    ASSERT_LT(std::abs(now.global_horizontal_w_m2 - before), 3.0) << t.ms;
    before = now.global_horizontal_w_m2;
  }
}

TEST(WeatherSignal, TheSameInstantGivesTheSameBits) {
  const auto fill = [](std::size_t i, WeatherRow& row) {
    row.beam_normal_w_m2 = 10.0 * row_number(i);
    row.longwave_down_w_m2 = 300.0;
    row.cloud_share = 0.1;
  };
  const WeatherSeries series = invented_series(48, 3600.0, 1.0, fill);
  const WeatherSignal a(series, kMidsummer, 2.0 * kSecondsPerDay), b(series, kMidsummer, 2.0 * kSecondsPerDay);
  for (Tick t{0}; t < kDay; t = t + 7_min) EXPECT_EQ(a.at(t), b.at(t));
}

}  // namespace
}  // namespace noonhouse
