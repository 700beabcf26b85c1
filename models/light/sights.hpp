// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <vector>

#include "models/light/grid.hpp"
#include "models/light/light_scene.hpp"

namespace noonhouse {

/// What a plane sees over its half-space, as cosine-weighted shares found by rays (a fixed set: the same scene gives
/// the same numbers).
struct Sights {
  std::vector<double> view;                   ///< per surface: view factor; the sum is one
  std::vector<double> sky, ground, obstacle;  ///< per piece of the shell: seen through it; their sum is what view says
};

/// From points inside that face along a normal.
Sights look_around(const LightScene& scene, const std::vector<LightSurface::Point>& points, const Vector3& normal);

/// What the outer face of a piece of the shell sees; the three sum to one. A ray below the horizon ends on level ground
/// unless an obstacle is met first.
struct Outlook {
  double sky = 0.0, ground = 0.0, obstacle = 0.0;
};
Outlook look_out(const LightScene& scene, int piece);

/// A share of a surface that the sun lights through a piece of the shell.
struct BeamShare {
  int surface = 0, piece = 0;
  double share = 0.0;
};

/// Which shares of each surface see the sun through which piece, less what shelves and obstacles stop. The direction
/// points to the sun; nothing while it is down.
std::vector<BeamShare> beam_shares(const LightScene& scene, const Vector3& to_sun);

/// Of the points that face along a normal, the share that sees the sun, by piece.
std::vector<double> beam_by_piece(const LightScene& scene, const std::vector<LightSurface::Point>& points,
                                  const Vector3& normal, const Vector3& to_sun);

/// Share of each piece's outer face that the sun meets past the obstacles; zero where it stands behind the piece.
std::vector<double> sunlit_shares(const LightScene& scene, const Vector3& to_sun);

/// Exchange areas A_i F_ij [m2] between all surfaces: symmetric (reciprocity) and each row sums to its area, both to
/// rounding. The sampled view factors are averaged over both ways and then scaled alike in rows and columns until the
/// rows close, as for exchange areas by van Leersum 1989, Int. J. Heat Fluid Flow 10, 83 (the idea; the scaling here is
/// the symmetric one).
Grid exchange_areas(const LightScene& scene, const std::vector<Sights>& sights);

/// The same for view factors and areas given.
Grid close_exchange(const Grid& view, const std::vector<double>& areas_m2);

}  // namespace noonhouse
