// SPDX-License-Identifier: Apache-2.0
#include "tools/placing/season_text.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "tools/compare/comparison_layout.hpp"

namespace noonhouse {
namespace {

constexpr int kNarrowest = 72, kWidest = 140;

std::string date_of(const SeasonAnswer& answer, int day) {
  static constexpr const char* kMonths[]{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                         "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  const std::chrono::year_month_day date{std::chrono::sys_days(answer.start) + std::chrono::days(day)};
  return fmt::format("{} {}", static_cast<unsigned>(date.day()), kMonths[static_cast<unsigned>(date.month()) - 1]);
}

std::string stretch_text(const SeasonAnswer& answer, const SafeStretch& safe) {
  if (safe.all_year) return "all year";
  if (safe.never()) return "never";
  const int last = (safe.first_day + safe.days - 1) % answer.days;
  return unbroken(fmt::format("{} to {}", date_of(answer, safe.first_day), date_of(answer, last)));
}

std::string temperature(double kelvin, UnitSystem units) {
  return unbroken(format_quantity(kelvin, Dimension::temperature, units));
}

std::string on_day(double kelvin, int day, const SeasonAnswer& answer, UnitSystem units) {
  return temperature(kelvin, units) + ", " + unbroken(date_of(answer, day));
}

void paragraph(std::string& out, const std::string& text, int width) {
  for (const std::string& line : wrap_text(text, width)) out += line + "\n";
}

/// A table whose first columns take what the others leave of the width.
void table(std::string& out, const std::vector<TableCells>& rows, std::vector<int> widths, int width) {
  int taken = 0;
  for (std::size_t c = 1; c < widths.size(); ++c) taken += widths[c] + kColumnGap;
  int longest = 0;
  for (const TableCells& row : rows) longest = std::max(longest, display_width(row.front()));
  widths.front() = std::max(8, std::min(longest, width - taken));
  for (std::size_t r = 0; r < rows.size(); ++r) {
    append_table_row(out, rows[r], widths);
    if (r > 0) continue;
    TableCells rule;
    for (const int w : widths) rule.push_back(std::string(static_cast<std::size_t>(w), '-'));
    append_table_row(out, rule, widths);
  }
}

TableCells cells(const std::string& name, const PlaceSeason& s, const SeasonAnswer& answer, UnitSystem units) {
  return {name,
          stretch_text(answer, s.safe),
          std::to_string(s.safe.days),
          std::to_string(s.hot_days),
          std::to_string(s.dim_days),
          std::to_string(s.bright_days),
          on_day(s.coldest_k, s.coldest_day, answer, units),
          on_day(s.hottest_k, s.hottest_day, answer, units)};
}

/// Which kinds stand in the house for how much of the year, each at its best place.
std::string which_kinds(const SeasonAnswer& answer) {
  std::vector<std::string> all_year, part, never;
  for (const KindSeason& kind : answer.kinds) {
    const PlaceSeason& s = kind.places[kind.best];
    (s.too_low || s.safe.never() ? never : s.safe.all_year ? all_year : part).push_back(kind.kind);
  }
  std::string text;
  const auto say = [&](const char* when, const std::vector<std::string>& kinds) {
    if (!kinds.empty()) text += fmt::format("{}{}: {}.", text.empty() ? "" : " ", when, fmt::join(kinds, ", "));
  };
  say("Safe from cold all year", all_year);
  say("For a part of the year", part);
  say("Never", never);
  return text;
}

}  // namespace

std::string season_text(const SeasonAnswer& answer, UnitSystem units, int width_asked) {
  const int width = std::clamp(width_asked, kNarrowest, kWidest);
  std::string out;
  paragraph(out,
            fmt::format("{}, plan \"{}\": {} days from {}", answer.house, answer.plan, answer.days, date_of(answer, 0)),
            width);
  paragraph(out,
            fmt::format("How long each kind may stand in the house without heating. Outdoors from {} to {}.",
                        temperature(answer.coldest_outdoors_k, units), temperature(answer.hottest_outdoors_k, units)),
            width);
  const std::vector<int> widths{0, 16, 4, 4, 4, 6, 8, 8};
  const TableCells head{"",
                        "safe from cold",
                        "days",
                        "hot days",
                        "dim days",
                        "bright days",
                        "coldest of the year",
                        "hottest in the stretch"};
  out += "\nEach kind at its best place\n";
  std::vector<TableCells> best{head};
  best.front().front() = "kind and place";
  for (const KindSeason& kind : answer.kinds) {
    const PlaceSeason& s = kind.places[kind.best];
    best.push_back(cells(kind.kind + ", " + s.place, s, answer, units));
  }
  table(out, best, widths, width);
  out += "\n";
  paragraph(out, which_kinds(answer), width);
  paragraph(
      out,
      "Days are counted within the safe stretch: a hot day strains the kind by its heat alone; a dim one brings less "
      "light than the kind needs, a bright one more than it bears. The best place has the most days that are none of "
      "it. One year is not every year: leave a margin, and try a colder one.",
      width);
  for (const KindSeason& kind : answer.kinds) {
    out += "\n";
    paragraph(out,
              fmt::format("{} (harmed in hours below {} and above {})", kind.kind,
                          temperature(kind.harm_below_k, units), temperature(kind.harm_above_k, units)),
              width);
    std::vector<TableCells> rows{head};
    rows.front().front() = "place";
    for (const PlaceSeason& s : kind.places)
      rows.push_back(cells(s.too_low ? s.place + " (not enough height)" : s.place, s, answer, units));
    table(out, rows, widths, width);
  }
  return out;
}

}  // namespace noonhouse
