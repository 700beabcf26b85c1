// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>

#include "tools/placing/place_answer.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {

inline constexpr int kNarrowestPlaceText = 40;
inline constexpr int kWidestPlaceText = 140;

/// The answer for a person at a terminal: who should move; a paragraph for each group with why, and what whole runs
/// came to as it stands and as it should; what moving gains; for each group the places and what it would feel there,
/// and the peaks of its tissue day by day (joined by weeks where there are more than 14); the places themselves. Lines
/// of at most `width` columns (held between 40 and 140), each ended by a newline. Where the width is short the last
/// columns of a table are left out and named, and days are divided into several tables. UTF-8, or only ASCII of ours
/// where `unicode` is false (the names of house, plan, groups and places are the scenario's and stay as they are).
///
/// Every group must have as many `felt` and `cannot` as there are places.
std::string place_text(const PlaceAnswer& answer, UnitSystem units, int width, bool unicode);

}  // namespace noonhouse
