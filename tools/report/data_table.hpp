// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>

#include "tools/record/run_record.hpp"
#include "tools/report/chart_data.hpp"

namespace noonhouse {

/// The numbers behind a chart as a table that opens on demand: a row a span of time (the shortest of 1, 2, 3,
/// 6, 12 or 24 hours, or whole days, that keeps to about fifty rows), in each the lowest and highest recorded.
void add_data_table(std::string& out, const RunRecord& record, const Chart& chart);

}  // namespace noonhouse
