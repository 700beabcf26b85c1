// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>

#include "models/properties/constants.hpp"
#include "sim/contract/store.hpp"

namespace noonhouse {

/// Something with water on it or in it, both at one temperature: a cover with its film, a pot of soil, a
/// tank. Energy [J] and water [kg] -> temperature [K] and water [kg];
///   E = (C + 4186 m) (T - 273.15 K), with liquid water at 0 degC holding no energy.
/// Not modelled: freezing.
struct WetMass {
  double dry_heat_capacity_j_k = 0.0;  ///< of everything but the water; above zero
  static constexpr int kStates = 2;
  static constexpr std::array<Quantity, 2> kCounts{Quantity::energy, Quantity::water};

  template <class S>
  void potentials(const std::array<S, 2>& amount, std::array<S, 2>& p) const {
    p[0] = amount[0] / (dry_heat_capacity_j_k + kWaterHeat * amount[1]) + kEnergyZeroK;
    p[1] = amount[1];
  }
  void amounts(const std::array<double, 2>& p, std::array<double, 2>& amount) const {
    amount[0] = (dry_heat_capacity_j_k + kWaterHeat * p[1]) * (p[0] - kEnergyZeroK);
    amount[1] = p[1];
  }
};

}  // namespace noonhouse
