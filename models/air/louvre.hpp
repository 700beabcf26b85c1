// SPDX-License-Identifier: Apache-2.0
#pragma once

/// How much of an opening a louvre or a flap leaves, by its angle.
/// Not modelled: a slat's or flap's change of the wind's pressure beside it; the stream it turns up or down; the
/// exchange that eddies of the wind make through a single opening beyond its mean flow (measured shares of it fall with
/// wind, but no published law gives them; single_sided_wind_flow() of opening_flow.hpp holds it in its coefficient).
namespace noonhouse {

/// Discharge coefficient of a plain window in the same measurements [-]   [Iqbal et al. 2023, E3S Web Conf. 396].
inline constexpr double kPlainWindowDischarge = 0.60;

/// Discharge coefficient of a louvre [-], referred to its whole area, by its sash angle from fully open [rad]:
///   0.80, 0.62 and 0.41 at 0, 15 and 30 degrees, straight lines between   [Iqbal et al. 2023, E3S Web Conf. 396]
/// Throws UserError beyond the angles measured: no law is known towards shut. The slope breaks at 15 degrees, so an
/// angle that moves during a run belongs to its events, not to a derivative.
double louvre_discharge(double sash_angle_rad);

/// A rectangular flap hinged along one side of the opening it covers.
struct HingedFlap {
  double width_m = 0.0;  ///< along the hinge
  double depth_m = 0.0;  ///< from hinge to free edge
  bool cheeks = false;   ///< its triangular sides are closed

  /// Area between frame and flap at an angle from shut, 0 to pi/2 [m2]:  2 W h sin(phi/2) + h^2 sin(phi)
  /// The free edge's distance from its frame is the chord; the second term is that of both open triangles. Geometry.
  double gap_m2(double angle_rad) const;

  /// Effective area [m2]: opening and gap in series, A^-2 = (W h)^-2 + gap^-2, both of one discharge coefficient.
  ///   [BS 5925:1991, openings in series]. Zero when shut and never more than the opening itself. The usual
  /// approximation, which counts the two losses as apart; not modelled: that they share one stream.
  double effective_area_m2(double angle_rad) const;
};

}  // namespace noonhouse
