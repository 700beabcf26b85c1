// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <nlohmann/json.hpp>

#include "tools/record/run_record.hpp"
#include "tools/report/chart_data.hpp"

namespace noonhouse {

/// The series as the page's script reads it: thinned, rounded, hours since the start; not a number is null.
nlohmann::ordered_json chart_json(const RunRecord& record, const Chart& chart);

}  // namespace noonhouse
