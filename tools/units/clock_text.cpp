// SPDX-License-Identifier: Apache-2.0
#include "tools/units/clock_text.hpp"

#include <fmt/format.h>

#include <cmath>

namespace noonhouse {
namespace {

/// Reads a pattern of digits from the front of a text: `least` to `most` of them.
std::optional<int> take_digits(std::string_view& text, std::size_t least, std::size_t most) {
  int value = 0;
  std::size_t count = 0;
  while (count < most && count < text.size() && text[count] >= '0' && text[count] <= '9')
    value = value * 10 + (text[count++] - '0');
  if (count < least) return std::nullopt;
  text.remove_prefix(count);
  return value;
}

bool take(std::string_view& text, char c) {
  if (text.empty() || text.front() != c) return false;
  text.remove_prefix(1);
  return true;
}

/// Year, month and day as written, whether or not there is such a day.
std::optional<std::chrono::year_month_day> written_date(std::string_view text) {
  const auto year = take_digits(text, 4, 4);
  if (!year || !take(text, '-')) return std::nullopt;
  const auto month = take_digits(text, 2, 2);
  if (!month || !take(text, '-')) return std::nullopt;
  const auto day = take_digits(text, 2, 2);
  if (!day || !text.empty()) return std::nullopt;
  return std::chrono::year_month_day{std::chrono::year(*year), std::chrono::month(static_cast<unsigned>(*month)),
                                     std::chrono::day(static_cast<unsigned>(*day))};
}

constexpr const char* kMonths[] = {"January", "February", "March",     "April",   "May",      "June",
                                   "July",    "August",   "September", "October", "November", "December"};

}  // namespace

std::optional<double> parse_time_of_day(std::string_view text) {
  const auto hour = take_digits(text, 1, 2);
  if (!hour || !take(text, ':')) return std::nullopt;
  const auto minute = take_digits(text, 2, 2);
  std::optional<int> second = 0;
  if (take(text, ':')) second = take_digits(text, 2, 2);
  if (!minute || !second || !text.empty() || *minute > 59 || *second > 59) return std::nullopt;
  const int total = *hour * 3600 + *minute * 60 + *second;
  if (total > 86400) return std::nullopt;
  return total;
}

std::optional<std::chrono::year_month_day> parse_date(std::string_view text) {
  const auto date = written_date(text);
  return date && date->ok() ? date : std::nullopt;
}

std::string no_such_date(std::string_view text) {
  const auto date = written_date(text);
  if (!date || date->ok()) return {};
  if (!date->month().ok()) return fmt::format("there is no month {}", static_cast<unsigned>(date->month()));
  const auto last = (date->year() / date->month() / std::chrono::last).day();
  const bool leaps = date->month() == std::chrono::February;
  return fmt::format("{}{} has {} days", kMonths[static_cast<unsigned>(date->month()) - 1],
                     leaps ? fmt::format(" {}", static_cast<int>(date->year())) : "", static_cast<unsigned>(last));
}

std::optional<LocalTime> parse_date_time(std::string_view text) {
  if (text.size() < 11 || (text[10] != ' ' && text[10] != 'T')) return std::nullopt;
  const auto date = parse_date(text.substr(0, 10));
  const auto clock = parse_time_of_day(text.substr(11));
  if (!date || !clock) return std::nullopt;
  return LocalTime(std::chrono::local_days(*date)) + std::chrono::seconds(std::llround(*clock));
}

std::optional<double> parse_utc_offset(std::string_view text) {
  const bool west = !text.empty() && text.front() == '-';
  if (!take(text, west ? '-' : '+') || text.size() != 5) return std::nullopt;
  const auto size = parse_time_of_day(text);
  if (!size || *size > 14 * 3600) return std::nullopt;
  return west ? -*size : *size;
}

std::string format_time_of_day(double seconds_of_day) {
  const auto total = std::llround(seconds_of_day);
  const std::string text = fmt::format("{:02}:{:02}", total / 3600, total / 60 % 60);
  return total % 60 == 0 ? text : text + fmt::format(":{:02}", total % 60);
}

std::string format_date(std::chrono::year_month_day date) {
  return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(date.year()), static_cast<unsigned>(date.month()),
                     static_cast<unsigned>(date.day()));
}

std::string format_date_time(LocalTime time) {
  const auto day = std::chrono::floor<std::chrono::days>(time);
  return format_date(std::chrono::year_month_day(day)) + " " +
         format_time_of_day(static_cast<double>((time - day).count()));
}

std::string format_utc_offset(double seconds_east) {
  const auto minutes = std::llround(std::fabs(seconds_east) / 60.0);
  const char sign = seconds_east < 0.0 && minutes > 0 ? '-' : '+';
  return fmt::format("{}{:02}:{:02}", sign, minutes / 60, minutes % 60);
}

}  // namespace noonhouse
