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

/// A pane with its optics: angular for the beam, hemispherical for the diffuse part (worked out once).
class Pane {
 public:
  Pane(int sheets, const Sheet& sheet);
  /// Share of a beam that passes at this angle of incidence. [n parallel sheets: Duffie & Beckman, ch. 5]
  double beam_transmittance(double incidence_rad) const;
  /// Share of even diffuse light that passes.
  double diffuse_transmittance() const { return diffuse_.transmittance; }
  /// What a square metre takes up of the sunlight on it [W/m2].
  double absorbed_w_m2(const PlaneSun& sun) const;

 private:
  int sheets_;
  Sheet sheet_;
  SheetOptics diffuse_;
};

}  // namespace noonhouse
