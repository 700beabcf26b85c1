// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <chrono>
#include <optional>
#include <string>
#include <string_view>

namespace noonhouse {

/// A date and a time of day on the scenario's own clock (local standard time, no daylight saving).
using LocalTime = std::chrono::local_seconds;

/// Seconds since midnight [s] of "08:30" or "08:30:15"; "24:00" is the end of the day. Nothing for other text.
std::optional<double> parse_time_of_day(std::string_view text);
/// The proleptic Gregorian date of "2025-07-14". Nothing for other text or a day that does not exist.
std::optional<std::chrono::year_month_day> parse_date(std::string_view text);
/// Why a text that is written like a date is none, such as "June has 30 days"; empty for a date and for other text.
std::string no_such_date(std::string_view text);
/// The instant of "2025-07-14 08:30", with optional seconds; a `T` may stand for the space.
std::optional<LocalTime> parse_date_time(std::string_view text);
/// Seconds ahead of UTC [s], east positive, of "-07:00" or "+05:45"; at most 14 hours either way.
std::optional<double> parse_utc_offset(std::string_view text);

/// "08:30", or "08:30:15" where there are seconds; rounds to the second. The inverse of parse_time_of_day.
std::string format_time_of_day(double seconds_of_day);
std::string format_date(std::chrono::year_month_day date);
/// "2025-07-14 08:30", with seconds where there are any.
std::string format_date_time(LocalTime time);
/// "-07:00"; rounds to the minute.
std::string format_utc_offset(double seconds_east);

inline constexpr const char* kTimeOfDayPattern = "^(([01]?[0-9]|2[0-3]):[0-5][0-9](:[0-5][0-9])?|24:00(:00)?)$";
inline constexpr const char* kDatePattern = "^[0-9]{4}-[0-9]{2}-[0-9]{2}$";
inline constexpr const char* kDateTimePattern = "^[0-9]{4}-[0-9]{2}-[0-9]{2}[ T][0-9]{1,2}:[0-9]{2}(:[0-9]{2})?$";
inline constexpr const char* kUtcOffsetPattern = "^[+-][01][0-9]:[0-5][0-9]$";

}  // namespace noonhouse
