// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "tools/record/run_record.hpp"
#include "tools/report/plan_section.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {

/// The page's head: title, answer, warnings, the plans side by side. Opens the main element.
void add_answer(std::string& out, const std::vector<RunRecord>& records, const std::vector<PlanPage>& plans,
                UnitSystem units);

/// Cautions, and where the numbers come from.
void add_origin(std::string& out, const std::vector<PlanPage>& plans);

}  // namespace noonhouse
