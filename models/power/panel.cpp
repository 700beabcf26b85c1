// SPDX-License-Identifier: Apache-2.0
#include "models/power/panel.hpp"

#include <algorithm>

namespace noonhouse {

double noct_cell_k(double noct_k, double plane_w_m2, double air_k) {
  constexpr double kTestAirK = 293.15, kTestIrradiance = 800.0;
  return air_k + plane_w_m2 * (noct_k - kTestAirK) / kTestIrradiance;
}

double wind_cell_k(const PanelHeatLoss& loss, double plane_w_m2, double air_k, double wind_m_s) {
  return air_k + plane_w_m2 / (loss.still_w_m2_k + loss.wind_j_m3_k * wind_m_s);
}

double usable_light_w_m2(double direct_w_m2, double scattered_w_m2, double direct_left, double soiled) {
  return (1.0 - soiled) * (direct_left * direct_w_m2 + scattered_w_m2);
}

double derated_power_w(double area_m2, double efficiency, double derate_per_k, double plane_w_m2, double cell_k) {
  constexpr double kRatedCellK = 298.15;
  return std::max(0.0, area_m2 * efficiency * plane_w_m2 * (1.0 + derate_per_k * (cell_k - kRatedCellK)));
}

double panel_power_w(double area_m2, double efficiency, double derate_per_k, double noct_k, double plane_w_m2,
                     double air_k) {
  return derated_power_w(area_m2, efficiency, derate_per_k, plane_w_m2, noct_cell_k(noct_k, plane_w_m2, air_k));
}

double switching_controller_efficiency(double battery_v, double panel_best_v) {
  return std::min(1.0, battery_v / panel_best_v);
}

}  // namespace noonhouse
