// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace noonhouse {

/// The largest weather file that is read: a year of minutes with a generous line length [bytes].
inline constexpr std::uintmax_t kLargestWeatherFile = 256U * 1024U * 1024U;

/// The whole text of a weather file. Throws UserError: file_missing (also a folder or an unreadable file),
/// file_too_large (judged by size, before reading), file_empty.
std::string read_weather_text(const std::filesystem::path& path, std::uintmax_t largest = kLargestWeatherFile);

/// A text as lines: without line ends (LF or CR LF), a byte order mark and the empty lines at the end.
std::vector<std::string_view> lines_of(std::string_view text);

/// A line's comma separated cells, trimmed; double quotes hold commas ("" is a quote inside). Cells are copies.
std::vector<std::string> cells_of(std::string_view line);

/// The text without blanks around it.
std::string_view trimmed(std::string_view text);

/// A whole text as a finite number, or nothing.
std::optional<double> number_of(std::string_view text);

/// Where in a file one is; throws UserErrors that say so.
struct FilePlace {
  std::string file;
  std::size_t line = 0;  ///< counts from 1

  /// Throws UserError(weather_format): "file:line: message".
  [[noreturn]] void fail(const std::string& message) const;
  /// A number within [lowest, highest] or a failure that names the quantity, what was read and what is allowed.
  double number(std::string_view text, std::string_view quantity, double lowest, double highest) const;
};

/// The name among `known` that differs least from `name`, or nothing when none is alike.
std::optional<std::string> nearest_name(std::string_view name, const std::vector<std::string>& known);

}  // namespace noonhouse
