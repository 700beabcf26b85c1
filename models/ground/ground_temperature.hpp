// SPDX-License-Identifier: Apache-2.0
#pragma once

namespace noonhouse {

/// How a periodic wave of temperature goes into ground of one diffusivity alpha [m2/s].
///   d = sqrt(alpha P / pi), the depth [m] at which a wave of period P [s] is damped to 1/e and late by 1 rad
/// [Carslaw & Jaeger 1959, Conduction of Heat in Solids, sec. 2.6]
double damping_depth_m(double diffusivity_m2_s, double period_s);

/// A year of 365 days [s], the period of the law below.
inline constexpr double kGroundYearS = 365.0 * 86400.0;

/// Temperature of ground that no house disturbs, by depth and time of the year.
///   T(z, t) = T_mean - A_s exp(-z sqrt(pi / (365 alpha))) cos(2 pi / 365 (t - t_0 - (z/2) sqrt(365 / (pi alpha))))
/// with alpha in m2 per day, t and t_0 in days; here all in SI, with z / d for z sqrt(pi / (365 alpha)).
/// [Kusuda & Achenbach 1965, ASHRAE Trans. 71, part 1, 61; from memory]. The sine is the exact solution in even ground
/// under a surface whose temperature is that sine; depths from 0 down.
/// Does not model: the day's wave (within about half a metre of the surface), freezing, rain, snow, groundwater, and
/// the warmth of the depth below.
struct UndisturbedGround {
  double mean_k = 285.15;            ///< T_mean, of the surface over the year
  double amplitude_k = 10.0;         ///< A_s, half of warmest minus coldest; not negative
  double coldest_s = 0.0;            ///< t_0, the surface's coldest moment, from the start of the year
  double diffusivity_m2_s = 0.6e-6;  ///< alpha; the default is of the order of moist loam
  /// Temperature [K] at a depth [m] and a time [s] from the start of the year.
  double temperature_k(double depth_m, double time_s) const;
  /// Heat that flows down through a depth [W/m2]: -k dT/dz, for ground of conductivity k [W/(m K)].
  double flux_down_w_m2(double depth_m, double time_s, double conductivity_w_m_k) const;
  /// How much later than at the surface a depth is coldest [s]:  (z/2) sqrt(365 / (pi alpha)) days.
  double lag_s(double depth_m) const;
};

/// A floor slab on the ground, insulated evenly or not at all.
struct GroundSlab {
  double area_m2 = 0.0;                    ///< A
  double perimeter_m = 0.0;                ///< P, exposed to outdoors
  double wall_thickness_m = 0.0;           ///< w, full thickness of the walls, 0 where there is hardly any
  double floor_resistance_m2_k_w = 0.0;    ///< R_f, of layers on, in and under the slab, 0 for a bare one
  double ground_conductivity_w_m_k = 2.0;  ///< lambda; 2.0 for sand or gravel, 1.5 for clay or silt, same standard
};

/// Steady transmittance of the slab to outdoors through the ground [W/(m2 K)], surface resistances 0.17 and 0.04.
///   B' = A / (P / 2),  d_t = w + lambda (R_si + R_f + R_se)
///   U = 2 lambda / (pi B' + d_t) ln(pi B' / d_t + 1)  where d_t < B',  U = lambda / (0.457 B' + d_t)  else
/// [EN ISO 13370:2007, 8.1, 9.1, eqs. (2) to (4); from memory]. The two meet within 1 %. Does not model: the year's
/// swing, groundwater, insulation along the edge.
double slab_on_ground_transmittance_w_m2_k(const GroundSlab& slab);

/// The same heat as loss by metre of exposed edge [W/(m K)], positive:  U A / P = U B' / 2. For a narrow house nearly
/// all of it goes around the edge, so this changes little with the area.
double slab_edge_loss_w_m_k(const GroundSlab& slab);

}  // namespace noonhouse
