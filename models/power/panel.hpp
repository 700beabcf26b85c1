// SPDX-License-Identifier: Apache-2.0
#pragma once

namespace noonhouse {

/// Temperature of a panel's cells [K] by its nominal operating cell temperature [K]:  T = T_air + G (NOCT - 20 degC) /
/// 800 W/m2  [Ross 1976; NOCT as IEC 61215 defines it]. G in the panel's plane [W/m2]. Holds for an open rack in a wind
/// of about 1 m/s; does not model wind, the share of G that leaves as electricity, a rack close to a roof, lag.
double noct_cell_k(double noct_k, double plane_w_m2, double air_k);

/// How a panel gives its heat off [Faiman 2008, Progress in Photovoltaics 16:307, eq. for T_mod; from memory].
struct PanelHeatLoss {
  double still_w_m2_k = 25.0;  ///< u0, still air
  double wind_j_m3_k = 6.84;   ///< u1, more for each metre a second of wind
};
/// Temperature of a panel [K]:  T = T_air + G / (u0 + u1 v)  with the wind v at the panel [m/s]. Holds for an open
/// rack. Does not model the radiative loss to a clear sky nor lag.
double wind_cell_k(const PanelHeatLoss& loss, double plane_w_m2, double air_k, double wind_m_s);

/// Light that a panel uses [W/m2]:  G = (1 - soiled) (left D + d), D direct and d scattered light in its plane,
/// `direct_left` the share of the direct light that obstacles leave, `soiled` the share that dirt takes. Both 0 to 1.
/// Does not model: reflection at low sun, obstacles before the sky, and that shade on a few cells of a string takes
/// more than its share; where obstacles stand near the panel the true loss is greater.
double usable_light_w_m2(double direct_w_m2, double scattered_w_m2, double direct_left, double soiled);

/// Power of a panel with cells of a known temperature [W], never negative:  P = A eta G (1 + gamma (T_cell - 25 degC))
/// [linear derate: IEC 61853-1]. Does not model the drop of efficiency in weak light.
double derated_power_w(double area_m2, double efficiency, double derate_per_k, double plane_w_m2, double cell_k);

/// The same with the cell temperature by NOCT [W].
double panel_power_w(double area_m2, double efficiency, double derate_per_k, double noct_k, double plane_w_m2,
                     double air_k);

/// Share of a panel's power that a charge controller hands on which keeps the panel at its best voltage, 0 to 1; range
/// 0.95 to 0.98, from memory.
inline constexpr double kTrackingControllerEfficiency = 0.96;

/// The same of a controller that merely switches the panel onto the battery: the panel works at the battery's voltage,
/// so the share is that of the voltages, at most 1 [from memory]. Does not model its own loss, about 1 %.
double switching_controller_efficiency(double battery_v, double panel_best_v);

}  // namespace noonhouse
