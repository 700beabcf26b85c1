// SPDX-License-Identifier: Apache-2.0
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <chrono>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <string>

#include "models/properties/atmosphere.hpp"
#include "models/properties/constants.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/weather/weather_digest.hpp"
#include "sim/core/errors.hpp"
#include "tools/weather_file/heatwave_generator.hpp"
#include "tools/weather_file/irradiance_completion.hpp"
#include "tools/weather_file/plain_weather.hpp"
#include "tools/weather_file/text_table.hpp"

namespace noonhouse {
namespace {

using testing::AllOf;
using testing::HasSubstr;

const std::string kHeading =
    "# noonhouse weather 1\n# name: Ridge: upper\n# origin: invented for this test\n# invented: yes\n"
    "# latitude: 35.04 deg\n# longitude: -106.62 deg\n# altitude: 1619 m\n# utc_offset: -7 h\n# step: 10 min\n";
const std::string kColumns =
    "time,temperature[degC],relative_humidity[%],pressure[hPa],beam_normal[W/m2],diffuse[W/m2],wind[km/h],"
    "wind_from[deg],rain[mm],longwave_down[W/m2],cloud[%]\n";
const std::string kRows =
    "2025-07-14 12:00,30,25,835.2,900,100,36,270,0.6,350,10\n"
    "2025-07-14T12:10,31,24,835.2,900,100,36,270,0,,\n";

std::string refusal(const std::string& text) {
  try {
    parse_plain_weather(text, "plain.csv");
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::weather_format);
    return error.what();
  }
  return "no error";
}

std::string replaced(std::string text, const std::string& old_part, const std::string& new_part) {
  const std::size_t at = text.find(old_part);
  EXPECT_NE(at, std::string::npos) << old_part;
  return text.replace(at, old_part.size(), new_part);
}

/// A folder of this process' own, removed afterwards.
class TemporaryFolder {
 public:
  TemporaryFolder()
      : path_(std::filesystem::temp_directory_path() / ("noonhouse_plain_" + std::to_string(::getpid()))) {
    std::filesystem::create_directories(path_);
  }
  ~TemporaryFolder() { std::filesystem::remove_all(path_); }
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;
  std::filesystem::path operator/(const std::string& name) const { return path_ / name; }

