// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include "tools/compare/heat_lines.hpp"

namespace noonhouse {

/// Mean flows of heat over one column of the picture [W], signs as in HeatSum.
struct HeatColumn {
  double begin_s = 0.0, end_s = 0.0;
  double sun_w = 0.0;
  std::array<double, kHeatLines> line_w{};
};

/// The hours of a record as at most `most` columns of equal length but for the last, each a whole number of hours; the
/// energy of each line is kept.
std::vector<HeatColumn> heat_columns(const RunRecord& record, std::size_t most);

/// The ends of the axis of heat flow [W], round numbers; one for all plans, so that the eye can compare them.
struct HeatScale {
  double lowest_w = 0.0, highest_w = 0.0, step_w = 1.0;
};
HeatScale heat_scale(const std::vector<RunRecord>& records);

/// Where a round value stands on the axis, "2 kW", and how far below its upper end, 0 to 1.
struct HeatMark {
  std::string text;
  double below_top = 0.0;
};
std::vector<HeatMark> heat_marks(const HeatScale& scale);

/// The columns as stacks outward from zero, in the order of kHeatLineWords, and the sun as an outline: an SVG element
/// that fills its place whatever its shape. One path a line with its key as class; a line that is nothing has none.
std::string heat_svg(const RunRecord& record, const HeatScale& scale);

}  // namespace noonhouse
