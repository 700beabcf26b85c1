// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <functional>
#include <vector>

#include "tools/record/run_record.hpp"
#include "tools/scenario/assemble.hpp"

namespace noonhouse {

/// Gives the present value of an Input.
using ValueOf = std::function<double(const Input&)>;

/// A series to record, empty of values, and the potentials that fill it at each instant; or one value made of several.
struct PlannedSeries {
  RecordSeries series;
  std::vector<Input> sources;
  std::function<double(const ValueOf&)> made = {};  ///< then there are no sources
};

/// Every series a run records, with its axes' names, units and standard names.
std::vector<PlannedSeries> planned_series(const Assembly& assembly);
/// The axes those series use.
std::vector<RecordAxis> record_axes(const Assembly& assembly);

}  // namespace noonhouse
