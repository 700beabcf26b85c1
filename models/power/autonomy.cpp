// SPDX-License-Identifier: Apache-2.0
#include "models/power/autonomy.hpp"

#include <cmath>
#include <limits>

#include "sim/core/tick.hpp"

namespace noonhouse {

double battery_size_j(double daily_use_j, double days, double depth, double efficiency) {
  return daily_use_j * days / (depth * efficiency);
}

double array_size_w(double daily_use_j, double full_sun_hours, double efficiency) {
  return daily_use_j / (3600.0 * full_sun_hours * efficiency);
}

double days_without_sun(double charge_j, double cut_off_j, const SunlessUse& use) {
  const double above_j = charge_j - cut_off_j;
  if (above_j <= 0.0) return 0.0;
  const double drawn_w = (use.daily_load_j / kSecondsPerDay + use.standby_w) / use.discharge_efficiency;
  const double rate = use.self_discharge_per_s;
  const double leaves_w = drawn_w + rate * cut_off_j;  // at the end
  if (leaves_w <= 0.0) return std::numeric_limits<double>::infinity();
  const double growth = rate * above_j / leaves_w;
  // log1p(x) / x is 1 to rounding long before the rate is nothing.
  const double shortened = growth > 1e-15 ? std::log1p(growth) / growth : 1.0;
  return above_j / leaves_w * shortened / kSecondsPerDay;
}

}  // namespace noonhouse
