// SPDX-License-Identifier: Apache-2.0
#include "tools/report/heat_section.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "sim/core/tick.hpp"
#include "tools/compare/comparison_words.hpp"
#include "tools/report/html.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {
namespace {

constexpr std::size_t kMostRowsShown = 50;
constexpr double kMostTimes = 7.0;  ///< written under the picture; as many fit on a phone

/// The spacing of the times under a picture [s].
double time_spacing_s(double length_s) {
  for (const double hours : {1.0, 3.0, 6.0, 12.0, 24.0, 48.0, 96.0, 168.0, 336.0, 720.0, 1440.0})
    if (length_s <= kMostTimes * hours * kSecondsPerHour) return hours * kSecondsPerHour;
  return std::ceil(length_s / kSecondsPerDay / kMostTimes) * kSecondsPerDay;
}

void add_times(std::string& out, const RunRecord& record) {
  const double begin_s = record.ledger.front().begin_s, length_s = ledger_length_s(record);
  const double spacing_s = time_spacing_s(length_s);
  const double clock_s = start_of_clock_s(record);  // times stand at round hours of the clock
  out += "<div class=\"times\">";
  for (double k = std::ceil((begin_s + clock_s) / spacing_s); k * spacing_s - clock_s < begin_s + length_s; k += 1.0) {
    const double time_s = k * spacing_s - clock_s;
    const std::string clock = clock_text(record, time_s);
    const std::size_t gap = clock.rfind(' ');
    add_html(out, "<span style=\"left:{:.3f}%\">{}</span>", 100.0 * (time_s - begin_s) / length_s,
             spacing_s < kSecondsPerDay ? clock.substr(gap + 1) : clock.substr(0, gap));
  }
  out += "</div>\n";
}

void add_picture(std::string& out, const RunRecord& record, const HeatScale& scale) {
  add_html(out,
           "<div class=\"heat\" role=\"img\" aria-label=\"Where the sun's heat went by the hour with {}; its amounts "
           "stand in the list and table that follow\">\n",
           record.plan);
  out += "<div class=\"sheet\">";
  for (const HeatMark& mark : heat_marks(scale))
    add_html(out, "<span class=\"mark\" style=\"top:{:.2f}%\">{}</span>", 100.0 * mark.below_top, mark.text);
  out += heat_svg(record, scale) + "</div>\n";
  add_times(out, record);
  out += "</div>\n";
}

void add_key(std::string& out, const RunRecord& record) {
  out += "<p class=\"soft\">On the mean day, from the zero line outward:</p>\n<ul class=\"heat key\">\n";
  add_html(out, "<li><i class=\"sun\"></i><span>taken up from the sun</span> <b>{}</b></li>\n", sun_text(record));
  for (const HeatLineWords& words : kHeatLineWords) {
    if (!has_heat(record, words.line)) continue;
    add_html(out, "<li><i class=\"{}\"></i><span>{}</span> <b>{}</b></li>\n", words.key, words.words,
             heat_text(record, words.line));
  }
  out += "</ul>\n";
}

void add_numbers(std::string& out, const RunRecord& record) {
  const std::vector<HeatColumn> columns = heat_columns(record, kMostRowsShown);
  const auto cell = [&](double flow_w, const HeatColumn& column) {
    const double kwh = flow_w * (column.end_s - column.begin_s) / kJoulesPerKilowattHour;
    add_html(out, "<td>{:.2f}</td>", std::round(100.0 * kwh) / 100.0 + 0.0);  // no minus on what is shown as nothing
  };
  out +=
      "<details><summary>The numbers: where the sun's heat went (kWh)</summary>\n<div class=\"scroll\" tabindex=\"0\" "
      "role=\"region\" aria-label=\"The numbers: where the sun's heat went\"><table class=\"numbers\"><thead><tr><th "
      "scope=\"col\">From</th><th scope=\"col\">taken up from the sun</th>";
  for (const HeatLineWords& words : kHeatLineWords)
    if (has_heat(record, words.line)) add_html(out, "<th scope=\"col\">{}</th>", words.words);
  out += "</tr></thead><tbody>\n";
  for (const HeatColumn& column : columns) {
    add_html(out, "<tr><th scope=\"row\">{}</th>", clock_text(record, column.begin_s));
    cell(column.sun_w, column);
    for (std::size_t i = 0; i < kHeatLines; ++i)
      if (has_heat(record, kHeatLineWords[i].line)) cell(column.line_w[i], column);
    out += "</tr>\n";
  }
  out += "</tbody></table></div></details>\n";
}

}  // namespace

void add_heat_section(std::string& out, const RunRecord& record, const HeatScale& scale) {
  if (record.ledger.empty()) return;
  out +=
      "<h3>Where the sun's heat went</h3>\n<p class=\"soft\">Colours above the zero line are where heat went, below it "
      "where heat came back from; above less below is what the sun brought, the outline.</p>\n";
  add_html(out, "<p class=\"soft\">{}</p>\n", kSunNote);
  add_picture(out, record, scale);
  add_key(out, record);
  add_numbers(out, record);
}

}  // namespace noonhouse
