// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstdint>

#include "models/water/wind_evaporation.hpp"

namespace noonhouse {

/// A tank with upright walls, by what is printed on it.
///   plan A = V / H;  round: perimeter 2 sqrt(pi A);  box of sides a : b = r : 1: perimeter 2 (1 + r) sqrt(A / r)
/// Does not model: walls that lean or bulge, the thickness of the wall.
struct TankShape {
  enum class Plan : std::uint8_t { round, box };
  Plan plan = Plan::round;
  double capacity_m3 = 0.0;  ///< V, to the brim
  double height_m = 1.0;     ///< H, above zero
  double side_ratio = 1.0;   ///< r of a box, above zero

  double plan_area_m2() const { return capacity_m3 / height_m; }
  double perimeter_m() const;
  /// Of the walls, inside or outside, from the floor to the brim [m2].
  double wall_area_m2() const { return perimeter_m() * height_m; }
  /// Depth of a content [m], from 0 to the tank's height. Water is taken as 1000 kg/m3.
  double depth_m(double content_kg) const;
  /// Wall that has water behind it [m2].
  double wetted_wall_m2(double content_kg) const { return perimeter_m() * depth_m(content_kg); }
  /// Area that walls and top show to a beam of sunlight [m2], of the beam's own cross-section, mean over the ways a box
  /// may face:  (perimeter / pi) H cos(e) + A sin(e), e the sun's elevation [Cauchy's mean width; exact for a round
  /// tank]. Times beam and absorptance it is the sun's heat; nothing by night (e below 0).
  double shown_to_sun_m2(double sun_elevation_rad) const;
};

/// Evaporation of the tank's water by wind, through the share of its top that is open (0: a lid; 1: no lid). Always
/// wet, down to about a millimetre over the floor. With the coefficients of WindEvaporation, which are those of a
/// surface that the wind sweeps: below a high rim it is less, so this is the most.
WindEvaporation tank_evaporation(const TankShape& shape, double open_share, double pressure_pa);

}  // namespace noonhouse
