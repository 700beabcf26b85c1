// SPDX-License-Identifier: Apache-2.0
#include "tools/report/chart_json.hpp"

#include <algorithm>
#include <cmath>
#include <span>

#include "tools/report/thinning.hpp"

namespace noonhouse {
namespace {

constexpr std::size_t kMostSamples = 1600;  // about two a pixel of the widest chart
constexpr std::size_t kMostColumns = 400;   // of a picture of heights
constexpr double kRounding = 100.0;         // two decimals of the unit shown

nlohmann::ordered_json number(double value) {
  if (!std::isfinite(value)) return nullptr;
  return std::round(value * kRounding) / kRounding;
}

nlohmann::ordered_json heights_json(const RunRecord& record, const Chart& chart) {
  const std::size_t count = record.time_s.size();
  const double step_h =
      count > 1 ? (record.time_s.back() - record.time_s.front()) / 3600.0 / static_cast<double>(count - 1) : 1.0;
  const auto an_hour = static_cast<std::size_t>(std::max(1.0, std::round(1.0 / std::max(step_h, 1e-9))));
  const std::size_t group = std::max(an_hour, (count + kMostColumns - 1) / kMostColumns);
  nlohmann::ordered_json rows = nlohmann::ordered_json::array();
  for (const ChartLine& line : chart.lines) {
    nlohmann::ordered_json row = nlohmann::ordered_json::array();
    for (const double value : group_highest(line.values, group)) row.push_back(number(value));
    rows.push_back({{"label", line.label}, {"values", row}});
  }
  return {{"first_h", number(count > 0 ? record.time_s.front() / 3600.0 : 0.0)},
          {"column_h", number(step_h * static_cast<double>(group))},
          {"rows", rows}};
}

nlohmann::ordered_json lines_json(const RunRecord& record, const Chart& chart) {
  std::vector<std::span<const double>> all;
  for (const ChartLine& line : chart.lines) all.emplace_back(line.values);
  const std::vector<std::size_t> kept = thin_samples(all, record.time_s.size(), kMostSamples);
  nlohmann::ordered_json hours = nlohmann::ordered_json::array();
  for (const std::size_t i : kept) hours.push_back(std::round(record.time_s[i] / 3.6) / 1000.0);
  nlohmann::ordered_json lines = nlohmann::ordered_json::array();
  for (const ChartLine& line : chart.lines) {
    nlohmann::ordered_json values = nlohmann::ordered_json::array();
    for (const std::size_t i : kept) values.push_back(number(line.values[i]));
    lines.push_back({{"label", line.label}, {"role", line.role}, {"values", values}});
  }
  nlohmann::ordered_json limits = nlohmann::ordered_json::array();
  for (const ChartLimit& l : chart.limits) {
    limits.push_back({{"label", l.label}, {"role", l.role}, {"value", number(l.value)}});
  }
  return {{"hours", hours}, {"lines", lines}, {"limits", limits}};
}

}  // namespace

nlohmann::ordered_json chart_json(const RunRecord& record, const Chart& chart) {
  nlohmann::ordered_json out{{"kind", chart.kind == ChartKind::heights ? "heights" : "lines"},
                             {"title", chart.title},
                             {"unit", chart.unit},
                             {"lowest", number(chart.lowest)},
                             {"highest", number(chart.highest)}};
  out.update(chart.kind == ChartKind::heights ? heights_json(record, chart) : lines_json(record, chart));
  return out;
}

}  // namespace noonhouse
