// SPDX-License-Identifier: Apache-2.0
#pragma once
#include "tools/scenario/supply_spec.hpp"

namespace noonhouse {

/// What leaves a store in a day [kg or J]: on the run's mean, and on its heaviest day.
struct DayUse {
  double mean = 0.0, heaviest = 0.0;
};

/// Days that a store carries by itself; not a number where nothing leaves it.
struct CarryDays {
  double at_mean, at_heaviest;
};

/// Days until a tank is down to its low mark, without rain or refill, from what it holds [kg].
///   t = (m - m_low) / use, 0 below the mark
/// `use`: all draws with what evaporates. Whoever asks sets the mark to where the first draw leaves off (`keeps_back`).
CarryDays tank_days(double water_kg, const TankSpec& tank, const DayUse& use);

/// The battery as days without sun have to reckon with it.
struct BatteryDay {
  DayUse loads;               ///< drawn by all loads with standby [J a day]
  double coldest_k = 298.15;  ///< to which its usable charge is counted
  double mean_k = 298.15;     ///< for its self-discharge
  double cells = 1.0;         ///< share that works
};

/// Days until a battery is down to where all loads are cut off, without sun, from what it holds [J]: days_without_sun
/// with the charge that the coldest battery of the run does not give (UsableCharge), self-discharge
/// at its mean temperature and standby all day long, also where a run's loads were cut off at times.
/// Whoever asks sets the cut-off to where the first load is shed. Does not model: fast rates.
CarryDays battery_days(double charge_j, const PowerSpec& power, const BatteryDay& day);

}  // namespace noonhouse
