// SPDX-License-Identifier: Apache-2.0
#include "tools/places/light_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <numbers>
#include <string_view>
#include <utility>

#include "tools/places/light_sheet.hpp"
#include "tools/places/light_words.hpp"
#include "tools/scenario/tree_text.hpp"
#include "tools/units/clock_text.hpp"

namespace noonhouse {
namespace {

void add_heading(TextSheet& sheet, UnitSystem units) {
  const DayLight& day = sheet.day();
  sheet.paragraph(day.plan.empty() ? day.house : fmt::format("{}, plan \"{}\"", day.house, day.plan));
  const double latitude_deg = day.latitude_rad * 180.0 / std::numbers::pi;
  sheet.paragraph(
      unbroken(format_date(day.date)) + ", " + sky_text(day) + ", " + horizon_text(day) + " " +
      unbroken(fmt::format("({:.1f} degrees {},", std::fabs(latitude_deg), latitude_deg < 0.0 ? "south" : "north")) +
      " local standard time).");
  const auto number = [&](double si, Dimension dimension) {
    return unbroken(sheet.spelled(format_quantity(si, dimension, units)));
  };
  sheet.paragraph("Outdoors " + number(outdoor_dli_mol_m2(day), Dimension::daily_light) +
                  " of photosynthetic light, at most " + number(outdoor_most_w_m2(day), Dimension::irradiance) +
                  " in all.");
}

/// The minutes that a picture shows and how many of them one mark stands for.
struct Span {
  int from = 0, to = 0, step = 0;
  int columns() const { return (to - from) / step; }
};

Span span_of(std::pair<int, int> lit, int step) {
  return {lit.first / step * step, (lit.second + step - 1) / step * step, step};
}

/// The finest steps that fit beside the names; names are broken only where the coarsest of usual steps needs it.
Span fitting_span(const TextSheet& sheet, std::pair<int, int> lit) {
  const int room = sheet.beside(sheet.name_width(span_of(lit, 30).columns()));
  for (const int step : {10, 15, 20, 30}) {
    const Span span = span_of(lit, step);
    if (span.columns() <= room) return span;
  }
  return span_of(lit, kMinutesOfHour);
}

/// Hours above the columns where they begin, as many as can be told apart.
std::string hour_scale(const Span& span) {
  constexpr int kRoomOfLabel = 4;
  int every = 1;
  while (every * kMinutesOfHour < kRoomOfLabel * span.step) every *= 2;
  std::string scale;
  for (int minute = span.from; minute < span.to; minute += span.step) {
    if (minute % (every * kMinutesOfHour) != 0) continue;
    const int column = (minute - span.from) / span.step;
    if (column + 2 > span.columns()) break;
    scale += spaces(column - width_of(scale)) + fmt::format("{:02}", minute / kMinutesOfHour);
  }
  return scale;
}

void add_legend(TextSheet& sheet) {
  constexpr int kBetween = 3;
  std::string legend;
  for (const LightState state : kBrightestFirst) {
    const std::string meaning = light_state_meaning(state);
    const std::string item =
        fmt::format("{} {}{}{}", sheet.mark(state), light_state_name(state), meaning.empty() ? "" : ": ", meaning);
    if (!legend.empty() && width_of(legend) + kBetween + width_of(item) > sheet.width()) {
      sheet.paragraph(unbroken(std::exchange(legend, "")));
    }
    legend += (legend.empty() ? "" : spaces(kBetween)) + item;
    if (width_of(legend) > sheet.width()) sheet.paragraph(std::exchange(legend, ""));
  }
  if (!legend.empty()) sheet.paragraph(unbroken(legend));
}

void add_picture(TextSheet& sheet, std::pair<int, int> lit) {
  const DayLight& day = sheet.day();
  const Span span = fitting_span(sheet, lit);
  const int name_width = sheet.name_width(span.columns());
  sheet.paragraph(fmt::format("Light from {} to {}, one mark for each {} minutes:", minute_text(lit.first),
                              minute_text(lit.second), span.step));
  sheet.blank();
  sheet.row("", name_width, hour_scale(span));
  for (const PlaceLight& place : day.places) {
    std::string marks;
    for (int minute = span.from; minute < span.to; minute += span.step)
      marks += sheet.mark(light_state(day, place, minute, minute + span.step));
    sheet.row(place.name, name_width, marks);
  }
  sheet.blank();
  add_legend(sheet);
}

/// One column of the figures: two lines of heading, what it shows and what that means.
struct Figure {
  std::string_view heading, unit;
  int width = 0;
  std::function<std::string(const PlaceSummary&)> text;
  std::string_view meaning;
};

std::string clock_or_none(std::optional<int> minute) { return minute ? minute_text(*minute) : "-"; }
std::string percent(double share) { return fmt::format("{:.0f}", 100.0 * share); }

/// In the order in which they are given up from the right where the sheet is narrow.
std::vector<Figure> figures() {
  using Summary = const PlaceSummary&;
  return {
      {"DLI", "mol", 4, [](Summary s) { return fmt::format("{:.1f}", s.dli_mol_m2); },
       "DLI: photosynthetic light of the day, mol/m²."},
      {"Sun", "h", 4, [](Summary s) { return fmt::format("{:.1f}", s.direct_h); },
       "Sun h: hours in direct sun; sun on half of the place counts half."},
      {"Soft", "h", 4, [](Summary s) { return fmt::format("{:.1f}", s.soft_h); },
       "Soft h: hours of light with less than half of the place in the sun."},
      {"First", "sun", 5, [](Summary s) { return clock_or_none(s.first_direct_minute); }, ""},
      {"Last", "sun", 5, [](Summary s) { return clock_or_none(s.last_direct_minute); }, ""},
      {"Soft", "%", 4, [](Summary s) { return s.dli_mol_m2 > 0.0 ? percent(s.diffuse_share) : "-"; },
       "Soft %: share of the day's light that does not come straight from the sun."},
      {"Flecks", "%", 6, [](Summary s) { return s.first_direct_minute ? percent(s.fleck_share) : "-"; },
       "Flecks %: share of the time with sun in which it reaches only part of the place."},
      {"Most", "W/m²", 4, [](Summary s) { return fmt::format("{:.0f}", s.most_w_m2); },
       "Most: the most sunlight of any minute, W/m²."},
  };
}

std::string right(std::string_view text, int width) { return spaces(width - width_of(text)) + std::string(text); }

template <class CellText>
std::string joined(const std::vector<Figure>& columns, CellText&& text) {
  std::string line;
  for (const Figure& column : columns) line += (line.empty() ? "" : spaces(kGap)) + right(text(column), column.width);
  return line;
}

void add_figures(TextSheet& sheet) {
  std::vector<Figure> shown = figures();
  std::string left_out;
  const auto needed = [&] { return width_of(joined(shown, [](const Figure&) { return ""; })); };
  while (needed() > sheet.width() - kGap - kNarrowestName) {
    left_out =
        fmt::format("{} {}{}{}", shown.back().heading, shown.back().unit, left_out.empty() ? "" : ", ", left_out);
    shown.pop_back();
  }
  const int name_width = sheet.name_width(needed());
  sheet.row("Place", name_width, joined(shown, [](const Figure& column) { return column.heading; }));
  sheet.row("", name_width,
            joined(shown, [&](const Figure& column) { return sheet.spelled(std::string(column.unit)); }));
  for (const PlaceLight& place : sheet.day().places) {
    const PlaceSummary summary = summary_of(place);
    sheet.row(place.name, name_width, joined(shown, [&](const Figure& column) { return column.text(summary); }));
  }
  sheet.blank();
  std::string notes;
  for (const Figure& column : shown)
    if (!column.meaning.empty()) notes += std::string(column.meaning) + ' ';
  if (!left_out.empty()) notes += fmt::format("Left out, for want of width: {}.", left_out);
  sheet.paragraph(sheet.spelled(notes));
}

/// Hours [from, to) side by side. Each cell is the kind of light and its mean.
void add_hours(TextSheet& sheet, int from, int to, int name_width, int cell_width) {
  const auto micromol = [](double mol) { return std::llround(1e6 * mol); };
  const auto row = [&](std::string_view name, auto&& cell) {
    std::string cells;
    for (int hour = from; hour < to; ++hour) cells += (hour > from ? " " : "") + cell(hour * kMinutesOfHour);
    sheet.row(name, name_width, cells);
  };
  row("", [&](int minute) { return right(minute_text(minute), cell_width); });
  for (const PlaceLight& place : sheet.day().places) {
    row(place.name, [&](int minute) {
      const LightState state = light_state(sheet.day(), place, minute, minute + kMinutesOfHour);
      const auto par = micromol(mean_par_mol_m2_s(place, minute, minute + kMinutesOfHour));
      return fmt::format("{}{:>{}}", sheet.mark(state), par > 0 ? fmt::format("{}", par) : "", cell_width - 1);
    });
  }
  row(kOutdoors, [&](int minute) {
    return fmt::format("{:>{}}", micromol(outdoor_par_mol_m2_s(sheet.day(), minute, minute + kMinutesOfHour)),
                       cell_width);
  });
}

void add_hour_tables(TextSheet& sheet, std::pair<int, int> lit) {
  constexpr int kCell = 5;  // a mark and four digits: the brightest light on earth has fewer than 10 000 umol/(m2 s)
  const int first = lit.first / kMinutesOfHour, last = (lit.second + kMinutesOfHour - 1) / kMinutesOfHour;
  const int hours = last - first;
  // Names may be broken to this width where that saves a table; otherwise they get what the hours leave.
  const int least_name = std::min(sheet.name_width(0), std::max(kNarrowestName, sheet.width() / 6));
  const int most = (sheet.beside(least_name) + 1) / (kCell + 1);
  const int tables = (hours + most - 1) / most;
  const int name_width = sheet.name_width((hours + tables - 1) / tables * (kCell + 1) - 1);
  sheet.paragraph(sheet.spelled("Hour by hour: the kind of light, and the mean photosynthetic light in µmol/m²/s."));
  for (int table = 0; table < tables; ++table) {
    sheet.blank();
    add_hours(sheet, first + hours * table / tables, first + hours * (table + 1) / tables, name_width, kCell);
  }
}

}  // namespace

std::string light_text(const DayLight& day, UnitSystem units, int width, bool unicode) {
  TextSheet sheet(day, std::clamp(width, kNarrowestLightText, kWidestLightText), unicode);
  add_heading(sheet, units);
  sheet.blank();
  const auto lit = lit_minutes(day);
  if (!lit) {
    sheet.paragraph("No light on this day.");
    return sheet.take();
  }
  add_picture(sheet, *lit);
  sheet.blank();
  add_figures(sheet);
  sheet.blank();
  add_hour_tables(sheet, *lit);
  return sheet.take();
}

}  // namespace noonhouse
