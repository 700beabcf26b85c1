// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "tools/record/run_record.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {

inline constexpr int kNarrowestTable = 40;
inline constexpr int kWidestTable = 100;

/// The comparison for a person at a terminal: the answer, the plans side by side in rank order (in several
/// tables where they do not fit beside each other), plant by plant, the hottest air by height, why plants
/// were not kept, what failed first and what led to it, and the rule of the ranking. UTF-8, lines of at most
/// `width` columns (held between 40 and 100), each ended by a newline.
std::string compare_text(const std::vector<RunRecord>& records, UnitSystem units, int width);

}  // namespace noonhouse
