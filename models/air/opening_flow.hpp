// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cmath>
#include <span>

#include "models/properties/constants.hpp"
#include "sim/core/smooth.hpp"

/// Air through openings by difference of pressure. Differences and flows are positive from side a to side b. What a
/// network of pressures differentiates is a template over its scalar; handbook formulas are plain functions below.
/// Not modelled: gusts, compressibility, a jet that meets the next opening, horizontal openings between heavy air above
/// and light below, and the discharge coefficient's fall at a high contrast of density [Hunt & Holford 2000].
namespace noonhouse {

/// Mean speed [m/s], signed like dp, of a resistance with a viscous and a quadratic part:
///   dp = a v + b v |v|,   so   v = 2 dp / (a + sqrt(a^2 + 4 b |dp|)),   a [Pa s/m] >= 0, b [Pa s2/m2] > 0
/// |dp| is taken as sqrt(dp^2 + d^2) with d = softness_pa > 0. So v is smooth and odd; its slope at zero is finite, at
/// most 1/sqrt(b d). Cost: |v| is too small, by a share of at most d^2 / (4 dp^2): 0.25 % at 10 d, 0.0025 % at 100 d.
template <class S>
S resisted_speed(const S& dp_pa, const S& viscous, const S& quadratic, double softness_pa) {
  using std::sqrt;
  return 2.0 * dp_pa / (viscous + sqrt(viscous * viscous + 4.0 * quadratic * smooth_abs(dp_pa, softness_pa)));
}

inline constexpr double kOrificeSoftness = 1e-3;  ///< [Pa]; a stack of 1 m and 1 K makes 0.04 Pa

/// Volume flow through a sharp opening [m3/s], signed like dp:  Q = C_d A sqrt(2 dp / rho)
///   [Bernoulli; ASHRAE Handbook of Fundamentals, ventilation chapter; BS 5925:1991]
/// Density [kg/m3] is that of the air that flows. Near zero: resisted_speed() with a = 0, b = rho / 2.
template <class S>
S orifice_flow(const S& dp_pa, double discharge, double area_m2, const S& density_kg_m3,
               double softness_pa = kOrificeSoftness) {
  return discharge * area_m2 * resisted_speed(dp_pa, S(0.0), S(0.5 * density_kg_m3), softness_pa);
}

/// Volume flow through cracks [m3/s], signed like dp:  Q = C dp^n, n from 0.5 (sharp) to 1 (viscous)
///   [power law of cracks, ASHRAE Handbook of Fundamentals, ventilation chapter]
/// C is the flow at 1 Pa [m3/(s Pa^n)]. Taken as C dp (dp^2 + d^2)^((n-1)/2): smooth, odd, slope C d^(n-1) at zero; too
/// small by a share of at most (1 - n) d^2 / (2 dp^2). Not modelled: C's change with the air's density and viscosity.
template <class S>
S crack_flow(const S& dp_pa, double coefficient, double exponent, double softness_pa = kOrificeSoftness) {
  using std::pow;
  return coefficient * dp_pa * pow(S(dp_pa * dp_pa + softness_pa * softness_pa), 0.5 * (exponent - 1.0));
}

/// Mean of sqrt(max(p, 0)) [Pa^0.5] while p goes evenly from p_0 to p_1, the square root of a flow that has two ways.
/// max(p, 0) is taken as s(p) = (p + sqrt(p^2 + d^2)) / 2. With p = s - d^2 / (4 s) the integral of sqrt(s) dp is
/// 2/3 s^(3/2) - d^2 / (2 s^(1/2)), and with a = sqrt(s_0), b = sqrt(s_1), k = d / (2 a b) its divided difference is
///   [2/3 (a^2 + a b + b^2) + d k] / [(a + b) (1 + k^2)]
/// Exact for the softened integrand, free of branches and of cancellation, smooth everywhere; d > 0.
template <class S>
S mean_root_of_positive(const S& p0_pa, const S& p1_pa, double softness_pa) {
  using std::sqrt;
  const S a = sqrt(smooth_positive(p0_pa, softness_pa));
  const S b = sqrt(smooth_positive(p1_pa, softness_pa));
  const S product = a * b;
  const S k = 0.5 * softness_pa / product;
  return ((2.0 / 3.0) * (a * a + product + b * b) + softness_pa * k) / ((a + b) * (1.0 + k * k));
}

/// Mass flows both ways through one opening at once [kg/s], neither negative.
template <class S>
struct TwoWayFlow {
  S a_to_b_kg_s{};
  S b_to_a_kg_s{};
  S net() const { return a_to_b_kg_s - b_to_a_kg_s; }
};

inline constexpr double kTallOpeningSoftness = 1e-4;  ///< [Pa]

/// A tall opening in a vertical wall between two columns of still air, each of one density.
///   p_a - p_b at height z over the sill:  dp(z) = dp(0) - (rho_a - rho_b) g z
///   m_ab = C_d W sqrt(2 rho_a) Int_0^H sqrt(max(dp, 0)) dz,  m_ba likewise with rho_b and -dp
/// [Brown & Solvason 1962, Int. J. Heat Mass Transf. 5, 859, whose equal flows are the case of the neutral level at
/// half height: Q = (C_d / 3) W H sqrt(g H |rho_a - rho_b| / rho)]. Bernoulli holds along each level; the neutral
/// level, where dp = 0, may lie in the opening or outside it, and both flows are smooth as it crosses an edge.
/// Softness d: each flow is as exact as its square, but a counterflow stays, d / (2 |dp|) of the flow, and so the net
/// flow is small by that share: 0.05 % at 0.1 Pa. At rest each way moves as if by d / 2, about 1 cm/s.
/// Not modelled: mixing of the two flows, layers within a column.
struct TallOpening {
  double width_m = 0.0;
  double height_m = 0.0;
  double discharge = 0.6;  ///< common practice, no source; 0.6 to 0.7 at low contrast of density

