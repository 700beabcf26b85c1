// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstddef>
#include <filesystem>
#include <span>

namespace noonhouse {

/// Writes `bytes` as the whole content of the file `path`, all or nothing.
///   The bytes go to `path` + ".part" in the same folder, reach the disk (fsync), and only then take the name:
///   at every moment `path` is either what it was before or complete. After a failure no .part file is left.
/// Throws UserError: disk_full when the bytes do not fit (disk, quota or file size limit); results_not_writable when
/// the folder is missing, closed to us or read-only, when `path` is no ordinary file, or when another process is
/// writing the same file at this moment.
/// Does not create folders.
void write_file_whole(const std::filesystem::path& path, std::span<const std::byte> bytes);

}  // namespace noonhouse
