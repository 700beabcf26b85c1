// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <string_view>

#include "models/properties/constants.hpp"
#include "sim/contract/law.hpp"

namespace noonhouse {

/// Thermal radiation between leaves of both sides of a canopy, which face one another within it [W], positive from the
/// first to the second; beside what both exchange with the room and, by way of what reflects in it, with one another.
///   Q = A_e sigma (T_1^4 - T_2^4)
/// The effective area holds emissivities and the share of leaf that sees the other side. Inputs: both temperatures [K].
struct LeafRadiation {
  double effective_area_m2 = 0.0;
  static constexpr std::string_view kName = "longwave between leaves";
  static constexpr int kInputs = 2, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::energy};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 1>& q) const {
    const S first = in[0] * in[0], second = in[1] * in[1];
    q[0] = effective_area_m2 * kStefanBoltzmann * (first - second) * (first + second);
  }
};

}  // namespace noonhouse
