// SPDX-License-Identifier: Apache-2.0
#include "tools/compare/comparison_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <functional>

#include "tools/compare/comparison.hpp"
#include "tools/compare/comparison_layout.hpp"
#include "tools/compare/comparison_words.hpp"
#include "tools/compare/heat_lines.hpp"
#include "tools/compare/plan_contrast.hpp"

namespace noonhouse {
namespace {

constexpr int kNarrowestColumn = 17;  // "harmed, 123.4 h" and "43.1 °C day 4" each fit
constexpr int kWidestColumn = 30;

/// Writes the comparison part by part; holds what every part needs.
class Writer {
 public:
  Writer(const std::vector<RunRecord>& records, UnitSystem units, int width)
      : records_(records), ranked_(rank_plans(records)), units_(units), width_(width) {}

  std::string write() {
    answer();
    tables("", "", overview());
    out_ += '\n';
    for (const std::string& note : figure_notes()) paragraph(note, 0);
    tables("Plant by plant", "plant", plants());
    tables("Hottest air, by height", "height", levels());
    heat_book();
    reasons();
    failures();
    notes();
    out_ += '\n';
    paragraph("How they are ranked: " + ranking_rule(), 0);
    return out_;
  }

 private:
  using Cell = std::function<std::string(const RunRecord&)>;
  struct TableRow {
    std::string label;
    Cell cell;
  };

  const RunRecord& record(const RankedPlan& place) const { return records_[place.index]; }

  void paragraph(const std::string& text, int indent) {
    for (const std::string& line : wrap_text(text, width_ - indent)) {
      out_ += std::string(static_cast<std::size_t>(indent), ' ') + line + '\n';
    }
  }

  void heading(const std::string& text) {
    out_ += '\n';
    paragraph(text, 0);
    out_ += std::string(static_cast<std::size_t>(std::min(width_, display_width(text))), '-') + "\n";
  }

  void answer() {
    const RunRecord& first = record(ranked_.front());
    paragraph(first.title.empty() ? first.scenario : first.title, 0);
    paragraph(fmt::format("{:.3g} days from {} (UTC{})", first.duration_s / 86400.0, first.start, first.utc_offset), 0);
    out_ += '\n';
    paragraph(text_in_units(headline(records_, ranked_), units_), 0);
    for (std::size_t i = 2; i < ranked_.size(); ++i)
      paragraph(text_in_units(why_behind(records_, ranked_, i), units_), 0);
    for (const std::string& warning : comparison_warnings(records_)) paragraph("Careful: " + warning, 0);
    out_ += '\n';
  }

  /// The rows as tables of as many plans as fit beside each other.
  void tables(const std::string& title, const std::string& corner, const std::vector<TableRow>& rows) {
    if (rows.empty()) return;
    if (!title.empty()) heading(title);
    int label = display_width(corner);
    for (const TableRow& row : rows) label = std::max(label, display_width(row.label));
    label = std::min(label, width_ * 2 / 5);
    const int space = width_ - label;
    const int fitting = std::max(1, space / (kNarrowestColumn + kColumnGap));
    const int plans = static_cast<int>(ranked_.size());
    const int blocks = (plans + fitting - 1) / fitting;
    const int at_once = (plans + blocks - 1) / blocks;
    const int column = std::min(kWidestColumn, space / at_once - kColumnGap);
    for (int from = 0; from < plans; from += at_once) {
      if (from > 0) out_ += '\n';
      block(corner, rows, from, std::min(plans, from + at_once), label, column);
    }
  }

  void block(const std::string& corner, const std::vector<TableRow>& rows, int from, int to, int label, int column) {
    std::vector<int> widths{label};
    TableCells head{corner};
    TableCells line{std::string(static_cast<std::size_t>(label), '-')};
    for (int i = from; i < to; ++i) {
      const RankedPlan& place = ranked_[static_cast<std::size_t>(i)];
      widths.push_back(column);
      head.push_back(fmt::format("{}. {}", place.rank, record(place).plan));
      line.emplace_back(static_cast<std::size_t>(column), '-');
    }
    append_table_row(out_, head, widths);
    append_table_row(out_, line, widths);
    for (const TableRow& row : rows) {
      TableCells cells{row.label};
      for (int i = from; i < to; ++i) cells.push_back(row.cell(record(ranked_[static_cast<std::size_t>(i)])));
      append_table_row(out_, cells, widths);
    }
  }

