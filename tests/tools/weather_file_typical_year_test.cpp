// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <chrono>
#include <cmath>
#include <filesystem>
#include <string>

#include "models/properties/constants.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/weather/weather_signal.hpp"
#include "sim/core/errors.hpp"
#include "tests/support/measured_year.hpp"
#include "tools/weather_file/plain_weather.hpp"
#include "tools/weather_file/text_table.hpp"
#include "tools/weather_file/typical_year_reader.hpp"

namespace noonhouse {
namespace {

using testing::AllOf;
using testing::HasSubstr;

/// A small file in the typical-year layout with its columns in an unusual order; invented values.
std::string small_file(const std::string& rows) {
  return "100001,\"RIDGE, \"\"UPPER\"\"\",ZZ,-7.0,35.000,-106.600,1600\r\n"
         "Date (MM/DD/YYYY),Time (HH:MM),Wspd (m/s),Wdir (degrees),Dry-bulb (C),Dew-point (C),RHum (%),"
         "Pressure (mbar),GHI (W/m^2),DNI (W/m^2),DHI (W/m^2),TotCld (tenths),Lprecip depth (mm),Alb (unitless)\r\n" +
         rows;
}

std::string row(const std::string& stamp, const std::string& rain = "0", const std::string& dew = "10.0") {
  return stamp + ",3.5,225,20.0," + dew + ",52,835,500,600,100,4," + rain + ",-9900\r\n";
}

/// The message of the UserError that parsing gives, after checking its kind.
std::string typical_year_refusal(const std::string& text, const TypicalYearOptions& options = {}) {
  try {
    parse_typical_year(text, "year.csv", options);
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::weather_format);
    return error.what();
  }
  return "no error";
}

TEST(TypicalYear, ReadsStationAndColumnsByName) {
  const WeatherSeries series = parse_typical_year(small_file(row("07/14/1987,13:00")), "folder/year.csv");
  EXPECT_EQ(series.name, "RIDGE, \"UPPER\", ZZ");
  EXPECT_EQ(series.origin, "typical year read from year.csv");
  EXPECT_FALSE(series.invented);
  EXPECT_EQ(series.utc_offset_s, -25200.0);
  EXPECT_EQ(series.latitude_deg, 35.0);
  EXPECT_EQ(series.longitude_deg, -106.6);
  EXPECT_EQ(series.altitude_m, 1600.0);
  EXPECT_EQ(series.instant_share, 1.0);
  EXPECT_EQ(series.step_s, 3600.0);
  EXPECT_EQ(series.albedo, 0.2);  // -9900: not measured
  EXPECT_EQ(series.start, std::chrono::sys_days{std::chrono::year{2001} / 7 / 14} + std::chrono::hours{12});
  ASSERT_EQ(series.rows.size(), 1U);
  const WeatherRow& hour = series.rows[0];
  EXPECT_DOUBLE_EQ(hour.temperature_k, 293.15);
  EXPECT_DOUBLE_EQ(hour.pressure_pa, 83500.0);
  EXPECT_NEAR(dew_point_k(hour.humidity_ratio, hour.pressure_pa), 283.15, 1e-6);
  EXPECT_EQ(hour.global_horizontal_w_m2, 500.0);
  EXPECT_EQ(hour.beam_normal_w_m2, 600.0);
  EXPECT_EQ(hour.diffuse_horizontal_w_m2, 100.0);
  EXPECT_EQ(hour.wind_m_s, 3.5);
  EXPECT_DOUBLE_EQ(hour.wind_from_rad, 225.0 * kRadiansPerDegree);
  EXPECT_DOUBLE_EQ(hour.cloud_share, 0.4);
  EXPECT_TRUE(std::isnan(hour.longwave_down_w_m2));
}

TEST(TypicalYear, MidnightIsTheEndOfItsDayAndMonthsOfOtherYearsFollow) {
  const WeatherSeries series =
      parse_typical_year(small_file(row("06/30/1979,24:00") + row("07/01/1981,01:00")), "year.csv");
  EXPECT_EQ(series.rows.size(), 2U);
  EXPECT_EQ(series.start, std::chrono::sys_days{std::chrono::year{2001} / 6 / 30} + std::chrono::hours{23});
}

TEST(TypicalYear, LeapDayIsLeftOut) {
  const WeatherSeries series = parse_typical_year(
      small_file(row("02/28/1980,24:00") + row("02/29/1980,01:00") + row("03/01/1980,01:00")), "year.csv");
  EXPECT_EQ(series.rows.size(), 2U);
}

TEST(TypicalYear, MissingDewPointFallsBackOnRelativeHumidity) {
  const WeatherSeries series = parse_typical_year(small_file(row("07/14/1987,13:00", "0", "-9900")), "year.csv");
  const WeatherRow& hour = series.rows[0];
  EXPECT_NEAR(relative_humidity(hour.temperature_k, hour.humidity_ratio, hour.pressure_pa), 0.52, 1e-9);
}

TEST(TypicalYear, SentinelsInTheRainColumnAreNoRain) {
  const WeatherSeries series =
      parse_typical_year(small_file(row("07/14/1987,13:00", "-9900") + row("07/14/1987,14:00", "7.2")), "year.csv");
  EXPECT_EQ(series.rows[0].rain_kg_m2_s, 0.0);
  EXPECT_DOUBLE_EQ(series.rows[1].rain_kg_m2_s, 0.002);
}

TEST(TypicalYear, RainDepthsThatCanOnlyBeTenthsAreTakenAsTenths) {
  std::string rows;
  for (int hour = 1; hour <= 12; ++hour) {
    rows += row((hour < 10 ? "07/14/1987,0" : "07/14/1987,") + std::to_string(hour) + ":00", "36");
  }
  const double tenths = 3.6 / 3600.0;
  const auto rain = [](const std::string& text, RainColumn column) {
    return parse_typical_year(text, "year.csv", {.rain = column}).rows[0].rain_kg_m2_s;
  };
  EXPECT_DOUBLE_EQ(rain(small_file(rows), RainColumn::automatic), tenths);
  EXPECT_DOUBLE_EQ(rain(small_file(rows), RainColumn::millimetres), 10.0 * tenths);
  EXPECT_EQ(rain(small_file(rows), RainColumn::left_out), 0.0);
  EXPECT_THAT(parse_typical_year(small_file(rows), "year.csv").origin, HasSubstr("tenths of a millimetre"));
  // One depth that a 0.01 in gauge cannot give in whole tenths, and the name of the column counts.
  EXPECT_DOUBLE_EQ(rain(small_file(rows + row("07/14/1987,13:00", "2")), RainColumn::automatic), 10.0 * tenths);
  EXPECT_DOUBLE_EQ(rain(small_file(rows + row("07/14/1987,13:00", "0.3")), RainColumn::automatic), 10.0 * tenths);
}

TEST(TypicalYear, CalmHoursKeepTheDirectionBefore) {
  const std::string calm = "07/14/1987,14:00,0.0,0,20.0,10.0,52,835,500,600,100,4,0,0.25\r\n";
  const WeatherSeries series = parse_typical_year(small_file(row("07/14/1987,13:00") + calm), "year.csv");
  EXPECT_EQ(series.rows[1].wind_from_rad, series.rows[0].wind_from_rad);
  EXPECT_EQ(series.albedo, 0.25);
}

TEST(TypicalYear, ProblemsNameFileLineAndWhatWasRead) {
  const std::string good = row("07/14/1987,13:00");
  EXPECT_THAT(typical_year_refusal(small_file(good + row("07/14/1987,15:00"))),
              AllOf(HasSubstr("year.csv:4: "), HasSubstr("07/14/1987 15:00"), HasSubstr("2001-07-14 13:00")));
  EXPECT_THAT(typical_year_refusal(small_file(row("07/14/1987,25:00"))),
              AllOf(HasSubstr("year.csv:3: "), HasSubstr("25:00")));
  EXPECT_THAT(typical_year_refusal(small_file(row("02/30/1987,13:00"))), HasSubstr("02/30/1987"));
  EXPECT_THAT(typical_year_refusal(small_file(row("07/14/1987,13:30"))), HasSubstr("13:30"));
  EXPECT_THAT(typical_year_refusal(small_file("07/14/1987,13:00,3.5\r\n")),
              AllOf(HasSubstr("3 cells"), HasSubstr("14 columns")));
  EXPECT_THAT(typical_year_refusal(small_file("07/14/1987,13:00,3.5,225,warm,10,52,835,500,600,100,4,0,0\r\n")),
              AllOf(HasSubstr("dry bulb"), HasSubstr("warm")));
  EXPECT_THAT(typical_year_refusal(small_file("07/14/1987,13:00,3.5,225,20,10,52,835,-9900,600,100,4,0,0\r\n")),
              AllOf(HasSubstr("GHI"), HasSubstr("-9900"), HasSubstr("0 to 1800")));
  EXPECT_THAT(typical_year_refusal(small_file("")), HasSubstr("rows"));
  EXPECT_THAT(typical_year_refusal("1,2,3\nx\ny\n"), AllOf(HasSubstr("year.csv:1: "), HasSubstr("UTC offset")));
  std::string renamed = small_file(good);
  renamed.replace(renamed.find("DNI (W/m^2)"), 11, "DNI (W/m2)");
  EXPECT_THAT(typical_year_refusal(renamed),
              AllOf(HasSubstr("year.csv:2: "), HasSubstr("\"DNI (W/m^2)\""), HasSubstr("\"DNI (W/m2)\"")));
}

TEST(TypicalYear, ReadsAWholePublishedYear) {
  if (measured_year().empty()) GTEST_SKIP() << kNoMeasuredYear;
  const WeatherSeries series = read_weather(measured_year());
  ASSERT_EQ(series.rows.size(), 8760U);
  EXPECT_EQ(series.altitude_m, 1619.0);
  EXPECT_EQ(series.start, std::chrono::sys_days{std::chrono::year{2001} / 1 / 1});
  // First row of the file: 2.8 C, dew point -8.9 C, 42 %, 843 mbar, 20 degrees, 3.6 m/s.
  const WeatherRow& first = series.rows[0];
  EXPECT_DOUBLE_EQ(first.temperature_k, 275.95);
  EXPECT_DOUBLE_EQ(first.pressure_pa, 84300.0);
  EXPECT_NEAR(vapour_pressure_pa(first.humidity_ratio, first.pressure_pa) / saturation_pressure_water_pa(275.95), 0.42,
              0.005);  // the file's own two digits of humidity
  double rain_mm = 0.0;
  for (const WeatherRow& hour : series.rows) rain_mm += hour.rain_kg_m2_s * 3600.0;
  // The column sums to 1052; in tenths of a millimetre that is a dry place's year, in millimetres a rain forest's.
  EXPECT_NEAR(rain_mm, 105.2, 1e-6);
}

TEST(TypicalYear, ASummerMonthKeepsItsSunThroughTheSignal) {
  if (measured_year().empty()) GTEST_SKIP() << kNoMeasuredYear;
  const WeatherSeries series = read_typical_year(measured_year());
  const std::chrono::sys_seconds july = std::chrono::sys_days{std::chrono::year{2001} / 7 / 1};
  const int hour_count = 31 * 24;
  const WeatherSignal signal(series, july, hour_count * 3600.0);
  const auto first = static_cast<std::size_t>((july - series.start).count() / 3600);
  double given = 0.0, given_beam = 0.0, given_diffuse = 0.0, got = 0.0, got_beam = 0.0, got_diffuse = 0.0;
  for (std::size_t i = 0; i < static_cast<std::size_t>(hour_count); ++i) {
    given += series.rows[first + i].global_horizontal_w_m2;
    given_beam += series.rows[first + i].beam_normal_w_m2;
    given_diffuse += series.rows[first + i].diffuse_horizontal_w_m2;
    for (int k = 0; k < 60; ++k) {
      const WeatherRow now = signal.at(ticks(3600.0 * static_cast<double>(i) + 60.0 * k + 30.0));
      got += now.global_horizontal_w_m2 / 60.0;
      got_beam += now.beam_normal_w_m2 / 60.0;
      got_diffuse += now.diffuse_horizontal_w_m2 / 60.0;
    }
  }
  EXPECT_NEAR(got_beam / given_beam, 1.0, 0.01);
  EXPECT_NEAR(got_diffuse / given_diffuse, 1.0, 0.01);
  RecordProperty("global_ratio", std::to_string(got / given));
  RecordProperty("beam_ratio", std::to_string(got_beam / given_beam));
  RecordProperty("diffuse_ratio", std::to_string(got_diffuse / given_diffuse));
  // The file's own three quantities are rounded and partly measured, partly modelled: they close to about 1 %.
  EXPECT_NEAR(got / given, 1.0, 0.02);
}

}  // namespace
}  // namespace noonhouse
