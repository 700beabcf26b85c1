// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>

#include "tools/faults/fault_sheet.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {

inline constexpr int kNarrowestFaults = 40;
inline constexpr int kWidestFaults = 100;

/// What failures do, for a person at a terminal: the answer; a row a failure, the least time left first; what each
/// addition leaves; the time left by the hour of the day told; how the worst three come about, newest first; what of
/// the house breaks; what harms nothing; how it was searched; what to do next. UTF-8, lines of at most `width` columns
/// (held between 40 and 100), each ended by a newline. Where the width is short the rows become paragraphs and the day
/// is divided.
std::string faults_text(const FaultSheet& sheet, UnitSystem units, int width);

}  // namespace noonhouse
