// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstdlib>
#include <filesystem>

namespace noonhouse {

/// Measured weather is not the project's to pass on. Tests on it read the typical year (TMY3) of a hot dry station at
/// 1619 m whose path the environment names, and are skipped where it names none.
inline constexpr const char* kNoMeasuredYear =
    "NOONHOUSE_MEASURED_YEAR names no typical-year file of the station at 1619 m";

/// That file, or an empty path.
inline std::filesystem::path measured_year() {
  const char* path = std::getenv("NOONHOUSE_MEASURED_YEAR");
  return path != nullptr && std::filesystem::exists(path) ? std::filesystem::path(path) : std::filesystem::path();
}

}  // namespace noonhouse
