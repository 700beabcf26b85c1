// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <string_view>

#include "models/properties/psychrometrics.hpp"
#include "sim/contract/law.hpp"

namespace noonhouse {

/// Rain off a roof into the tank: water [kg/s] and its heat [W], from the account "rain" to the tank.
///   m = i A C: intensity i [kg/(m2 s)] on plan area A with run-off coefficient C (rational formula).
/// Rain is taken at outdoor air temperature. Inputs: i, T_out [K].
/// Not modelled: first flush, gutter capacity, filter.
struct RoofCatchment {
  double plan_area_m2 = 0.0;
  double runoff_coefficient = 0.0;  ///< C, share of the rain, 0 to 1
  static constexpr std::string_view kName = "rain from the roof";
  static constexpr int kInputs = 2, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::water, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 2>& q) const {
    q[0] = (plan_area_m2 * runoff_coefficient) * in[0];
    q[1] = q[0] * liquid_enthalpy(in[1]);
  }
};

/// Water carried from one store to another at a temperature: the path of hand watering and refills.
/// Carries nothing by itself; people move amounts along it at an instant.
struct HandCarried {
  static constexpr std::string_view kName = "carried by hand";
  static constexpr int kInputs = 1, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::water, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 1>&, std::array<S, 2>& q) const {
    q[0] = S(0.0);
    q[1] = S(0.0);
  }
};

}  // namespace noonhouse
