// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <string_view>

#include "models/envelope/cover_optics.hpp"
#include "models/properties/constants.hpp"
#include "sim/contract/law.hpp"

namespace noonhouse {

/// Thermal radiation of something inside that passes a cover to outdoors while the cover is dry and bare, and that the
/// water on the cover or a cloth over it takes up otherwise [W], both positive from inside.
///   to outdoors  A_e sigma s (T^4 - T_out^4),  to the cover  A_e sigma (1 - s) (T^4 - T_cover^4)
///   s = dry_share(m / A_cover) (1 - d (1 - p))
/// Inputs: T inside, T of what is seen outdoors, T of the cover, water on the cover m [kg], share of the cloth drawn d.
/// p: what a drawn cloth lets through. Not modelled: a cloth at another temperature than the cover.
struct RadiationThroughCover {
  double effective_area_m2 = 0.0;  ///< A_e, by which the dry cover lets it see outdoors
  double cover_area_m2 = 1.0;      ///< A_cover
  double cloth_passes = 0.0;       ///< p
  static constexpr std::string_view kName = "radiation through a cover";
  static constexpr int kInputs = 5, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::energy, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 5>& in, std::array<S, 2>& q) const {
    const S passes = dry_share(S(in[3] / cover_area_m2)) * (1.0 - (1.0 - cloth_passes) * in[4]);
    const S inside = in[0] * in[0], outdoors = in[1] * in[1], cover = in[2] * in[2];
    q[0] = effective_area_m2 * kStefanBoltzmann * passes * (inside - outdoors) * (inside + outdoors);
    q[1] = effective_area_m2 * kStefanBoltzmann * (1.0 - passes) * (inside - cover) * (inside + cover);
  }
};

/// What the water on a cover radiates outdoors through the cover beneath it [W], positive outward: what takes up
/// thermal radiation sends it out alike (Kirchhoff).
///   Q = A t sigma (1 - dry_share(m / A)) (1 - d (1 - p)) (T_cover^4 - T_out^4)
/// Inputs: T of the cover, T of what is seen outdoors, water on the cover m [kg], share of the cloth drawn d. t:
/// thermal transmittance of the dry cover; p: what a drawn cloth lets through.
struct WaterRadiationThroughCover {
  double passing_area_m2 = 0.0;  ///< A t, times the share of the view that is that part of the outdoors
  double cover_area_m2 = 1.0;    ///< A
  double cloth_passes = 0.0;     ///< p
  static constexpr std::string_view kName = "radiation of water through a cover";
  static constexpr int kInputs = 4, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::energy};
  template <class S>
  void flux(const std::array<S, 4>& in, std::array<S, 1>& q) const {
    const S wet = 1.0 - dry_share(S(in[2] / cover_area_m2));
    const S cover = in[0] * in[0], outdoors = in[1] * in[1];
    q[0] = passing_area_m2 * kStefanBoltzmann * wet * (1.0 - (1.0 - cloth_passes) * in[3]) * (cover - outdoors) *
           (cover + outdoors);
  }
};

}  // namespace noonhouse
