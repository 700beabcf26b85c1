// SPDX-License-Identifier: Apache-2.0
#include "tools/placing/place_tables.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>

#include "sim/core/tick.hpp"
#include "tools/compare/comparison_words.hpp"
#include "tools/placing/place_words.hpp"

namespace noonhouse {
namespace {

constexpr int kMarkWidth = 1, kNarrowestGroup = 12;
constexpr int kBeside = kMarkWidth + kColumnGap;  // what the column of marks takes
constexpr std::size_t kMostDayColumns = 14;

std::string number_of(const std::string& quantity) { return quantity.substr(0, quantity.rfind(' ')); }
std::string degrees(double temperature_k, UnitSystem units) {
  return number_of(temperature_text(temperature_k, units));
}
std::string degree_unit(UnitSystem units) { return units == UnitSystem::us ? "°F" : "°C"; }
/// Four characters up to 9999.
std::string few_digits(double value) { return fmt::format("{:.{}f}", value, value < 99.95 ? 1 : 0); }

double mean_day(const PlaceFelt& felt, double DayFelt::*of) {
  if (felt.days.empty()) return 0.0;
  return worst_of(felt.days, {0, felt.days.size()}).*of / static_cast<double>(felt.days.size());
}
std::string hours(const PlaceFelt& felt, double DayFelt::*of) {
  return few_digits(felt.days.empty() ? 0.0 : worst_of(felt.days, {0, felt.days.size()}).*of / kSecondsPerHour);
}

int longest_name(const PlaceAnswer& answer) {
  int longest = kNarrowestGroup;
  for (const PlaceShown& place : answer.places) longest = std::max(longest, display_width(place.name));
  return longest;
}

std::string mark_of(const PlaceSheet& sheet, const GroupShown& group, std::size_t place) {
  const int here = static_cast<int>(place);
  if (here == group.should_stand_on) return std::string(sheet.should_mark());
  return here == group.stands_on ? std::string(sheet.now_mark()) : "";
}

/// Leaves out the last columns until the rest fits beside the narrowest name; says which.
std::string leave_out(const PlaceSheet& sheet, std::vector<PlaceColumn>& columns, int beside) {
  const auto needed = [&] {
    return std::accumulate(columns.begin(), columns.end(), 0,
                           [](int sum, const PlaceColumn& column) { return sum + kColumnGap + column.width; });
  };
  std::string left_out;
  while (columns.size() > 1 && needed() > sheet.width() - beside - kNarrowestGroup) {
    const PlaceColumn& last = columns.back();
    left_out = fmt::format("{}{}{}{}{}", last.heading, last.unit.empty() ? "" : " ", last.unit,
                           left_out.empty() ? "" : ", ", left_out);
    columns.pop_back();
  }
  return left_out;
}

/// Gives what is left of the width to the columns that would like more, the last first, and then to the names.
int share_width(const PlaceSheet& sheet, std::vector<PlaceColumn>& columns, int beside, int longest) {
  int left = sheet.width() - beside - kNarrowestGroup;
  for (const PlaceColumn& column : columns) left -= kColumnGap + column.width;
  const int for_names = std::min(left / 2, longest - kNarrowestGroup);  // at least half, where they need it
  int spare = left - for_names;
  for (PlaceColumn& column : columns) {
    const int more = std::clamp(column.most - column.width, 0, spare);
    column.width += more;
    spare -= more;
  }
  return std::min(longest, kNarrowestGroup + for_names + spare);
}

std::string placed(const PlaceColumn& column, const std::string& text) {
  return column.most > 0 ? text : at_right(text, column.width);  // text to the left, numbers to the right
}

/// Places as rows. A place for which `cannot` says why not has that in place of its cells.
void add_table(PlaceSheet& sheet, const PlaceAnswer& answer, std::vector<PlaceColumn> columns,
               const std::function<std::string(std::size_t)>& mark, const std::vector<std::string>& cannot) {
  const int beside = mark ? kBeside : 0;
  const std::string left_out = leave_out(sheet, columns, beside);
  const int name_width = share_width(sheet, columns, beside, longest_name(answer));
  std::vector<int> widths;
  if (mark) widths.push_back(kMarkWidth);
  widths.push_back(name_width);
  for (const PlaceColumn& column : columns) widths.push_back(column.width);
  const auto row = [&](const std::string& sign, const std::string& name, auto&& cell) {
    TableCells cells;
    if (mark) cells.push_back(sign);
    cells.push_back(name);
    for (const PlaceColumn& column : columns) cells.push_back(placed(column, cell(column)));
    sheet.row(cells, widths);
  };
  row("", "Place", [](const PlaceColumn& column) { return column.heading; });
  row("", "", [&](const PlaceColumn& column) { return sheet.spelled(column.unit); });
  const std::vector<int> reason_widths{kMarkWidth, name_width, sheet.width() - kBeside - name_width - kColumnGap};
  for (std::size_t p = 0; p < answer.places.size(); ++p) {
    const std::string& name = answer.places[p].name;
    if (!cannot.empty() && !cannot[p].empty())
      sheet.row({mark(p), name, sheet.spelled("cannot stand: " + cannot[p])}, reason_widths);
    else
      row(mark ? mark(p) : "", name, [&](const PlaceColumn& column) { return column.cell(p); });
  }
  std::string notes;
  for (const PlaceColumn& column : columns)
    if (!column.meaning.empty()) notes += (notes.empty() ? "" : " ") + column.meaning;
  if (!left_out.empty()) notes += fmt::format(" Left out, for want of width: {}.", left_out);
  if (!notes.empty()) sheet.paragraph(sheet.spelled(notes));
}

std::vector<PlaceColumn> felt_columns(const GroupShown& group, UnitSystem units) {
  const auto text = [&group](auto&& of) { return [&group, of](std::size_t p) { return of(group.felt[p]); }; };
  const auto hours_of = [&](double DayFelt::*of) { return text([of](const PlaceFelt& f) { return hours(f, of); }); };
  std::vector<PlaceColumn> columns;
  columns.push_back({"Outcome", "", 8, 8, text([](const PlaceFelt& f) { return f.outcome; }), ""});
  columns.push_back({"Peak", degree_unit(units), 5, 0,
                     text([units](const PlaceFelt& f) { return degrees(f.peak_k, units); }), "Peak: of the tissue."});
  columns.push_back({"Hot", "h", 4, 0, hours_of(&DayFelt::hot_s), "Hot: hours above the harm limit."});
  const bool cold = std::any_of(group.felt.begin(), group.felt.end(), [](const PlaceFelt& f) {
    return std::any_of(f.days.begin(), f.days.end(), [](const DayFelt& day) { return day.cold_s > 0.0; });
  });
  if (cold) columns.push_back({"Cold", "h", 4, 0, hours_of(&DayFelt::cold_s), "Cold: hours below the cold limit."});
  columns.push_back({"Dry", "h", 4, 0, hours_of(&DayFelt::dry_s), "Dry: hours of air drier than it likes."});
  columns.push_back({"Wet", "h", 4, 0, hours_of(&DayFelt::wet_s), "Wet: hours of free water on it."});
  columns.push_back({"DLI", "mol", 4, 0,
                     text([](const PlaceFelt& f) { return few_digits(mean_day(f, &DayFelt::light_mol_m2)); }),
                     "DLI: photosynthetic light a day, mol/m²."});
  columns.push_back({"Day", "h", 4, 0, text([](const PlaceFelt& f) {
                       return few_digits(mean_day(f, &DayFelt::lit_s) / kSecondsPerHour);
                     }),
                     "Day: hours of light a day."});
  PlaceColumn worst{
      "Worst", "", 10, 10, text(worst_hazard_text), "Worst: the hazard that decides, its dose over the next mark."};
  for (const PlaceFelt& felt : group.felt) worst.most = std::max(worst.most, display_width(worst_hazard_text(felt)));
  columns.push_back(std::move(worst));
  return columns;
}

std::string_view band_mark(DayBand band) {
  switch (band) {
    case DayBand::hot:
      return "!";
    case DayBand::near_limit:
      return "~";
    case DayBand::cold:
      return "*";
    case DayBand::below:
      break;
  }
  return "";
}

std::string limits_words(const GroupShown& group, UnitSystem units) {
  const auto limit = [&](double k) { return unbroken(temperature_text(k, units)); };
  return fmt::format("! above the harm limit ({}), ~ within {} of a limit, * below the cold limit ({}).",
                     limit(group.harm_above_k),
                     unbroken(units == UnitSystem::us ? fmt::format("{:.1f} °F", 1.8 * kNearLimitK)
                                                      : fmt::format("{:.0f} K", kNearLimitK)),
                     limit(group.harm_below_k));
}

}  // namespace

void add_felt_table(PlaceSheet& sheet, const PlaceAnswer& answer, const GroupShown& group, UnitSystem units) {
  std::vector<std::string> cannot;
  for (const std::string& why : group.cannot) cannot.push_back(text_in_units(why, units));
  add_table(
      sheet, answer, felt_columns(group, units), [&](std::size_t p) { return mark_of(sheet, group, p); }, cannot);
  const int now = group.stands_on, should = group.should_stand_on;
  if (now == kNowhere && should == kNowhere) return;
  const bool both = now == should;
  std::string marks;
  if (now != kNowhere && !both) marks = fmt::format("{} stands there now", sheet.now_mark());
  if (should != kNowhere)
    marks += fmt::format("{}{} {}should stand there", marks.empty() ? "" : ", ", sheet.should_mark(),
                         both ? "stands and " : "");
  sheet.paragraph(marks + ".");
}

void add_day_table(PlaceSheet& sheet, const PlaceAnswer& answer, const GroupShown& group, UnitSystem units) {
  constexpr int kNumber = 5, kCell = kNumber + 1;
  std::size_t days = 0;
  for (const PlaceFelt& felt : group.felt) days = std::max(days, felt.days.size());
  if (days == 0) return;
  const std::vector<DaySpan> spans = day_spans(days, kMostDayColumns);
  const std::size_t step = spans.front().to;
  const int columns = static_cast<int>(spans.size());
  const int most = (sheet.width() - kBeside - kNarrowestGroup - kColumnGap + 1) / (kCell + 1);
  const int tables = (columns + most - 1) / most, at_once = (columns + tables - 1) / tables;
  const int rest = at_once * (kCell + 1) - 1;
  const int name_width = std::min(longest_name(answer), sheet.width() - kBeside - kColumnGap - rest);
  sheet.blank();
  sheet.paragraph(sheet.spelled(fmt::format(
      "Peak of its tissue {}, {}:", step == 1 ? "day by day" : fmt::format("in each {} days from the date on", step),
      degree_unit(units))));
  const std::vector<int> widths{kMarkWidth, name_width, rest};
  for (int from = 0; from < columns; from += at_once) {
    const int to = std::min(columns, from + at_once);
    const auto cells = [&](auto&& cell) {
      std::string line;
      for (int i = from; i < to; ++i) line += (i > from ? " " : "") + cell(spans[static_cast<std::size_t>(i)]);
      return unbroken(line);
    };
    if (from > 0) sheet.blank();
    sheet.row({"", "", cells([&](DaySpan span) { return fmt::format("{:<6}", day_label(answer, span.from)); })},
              widths);
    for (std::size_t p = 0; p < answer.places.size(); ++p) {
      const std::vector<DayFelt>& felt = group.felt[p].days;
      if (!group.cannot[p].empty() || felt.empty()) continue;
      const auto cell = [&](DaySpan span) -> std::string {
        if (span.from >= felt.size()) return fmt::format("{:>5} ", "-");
        const DayFelt day = worst_of(felt, span);
        return fmt::format("{:>5}{:<1}", degrees(day.peak_k, units), band_mark(band_of(group, day)));
      };
      sheet.row({mark_of(sheet, group, p), answer.places[p].name, cells(cell)}, widths);
    }
  }
  sheet.paragraph(sheet.spelled(limits_words(group, units)));
}

void add_hour_tables(PlaceSheet& sheet, const PlaceAnswer& answer, UnitSystem units) {
  constexpr int kNumber = 5;
  constexpr std::size_t kFirst = 6, kEnd = 22;  // hours of a grower's day
  if (answer.places.front().hour_air_k.size() < kEnd) return;
  const int name_width = std::min(longest_name(answer), sheet.width() / 2);
  const int fits = std::max(1, (sheet.width() - name_width - kColumnGap + 1) / (kNumber + 1));
  const std::size_t step = (kEnd - kFirst + static_cast<std::size_t>(fits) - 1) / static_cast<std::size_t>(fits);
  const auto line = [&](auto&& cell) {
    std::string out;
    for (std::size_t hour = kFirst; hour < kEnd; hour += step)
      out += (hour > kFirst ? " " : "") + fmt::format("{:>5}", cell(hour));
    return unbroken(out);
  };
  const auto table = [&](const std::string& words, auto&& cell) {
    sheet.blank();
    sheet.paragraph(sheet.spelled(words));
    const std::string head = line([](std::size_t hour) { return fmt::format("{:02}:00", hour); });
    const std::vector<int> widths{name_width, display_width(head)};
    sheet.row({"", head}, widths);
    for (const PlaceShown& place : answer.places)
      sheet.row({place.name, line([&](std::size_t hour) { return cell(place, hour); })}, widths);
  };
  table(fmt::format("Air in the hour from then on, {}:", degree_unit(units)),
        [&](const PlaceShown& p, std::size_t hour) { return degrees(p.hour_air_k[hour], units); });
  table("Photosynthetic light, µmol/(m² s):",
        [](const PlaceShown& p, std::size_t hour) { return fmt::format("{:.0f}", 1e6 * p.hour_par_mol_m2_s[hour]); });
  table("Vapour pressure deficit, kPa:",
        [](const PlaceShown& p, std::size_t hour) { return fmt::format("{:.2f}", 1e-3 * p.hour_deficit_pa[hour]); });
}

void add_place_table(PlaceSheet& sheet, const PlaceAnswer& answer, UnitSystem units) {
  const auto of = [&](auto&& text) { return [&answer, text](std::size_t p) { return text(answer.places[p]); }; };
  std::vector<PlaceColumn> columns;
  columns.push_back({"Peak", degree_unit(units), 5, 0,
                     of([units](const PlaceShown& p) { return degrees(p.peak_air_k, units); }),
                     "Peak and mean: of the air."});
  columns.push_back({"Mean", degree_unit(units), 5, 0,
                     of([units](const PlaceShown& p) { return degrees(p.mean_air_k, units); }), ""});
  columns.push_back({"DLI", "mol", 4, 0, of([](const PlaceShown& p) { return few_digits(p.light_mol_m2); }),
                     "DLI: photosynthetic light a day, mol/m²."});
  columns.push_back({"Sun", "h", 4, 0, of([](const PlaceShown& p) { return few_digits(p.direct_h); }),
                     "Sun: hours of direct sun a day."});
  columns.push_back({"Room", "", 9, 0, of([&sheet, units](const PlaceShown& p) {
                       return sheet.spelled(format_quantity(p.room_m2, Dimension::area, units));
                     }),
                     ""});
  columns.push_back(
      {"Height", "", 7, 0, of([units](const PlaceShown& p) { return height_text(p.height_m, units); }), ""});
  PlaceColumn bay{"Bay", "", 6, 6, of([](const PlaceShown& p) { return p.bay; }), ""};
  for (const PlaceShown& place : answer.places) bay.most = std::max(bay.most, display_width(place.bay));
  columns.push_back(std::move(bay));
  add_table(sheet, answer, std::move(columns), nullptr, {});
}

}  // namespace noonhouse
