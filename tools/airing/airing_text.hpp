// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>

#include "tools/airing/airing.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {

inline constexpr int kNarrowestAiringText = 80;
inline constexpr int kWidestAiringText = 120;

/// The air of a house for a person at a terminal: the weather, what passes each opening and crack, each bay's air
/// changes and neutral level, its layers beside the air outdoors, what rises and mixes between them, what a tracer
/// shows in the same flows, and the day's air changes hour by hour. Flows in m³/h or ft³/min of air at the density
/// that fills the house. Lines of at most `width` characters (held between 80 and 120), each ended by a newline; names
/// too long for their column are broken.
std::string airing_text(const Airing& airing, UnitSystem units, int width);

}  // namespace noonhouse
