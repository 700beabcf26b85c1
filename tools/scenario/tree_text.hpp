// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace noonhouse {

/// What a terminal and a page of documentation show without wrapping.
inline constexpr std::size_t kTextWidth = 100;

/// A text and what belongs under it.
struct Branch {
  std::string text;
  std::vector<Branch> children = {};
};

/// Branches as a tree drawn with lines, no line wider than `width` characters; ends with a newline unless empty.
std::string tree_text(const std::vector<Branch>& branches, std::size_t width);

/// A space at which no line is broken, for a number and its unit; it is written as a space.
inline constexpr char kHardSpace = '\x1F';
/// A text that stays on one line where it fits: its spaces made hard.
std::string unbroken(std::string text);

/// A text broken at spaces into lines of at most `width` characters; a word longer than a line is broken too. Line
/// ends and other control characters count as spaces. At least one line.
std::vector<std::string> wrapped(std::string_view text, std::size_t width);

/// Characters of UTF-8 text: its bytes but for those that continue a character.
std::size_t characters(std::string_view text);

}  // namespace noonhouse
