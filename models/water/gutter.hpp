// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <string_view>

#include "models/properties/psychrometrics.hpp"
#include "sim/contract/law.hpp"
#include "sim/core/smooth.hpp"

namespace noonhouse {

/// Rain off one slope of a roof, through its gutter, first-flush chamber and filter: water [kg/s] and its heat [W].
///   caught   c = i A C                                     [rational formula; i rain, A plan area, C run-off share]
///   carried  k = c up to the gutter's most M, M beyond; rounded by a parabola on (1 +- b) M, b = 0.05, where it is low
///            by b M / 4 at the worst
///   flushed  k (1 - s), s from 0 at 0.9 F to 1 at F along 3x^2 - 2x^3 of the chamber's content     [F its size]
///   stored   (k - flushed) n                               [n efficiency of the filter, EN 16941-1]
///   lost     c - flushed - stored: over the gutter's brim, and what the filter turns away
/// Inputs: rain i [kg/(m2 s)], outdoor air temperature [K] (that of the rain), water in the first-flush chamber [kg].
/// Fluxes from the account "rain": to the tank, to the chamber, lost; heat of each from "heat of rain", that of the
/// chamber's to where the chamber drains, for nobody asks for its temperature.
/// Zero for F: no chamber. Does not model: wind that drives rain onto or past the roof, water that wets the roof first,
/// snow and ice, a gutter that fills before it spills.
struct Gutter {
  double plan_area_m2 = 0.0;
  double runoff_coefficient = 0.0;  ///< C, share of the rain, 0 to 1: roof_surfaces()
  double filter_efficiency = 1.0;   ///< n, share that passes, 0 to 1: kFilterEfficiency
  double most_flow_kg_s = 0.0;      ///< M, of gutter and downpipe, less the blocked share of the screen
  double first_flush_kg = 0.0;      ///< F
  static constexpr std::string_view kName = "rain through the gutter";
  static constexpr int kInputs = 3, kFluxes = 6;
  static constexpr std::array<Quantity, 6> kCarries{Quantity::water,  Quantity::energy, Quantity::water,
                                                    Quantity::energy, Quantity::water,  Quantity::energy};
  static constexpr bool kMayRepeat = true;  ///< two slopes may feed one tank

  template <class S>
  void flux(const std::array<S, 3>& in, std::array<S, 6>& q) const {
    const S caught = (plan_area_m2 * runoff_coefficient) * in[0];
    const S carried = no_more_than_most(caught);
    const S heat = liquid_enthalpy(in[1]);
    const double rounding = 0.1 * first_flush_kg;
    q[2] = first_flush_kg > 0.0 ? S(carried * (1.0 - ramp(S(in[2] - (first_flush_kg - rounding)), rounding))) : S(0.0);
    q[0] = filter_efficiency * (carried - q[2]);
    q[4] = (caught - q[2]) - q[0];  // in this order no rounding makes it negative
    for (std::size_t way = 0; way < 6; way += 2) q[way + 1] = q[way] * heat;
  }

 private:
  template <class S>
  S no_more_than_most(const S& caught) const {
    const double width = 0.05 * most_flow_kg_s;
    const S over = caught - (most_flow_kg_s - width);
    if (over <= 0.0) return caught;
    if (over >= 2.0 * width) return S(most_flow_kg_s);
    return caught - over * over / (4.0 * width);
  }
};

/// Water that drips from the first-flush chamber through its hole [kg/s], to the ground:  m = content / tau.
/// Input: water in the chamber [kg]. A chamber of a few litres on a hole of a millimetre is empty in hours: common
/// practice, no source. Does not model: the hole's square root of the depth, a hole that clogs.
struct FlushDrain {
  double time_constant_s = 4.0 * 3600.0;  ///< tau; common practice, no source
  static constexpr std::string_view kName = "drip of the first flush";
  static constexpr int kInputs = 1, kFluxes = 1;
  static constexpr std::array<Quantity, 1> kCarries{Quantity::water};
  template <class S>
  void flux(const std::array<S, 1>& in, std::array<S, 1>& q) const {
    q[0] = in[0] / time_constant_s;
  }
};

}  // namespace noonhouse
