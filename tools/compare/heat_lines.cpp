// SPDX-License-Identifier: Apache-2.0
#include "tools/compare/heat_lines.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "sim/core/tick.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {
namespace {

/// Without a minus on what is shown as nothing.
double rounded(double value, double steps) { return std::round(value * steps) / steps + 0.0; }

std::string kilowatt_hours_a_day(const RunRecord& record, double energy_j) {
  const double days = ledger_length_s(record) / kSecondsPerDay;
  if (!(days > 0.0) || !std::isfinite(energy_j)) return "-";
  return fmt::format("{:.1f} kWh", rounded(energy_j / kJoulesPerKilowattHour / days, 10.0));
}

double& part(HeatSum& sum, HeatLine line) { return sum.line_j[static_cast<std::size_t>(line)]; }
}  // namespace

void put_ledger(RunRecord& record, const std::vector<LedgerSpan>& hours) {
  for (const LedgerSpan& span : hours) {
    LedgerHour hour;
    hour.begin_s = seconds(span.begin);
    hour.end_s = seconds(span.end);
    hour.sun_j = span.heat.sun_j;
    for (const HeatLineWords& words : kHeatLineWords) hour.*words.hour = span.heat.of(words.line);
    record.ledger.push_back(hour);
  }
}

HeatSum ledger_total(const RunRecord& record) {
  HeatSum total;
  for (const LedgerHour& hour : record.ledger) {
    total.sun_j += hour.sun_j;
    for (const HeatLineWords& words : kHeatLineWords) part(total, words.line) += hour.*words.hour;
  }
  return total;
}

double ledger_length_s(const RunRecord& record) {
  return record.ledger.empty() ? 0.0 : record.ledger.back().end_s - record.ledger.front().begin_s;
}

std::string sun_text(const RunRecord& record) { return kilowatt_hours_a_day(record, ledger_total(record).sun_j); }

std::string heat_text(const RunRecord& record, HeatLine line) {
  const HeatSum total = ledger_total(record);
  std::string text = kilowatt_hours_a_day(record, total.of(line));
  if (total.sun_j > 0.0 && text != "-")
    text += fmt::format(", {:.0f} %", rounded(100.0 * total.of(line) / total.sun_j, 1.0));
  return text;
}

bool has_heat(const RunRecord& record, HeatLine line) {
  const auto& words = kHeatLineWords[static_cast<std::size_t>(line)];
  return std::any_of(record.ledger.begin(), record.ledger.end(),
                     [&](const LedgerHour& hour) { return hour.*words.hour != 0.0; });
}

}  // namespace noonhouse
