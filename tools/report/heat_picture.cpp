// SPDX-License-Identifier: Apache-2.0
#include "tools/report/heat_picture.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace noonhouse {
namespace {

constexpr std::size_t kMostColumnsDrawn = 240;
constexpr double kWidth = 10000.0, kHeight = 2000.0;  ///< of the drawing, in its own units
constexpr double kMarks = 7.0;                        ///< about as many steps on the axis, at most

/// The least of 1, 2 or 5 times a power of ten that is not below a value.
double round_step(double value) {
  const double power = std::pow(10.0, std::floor(std::log10(value)));
  for (const double times : {1.0, 2.0, 5.0})
    if (times * power >= value * (1.0 - 1e-9)) return times * power;
  return 10.0 * power;
}

/// The two ends of a column's stack.
struct StackEnds {
  double below_w = 0.0, above_w = 0.0;
};
StackEnds stack_ends(const HeatColumn& column) {
  StackEnds ends;
  for (const double flow_w : column.line_w) (flow_w < 0.0 ? ends.below_w : ends.above_w) += flow_w;
  return ends;
}

/// Places on the drawing, in whole units.
class Sheet {
 public:
  Sheet(const std::vector<HeatColumn>& columns, const HeatScale& scale)
      : first_s_(columns.front().begin_s), length_s_(columns.back().end_s - columns.front().begin_s), scale_(scale) {}
  double x(double time_s) const { return std::round(kWidth * (time_s - first_s_) / length_s_); }
  double y(double flow_w) const {
    return std::round(kHeight * (scale_.highest_w - flow_w) / (scale_.highest_w - scale_.lowest_w));
  }

 private:
  double first_s_, length_s_;
  HeatScale scale_;
};

/// One box a column and line, between the ends that the lines before it reach.
std::array<std::string, kHeatLines> boxes(const std::vector<HeatColumn>& columns, const Sheet& sheet) {
  std::array<std::string, kHeatLines> paths;
  for (const HeatColumn& column : columns) {
    StackEnds reached;
    const double left = sheet.x(column.begin_s), right = sheet.x(column.end_s);
    for (std::size_t i = 0; i < kHeatLines; ++i) {
      double& end = column.line_w[i] < 0.0 ? reached.below_w : reached.above_w;
      const double from = sheet.y(end);
      end += column.line_w[i];
      const double to = sheet.y(end);
      if (to != from) paths[i] += fmt::format("M{:.0f} {:.0f}H{:.0f}V{:.0f}H{:.0f}z", left, from, right, to, left);
    }
  }
  return paths;
}

std::string sun_outline(const std::vector<HeatColumn>& columns, const Sheet& sheet) {
  std::string path;
  for (const HeatColumn& column : columns) {
    path += path.empty() ? fmt::format("M{:.0f} {:.0f}", sheet.x(column.begin_s), sheet.y(column.sun_w))
                         : fmt::format("V{:.0f}", sheet.y(column.sun_w));
    path += fmt::format("H{:.0f}", sheet.x(column.end_s));
  }
  return path;
}

}  // namespace

std::vector<HeatColumn> heat_columns(const RunRecord& record, std::size_t most) {
  const std::size_t count = record.ledger.size();
  const std::size_t whole = (count + most - 1) / most;
  std::size_t group = 1;
  for (const std::size_t hours : {1U, 2U, 3U, 6U, 12U, 24U, 48U, 168U})
    if (group < whole) group = hours;
  group = std::max(group, whole);
  std::vector<HeatColumn> columns;
  for (std::size_t from = 0; from < count; from += group) {
    const std::size_t to = std::min(count, from + group);
    HeatColumn column{record.ledger[from].begin_s, record.ledger[to - 1].end_s, 0.0, {}};
    const double length_s = column.end_s - column.begin_s;
    for (std::size_t k = from; k < to; ++k) {
      column.sun_w += record.ledger[k].sun_j / length_s;
      for (std::size_t i = 0; i < kHeatLines; ++i)
        column.line_w[i] += record.ledger[k].*kHeatLineWords[i].hour / length_s;
    }
    columns.push_back(column);
  }
  return columns;
}

HeatScale heat_scale(const std::vector<RunRecord>& records) {
  StackEnds most;
  for (const RunRecord& record : records)
    for (const HeatColumn& column : heat_columns(record, kMostColumnsDrawn)) {
      const StackEnds ends = stack_ends(column);
      most.below_w = std::min(most.below_w, ends.below_w);
      most.above_w = std::max({most.above_w, ends.above_w, column.sun_w});
    }
  const double span = std::max(most.above_w - most.below_w, 1.0);
  const double step = round_step(span / kMarks);
  return {std::floor(most.below_w / step) * step, std::max(1.0, std::ceil(most.above_w / step)) * step, step};
}

std::vector<HeatMark> heat_marks(const HeatScale& scale) {
  std::vector<HeatMark> marks;
  const auto first = std::lround(scale.lowest_w / scale.step_w), last = std::lround(scale.highest_w / scale.step_w);
  for (long k = first; k <= last; ++k) {
    const double flow_w = static_cast<double>(k) * scale.step_w;
    marks.push_back(
        {fmt::format("{:g} kW", flow_w / 1000.0), (scale.highest_w - flow_w) / (scale.highest_w - scale.lowest_w)});
  }
  return marks;
}

std::string heat_svg(const RunRecord& record, const HeatScale& scale) {
  const std::vector<HeatColumn> columns = heat_columns(record, kMostColumnsDrawn);
  if (columns.empty()) return "";
  const Sheet sheet(columns, scale);
  std::string out = fmt::format("<svg viewBox=\"0 0 {:.0f} {:.0f}\" preserveAspectRatio=\"none\" aria-hidden=\"true\">",
                                kWidth, kHeight);
  for (const HeatMark& mark : heat_marks(scale))
    out += fmt::format("<path class=\"grid\" d=\"M0 {:.0f}H{:.0f}\"/>", kHeight * mark.below_top, kWidth);
  const auto paths = boxes(columns, sheet);
  for (std::size_t i = 0; i < kHeatLines; ++i)
    if (!paths[i].empty()) out += fmt::format("<path class=\"{}\" d=\"{}\"/>", kHeatLineWords[i].key, paths[i]);
  out += fmt::format("<path class=\"zero\" d=\"M0 {:.0f}H{:.0f}\"/>", sheet.y(0.0), kWidth);
  out += fmt::format("<path class=\"sun\" d=\"{}\"/></svg>", sun_outline(columns, sheet));
  return out;
}

}  // namespace noonhouse
