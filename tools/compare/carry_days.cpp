// SPDX-License-Identifier: Apache-2.0
#include "tools/compare/carry_days.hpp"

#include <algorithm>
#include <cmath>

#include "models/power/autonomy.hpp"
#include "models/power/battery_kind.hpp"
#include "models/power/cold_capacity.hpp"
#include "models/properties/water.hpp"
#include "sim/core/errors.hpp"
#include "sim/core/tick.hpp"
#include "tools/record/run_record.hpp"

namespace noonhouse {
namespace {

constexpr double kNothing = 1e-9;  ///< a day [kg, J]
constexpr double kWarmK = 298.15;

double finite_or_none(double days) { return std::isfinite(days) ? days : kNotHappened; }

}  // namespace

CarryDays tank_days(double water_kg, const TankSpec& tank, const DayUse& use) {
  const double usable_kg = std::max(0.0, water_kg - kWaterKgPerM3 * tank.low_m3);
  const auto days = [&](double a_day) { return a_day > kNothing ? usable_kg / a_day : kNotHappened; };
  return {days(use.mean), days(std::max(use.mean, use.heaviest))};
}

CarryDays battery_days(double charge_j, const PowerSpec& power, const BatteryDay& day) {
  const BatteryKind* kind = find_battery_kind(power.battery_kind);
  NOON_ASSERT(kind != nullptr);
  const UsableCharge<double> usable = usable_charge(power.battery_j, kind->cold(), day.coldest_k, day.cells);
  const double cut_off_j = usable.charge_at(power.cut_off);
  const double standby_w = power.standby_w + power.inverter_standby_w;
  const auto days = [&](double load_j) {
    SunlessUse use;
    use.daily_load_j = std::max(0.0, load_j - kSecondsPerDay * standby_w);
    use.standby_w = standby_w;
    use.discharge_efficiency = power.discharge_efficiency;
    use.self_discharge_per_s =
        kind->self_discharge_per_s() * std::exp2((day.mean_k - kWarmK) / kind->self_discharge_doubles_k.value);
    return finite_or_none(days_without_sun(charge_j, cut_off_j, use));
  };
  return {days(day.loads.mean), days(std::max(day.loads.mean, day.loads.heaviest))};
}

}  // namespace noonhouse
