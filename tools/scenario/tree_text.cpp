// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/tree_text.hpp"

#include <algorithm>

#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

bool continues(char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; }
bool is_gap(char c) { return (static_cast<unsigned char>(c) <= 0x20U && c != kHardSpace) || c == 0x7F; }

/// Bytes of the first `count` characters.
std::size_t bytes_of(std::string_view text, std::size_t count) {
  std::size_t at = 0;
  while (at < text.size() && count > 0) {
    ++at;
    while (at < text.size() && continues(text[at])) ++at;
    --count;
  }
  return at;
}

void draw(const std::vector<Branch>& branches, const std::string& prefix, std::size_t width, std::string& out) {
  for (const Branch& branch : branches) {
    const bool last = &branch == &branches.back();
    const std::string below = prefix + (last ? "   " : "│  ");
    const std::string hanging = below + (branch.children.empty() ? "  " : "│ ");
    const std::size_t taken = characters(hanging);
    const std::size_t room = width > taken + 10 ? width - taken : 10;
    bool first = true;
    for (const std::string& line : wrapped(branch.text, room)) {
      out += first ? prefix + (last ? "└─ " : "├─ ") : hanging;
      out += line;
      out += '\n';
      first = false;
    }
    draw(branch.children, below, width, out);
  }
}

}  // namespace

std::size_t characters(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) { return !continues(c); }));
}

std::string unbroken(std::string text) {
  std::replace(text.begin(), text.end(), ' ', kHardSpace);
  return text;
}

std::vector<std::string> wrapped(std::string_view text, std::size_t width) {
  NOON_ASSERT(width > 0);
  std::vector<std::string> lines(1);
  const auto put = [&](std::string_view word) {
    std::string& line = lines.back();
    if (!line.empty() && characters(line) + 1 + characters(word) > width) lines.emplace_back();
    while (characters(word) > width) {
      const std::size_t cut = bytes_of(word, width);
      lines.back() = word.substr(0, cut);
      word.remove_prefix(cut);
      lines.emplace_back();
    }
    lines.back() += (lines.back().empty() ? "" : " ") + std::string(word);
  };
  for (std::size_t start = 0; start < text.size();) {
    const std::size_t stop = static_cast<std::size_t>(
        std::find_if(text.begin() + static_cast<std::ptrdiff_t>(start), text.end(), is_gap) - text.begin());
    if (stop > start) put(text.substr(start, stop - start));
    start = stop + 1;
  }
  for (std::string& line : lines) std::replace(line.begin(), line.end(), kHardSpace, ' ');
  return lines;
}

std::string tree_text(const std::vector<Branch>& branches, std::size_t width) {
  std::string out;
  draw(branches, "", width, out);
  return out;
}

}  // namespace noonhouse
