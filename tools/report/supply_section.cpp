// SPDX-License-Identifier: Apache-2.0
#include "tools/report/supply_section.hpp"

#include <utility>
#include <vector>

#include "tools/compare/comparison_words.hpp"
#include "tools/report/html.hpp"

namespace noonhouse {
namespace {

using Lines = std::vector<std::pair<const char*, std::string>>;

void add_line(Lines& lines, const char* name, const std::string& text) {
  if (!text.empty() && text != "-") lines.emplace_back(name, text);
}

/// An amount of water, or nothing where there was none.
std::string some_water(double water_kg, UnitSystem units) { return water_kg > 0.0 ? water_text(water_kg, units) : ""; }

void add_water(Lines& lines, const RunRecord& record, UnitSystem units) {
  const WaterOutcome& w = record.water;
  add_line(lines, "A full tank lasts, without rain", carry_text(w.days_full, w.days_full_thirsty));
  add_line(lines, "What is left in the tank lasts", carry_text(w.days_left, w.days_left_thirsty));
  add_line(lines, "Thirstiest day", some_water(w.thirstiest_day_kg, units));
  add_line(lines, "Rain caught", some_water(w.rain_caught_kg, units));
  add_line(lines, "Rain led aside or past the gutters", some_water(w.rain_lost_kg, units));
  add_line(lines, "Water brought",
           w.deliveries == 0 ? "" : fmt::format("{} in {} deliveries", water_text(w.brought_kg, units), w.deliveries));
  add_line(lines, "By drip lines", some_water(w.dripped_kg, units));
  add_line(lines, "Lost at cuts of lines", some_water(w.spilt_kg, units));
  add_line(lines, "Leaked", some_water(w.leaked_kg, units));
  add_line(lines, "Evaporated from the tank", some_water(w.evaporated_kg, units));
  if (!w.overflows_to.empty())
    add_line(lines, "Over the brim",
             w.overflow_kg > 0.0 ? fmt::format("{}, to {}", water_text(w.overflow_kg, units), w.overflows_to)
                                 : fmt::format("nothing; it would go to {}", w.overflows_to));
}

void add_charge(Lines& lines, const RunRecord& record, UnitSystem units) {
  const EnergyOutcome& e = record.energy;
  add_line(lines, "A full battery lasts, without sun", carry_text(e.days_full, e.days_full_heavy));
  add_line(lines, "What is left in the battery lasts", carry_text(e.days_left, e.days_left_heavy));
  if (e.heaviest_day_j > 0.0) add_line(lines, "Heaviest day of the loads", energy_text(e.heaviest_day_j, units));
  if (e.losses_j > 0.0)
    add_line(
        lines, "Lost in the battery",
        fmt::format("{}, of it {} by self-discharge{}", energy_text(e.losses_j, units),
                    energy_text(e.self_discharge_j, units),
                    e.dead_cells_j > 0.0 ? fmt::format(" and {} with dead cells", energy_text(e.dead_cells_j, units))
                                         : std::string()));
}

void add_lines(std::string& out, const Lines& lines) {
  if (lines.empty()) return;
  out +=
      "<h3>How long it carries, and what it asks of people</h3>\n<div class=\"scroll whole\" tabindex=\"0\" "
      "role=\"region\" aria-label=\"How long it carries\"><table><tbody>\n";
  for (const auto& [name, text] : lines) add_html(out, "<tr><th scope=\"row\">{}</th><td>{}</td></tr>\n", name, text);
  out += "</tbody></table></div>\n";
}

void add_notes(std::string& out, const RunRecord& record, UnitSystem units) {
  if (record.notes.empty()) return;
  out += "<h3>What else to know</h3>\n<ul class=\"notes\">\n";
  for (const std::string& note : record.notes) add_html(out, "<li>{}</li>\n", text_in_units(note, units));
  out += "</ul>\n";
}

}  // namespace

void add_supply_section(std::string& out, const RunRecord& record, UnitSystem units) {
  Lines lines;
  add_water(lines, record, units);
  add_charge(lines, record, units);
  const WorkHeatOutcome* heat = worst_work_heat(record);
  if (heat != nullptr)
    add_line(lines, "Unwise for moderate work", fmt::format("{} ({} bay)", work_heat_text(record, units), heat->bay));
  if (record.cost.known()) {
    add_line(lines, "Cost to buy", money_text(record.cost.capital, record.cost.currency));
    add_line(lines, "Cost a season", season_cost_text(record.cost));
  }
  add_lines(out, lines);
  if (heat != nullptr) add_html(out, "<p class=\"soft\">{}</p>\n", work_heat_caution(units));
  if (!record.water.storage_rule.empty())
    add_html(out, "<p class=\"soft\">In the tank {}.</p>\n", record.water.storage_rule);
  add_notes(out, record, units);
}

}  // namespace noonhouse
