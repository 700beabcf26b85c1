// SPDX-License-Identifier: Apache-2.0
#include <algorithm>

#include "models/power/battery.hpp"

namespace noonhouse {

double panel_power_w(double area_m2, double efficiency, double derate_per_k, double noct_k, double plane_w_m2,
                     double air_k) {
  constexpr double kTestAirK = 293.15, kTestIrradiance = 800.0, kRatedCellK = 298.15;
  const double cell_k = air_k + plane_w_m2 * (noct_k - kTestAirK) / kTestIrradiance;
  return std::max(0.0, area_m2 * efficiency * plane_w_m2 * (1.0 + derate_per_k * (cell_k - kRatedCellK)));
}

}  // namespace noonhouse
