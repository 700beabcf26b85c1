// SPDX-License-Identifier: Apache-2.0
#include "tools/places/light_svg.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>

#include "tools/places/light_words.hpp"
#include "tools/scenario/tree_text.hpp"
#include "tools/text/markup.hpp"
#include "tools/units/clock_text.hpp"

namespace noonhouse {
namespace {

// Lengths are units of the drawing. Letters are sized for a wide page and half as large again on a phone, where the
// whole drawing shrinks: every line keeps room for the larger ones.
constexpr int kWidth = 640, kMargin = 14;
constexpr int kLineHeight = 24, kTitleHeight = 32;
constexpr int kBandHeight = 26, kBandGap = 14;
constexpr int kCurveHeight = 46;
constexpr std::size_t kTitleLetters = 40, kTextLetters = 60, kNameLetters = 36;
constexpr int kStep = 5;  // minutes

constexpr std::string_view kStyle = R"(<style>
.noonhouse-light { font-family: system-ui, sans-serif; font-size: 13px; background: #fdfcf8; }
.noonhouse-light .paper { fill: #fdfcf8; }
.noonhouse-light text { fill: #1d2420; stroke: #fdfcf8; stroke-width: 4px; stroke-linejoin: round; paint-order: stroke; }
.noonhouse-light .title { font-size: 19px; font-weight: 600; }
.noonhouse-light .quiet { fill: #56605a; }
.noonhouse-light .end { text-anchor: end; }
.noonhouse-light .middle { text-anchor: middle; }
.noonhouse-light .grid { stroke: #d8d6cb; stroke-width: 1; fill: none; }
.noonhouse-light .ground { stroke: #8b938d; stroke-width: 1; fill: none; }
.noonhouse-light .curve { stroke: #1d2420; stroke-width: 1.5; fill: none; stroke-linejoin: round; }
.noonhouse-light .direct, .noonhouse-light .sun { fill: #f2a900; }
.noonhouse-light .flecked { fill: url(#noonhouse-light-flecks); }
.noonhouse-light .soft { fill: #6d90a4; }
.noonhouse-light .dim { fill: #3a4850; }
@media (prefers-color-scheme: dark) {
.noonhouse-light { background: #141815; }
.noonhouse-light .paper { fill: #141815; }
.noonhouse-light text { fill: #e9ece6; stroke: #141815; }
.noonhouse-light .quiet { fill: #aab4ac; }
.noonhouse-light .grid { stroke: #2f3631; }
.noonhouse-light .ground { stroke: #7d867f; }
.noonhouse-light .curve { stroke: #e9ece6; }
.noonhouse-light .direct, .noonhouse-light .sun { fill: #ffc53d; }
.noonhouse-light .soft { fill: #6d9ab3; }
.noonhouse-light .dim { fill: #56666f; }
}
@media (max-width: 480px) {
.noonhouse-light { font-size: 20px; }
.noonhouse-light .title { font-size: 26px; }
}
</style>
<defs><pattern id="noonhouse-light-flecks" width="4" height="4" patternUnits="userSpaceOnUse"><rect class="sun" width="2" height="4"/></pattern></defs>
)";

std::string_view class_of(LightState state) {
  switch (state) {
    case LightState::direct:
      return "direct";
    case LightState::flecked:
      return "flecked";
    case LightState::soft:
      return "soft";
    case LightState::dim:
      return "dim";
    case LightState::dark:
      break;
  }
  return "";
}

/// How far each kind of light fills its band from the ground up; dark leaves the ground bare.
int height_of(LightState state) {
  switch (state) {
    case LightState::direct:
    case LightState::flecked:
      return kBandHeight;
    case LightState::soft:
      return kBandHeight / 2;
    case LightState::dim:
      return kBandHeight / 5;
    case LightState::dark:
      break;
  }
  return 0;
}

/// The drawing in the making: y is where the next thing is drawn, and time runs from margin to margin.
struct Drawing {
  const DayLight& day;
  int from = 0, to = kMinutesOfDay;  // minutes, whole hours
  std::string body;
  int y = kMargin;

  double x_of(int minute) const {
    return kMargin + static_cast<double>(kWidth - 2 * kMargin) * (minute - from) / (to - from);
  }
  /// Text on a line that ends at y; `look` are classes of the style sheet.
  void text(double x, int baseline, std::string_view look, std::string_view words) {
    body += fmt::format("<text x=\"{:.1f}\" y=\"{}\"{}>{}</text>\n", x, baseline,
                        look.empty() ? "" : fmt::format(" class=\"{}\"", look), html_escape(words));
  }
  void lines(std::string_view words, std::size_t letters, int line_height, std::string_view look) {
    for (const std::string& line : wrapped(words, letters)) {
      y += line_height;
      text(kMargin, y - 6, look, line);
    }
  }
  void light(LightState state, double x, double width, int ground) {
    if (height_of(state) == 0) return;
    body += fmt::format("<rect class=\"{}\" x=\"{:.1f}\" y=\"{}\" width=\"{:.1f}\" height=\"{}\"/>\n", class_of(state),
                        x, ground - height_of(state), width, height_of(state));
  }
  void ground(int at) {
    body += fmt::format("<path class=\"ground\" d=\"M{} {}.5H{}\"/>\n", kMargin, at, kWidth - kMargin);
  }
};

void add_heading(Drawing& drawing) {
  const DayLight& day = drawing.day;
  drawing.lines(day.house, kTitleLetters, kTitleHeight, "title");
  const std::string plan = day.plan.empty() ? "" : fmt::format(", plan \"{}\"", day.plan);
  drawing.lines(format_date(day.date) + ", " + sky_text(day) + plan, kTextLetters, kLineHeight, "quiet");
  drawing.lines(horizon_text(day), kTextLetters, kLineHeight, "quiet");
  drawing.y += kBandGap;
}

/// The light outdoors, as high as the day's most.
void add_curve(Drawing& drawing) {
  const double most_w_m2 = outdoor_most_w_m2(drawing.day);
  drawing.y += kLineHeight;
  drawing.text(kMargin, drawing.y - 7, "", "outdoors");
  drawing.text(kWidth - kMargin, drawing.y - 7, "quiet end",
               fmt::format("{:.1f} mol/m², at most {:.0f} W/m²", outdoor_dli_mol_m2(drawing.day), most_w_m2));
  const int ground = drawing.y + kCurveHeight;
  std::string path;
  for (int minute = drawing.from; minute < drawing.to; minute += kStep) {
    const int middle = minute + kStep / 2;
    const double w_m2 = drawing.day.outdoors_w_m2[static_cast<std::size_t>(middle)];
    path += fmt::format("{}{:.1f} {:.1f}", path.empty() ? 'M' : 'L',
                        drawing.x_of(minute) + 0.5 * (drawing.x_of(kStep) - drawing.x_of(0)),
                        ground - (most_w_m2 > 0.0 ? kCurveHeight * w_m2 / most_w_m2 : 0.0));
  }
  drawing.ground(ground);
  drawing.body += fmt::format("<path class=\"curve\" d=\"{}\"/>\n", path);
  drawing.y = ground + kBandGap;
}

std::string sun_words(const PlaceSummary& summary) {
  return fmt::format("sun {:.1f} h, {:.1f} mol/m²", summary.direct_h, summary.dli_mol_m2);
}

void add_band(Drawing& drawing, const PlaceLight& place) {
  const std::string words = sun_words(summary_of(place));
  drawing.text(kWidth - kMargin, drawing.y + kLineHeight - 7, "quiet end", words);
  for (const std::string& line : wrapped(place.name, kNameLetters)) {
    drawing.y += kLineHeight;
    drawing.text(kMargin, drawing.y - 7, "", line);
  }
  const int ground = drawing.y + kBandHeight;
  for (int minute = drawing.from; minute < drawing.to;) {
    const LightState state = light_state(drawing.day, place, minute, minute + kStep);
    int end = minute + kStep;
    while (end < drawing.to && light_state(drawing.day, place, end, end + kStep) == state) end += kStep;
    drawing.light(state, drawing.x_of(minute), drawing.x_of(end) - drawing.x_of(minute), ground);
    minute = end;
  }
  drawing.ground(ground);
  drawing.y = ground + kBandGap;
}

/// Hours under the bands, and their lines for behind all that was drawn from `top` on.
std::string add_hours(Drawing& drawing, int top) {
  const int every = drawing.to - drawing.from > 16 * kMinutesOfHour ? 3 * kMinutesOfHour : 2 * kMinutesOfHour;
  const int bottom = drawing.y - kBandGap + 6;
  std::string lines;
  drawing.y += kLineHeight;
  for (int minute = (drawing.from + every - 1) / every * every; minute <= drawing.to; minute += every) {
    const double x = drawing.x_of(minute);
    lines += fmt::format("M{:.1f} {}V{}", x, top, bottom);
    const std::string_view side = minute == drawing.from ? "quiet"
                                  : minute == drawing.to ? "quiet end"
                                                         : "quiet middle";
    drawing.text(x, drawing.y - 7, side, fmt::format("{:02}", minute / kMinutesOfHour));
  }
  return fmt::format("<path class=\"grid\" d=\"{}\"/>\n", lines);
}

/// Two rows: the kinds with much to say come last in theirs.
void add_legend(Drawing& drawing) {
  constexpr int kColumn = 206, kSwatch = 28;
  int column = 0;
  drawing.y += kBandGap + kBandHeight;
  for (const LightState state :
       {LightState::direct, LightState::flecked, LightState::soft, LightState::dark, LightState::dim}) {
    if (column == 3) {
      column = 0;
      drawing.y += kBandHeight + kBandGap;
    }
    const int x = kMargin + kColumn * column++;
    drawing.light(state, x, kSwatch, drawing.y);
    drawing.body += fmt::format("<path class=\"ground\" d=\"M{} {}.5h{}\"/>\n", x, drawing.y, kSwatch);
    const std::string meaning = state == LightState::dim ? ": " + light_state_meaning(state) : "";
    drawing.text(x + kSwatch + 8, drawing.y - 6, "", light_state_name(state) + meaning);
  }
  drawing.y += kBandGap;
  drawing.lines(
      "Sun flecks: " + light_state_meaning(LightState::flecked) +
          fmt::format(" ({} minutes). mol/m²: photosynthetic light of the day. Hours: local standard time.", kStep),
      kTextLetters, kLineHeight, "quiet");
}

/// The drawing in words, for who does not see it.
std::string description(const DayLight& day) {
  std::string words =
      fmt::format("{}; {}. Outdoors {:.1f} mol/m².", sky_text(day), horizon_text(day), outdoor_dli_mol_m2(day));
  for (const PlaceLight& place : day.places) {
    const PlaceSummary summary = summary_of(place);
    words += fmt::format(" {}: ", place.name);
    words += summary.first_direct_minute && summary.last_direct_minute
                 ? fmt::format("sun between {} and {}, ", minute_text(*summary.first_direct_minute),
                               minute_text(*summary.last_direct_minute))
                 : "no sun, ";
    words += fmt::format("{:.1f} h in the sun, {:.1f} h in soft light, {:.1f} mol/m².", summary.direct_h,
                         summary.soft_h, summary.dli_mol_m2);
  }
  return words;
}

}  // namespace

std::string light_svg(const DayLight& day) {
  Drawing drawing{.day = day, .body = ""};
  const auto lit = lit_minutes(day);
  if (lit) {
    drawing.from = lit->first / kMinutesOfHour * kMinutesOfHour;
    drawing.to = (lit->second + kMinutesOfHour - 1) / kMinutesOfHour * kMinutesOfHour;
  }
  add_heading(drawing);
  std::string front;
  front.swap(drawing.body);
  const int top = drawing.y + kLineHeight;
  add_curve(drawing);
  for (const PlaceLight& place : day.places) add_band(drawing, place);
  const std::string hour_lines = add_hours(drawing, top);
  add_legend(drawing);
  const int height = drawing.y + kMargin;
  return fmt::format(
             "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {0} {1}\" role=\"img\" "
             "class=\"noonhouse-light\">\n<title>{2}</title>\n<desc>{3}</desc>\n",
             kWidth, height, html_escape(fmt::format("Light in {} on {}", day.house, format_date(day.date))),
             html_escape(description(day))) +
         std::string(kStyle) + fmt::format("<rect class=\"paper\" width=\"{}\" height=\"{}\"/>\n", kWidth, height) +
         hour_lines + front + drawing.body + "</svg>\n";
}

}  // namespace noonhouse
