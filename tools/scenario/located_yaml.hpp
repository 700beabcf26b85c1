// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>

#include "tools/scenario/located_node.hpp"

namespace noonhouse {

inline constexpr std::uintmax_t kYamlMaxBytes = 4U * 1024U * 1024U;
inline constexpr int kYamlMaxNodes = 100'000;  ///< counted after aliases are expanded
inline constexpr int kYamlMaxDepth = 64;

/// Reads one YAML document from a file. Throws UserError:
///   file_missing    no such file, or a folder, a device, or not readable (says which)
///   file_too_large  above kYamlMaxBytes, judged before reading
///   file_empty      nothing but white space and comments
///   file_syntax     not YAML (line and column), not UTF-8 text, a second document, a merge key `<<`, a tag, a key
///                   that is not a plain word
///   duplicate_key   a key twice in one mapping (both positions)
///   anchor_cycle    an alias inside its own anchor, or aliases that grow beyond kYamlMaxNodes or kYamlMaxDepth
LocatedNode read_yaml_file(const std::filesystem::path& path);

/// The same for text in memory; name stands for the file in messages.
LocatedNode read_yaml_text(std::string_view text, const std::string& name);

}  // namespace noonhouse
