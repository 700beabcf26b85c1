// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "tools/faults/fault_sheet.hpp"
#include "tools/record/run_record.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {

/// The chapter on what failures do: the answer, a table of failures, the time left by the hour of the day told
/// (shaded by how short it is, with the time as text in every cell), how each harm came about and what each addition
/// leaves after it, what of the house breaks, how it was searched, what to do next.
/// Warns where none of the page's runs is of the scenario and plan whose failures were tried.
void add_fault_section(std::string& out, const FaultSheet& sheet, const std::vector<RunRecord>& records,
                       UnitSystem units);

}  // namespace noonhouse