  /// Densities above zero [kg/m3].
  template <class S>
  TwoWayFlow<S> flow(const S& dp_sill_pa, const S& density_a_kg_m3, const S& density_b_kg_m3,
                     double softness_pa = kTallOpeningSoftness) const {
    using std::sqrt;
    const S dp_head_pa = dp_sill_pa - (kGravity * height_m) * (density_a_kg_m3 - density_b_kg_m3);
    const double size = discharge * width_m * height_m;
    return {size * sqrt(2.0 * density_a_kg_m3) * mean_root_of_positive(dp_sill_pa, dp_head_pa, softness_pa),
            size * sqrt(2.0 * density_b_kg_m3) * mean_root_of_positive(S(-dp_sill_pa), S(-dp_head_pa), softness_pa)};
  }
};

/// Height of the neutral level over the sill [m], anywhere: below zero or above the opening when air flows one way.
///   z = dp(0) / (g (rho_a - rho_b)); infinite or not a number between columns of equal density.
double neutral_level_m(double dp_sill_pa, double density_a_kg_m3, double density_b_kg_m3);

/// A screen's resistance by approach speed u (flow over the whole screen):  dp = viscous u + quadratic u^2.
struct ScreenResistance {
  double viscous_pa_s_m = 0.0;
  double quadratic_pa_s2_m2 = 0.0;
  /// Pressure loss [Pa], signed like the speed [m/s].
  double pressure_pa(double speed_m_s) const {
    return (viscous_pa_s_m + quadratic_pa_s2_m2 * std::abs(speed_m_s)) * speed_m_s;
  }
};

/// Loss coefficient F of a woven screen [-], dp = F rho u^2 / 2, by porosity e (open share, 0 to 1) and the Reynolds
/// number of the thread's diameter at the approach speed, Re > 0:
///   F = [18 / Re + 0.75 / log10(Re + 1.25) + 0.055 log10(Re)] (1 - e^2) / e^2
/// [Bailey, Montero, Perez Parra, Robertson, Baeza & Kamaruddin 2003, Biosyst. Eng. 86, 217; coefficients from memory].
/// Re 0.5 to 200 (from memory). Porosity alone says little: screens of 35 and 36 % had C_s = 0.207 and 0.325 at 0.25
/// m/s [Lopez et al. 2016, Sensors 16, 690, abstract], a factor of 2.5 in loss. A measured resistance is better.
double bailey_screen_loss(double porosity, double thread_reynolds);

/// The same as two terms that share its value at a reference speed: the term 18 / Re is exactly the viscous one.
ScreenResistance bailey_screen(double porosity, double thread_diameter_m, double reference_speed_m_s,
                               double density_kg_m3, double viscosity_pa_s);

/// A screen as a thin porous layer:  dp = t (mu / K u + rho Y / sqrt(K) u^2)   [Forchheimer's law], with
///   K = 3.44e-9 e^1.6 m2,  Y = 4.3e-2 e^-2.13
/// [Miguel, van de Braak & Bot 1997, J. Agric. Eng. Res. 67, 105; coefficients from memory]. Porosity 0.04 to 0.90.
ScreenResistance forchheimer_screen(double porosity, double thickness_m, double density_kg_m3, double viscosity_pa_s);

/// A screen of known discharge coefficient, dp = rho u^2 / (2 C_s^2).
ScreenResistance screen_of_discharge(double discharge, double density_kg_m3);

/// Volume flow [m3/s], signed like dp, through an opening and a screen of any size in series:
///   dp = rho v^2 / (2 C_d^2) + screen's loss at u = v A / A_screen
/// By resisted_speed(); a viscous screen keeps the slope at zero finite by itself.
template <class S>
S screened_flow(const S& dp_pa, double discharge, double area_m2, double screen_area_m2, const ScreenResistance& screen,
                const S& density_kg_m3, double softness_pa = kOrificeSoftness) {
  const double spread = area_m2 / screen_area_m2;
  const S quadratic = density_kg_m3 / (2.0 * discharge * discharge) + screen.quadratic_pa_s2_m2 * spread * spread;
  return area_m2 * resisted_speed(dp_pa, S(screen.viscous_pa_s_m * spread), quadratic, softness_pa);
}

/// Discharge coefficient [-] of two quadratic resistances of one area in series:  C^-2 = C_1^-2 + C_2^-2.
double discharge_in_series(double first, double second);

/// Effective area of openings in series [m2]:  A^-2 = sum A_i^-2   [BS 5925:1991]; zero if one of them is shut.
/// Each takes the share (A / A_i)^2 of the pressure. All of one discharge coefficient.
double area_in_series_m2(std::span<const double> areas_m2);

/// Stack flow through openings below and above a neutral level [m3/s], warm inside:
///   Q = C_d A sqrt(2 g dH (T_i - T_o) / T_i)
/// [ASHRAE Handbook of Fundamentals, ventilation chapter]; dH from the opening's middle to the neutral level. For two
/// openings take area_in_series_m2() and the height between them [BS 5925:1991]. Indoors colder than outdoors the air
/// runs the other way and T_o divides: the result is negative.
double stack_flow(double discharge, double area_m2, double height_m, double inside_k, double outside_k);

/// Stack flow each way through one opening [m3/s]:  Q = C_d (A / 3) sqrt(g H |dT| / T), T the mean.  [BS 5925:1991]
double single_sided_stack_flow(double discharge, double area_m2, double height_m, double inside_k, double outside_k);

/// Wind's exchange through openings in one wall [m3/s]:  Q = 0.025 A U   [BS 5925:1991]; U at the house's height.
/// For any wind direction; single measurements differ by 40 % (from memory).
double single_sided_wind_flow(double area_m2, double speed_m_s);

/// Wind through openings in two walls [m3/s]:  Q = C_d A U sqrt(dC_p)   [BS 5925:1991]; A is the effective area of the
/// openings upwind and downwind in series, dC_p their difference of pressure coefficients, which gives the sign.
double cross_wind_flow(double discharge, double area_m2, double speed_m_s, double pressure_coefficient_difference);

/// Exchange each way through one roof vent by stack and wind together [m3/s], never negative:
///   Q = (A / 2) C_d sqrt(2 g (|T_i - T_o| / T_o) (H / 4) + C_w U^2)
/// [Boulard & Baille 1995, J. Agric. Eng. Res. 61, 145, eq. (15)], with C_d = 0.644 and C_w = 0.09 there (coefficients
/// from memory). H is the opening's height, U the wind's speed. Not modelled: air in at one opening and out at another.
double vent_exchange_flow(double discharge, double wind_effect, double area_m2, double height_m, double inside_k,
                          double outside_k, double speed_m_s);

/// Share of the wind's speed that an inlet takes up, its least and most.
struct InletEffectiveness {
  double least = 0.0, most = 0.0;
};
/// [ASHRAE Handbook of Fundamentals, ventilation chapter; from memory]
inline constexpr InletEffectiveness kPerpendicularInlet{0.5, 0.6};
inline constexpr InletEffectiveness kDiagonalInlet{0.25, 0.35};

/// Wind through an inlet of free area A [m3/s]:  Q = C_v A U   [same source]; outlets at least as large.
double inlet_wind_flow(double effectiveness, double area_m2, double speed_m_s);

}  // namespace noonhouse
