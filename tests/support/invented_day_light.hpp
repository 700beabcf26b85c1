// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>

#include "tools/places/place_light.hpp"

/// Days of light whose every number is INVENTED, from plain formulas: for tests of what reads and shows light, never
/// for tests of physics.
namespace noonhouse::invented {

inline constexpr int kSunrise = 5 * 60 + 12, kSunset = 20 * 60 + 31;

/// A half wave from sunrise to sunset [W/m2].
inline double outdoors_w_m2(int minute) {
  const double part = (minute + 0.5 - kSunrise) / (kSunset - kSunrise);
  return part > 0.0 && part < 1.0 ? 920.0 * std::sin(std::numbers::pi * part) : 0.0;
}

/// A place without any light.
inline PlaceLight dark_place(std::string name) {
  PlaceLight place;
  place.name = std::move(name);
  place.bay = "west";
  place.sunlit.assign(kMinutesOfDay, 0.0);
  place.direct_w_m2.assign(kMinutesOfDay, 0.0);
  place.soft_w_m2.assign(kMinutesOfDay, 0.0);
  return place;
}

/// A place with soft light in a fixed share of the light outdoors, all day.
inline PlaceLight soft_place(std::string name, double share_of_outdoors) {
  PlaceLight place = dark_place(std::move(name));
  for (int m = 0; m < kMinutesOfDay; ++m)
    place.soft_w_m2[static_cast<std::size_t>(m)] = share_of_outdoors * outdoors_w_m2(m);
  return place;
}

/// Sun on a share of the place over [from, to), where the sun is up; six tenths of outdoors comes straight from it.
inline void shine(PlaceLight& place, int from, int to, double share) {
  for (int m = from; m < to; ++m) {
    const double sun_w_m2 = 0.6 * share * outdoors_w_m2(m);
    place.direct_w_m2[static_cast<std::size_t>(m)] = sun_w_m2;
    place.sunlit[static_cast<std::size_t>(m)] = sun_w_m2 > 0.0 ? share : 0.0;
  }
}

/// A clear day in a house of two bays: each kind of light occurs, and shadows come and go.
inline DayLight clear_day() {
  DayLight day;
  day.house = "The long house";
  day.plan = "base";
  day.date = std::chrono::year(2025) / 6 / 21;
  day.clear_sky = true;
  day.latitude_rad = 0.8;
  day.sunrise_minute = kSunrise;
  day.sunset_minute = kSunset;
  for (int m = 0; m < kMinutesOfDay; ++m) day.outdoors_w_m2.push_back(outdoors_w_m2(m));
  PlaceLight bench = soft_place("on the west low bench", 0.16);
  shine(bench, 6 * 60 + 40, 16 * 60 + 25, 1.0);
  shine(bench, 11 * 60 + 50, 12 * 60 + 20, 0.5);
  shine(bench, 16 * 60 + 25, 18 * 60, 0.3);
  PlaceLight below = soft_place("under the east middle bench", 0.04);
  shine(below, 7 * 60, 8 * 60 + 30, 0.35);
  PlaceLight floor = soft_place("floor of the west bay", 0.09);
  for (int m = 9 * 60; m < 15 * 60; m += 20) shine(floor, m, m + 10, 0.6);
  PlaceLight high = soft_place("1.6 m up in the west bay", 0.22);
  shine(high, kSunrise, kSunset, 1.0);
  day.places = {
      bench, below, floor, high, soft_place("floor of the potting shed", 0.02), dark_place("in the seed cupboard")};
  return day;
}

/// A day on which nothing is lit.
inline DayLight polar_night() {
  DayLight day;
  day.house = "The long house";
  day.date = std::chrono::year(2025) / 12 / 21;
  day.outdoors_w_m2.assign(kMinutesOfDay, 0.0);
  day.places = {dark_place("on the west low bench")};
  return day;
}

}  // namespace noonhouse::invented
