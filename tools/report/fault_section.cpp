// SPDX-License-Identifier: Apache-2.0
#include "tools/report/fault_section.hpp"

#include <algorithm>

#include "tools/compare/comparison_layout.hpp"
#include "tools/faults/fault_advice.hpp"
#include "tools/faults/fault_words.hpp"
#include "tools/report/html.hpp"

namespace noonhouse {
namespace {

void add_fault_answer(std::string& out, const FaultSheet& sheet, const std::vector<RunRecord>& records) {
  const bool known = std::any_of(records.begin(), records.end(), [&](const RunRecord& record) {
    return record.scenario == sheet.scenario && record.plan == sheet.plan;
  });
  if (!known)
    add_html(out,
             "<p class=\"warning\"><strong>Careful.</strong> These failures are of the plan &quot;{}&quot; of {}, of "
             "which no run is on this page.</p>\n",
             sheet.plan, sheet.scenario);
  const std::vector<std::string> sentences = fault_answer(sheet);
  add_html(out, "<p>{} failures tried with &quot;{}&quot;. <strong>{}</strong>", sheet.faults.size(), sheet.plan,
           sentences.front());
  for (std::size_t i = 1; i < sentences.size(); ++i) add_html(out, " {}", sentences[i]);
  out += "</p>\n";
}

void add_fault_table(std::string& out, const FaultSheet& sheet, std::size_t harmful) {
  out += "<table class=\"cards\" role=\"table\"><thead role=\"rowgroup\"><tr role=\"row\">";
  for (const char* head : {"What fails", "Worst moment", "Time left", "What it costs", "Longest with"})
    add_html(out, "<th scope=\"col\" role=\"columnheader\">{}</th>", head);
  out += "</tr></thead><tbody role=\"rowgroup\">\n";
  const auto cell = [&](const char* label, const std::string& text) {
    add_html(out, "<td role=\"cell\" data-label=\"{}\">{}</td>", label, text);
  };
  for (std::size_t i = 0; i < harmful; ++i) {
    const FaultOutcome& fault = sheet.faults[i];
    add_html(out, "<tr role=\"row\"><th scope=\"row\" role=\"rowheader\">{}</th>", fault_name(fault));
    cell("Worst moment", unbroken(fault_clock(sheet, fault.worst_s)));
    cell("Time left", unbroken(grace_text(fault.worst_grace_s)));
    cell("What it costs", fault_cost_text(fault));
    cell("Longest with", best_addition_text(fault));
    out += "</tr>\n";
  }
  out += "</tbody></table>\n";
}

void add_hour_key(std::string& out) {
  out += "<ul class=\"grace-key\">";
  for (int step = 5; step >= 0; --step)
    add_html(out, "<li><i class=\"grace-{}\"></i>{}</li>", step, grace_step_text(step));
  out += "</ul>\n";
}

void add_hour_table(std::string& out, const FaultSheet& sheet, std::size_t harmful) {
  add_html(out, "<h3 id=\"failure-hours\">Time left by the hour of the failure, on {}</h3>\n", told_day_text(sheet));
  add_html(out,
           "<p class=\"soft\">Each column is a failure at that hour of the day; the time until plants come to harm. A "
           "point: no harm within {} or before the run ends.</p>\n",
           horizon_text(sheet));
  add_hour_key(out);
  out +=
      "<div class=\"scroll whole\" tabindex=\"0\" role=\"region\" aria-labelledby=\"failure-hours\"><table "
      "class=\"grace\">"
      "<thead><tr><th scope=\"col\">What fails</th>";
  for (int hour = 0; hour < 24; ++hour) add_html(out, "<th scope=\"col\">{:02}</th>", hour);
  out += "</tr></thead><tbody>\n";
  for (std::size_t i = 0; i < harmful; ++i) {
    add_html(out, "<tr><th scope=\"row\">{}</th>", fault_name(sheet.faults[i]));
    for (const double grace_s : sheet.faults[i].grace_by_hour_s)
      add_html(out, "<td class=\"grace-{}\">{}</td>", grace_step(grace_s), short_grace_text(grace_s));
    out += "</tr>\n";
  }
  out += "</tbody></table></div>\n";
}

void add_chains(std::string& out, const FaultSheet& sheet, std::size_t harmful, UnitSystem units) {
  out += "<h3>How each comes to harm</h3>\n";
  for (std::size_t i = 0; i < harmful; ++i) {
    const FaultOutcome& fault = sheet.faults[i];
    add_html(out, "<details><summary>{}, {}: {} left</summary>\n<p class=\"soft\">Newest first.</p>\n<ol>\n",
             fault_name(fault), fault_clock(sheet, fault.worst_s), grace_text(fault.worst_grace_s));
    for (const std::string& link : shown_chain(fault, units)) add_html(out, "<li>{}</li>\n", link);
    out += "</ol>";
    if (const std::string additions = additions_text(fault); !additions.empty())
      add_html(out, "\n<p>What each addition leaves after it: {}.</p>\n", additions);
    out += "</details>\n";
  }
}

void add_breaks(std::string& out, const FaultSheet& sheet) {
  if (std::all_of(sheet.faults.begin(), sheet.faults.end(), [](const FaultOutcome& f) { return f.breaks.empty(); }))
    return;
  out += "<h3>What of the house breaks that stays whole without the failure, or breaks later or less</h3>\n<ul>\n";
  for (const FaultOutcome& fault : sheet.faults)
    if (!fault.breaks.empty()) add_html(out, "<li>{}: {}.</li>\n", fault_name(fault), breaks_text(sheet, fault));
  out += "</ul>\n";
}

}  // namespace

void add_fault_section(std::string& out, const FaultSheet& sheet, const std::vector<RunRecord>& records,
                       UnitSystem units) {
  const std::size_t harmful = harmful_faults(sheet);
  out += "<section class=\"chapter\" aria-labelledby=\"failures\">\n<h2 id=\"failures\">What failures do</h2>\n";
  add_fault_answer(out, sheet, records);
  if (harmful > 0) {
    add_fault_table(out, sheet, harmful);
    add_hour_table(out, sheet, harmful);
    add_chains(out, sheet, harmful, units);
  }
  add_breaks(out, sheet);
  if (const std::string harmless = harmless_text(sheet); !harmless.empty()) add_html(out, "<p>{}</p>\n", harmless);
  add_html(out, "<p class=\"soft\">{}</p>\n", fault_search_text(sheet));
  if (const std::string next = next_step_text(sheet); !next.empty()) add_html(out, "<p>{}</p>\n", next);
  out += "</section>\n";
}

}  // namespace noonhouse
