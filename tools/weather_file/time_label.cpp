// SPDX-License-Identifier: Apache-2.0
#include "tools/weather_file/time_label.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <vector>

namespace noonhouse {

std::string time_label(std::chrono::sys_seconds local) {
  const auto day = std::chrono::floor<std::chrono::days>(local);
  const std::chrono::year_month_day date{day};
  const std::chrono::hh_mm_ss time{local - day};
  std::string text =
      fmt::format("{:04}-{:02}-{:02} {:02}:{:02}", static_cast<int>(date.year()), static_cast<unsigned>(date.month()),
                  static_cast<unsigned>(date.day()), time.hours().count(), time.minutes().count());
  if (time.seconds().count() != 0) text += fmt::format(":{:02}", time.seconds().count());
  return text;
}

std::optional<int> whole_number(std::string_view digits) {
  int value = 0;
  const bool only_digits = std::all_of(digits.begin(), digits.end(), [](char c) { return c >= '0' && c <= '9'; });
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (!only_digits || error != std::errc{} || end != digits.data() + digits.size()) return std::nullopt;
  return value;
}

std::optional<std::chrono::sys_seconds> read_time_label(std::string_view text) {
  const bool with_seconds = text.size() == 19;
  if (text.size() != 16 && !with_seconds) return std::nullopt;
  if (text[4] != '-' || text[7] != '-' || (text[10] != ' ' && text[10] != 'T') || text[13] != ':') return std::nullopt;
  if (with_seconds && text[16] != ':') return std::nullopt;
  std::vector<int> parts;
  for (const auto& [at, length] : {std::pair{0, 4}, {5, 2}, {8, 2}, {11, 2}, {14, 2}, {17, 2}}) {
    if (at == 17 && !with_seconds) break;
    const std::optional<int> part =
        whole_number(text.substr(static_cast<std::size_t>(at), static_cast<std::size_t>(length)));
    if (!part) return std::nullopt;
    parts.push_back(*part);
  }
  const int second = with_seconds ? parts[5] : 0;
  const std::chrono::year_month_day date{std::chrono::year{parts[0]} / parts[1] / parts[2]};
  const bool next_midnight = parts[3] == 24 && parts[4] == 0 && second == 0;
  if (!date.ok() || (parts[3] > 23 && !next_midnight) || parts[4] > 59 || second > 59) return std::nullopt;
  return std::chrono::sys_days{date} + std::chrono::hours{parts[3]} + std::chrono::minutes{parts[4]} +
         std::chrono::seconds{second};
}

}  // namespace noonhouse
