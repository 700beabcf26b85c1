// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <span>

#include "models/properties/optics.hpp"

namespace noonhouse {

/// Sunlight on a plane [W/m2].
struct PlaneSun {
  double beam_w_m2 = 0.0, diffuse_w_m2 = 0.0;
  double incidence_rad = 0.0;  ///< of the beam
};

/// What one piece of cover does with sunlight, per square metre [W/m2].
struct CoverSun {
  double beam_through = 0.0, diffuse_through = 0.0, absorbed = 0.0;
};

/// A pane with its optics: angular for the beam, hemispherical for the diffuse part (worked out once).
class Pane {
 public:
  Pane(int sheets, const Sheet& sheet);
  /// Transmitted and absorbed; what is left is reflected. [n parallel sheets: Duffie & Beckman, ch. 5]
  CoverSun pass(const PlaneSun& sun) const;

 private:
  int sheets_;
  Sheet sheet_;
  SheetOptics diffuse_;
};

/// Share of a beam entering at mean height z that comes down inside before it meets the cover on the other side.
///   min(1, run tan(elevation) / z)
/// A first law: one mean height and one mean run stand for the whole facet; no ray is cast.
double landing_share(double elevation_rad, double run_m, double height_m);

}  // namespace noonhouse
