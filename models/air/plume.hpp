// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cmath>

#include "models/air/rising_power.hpp"
#include "models/properties/constants.hpp"

/// Turbulent plumes of warm air in still surroundings of one density, after Morton, Taylor & Turner 1956, Proc. R. Soc.
/// A 234, 1 ("MTT"): a top-hat profile draws in air at its edge at a share alpha of its own speed. Flows are volume
/// flows at a height above the (virtual) source. With volume flow Q, momentum flux M and buoyancy flux B kept,
///   dQ/dz = alpha w x edge,   dM/dz = g' x section,   B = g' Q
/// Holds for small contrasts of density, far from the source (heights of several of its widths), up to the height at
/// which the plume meets a layer as warm as itself. Not modelled: surroundings that get warmer with height (each layer
/// of a house takes the local forms below), plumes that merge, draughts that bend them, overshoot.
namespace noonhouse {

/// Share alpha of a round plume's speed at which it draws in air, top-hat profile [-]: 0.10 to 0.13 measured
/// [Linden, Lane-Serff & Smeed 1990, J. Fluid Mech. 212, 309, and the fire handbooks; from memory].
inline constexpr double kRoundEntrainment = 0.10;
/// The same of a plume over a line, 0.10 to 0.16 (from memory), and along a wall, about a half of it (from memory).
inline constexpr double kLineEntrainment = 0.14, kWallEntrainment = 0.07;

inline constexpr double kReducedGravitySoftness = 1e-3;  ///< [m/s2]; 1 K makes 0.033
inline constexpr double kBuoyancyFluxSoftness = 1e-6;    ///< [m4/s3]; 1 W makes 2.8e-5
inline constexpr double kLineFluxSoftness = 1e-6;        ///< [m3/s3]; 1 W/m makes 2.8e-5

/// Reduced gravity of air in other air [m/s2], positive upwards:  g' = g (T - T_around) / T_around.
/// Virtual temperatures [K] take moisture along.
template <class S>
S reduced_gravity(const S& temperature_k, const S& around_k) {
  return kGravity * (temperature_k - around_k) / around_k;
}

/// Buoyancy flux [m4/s3] that a convective heat [W] gives to air, positive upwards:  B = g P / (rho c_p T)   [MTT].
/// For heat per length [W/m] the result is in m3/s3, for heat per area [W/m2] in m2/s3.
template <class S>
S buoyancy_flux(const S& heat_w, double density_kg_m3, double temperature_k) {
  return kGravity / (density_kg_m3 * kDryAirHeat * temperature_k) * heat_w;
}

/// Mean excess of a plume's temperature over its surroundings [K]:  P / (rho c_p Q), for a flow above zero.
double plume_excess_k(double heat_w, double flow_m3_s, double density_kg_m3);

/// C in Q = C B^(1/3) z^(5/3) [-]:  C = (6 alpha / 5) (9 alpha / 10)^(1/3) pi^(2/3)   [MTT].
double round_plume_constant(double entrainment = kRoundEntrainment);

/// Volume flow of `count` equal round plumes that share a buoyancy flux B and do not meet [m3/s]; zero for B <= 0:
///   Q = n C (B / n)^(1/3) z^(5/3)   [MTT; several of them: Linden, Lane-Serff & Smeed 1990]
/// Height z >= 0 [m] above the virtual source. Near B = 0 by rising_power().
template <class S>
S round_plume_flow(const S& buoyancy_flux_m4_s3, double height_m, int count = 1,
                   double entrainment = kRoundEntrainment) {
  const double size = round_plume_constant(entrainment) * std::cbrt(height_m * height_m) * height_m;
  return (count * size) * rising_power(S(buoyancy_flux_m4_s3 / count), 1.0 / 3.0, kBuoyancyFluxSoftness);
}

/// The same from what the plume is like where it passes, not from its source [m3/s]; zero for g' <= 0:
///   Q = pi b^2 w,   b = 6 alpha z / 5,   w^2 = (3/4) g' z
/// The last is MTT's solution with B taken out: w^3 = (5 / (6 alpha))^3 (9 alpha / (10 pi)) B / z and B = g' pi b^2 w
/// give w^2 = (125 / 216) (9 / 10) (36 / 25) g' z = (3/4) g' z, whatever alpha. g' [m/s2] is that of the plume's own
/// mean air at height z over the air beside it, so a network of layers gets the flow that would bring that air there.
template <class S>
S local_round_plume_flow(const S& reduced_gravity_m_s2, double height_m, double entrainment = kRoundEntrainment) {
  const double radius_m = 1.2 * entrainment * height_m;
  return (kPi * radius_m * radius_m * std::sqrt(0.75 * height_m)) *
         rising_power(reduced_gravity_m_s2, 0.5, kReducedGravitySoftness);
}

/// How far the point source of the same plume lies below a source of this area [m]:  z_0 = sqrt(A / pi) 5 / (6 alpha),
/// so that the plume is as wide there as the source. For a source with the plume's own momentum; a flat heated
/// surface draws its plume in first, and measured z_0 are a fraction of this (not modelled).
double virtual_origin_m(double source_area_m2, double entrainment = kRoundEntrainment);

/// Volume flow of a plume over a line, per length of it [m2/s]; zero for B <= 0:
///   q = (2 alpha)^(2/3) B^(1/3) z
/// MTT's equations in two dimensions, edge 2 and section 2 b for a half-width b: b = alpha z, w^3 = B / (2 alpha).
/// B [m3/s3] is per length. For benches and pipes, at heights well below their length.
template <class S>
S line_plume_flow(const S& buoyancy_flux_m3_s3, double height_m, double entrainment = kLineEntrainment) {
  return (std::cbrt(4.0 * entrainment * entrainment) * height_m) *
         rising_power(buoyancy_flux_m3_s3, 1.0 / 3.0, kLineFluxSoftness);
}

/// The same from the plume's own reduced gravity at height z, per length [m2/s]:  q = 2 alpha z w,  w^2 = g' z.
template <class S>
S local_line_plume_flow(const S& reduced_gravity_m_s2, double height_m, double entrainment = kLineEntrainment) {
  return (2.0 * entrainment * height_m * std::sqrt(height_m)) *
         rising_power(reduced_gravity_m_s2, 0.5, kReducedGravitySoftness);
}

/// Volume flow along a wall that is warm all the way up, per length of it [m2/s]; zero for f <= 0:
///   q = (3/4) (4/5)^(1/3) alpha^(2/3) f^(1/3) z^(4/3),   f [m2/s3] the buoyancy flux per area of wall
/// MTT's equations with edge and section on one side and B = f z: thickness (3/4) alpha z, w^3 = (4 f / (5 alpha)) z
///   [Cooper & Hunt 2010, J. Fluid Mech. 646, 39; from memory]. Friction at the wall is not modelled, nor the first
/// decimetres, where the flow is laminar. A wall colder than the air sinks as much: give -f, with z from the top.
template <class S>
S wall_plume_flow(const S& buoyancy_flux_m2_s3, double height_m, double entrainment = kWallEntrainment) {
  const double size = 0.75 * std::cbrt(0.8 * entrainment * entrainment) * height_m * std::cbrt(height_m);
  return size * rising_power(buoyancy_flux_m2_s3, 1.0 / 3.0, kLineFluxSoftness);
}

/// The same from its own reduced gravity at height z, per length [m2/s]:  q = (3/4) alpha z w,  w^2 = (3/5) g' z.
template <class S>
S local_wall_plume_flow(const S& reduced_gravity_m_s2, double height_m, double entrainment = kWallEntrainment) {
  return (0.75 * entrainment * height_m * std::sqrt(0.6 * height_m)) *
         rising_power(reduced_gravity_m_s2, 0.5, kReducedGravitySoftness);
}

/// Effective area A* [m2] of openings at the top and at the bottom of a house, 0 if one is shut:
///   A* = sqrt(2) c_t a_t c_b a_b / sqrt((c_t a_t)^2 + (c_b a_b)^2)   [Linden, Lane-Serff & Smeed 1990 with
/// the inlet's loss written as a discharge coefficient], so that the flow through both is Q = A* sqrt(g' (H - h)).
double effective_opening_m2(double top_area_m2, double bottom_area_m2, double top_discharge = 0.6,
                            double bottom_discharge = 0.6);

/// Height of the interface between cool air below and warm air above, as a share of the house's height [0 to 1], with
/// openings at floor and roof, no wind and n equal plumes from the floor: the root xi of
///   A* / (n H^2) = C^(3/2) (xi^5 / (1 - xi))^(1/2)   [Linden, Lane-Serff & Smeed 1990]
/// It does not depend on the heat. Zero without openings, towards one with openings without bound.
double interface_height_share(double effective_opening_m2, double height_m, int plumes = 1,
                              double entrainment = kRoundEntrainment);

}  // namespace noonhouse
