// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <regex>

#include "tools/units/clock_text.hpp"

namespace noonhouse {
namespace {

TEST(UnitsClock, TimesOfDayAreReadAndWritten) {
  EXPECT_EQ(parse_time_of_day("08:30"), 30600.0);
  EXPECT_EQ(parse_time_of_day("8:30"), 30600.0);
  EXPECT_EQ(parse_time_of_day("23:59:59"), 86399.0);
  EXPECT_EQ(parse_time_of_day("24:00"), 86400.0);
  for (const char* text : {"24:01", "25:00", "8", "8:3", "08:60", "08:30:60", "08:30 ", "8:30 pm", "-1:00", ""})
    EXPECT_FALSE(parse_time_of_day(text)) << text;
  EXPECT_EQ(format_time_of_day(30600.0), "08:30");
  EXPECT_EQ(format_time_of_day(30605.0), "08:30:05");
  EXPECT_EQ(format_time_of_day(86400.0), "24:00");
}

TEST(UnitsClock, DatesMustExist) {
  using namespace std::chrono;
  EXPECT_EQ(parse_date("2025-07-14"), year_month_day(2025y / July / 14));
  EXPECT_EQ(parse_date("2024-02-29"), year_month_day(2024y / February / 29));
  for (const char* text : {"2025-02-29", "2025-13-01", "2025-00-10", "2025-7-14", "14.07.2025", "2025-07-14 ", ""})
    EXPECT_FALSE(parse_date(text)) << text;
  EXPECT_EQ(format_date(2025y / July / 4), "2025-07-04");
}

TEST(UnitsClock, ADateThatDoesNotExistIsExplained) {
  EXPECT_EQ(no_such_date("2026-06-31"), "June has 30 days");
  EXPECT_EQ(no_such_date("2025-02-29"), "February 2025 has 28 days");
  EXPECT_EQ(no_such_date("2024-02-30"), "February 2024 has 29 days");
  EXPECT_EQ(no_such_date("2025-12-00"), "December has 31 days");
  EXPECT_EQ(no_such_date("2025-13-01"), "there is no month 13");
  for (const char* text : {"2025-07-14", "2025-7-32", "", "soon"}) EXPECT_EQ(no_such_date(text), "") << text;
}

TEST(UnitsClock, InstantsGoThereAndBack) {
  for (const char* text : {"2025-07-14 08:30", "1970-01-01 00:00", "1969-12-31 23:59:59", "2050-12-31 12:00:01"}) {
    const auto time = parse_date_time(text);
    ASSERT_TRUE(time) << text;
    EXPECT_EQ(format_date_time(*time), text);
  }
  EXPECT_EQ(parse_date_time("2025-07-14T08:30"), parse_date_time("2025-07-14 08:30"));
  EXPECT_EQ(parse_date_time("2025-07-14 24:00"), parse_date_time("2025-07-15 00:00"));
  EXPECT_FALSE(parse_date_time("2025-07-14"));
  EXPECT_FALSE(parse_date_time("2025-02-30 08:00"));
}

TEST(UnitsClock, OffsetsFromUtcAreEastPositive) {
  EXPECT_EQ(parse_utc_offset("-07:00"), -25200.0);
  EXPECT_EQ(parse_utc_offset("+05:45"), 20700.0);
  EXPECT_EQ(parse_utc_offset("+14:00"), 50400.0);
  for (const char* text : {"07:00", "-7:00", "+14:01", "Z", "+0700", "-07:00:00", ""})
    EXPECT_FALSE(parse_utc_offset(text)) << text;
  for (const char* text : {"-07:00", "+05:45", "+00:00", "-03:30"})
    EXPECT_EQ(format_utc_offset(*parse_utc_offset(text)), text);
}

TEST(UnitsClock, SchemaPatternsMatchWhatIsReadAsATime) {
  for (const char* text : {"08:30", "8:30", "23:59:59", "24:00"})
    EXPECT_TRUE(std::regex_match(text, std::regex(kTimeOfDayPattern))) << text;
  for (const char* text : {"24:01", "8", "08:60"})
    EXPECT_FALSE(std::regex_match(text, std::regex(kTimeOfDayPattern))) << text;
  EXPECT_TRUE(std::regex_match("2025-07-14", std::regex(kDatePattern)));
  EXPECT_TRUE(std::regex_match("2025-07-14T08:30", std::regex(kDateTimePattern)));
  EXPECT_TRUE(std::regex_match("-07:00", std::regex(kUtcOffsetPattern)));
}

}  // namespace
}  // namespace noonhouse
