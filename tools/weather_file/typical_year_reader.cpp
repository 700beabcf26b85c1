// SPDX-License-Identifier: Apache-2.0
#include "tools/weather_file/typical_year_reader.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <optional>
#include <string_view>
#include <vector>

#include "models/properties/constants.hpp"
#include "sim/core/errors.hpp"
#include "tools/weather_file/text_table.hpp"
#include "tools/weather_file/time_label.hpp"
#include "tools/weather_file/weather_humidity.hpp"

namespace noonhouse {
namespace {

constexpr double kStep_s = 3600.0;
constexpr std::size_t kHeaderLines = 2;

struct Columns {
  std::size_t date, time, ghi, dni, dhi, dry_bulb, pressure, wind_from, wind;
  std::optional<std::size_t> dew_point, relative_humidity, rain, cloud, albedo;
  std::size_t count;
};

std::optional<std::size_t> find_column(const std::vector<std::string>& names, std::string_view name) {
  const auto found = std::find(names.begin(), names.end(), name);
  if (found == names.end()) return std::nullopt;
  return static_cast<std::size_t>(found - names.begin());
}

Columns find_columns(const std::vector<std::string>& names, const FilePlace& place) {
  const auto need = [&](std::string_view name) {
    const std::optional<std::size_t> found = find_column(names, name);
    if (found) return *found;
    const std::optional<std::string> nearest = nearest_name(name, names);
    place.fail(fmt::format("a typical year needs the column \"{}\", which is not there{}", name,
                           nearest ? fmt::format("; did the file mean it with \"{}\"?", *nearest) : std::string{}));
  };
  Columns columns{.date = need("Date (MM/DD/YYYY)"),
                  .time = need("Time (HH:MM)"),
                  .ghi = need("GHI (W/m^2)"),
                  .dni = need("DNI (W/m^2)"),
                  .dhi = need("DHI (W/m^2)"),
                  .dry_bulb = need("Dry-bulb (C)"),
                  .pressure = need("Pressure (mbar)"),
                  .wind_from = need("Wdir (degrees)"),
                  .wind = need("Wspd (m/s)"),
                  .dew_point = find_column(names, "Dew-point (C)"),
                  .relative_humidity = find_column(names, "RHum (%)"),
                  .rain = find_column(names, "Lprecip depth (mm)"),
                  .cloud = find_column(names, "TotCld (tenths)"),
                  .albedo = find_column(names, "Alb (unitless)"),
                  .count = names.size()};
  if (!columns.dew_point && !columns.relative_humidity) {
    place.fail("a typical year needs the column \"Dew-point (C)\" or \"RHum (%)\"; neither is there");
  }
  return columns;
}

/// What the stamp says: month, day and the hour that ends then. The year is the month's own and is not used.
struct Stamp {
  int month, day, end_hour;
};

Stamp read_stamp(std::string_view date, std::string_view time, const FilePlace& place) {
  const bool shaped = date.size() == 10 && date[2] == '/' && date[5] == '/' && time.size() == 5 && time[2] == ':';
  const auto month = shaped ? whole_number(date.substr(0, 2)) : std::nullopt;
  const auto day = shaped ? whole_number(date.substr(3, 2)) : std::nullopt;
  const auto hour = shaped ? whole_number(time.substr(0, 2)) : std::nullopt;
  const bool leap_year_date_ok =
      month && day && (std::chrono::year{2000} / *month / *day).ok();  // a leap year: 29 February is a date
  if (!leap_year_date_ok || !hour || *hour < 1 || *hour > 24 || time.substr(3) != "00") {
    place.fail(fmt::format("read the stamp \"{} {}\"; allowed is MM/DD/YYYY and an hour's end from 01:00 to 24:00",
                           date, time));
  }
  return {*month, *day, *hour};
}

std::chrono::sys_seconds beginning(const Stamp& stamp, int year) {
  return std::chrono::sys_days{std::chrono::year{year} / stamp.month / stamp.day} +
         std::chrono::hours{stamp.end_hour - 1};
}

double humidity_of(const std::vector<std::string>& cells, const Columns& columns, const WeatherRow& row,
                   const FilePlace& place) {
  if (columns.dew_point) {
    const double dew_c = place.number(cells[*columns.dew_point], "dew point [C]", -9900.0, 60.0);
    if (dew_c > -100.0) return ratio_from_dew_point(dew_c + kZeroCelsius, row.temperature_k, row.pressure_pa);
    if (!columns.relative_humidity) place.fail("the dew point is not measured here, and there is no RHum column");
  }
  if (!columns.relative_humidity) place.fail("there is neither a dew point nor an RHum column");
  const double percent = place.number(cells[*columns.relative_humidity], "relative humidity [%]", 0.0, 115.0);
  return ratio_from_relative_humidity(percent / 100.0, row.temperature_k, row.pressure_pa);
}

/// The optional number of a column; nothing when the column is absent, empty or below zero ("not measured").
std::optional<double> measured(const std::vector<std::string>& cells, std::optional<std::size_t> column,
                               std::string_view quantity, double highest, const FilePlace& place) {
  if (!column || cells[*column].empty()) return std::nullopt;
  const double value = place.number(cells[*column], quantity, -99999.0, highest);
  return value < 0.0 ? std::nullopt : std::optional{value};
}

WeatherRow read_row(const std::vector<std::string>& cells, const Columns& columns, double wind_from_before_rad,
                    const FilePlace& place) {
  WeatherRow row;
  row.temperature_k = place.number(cells[columns.dry_bulb], "dry bulb [C]", -90.0, 65.0) + kZeroCelsius;
  row.pressure_pa = place.number(cells[columns.pressure], "pressure [mbar]", 300.0, 1100.0) * 100.0;
  row.humidity_ratio = humidity_of(cells, columns, row, place);
  row.beam_normal_w_m2 = place.number(cells[columns.dni], "DNI [W/m^2]", 0.0, 1500.0);
  row.diffuse_horizontal_w_m2 = place.number(cells[columns.dhi], "DHI [W/m^2]", 0.0, 1500.0);
  row.global_horizontal_w_m2 = place.number(cells[columns.ghi], "GHI [W/m^2]", 0.0, 1800.0);
  row.wind_m_s = place.number(cells[columns.wind], "wind speed [m/s]", 0.0, 110.0);
  const double from_deg = place.number(cells[columns.wind_from], "wind direction [degrees]", 0.0, 360.0);
  row.wind_from_rad = row.wind_m_s > 0.0 ? std::fmod(from_deg, 360.0) * kRadiansPerDegree : wind_from_before_rad;
  // The depth in millimetres (or tenths) for now; convert_rain makes it a flow.
  row.rain_kg_m2_s = measured(cells, columns.rain, "rain depth [mm]", 9000.0, place).value_or(0.0);
  const std::optional<double> cloud = measured(cells, columns.cloud, "cloud [tenths]", 99.0, place);
  if (cloud && *cloud <= 10.0) row.cloud_share = *cloud / 10.0;
  return row;
}

void read_station(std::string_view line, const FilePlace& place, WeatherSeries& series) {
  const std::vector<std::string> cells = cells_of(line);
  if (cells.size() < 7) {
    place.fail(
        fmt::format("read {} cells; the first line holds station, name, state, UTC offset [h], latitude, "
                    "longitude and elevation [m]",
                    cells.size()));
  }
  series.name = cells[2].empty() ? cells[1] : cells[1] + ", " + cells[2];
  series.utc_offset_s = place.number(cells[3], "UTC offset [h]", -12.0, 14.0) * 3600.0;
  series.latitude_deg = place.number(cells[4], "latitude [deg]", -90.0, 90.0);
  series.longitude_deg = place.number(cells[5], "longitude [deg]", -180.0, 180.0);
  series.altitude_m = place.number(cells[6], "elevation [m]", -450.0, 9000.0);
}

bool depths_are_tenths(const std::vector<WeatherRow>& rows) {
  std::ptrdiff_t wet = 0;
  for (const WeatherRow& row : rows) {
    const double depth = row.rain_kg_m2_s;
    if (depth <= 0.0) continue;
    if (depth != std::floor(depth) || depth == 1.0 || depth == 2.0) return false;
    ++wet;
  }
  return wet >= 10;
}

void convert_rain(RainColumn rain, WeatherSeries& series) {
  const bool tenths =
      rain == RainColumn::tenths_of_millimetres || (rain == RainColumn::automatic && depths_are_tenths(series.rows));
  const double millimetres = rain == RainColumn::left_out ? 0.0 : tenths ? 0.1 : 1.0;
  for (WeatherRow& row : series.rows) row.rain_kg_m2_s *= millimetres / kStep_s;
  if (rain == RainColumn::left_out) series.origin += "; its rain is left out";
  if (tenths) series.origin += "; its rain depths are taken as tenths of a millimetre";
}

/// The mean of the measured albedos above zero, or the series' default.
class AlbedoMean {
 public:
  void add(std::optional<double> albedo) {
    if (!albedo || *albedo <= 0.0) return;
    sum_ += *albedo;
    ++count_;
  }
  double value_or(double fallback) const { return count_ == 0 ? fallback : sum_ / count_; }

