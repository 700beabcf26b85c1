// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/located_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <fstream>
#include <iterator>
#include <system_error>

#include "tools/scenario/located_yaml.hpp"

namespace noonhouse {
namespace {

unsigned byte_at(std::string_view text, std::size_t i) {
  return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U;
}
bool continues_character(unsigned byte) { return (byte & 0xC0U) == 0x80U; }

/// Bytes of the well-formed UTF-8 character at i, 0 where it is not one (RFC 3629: no surrogates, no overlong forms).
std::size_t character_length(std::string_view text, std::size_t i) {
  const unsigned a = byte_at(text, i), b = byte_at(text, i + 1);
  if (a < 0x80U) return 1;
  const std::size_t length = a >= 0xF0U ? 4 : a >= 0xE0U ? 3 : 2;
  if (a < 0xC2U || a > 0xF4U) return 0;
  for (std::size_t k = 1; k < length; ++k)
    if (!continues_character(byte_at(text, i + k))) return 0;
  const bool overlong = (a == 0xE0U && b < 0xA0U) || (a == 0xF0U && b < 0x90U);
  const bool outside = (a == 0xEDU && b > 0x9FU) || (a == 0xF4U && b > 0x8FU);
  return overlong || outside ? 0 : length;
}

[[noreturn]] void not_readable(const std::filesystem::path& path, ErrorKind kind, const std::string& reason) {
  throw UserError(kind, fmt::format("{}: {}", path.string(), reason));
}

}  // namespace

LineIndex::LineIndex(const std::string& text) : text_(text), starts_{0} {
  for (std::size_t i = 0; i < text.size(); ++i)
    if (text[i] == '\n') starts_.push_back(i + 1);
}

int LineIndex::column_in_characters(int line, int byte_column) const {
  if (line < 0 || static_cast<std::size_t>(line) >= starts_.size()) return byte_column + 1;
  const std::size_t start = starts_[static_cast<std::size_t>(line)];
  const std::size_t stop = std::min(start + static_cast<std::size_t>(std::max(byte_column, 0)), text_.size());
  int column = 1;
  for (std::size_t i = start; i < stop; ++i)
    if (!continues_character(byte_at(text_, i))) ++column;
  return column;
}

std::string read_text_file(const std::filesystem::path& path) {
  std::error_code error;
  const auto status = std::filesystem::status(path, error);
  if (status.type() == std::filesystem::file_type::not_found)
    not_readable(path, ErrorKind::file_missing, "there is no such file");
  if (std::filesystem::is_directory(status))
    not_readable(path, ErrorKind::file_missing, "this is a folder; name the file in it");
  if (error) not_readable(path, ErrorKind::file_missing, error.message());
  if (!std::filesystem::is_regular_file(status))
    not_readable(path, ErrorKind::file_missing, "this is not a regular file");
  const std::uintmax_t size = std::filesystem::file_size(path, error);
  if (error) not_readable(path, ErrorKind::file_missing, error.message());
  if (size > kYamlMaxBytes)
    not_readable(path, ErrorKind::file_too_large,
                 fmt::format("{:.1f} MiB; a scenario is at most {} MiB (is this a weather or results file?)",
                             static_cast<double>(size) / 1048576.0, kYamlMaxBytes / 1048576U));
  errno = 0;
  std::ifstream file(path, std::ios::binary);
  if (!file) not_readable(path, ErrorKind::file_missing, fmt::format("cannot be read: {}", std::strerror(errno)));
  std::string text(static_cast<std::size_t>(size), '\0');
  file.read(text.data(), static_cast<std::streamsize>(size));
  text.resize(static_cast<std::size_t>(file.gcount()));
  if (file.bad()) not_readable(path, ErrorKind::file_missing, "reading failed");
  return text;
}

void check_is_text(const std::shared_ptr<const SourceText>& source) {
  const std::string& text = source->text;
  int line = 1, column = 1;
  for (std::size_t i = 0; i < text.size();) {
    const unsigned byte = byte_at(text, i);
    const std::size_t length = character_length(text, i);
    const bool control = byte < 0x20U && byte != '\t' && byte != '\n' && byte != '\r';
    if (length == 0 || control || byte == 0x7FU)
      throw UserError(ErrorKind::file_syntax, fmt::format("{}: byte {:#04x} is not UTF-8 text; save the file as UTF-8",
                                                          where({source, line, column}), byte));
    if (byte == '\n') {
      ++line;
      column = 0;
    }
    ++column;
    i += length;
  }
}

bool only_comments(std::string_view text) {
  if (text.substr(0, 3) == "\xEF\xBB\xBF") text.remove_prefix(3);
  bool comment = false;
  for (const char c : text) {
    if (c == '\n') comment = false;
    if (c == '#') comment = true;
    if (!comment && c != ' ' && c != '\t' && c != '\r' && c != '\n') return false;
  }
  return true;
}

std::string line_text(const SourceText& source, int line) {
  std::string_view rest = source.text;
  for (int n = 1; n < line; ++n) {
    const std::size_t end = rest.find('\n');
    if (end == std::string_view::npos) return {};
    rest.remove_prefix(end + 1);
  }
  rest = rest.substr(0, rest.find('\n'));
  if (!rest.empty() && rest.back() == '\r') rest.remove_suffix(1);
  return std::string(rest);
}

}  // namespace noonhouse
