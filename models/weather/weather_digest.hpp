// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>

#include "models/weather/weather_series.hpp"

namespace noonhouse {

/// A fingerprint of a series' content for provenance: "fnv1a64:" and 16 hexadecimal digits.
/// FNV-1a, 64 bit (Fowler, Noll, Vo; IETF draft-eastlake-fnv), over the bit patterns of place, times, rows and
/// cloudbursts in their order, lowest byte first; all NaN are one value, and -0 is 0. Names and origin do not count:
/// equal weather, equal digest. Finds accidental differences; it does not resist deliberate ones.
std::string weather_digest(const WeatherSeries& series);

}  // namespace noonhouse
