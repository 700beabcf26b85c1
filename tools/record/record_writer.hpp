// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstddef>
#include <filesystem>
#include <vector>

#include "tools/record/run_record.hpp"

namespace noonhouse {

/// Writes a run as one file (layout: record_layout.hpp), all or nothing: under the name `path` + ".part" until it is
/// complete and on the disk. An older file of that name is replaced. Equal records give equal bytes.
/// Throws UserError: disk_full, results_not_writable. Safe to call from several threads.
/// The record must be whole: every series as long as its dimensions, every axis declared, no name used twice.
void write_run(const RunRecord& record, const std::filesystem::path& path);

/// The bytes of that file.
std::vector<std::byte> run_file_image(const RunRecord& record);

}  // namespace noonhouse
