// SPDX-License-Identifier: Apache-2.0
#include "tools/weather_file/text_table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <fstream>
#include <numeric>
#include <system_error>

#include "sim/core/errors.hpp"

namespace noonhouse {

std::string read_weather_text(const std::filesystem::path& path, std::uintmax_t largest) {
  const std::string name = path.string();
  std::error_code trouble;
  const std::filesystem::file_status status = std::filesystem::status(path, trouble);
  if (!std::filesystem::exists(status)) {
    throw UserError(ErrorKind::file_missing, fmt::format("{}: there is no such weather file; check the name and that "
                                                         "it is relative to the place it is named from",
                                                         name));
  }
  if (!std::filesystem::is_regular_file(status)) {
    throw UserError(ErrorKind::file_missing, fmt::format("{}: this is no file; name a weather file", name));
  }
  const std::uintmax_t size = std::filesystem::file_size(path, trouble);
  if (!trouble && size > largest) {
    throw UserError(ErrorKind::file_too_large,
                    fmt::format("{}: the weather file has {} bytes; at most {} are read; cut it to the days needed",
                                name, size, largest));
  }
  std::ifstream stream(path, std::ios::binary);
  std::string text(trouble ? 0 : size, '\0');
  if (!stream || (!text.empty() && !stream.read(text.data(), static_cast<std::streamsize>(text.size())))) {
    throw UserError(ErrorKind::file_missing,
                    fmt::format("{}: the weather file cannot be read; check its permissions", name));
  }
  if (trimmed(text).empty()) {
    throw UserError(ErrorKind::file_empty, fmt::format("{}: the weather file is empty", name));
  }
  return text;
}

std::vector<std::string_view> lines_of(std::string_view text) {
  constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
  if (text.starts_with(kByteOrderMark)) text.remove_prefix(kByteOrderMark.size());
  std::vector<std::string_view> lines;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    std::string_view line = text.substr(0, end);
    if (line.ends_with('\r')) line.remove_suffix(1);
    lines.push_back(line);
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  while (!lines.empty() && trimmed(lines.back()).empty()) lines.pop_back();
  return lines;
}

std::vector<std::string> cells_of(std::string_view line) {
  std::vector<std::string> cells;
  std::string cell;
  bool quoted = false;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const char c = line[i];
    if (quoted && c == '"' && i + 1 < line.size() && line[i + 1] == '"') {
      cell += '"';
      ++i;
    } else if (c == '"') {
      quoted = !quoted;
    } else if (c == ',' && !quoted) {
      cells.emplace_back(trimmed(cell));
      cell.clear();
    } else {
      cell += c;
    }
  }
  cells.emplace_back(trimmed(cell));
  return cells;
}

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view kBlanks = " \t\r\n";
  const std::size_t begin = text.find_first_not_of(kBlanks);
  if (begin == std::string_view::npos) return {};
  return text.substr(begin, text.find_last_not_of(kBlanks) - begin + 1);
}

std::optional<double> number_of(std::string_view text) {
  text = trimmed(text);
  if (text.starts_with('+')) text.remove_prefix(1);
  double value = 0.0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size() || !std::isfinite(value)) return std::nullopt;
  return value;
}

void FilePlace::fail(const std::string& message) const {
  throw UserError(ErrorKind::weather_format, fmt::format("{}:{}: {}", file, line, message));
}

double FilePlace::number(std::string_view text, std::string_view quantity, double lowest, double highest) const {
  const std::optional<double> value = number_of(text);
  if (!value) fail(fmt::format("{}: read \"{}\", which is no number", quantity, text));
  if (*value < lowest || *value > highest) {
    fail(fmt::format("{}: read {}; allowed is {:.6g} to {:.6g}", quantity, text, lowest, highest));
  }
  return *value;
}

namespace {

/// Letters to insert, remove or change to get from a to b.
std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t changed = diagonal + (a[i - 1] == b[j - 1] ? 0U : 1U);
      diagonal = row[j];
      row[j] = std::min({row[j] + 1, row[j - 1] + 1, changed});
    }
  }
  return row.back();
}

}  // namespace

std::optional<std::string> nearest_name(std::string_view name, const std::vector<std::string>& known) {
  std::optional<std::string> nearest;
  std::size_t least = std::max<std::size_t>(2, name.size() / 3) + 1;
  for (const std::string& candidate : known) {
    const std::size_t distance = edit_distance(name, candidate);
    if (distance < least) {
      least = distance;
      nearest = candidate;
    }
  }
  return nearest;
}

}  // namespace noonhouse
