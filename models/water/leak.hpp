// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <string_view>

#include "models/properties/psychrometrics.hpp"
#include "sim/contract/law.hpp"

namespace noonhouse {

/// Water that a tank loses by a leak near its floor [kg/s] with its heat [W]:  m = M.
/// Inputs: temperature of the tank [K], M [kg/s], which LeakFlow ends in time.
/// Does not model: a leak that slackens with the depth above it.
struct TankLeak {
  static constexpr std::string_view kName = "leak of the tank";
  static constexpr int kInputs = 2, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::water, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 2>& q) const {
    q[0] = in[1];
    q[1] = q[0] * liquid_enthalpy(in[0]);
  }
};

}  // namespace noonhouse
