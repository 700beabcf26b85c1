// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <optional>
#include <span>
#include <string>

namespace noonhouse {

/// CRC-64 of some bytes, the reflected form of the polynomial of ECMA-182 (1992), annex B, start and final value ~0
/// (the variant known as CRC-64/XZ).
std::uint64_t crc64(std::span<const std::byte> bytes);

/// The line that follows an HDF5 file's last byte, where HDF5 does not look: a checksum of all before it.
///   HDF5 1.10 checks its structure and its compressed chunks but neither its texts nor its short arrays, and damaged
///   texts can crash it; the seal finds such damage before the library sees the file. A tool that rewrites the file
///   cuts the seal off, and the file then stands without one.
std::string seal_of(std::span<const std::byte> bytes);

/// Whether a file is as it was sealed; nothing for a file without a seal or that cannot be read.
std::optional<bool> seal_holds(const std::filesystem::path& path);

}  // namespace noonhouse
