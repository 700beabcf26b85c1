// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <string_view>

#include "models/properties/psychrometrics.hpp"
#include "sim/contract/law.hpp"

namespace noonhouse {

/// Air swept on at a given flow [kg dry air/s at share 1] with the state of where it comes from, for tests that want a
/// flow of air without pressures. Inputs: T and w upstream, share (0 to 1). Fluxes positive downstream: vapour [kg/s],
/// enthalpy [W].
struct GivenFlow {
  double dry_air_kg_s = 0.0;
  static constexpr std::string_view kName = "given flow of air";
  static constexpr int kInputs = 3, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::water, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 3>& in, std::array<S, 2>& q) const {
    const S m = dry_air_kg_s * in[2];
    q[0] = m * in[1];
    q[1] = m * moist_air_enthalpy(in[0], in[1]);
  }
};

}  // namespace noonhouse
