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

/// What a canopy of leaves does with the light on the ground that it covers; it throws back the rest.
struct CanopyLight {
  double takes = 0.0;      ///< share that its leaves take up
  double passes = 1.0;     ///< share that comes down below it
  double first_hit = 1.0;  ///< of what is taken up, by the leaf that the light met first
};

/// Two streams, one down and one up, in leaves that take up a share a of what they meet and scatter the rest to both
/// sides alike, over black ground:
///   r = (1 - sqrt a) / (1 + sqrt a),  q = exp(-k sqrt(a) L),  R = r (1 - q^2) / (1 - r^2 q^2),
///   T = (1 - r^2) q / (1 - r^2 q^2),  taken 1 - R - T
///   [Goudriaan 1977, Crop Micrometeorology; Goudriaan & van Laar 1994, ch. 6; from memory]
/// A thin canopy takes a k L, so much as its leaves meet; a deep one throws back r. What they meet first is
/// 1 - exp(-k L).
inline CanopyLight canopy_light(double leaf_absorptance, double leaf_area_index) {
  const double root = std::sqrt(leaf_absorptance), depth = kLeafExtinction * leaf_area_index;
  const double r = (1.0 - root) / (1.0 + root), q = std::exp(-root * depth), rest = 1.0 - r * r * q * q;
  if (rest <= 0.0) return {0.0, 1.0 / (1.0 + depth), 1.0};  // leaves that take up nothing
  CanopyLight out;
  out.passes = (1.0 - r * r) * q / rest;
  out.takes = 1.0 - r * (1.0 - q * q) / rest - out.passes;
  if (out.takes > 0.0) out.first_hit = std::min(1.0, leaf_absorptance * (1.0 - std::exp(-depth)) / out.takes);
  return out;
}

/// One thick body lets nothing through: what passes between bodies comes down.
inline CanopyLight bodies_light(double absorptance, double leaf_area_index) {
  const double passes = std::exp(-kLeafExtinction * leaf_area_index);
  return {absorptance * (1.0 - passes), passes, 1.0};
}

/// One thick body: half of it looks to the sun, half away from it, and both see as much of the sky.
inline PlantSides sides_of_one_body() { return {}; }

/// Conductance between both sides of a body of living tissue [W/(m2 K)] over half of its surface: each half's middle
/// lies a quarter of the thickness from its skin.
///   U = k / (d / 2);  k = 0.55 W/(m K), nine parts water [Nobel 1988, Environmental Biology of Agaves and Cacti;
///   from memory]
inline double between_sides_w_m2_k(double thickness_m) { return 0.55 / (0.5 * thickness_m); }

}  // namespace noonhouse
