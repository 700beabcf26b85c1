// SPDX-License-Identifier: Apache-2.0
#include "tools/report/data_table.hpp"

#include <cmath>

#include "tools/compare/comparison_words.hpp"
#include "tools/report/html.hpp"

namespace noonhouse {
namespace {

constexpr double kMostRows = 50.0;

/// The span of one row [s].
double row_span_s(double duration_s) {
  for (const double hours : {1.0, 2.0, 3.0, 6.0, 12.0, 24.0}) {
    if (duration_s / 3600.0 / hours <= kMostRows) return hours * 3600.0;
  }
  return std::ceil(duration_s / 86400.0 / kMostRows) * 86400.0;
}

std::string range_text(double low, double high) {
  if (!(low <= high)) return "-";
  const std::string from = fmt::format("{:.1f}", low);
  const std::string to = fmt::format("{:.1f}", high);
  return from == to ? from : fmt::format("{} – {}", from, to);
}

/// The range of the values in [from, to), "-" where there are none.
std::string range_of(const std::vector<double>& values, std::size_t from, std::size_t to) {
  double low = kNotHappened;
  double high = kNotHappened;
  for (std::size_t i = from; i < to; ++i) {
    if (!std::isfinite(values[i])) continue;
    if (!(low <= values[i])) low = values[i];
    if (!(high >= values[i])) high = values[i];
  }
  return range_text(low, high);
}

}  // namespace

void add_data_table(std::string& out, const RunRecord& record, const Chart& chart) {
  const double span_s = row_span_s(record.duration_s);

  const std::string title = chart.group == "plants" ? "Plant temperatures" : chart.title;
  add_html(out, "<details><summary>The numbers: {} ({})</summary>\n", title, chart.unit);
  add_html(out, "<p class=\"soft\">Lowest and highest recorded in the {} from each time on.</p>\n",
           span_s <= 3600.0 ? std::string("hour") : fmt::format("{:.0f} hours", span_s / 3600.0));
  add_html(
      out,
      "<div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"The numbers: {}\"><table class=\"numbers\">",
      title);
  out += "<thead><tr><th scope=\"col\">From</th>";
  for (const ChartLine& line : chart.table) add_html(out, "<th scope=\"col\">{}</th>", line.label);
  out += "</tr></thead><tbody>\n";
  for (std::size_t from = 0; from < record.time_s.size();) {
    const double begin_s = std::floor(record.time_s[from] / span_s) * span_s;
    std::size_t to = from + 1;
    while (to < record.time_s.size() && record.time_s[to] < begin_s + span_s) ++to;
    add_html(out, "<tr><th scope=\"row\">{}</th>", clock_text(record, begin_s));
    for (const ChartLine& line : chart.table) add_html(out, "<td>{}</td>", range_of(line.values, from, to));
    out += "</tr>\n";
    from = to;
  }
  out += "</tbody></table></div></details>\n";
}

}  // namespace noonhouse
