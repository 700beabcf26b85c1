// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <filesystem>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "tools/scenario/located_node.hpp"

namespace noonhouse {

/// Where the lines of a text start, to turn byte columns into character columns.
class LineIndex {
 public:
  /// The text must outlive the index.
  explicit LineIndex(const std::string& text);
  /// The column in characters, from 1, of a line and a byte column that both count from 0.
  int column_in_characters(int line, int byte_column) const;

 private:
  const std::string& text_;
  std::vector<std::size_t> starts_;
};

/// A small regular file as text. Throws file_missing, file_too_large (judged before reading).
std::string read_text_file(const std::filesystem::path& path);
/// Throws file_syntax at the first byte that is not UTF-8 text (a control character, a broken sequence).
void check_is_text(const std::shared_ptr<const SourceText>& source);
/// Whether every line is blank or a comment.
bool only_comments(std::string_view text);
/// The text of a line that counts from 1, without its end.
std::string line_text(const SourceText& source, int line);

}  // namespace noonhouse
