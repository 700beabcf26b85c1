// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <algorithm>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "tools/places/place_summary.hpp"
#include "tools/scenario/tree_text.hpp"

/// Lines of text with a column of names: what the pictures and tables of light_text.cpp are written on.
namespace noonhouse {

inline constexpr int kGap = 2;
inline constexpr int kNarrowestName = 14;
inline constexpr std::string_view kOutdoors = "outdoors";

inline int width_of(std::string_view text) { return static_cast<int>(characters(text)); }
inline std::string spaces(int count) { return std::string(static_cast<std::size_t>(std::max(0, count)), ' '); }

/// The more light, the more of the character's height is filled: it reads the same on dark and light terminals.
inline std::string_view mark_of(LightState state, bool unicode) {
  switch (state) {
    case LightState::direct:
      return unicode ? "█" : "#";
    case LightState::flecked:
      return unicode ? "▚" : "%";
    case LightState::soft:
      return unicode ? "▄" : "=";
    case LightState::dim:
      return unicode ? "▁" : "_";
    case LightState::dark:
      break;
  }
  return unicode ? "·" : ".";
}

/// The sheet being written: what is on it, how wide it may be, and how it marks light.
class TextSheet {
 public:
  TextSheet(const DayLight& day, int width, bool unicode) : day_(day), width_(width), unicode_(unicode) {
    longest_name_ = width_of(kOutdoors);
    for (const PlaceLight& place : day.places) longest_name_ = std::max(longest_name_, width_of(place.name));
  }

  const DayLight& day() const { return day_; }
  int width() const { return width_; }
  std::string_view mark(LightState state) const { return mark_of(state, unicode_); }
  /// Text of ours, its units in ASCII where the terminal knows no more.
  std::string spelled(std::string text) const {
    for (const auto& [full, plain] : {std::pair("²", "2"), std::pair("µ", "u")})
      for (std::size_t at = 0; !unicode_ && (at = text.find(full)) != std::string::npos;) text.replace(at, 2, plain);
    return text;
  }
  std::string take() { return std::move(text_); }

  void blank() { text_ += '\n'; }
  void line(std::string text) {
    text.erase(text.find_last_not_of(' ') + 1);
    text_ += text + '\n';
  }
  void paragraph(const std::string& text) {
    for (const std::string& part : wrapped(text, static_cast<std::size_t>(width_))) line(part);
  }
  /// A name in a column of its own, in several lines where it is long, and the rest beside its first line.
  void row(std::string_view name, int name_width, const std::string& rest) {
    std::vector<std::string> parts = wrapped(name, static_cast<std::size_t>(name_width));
    line(parts[0] + spaces(name_width + kGap - width_of(parts[0])) + rest);
    std::string more;
    for (std::size_t i = 1; i < parts.size(); ++i) more += parts[i] + ' ';
    if (more.empty()) return;
    for (const std::string& part : wrapped(more, static_cast<std::size_t>(name_width - kGap)))
      line(spaces(kGap) + part);
  }
  /// The width of names that leaves `wanted` characters beside them, or as much as there is.
  int name_width(int wanted) const { return std::min(longest_name_, std::max(kNarrowestName, width_ - kGap - wanted)); }
  int beside(int name_width) const { return width_ - kGap - name_width; }

 private:
  const DayLight& day_;
  std::string text_;
  int width_ = 0, longest_name_ = 0;
  bool unicode_ = true;
};

}  // namespace noonhouse
