// SPDX-License-Identifier: Apache-2.0
#pragma once

/// One drop of clean water in air: how fast it falls, how fast it evaporates, how far it gets. Diameters are of the
/// sphere of equal volume, zero or more. [P&K] is Pruppacher & Klett, Microphysics of Clouds and Precipitation, 2nd
/// ed. 1997; its equations are quoted from memory.
///
/// Valid for 2 um to 2.5 mm and air of -40 to 60 degC, well below boiling. Does not model: slip between the molecules
/// of the air (a drop of 10 um falls 1.7 % faster than said here, one of 1 um 17 %: Cunningham's factor 1 + 2.52 l / d,
/// l = 66 nm), the higher vapour pressure of curved surfaces (0.2 % at 1 um), salts, freezing (drops below 0 degC stay
/// liquid), radiation to or from the drop, and neighbours: the air far from the drop is given and stays so.
namespace noonhouse {

/// The air far from a drop.
struct AirAroundDrop {
  double temperature_k;
  double humidity_ratio;  ///< kg of vapour per kg of dry air
  double pressure_pa;
};

/// Drag coefficient [-] of a rigid sphere by its Reynolds number, above zero.
///   C_D = 24/Re (1 + 0.15 Re^0.687) + 0.42 / (1 + 42500 Re^-1.16)
/// Re below 3e5, within 6 % of measurements [Clift & Gauvin 1971, Can. J. Chem. Eng. 49, 439; the first term alone is
/// Schiller & Naumann 1933, Re below 800; both from memory]. Goes to Stokes's 24/Re at one end, to a constant, Newton's
/// law, at the other. Does not model: the inner circulation of a drop (faster by less than 1 % for water in air) and
/// its flattening, which slows drops of 3, 4 and 5 mm by 9, 16 and 23 % (Gunn & Kinzer 1949).
double sphere_drag_coefficient(double reynolds);

/// Speed [m/s] downwards at which a drop's weight less buoyancy equals its drag in still air:
///   C_D(Re) Re^2 = 4 rho_a (rho_w - rho_a) g d^3 / (3 mu^2),  Re = rho_a v d / mu
/// Dry air of this temperature and pressure, water of the air's temperature. Within 5 % of Gunn & Kinzer to 2 mm.
/// Does not model the way to that speed: a drop of 100 um needs 0.03 s, one of 1 mm half a second.
double terminal_velocity_m_s(double diameter_m, double air_temperature_k, double pressure_pa);

/// Ventilation: by which factor a flow along a drop raises transfer of vapour or heat above that at rest [-].
///   f = 1 + 0.108 X^2 for X < 1.4,  f = 0.78 + 0.308 X beyond,  X = Sc^(1/3) Re^(1/2)
/// Sherwood number 2 f; for heat Pr stands for Sc and the Nusselt number is 2 f. Measured on water drops falling at
/// their terminal velocity, X to 51.5 [Beard & Pruppacher 1971, J. Atmos. Sci. 28, 1455; P&K eqs. (13-60), (13-61)].
/// The law of Ranz & Marshall (sphere_nusselt) is the same within 4 % for X above 9 but promises a gain of 33 % at 100
/// um, where these drops have 13 %.
double ventilation_factor(double reynolds, double schmidt);

/// What a drop does at one instant.
struct DropMotion {
  double speed_m_s;         ///< downwards, relative to the air
  double temperature_k;     ///< of the drop, once it has settled: its own wet bulb
  double evaporation_kg_s;  ///< positive from drop to air, never negative
  double shrinkage_m2_s;    ///< -d(d^2)/dt: a constant of the air for a drop at rest, the d^2 law
};

/// A drop that moves at a speed [m/s] through air. At the temperature where the vapour that leaves takes up exactly
/// the heat that arrives, both by Spalding's law (with T_d, w_s of the drop, T, w of the air):
///   dm/dt = 2 pi d f_v rho D ln(1 + B_m),  1 + B_m = (1 + w_s(T_d)) / (1 + w)        [vapour]
///   dm/dt = 2 pi d f_h (k / c_pv) ln(1 + B_t),  B_t = c_pv (T - T_d) / L(T_d)         [heat]
///   -d(d^2)/dt = 8 f_v rho D ln(1 + B_m) / rho_w
/// [Spalding 1953, 4th Symp. on Combustion, 847; from memory]. rho, D, k, and the viscosity in Re are those at one
/// third of the way from the drop's temperature and humidity to the air's [Hubbard, Denny & Mills 1975, Int. J. Heat
/// Mass Transfer 18, 1003; from memory]; transport is that of dry air. Saturation is over liquid. In air at or beyond
/// saturation nothing evaporates and the drop has the air's temperature: growth is not modelled. Does not model the way
/// to that temperature: a drop of 100 um needs less than 0.1 s of its minute.
DropMotion drop_at_speed(double diameter_m, double speed_m_s, const AirAroundDrop& air);

/// The same at its terminal velocity in still air.
DropMotion falling_drop(double diameter_m, const AirAroundDrop& air);

/// Time [s] until a drop that rests in the air is gone:  t = d^2 / shrinkage. Infinite in saturated air.
/// Holds for drops that the air carries along, and for the smallest that fall.
double resting_lifetime_s(double diameter_m, const AirAroundDrop& air);

/// Time [s] and height [m] until a drop that falls at its terminal velocity is gone. Infinite in saturated air.
struct DropFate {
  double lifetime_s;
  double fall_m;
};

/// By Gauss's quadrature over the shrinking diameter (16 points):  t = int 2 x dx / K(x), z = int 2 x v(x) dx / K(x), K
/// the shrinkage. Uniform air without up or down draught.
DropFate fate_of_falling_drop(double diameter_m, const AirAroundDrop& air);

/// Diameter [m] left of a drop after it has fallen a height [m] through uniform still air at its terminal velocity;
/// zero if it is gone by then. Falls monotonically with height.
double diameter_after_fall_m(double diameter_m, double height_m, const AirAroundDrop& air);

/// Share of a drop's water [-] that evaporates in that fall, 0 to 1:  1 - (d_after / d)^3. One for a drop of no size,
/// but none in saturated air.
double evaporated_share_in_fall(double diameter_m, double height_m, const AirAroundDrop& air);

}  // namespace noonhouse
