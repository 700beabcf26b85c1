// SPDX-License-Identifier: Apache-2.0
#include "models/weather/weather_digest.hpp"

#include <gtest/gtest.h>

#include <chrono>
#include <functional>
#include <set>
#include <vector>

namespace noonhouse {
namespace {

WeatherSeries one_row() {
  WeatherSeries series;
  series.start = std::chrono::sys_days{std::chrono::year{2025} / 7 / 14};
  series.rows.resize(1);
  return series;
}

TEST(WeatherDigest, IsTheFnv1aOfTheDocumentedWords) {
  // Value: an independent evaluation of FNV-1a 64 in Python over struct.pack("<7dQQ11d", 0, 0, 0, 0, 3600, 1, 0.2,
  // 1752451200, 1, 288.15, 0, 101325, 0, 0, 0, 0, 0, 0, nan, nan).
  EXPECT_EQ(weather_digest(one_row()), "fnv1a64:2c126a4f2d8b6ada");
}

TEST(WeatherDigest, ChangesWithEveryNumberAndWithTheOrderOfRows) {
  const std::vector<std::function<void(WeatherSeries&)>> changes{
      [](WeatherSeries&) {},
      [](WeatherSeries& s) { s.latitude_deg = 1.0; },
      [](WeatherSeries& s) { s.longitude_deg = 1.0; },
      [](WeatherSeries& s) { s.altitude_m = 1.0; },
      [](WeatherSeries& s) { s.utc_offset_s = 1.0; },
      [](WeatherSeries& s) { s.start += std::chrono::seconds{1}; },
      [](WeatherSeries& s) { s.step_s = 1.0; },
      [](WeatherSeries& s) { s.instant_share = 0.5; },
      [](WeatherSeries& s) { s.albedo = 0.3; },
      [](WeatherSeries& s) { s.rows[0].temperature_k = 1.0; },
      [](WeatherSeries& s) { s.rows[0].humidity_ratio = 1.0; },
      [](WeatherSeries& s) { s.rows[0].pressure_pa = 1.0; },
      [](WeatherSeries& s) { s.rows[0].beam_normal_w_m2 = 1.0; },
      [](WeatherSeries& s) { s.rows[0].diffuse_horizontal_w_m2 = 1.0; },
      [](WeatherSeries& s) { s.rows[0].global_horizontal_w_m2 = 1.0; },
      [](WeatherSeries& s) { s.rows[0].wind_m_s = 1.0; },
      [](WeatherSeries& s) { s.rows[0].wind_from_rad = 1.0; },
      [](WeatherSeries& s) { s.rows[0].rain_kg_m2_s = 1.0; },
      [](WeatherSeries& s) { s.rows[0].longwave_down_w_m2 = 1.0; },
      [](WeatherSeries& s) { s.rows[0].cloud_share = 1.0; },
      [](WeatherSeries& s) { s.rows.push_back({}); },
      [](WeatherSeries& s) { s.rows.insert(s.rows.begin(), WeatherRow{.temperature_k = 2.0}); },
      [](WeatherSeries& s) { s.rows.insert(s.rows.end(), WeatherRow{.temperature_k = 2.0}); },
  };
  std::set<std::string> digests;
  for (const auto& change : changes) {
    WeatherSeries series = one_row();
    change(series);
    digests.insert(weather_digest(series));
  }
  EXPECT_EQ(digests.size(), changes.size());
}

TEST(WeatherDigest, DoesNotCountNamesNorTheSignOfZero) {
  WeatherSeries renamed = one_row();
  renamed.name = "other";
  renamed.origin = "elsewhere";
  renamed.rows[0].wind_m_s = -0.0;
  renamed.rows[0].cloud_share = -kUnknownWeather;
  EXPECT_EQ(weather_digest(renamed), weather_digest(one_row()));
}

}  // namespace
}  // namespace noonhouse
