// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>

#include "tools/record/run_record.hpp"
#include "tools/report/heat_picture.hpp"

namespace noonhouse {

/// Where the sun's heat went in one plan: a sentence on how to read it, the picture by hour, what each colour stands
/// for with its amount on the mean day, and the numbers. Nothing where the record has no hours of it.
void add_heat_section(std::string& out, const RunRecord& record, const HeatScale& scale);

}  // namespace noonhouse
