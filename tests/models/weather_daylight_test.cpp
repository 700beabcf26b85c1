// SPDX-License-Identifier: Apache-2.0
// When the sun is up, before a run begins and after it ends too.
#include <gtest/gtest.h>

#include "models/weather/weather_signal.hpp"

namespace noonhouse {
namespace {

const std::chrono::sys_seconds kSolstice = std::chrono::sys_days{std::chrono::year{2025} / 6 / 21};

/// A run within three days from the June solstice, at the meridian of its zone. The weather plays no part.
WeatherSignal run_at(double latitude_deg, Tick begin, Tick length) {
  WeatherSeries series;
  series.latitude_deg = latitude_deg;
  series.longitude_deg = -105.0;
  series.utc_offset_s = -7.0 * 3600.0;
  series.start = kSolstice;
  series.step_s = 3600.0;
  series.rows.resize(72);
  return {series, kSolstice + std::chrono::seconds(begin.ms / 1000), seconds(length)};
}

// A run from 10:00 to 14:00, in which the sun neither rises nor sets: its day begins before it and ends after it.
TEST(Daylight, ReachesBeyondTheRun) {
  const WeatherSignal whole = run_at(35.0, 0_h, 72_h), noon = run_at(35.0, 34_h, 4_h);
  EXPECT_EQ(noon.next_sunset(Tick{0}), kNever);
  const Tick rise = whole.next_sunrise(24_h), set = whole.next_sunset(rise);
  const auto days = noon.daylight(Tick{} - 24_h, 28_h);
  ASSERT_EQ(days.size(), 3U);
  EXPECT_EQ(days[0].from, Tick{} - 24_h) << "the day before, cut off at 10:00";
  EXPECT_EQ(days[0].until, whole.next_sunset(Tick{0}) - 34_h);
  EXPECT_EQ(days[1].from, rise - 34_h);
  EXPECT_EQ(days[1].until, set - 34_h);
  EXPECT_EQ(days[2].from, whole.next_sunrise(set) - 34_h);
  EXPECT_EQ(days[2].until, 28_h) << "cut off at 14:00";
}

TEST(Daylight, IsTheWholeSpanInAPolarDayAndNothingInAPolarNight) {
  const auto summer = run_at(72.0, 24_h, 24_h).daylight(Tick{} - 24_h, 48_h);
  ASSERT_EQ(summer.size(), 1U);
  EXPECT_EQ(summer[0].from, Tick{} - 24_h);
  EXPECT_EQ(summer[0].until, 48_h);
  EXPECT_TRUE(run_at(-72.0, 24_h, 24_h).daylight(Tick{} - 24_h, 48_h).empty());
}

}  // namespace
}  // namespace noonhouse
