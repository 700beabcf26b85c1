// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "models/properties/atmosphere.hpp"
#include "tools/weather_file/irradiance_completion.hpp"
#include "tools/weather_file/plain_columns.hpp"
#include "tools/weather_file/plain_weather.hpp"
#include "tools/weather_file/text_table.hpp"
#include "tools/weather_file/time_label.hpp"
#include "tools/weather_file/typical_year_reader.hpp"
#include "tools/weather_file/weather_humidity.hpp"

namespace noonhouse {
namespace {

constexpr std::string_view kFirstLine = "# noonhouse weather 1";

/// One `# key: value` line.
struct HeadingLine {
  std::string key, value;
  FilePlace place;
};

/// The heading's lines by key; each may be taken once.
class Heading {
 public:
  explicit Heading(FilePlace end) : end_(std::move(end)) {}

  void add(std::string_view line, const FilePlace& place) {
    const std::size_t colon = line.find(':');
    if (colon == std::string_view::npos)
      place.fail(fmt::format("read \"{}\"; a heading line is \"# key: value\"", line));
    const std::string key{trimmed(line.substr(1, colon - 1))};
    if (std::find(kKeys.begin(), kKeys.end(), key) == kKeys.end()) {
      const auto nearest = nearest_name(key, kKeys);
      place.fail(fmt::format("unknown heading \"{}\"{}; known are {}", key,
                             nearest ? fmt::format(", perhaps \"{}\"", *nearest) : "", fmt::join(kKeys, ", ")));
    }
    if (find(key))
      place.fail(fmt::format("heading \"{}\" is given twice, first in line {}", key, find(key)->place.line));
    lines_.push_back({key, std::string{trimmed(line.substr(colon + 1))}, place});
  }

  const HeadingLine* find(std::string_view key) const {
    const auto found = std::find_if(lines_.begin(), lines_.end(), [&](const HeadingLine& l) { return l.key == key; });
    return found == lines_.end() ? nullptr : &*found;
  }

  const HeadingLine& need(std::string_view key) const {
    if (const HeadingLine* line = find(key)) return *line;
    end_.fail(fmt::format("the heading lacks \"# {}: ...\", which a weather file needs above its columns", key));
  }

  /// A number followed by one of the units, in SI.
  double quantity(std::string_view key, const std::vector<PlainUnit>& units, double lowest, double highest) const {
    const HeadingLine& line = need(key);
    const std::string_view text = line.value;
    const std::size_t blank = std::min(text.find(' '), text.size());
    for (const PlainUnit& unit : units) {
      if (trimmed(text.substr(blank)) != unit.name) continue;
      return line.place.number(text.substr(0, blank), key, lowest / unit.scale, highest / unit.scale) * unit.scale;
    }
    std::vector<std::string_view> names;
    for (const PlainUnit& unit : units) names.push_back(unit.name);
    line.place.fail(
        fmt::format("{}: read \"{}\"; write a number, a blank and its unit: {}", key, text, fmt::join(names, " or ")));
  }

  double share(std::string_view key, double otherwise) const {
    const HeadingLine* line = find(key);
    return line ? line->place.number(line->value, key, 0.0, 1.0) : otherwise;
  }

  bool yes(std::string_view key) const {
    const HeadingLine* line = find(key);
    if (!line || line->value == "no") return false;
    if (line->value != "yes") line->place.fail(fmt::format("{}: read \"{}\"; allowed is yes or no", key, line->value));
    return true;
  }

  std::string text(std::string_view key) const {
    const HeadingLine* line = find(key);
    return line ? line->value : std::string{};
  }

