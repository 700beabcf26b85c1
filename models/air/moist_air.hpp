// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>

#include "models/properties/psychrometrics.hpp"
#include "sim/contract/store.hpp"

namespace noonhouse {

/// The air of one layer of one bay: enthalpy [J] and vapour [kg] -> temperature [K] and humidity ratio
/// [kg/kg dry air], with a fixed mass of dry air.   [ASHRAE HoF 2017 ch. 1, eq. (30)]
/// Not modelled: expansion (a layer keeps its dry air when it warms; flows in and out are equal by mass).
struct MoistAir {
  double dry_air_kg = 0.0;
  static constexpr int kStates = 2;
  static constexpr std::array<Quantity, 2> kCounts{Quantity::energy, Quantity::water};

  template <class S>
  void potentials(const std::array<S, 2>& amount, std::array<S, 2>& p) const {
    p[1] = amount[1] / dry_air_kg;
    p[0] = temperature_from_enthalpy_k(S(amount[0] / dry_air_kg), p[1]);
  }
  void amounts(const std::array<double, 2>& p, std::array<double, 2>& amount) const {
    amount[0] = dry_air_kg * moist_air_enthalpy(p[0], p[1]);
    amount[1] = dry_air_kg * p[1];
  }
};

}  // namespace noonhouse