 private:
  std::filesystem::path path_;
};

TEST(PlainWeather, ReadsUnitsIntoSi) {
  const WeatherSeries series = parse_plain_weather(kHeading + kColumns + kRows, "plain.csv");
  EXPECT_EQ(series.name, "Ridge: upper");
  EXPECT_TRUE(series.invented);
  EXPECT_EQ(series.utc_offset_s, -25200.0);
  EXPECT_EQ(series.step_s, 600.0);
  EXPECT_EQ(series.instant_share, 0.0);
  EXPECT_EQ(series.start, std::chrono::sys_days{std::chrono::year{2025} / 7 / 14} + std::chrono::hours{12});
  ASSERT_EQ(series.rows.size(), 2U);
  const WeatherRow& row = series.rows[0];
  EXPECT_DOUBLE_EQ(row.temperature_k, 303.15);
  EXPECT_NEAR(relative_humidity(row.temperature_k, row.humidity_ratio, row.pressure_pa), 0.25, 1e-12);
  EXPECT_DOUBLE_EQ(row.pressure_pa, 83520.0);
  EXPECT_DOUBLE_EQ(row.wind_m_s, 10.0);
  EXPECT_DOUBLE_EQ(row.wind_from_rad, 1.5 * kPi);
  EXPECT_DOUBLE_EQ(row.rain_kg_m2_s, 0.001);
  EXPECT_DOUBLE_EQ(row.longwave_down_w_m2, 350.0);
  EXPECT_DOUBLE_EQ(row.cloud_share, 0.1);
  EXPECT_TRUE(std::isnan(series.rows[1].longwave_down_w_m2));
  EXPECT_TRUE(std::isnan(series.rows[1].cloud_share));
  const double sine = mean_sine_elevation(series, 0);
  EXPECT_GT(sine, 0.9);  // noon in July
  EXPECT_DOUBLE_EQ(row.global_horizontal_w_m2, 900.0 * sine + 100.0);
}

TEST(PlainWeather, TheSampleInTheDocumentationReads) {
  std::ifstream header(std::filesystem::path{NOONHOUSE_SOURCE_DIR} / "tools" / "weather_file" / "plain_weather.hpp");
  std::string sample;
  for (std::string line; std::getline(header, line);) {
    if (line == "///" && !sample.empty()) break;
    if (line.starts_with("///     ")) sample += line.substr(8) + "\n";
  }
  const WeatherSeries series = parse_plain_weather(sample, "sample");
  EXPECT_EQ(series.name, "Ridge station, July");
  EXPECT_EQ(series.rows.size(), 1U);
}

TEST(PlainWeather, GlobalAloneIsSplitAndAddsUpAgain) {
  const std::string columns = "time,global[W/m2],dew_point[degC],temperature[K],wind[m/s]\n";
  const WeatherSeries series = parse_plain_weather(
      kHeading + columns + "2025-07-14 12:00,950,5,303.15,2\n2025-07-14 12:10,200,5,303.15,2\n", "plain.csv");
  for (std::size_t i : {0U, 1U}) {
    const WeatherRow& row = series.rows[i];
    EXPECT_NEAR(row.beam_normal_w_m2 * mean_sine_elevation(series, i) + row.diffuse_horizontal_w_m2,
                row.global_horizontal_w_m2, 1e-9);
    EXPECT_DOUBLE_EQ(row.pressure_pa, standard_pressure_pa(1619.0));
    EXPECT_NEAR(dew_point_k(row.humidity_ratio, row.pressure_pa), 278.15, 1e-6);
  }
  EXPECT_GT(series.rows[0].beam_normal_w_m2, 700.0);  // clear
  EXPECT_LT(series.rows[1].beam_normal_w_m2, 10.0);   // kt 0.16: overcast
}

TEST(PlainWeather, GlobalAndDiffuseGiveTheBeam) {
  const std::string columns = "time,global[W/m2],diffuse[W/m2],dew_point[degC],temperature[degC],wind[m/s]\n";
  const WeatherSeries series = parse_plain_weather(
      kHeading + columns + "2025-07-14 12:00,900,150,5,30,2\n2025-07-14 12:10,900,150,5,30,2\n", "plain.csv");
  EXPECT_DOUBLE_EQ(series.rows[0].beam_normal_w_m2, 750.0 / mean_sine_elevation(series, 0));
}

TEST(PlainWeather, WritesWhatReadsBackToTheSameBits) {
  WeatherSeries series = make_heatwave({.dust_day = 2, .storm_day = 3});
  series.rows[5].longwave_down_w_m2 = 1.0 / 3.0 + 300.0;
  series.rows[6].cloud_share = kUnknownWeather;
  const std::string text = plain_weather_text(series);
  const WeatherSeries back = parse_plain_weather(text, "plain.csv");
  EXPECT_EQ(weather_digest(back), weather_digest(series));
  EXPECT_EQ(back.name, series.name);
  EXPECT_EQ(back.origin, series.origin);
  EXPECT_EQ(back.invented, series.invented);
  EXPECT_EQ(plain_weather_text(back), text);
}

TEST(PlainWeather, FilesAreWrittenWholeOrNotAtAll) {
  const TemporaryFolder folder;
  const WeatherSeries series = make_heatwave({.days = 1, .peak_day = 1});
  write_plain_weather(series, folder / "weather.csv");
  EXPECT_EQ(weather_digest(read_weather(folder / "weather.csv")), weather_digest(series));
  EXPECT_FALSE(std::filesystem::exists(folder / "weather.csv.part"));
  try {
    write_plain_weather(series, folder / "missing" / "weather.csv");
    FAIL() << "no error";
  } catch (const UserError& error) {
    EXPECT_EQ(error.kind(), ErrorKind::results_not_writable);
  }
}

TEST(PlainWeather, ProblemsNameFileLineAndAWayOut) {
  const std::string good = kHeading + kColumns + kRows;
  EXPECT_THAT(refusal("time,temperature[degC]\n"), HasSubstr("plain.csv:1: a plain weather file begins with"));
  EXPECT_THAT(refusal(replaced(good, "# latitude", "# lattitude")),
              AllOf(HasSubstr("plain.csv:5: "), HasSubstr("\"lattitude\""), HasSubstr("perhaps \"latitude\"")));
  EXPECT_THAT(refusal(replaced(good, "# altitude: 1619 m\n", "")), HasSubstr("lacks \"# altitude: ...\""));
  EXPECT_THAT(refusal(replaced(good, "# altitude: 1619 m", "# altitude: 1619")),
              AllOf(HasSubstr("plain.csv:7: "), HasSubstr("\"1619\""), HasSubstr("its unit: m")));
  EXPECT_THAT(refusal(replaced(good, "35.04 deg", "95 deg")), AllOf(HasSubstr("read 95"), HasSubstr("-90 to 90")));
  EXPECT_THAT(refusal(replaced(good, "# invented: yes", "# invented: maybe")), HasSubstr("yes or no"));
  EXPECT_THAT(refusal(replaced(good, "# invented: yes", "# name: again")), HasSubstr("twice"));
  EXPECT_THAT(refusal(replaced(good, "temperature[degC]", "temperature")),
              HasSubstr("temperature[K] or temperature[degC]"));
  EXPECT_THAT(refusal(replaced(good, "cloud[%]", "clouds[%]")), HasSubstr("perhaps \"cloud\""));
  EXPECT_THAT(refusal(replaced(good, "cloud[%]", "rain[mm]")), HasSubstr("\"rain\" is given twice"));
  EXPECT_THAT(refusal(replaced(good, "beam_normal[W/m2]", "cloud[1]")), HasSubstr("twice"));
  EXPECT_THAT(refusal(replaced(good, "12:10", "12:20")),
              AllOf(HasSubstr("plain.csv:12: "), HasSubstr("2025-07-14 12:20"), HasSubstr("2025-07-14 12:10")));
  EXPECT_THAT(refusal(replaced(good, "2025-07-14 12:00", "14.7.2025 12:00")), HasSubstr("14.7.2025 12:00"));
  EXPECT_THAT(refusal(replaced(good, ",30,25,", ",300,25,")),
              AllOf(HasSubstr("plain.csv:11: "), HasSubstr("temperature[degC]: read 300"), HasSubstr("-90 to 65")));
  EXPECT_THAT(refusal(replaced(good, ",30,25,", ",,25,")), HasSubstr("no number"));
  EXPECT_THAT(refusal(replaced(good, ",30,25,", ",nan,25,")), HasSubstr("no number"));
  EXPECT_THAT(refusal(replaced(good, ",30,25,", ",30,")), AllOf(HasSubstr("10 cells"), HasSubstr("11 columns")));
  EXPECT_THAT(refusal(kHeading + kColumns), HasSubstr("no rows"));
  EXPECT_THAT(refusal(kHeading), HasSubstr("names the columns"));
  EXPECT_THAT(refusal(kHeading + "time,temperature[K],dew_point[K],wind[m/s],diffuse[W/m2]\n"),
              AllOf(HasSubstr("plain.csv:10: "), HasSubstr("the sun is missing")));
}

TEST(WeatherText, MissingEmptyAndLargeFilesAreToldApart) {
  const TemporaryFolder folder;
  const auto kind_of = [](const std::filesystem::path& path, std::uintmax_t largest = kLargestWeatherFile) {
    try {
      read_weather_text(path, largest);
    } catch (const UserError& error) {
      EXPECT_THAT(error.what(), HasSubstr(path.filename().string()));
      return error.kind();
    }
    return ErrorKind::usage;
  };
  EXPECT_EQ(kind_of(folder / "none.csv"), ErrorKind::file_missing);
  EXPECT_EQ(kind_of(folder / "."), ErrorKind::file_missing);
  std::ofstream(folder / "empty.csv") << " \n\n";
  EXPECT_EQ(kind_of(folder / "empty.csv"), ErrorKind::file_empty);
  std::ofstream(folder / "large.csv") << "12345678901";
  EXPECT_EQ(kind_of(folder / "large.csv", 10), ErrorKind::file_too_large);
  EXPECT_EQ(kind_of(folder / "large.csv", 11), ErrorKind::usage);
}

TEST(WeatherText, LinesAndCells) {
  EXPECT_THAT(lines_of("\xEF\xBB\xBF"
                       "a\r\nb\n\nc\n\n \n"),
              testing::ElementsAre("a", "b", "", "c"));
  EXPECT_THAT(cells_of("a, \"b,\"\"c\" ,,d"), testing::ElementsAre("a", "b,\"c", "", "d"));
  EXPECT_EQ(number_of("+1.5e1"), 15.0);
  EXPECT_EQ(number_of("1.5 m"), std::nullopt);
  EXPECT_EQ(number_of("inf"), std::nullopt);
  EXPECT_EQ(nearest_name("temprature", {"wind", "temperature"}), "temperature");
  EXPECT_EQ(nearest_name("zzz", {"wind", "temperature"}), std::nullopt);
}

}  // namespace
}  // namespace noonhouse
