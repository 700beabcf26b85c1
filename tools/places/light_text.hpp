// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>

#include "tools/places/place_light.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {

inline constexpr int kNarrowestLightText = 40;
inline constexpr int kWidestLightText = 140;

/// A day's light for a person at a terminal: which day and sky, a picture with one line for each place and time along
/// it, the figures of each place (place_summary.hpp), and for each hour the kind of light and the mean photosynthetic
/// light [umol/(m2 s)]. Lines of at most `width` characters (held between 40 and 140), each ended by a newline; where
/// the width is short the picture's marks stand for longer, the last columns of the figures are left out and named,
/// and the hours are divided into several tables. UTF-8, or only ASCII of ours where `unicode` is false (the names
/// of house, plan and places are the scenario's and stay as they are). A character counts as one column, so names
/// in wide scripts push what follows them.
std::string light_text(const DayLight& day, UnitSystem units, int width, bool unicode);

}  // namespace noonhouse
