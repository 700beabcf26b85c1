// SPDX-License-Identifier: Apache-2.0
#include "tools/placing/place_svg.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <string_view>

#include "models/properties/constants.hpp"
#include "sim/core/errors.hpp"
#include "tools/compare/comparison_layout.hpp"
#include "tools/compare/comparison_words.hpp"
#include "tools/placing/place_svg_style.hpp"
#include "tools/placing/place_words.hpp"
#include "tools/text/markup.hpp"

namespace noonhouse {
namespace {

// Lengths are units of the drawing. Letters are sized for a wide page and half as large again on a phone, where the
// whole drawing shrinks: every line keeps room for the larger ones.
constexpr int kWidth = 640, kMargin = 14, kInner = kWidth - 2 * kMargin;
constexpr int kLineHeight = 24, kTitleHeight = 32, kGroupHeight = 30;
constexpr int kCellHeight = 34, kStripHeight = 8, kRowGap = 14;
constexpr int kArrow = 18;  // room for the mark before a name
constexpr int kTitleLetters = 40, kGroupLetters = 46, kTextLetters = 58, kNameLetters = 32;
constexpr std::size_t kMostColumns = 53;           // weeks of a year
constexpr std::size_t kMostNumbers = 14;           // columns that have room for a number
constexpr std::size_t kMostTenths = 11;            // columns that have room for its tenths
constexpr double kWarmK = 6.0, kFarBeyondK = 2.0;  // steps of lightness below and above the harm limit

/// How a cell is drawn: the band, in steps of lightness.
std::string_view fill_of(const GroupShown& group, const DayFelt& day) {
  switch (band_of(group, day)) {
    case DayBand::cold:
      return "cold";
    case DayBand::hot:
      return day.peak_k > group.harm_above_k + kFarBeyondK ? "far" : "hot";
    case DayBand::near_limit:
      return "near";
    case DayBand::below:
      break;
  }
  return day.peak_k > group.harm_above_k - kWarmK ? "warm" : "cool";
}

/// The pattern along the foot of a fill, so that the bands differ without colour; empty where there is none.
std::string strip_of(std::string_view fill) {
  return fill == "cool" || fill == "warm" ? "" : std::string(fill) + "-mark";
}

/// The drawing in the making: y is where the next thing is drawn.
struct Drawing {
  const PlaceAnswer& answer;
  std::vector<DaySpan> spans;
  std::string body;
  int y = kMargin;

