// SPDX-License-Identifier: Apache-2.0
#pragma once

/// Layers in the light, one behind the other or side by side, by net radiation: what leaves a face is what passes plus
/// what returns. Shares are of energy, so any band of any light will do. Not modelled: polarisation and direction,
/// which a layer that scatters forgets; sheets whose light keeps both are joined by stack_optics() instead.
namespace noonhouse {

/// One layer for light of one direction or diffuse light, as shares of what meets it; the front faces outdoors.
struct LayerOptics {
  double transmittance = 1.0;  ///< the same both ways
  double reflectance_front = 0.0;
  double reflectance_back = 0.0;
  double absorptance_front() const { return 1.0 - transmittance - reflectance_front; }
  double absorptance_back() const { return 1.0 - transmittance - reflectance_back; }
};

/// Two layers as one, and where light is taken up, as shares of what meets the pair from that side.
struct LayerPair {
  LayerOptics whole;
  double first_absorbs = 0.0;   ///< of light from the front
  double second_absorbs = 0.0;  ///< of light from the front
  double first_absorbs_back = 0.0;
  double second_absorbs_back = 0.0;
};

/// The second layer behind the first, which is outside; reflection between them to every order, summed in closed form:
///   T = T1 T2 / (1 - R1' R2),  R = R1 + T1^2 R2 / (1 - R1' R2),  A2 = T1 a2 / (1 - R1' R2)
/// with R' and a' seen from behind.   [Siegel & Howell, Thermal Radiation Heat Transfer, net radiation between two
/// partially transparent plates (from memory); Duffie & Beckman, 4th ed., eqs. (5.3.7)-(5.3.8)]
/// Between two perfect mirrors nothing moves: what light does not pass the first layer never gets there.
/// Each side's transmitted, reflected and absorbed shares sum to one to rounding.
LayerPair couple(const LayerOptics& first, const LayerOptics& second);

/// Layers side by side: `share` of the area, 0 to 1, is a, the rest b.
LayerOptics side_by_side(double share, const LayerOptics& a, const LayerOptics& b);

}  // namespace noonhouse
