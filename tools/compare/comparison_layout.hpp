// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <string_view>
#include <vector>

namespace noonhouse {

/// Columns that a terminal needs for UTF-8 text: combining marks none, wide East Asian characters and
/// pictures two, control characters none, all else one.
int display_width(std::string_view text);

/// The text broken between words into lines of at most `width` columns; a longer word is cut. Control
/// characters (a name could carry terminal commands) become spaces. Never empty.
std::vector<std::string> wrap_text(std::string_view text, int width);

/// The text with its spaces made unbreakable: wrap_text keeps it on one line where it fits, and writes
/// plain spaces in the end.
std::string unbroken(std::string_view text);

using TableCells = std::vector<std::string>;
inline constexpr int kColumnGap = 2;

/// Appends one row of a table, each cell wrapped into its column's width, two columns between them, no
/// spaces at line ends. As many widths as cells.
void append_table_row(std::string& out, const TableCells& row, const std::vector<int>& widths);

}  // namespace noonhouse
