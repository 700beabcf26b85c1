// SPDX-License-Identifier: Apache-2.0
#include "tools/report/report.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <span>
#include <string_view>

#include "tools/compare/comparison.hpp"
#include "tools/record/atomic_file.hpp"
#include "tools/report/answer_section.hpp"
#include "tools/report/chart_data.hpp"
#include "tools/report/chart_json.hpp"
#include "tools/report/event_list.hpp"
#include "tools/report/fault_section.hpp"
#include "tools/report/html.hpp"
#include "tools/report/plan_section.hpp"

namespace noonhouse {
namespace {

using Json = nlohmann::ordered_json;

// Each file is one raw string literal.
constexpr std::string_view kChartScript =
#include "tools/report/uplot.js.inc"
    ;
constexpr std::string_view kChartStyle =
#include "tools/report/uplot.css.inc"
    ;
constexpr std::string_view kPageChartsScript =
#include "tools/report/page_charts.js.inc"
    ;
constexpr std::string_view kPageScript =
#include "tools/report/page.js.inc"
    ;
constexpr std::string_view kPageStyle =
#include "tools/report/page.css.inc"
    ;

Json events_json(const ShownEvents& shown) {
  Json events = Json::array();
  for (const ShownEvent& item : shown.events) {
    const RecordEvent& e = *item.event;
    if (e.kind == "action") continue;  // in the table; as marks they would hide the rest
    events.push_back({{"hour", e.time_s / 3600.0},
                      {"kind", e.kind},
                      {"subject", e.subject},
                      {"what", item.what},
                      {"chain", item.chain}});
  }
  return events;
}

/// The length of the time axis [h], above zero also where the run broke off at once.
double shown_hours(const RunRecord& record) {
  const double recorded_s = record.time_s.empty() ? 0.0 : record.time_s.back();
  return std::max({record.duration_s, recorded_s, 1.0}) / 3600.0;
}

Json plan_json(const PlanPage& plan) {
  Json charts = Json::array();
  for (const Chart& chart : plan.charts) charts.push_back(chart_json(*plan.record, chart));
  return {{"name", plan.record->plan},
          {"hours", shown_hours(*plan.record)},
          {"start_hour", plan.start_hour},
          {"events", events_json(plan.events)},
          {"charts", charts}};
}

std::vector<PlanPage> plan_pages(const std::vector<RunRecord>& records, UnitSystem units) {
  std::vector<PlanPage> pages;
  std::vector<std::vector<Chart>> charts;
  const HeatScale heat = heat_scale(records);
  for (const RankedPlan& place : rank_plans(records)) {
    const RunRecord& record = records[place.index];
    pages.push_back({&record, place, {}, shown_events(record, units), start_hour(record), heat});
    charts.push_back(make_charts(record, units));
  }
  share_scales(charts);
  for (std::size_t i = 0; i < pages.size(); ++i) pages[i].charts = std::move(charts[i]);
  return pages;
}

/// No network by policy too: nothing may be loaded, only what stands in the page runs.
constexpr const char kHead[] =
    "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
    "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; "
    "script-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'\">\n"
    "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
    "<meta name=\"color-scheme\" content=\"light dark\">\n<title>{}</title>\n";

}  // namespace

std::string report_html(const std::vector<RunRecord>& records, UnitSystem units, const FaultSheet* faults) {
  const std::vector<PlanPage> plans = plan_pages(records, units);
  const RunRecord& first = *plans.front().record;
  std::string out;
  add_html(out, kHead, first.title.empty() ? first.scenario : first.title);
  out += fmt::format("<style>\n{}\n{}</style>\n</head>\n<body>\n", kChartStyle, kPageStyle);
  add_answer(out, records, plans, units);
  if (faults != nullptr) add_fault_section(out, *faults, records, units);
  for (std::size_t i = 0; i < plans.size(); ++i) add_plan_section(out, plans[i], i, units);
  add_origin(out, plans);
  out += "</main>\n";
  Json data = Json::array();
  for (const PlanPage& plan : plans) data.push_back(plan_json(plan));
  out += "<script type=\"application/json\" id=\"plans\">";
  out += script_json(data.dump(-1, ' ', false, Json::error_handler_t::replace));
  out += fmt::format("</script>\n<script>\n{}</script>\n", kChartScript);
  out += fmt::format("<script>\n'use strict';\n(() => {{\n{}{}}})();\n</script>\n</body>\n</html>\n", kPageChartsScript,
                     kPageScript);
  return out;
}

void write_report(const std::vector<RunRecord>& records, const std::string& path, UnitSystem units,
                  const FaultSheet* faults) {
  const std::string page = report_html(records, units, faults);
  write_file_whole(path, std::as_bytes(std::span(page)));
}

}  // namespace noonhouse
