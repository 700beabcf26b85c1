// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <filesystem>
#include <string>
#include <vector>

#include "tools/record/run_record.hpp"

namespace noonhouse {

/// A plan's name as a file name: letters, digits, '-' and '_' stay, the rest becomes '-'.
std::string file_name_of(const std::string& plan);

/// Makes the folder and proves that it can be written, before any run. Throws results_not_writable.
void prepare_results(const std::filesystem::path& folder);

/// Writes one file a record, or none: when one cannot be written those written before it by this call are removed.
std::vector<std::filesystem::path> write_results(const std::filesystem::path& folder,
                                                 const std::vector<RunRecord>& records);

/// All runs of a folder, by file name. Throws results_unreadable when there are none.
std::vector<RunRecord> read_results(const std::filesystem::path& folder);

}  // namespace noonhouse
