// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <string_view>

#include "models/properties/psychrometrics.hpp"
#include "sim/contract/law.hpp"
#include "sim/core/smooth.hpp"

namespace noonhouse {

/// Water that a line of drippers lets into pots [kg/s] with its heat [W], from the tank:  m = M s.
/// Inputs: temperature of the tank [K], share that the line runs (0 to 1).
/// Not modelled: drippers that clog, a flow that follows the tank's level.
struct Drip {
  double flow_kg_s = 0.0;  ///< M
  static constexpr std::string_view kName = "drip";
  static constexpr int kInputs = 2, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::water, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 2>& q) const {
    q[0] = flow_kg_s * in[1];
    q[1] = q[0] * liquid_enthalpy(in[0]);
  }
};

/// Water that is given from outside at a rate [kg/s], with its heat [W]. Inputs: the rate, the heat.
struct GivenWater {
  static constexpr std::string_view kName = "given water";
  static constexpr int kInputs = 2, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::water, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 2>& in, std::array<S, 2>& q) const {
    q[0] = in[0];
    q[1] = in[1];
  }
};

/// Water that dries from the soil in pots [kg/s] with its heat [W], to the air; dew where the soil is colder.
///   m = A g f (w_s(T) - w),  g = h / (c_p Le^(2/3)),  f rises from 0 to 1 over the first `moist_share` of the water
/// The second stage of drying, in which water must come up through dry soil, is that rise. [Hillel 1998, Environmental
/// Soil Physics, ch. 18, two stages; the straight form is this project's]
/// Inputs: temperature of the soil [K], its water [kg], humidity ratio of the air.
struct SoilDrying {
  double area_m2 = 0.0;  ///< open to the air
  double pressure_pa = 101325.0;
  double capacity_kg = 1.0;
  double moist_share = 0.6;
  double film_w_m2_k = 2.0;  ///< h, sheltered by the leaves above; common practice, no source
  static constexpr std::string_view kName = "drying of pots";
  static constexpr int kInputs = 3, kFluxes = 2;
  static constexpr std::array<Quantity, 2> kCarries{Quantity::water, Quantity::energy};
  template <class S>
  void flux(const std::array<S, 3>& in, std::array<S, 2>& q) const {
    const S drive = saturation_humidity_ratio_fast(in[0], pressure_pa) - in[2];
    S rate = (area_m2 * film_w_m2_k / (kDryAirHeat * kLewisTwoThirds)) * drive;
    if (drive > 0.0) rate = rate * ramp(in[1], moist_share * capacity_kg);
    q[0] = rate;
    q[1] = rate * vapour_enthalpy(in[0]);
  }
};

}  // namespace noonhouse
