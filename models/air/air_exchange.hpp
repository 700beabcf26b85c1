// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <string_view>

#include "models/properties/counterflow.hpp"
#include "models/properties/psychrometrics.hpp"
#include "sim/contract/law.hpp"
#include "sim/core/smooth.hpp"

namespace noonhouse {

/// Exchange between two layers of one bay, positive from lower to upper.
/// Inputs: T_lower, w_lower, T_upper, w_upper, stirring [m/s] (spray, circulation fan).
///   m = rho A (u0 + stirring + c sqrt(g H dT_v / T)) with dT_v = max(virtual temperature lower - upper, 0)
/// Unstable layers overturn at the free-fall velocity of their difference (c = 1); stable ones keep the background u0.
/// The root begins with a slope of zero: sqrt(x) is taken as x^2 / (x + 0.02 K)^1.5, 3 % less at 1 K.
/// First law of layering (c and u0: common practice, no source). Plumes rise past it by a law of their own
/// (PlumeConvection); not modelled here: that they and falling spray drag the air of the layers along.
struct LayerMixing {
  double area_m2 = 0.0;
  double spacing_m = 0.0;  ///< between the layers' middles
  double dry_air_density_kg_m3 = 1.0;
  double background_m_s = 0.002;
  double overturning = 1.0;
  static constexpr std::string_view kName = "mixing between layers";
  static constexpr int kInputs = 5, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::water, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 5>& in, std::array<S, 2>& q) const {
    using std::sqrt;
    const S lower = in[0] * (1.0 + 0.608 * in[1]), upper = in[2] * (1.0 + 0.608 * in[3]);
    S velocity = background_m_s + in[4];
    if (const S lift = lower - upper; lift > 0.0) {
      const S softened = lift + 0.02;
      velocity += overturning * (lift * lift / softened) * sqrt(kGravity * spacing_m / (softened * upper));
    }
    counterflow(S(dry_air_density_kg_m3 * area_m2 * velocity), in[0], in[1], in[2], in[3], q);
  }
};

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
