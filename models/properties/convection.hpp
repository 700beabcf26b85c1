// SPDX-License-Identifier: Apache-2.0
#pragma once

/// Published laws of convection. A Nusselt number is h L / k, averaged over the surface; L is the length that the
/// law names, k the conductivity of the air at the film temperature, the mean of surface and air. Outside its range
/// every law here is extrapolated, none is clamped; Rayleigh and Reynolds numbers are never negative.
/// [I] is Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, 5th ed.; equation numbers from memory.
namespace noonhouse {

/// Rayleigh number [-] of an ideal gas:  Ra = g beta |dT| L^3 / (nu alpha), beta = 1 / T_film   [I, eq. (9.25)]
/// |dT| is the difference between surface and air. Dry air at the film temperature and the pressure.
double rayleigh_number(double difference_k, double length_m, double film_temperature_k, double pressure_pa);

/// Reynolds number [-]:  Re = V L / nu.  Dry air at the film temperature and the pressure.
double reynolds_number(double speed_m_s, double length_m, double film_temperature_k, double pressure_pa);

/// Heat transfer coefficient [W/(m2 K)] of a Nusselt number:  h = Nu k / L.
double coefficient_from_nusselt(double nusselt, double length_m, double film_temperature_k);

/// Free convection on a vertical plate, laminar and turbulent; L is its height.
///   Nu = {0.825 + 0.387 Ra^(1/6) / [1 + (0.492/Pr)^(9/16)]^(8/27)}^2
/// All Ra to 1e12 [Churchill & Chu 1975, Int. J. Heat Mass Transfer 18, 1323; I, eq. (9.26)].
double vertical_plate_nusselt(double rayleigh, double prandtl);

/// The same, laminar only and there the better of the two.
///   Nu = 0.68 + 0.670 Ra^(1/4) / [1 + (0.492/Pr)^(9/16)]^(4/9)
/// Ra up to 1e9 [Churchill & Chu 1975; I, eq. (9.27)].
double vertical_plate_laminar_nusselt(double rayleigh, double prandtl);

/// Free convection on a plate inclined by an angle from the vertical [rad], on the side whose film clings to it: the
/// top of a cold plate, the underside of a warm one. The laminar law of the vertical plate with g cos(angle).
/// Angles to 60 degrees; Ra is the vertical plate's [Rich 1953, Trans. ASME 75, 489; I, sec. 9.6.2].
/// Does not model the other side, where the film breaks away: more heat, see surface_film.
double inclined_plate_nusselt(double rayleigh, double prandtl, double from_vertical_rad);

/// Free convection from a warm plate facing up or a cold one facing down; L is area over perimeter.
///   Nu = 0.54 Ra^(1/4), Ra 1e4 to 1e7    [McAdams 1954; I, eq. (9.30)]
///   Nu = 0.15 Ra^(1/3), Ra 1e7 to 1e11   [same; I, eq. (9.31)]
/// The published jump of 6 % at Ra = 1e7 is kept; below 1e4 the first holds on, above 1e11 the second.
double horizontal_plate_unstable_nusselt(double rayleigh);

/// Free convection from a warm plate facing down or a cold one facing up; L is area over perimeter.
///   Nu = 0.27 Ra^(1/4), Ra 1e5 to 1e10   [McAdams 1954; I, eq. (9.32)]
double horizontal_plate_stable_nusselt(double rayleigh);

/// Free convection from a long horizontal cylinder; L is its diameter.
///   Nu = {0.60 + 0.387 Ra^(1/6) / [1 + (0.559/Pr)^(9/16)]^(8/27)}^2
/// Ra to 1e12 [Churchill & Chu 1975, Int. J. Heat Mass Transfer 18, 1049; I, eq. (9.34)].
double horizontal_cylinder_nusselt(double rayleigh, double prandtl);

/// Forced convection on a flat plate along the wind; L is its length that way.
///   Nu = 0.664 Re^(1/2) Pr^(1/3), Re to 5e5                [I, eq. (7.30)]
///   Nu = (0.037 Re^(4/5) - 871) Pr^(1/3), Re to 1e8         [I, eq. (7.38)]
/// Pr at least 0.6. The two meet at Re = 5e5 within 0.1 %. Does not model a leading edge that is blunt or rough.
double flat_plate_nusselt(double reynolds, double prandtl);

/// Forced convection on a flat plate that is turbulent from its edge on:  Nu = 0.037 Re^(4/5) Pr^(1/3)
///   [I, eq. (7.41)]; Re to 1e8, Pr 0.6 to 60.
double flat_plate_turbulent_nusselt(double reynolds, double prandtl);

/// Forced convection on a long cylinder across the wind; L is its diameter.
///   Nu = 0.3 + 0.62 Re^(1/2) Pr^(1/3) / [1 + (0.4/Pr)^(2/3)]^(1/4) [1 + (Re / 282000)^(5/8)]^(4/5)
/// Re Pr at least 0.2 [Churchill & Bernstein 1977, J. Heat Transfer 99, 300; I, eq. (7.54)].
double cylinder_crossflow_nusselt(double reynolds, double prandtl);

/// Forced convection on a sphere:  Nu = 2 + 0.6 Re^(1/2) Pr^(1/3); L is its diameter.
/// Re 0 to 200 measured [Ranz & Marshall 1952, Chem. Eng. Prog. 48, 141 and 173].
double sphere_nusselt(double reynolds, double prandtl);

/// Free and forced together, the free flow along or across the forced one:  Nu^3 = Nu_F^3 + Nu_N^3
///   [I, eq. (9.64) with n = 3]. Does not model flows against each other, where the sign is minus.
double mixed_nusselt(double forced, double natural);

/// Coefficient outdoors by wind [W/(m2 K)], longwave included:  h = 5.7 + 3.8 V   [McAdams 1954, Heat Transmission]
/// V up to 5 m/s.
double mcadams_wind_coefficient(double speed_m_s);

/// Coefficient outdoors by wind [W/(m2 K)], convection only:  h = 2.8 + 3.0 V
///   [Watmuff, Charters & Proctor 1977, COMPLES 2, 56]; V up to 7 m/s.
double watmuff_wind_coefficient(double speed_m_s);

/// Coefficient outdoors by wind beside the surface [W/(m2 K)], convection only:  h_ce = 4 + 4 v
///   [EN ISO 6946:2017, annex C, eq. (C.5); from memory]
double iso6946_outside_coefficient(double speed_m_s);

/// Which way heat flows through a building part.
enum class HeatFlow { up, horizontal, down };

/// Convective coefficient inside h_ci [W/(m2 K)]: up 5.0, horizontal 2.5, down 0.7.
///   [EN ISO 6946:2017, annex C; from memory]. Horizontal holds within 30 degrees of the horizontal plane.
double iso6946_inside_coefficient(HeatFlow flow);

/// Surface resistance inside R_si [m2 K/W], convection and longwave (emissivity 0.9, 20 degC): up 0.10, horizontal
/// 0.13, down 0.17   [EN ISO 6946:2017, Table 7; from memory]
double iso6946_inside_resistance(HeatFlow flow);

/// Surface resistance outside R_se [m2 K/W] in 4 m/s of wind.   [same table]
inline constexpr double kIso6946OutsideResistance = 0.04;

}  // namespace noonhouse
