// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <string>

#include "tools/places/place_summary.hpp"

namespace noonhouse {

// The words that the terminal and the drawing share.

/// Every kind of light, brightest first: the order of legends.
inline constexpr std::array<LightState, 5> kBrightestFirst{LightState::direct, LightState::flecked, LightState::soft,
                                                           LightState::dim, LightState::dark};

/// "full sun", "sun flecks", "soft light", "dim", "dark".
std::string light_state_name(LightState state);
/// What the word means, to stand behind it; empty where it says all.
std::string light_state_meaning(LightState state);

/// "clear sky assumed" or "sky of the scenario's weather".
std::string sky_text(const DayLight& day);
/// "sun above a flat horizon from 05:12 to 20:31", or that it does not rise or set that day.
std::string horizon_text(const DayLight& day);
/// A minute of the day on the house's clock, "05:43".
std::string minute_text(int minute);
/// Light of the day outdoors on the level [mol/m2].
double outdoor_dli_mol_m2(const DayLight& day);
/// Most light outdoors on the level [W/m2].
double outdoor_most_w_m2(const DayLight& day);

}  // namespace noonhouse
