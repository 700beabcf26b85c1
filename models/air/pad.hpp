// SPDX-License-Identifier: Apache-2.0
#pragma once

/// A wet pad that air is drawn through: how near to saturation the air gets, what that costs in pressure and water.
/// Speeds are those in front of the pad, volume flow over face area. Does not model: dry streaks and scale of a pad
/// short of water, water torn off by the air (above about 2.5 m/s; common practice, no source), freezing.
namespace noonhouse {

/// A pad of corrugated cellulose sheets.
struct WetPad {
  double thickness_m = 0.1;  ///< along the air
  /// Wetted surface in a cubic metre [m2/m3]. Camargo, Ebinuma & Silveira 2005, Renew. Energy 30, 1157 (from memory).
  double surface_per_volume_m2_m3 = 370.0;
  /// Pressure lost in a metre of thickness, in units of rho v^2 / 2 [1/m]. Fitted by this project to the middle of what
  /// pads of 0.1 m lose at 1 to 1.5 m/s, 3.9 to 11.25 Pa in all. Franco, Valera, Madueno & Pena 2010, Trans. ASABE 53,
  /// 565, abstract.
  double resistance_per_m = 75.0;
};

/// Saturation efficiency [-], (T_in - T_out) / (T_in - T_wet bulb), 0 to 1, by the speed of the air [m/s], zero or
/// more:
///   eta = 1 - exp(-h a L / (rho v c_p)),  h = Nu k / l,  Nu = 0.10 (l / L)^0.12 Re^0.8 Pr^(1/3),  l = 1 / a
/// Re with v and l; a the surface per volume, L the thickness; dry air of this temperature and pressure
/// [Dowdy & Karabash 1987, ASHRAE Trans. 93 (2), 382; Camargo et al. 2005, above; both from memory]. 0.5 to 3 m/s, 50
/// to 300 mm (from memory), a pad wetted throughout, water at the wet bulb. Towards 1 for still air, 0 without
/// thickness.
double pad_efficiency(const WetPad& pad, double face_speed_m_s, double temperature_k, double pressure_pa);

/// Pressure lost through the wet pad [Pa] at a speed of the air [m/s], zero or more:  zeta L rho v^2 / 2.
/// Does not model the share that grows with v alone, nor more water on the pad, which both matter below 0.5 m/s.
double pad_pressure_drop_pa(const WetPad& pad, double face_speed_m_s, double temperature_k, double pressure_pa);

/// Temperature [K] of air that has been saturated by water of a temperature [K] and nothing else, the end of what a pad
/// or a mist can do:  h(T_s, w_s(T_s)) = h(T, w) + (w_s(T_s) - w) h_liquid(T_water)
/// The thermodynamic wet bulb if the water has that temperature; water 20 K warmer raises it by 0.2 K at 38 degC, 20 %.
/// Air at or beyond saturation returns its own temperature. [ASHRAE HoF 2017, ch. 1, the energy balance of eq. (33)]
double saturated_by_water_k(double temperature_k, double w, double pressure_pa, double water_k);

/// What leaves a pad.
struct PadOutlet {
  double temperature_k;
  double humidity_ratio;
  double water_per_dry_air;  ///< evaporated [kg/kg dry air], never negative
};

/// Air behind a pad of this efficiency, 0 to 1, that is fed with water of a temperature [K]:
///   T_out = T_in - eta (T_in - T_s)          [ASABE EP406; from memory], T_s = saturated_by_water_k
///   h_out = h_in + (w_out - w_in) h_liquid   the energy of air and water that evaporates is kept
/// Never beyond saturation. Air that arrives at or beyond saturation passes unchanged. Water that runs round and comes
/// back is taken to be as warm as when it left; bleed-off is the caller's.
PadOutlet pad_outlet(double temperature_k, double w, double pressure_pa, double efficiency, double water_k);

/// Water that a pad evaporates [kg/s] from a volume flow of air [m3/s] that arrives at this temperature and humidity
/// ratio.
double pad_evaporation_kg_s(const PadOutlet& outlet, double air_flow_m3_s, double temperature_k, double w,
                            double pressure_pa);

}  // namespace noonhouse
