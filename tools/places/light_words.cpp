// SPDX-License-Identifier: Apache-2.0
#include "tools/places/light_words.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "sim/core/errors.hpp"
#include "tools/units/clock_text.hpp"

namespace noonhouse {

std::string light_state_name(LightState state) {
  switch (state) {
    case LightState::dark:
      return "dark";
    case LightState::dim:
      return "dim";
    case LightState::soft:
      return "soft light";
    case LightState::flecked:
      return "sun flecks";
    case LightState::direct:
      return "full sun";
  }
  NOON_ASSERT(false);
  return "";
}

std::string light_state_meaning(LightState state) {
  if (state == LightState::flecked) return "on part of the place or for part of the time";
  if (state == LightState::dim) return fmt::format("below {:.0f} % of the light outdoors", 100.0 * kDimBelowOutdoors);
  return "";
}

std::string sky_text(const DayLight& day) {
  return day.clear_sky ? "clear sky assumed" : "sky of the scenario's weather";
}

std::string horizon_text(const DayLight& day) {
  if (day.sunrise_minute && day.sunset_minute) {
    return fmt::format("sun above a flat horizon from {} to {}", minute_text(*day.sunrise_minute),
                       minute_text(*day.sunset_minute));
  }
  if (day.sunrise_minute) return fmt::format("sunrise at {}, no sunset", minute_text(*day.sunrise_minute));
  if (day.sunset_minute) return fmt::format("sunset at {}, no sunrise", minute_text(*day.sunset_minute));
  const bool always = std::all_of(day.outdoors_w_m2.begin(), day.outdoors_w_m2.end(), [](double w) { return w > 0.0; });
  return always ? "the sun does not set" : "the sun does not rise";
}

std::string minute_text(int minute) { return format_time_of_day(60.0 * minute); }

double outdoor_dli_mol_m2(const DayLight& day) {
  return outdoor_par_mol_m2_s(day, 0, kMinutesOfDay) * 60.0 * kMinutesOfDay;
}

double outdoor_most_w_m2(const DayLight& day) {
  NOON_ASSERT(!day.outdoors_w_m2.empty());
  return *std::max_element(day.outdoors_w_m2.begin(), day.outdoors_w_m2.end());
}

}  // namespace noonhouse
