// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cmath>

namespace noonhouse {

/// Speed of the air past leaves inside a house [m/s]; common practice, no source.
inline constexpr double kAirSpeedPastLeaves = 0.2;

/// Conductance of the boundary layer on one side of a leaf in forced convection [m/s], for heat.
///   g = 0.003 sqrt(u / w)   [Leuning et al. 1995, Plant Cell Environ. 18, 1183]
/// u: speed of the air past the leaf [m/s]; w: width of the leaf along it [m], above zero. Laminar flow: leaves of
/// millimetres to decimetres in light wind. Not modelled: free convection, which takes over as u goes to zero, hairs,
/// flutter and the shelter of neighbouring leaves.
inline double leaf_conductance_m_s(double air_speed_m_s, double leaf_width_m) {
  return 0.003 * std::sqrt(air_speed_m_s / leaf_width_m);
}

}  // namespace noonhouse
