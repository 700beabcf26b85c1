// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <string_view>

namespace noonhouse {

/// Writes a file whole or not at all: PATH.part first, flushed to the disk, then renamed over PATH. On failure
/// PATH.part is removed and an older PATH stays as it was.
/// Throws UserError(results_not_writable), or UserError(disk_full) where no room, quota or size limit is the cause.
void write_whole_file(const std::string& path, std::string_view bytes);

}  // namespace noonhouse
