// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <vector>

#include "models/light/grid.hpp"
#include "models/light/light_scene.hpp"
#include "models/light/sights.hpp"
#include "models/properties/layer_optics.hpp"

namespace noonhouse {

/// What light needs to know of a house's geometry; worked out once and shared by all that have the same house.
struct LightGeometry {
  explicit LightGeometry(LightScene scene_made);
  LightScene scene;
  std::vector<Sights> sights;     ///< per surface
  std::vector<Outlook> outlooks;  ///< per piece
  Grid exchange_m2;               ///< A_i F_ij
};

/// Light on the house from outside.
struct OutdoorLight {
  double beam_w_m2 = 0.0;      ///< on a plane facing the sun
  Vector3 to_sun;              ///< unit vector
  double sky_w_m2 = 0.0;       ///< of a uniform sky on a level plane
  double ground_w_m2 = 0.0;    ///< sent up by a square metre of ground
  double obstacle_w_m2 = 0.0;  ///< sent out by a square metre of the obstacles
};

/// What a piece does with the beam at one instant, shares of what meets it.
struct PieceBeam {
  double transmittance = 0.0;
  double scatters = 0.0;  ///< share of what passes that leaves scattered
};

/// A piece's lasting optics: diffuse light from both sides, and the share of what passes that leaves scattered anew.
struct PieceOptics {
  LayerOptics diffuse;
  double scatters = 0.0;
};

/// Where the light goes [W].
struct LitHouse {
  std::vector<double> beam_w, diffuse_w;  ///< per piece: meets its outer face
  std::vector<double> arriving_w;         ///< per surface: meets it from inside, all reflections counted
  std::vector<double> beam_arriving_w;    ///< per surface: of that, straight from the sun
};

/// Light in a closed room of diffusely reflecting surfaces behind a transmitting shell: what enters is shared out by
/// sight and then reflected to every order,
///   X = H + (rho F)^T X            (radiosity; Incropera & DeWitt, sec. 13.3)
/// with X what arrives [W], H what arrives first, F_ij = A_i F_ij / A_i closed. So what enters is absorbed or leaves,
/// to rounding. The beam's shares by rays are scaled, piece by piece, to what the piece lets through.
/// Not modelled: mirror reflection inside, the angle at which light meets the shell from inside.
class LightBalance {
 public:
  /// Reflectances of the surfaces that are not pieces of the shell are taken from `reflects`, one per surface.
  LightBalance(const LightGeometry& geometry, std::vector<PieceOptics> pieces, const std::vector<double>& reflects);

  LitHouse lit(const OutdoorLight& light, const std::vector<PieceBeam>& beams, const std::vector<BeamShare>& shares,
               const std::vector<double>& sunlit) const;

  /// Light that a surface of the room sends into it again or lets through scattered [W/m2], given what is lit.
  std::vector<double> sent_w_m2(const LitHouse& lit, const std::vector<PieceBeam>& beams) const;

 private:
  void add_diffuse(const OutdoorLight& light, LitHouse& out, std::vector<double>& first) const;
  void add_beam(const OutdoorLight& light, const std::vector<PieceBeam>& beams, const std::vector<BeamShare>& shares,
                LitHouse& out, std::vector<double>& first) const;
  void scatter(std::size_t piece, double watts, std::vector<double>& first) const;

  const LightGeometry* geometry_;
  std::vector<PieceOptics> pieces_;
  std::vector<double> reflects_;
  Grid sky_, ground_,
      obstacle_;  ///< [surface][piece]: how what passes a piece unscattered is shared out; columns sum to 1
  Grid spread_;   ///< [surface][surface]: X = spread H
};

}  // namespace noonhouse
