// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>

#include "tools/record/run_record.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {

/// How long tank and battery carry one plan, where its water went, heat for people, money; then what else to know.
/// Lines that the record knows nothing of are left out.
void add_supply_section(std::string& out, const RunRecord& record, UnitSystem units);

}  // namespace noonhouse