 private:
  double sum_ = 0.0;
  int count_ = 0;
};

}  // namespace

WeatherSeries parse_typical_year(const std::string& text, const std::string& name, const TypicalYearOptions& options) {
  NOON_ASSERT(!std::chrono::year{options.nominal_year}.is_leap());
  const std::vector<std::string_view> lines = lines_of(text);
  WeatherSeries series;
  series.origin = fmt::format("typical year read from {}", std::filesystem::path{name}.filename().string());
  if (lines.size() <= kHeaderLines)
    FilePlace{name, lines.size()}.fail("a typical year needs rows after its two header lines");
  read_station(lines[0], {name, 1}, series);
  const Columns columns = find_columns(cells_of(lines[1]), {name, 2});
  AlbedoMean albedo;
  for (std::size_t i = kHeaderLines; i < lines.size(); ++i) {
    const FilePlace place{name, i + 1};
    const std::vector<std::string> cells = cells_of(lines[i]);
    if (cells.size() != columns.count) {
      place.fail(fmt::format("read {} cells; line 2 names {} columns", cells.size(), columns.count));
    }
    const Stamp stamp = read_stamp(cells[columns.date], cells[columns.time], place);
    if (stamp.month == 2 && stamp.day == 29) continue;
    const std::chrono::sys_seconds begins = beginning(stamp, options.nominal_year);
    if (series.rows.empty()) series.start = begins;
    const std::chrono::sys_seconds expected = series.start + std::chrono::hours{series.rows.size()};
    if (begins != expected) {
      place.fail(fmt::format("read the stamp \"{} {}\" (the hour from {}); the hour from {} should come here",
                             cells[columns.date], cells[columns.time], time_label(begins), time_label(expected)));
    }
    series.rows.push_back(
        read_row(cells, columns, series.rows.empty() ? 0.0 : series.rows.back().wind_from_rad, place));
    albedo.add(measured(cells, columns.albedo, "albedo", 9900.0, place));
  }
  series.albedo = albedo.value_or(series.albedo);
  convert_rain(options.rain, series);
  return series;
}

WeatherSeries read_typical_year(const std::filesystem::path& path, const TypicalYearOptions& options) {
  return parse_typical_year(read_weather_text(path), path.string(), options);
}

}  // namespace noonhouse