  std::vector<TableRow> overview() const;
  std::vector<TableRow> lasting() const;
  std::vector<TableRow> plants() const;
  std::vector<TableRow> levels() const;
  std::vector<TableRow> heat() const;
  void heat_book();
  void reasons();
  void failures();
  void notes();

  const std::vector<RunRecord>& records_;
  std::vector<RankedPlan> ranked_;
  UnitSystem units_;
  int width_;
  std::string out_;
};

std::vector<Writer::TableRow> Writer::overview() const {
  const UnitSystem units = units_;
  std::vector<TableRow> rows{
      {"plants kept", [](const RunRecord& r) { return fmt::format("{} of {}", tally_plan(r).kept, r.plants.size()); }},
      {"  strained", [](const RunRecord& r) { return std::to_string(tally_plan(r).strained); }},
      {"  harmed", [](const RunRecord& r) { return std::to_string(tally_plan(r).harmed); }},
      {"  lost", [](const RunRecord& r) { return std::to_string(tally_plan(r).lost); }},
      {"hours too hot or cold", [](const RunRecord& r) { return hours_text(tally_plan(r).hours_beyond); }},
      {"air changes an hour", [](const RunRecord& r) { return air_changes_text(r.airing); }},
      {"failures", [](const RunRecord& r) { return std::to_string(tally_plan(r).failures); }},
      {"water used", [=](const RunRecord& r) { return water_use_text(r.water, units); }},
      {"water left", [=](const RunRecord& r) { return water_text(r.water.end_kg, units); }},
      {"  of a tank of", [=](const RunRecord& r) { return water_text(r.water.capacity_kg, units); }},
      {"the water", [](const RunRecord& r) { return water_outlook(r); }},
      {"charge used", [=](const RunRecord& r) { return energy_text(r.energy.loads_j, units); }},
      {"lowest charge",
       [](const RunRecord& r) {
         const std::string share = lowest_charge_text(r.energy);
         return share == "-" ? share : share + ", " + unbroken(clock_text(r, r.energy.lowest_time_s));
       }},
      {"the charge", [](const RunRecord& r) { return charge_outlook(r); }},
      {"starts", [](const RunRecord& r) { return starts_text(r); }},
  };
  for (TableRow& row : lasting()) rows.push_back(std::move(row));
  return rows;
}

/// How long the stores carry, heat for people, money: lines that no plan has are left out.
std::vector<Writer::TableRow> Writer::lasting() const {
  std::vector<TableRow> rows{
      {"a full tank lasts",
       [](const RunRecord& r) { return carry_text(r.water.days_full, r.water.days_full_thirsty); }},
      {"  what is left", [](const RunRecord& r) { return carry_text(r.water.days_left, r.water.days_left_thirsty); }},
      {"water brought",
       [units = units_](const RunRecord& r) {
         return r.water.deliveries == 0 ? std::string("-") : water_text(r.water.brought_kg, units);
       }},
      {"a full battery lasts",
       [](const RunRecord& r) { return carry_text(r.energy.days_full, r.energy.days_full_heavy); }},
      {"  what is left", [](const RunRecord& r) { return carry_text(r.energy.days_left, r.energy.days_left_heavy); }},
      {"unwise to work", [units = units_](const RunRecord& r) { return work_heat_text(r, units); }},
      {"cost to buy", [](const RunRecord& r) { return money_text(r.cost.capital, r.cost.currency); }},
      {"cost a season", [](const RunRecord& r) { return season_cost_text(r.cost); }},
  };
  std::erase_if(rows, [&](const TableRow& row) {
    return std::all_of(records_.begin(), records_.end(), [&](const RunRecord& r) { return row.cell(r) == "-"; });
  });
  return rows;
}

std::vector<Writer::TableRow> Writer::plants() const {
  std::vector<TableRow> rows;
  for (const RankedPlan& place : ranked_) {
    for (const PlantOutcome& plant : record(place).plants) {
      const auto same_label = [&](const TableRow& row) { return row.label == plant.name; };
      if (std::any_of(rows.begin(), rows.end(), same_label)) continue;
      rows.push_back({plant.name, [name = plant.name, units = units_](const RunRecord& r) {
                        const auto is_it = [&](const PlantOutcome& p) { return p.name == name; };
                        const auto found = std::find_if(r.plants.begin(), r.plants.end(), is_it);
                        return found == r.plants.end() ? std::string("-") : outcome_text(*found, units);
                      }});
    }
  }
  return rows;
}

std::vector<Writer::TableRow> Writer::levels() const {
  std::vector<TableRow> rows;
  for (const RankedPlan& place : ranked_) {
    for (const LevelOutcome& level : record(place).levels) {
      const std::string label = level_label(level, units_);
      if (std::any_of(rows.begin(), rows.end(), [&](const TableRow& row) { return row.label == label; })) continue;
      rows.push_back({label, [label, units = units_](const RunRecord& r) {
                        const auto is_it = [&](const LevelOutcome& l) { return level_label(l, units) == label; };
                        const auto found = std::find_if(r.levels.begin(), r.levels.end(), is_it);
                        if (found == r.levels.end()) return std::string("-");
                        return unbroken(temperature_text(found->peak_k, units)) + ", " +
                               unbroken(clock_text(r, found->peak_time_s));
                      }});
    }
  }
  std::reverse(rows.begin(), rows.end());  // the highest layer on top, as it stands in the house
  return rows;
}

/// The book of heat; lines that are nothing in every plan are left out, and all of it where no record has hours.
std::vector<Writer::TableRow> Writer::heat() const {
  std::vector<TableRow> rows;
  for (const HeatLineWords& words : kHeatLineWords) {
    const auto has = [&](const RunRecord& r) { return has_heat(r, words.line); };
    if (std::any_of(records_.begin(), records_.end(), has))
      rows.push_back({words.words, [line = words.line](const RunRecord& r) { return heat_text(r, line); }});
  }
  if (!rows.empty()) rows.insert(rows.begin(), {"taken up from the sun", sun_text});
  return rows;
}

void Writer::heat_book() {
  const std::vector<TableRow> rows = heat();
  if (rows.empty()) return;
  tables("Where the sun's heat went, on the mean day", "heat", rows);
  out_ += '\n';
  paragraph(std::string(kSunNote), 0);
}

void Writer::reasons() {
  bool any = false;
  for (const RankedPlan& place : ranked_) {
    const std::vector<std::string> lines = plant_reasons(record(place), units_);
    if (lines.empty()) continue;
    if (!any) heading("Why plants were not kept");
    any = true;
    paragraph(record(place).plan, 0);
    for (const std::string& line : lines) paragraph(line, 4);
  }
}

void Writer::notes() {
  const auto has = [](const RunRecord& r) { return !r.notes.empty(); };
  const bool any = std::any_of(records_.begin(), records_.end(), has);
  const bool heat =
      std::any_of(records_.begin(), records_.end(), [](const RunRecord& r) { return worst_work_heat(r) != nullptr; });
  if (!any && !heat) return;
  heading("What else to know");
  const std::vector<std::string> shared = shared_notes(records_);
  if (!shared.empty()) paragraph("every plan", 0);
  for (const std::string& note : shared) paragraph(text_in_units(note, units_), 4);
  for (const RankedPlan& place : ranked_) {
    std::vector<std::string> own = record(place).notes;
    std::erase_if(own,
                  [&](const std::string& n) { return std::find(shared.begin(), shared.end(), n) != shared.end(); });
    if (!own.empty()) paragraph(record(place).plan, 0);
    for (const std::string& note : own) paragraph(text_in_units(note, units_), 4);
  }
  if (heat) paragraph(work_heat_caution(units_), 0);
}

void Writer::failures() {
  heading("What went wrong first");
  const auto shared = shared_first(records_);
  if (shared) {
    paragraph("every plan", 0);
    paragraph(shared_first_text(*shared, "<-", units_), 4);
  }
  for (const RankedPlan& place : ranked_) {
    const FailureOutcome* failure = shared ? first_of_its_own(record(place), records_) : first_failure(record(place));
    if (shared && failure == nullptr) continue;
    const char* after = failure == nullptr ? ": nothing failed" : shared ? ", then" : "";
    paragraph(record(place).plan + after, 0);
    if (failure != nullptr) paragraph(failure_text(record(place), *failure, "<-", units_), 4);
  }
}

}  // namespace

std::string compare_text(const std::vector<RunRecord>& records, UnitSystem units, int width) {
  return Writer(records, units, std::clamp(width, kNarrowestTable, kWidestTable)).write();
}

}  // namespace noonhouse
