// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <string_view>

#include "models/properties/psychrometrics.hpp"
#include "sim/contract/law.hpp"
#include "sim/core/smooth.hpp"

namespace noonhouse {

/// One part of a mist line's water: sprayed into one layer of air, its unevaporated rest landing on one surface.
/// Inputs: T and w of the air, tank temperature [K], flow of the whole line [kg/s].
/// Fluxes: water [kg/s] tank -> air and tank -> surface, then their heat [W] in the same order.
///   evaporated = portion * flow * share * ramp((w_s - w) / w_s, 0.15)
/// Water enters the air as liquid at tank temperature, so the air itself pays the latent heat. The evaporated
/// share is stated by the scenario and falls to nothing between 85 % and 100 % relative humidity (common
/// practice, no source). Droplet sizes and fall are not modelled.
struct MistPart {
  double portion = 1.0;
  double evaporated_share = 0.0;  ///< in dry air, 0 to 1
  double pressure_pa = 101325.0;
  static constexpr std::string_view kName = "mist";
  static constexpr int kInputs = 4, kFluxes = 4;
  static constexpr std::array<Quantity, 4> kCarries{Quantity::water, Quantity::water, Quantity::energy,
                                                    Quantity::energy};
  template <class S>
  void flux(const std::array<S, 4>& in, std::array<S, 4>& q) const {
    const S flow = portion * in[3];
    if (!(flow > 0.0)) {
      // The line is off: nothing flows, and the slopes are those of nothing but the flow itself.
      q[0] = flow;
      q[1] = S(0.0);
      q[2] = flow * liquid_enthalpy(in[2]);
      q[3] = S(0.0);
      return;
    }
    const S saturated = saturation_humidity_ratio_fast(in[0], pressure_pa);
    const S heat = liquid_enthalpy(in[2]);
    q[0] = flow * evaporated_share * ramp(S((saturated - in[1]) / saturated), 0.15);
    q[1] = flow - q[0];
    q[2] = q[0] * heat;
    q[3] = q[1] * heat;
  }
};

}  // namespace noonhouse
