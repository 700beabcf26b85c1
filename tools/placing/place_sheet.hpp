// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <algorithm>
#include <array>
#include <cstddef>
#include <functional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "tools/compare/comparison_layout.hpp"

/// Lines and tables that place_text.cpp and place_tables.cpp write on.
namespace noonhouse {

/// One column of a table of places: two lines of heading and a cell for each place, by its index.
struct PlaceColumn {
  std::string heading, unit;
  int width = 0;  ///< the least
  int most = 0;   ///< how wide it would like to be; numbers stand to the right, so they are never wider
  std::function<std::string(std::size_t)> cell;
  std::string meaning;  ///< for the notes under the table
};

class PlaceSheet {
 public:
  PlaceSheet(int width, bool unicode) : width_(width), unicode_(unicode) {}

  int width() const { return width_; }
  std::string_view now_mark() const { return unicode_ ? "○" : "o"; }
  std::string_view should_mark() const { return unicode_ ? "●" : "x"; }
  std::string take() { return std::move(text_); }

  /// Text of ours, its units in ASCII where the terminal knows no more.
  std::string spelled(std::string text) const {
    constexpr std::array<std::pair<std::string_view, std::string_view>, 4> kPlain{
        {{"²", "2"}, {"³", "3"}, {"µ", "u"}, {"°", "deg"}}};
    for (const auto& [full, plain] : kPlain)
      for (std::size_t at = 0; !unicode_ && (at = text.find(full)) != std::string::npos;)
        text.replace(at, full.size(), plain);
    return text;
  }
  void blank() { text_ += '\n'; }
  void paragraph(std::string_view text, int indent = 0) {
    for (const std::string& line : wrap_text(text, width_ - indent))
      text_ += std::string(static_cast<std::size_t>(indent), ' ') + line + '\n';
  }
  void heading(std::string_view text) {
    blank();
    paragraph(text);
    text_ += std::string(static_cast<std::size_t>(std::min(width_, display_width(text))), '-') + '\n';
  }
  void row(const TableCells& cells, const std::vector<int>& widths) { append_table_row(text_, cells, widths); }

 private:
  std::string text_;
  int width_ = 0;
  bool unicode_ = true;
};

/// A text at the right of a column, kept on one line.
inline std::string at_right(std::string_view text, int width) {
  return unbroken(std::string(static_cast<std::size_t>(std::max(0, width - display_width(text))), ' ') +
                  std::string(text));
}

}  // namespace noonhouse
