// SPDX-License-Identifier: Apache-2.0
#include "tools/compare/comparison_layout.hpp"

#include <algorithm>

namespace noonhouse {
namespace {

constexpr std::string_view kUnbrokenSpace = "\u00A0";

constexpr char32_t kNotACharacter = 0xFFFD;

/// The code point that starts at `at`, which moves behind it; bytes that are not UTF-8 read as kNotACharacter.
char32_t next_code_point(std::string_view text, std::size_t& at) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char lead = byte(at);
  const std::size_t length = lead < 0x80   ? 1
                             : lead < 0xC2 ? 0
                             : lead < 0xE0 ? 2
                             : lead < 0xF0 ? 3
                             : lead < 0xF5 ? 4
                                           : 0;
  if (length <= 1) {
    ++at;
    return length == 1 ? lead : kNotACharacter;
  }
  char32_t code = lead & (0xFFU >> (length + 1));
  std::size_t taken = 1;
  while (taken < length && at + taken < text.size() && (byte(at + taken) & 0xC0U) == 0x80U) {
    code = (code << 6U) | (byte(at + taken) & 0x3FU);
    ++taken;
  }
  at += taken;
  return taken == length ? code : kNotACharacter;
}

int code_point_width(char32_t c) {
  if (c < 0x20 || (c >= 0x7F && c < 0xA0)) return 0;
  if ((c >= 0x300 && c <= 0x36F) || (c >= 0x200B && c <= 0x200F) || (c >= 0xFE00 && c <= 0xFE0F)) return 0;
  const bool wide = (c >= 0x1100 && c <= 0x115F) || (c >= 0x2E80 && c <= 0xA4CF) || (c >= 0xAC00 && c <= 0xD7A3) ||
                    (c >= 0xF900 && c <= 0xFAFF) || (c >= 0xFE30 && c <= 0xFE6F) || (c >= 0xFF00 && c <= 0xFF60) ||
                    (c >= 0x1F300 && c <= 0x1FAFF) || (c >= 0x20000 && c <= 0x3FFFD);
  return wide ? 2 : 1;
}

/// Control characters, also those of two bytes, made spaces; what is not UTF-8 made the replacement character.
std::string printable(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t from = at;
    const char32_t code = next_code_point(text, at);
    const bool control = code < 0x20 || (code >= 0x7F && code < 0xA0);
    if (control) {
      out += ' ';
    } else {
      out += code == kNotACharacter ? std::string_view("\uFFFD") : text.substr(from, at - from);
    }
  }
  return out;
}

/// The longest beginning of the word that fits the width, at least one code point.
std::string_view fitting_part(std::string_view word, int width) {
  std::size_t end = 0;
  int used = 0;
  for (std::size_t at = 0; at < word.size();) {
    used += code_point_width(next_code_point(word, at));
    if (used > width && end > 0) break;
    end = at;
  }
  return word.substr(0, end);
}

void append_word(std::vector<std::string>& lines, std::string_view word, int width) {
  const bool fresh = lines.back().empty();
  if (display_width(lines.back()) + (fresh ? 0 : 1) + display_width(word) <= width) {
    lines.back() += (fresh ? "" : " ") + std::string(word);
    return;
  }
  if (!fresh) lines.emplace_back();
  while (display_width(word) > width) {
    const std::string_view part = fitting_part(word, width);
    lines.back() = std::string(part);
    lines.emplace_back();
    word.remove_prefix(part.size());
  }
  lines.back() = std::string(word);
}

std::string padded(const std::string& text, int width) {
  return text + std::string(static_cast<std::size_t>(std::max(0, width - display_width(text))), ' ');
}

void trim_and_end(std::string& line) {
  line.erase(line.find_last_not_of(' ') + 1);
  line += '\n';
}

}  // namespace

int display_width(std::string_view text) {
  int width = 0;
  for (std::size_t at = 0; at < text.size();) width += code_point_width(next_code_point(text, at));
  return width;
}

std::vector<std::string> wrap_text(std::string_view text, int width) {
  const std::string clean = printable(text);
  const std::size_t start = std::min(clean.find_first_not_of(' '), clean.size());
  const int indent = std::min(static_cast<int>(start), std::max(0, width - 1));
  std::vector<std::string> lines{""};
  for (std::size_t at = start; at < clean.size();) {
    const std::size_t end = std::min(clean.find(' ', at), clean.size());
    append_word(lines, std::string_view(clean).substr(at, end - at), width - indent);
    at = std::min(clean.find_first_not_of(' ', end), clean.size());
  }
  for (std::string& line : lines) {
    line.insert(0, static_cast<std::size_t>(indent), ' ');
    for (std::size_t at = line.find(kUnbrokenSpace); at != std::string::npos; at = line.find(kUnbrokenSpace, at)) {
      line.replace(at, kUnbrokenSpace.size(), " ");
    }
  }
  return lines;
}

std::string unbroken(std::string_view text) {
  std::string out;
  for (const char c : text) out += c == ' ' ? std::string(kUnbrokenSpace) : std::string(1, c);
  return out;
}

void append_table_row(std::string& out, const TableCells& row, const std::vector<int>& widths) {
  std::vector<std::vector<std::string>> cells;
  std::size_t height = 1;
  for (std::size_t i = 0; i < row.size(); ++i) {
    cells.push_back(wrap_text(row[i], widths[i]));
    height = std::max(height, cells.back().size());
  }
  for (std::size_t line_no = 0; line_no < height; ++line_no) {
    std::string line;
    for (std::size_t i = 0; i < cells.size(); ++i) {
      if (i > 0) line += std::string(kColumnGap, ' ');
      line += padded(line_no < cells[i].size() ? cells[i][line_no] : "", widths[i]);
    }
    trim_and_end(line);
    out += line;
  }
}

}  // namespace noonhouse
