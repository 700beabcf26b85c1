// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cmath>
#include <optional>

#include "sim/core/smooth.hpp"

namespace noonhouse {

/// Half width [K] within which the film of a surface warmer than the air turns into that of a colder one.
inline constexpr double kFilmBlendK = 0.05;

/// The cube of a free-convection coefficient by the size of the difference D [K], the larger of two laws:
///   h_N^3 = D^(3/4) max(a^3, b^3 D^(1/4)),  that is  h_N = max(a D^(1/4), b D^(1/3))
/// a is the laminar law, b the turbulent one. Their meeting is rounded by a parabola over +-30 % of a^3 (at most 2.5 %
/// more heat), so that slopes are continuous; beyond it the turbulent law needs no root at all.
/// Made by surface_film, which keeps a^3 above zero: the rounding divides by it.
struct FreeFilm {
  double laminar_cubed = 0.0;       ///< a^3 [W3/(m6 K^(15/4))]
  double turbulent_cubed = 0.0;     ///< b^3 [W3/(m6 K4)]
  double turbulent_from_k = 1e300;  ///< D beyond which only b counts
  template <class S>
  S cubed(const S& size_k) const {
    if (size_k >= turbulent_from_k) return turbulent_cubed * size_k;
    using std::sqrt;
    const S half = sqrt(size_k);
    const S quarter = sqrt(half);
    const S beyond = turbulent_cubed * quarter - laminar_cubed;
    const double width = kCorner * laminar_cubed;
    if (beyond <= -width) return half * quarter * laminar_cubed;
    const S past = beyond + width;
    return half * quarter * (laminar_cubed + past * past / (4.0 * width));
  }
  static constexpr double kCorner = 0.3;  ///< half width of the rounding, as a share of a^3
};

/// Film coefficient [W/(m2 K)] between a surface inside and the air beside it: free convection that depends on which
/// of the two is warmer, and a draught.
///   h^3 = h_F^3 + h_N^3        [Incropera & DeWitt, 5th ed., eq. (9.64), n = 3]
/// Always positive, slopes continuous; the size of the difference is rounded within kFilmBlendK of zero, and there the
/// two branches are mixed. Costs one root where turbulent, three where not. Air properties are those of one
/// temperature: with them taken 20 K off, h is off by 2 (laminar) to 5 % (turbulent).
struct SurfaceFilm {
  double forced_cubed = 0.0;  ///< h_F^3
  FreeFilm warm;              ///< surface warmer than the air
  FreeFilm cold;              ///< surface colder than the air
  template <class S>
  S at(const S& surface_minus_air_k) const {
    using std::cbrt;
    return cbrt(forced_cubed + free_cubed(surface_minus_air_k));
  }
  /// h_N^3 alone, for whoever has a draught of its own [W3/(m6 K3)].
  template <class S>
  S free_cubed(const S& surface_minus_air_k) const {
    const S& x = surface_minus_air_k;
    if (x >= kFilmBlendK) return warm.cubed(x);
    if (x <= -kFilmBlendK) return cold.cubed(S(-x));
    const S size = (x * x + kFilmBlendK * kFilmBlendK) / (2.0 * kFilmBlendK);
    const S share = ramp(S(x + kFilmBlendK), 2.0 * kFilmBlendK);
    return share * warm.cubed(size) + (1.0 - share) * cold.cubed(size);
  }
};

/// The film of a flat surface by its tilt [rad] (0 the side that touches the air faces up, pi/2 upright, pi faces down;
/// 0 to pi), length [m], the speed of the air along it [m/s], and the temperature [K] and pressure [Pa] of the air.
/// Length: height of an upright surface, area over perimeter of a lying one, which is a quarter of a square's side.
/// With a run length, the draught is reckoned along that instead of along the length.
///   upright    Nu = 0.670 Ra^(1/4) / [1 + (0.492/Pr)^(9/16)]^(4/9), 0.10 Ra^(1/3)
///              [Churchill & Chu 1975, Int. J. Heat Mass Transfer 18, 1323, without its conduction term 0.68;
///              McAdams 1954; Incropera & DeWitt, 5th ed., eqs. (9.27), (9.24)]
///              Between two laws for all Ra: to 20 % below Churchill & Chu's, eq. (9.26), to 11 % above that of
///              Raithby & Hollands, named below.
///   unstable   (warm and facing up, cold and facing down)  Nu = 0.54 Ra^(1/4), 0.15 Ra^(1/3)   [eqs. (9.30), (9.31)]
///   stable     (the other two)                             Nu = 0.27 Ra^(1/4)                  [eq. (9.32)]
///   inclined   the larger of the upright law with gravity along the surface, g sin(tilt), and the lying law with
///              gravity across it, g |cos(tilt)|            [Raithby & Hollands 1998, Handbook of Heat Transfer, 3rd
///              ed., ch. 4; from memory]
///   draught    Nu = 0.664 Re^(1/2) Pr^(1/3), beyond Re 5e5 as flat_plate_nusselt
/// Of each pair of laws the larger one holds, which moves the published change at Ra = 1e7 of a lying plate to 4.7e6.
/// Ra 1e4 to 1e11. Does not model: conduction across very small surfaces (Ra below 1e4, where h is too low), flows
/// against each other, edges of neighbouring surfaces, the height of a room under a warm ceiling.
SurfaceFilm surface_film(double tilt_rad, double length_m, double air_speed_m_s, double temperature_k,
                         double pressure_pa, std::optional<double> run_length_m = std::nullopt);

}  // namespace noonhouse
