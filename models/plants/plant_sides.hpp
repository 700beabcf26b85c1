// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <algorithm>
#include <cmath>

namespace noonhouse {

/// Share of light that leaves catch by their area index: 1 - exp(-k LAI), and its k for leaves at all angles
///   [Monsi & Saeki 1953, Jpn. J. Bot. 14, 22; k 0.5 to 0.8, from memory]
inline constexpr double kLeafExtinction = 0.7;

/// How a plant group's tissue divides into what stands in the sun and what stands in its shade.
struct PlantSides {
  double sunlit_area = 0.5;        ///< share of the tissue's area and mass on the sunlit side
  double sunlit_takes_soft = 0.5;  ///< share of soft light (of sky and surfaces) that the sunlit side takes up
};

/// Leaves of their own: in a canopy of index L the beam meets leaves until its share exp(-k L) is left; those it meets
/// are (1 - exp(-k L)) / (k L) of all and, lying on top, take (1 + exp(-k L)) / 2 of the soft light that leaves catch.
///   [Monsi & Saeki 1953; Campbell & Norman 1998, Introduction to Environmental Biophysics, ch. 15, from memory]
inline PlantSides sides_of_leaves(double leaf_area_index) {
  const double depth = kLeafExtinction * leaf_area_index, passes = std::exp(-depth);
  return {depth > 1e-6 ? (1.0 - passes) / depth : 1.0, 0.5 * (1.0 + passes)};
}

/// What a canopy of leaves takes up of the light on the ground that it hides, 1 - exp(-k L): what its leaves meet
/// first, and what they throw to one another and do not let out again.
struct CanopyLight {
  double absorptance = 0.0;  ///< of the light on the ground hidden
  double first_hit = 1.0;    ///< of what is taken up, by the leaf that the light met first
};

/// A canopy takes up (1 - r) (1 - exp(-k sqrt(a) L)) of the light, a the absorptance of a leaf and
/// r = (1 - sqrt(a)) / (1 + sqrt(a)) what a deep canopy throws back   [Goudriaan 1977, Crop Micrometeorology; Goudriaan
/// & van Laar 1994, ch. 6; from memory]. One leaf takes up a alone, which is the limit of a thin canopy or black
/// leaves.
inline CanopyLight canopy_light(double leaf_absorptance, double leaf_area_index) {
  const double root = std::sqrt(leaf_absorptance), depth = kLeafExtinction * leaf_area_index;
  const double hidden = 1.0 - std::exp(-depth);
  if (hidden < 1e-9 || root <= 0.0) return {leaf_absorptance, 1.0};
  const double taken = (1.0 - (1.0 - root) / (1.0 + root)) * (1.0 - std::exp(-root * depth)) / hidden;
  const double absorptance = std::max(leaf_absorptance, std::min(1.0, taken));
  return {absorptance, leaf_absorptance / absorptance};
}

/// One thick body: half of it looks to the sun, half away from it, and both see as much of the sky.
inline PlantSides sides_of_one_body() { return {}; }

/// Conductance between both sides of a body of living tissue [W/(m2 K)] over half of its surface: each half's middle
/// lies a quarter of the thickness from its skin.
///   U = k / (d / 2);  k = 0.55 W/(m K), nine parts water [Nobel 1988, Environmental Biology of Agaves and Cacti;
///   from memory]
inline double between_sides_w_m2_k(double thickness_m) { return 0.55 / (0.5 * thickness_m); }

}  // namespace noonhouse
