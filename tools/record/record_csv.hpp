// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <filesystem>
#include <string>
#include <vector>

#include "tools/record/run_record.hpp"

namespace noonhouse {

/// The named series as comma-separated text (RFC 4180, but lines end in LF; UTF-8), one line a record instant.
///   Columns: "time [s]" since the start, "local standard time", then every entry of every named series, as
///   "air_temperature(floor, west) [K]". No names: all series. Numbers in SI, the shortest text that reads back to
///   the same value; an empty cell where there is no value.
/// Throws UserError: unknown_name.
std::string series_csv(const RunRecord& record, const std::vector<std::string>& names);

/// The event log in the same form: id, cause, time, kind, subject, what.
std::string events_csv(const RunRecord& record);

/// Write these texts as files, all or nothing; throw what write_file_whole throws.
void write_series_csv(const RunRecord& record, const std::filesystem::path& path,
                      const std::vector<std::string>& names);
void write_events_csv(const RunRecord& record, const std::filesystem::path& path);

/// The local standard time of an instant, "2025-07-14 00:10:00", with milliseconds where it has any; empty when
/// `start` is not of the form "2025-07-14 00:00:00".
std::string local_time_text(const std::string& start, double seconds_since_start);

}  // namespace noonhouse
