// SPDX-License-Identifier: Apache-2.0
#include "tools/placing/place_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "sim/core/errors.hpp"
#include "tools/compare/comparison_words.hpp"
#include "tools/placing/place_tables.hpp"
#include "tools/placing/place_words.hpp"
#include "tools/units/clock_text.hpp"

namespace noonhouse {
namespace {

void add_heading(PlaceSheet& sheet, const PlaceAnswer& answer, UnitSystem units) {
  sheet.paragraph(answer.plan.empty() ? answer.house : fmt::format("{}, plan \"{}\"", answer.house, answer.plan));
  sheet.paragraph(run_words(answer));
  sheet.blank();
  sheet.paragraph(sheet.spelled(placing_headline(answer, units)));
}

/// "38.2 °C on 2025-07-16 14:20"; empty where it is not known.
std::string hottest_words(const PlaceAnswer& answer, const PlantOutcome& outcome, UnitSystem units) {
  if (!(outcome.peak_tissue_k > 0.0)) return "";
  std::string peak = unbroken(temperature_text(outcome.peak_tissue_k, units));
  const auto start = parse_date_time(answer.start);
  if (!start || !std::isfinite(outcome.peak_tissue_time_s)) return peak;
  const auto minutes = std::chrono::minutes(std::llround(std::floor(outcome.peak_tissue_time_s / 60.0)));
  return peak + " on " + unbroken(format_date_time(*start + minutes));
}

/// What a group's whole runs came to, as it stands and as it should.
std::string run_outcomes(const PlaceAnswer& answer, const GroupShown& group, UnitSystem units) {
  const bool before = !group.before.outcome.empty(), after = !group.after.outcome.empty();
  const auto outcome = [&](const PlantOutcome& of) { return unbroken(outcome_text(of, units)); };
  const auto both = [](const std::string& a, const std::string& b) {
    return a.empty() || b.empty() || a == b ? a + (a == b ? "" : b) : a + " -> " + b;
  };
  if (!before && !after) return "";
  std::string text = "Whole run: " + both(before ? outcome(group.before) : "", after ? outcome(group.after) : "") + ".";
  const std::string hottest = both(before ? hottest_words(answer, group.before, units) : "",
                                   after ? hottest_words(answer, group.after, units) : "");
  if (!hottest.empty()) text += " Hottest tissue: " + hottest + ".";
  return text;
}

void add_groups(PlaceSheet& sheet, const PlaceAnswer& answer, UnitSystem units) {
  for (const GroupShown& group : answer.groups) {
    sheet.blank();
    const std::string kind = group.kind.empty() || group.kind == group.name ? "" : fmt::format(" ({})", group.kind);
    sheet.paragraph(fmt::format("{}{}: {}", group.name, kind, standing_words(answer, group)));
    const auto below = [&](const std::string& text) {
      if (!text.empty()) sheet.paragraph(sheet.spelled(text), 2);
    };
    below(sentence(text_in_units(group.why, units)));
    below(run_outcomes(answer, group, units));
  }
}

/// Counts and water before and after; of the run as it stands alone where nothing changes.
void add_gain(PlaceSheet& sheet, const PlaceAnswer& answer, UnitSystem units) {
  constexpr int kLabel = 12, kColumn = 10;
  const bool change = any_change(answer);
  sheet.heading(change ? "What moving gains, by whole runs" : "The whole run, as they stand");
  const std::vector<int> widths =
      change ? std::vector<int>{kLabel, kColumn, kColumn} : std::vector<int>{kLabel, kColumn};
  const auto row = [&](const std::string& label, const std::string& before, const std::string& after) {
    TableCells cells{label, at_right(before, kColumn)};
    if (change) cells.push_back(at_right(after, kColumn));
    sheet.row(cells, widths);
  };
  if (change) row("", "now", "moved");
  const OutcomeCounts before = count_outcomes(answer, &GroupShown::before);
  const OutcomeCounts after = count_outcomes(answer, &GroupShown::after);
  const auto counts = [&](const std::string& label, int OutcomeCounts::*which) {
    row(label, fmt::format("{}", before.*which), fmt::format("{}", after.*which));
  };
  counts("kept", &OutcomeCounts::kept);
  counts("strained", &OutcomeCounts::strained);
  counts("harmed", &OutcomeCounts::harmed);
  counts("lost", &OutcomeCounts::lost);
  const auto water = [&](const WaterOutcome& of) {
    return sheet.spelled(water_text(of.misted_kg + of.hand_watered_kg, units));
  };
  row("water used", water(answer.water_before), water(answer.water_after));
}

}  // namespace

std::string place_text(const PlaceAnswer& answer, UnitSystem units, int width, bool unicode) {
  for (const GroupShown& group : answer.groups)
    NOON_ASSERT(group.felt.size() == answer.places.size() && group.cannot.size() == answer.places.size());
  PlaceSheet sheet(std::clamp(width, kNarrowestPlaceText, kWidestPlaceText), unicode);
  add_heading(sheet, answer, units);
  add_groups(sheet, answer, units);
  if (!answer.groups.empty()) add_gain(sheet, answer, units);
  for (const GroupShown& group : answer.groups) {
    sheet.heading(fmt::format("{}, place by place", group.name));
    add_felt_table(sheet, answer, group, units);
    add_day_table(sheet, answer, group, units);
  }
  if (answer.places.empty()) return sheet.take();
  sheet.heading("The places");
  add_place_table(sheet, answer, units);
  if (answer.places.front().hour_air_k.empty()) return sheet.take();
  sheet.heading(fmt::format("The places by the hour on the hottest day, {}", day_label(answer, answer.hottest_day)));
  add_hour_tables(sheet, answer, units);
  return sheet.take();
}

}  // namespace noonhouse
