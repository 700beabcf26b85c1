// SPDX-License-Identifier: Apache-2.0
#include "tools/report/plan_section.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "tools/compare/comparison_layout.hpp"
#include "tools/compare/comparison_words.hpp"
#include "tools/report/data_table.hpp"
#include "tools/report/heat_section.hpp"
#include "tools/report/html.hpp"
#include "tools/report/supply_section.hpp"

namespace noonhouse {
namespace {

/// The outcome as a word with a mark beside it, so that colour is never alone.
void add_outcome(std::string& out, const PlantOutcome& plant) {
  const char* mark = plant.outcome == "kept"       ? "●"
                     : plant.outcome == "strained" ? "◐"
                     : plant.outcome == "harmed"   ? "▲"
                                                   : "✕";
  add_html(out, "<span class=\"outcome {}\"><span aria-hidden=\"true\">{}</span> {}</span>", plant.outcome, mark,
           plant.outcome);
}

/// "3.2 h"; of a plant that is kept also how close it came, "0.0 h, 0.5 K to spare".
std::string beyond_text(const PlantOutcome& plant, UnitSystem units) {
  const std::string spare = plant.outcome == "kept" ? spare_text(plant, units) : "";
  return hours_text(plant.hours_beyond) + (spare.empty() ? "" : ", " + unbroken(spare));
}

void add_plants(std::string& out, const RunRecord& record, UnitSystem units) {
  if (record.plants.empty()) return;
  out += "<h3>Plant by plant</h3>\n<table class=\"cards\" role=\"table\"><thead role=\"rowgroup\"><tr role=\"row\">";
  for (const char* head : {"Plant", "Place", "Outcome", "Too hot or cold", "Hottest", "Coldest", "Why"}) {
    add_html(out, "<th scope=\"col\" role=\"columnheader\">{}</th>", head);
  }
  out += "</tr></thead><tbody role=\"rowgroup\">\n";
  for (const PlantOutcome& plant : record.plants) {
    const std::string kind = plant.kind.empty() ? "" : " (" + plant.kind + ")";
    add_html(out, "<tr role=\"row\"><th scope=\"row\" role=\"rowheader\">{}<span class=\"soft\">{}</span></th>",
             plant.name, kind);
    add_html(out, "<td role=\"cell\" data-label=\"Place\">{}</td>", place_text(plant, units));
    out += "<td role=\"cell\" data-label=\"Outcome\">";
    add_outcome(out, plant);
    add_html(out, "</td><td role=\"cell\" data-label=\"Too hot or cold\">{}</td>", beyond_text(plant, units));
    add_html(out, "<td role=\"cell\" data-label=\"Hottest\">{}, {}</td>", temperature_text(plant.peak_tissue_k, units),
             unbroken(clock_text(record, plant.peak_tissue_time_s)));
    add_html(out, "<td role=\"cell\" data-label=\"Coldest\">{}</td>", temperature_text(plant.lowest_tissue_k, units));
    add_html(out, "<td role=\"cell\" data-label=\"Why\">{}</td></tr>\n",
             plant.reason.empty() ? std::string("-") : text_in_units(plant.reason, units));
  }
  out += "</tbody></table>\n";
}

/// "12.4 h, 7 of 7 days as wanted"; the hours alone where the kind does not mind.
std::string day_length_text(const PlantOutcome& plant) {
  const int days = plant.days_long_enough + plant.days_of_wrong_length;
  if (days == 0) return hours_text(plant.day_length_h);
  return fmt::format("{}, {} of {} days as wanted", hours_text(plant.day_length_h), plant.days_long_enough, days);
}

/// What each group felt beside heat and cold.
void add_felt(std::string& out, const RunRecord& record, UnitSystem units) {
  if (record.plants.empty()) return;
  out +=
      "<h3>What each group felt</h3>\n<table class=\"cards\" role=\"table\"><thead role=\"rowgroup\"><tr role=\"row\">";
  const std::array heads{"Plant", "Light a day", "Day length",        "In dry air",
                         "Wet",   "Sunburn",     "Hottest pot walls", "Drank"};
  for (const char* head : heads) add_html(out, "<th scope=\"col\" role=\"columnheader\">{}</th>", head);
  out += "</tr></thead><tbody role=\"rowgroup\">\n";
  for (const PlantOutcome& plant : record.plants) {
    add_html(out, "<tr role=\"row\"><th scope=\"row\" role=\"rowheader\">{}</th>", plant.name);
    const std::array cells{format_quantity(plant.daily_light_mol_m2, Dimension::daily_light, units),
                           day_length_text(plant),
                           hours_text(plant.hours_dry_air),
                           hours_text(plant.hours_wet),
                           fmt::format("{:.0f} % of what marks it", 100.0 * plant.sunburn_share),
                           temperature_text(plant.peak_wall_k, units),
                           water_text(plant.transpired_kg, units)};
    for (std::size_t i = 0; i < cells.size(); ++i)
      add_html(out, "<td role=\"cell\" data-label=\"{}\">{}</td>", heads[i + 1], cells[i]);
    out += "</tr>\n";
  }
  out += "</tbody></table>\n";
}

void add_failures(std::string& out, const RunRecord& record, UnitSystem units) {
  out += "<h3>What went wrong</h3>\n";
  if (record.failures.empty()) {
    out += "<p>Nothing failed.</p>\n";
    return;
  }
  std::vector<const FailureOutcome*> failures;
  for (const FailureOutcome& failure : record.failures) failures.push_back(&failure);
  std::stable_sort(failures.begin(), failures.end(),
                   [](const FailureOutcome* a, const FailureOutcome* b) { return a->time_s < b->time_s; });
  constexpr std::size_t kMost = 12;
  out += "<ol class=\"failures\">\n";
  for (std::size_t i = 0; i < std::min(kMost, failures.size()); ++i) {
    add_html(out, "<li>{}</li>\n", failure_text(record, *failures[i], "←", units));
  }
  out += "</ol>\n";
  if (failures.size() > kMost)
    add_html(out, "<p class=\"soft\">and {} more, in the results.</p>\n", failures.size() - kMost);
}

/// The charts of one group, each an empty place that the script fills, and the tables behind them.
void add_charts(std::string& out, const PlanPage& plan, std::size_t number, const char* group, const char* heading) {
  const auto in_group = [&](const Chart& c) { return c.group == group; };
  if (std::none_of(plan.charts.begin(), plan.charts.end(), in_group)) return;
  add_html(out, "<h3>{}</h3>\n<div class=\"charts {}\">\n", heading, group);
  for (std::size_t i = 0; i < plan.charts.size(); ++i) {
    const Chart& chart = plan.charts[i];
    if (!in_group(chart)) continue;
    add_html(out, "<figure class=\"chart {}\"><figcaption>{} <span class=\"soft\">{}</span></figcaption>",
             chart.kind == ChartKind::heights ? "heights" : "lines", chart.title, chart.unit);
    add_html(out, "<div class=\"plot\" data-plan=\"{}\" data-chart=\"{}\"></div></figure>\n", number, i);
  }
  out += "</div>\n";
  for (const Chart& chart : plan.charts) {
    if (in_group(chart) && !chart.table.empty()) add_data_table(out, *plan.record, chart);
  }
}

void add_events(std::string& out, const PlanPage& plan) {
  const RunRecord& record = *plan.record;
  if (plan.events.events.empty()) return;
  add_html(out, "<details><summary>Every event of this plan ({})</summary>\n", plan.events.events.size());
  if (plan.events.left_out > 0) {
    add_html(out, "<p class=\"soft\">{} more are left out here, device actions first; the results hold all.</p>\n",
             plan.events.left_out);
  }
  out += "<div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"Events\"><table><thead><tr>";
  for (const char* head : {"When", "Kind", "Where", "What", "Because of"}) {
    add_html(out, "<th scope=\"col\">{}</th>", head);
  }
  out += "</tr></thead><tbody>\n";
  for (const ShownEvent& item : plan.events.events) {
    const RecordEvent& e = *item.event;
    add_html(out, "<tr><th scope=\"row\">{}</th><td>{}</td><td>{}</td><td>{}</td><td>", clock_text(record, e.time_s),
             e.kind, e.subject, item.what);
    for (std::size_t i = 0; i < item.chain.size(); ++i) add_html(out, "{}{}", i > 0 ? " ← " : "", item.chain[i]);
    out += "</td></tr>\n";
  }
  out += "</tbody></table></div></details>\n";
}

}  // namespace

double start_hour(const RunRecord& record) { return start_of_clock_s(record) / 3600.0; }

void add_plan_section(std::string& out, const PlanPage& plan, std::size_t number, UnitSystem units) {
  const RunRecord& record = *plan.record;
  add_html(out, "<section class=\"plan\" id=\"plan-{}\" aria-labelledby=\"plan-{}-name\">\n", number + 1, number + 1);
  add_html(out, "<h2 id=\"plan-{}-name\"><span class=\"rank\">{}</span> {}</h2>\n", number + 1, plan.place.rank,
           record.plan);
  if (!record.about.empty()) add_html(out, "<p class=\"soft\">{}</p>\n", record.about);
  add_failures(out, record, units);
  add_plants(out, record, units);
  add_felt(out, record, units);
  add_supply_section(out, record, units);
  if (!plan.charts.empty()) {
    out += "<h3>When it happened</h3>\n";
    add_html(out, "<div class=\"strip\" data-plan=\"{}\"></div>\n", number);
  }
  add_charts(out, plan, number, "air", "Air, by height");
  add_heat_section(out, record, plan.heat);
  add_charts(out, plan, number, "plants", "Plants against their limits");
  add_charts(out, plan, number, "stores", "Water and charge");
  add_events(out, plan);
  out += "</section>\n";
}

}  // namespace noonhouse
