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
    const S water = caught(in[0]);
    divide(water, carried(water), in[2], S(liquid_enthalpy(in[1])), q);
  }

  template <class S>
  S caught(const S& rain) const {
    return (plan_area_m2 * runoff_coefficient) * rain;
  }
  template <class S>
  S carried(const S& caught) const {
    const double width = 0.05 * most_flow_kg_s;
    const S over = caught - (most_flow_kg_s - width);
    if (over <= 0.0) return caught;
    if (over >= 2.0 * width) return S(most_flow_kg_s);
    return caught - over * over / (4.0 * width);
  }
  /// Water that comes, of which so much is carried, by its three ways with its heat [J/kg].
  template <class S>
  void divide(const S& comes, const S& carried, const S& chamber_kg, const S& heat, std::array<S, 6>& q) const {
    const double rounding = 0.1 * first_flush_kg;
    q[2] = first_flush_kg > 0.0 ? S(carried * (1.0 - ramp(S(chamber_kg - (first_flush_kg - rounding)), rounding)))
                                : S(0.0);
    q[0] = filter_efficiency * (carried - q[2]);
    q[4] = (comes - q[2]) - q[0];  // in this order no rounding makes it negative
    for (std::size_t way = 0; way < 6; way += 2) q[way + 1] = q[way] * heat;
  }
};

/// Water that was sprinkled on a slope and runs off it, through one of its gutters with chamber and filter: water
/// [kg/s] and its heat [W].
///   comes    w = p m / tau            [m water on its way down the slope, p this gutter's share of it]
///   carried  k(c + w) - k(c)          [k of the gutter, c its rain: the most flow bounds both, rain first]
///   flushed, stored, lost as of the gutter's rain
/// The run-off share of rain does not apply: what wets the roof and dries is followed as a film. The first flush does:
/// its chamber stands in the downpipe and takes what comes first, of rain or not.
/// Inputs: temperature [K] and mass m [kg] of the water on its way, rain [kg/(m2 s)], water in the first-flush chamber
/// [kg]. Fluxes from the water on its way, in the gutter's order: to the tank, to the chamber, lost; heat of each, that
/// of the chamber's to where the chamber drains.
struct GutterReturn {
  Gutter gutter;
  double share = 1.0;            ///< p, 0 to 1
  double time_constant_s = 5.0;  ///< tau, down a slope of a few metres; common practice, no source
  static constexpr std::string_view kName = "sprinkled water through the gutter";
  static constexpr int kInputs = 4, kFluxes = 6;
  static constexpr std::array<Quantity, 6> kCarries = Gutter::kCarries;
  static constexpr bool kMayRepeat = true;  ///< two gutters may drain one slope

  template <class S>
  void flux(const std::array<S, 4>& in, std::array<S, 6>& q) const {
    const S comes = in[1] > 0.0 ? S((share / time_constant_s) * in[1]) : S(0.0);
    const S rain = gutter.caught(in[2]);
    const S room = gutter.carried(S(rain + comes)) - gutter.carried(rain);
    gutter.divide(comes, room < comes ? room : comes, in[3], S(liquid_enthalpy(in[0])), q);
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
