// SPDX-License-Identifier: Apache-2.0
#include "tools/report/answer_section.hpp"

#include <algorithm>

#include "tools/compare/comparison_layout.hpp"
#include "tools/compare/comparison_words.hpp"
#include "tools/compare/plan_contrast.hpp"
#include "tools/report/html.hpp"

namespace noonhouse {
namespace {

/// "loses orchid; harms lettuce, basil"; empty when every plant is kept.
std::string toll_text(const RunRecord& record) {
  std::string text;
  for (const auto& [outcome, verb] : {std::pair{"lost", "loses"}, {"harmed", "harms"}, {"strained", "strains"}}) {
    std::string names;
    for (const PlantOutcome& plant : record.plants) {
      if (plant.outcome == outcome) names += (names.empty() ? "" : ", ") + plant.name;
    }
    if (!names.empty()) text += fmt::format("{}{} {}", text.empty() ? "" : "; ", verb, names);
  }
  return text;
}

void add_plan_line(std::string& out, const PlanPage& plan, std::size_t number, const std::vector<RunRecord>& records,
                   const std::vector<RankedPlan>& ranked, bool shared, UnitSystem units) {
  const RunRecord& record = *plan.record;
  const PlanTally& tally = plan.place.tally;
  add_html(out, "<li><a href=\"#plan-{}\">{}</a> keeps {} of {}", number + 1, record.plan, tally.kept, tally.plants);
  const std::string toll = toll_text(record);
  if (!toll.empty()) add_html(out, ": {}", toll);
  out += ".";
  // The headline has said why the second stands behind the first.
  if (number > 1) add_html(out, " {}", text_in_units(why_behind(records, ranked, number), units));
  const FailureOutcome* failure = shared ? first_of_its_own(record, records) : first_failure(record);
  if (failure != nullptr)
    add_html(out, " {}: {}.", shared ? "Then" : "First", failure_text(record, *failure, "←", units));
  out += "</li>\n";
}

void add_cell(std::string& out, const char* label, const std::string& text) {
  add_html(out, "<td role=\"cell\" data-label=\"{}\">{}</td>", label, text);
}

/// "1 strained, 2 lost"; "none" when every plant is kept.
std::string not_kept(const PlanTally& tally) {
  std::string text;
  for (const auto& [count, word] :
       {std::pair{tally.strained, "strained"}, {tally.harmed, "harmed"}, {tally.lost, "lost"}}) {
    if (count > 0) text += fmt::format("{}{} {}", text.empty() ? "" : ", ", count, word);
  }
  return text.empty() ? "none" : text;
}

/// The hottest layer of the house.
std::string hottest_air(const RunRecord& record, UnitSystem units) {
  const auto hotter = [](const LevelOutcome& a, const LevelOutcome& b) { return a.peak_k < b.peak_k; };
  const auto found = std::max_element(record.levels.begin(), record.levels.end(), hotter);
  if (found == record.levels.end()) return "-";
  return fmt::format("{} at {}, {}", temperature_text(found->peak_k, units), level_label(*found, units),
                     unbroken(clock_text(record, found->peak_time_s)));
}

bool any_cost(const std::vector<PlanPage>& plans) {
  return std::any_of(plans.begin(), plans.end(), [](const PlanPage& plan) { return plan.record->cost.known(); });
}

void add_plan_row(std::string& out, const PlanPage& plan, std::size_t number, UnitSystem units, bool with_cost) {
  const RunRecord& r = *plan.record;
  const PlanTally& t = plan.place.tally;
  add_html(out, "<tr role=\"row\"><th scope=\"row\" role=\"rowheader\"><span class=\"rank\">{}</span> ",
           plan.place.rank);
  add_html(out, "<a href=\"#plan-{}\">{}</a></th>", number + 1, r.plan);
  add_cell(out, "Plants kept", fmt::format("{} of {}", t.kept, t.plants));
  add_cell(out, "Not kept", not_kept(t));
  add_cell(out, "Hours too hot or cold", hours_text(t.hours_beyond));
  add_cell(out, "Hottest air", hottest_air(r, units));
  add_cell(out, "Water used", fmt::format("{}; {}", water_use_text(r.water, units), water_outlook(r)));
  const std::string lowest = lowest_charge_text(r.energy);
  const std::string when = lowest == "-" ? "" : ", " + unbroken(clock_text(r, r.energy.lowest_time_s));
  add_cell(out, "Lowest charge", lowest + when);
  add_cell(out, "Charge used", fmt::format("{}; {}", energy_text(r.energy.loads_j, units), charge_outlook(r)));
  add_cell(out, "Starts", starts_text(r));
  add_cell(out, "Failures", std::to_string(t.failures));
  if (with_cost) {
    add_cell(out, "Cost to buy", money_text(r.cost.capital, r.cost.currency));
    add_cell(out, "Cost a season", season_cost_text(r.cost));
  }
  out += "</tr>\n";
}

void add_table(std::string& out, const std::vector<PlanPage>& plans, UnitSystem units) {
  out += "<section aria-labelledby=\"side-by-side\">\n<h2 id=\"side-by-side\">Side by side</h2>\n";
  out += "<table class=\"cards\" role=\"table\"><thead role=\"rowgroup\"><tr role=\"row\">";
  const bool with_cost = any_cost(plans);
  std::vector<const char*> heads{"Plan",        "Plants kept", "Not kept",      "Hours too hot or cold",
                                 "Hottest air", "Water used",  "Lowest charge", "Charge used",
                                 "Starts",      "Failures"};
  if (with_cost) heads.insert(heads.end(), {"Cost to buy", "Cost a season"});
  for (const char* head : heads) {
    add_html(out, "<th scope=\"col\" role=\"columnheader\">{}</th>", head);
  }
  out += "</tr></thead><tbody role=\"rowgroup\">\n";
  for (std::size_t i = 0; i < plans.size(); ++i) add_plan_row(out, plans[i], i, units, with_cost);
  out += "</tbody></table>\n";
  for (const std::string& note : figure_notes()) add_html(out, "<p class=\"soft\">{}</p>\n", note);
  add_html(out, "<p class=\"soft\">{}</p>\n</section>\n", ranking_rule());
}

void add_closure(std::string& out, const RunRecord& r) {
  add_html(out, "<tr role=\"row\"><th scope=\"row\" role=\"rowheader\">{}</th>", r.plan);
  add_cell(out, "Heat", fmt::format("{:.1e}", r.closure.energy_relative));
  add_cell(out, "Water", fmt::format("{:.1e}", r.closure.water_relative));
  add_cell(out, "Charge", fmt::format("{:.1e}", r.closure.charge_relative));
  add_cell(out, "Steps", std::to_string(r.counts.steps));
  add_cell(out, "Events", std::to_string(r.counts.events));
  out += "</tr>\n";
}

void add_text_of_scenario(std::string& out, const RunRecord& record) {
  if (record.scenario_text.empty()) return;
  add_html(out, "<details><summary>The scenario as it was run ({})</summary>\n", record.plan);
  add_html(out, "<pre class=\"scroll\" tabindex=\"0\">{}</pre></details>\n", record.scenario_text);
}

}  // namespace

void add_answer(std::string& out, const std::vector<RunRecord>& records, const std::vector<PlanPage>& plans,
                UnitSystem units) {
  const RunRecord& first = *plans.front().record;
  std::vector<RankedPlan> ranked;
  for (const PlanPage& plan : plans) ranked.push_back(plan.place);
  add_html(out, "<main>\n<header><h1>{}</h1>\n", first.title.empty() ? first.scenario : first.title);
  add_html(out, "<p class=\"soft\">{:.3g} days from {} (UTC{}), {} {}. Noonhouse {}.</p></header>\n",
           first.duration_s / 86400.0, first.start, first.utc_offset, plans.size(),
           plans.size() == 1 ? "plan" : "plans", first.provenance.version);
  out += "<section class=\"answer\" aria-labelledby=\"the-answer\">\n<h2 id=\"the-answer\">The answer</h2>\n";
  add_html(out, "<p class=\"headline\">{}</p>\n", text_in_units(headline(records, ranked), units));
  add_html(out, "<p>With &quot;{}&quot;: the water {}, the charge {}.</p>\n", first.plan, water_outlook(first),
           charge_outlook(first));
  const auto shared = shared_first(records);
  if (shared) add_html(out, "<p>First in every plan: {}.</p>\n", shared_first_text(*shared, "←", units));
  out += "<ol class=\"plain\">\n";
  for (std::size_t i = 0; i < plans.size(); ++i)
    add_plan_line(out, plans[i], i, records, ranked, shared.has_value(), units);
  out += "</ol>\n";
  for (const std::string& warning : comparison_warnings(records)) {
    add_html(out, "<p class=\"warning\"><strong>Careful.</strong> {}</p>\n", warning);
  }
  out +=
      "</section>\n<noscript><p class=\"warning\">The charts need scripts switched on; the tables hold the same "
      "numbers.</p></noscript>\n";
  add_table(out, plans, units);
}

void add_origin(std::string& out, const std::vector<PlanPage>& plans) {
  std::vector<std::string> cautions;
  for (const PlanPage& plan : plans) {
    for (const std::string& caution : plan.record->cautions) {
      if (std::find(cautions.begin(), cautions.end(), caution) == cautions.end()) cautions.push_back(caution);
    }
  }
  if (!cautions.empty()) {
    out += "<section aria-labelledby=\"cautions\">\n<h2 id=\"cautions\">Before you act on it</h2>\n<ul>\n";
    for (const std::string& caution : cautions) add_html(out, "<li>{}</li>\n", caution);
    out += "</ul></section>\n";
  }
  const RunRecord& first = *plans.front().record;
  const Provenance& p = first.provenance;
  out += "<section aria-labelledby=\"origin\">\n<h2 id=\"origin\">Where the numbers come from</h2>\n";
  add_html(
      out,
      "<p>Calculated, not measured: by Noonhouse {} from the scenario {} ({}, seed {}) at {:.2f}°, {:.2f}°, {:.0f} m "
      "above the sea.</p>\n",
      p.version, first.scenario, p.scenario_file, p.seed, first.latitude_deg, first.longitude_deg, first.altitude_m);
  add_html(out, "<p class=\"soft digest\">Scenario {}; weather {}.</p>\n", p.scenario_digest, p.weather_digest);
  out += "<p>The scenario below says where its weather comes from, and whether it was measured or invented.</p>\n";
  out +=
      "<p>What is missing in the books at the end of each run, as a part of all that came in and went out; only "
      "the rounding of numbers should be left:</p>\n<table class=\"cards\" role=\"table\"><thead role=\"rowgroup\">"
      "<tr role=\"row\">";
  for (const char* head : {"Plan", "Heat", "Water", "Charge", "Steps", "Events"})
    add_html(out, "<th scope=\"col\" role=\"columnheader\">{}</th>", head);
  out += "</tr></thead><tbody role=\"rowgroup\">\n";
  for (const PlanPage& plan : plans) add_closure(out, *plan.record);
  out += "</tbody></table>\n";
  for (const PlanPage& plan : plans) add_text_of_scenario(out, *plan.record);
  out += "</section>\n";
}

}  // namespace noonhouse
