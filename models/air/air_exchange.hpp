// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <string_view>

#include "models/properties/psychrometrics.hpp"
#include "sim/contract/law.hpp"

namespace noonhouse {

/// Vapour above saturation that turns to droplets and settles: from the air to a film below it.
/// Inputs: T, w of the air. Fluxes: water [kg/s], its heat as liquid [W]; the latent heat stays in the air.
///   m = M (w - w_s) / tau above saturation, zero below
struct FogSettling {
  double dry_air_kg = 0.0;
  double pressure_pa = 101325.0;
  double time_constant_s = 60.0;  ///< common practice, no source
  static constexpr std::string_view kName = "fog settling";
  static constexpr int kInputs = 2, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::water, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 2>& q) const {
    const S excess = in[1] - saturation_humidity_ratio_fast(in[0], pressure_pa);
    q[0] = excess > 0.0 ? S((dry_air_kg / time_constant_s) * excess) : S(0.0);
    q[1] = q[0] * liquid_enthalpy(in[0]);
  }
};

}  // namespace noonhouse