 private:
  inline static const std::vector<std::string> kKeys{"name",     "origin",     "invented", "latitude",      "longitude",
                                                     "altitude", "utc_offset", "step",     "instant_share", "albedo"};
  FilePlace end_;
  std::vector<HeadingLine> lines_;
};

WeatherSeries series_of(const Heading& heading) {
  static const std::vector<PlainUnit> degrees{{.name = "deg"}}, metres{{.name = "m"}},
      times{{.name = "s"}, {.name = "min", .scale = 60.0}, {.name = "h", .scale = 3600.0}};
  WeatherSeries series;
  series.name = heading.text("name");
  series.origin = heading.text("origin");
  series.invented = heading.yes("invented");
  series.latitude_deg = heading.quantity("latitude", degrees, -90.0, 90.0);
  series.longitude_deg = heading.quantity("longitude", degrees, -180.0, 180.0);
  series.altitude_m = heading.quantity("altitude", metres, -450.0, 9000.0);
  series.utc_offset_s = heading.quantity("utc_offset", times, -12.0 * 3600.0, 14.0 * 3600.0);
  series.step_s = heading.quantity("step", times, 1.0, 86400.0);
  if (series.step_s != std::floor(series.step_s)) heading.need("step").place.fail("step: it must be whole seconds");
  series.instant_share = heading.share("instant_share", 0.0);
  series.albedo = heading.share("albedo", series.albedo);
  return series;
}

/// A column of the file at hand.
struct FileColumn {
  const PlainColumn* kind;
  PlainUnit unit;
};

FileColumn column_of(std::string_view cell, const FilePlace& place) {
  const std::size_t bracket = std::min(cell.find('['), cell.size());
  const std::string_view name = trimmed(cell.substr(0, bracket));
  std::vector<std::string> names;
  for (const PlainColumn& kind : plain_columns()) {
    names.emplace_back(kind.name);
    if (kind.name != name) continue;
    std::vector<std::string> units;
    for (const PlainUnit& unit : kind.units) {
      units.push_back(fmt::format("{}[{}]", kind.name, unit.name));
      if (cell.substr(bracket) == fmt::format("[{}]", unit.name)) return {&kind, unit};
    }
    place.fail(fmt::format("column \"{}\": its unit is missing or unknown; write {}", cell, fmt::join(units, " or ")));
  }
  const auto nearest = nearest_name(name, names);
  place.fail(fmt::format("unknown column \"{}\"{}; known are time, {}", cell,
                         nearest ? fmt::format(", perhaps \"{}\"", *nearest) : "", fmt::join(names, ", ")));
}

/// The columns of a file in its order, after `time`.
class FileColumns {
 public:
  FileColumns(std::string_view line, FilePlace place) : place_(std::move(place)) {
    const std::vector<std::string> cells = cells_of(line);
    if (cells[0] != "time") place_.fail(fmt::format("read \"{}\"; the first column is \"time\"", cells[0]));
    for (std::size_t i = 1; i < cells.size(); ++i) {
      const FileColumn column = column_of(cells[i], place_);
      if (has(column.kind->value)) place_.fail(fmt::format("column \"{}\" is given twice", column.kind->name));
      columns_.push_back(column);
    }
    require();
  }

  bool has(double PlainCells::*value) const {
    return std::any_of(columns_.begin(), columns_.end(),
                       [&](const FileColumn& column) { return column.kind->value == value; });
  }

  IrradianceGiven irradiance() const {
    return {has(&PlainCells::beam_normal_w_m2), has(&PlainCells::diffuse_horizontal_w_m2),
            has(&PlainCells::global_horizontal_w_m2)};
  }

  WeatherRow read(const std::vector<std::string>& cells, const WeatherSeries& series, const FilePlace& place) const {
    if (cells.size() != columns_.size() + 1) {
      place.fail(
          fmt::format("read {} cells; line {} names {} columns", cells.size(), place_.line, columns_.size() + 1));
    }
    PlainCells row;
    row.pressure_pa = standard_pressure_pa(series.altitude_m);
    for (std::size_t i = 0; i < columns_.size(); ++i) {
      const PlainColumn& kind = *columns_[i].kind;
      const PlainUnit& unit = columns_[i].unit;
      const double scale = unit.per_step ? unit.scale / series.step_s : unit.scale;
      const std::string& cell = cells[i + 1];
      if (cell.empty() && kind.may_be_unknown) continue;
      const double read = place.number(cell, fmt::format("{}[{}]", kind.name, unit.name),
                                       kind.lowest / scale - unit.offset, kind.highest / scale - unit.offset);
      row.*kind.value = unit.offset == 0.0 ? read * scale : (read + unit.offset) * scale;
    }
    put_humidity(row);
    return row;
  }

