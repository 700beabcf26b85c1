// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <filesystem>

#include "tools/record/run_record.hpp"

namespace noonhouse {

/// Reads back a run written by write_run; every field equals the one written (NaN for NaN).
/// Also reads such a file after netCDF tools rewrote it or added variables; what it does not know it leaves out.
/// Throws UserError: file_missing; results_unreadable when the file is not HDF5, damaged, cut short, of another layout
/// version or no run record at all. Safe to call from several threads.
RunRecord read_run(const std::filesystem::path& path);

}  // namespace noonhouse
