// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <chrono>
#include <string>

#include "sim/core/errors.hpp"
#include "sim/core/tick.hpp"
#include "tools/weather_file/time_label.hpp"
#include "tools/weather_file/weather_cover.hpp"

namespace noonhouse {
namespace {

using std::chrono::hours;
using testing::AllOf;
using testing::HasSubstr;

const std::chrono::sys_seconds kStart = std::chrono::sys_days{std::chrono::year{2025} / 7 / 14};

WeatherSeries three_days() {
  WeatherSeries series;
  series.name = "three days";
  series.start = kStart;
  series.rows.resize(72);
  return series;
}

std::string cover_refusal(std::chrono::sys_seconds start, double duration_s) {
  try {
    require_cover(three_days(), start, duration_s);
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::weather_too_short);
    return error.what();
  }
  return "no error";
}

TEST(WeatherCover, RunsInsideTheSeriesPass) {
  EXPECT_NO_THROW(require_cover(three_days(), kStart, 3.0 * kSecondsPerDay));
  EXPECT_NO_THROW(require_cover(three_days(), kStart + hours{48}, kSecondsPerDay));
}

TEST(WeatherCover, ARunPastTheEndNamesTheFirstMissingInstantAndWhatFits) {
  EXPECT_THAT(cover_refusal(kStart + hours{24}, 3.0 * kSecondsPerDay),
              AllOf(HasSubstr("first instant without weather is 2025-07-17 00:00"), HasSubstr("at most 2 days fit")));
  EXPECT_THAT(cover_refusal(kStart, 3.0 * kSecondsPerDay + 1.0),
              HasSubstr("first instant without weather is 2025-07-17 00:00"));
}

TEST(WeatherCover, ARunThatBeginsOutsideNamesWhereItCouldBegin) {
  EXPECT_THAT(cover_refusal(kStart - hours{1}, kSecondsPerDay),
              AllOf(HasSubstr("first instant without weather is 2025-07-13 23:00"),
                    HasSubstr("starts between 2025-07-14 00:00 and 2025-07-16 00:00")));
  EXPECT_THAT(cover_refusal(kStart + hours{100}, kSecondsPerDay),
              HasSubstr("first instant without weather is 2025-07-18 04:00"));
  EXPECT_THAT(cover_refusal(kStart - hours{1}, 9.0 * kSecondsPerDay), HasSubstr("holds 3 days, the run asks for 9"));
}

TEST(TimeLabel, ReadsWhatItWrites) {
  for (const char* text : {"2025-07-14 00:00", "2024-02-29 23:59", "1999-12-31 12:34:56"}) {
    const auto instant = read_time_label(text);
    ASSERT_TRUE(instant.has_value()) << text;
    EXPECT_EQ(time_label(*instant), text);
  }
  EXPECT_EQ(read_time_label("2025-07-14T06:30"), kStart + hours{6} + std::chrono::minutes{30});
  EXPECT_EQ(read_time_label("2025-07-13 24:00"), kStart);
  for (const char* text : {"", "2025-07-14", "2025-02-29 00:00", "2025-07-14 24:01", "2025-07-14 12:60",
                           "2025-07-14 12:00:60", "2025/07/14 12:00", "2025-07-1x 12:00", "-025-07-14 12:00"}) {
    EXPECT_EQ(read_time_label(text), std::nullopt) << text;
  }
}

}  // namespace
}  // namespace noonhouse
