// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <fstream>
#include <iterator>
#include <string>
#include <system_error>

#include "sim/core/errors.hpp"
#include "tools/weather_file/plain_columns.hpp"
#include "tools/weather_file/plain_weather.hpp"
#include "tools/weather_file/time_label.hpp"

namespace noonhouse {
namespace {

bool is_written(const PlainColumn& column) {
  return column.value != &PlainCells::relative_humidity && column.value != &PlainCells::dew_point_k;
}

std::string one_line(std::string text) {
  std::replace_if(
      text.begin(), text.end(), [](char c) { return c == '\n' || c == '\r'; }, ' ');
  return text;
}

std::string heading(const WeatherSeries& series) {
  return fmt::format(
      "# noonhouse weather 1\n# name: {}\n# origin: {}\n# invented: {}\n# latitude: {} deg\n# longitude: {} deg\n"
      "# altitude: {} m\n# utc_offset: {} s\n# step: {} s\n# instant_share: {}\n# albedo: {}\n",
      one_line(series.name), one_line(series.origin), series.invented ? "yes" : "no", series.latitude_deg,
      series.longitude_deg, series.altitude_m, series.utc_offset_s, series.step_s, series.instant_share, series.albedo);
}

[[noreturn]] void refuse(const std::filesystem::path& path, const std::string& reason) {
  throw UserError(ErrorKind::results_not_writable,
                  fmt::format("{}: the weather file cannot be written: {}", path.string(), reason));
}

}  // namespace

std::string plain_weather_text(const WeatherSeries& series) {
  NOON_ASSERT(series.step_s == std::floor(series.step_s));  // stamps hold whole seconds
  NOON_ASSERT(series.cloudbursts.empty());                  // rows cannot tell them
  std::string text = heading(series);
  text += "time";
  for (const PlainColumn& column : plain_columns()) {
    if (is_written(column)) fmt::format_to(std::back_inserter(text), ",{}[{}]", column.name, column.units[0].name);
  }
  text += '\n';
  for (std::size_t i = 0; i < series.rows.size(); ++i) {
    const auto after = std::chrono::seconds{std::llround(series.step_s) * static_cast<long long>(i)};
    text += time_label(series.start + after);
    PlainCells cells;
    static_cast<WeatherRow&>(cells) = series.rows[i];
    for (const PlainColumn& column : plain_columns()) {
      if (!is_written(column)) continue;
      const double value = cells.*column.value;
      // The shortest digits that read back to the same bits.
      fmt::format_to(std::back_inserter(text), ",{}", std::isnan(value) ? std::string{} : fmt::format("{}", value));
    }
    text += '\n';
  }
  return text;
}

void write_plain_weather(const WeatherSeries& series, const std::filesystem::path& path) {
  const std::filesystem::path part = path.string() + ".part";
  std::ofstream stream(part, std::ios::binary | std::ios::trunc);
  if (!stream) refuse(path, "its folder is missing or does not allow it");
  stream << plain_weather_text(series);
  stream.close();
  std::error_code trouble;
  if (stream) std::filesystem::rename(part, path, trouble);
  if (!stream || trouble) {
    std::error_code ignored;
    std::filesystem::remove(part, ignored);
    refuse(path, trouble ? trouble.message() : "the disk is full or failed");
  }
}

}  // namespace noonhouse
