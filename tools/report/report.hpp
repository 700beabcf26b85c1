// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "tools/faults/fault_sheet.hpp"
#include "tools/record/run_record.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {

/// The comparison as one HTML page that needs no network and no other file: the answer, the plans side by
/// side, and of each plan its plants, charts with the tables behind them, events with what led to them, and
/// where the numbers come from; with `faults`, a chapter on what failures do. The same records give the same bytes.
/// Long series are thinned to what a screen shows, extremes kept. Throws UserError(usage) without records.
std::string report_html(const std::vector<RunRecord>& records, UnitSystem units, const FaultSheet* faults = nullptr);

/// Writes report_html() to a file, whole or not at all: beside it as PATH.part first, then renamed.
/// Throws UserError(results_not_writable) or UserError(disk_full).
void write_report(const std::vector<RunRecord>& records, const std::string& path, UnitSystem units = UnitSystem::metric,
                  const FaultSheet* faults = nullptr);

}  // namespace noonhouse
