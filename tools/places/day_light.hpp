// SPDX-License-Identifier: Apache-2.0
#pragma once
#include "tools/places/place_light.hpp"

namespace noonhouse {

/// Which day is looked at, and under which sky.
struct DayQuestion {
  std::chrono::year_month_day date;
  bool clear_sky = false;  ///< a cloudless day even where the scenario has its own weather
  double turbidity = 3.5;  ///< of that cloudless sky: Linke's factor at air mass 2
  std::string drawn;       ///< name of a cloth that is drawn all day; empty for none
};

/// The light of a day on and beneath every bench, on each bay's open floor, and across each bay at the middle height of
/// each of its layers of air. Direct sun is followed minute by minute from each place; it counts as direct where the
/// cover lets at least 5 % through unscattered. Outside the run's days a clear sky is assumed. Throws UserError for a
/// cloth that the scenario does not have.
DayLight light_of_day(const Scenario& scenario, const PlanScenario& plan, const DayQuestion& question);

}  // namespace noonhouse