 private:
  void require() const {
    if (!has(&PlainCells::temperature_k)) place_.fail("the column temperature[degC] or temperature[K] is missing");
    if (!has(&PlainCells::wind_m_s)) place_.fail("the column wind[m/s] or wind[km/h] is missing");
    const int humidities =
        has(&PlainCells::humidity_ratio) + has(&PlainCells::relative_humidity) + has(&PlainCells::dew_point_k);
    if (humidities != 1) {
      place_.fail(
          fmt::format("read {} columns of humidity; give one of relative_humidity[%], dew_point[degC] or "
                      "humidity_ratio[kg/kg]",
                      humidities));
    }
    const IrradianceGiven sun = irradiance();
    if (!sun.global && !(sun.beam && sun.diffuse)) {
      place_.fail("the sun is missing: give global[W/m2], or beam_normal[W/m2] and diffuse[W/m2], or all three");
    }
  }

  static void put_humidity(PlainCells& row) {
    if (!std::isnan(row.relative_humidity)) {
      row.humidity_ratio = ratio_from_relative_humidity(row.relative_humidity, row.temperature_k, row.pressure_pa);
    } else if (!std::isnan(row.dew_point_k)) {
      row.humidity_ratio = ratio_from_dew_point(row.dew_point_k, row.temperature_k, row.pressure_pa);
    }
  }

  FilePlace place_;
  std::vector<FileColumn> columns_;
};

void read_rows(const std::vector<std::string_view>& lines, std::size_t first, const std::string& name,
               const FileColumns& columns, WeatherSeries& series) {
  for (std::size_t i = first; i < lines.size(); ++i) {
    const FilePlace place{name, i + 1};
    const std::vector<std::string> cells = cells_of(lines[i]);
    const auto stamp = read_time_label(cells[0]);
    if (!stamp) place.fail(fmt::format("time: read \"{}\"; write it as 2025-07-14 00:00", cells[0]));
    if (series.rows.empty()) series.start = *stamp;
    const auto after = std::llround(series.step_s) * static_cast<long long>(series.rows.size());
    const std::chrono::sys_seconds expected = series.start + std::chrono::seconds{after};
    if (*stamp != expected) {
      place.fail(fmt::format("time: read {}; the row of {} should come here, {} s after the one before",
                             time_label(*stamp), time_label(expected), series.step_s));
    }
    series.rows.push_back(columns.read(cells, series, place));
  }
  if (series.rows.empty()) FilePlace{name, lines.size()}.fail("there are no rows below the columns");
}

}  // namespace

WeatherSeries parse_plain_weather(const std::string& text, const std::string& name) {
  const std::vector<std::string_view> lines = lines_of(text);
  if (lines.empty() || trimmed(lines[0]) != kFirstLine) {
    FilePlace{name, 1}.fail(fmt::format("a plain weather file begins with the line \"{}\"", kFirstLine));
  }
  std::size_t columns_line = 1;
  while (columns_line < lines.size() && lines[columns_line].starts_with('#')) ++columns_line;
  Heading heading({name, columns_line});
  for (std::size_t i = 1; i < columns_line; ++i) heading.add(lines[i], {name, i + 1});
  WeatherSeries series = series_of(heading);
  if (columns_line == lines.size()) FilePlace{name, columns_line}.fail("the line that names the columns is missing");
  const FileColumns columns(lines[columns_line], {name, columns_line + 1});
  read_rows(lines, columns_line + 1, name, columns, series);
  complete_irradiance(series, columns.irradiance());
  return series;
}

WeatherSeries read_plain_weather(const std::filesystem::path& path) {
  return parse_plain_weather(read_weather_text(path), path.string());
}

WeatherSeries read_weather(const std::filesystem::path& path) {
  const std::string text = read_weather_text(path);
  const bool plain = trimmed(lines_of(text)[0]).starts_with("# noonhouse weather");
  return plain ? parse_plain_weather(text, path.string()) : parse_typical_year(text, path.string());
}

}  // namespace noonhouse
