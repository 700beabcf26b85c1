// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cmath>

#include "models/properties/constants.hpp"
#include "models/properties/surface_film.hpp"

namespace noonhouse {

/// Air that moves past leaves in a house at rest [m/s]; common practice, no source. What else it does is computed.
inline constexpr double kAirSpeedAtRest = 0.1;

/// Conductance of the boundary layer on one side of a leaf in forced convection [m/s], for heat.
///   g = 0.003 sqrt(u / w)   [Leuning et al. 1995, Plant Cell Environ. 18, 1183]
/// u: speed of the air past the leaf [m/s]; w: width of the leaf along it [m], above zero. Laminar flow: leaves of
/// millimetres to decimetres in light wind. Not modelled: free convection, which takes over as u goes to zero, hairs,
/// flutter and the shelter of neighbouring leaves.
inline double leaf_conductance_m_s(double air_speed_m_s, double leaf_width_m) {
  return 0.003 * std::sqrt(air_speed_m_s / leaf_width_m);
}

/// Film coefficient [W/(m2 K)] between plant tissue and the air beside it, by the air's own speed there.
///   h^3 = h_F^3 + h_N^3,  h_F = rho c_p g(u) of leaf_conductance_m_s,  u^2 = u_0^2 + u_through^2 + u_stir^2
/// Free convection is SurfaceFilm's. A stem or pad of some centimetres counts as a leaf of its width: a cylinder across
/// the air [Churchill & Bernstein 1977] takes 5 % less at 8 cm and 0.2 m/s. Speeds that have nothing to do with one
/// another add up by their squares. Not modelled: the shelter of neighbouring leaves.
struct TissueFilm {
  double forced_at_1_cubed = 0.0;  ///< h_F^3 at 1 m/s
  SurfaceFilm free;                ///< its own draught is not used
  double rest_m_s = kAirSpeedAtRest;
  /// Tissue less air [K]; air drawn through the layer and stirred in it [m/s].
  template <class S>
  S at(const S& tissue_minus_air_k, const S& through_m_s, const S& stirring_m_s) const {
    using std::cbrt;
    using std::sqrt;
    const S squared = rest_m_s * rest_m_s + through_m_s * through_m_s + stirring_m_s * stirring_m_s;
    const S speed = sqrt(squared);
    return cbrt(forced_at_1_cubed * speed * sqrt(speed) + free.free_cubed(tissue_minus_air_k));
  }
};

/// The film of upright leaves or stems of a width [m] in air of a density [kg/m3], temperature [K] and pressure [Pa].
inline TissueFilm tissue_film(double leaf_width_m, double dry_air_density_kg_m3, double temperature_k,
                              double pressure_pa) {
  TissueFilm film;
  const double at_1 = dry_air_density_kg_m3 * kDryAirHeat * leaf_conductance_m_s(1.0, leaf_width_m);
  film.forced_at_1_cubed = at_1 * at_1 * at_1;
  film.free = surface_film(kPi / 2.0, leaf_width_m, 0.0, temperature_k, pressure_pa);
  return film;
}

}  // namespace noonhouse
