// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <optional>
#include <utility>

#include "tools/places/place_light.hpp"

namespace noonhouse {

// Marks that part one kind of light from another. They are customs of this project, chosen for reading a picture; no
// plant changes its mind at them.
inline constexpr double kLightAbovePar_mol_m2_s = 5e-6;  ///< photosynthetic light above this is light, below it dark
inline constexpr double kSomeSun = 0.05;                 ///< a smaller sunlit share is the edge of a shadow: no sun
inline constexpr double kFullSun = 0.95;                 ///< a larger sunlit share is all of the place
inline constexpr double kDimBelowOutdoors = 0.05;        ///< soft light below this share of outdoors is dim

/// What a person wants to know of a place for one day.
struct PlaceSummary {
  double direct_h = 0.0;     ///< in direct sun [h]: a minute with the sun on half of the place counts half
  double soft_h = 0.0;       ///< with light [h], but the sun on less than half of the place
  double fleck_share = 0.0;  ///< of the minutes with sun, those with sun on part of the place only; 0 without sun
  double diffuse_share =
      0.0;                  ///< of the day's light, what came from elsewhere than straight from the sun; 0 in the dark
  double dli_mol_m2 = 0.0;  ///< photosynthetic light of the day on the level place [mol/m2], by par_from_global
  std::optional<int> first_direct_minute, last_direct_minute;  ///< with sun, counted from midnight; both or none
  double most_w_m2 = 0.0;                                      ///< largest irradiance of the level place [W/m2]
};

/// One place's day in a few figures. A minute has sun where its sunlit share is at least kSomeSun and the sun gives the
/// place some light: a place turned to the sun behind thick cloud is not sunlit. The share of photosynthetic light is
/// that of global sunlight, so the cover's and the leaves' own colour is not modelled.
PlaceSummary summary_of(const PlaceLight& place);

/// The kinds of light that the pictures tell apart, darkest first.
enum class LightState {
  dark,     ///< no more light than kLightAbovePar_mol_m2_s
  dim,      ///< no sun, below kDimBelowOutdoors of the light outdoors
  soft,     ///< no sun: light of the sky, scattered or reflected
  flecked,  ///< sun on part of the place, or for part of the stretch
  direct,   ///< sun on all of the place
};

/// The place's light over a stretch of minutes [from, to), judged by means over it. Sun goes first: a low sun on the
/// place is never called dark.
LightState light_state(const DayLight& day, const PlaceLight& place, int from_minute, int to_minute);

/// Mean photosynthetic light on the level place over [from, to) [mol/(m2 s)], by par_from_global.
double mean_par_mol_m2_s(const PlaceLight& place, int from_minute, int to_minute);
/// The same outdoors.
double outdoor_par_mol_m2_s(const DayLight& day, int from_minute, int to_minute);

/// The first minute with light, outdoors or at any place, and the minute after the last; nothing on a day without.
std::optional<std::pair<int, int>> lit_minutes(const DayLight& day);

}  // namespace noonhouse
