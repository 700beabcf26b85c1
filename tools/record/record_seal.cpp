// SPDX-License-Identifier: Apache-2.0
#include "tools/record/record_seal.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <boost/crc.hpp>
#include <fstream>
#include <string_view>
#include <vector>

namespace noonhouse {
namespace {

using Crc = boost::crc_optimal<64, 0x42F0E1EBA9EA3693, 0xFFFFFFFFFFFFFFFF, 0xFFFFFFFFFFFFFFFF, true, true>;

constexpr std::string_view kSealWords = "\nsealed with CRC-64 ";
constexpr std::size_t kSealSize = kSealWords.size() + 16 + 1;
constexpr std::size_t kBlock = std::size_t{1} << 20;  // bytes read at a time

std::string seal_text(std::uint64_t checksum) { return fmt::format("{}{:016x}\n", kSealWords, checksum); }

}  // namespace

std::uint64_t crc64(std::span<const std::byte> bytes) {
  Crc crc;
  crc.process_bytes(bytes.data(), bytes.size());
  return crc.checksum();
}

std::string seal_of(std::span<const std::byte> bytes) { return seal_text(crc64(bytes)); }

std::optional<bool> seal_holds(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary | std::ios::ate);
  const std::streamoff size = file.tellg();
  constexpr auto kSeal = static_cast<std::streamoff>(kSealSize);
  if (!file || size < kSeal) return std::nullopt;
  std::string seal(kSealSize, '\0');
  file.seekg(size - kSeal);
  file.read(seal.data(), kSeal);
  if (!file || !seal.starts_with(kSealWords)) return std::nullopt;
  file.seekg(0);
  Crc crc;
  std::vector<char> block(kBlock);
  for (std::streamoff left = size - kSeal; left > 0 && file;) {
    file.read(block.data(), std::min(left, static_cast<std::streamoff>(kBlock)));
    crc.process_bytes(block.data(), static_cast<std::size_t>(file.gcount()));
    left -= file.gcount();
  }
  if (!file) return std::nullopt;
  return seal == seal_text(crc.checksum());
}

}  // namespace noonhouse
