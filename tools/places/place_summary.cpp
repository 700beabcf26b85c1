// SPDX-License-Identifier: Apache-2.0
#include "tools/places/place_summary.hpp"

#include <algorithm>
#include <numeric>

#include "models/properties/irradiance.hpp"
#include "sim/core/errors.hpp"
#include "sim/core/tick.hpp"

namespace noonhouse {
namespace {

bool is_day_long(const std::vector<double>& values) { return values.size() == kMinutesOfDay; }

void assert_day_long(const PlaceLight& place) {
  NOON_ASSERT(is_day_long(place.sunlit) && is_day_long(place.direct_w_m2) && is_day_long(place.soft_w_m2));
}

/// The sunlit share of a minute, none where the sun gives no light.
double sun_share(const PlaceLight& place, std::size_t minute) {
  return place.direct_w_m2[minute] > 0.0 ? place.sunlit[minute] : 0.0;
}

double mean_of(const std::vector<double>& values, int from, int to) {
  NOON_ASSERT(is_day_long(values) && 0 <= from && from < to && to <= kMinutesOfDay);
  return std::accumulate(values.begin() + from, values.begin() + to, 0.0) / (to - from);
}

}  // namespace

PlaceSummary summary_of(const PlaceLight& place) {
  assert_day_long(place);
  PlaceSummary summary;
  int sunny = 0, flecked = 0, softly_lit = 0;
  double sun_minutes = 0.0, direct_w_m2 = 0.0, soft_w_m2 = 0.0;  // sums over minutes
  for (std::size_t minute = 0; minute < kMinutesOfDay; ++minute) {
    const double share = sun_share(place, minute);
    const double light_w_m2 = place.direct_w_m2[minute] + place.soft_w_m2[minute];
    direct_w_m2 += place.direct_w_m2[minute];
    soft_w_m2 += place.soft_w_m2[minute];
    summary.most_w_m2 = std::max(summary.most_w_m2, light_w_m2);
    sun_minutes += share;
    if (share < 0.5 && par_from_global(light_w_m2) > kLightAbovePar_mol_m2_s) ++softly_lit;
    if (share < kSomeSun) continue;
    ++sunny;
    if (share <= kFullSun) ++flecked;
    if (!summary.first_direct_minute) summary.first_direct_minute = static_cast<int>(minute);
    summary.last_direct_minute = static_cast<int>(minute);
  }
  const double light_w_m2 = direct_w_m2 + soft_w_m2;
  summary.direct_h = sun_minutes / kMinutesOfHour;
  summary.soft_h = static_cast<double>(softly_lit) / kMinutesOfHour;
  if (sunny > 0) summary.fleck_share = static_cast<double>(flecked) / sunny;
  if (light_w_m2 > 0.0) summary.diffuse_share = soft_w_m2 / light_w_m2;
  summary.dli_mol_m2 = par_from_global(light_w_m2) * kSecondsPerMinute;
  return summary;
}

LightState light_state(const DayLight& day, const PlaceLight& place, int from_minute, int to_minute) {
  assert_day_long(place);
  NOON_ASSERT(0 <= from_minute && from_minute < to_minute && to_minute <= kMinutesOfDay);
  double sun = 0.0;
  for (int minute = from_minute; minute < to_minute; ++minute)
    sun += sun_share(place, static_cast<std::size_t>(minute));
  sun /= to_minute - from_minute;
  if (sun > kFullSun) return LightState::direct;
  if (sun >= kSomeSun) return LightState::flecked;
  const double par = mean_par_mol_m2_s(place, from_minute, to_minute);
  if (par <= kLightAbovePar_mol_m2_s) return LightState::dark;
  const double outdoors = outdoor_par_mol_m2_s(day, from_minute, to_minute);
  return par < kDimBelowOutdoors * outdoors ? LightState::dim : LightState::soft;
}

double mean_par_mol_m2_s(const PlaceLight& place, int from_minute, int to_minute) {
  return par_from_global(mean_of(place.direct_w_m2, from_minute, to_minute) +
                         mean_of(place.soft_w_m2, from_minute, to_minute));
}

double outdoor_par_mol_m2_s(const DayLight& day, int from_minute, int to_minute) {
  return par_from_global(mean_of(day.outdoors_w_m2, from_minute, to_minute));
}

std::optional<std::pair<int, int>> lit_minutes(const DayLight& day) {
  std::optional<std::pair<int, int>> lit;
  for (int minute = 0; minute < kMinutesOfDay; ++minute) {
    const bool bright = outdoor_par_mol_m2_s(day, minute, minute + 1) > kLightAbovePar_mol_m2_s ||
                        std::any_of(day.places.begin(), day.places.end(), [&](const PlaceLight& place) {
                          return light_state(day, place, minute, minute + 1) != LightState::dark;
                        });
    if (bright) lit = std::pair(lit ? lit->first : minute, minute + 1);
  }
  return lit;
}

}  // namespace noonhouse
