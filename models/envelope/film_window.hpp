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
///   s = dry_share(m / A_cover) (1 - d)
/// Inputs: T inside, T of what is seen outdoors, T of the cover, water on the cover m [kg], share of the cloth drawn d.
/// Not modelled: a cloth at another temperature than the cover.
struct RadiationThroughCover {
  double effective_area_m2 = 0.0;  ///< A_e, by which the dry cover lets it see outdoors
  double cover_area_m2 = 1.0;      ///< A_cover
  static constexpr std::string_view kName = "radiation through a cover";
  static constexpr int kInputs = 5, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::energy, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 5>& in, std::array<S, 2>& q) const {
    const S passes = dry_share(S(in[3] / cover_area_m2)) * (1.0 - in[4]);
    const S inside = in[0] * in[0], outdoors = in[1] * in[1], cover = in[2] * in[2];
    q[0] = effective_area_m2 * kStefanBoltzmann * passes * (inside - outdoors) * (inside + outdoors);
    q[1] = effective_area_m2 * kStefanBoltzmann * (1.0 - passes) * (inside - cover) * (inside + cover);
  }
};

}  // namespace noonhouse
