// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstddef>
#include <string>
#include <vector>

#include "tools/record/run_record.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {

/// One line of a chart, in the unit shown.
struct ChartLine {
  std::string label;
  std::string role;            ///< how it is drawn: "low", "middle", "high", "outdoors", "plant", "tank", "battery"
  std::vector<double> values;  ///< one per record instant
};

/// A limit drawn across a chart.
struct ChartLimit {
  std::string label;
  std::string role;  ///< "harm", "lethal", "cold" or "mark"
  double value = 0.0;
};

enum class ChartKind { lines, heights };

/// A chart before thinning. A chart of heights holds one line a layer, lowest first.
struct Chart {
  ChartKind kind = ChartKind::lines;
  std::string group;  ///< "air", "plants" or "stores": where on the page it stands
  std::string title;
  std::string unit;  ///< as shown, such as "°C"
  std::vector<ChartLine> lines;
  std::vector<ChartLimit> limits;
  double lowest = 0.0, highest = 1.0;  ///< of the value axis
  std::vector<ChartLine> table;        ///< what the data table behind it shows; empty where another chart's does
};

/// The charts of one run, in page order; those whose series the record lacks are left out.
std::vector<Chart> make_charts(const RunRecord& record, UnitSystem units);

/// Gives charts of one kind and unit one value axis on all plans, where they are meant to be compared by eye:
/// the heights' colours and the air temperatures.
void share_scales(std::vector<std::vector<Chart>>& plans);

/// The series of that name whose values fill time and its axes; null where it is missing or does not.
const RecordSeries* find_series(const RunRecord& record, const std::string& name);

/// One element of a series over time: `offset` counts along the axes after time, row-major.
std::vector<double> element_over_time(const RunRecord& record, const RecordSeries& series, std::size_t offset);

}  // namespace noonhouse