  double cell() const {
    return static_cast<double>(kInner) / static_cast<double>(std::max<std::size_t>(1, spans.size()));
  }
  double x_of(std::size_t column) const { return kMargin + cell() * static_cast<double>(column); }
  void text(double x, double baseline, std::string_view look, std::string_view words) {
    body += fmt::format("<text x=\"{:.1f}\" y=\"{:.0f}\"{}>{}</text>\n", x, baseline,
                        look.empty() ? "" : fmt::format(" class=\"{}\"", look), html_escape(words));
  }
  void lines(std::string_view words, int letters, int line_height, std::string_view look, int indent = 0) {
    for (const std::string& line : wrap_text(words, letters)) {
      y += line_height;
      text(kMargin + indent, y - 7, look, line);
    }
  }
  void path(std::string_view look, std::string_view way) {
    if (!way.empty()) body += fmt::format("<path class=\"{}\" d=\"{}\"/>\n", look, way);
  }
};

std::string box(double x, double width, int top, int height = kCellHeight) {
  return fmt::format("M{:.1f} {}h{:.1f}v{}h{:.1f}z", x, top, width, height, -width);
}

std::string strip(double x, double width, int top) {
  return box(x, width, top + kCellHeight - kStripHeight, kStripHeight);
}

std::string celsius(double temperature_k, int decimals) {
  const std::string text = fmt::format("{:.{}f}", temperature_k - kZeroCelsius, decimals);
  return text.find_first_of("123456789") == std::string::npos && text[0] == '-' ? text.substr(1) : text;
}

std::string felt_words(const PlaceFelt& felt) {
  return fmt::format("{}, peak {} °C", felt.outcome, celsius(felt.peak_k, 1));
}

void add_heading(Drawing& drawing) {
  const PlaceAnswer& answer = drawing.answer;
  drawing.lines(answer.house, kTitleLetters, kTitleHeight, "title");
  const std::string plan = answer.plan.empty() ? "" : fmt::format(", plan \"{}\"", answer.plan);
  drawing.lines(run_words(answer) + plan, kTextLetters, kLineHeight, "quiet");
  drawing.lines(placing_headline(answer, UnitSystem::metric), kTextLetters, kLineHeight, "");
}

/// The cells of one place: runs of one fill are one box, all boxes of one fill one path.
void add_fills(Drawing& drawing, const std::vector<std::string_view>& fills) {
  std::map<std::string_view, std::string> boxes, strips;  // in the order of their names
  for (std::size_t begin = 0, end = 0; begin < fills.size(); begin = end) {
    while (end < fills.size() && fills[end] == fills[begin]) ++end;
    const double x = drawing.x_of(begin), width = drawing.x_of(end) - x;
    boxes[fills[begin]] += box(x, width, drawing.y);
    strips[fills[begin]] += strip(x, width, drawing.y);
  }
  for (const auto& [fill, way] : boxes) {
    drawing.path(fill, way);
    if (!strip_of(fill).empty()) drawing.path(strip_of(fill), strips[fill]);
  }
}

void add_cells(Drawing& drawing, const GroupShown& group, const std::vector<DayFelt>& felt) {
  std::vector<std::string_view> fills;
  for (const DaySpan& span : drawing.spans)
    if (span.from < felt.size()) fills.push_back(fill_of(group, worst_of(felt, span)));
  add_fills(drawing, fills);
  std::string lines;
  for (std::size_t i = 1; i < drawing.spans.size(); ++i)
    lines += fmt::format("M{:.1f} {}v{}", drawing.x_of(i), drawing.y, kCellHeight);
  drawing.path("lines", lines);
  if (drawing.spans.size() > kMostNumbers) return;
  for (std::size_t i = 0; i < fills.size(); ++i) {
    const double peak_k = worst_of(felt, drawing.spans[i]).peak_k;
    drawing.text(drawing.x_of(i) + 0.5 * drawing.cell(), drawing.y + 20, fmt::format("number middle on-{}", fills[i]),
                 celsius(peak_k, drawing.spans.size() > kMostTenths ? 0 : 1));
  }
}

void add_place(Drawing& drawing, const GroupShown& group, std::size_t p) {
  const bool now = group.stands_on == static_cast<int>(p), should = group.should_stand_on == static_cast<int>(p);
  const bool can = group.cannot[p].empty();
  if (can) drawing.text(kWidth - kMargin, drawing.y + kLineHeight - 7, "quiet end", felt_words(group.felt[p]));
  if (should) {
    const int middle = drawing.y + kLineHeight - 12;
    drawing.path("ink", fmt::format("M{} {}v14l12 -7z", kMargin, middle - 7));
  }
  drawing.lines(drawing.answer.places[p].name, kNameLetters, kLineHeight, "", should ? kArrow : 0);
  if (can) {
    add_cells(drawing, group, group.felt[p].days);
  } else {
    drawing.y -= kCellHeight - 4;
    for (const std::string& line :
         wrap_text("cannot stand here: " + text_in_units(group.cannot[p], UnitSystem::metric), kTextLetters)) {
      drawing.y += kLineHeight;
      drawing.text(kMargin, drawing.y + kCellHeight - 11, "quiet", line);
    }
  }
  if (now) drawing.path("now", box(kMargin - 1.0, kInner + 2.0, drawing.y - 1, kCellHeight + 2));
  drawing.y += kCellHeight + kRowGap / 2;
}

/// The dates under the cells, as many as have room.
void add_dates(Drawing& drawing) {
  constexpr double kDateWidth = 84.0;
  if (drawing.spans.empty()) return;
  const auto every = static_cast<std::size_t>(std::ceil(kDateWidth / drawing.cell()));
  drawing.y += kLineHeight - kRowGap / 2;
  const bool by_edges = drawing.spans.size() > kMostNumbers;  // narrow cells are dated where they begin
  for (std::size_t i = 0; i < drawing.spans.size(); i += every) {
    const double x = drawing.x_of(i) + (by_edges ? 0.0 : 0.5 * drawing.cell());
    const bool edge = by_edges || x < kMargin + 0.35 * kDateWidth;
    if (x > kWidth - kMargin - (by_edges ? 0.65 : 0.35) * kDateWidth) break;
    drawing.text(edge && !by_edges ? kMargin : x, drawing.y - 5, edge ? "quiet" : "quiet middle",
                 day_label(drawing.answer, drawing.spans[i].from));
  }
}

void add_group(Drawing& drawing, const GroupShown& group) {
  drawing.y += kRowGap;
  drawing.body += fmt::format("<path class=\"rule\" d=\"M{} {}.5h{}\"/>\n", kMargin, drawing.y, kInner);
  drawing.lines(group.name, kGroupLetters, kGroupHeight, "group");
  drawing.lines(sentence(standing_words(drawing.answer, group)), kTextLetters, kLineHeight, "");
  if (!group.why.empty())
    drawing.lines(sentence(text_in_units(group.why, UnitSystem::metric)), kTextLetters, kLineHeight, "");
  drawing.lines(fmt::format("Harmed above {}, below {}.", temperature_text(group.harm_above_k, UnitSystem::metric),
                            temperature_text(group.harm_below_k, UnitSystem::metric)),
                kTextLetters, kLineHeight, "quiet");
  drawing.y += kRowGap / 2;
  for (std::size_t p = 0; p < drawing.answer.places.size(); ++p) add_place(drawing, group, p);
  add_dates(drawing);
}

void add_legend(Drawing& drawing) {
  constexpr int kColumn = kInner / 2, kSwatch = 34;
  struct Item {
    std::string_view fill, words;
  };
  drawing.y += kRowGap;
  drawing.body += fmt::format("<path class=\"rule\" d=\"M{} {}.5h{}\"/>\n", kMargin, drawing.y, kInner);
  drawing.y += kRowGap;
  int column = 0;
  for (const Item& item :
       {Item{"cool", "more than 6 K below"}, Item{"warm", "below the harm limit"},
        Item{"near", "within 2 K of a limit"}, Item{"hot", "above the harm limit"}, Item{"far", "above it by over 2 K"},
        Item{"cold", "below the cold limit"}, Item{"now", "stands here now"}, Item{"ink", "should stand here"}}) {
    const int x = kMargin + kColumn * column;
    const std::string way =
        item.fill == "ink" ? fmt::format("M{} {}v14l12 -7z", x + 11, drawing.y + 10) : box(x, kSwatch, drawing.y);
    drawing.path(item.fill, way);
    if (item.fill != "ink" && item.fill != "now" && !strip_of(item.fill).empty())
      drawing.path(strip_of(item.fill), strip(x, kSwatch, drawing.y));
    drawing.text(x + kSwatch + 8, drawing.y + 23, "", item.words);
    column = 1 - column;
    if (column == 0) drawing.y += kCellHeight + kRowGap / 2;
  }
  const std::size_t step = drawing.spans.empty() ? 1 : drawing.spans.front().to;
  std::string note = step == 1 ? "Each cell is a day" : fmt::format("Each cell is the worst of {} days", step);
  if (drawing.spans.size() <= kMostNumbers) note += "; its number is the peak of the tissue in °C";
  drawing.lines(note + ".", kTextLetters, kLineHeight, "quiet");
}

/// The drawing in words, for who does not see it.
std::string description(const PlaceAnswer& answer) {
  std::string words = placing_headline(answer, UnitSystem::metric);
  for (const GroupShown& group : answer.groups) {
    words += fmt::format(" {}: {}", group.name, sentence(standing_words(answer, group)));
    for (std::size_t p = 0; p < answer.places.size(); ++p)
      words += fmt::format(" {}: {}.", answer.places[p].name,
                           group.cannot[p].empty() ? felt_words(group.felt[p]) : "cannot stand there");
  }
  return words;
}

}  // namespace

std::string place_svg(const PlaceAnswer& answer) {
  for (const GroupShown& group : answer.groups)
    NOON_ASSERT(group.felt.size() == answer.places.size() && group.cannot.size() == answer.places.size());
  Drawing drawing{.answer = answer, .spans = day_spans(days_felt(answer), kMostColumns), .body = ""};
  add_heading(drawing);
  for (const GroupShown& group : answer.groups) add_group(drawing, group);
  add_legend(drawing);
  const int height = drawing.y + kMargin;
  return fmt::format(
             "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {0} {1}\" role=\"img\" "
             "class=\"noonhouse-place\">\n<title>{2}</title>\n<desc>{3}</desc>\n",
             kWidth, height, html_escape(fmt::format("Where the plants of {} should stand", answer.house)),
             html_escape(description(answer))) +
         std::string(kPlaceSvgStyle) +
         fmt::format("<rect class=\"paper\" width=\"{}\" height=\"{}\"/>\n", kWidth, height) + drawing.body +
         "</svg>\n";
}

}  // namespace noonhouse
