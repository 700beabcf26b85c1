// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>

#include "tools/placing/season.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {

/// The seasons of all kinds for a person at a terminal: a line for each at its best place, then place by place. Lines
/// of at most `width` characters, held between 72 and 140.
std::string season_text(const SeasonAnswer& answer, UnitSystem units, int width);

}  // namespace noonhouse
