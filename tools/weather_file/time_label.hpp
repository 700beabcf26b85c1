// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <chrono>
#include <optional>
#include <string>
#include <string_view>

namespace noonhouse {

/// A local standard time label as people read it: "2025-07-14 00:00", with ":30" after it where seconds count.
std::string time_label(std::chrono::sys_seconds local);

/// Reads "2025-07-14 00:00", "2025-07-14T00:00" or either with seconds; nothing when it is no date and time. "24:00" is
/// the next midnight.
std::optional<std::chrono::sys_seconds> read_time_label(std::string_view text);

/// A whole number of digits only, or nothing.
std::optional<int> whole_number(std::string_view digits);

}  // namespace noonhouse
