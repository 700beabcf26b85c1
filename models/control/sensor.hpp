// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <string_view>

#include "models/properties/psychrometrics.hpp"
#include "sim/contract/law.hpp"

namespace noonhouse {

/// A thermometer that follows the air with a lag: reading [K].   dx/dt = (T - x) / tau
/// Inputs: its own reading, air temperature. The flux is from nowhere to the reading.
struct ThermometerLag {
  double time_constant_s = 0.0;  ///< tau [s], above zero
  static constexpr std::string_view kName = "thermometer";
  static constexpr int kInputs = 2, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::reading};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 1>& q) const {
    q[0] = (in[1] - in[0]) / time_constant_s;
  }
};

/// A hygrometer that follows relative humidity (share, 1 = saturated) with a lag. Inputs: reading, T, w.
struct HygrometerLag {
  double time_constant_s = 0.0;  ///< tau [s], above zero
  double pressure_pa = 101325.0;
  static constexpr std::string_view kName = "hygrometer";
  static constexpr int kInputs = 3, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::reading};
  template <class S>
  void flux(const std::array<S, 3>& in, std::array<S, 1>& q) const {
    const S humidity = vapour_pressure_pa(in[2], pressure_pa) / saturation_pressure_fast_pa(in[1]);
    q[0] = (humidity - in[0]) / time_constant_s;
  }
};

}  // namespace noonhouse
