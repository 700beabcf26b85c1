// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <cmath>
#include <type_traits>

#include "models/properties/psychrometrics.hpp"

/// The wet bulb for inner loops: smooth, liquid at every temperature, with exact slopes.
namespace noonhouse {

namespace wet_bulb_detail {

/// What a kilogram of dry air with its vapour lacks to be saturated at b by water of enthalpy h_l [J/kg], and the
/// slope of that by b. Rises with b.
///   f(b) = h(b, w_s(b)) - h(T, w) - (w_s(b) - w) h_l
struct Shortage {
  double value, slope;
};
inline Shortage shortage(double bulb_k, double temperature_k, double w, double water_enthalpy, double water_slope,
                         double pressure_pa) {
  const Dual<1> saturated = saturation_humidity_ratio_fast(Dual<1>::input(bulb_k, 0), pressure_pa);
  const double taken_up = saturated.value - w;
  const double vapour = vapour_enthalpy(bulb_k);
  return {kDryAirHeat * (bulb_k - temperature_k) + saturated.value * vapour - w * vapour_enthalpy(temperature_k) -
              taken_up * water_enthalpy,
          kDryAirHeat + saturated.value * kVapourHeat + saturated.grad[0] * (vapour - water_enthalpy) -
              taken_up * water_slope};
}

/// The root of f. Newton from the air's own temperature: f is convex and the root lies below it for air that is not
/// saturated, so every step stays above the root; five or six steps to rounding. Air hotter than 60 degC starts there.
template <class WaterEnthalpy>
double saturated_value_k(double temperature_k, double w, double pressure_pa, double water_slope,
                         const WaterEnthalpy& water_enthalpy) {
  double bulb = std::fmin(temperature_k, 333.15);
  for (int iteration = 0; iteration < 20; ++iteration) {
    const Shortage at = shortage(bulb, temperature_k, w, water_enthalpy(bulb), water_slope, pressure_pa);
    const double step = at.value / at.slope;
    bulb -= step;
    if (std::fabs(step) < 1e-7) break;  // the next would be its square
  }
  return bulb;
}

}  // namespace wet_bulb_detail

/// Thermodynamic wet bulb [K] of air with humidity ratio w [kg/kg], over liquid at every temperature:
///   h(b, w_s(b)) = h(T, w) + (w_s(b) - w) h_l(b)      [ASHRAE HoF 2017, ch. 1, the balance behind eq. (33)]
/// Within 0.001 K of wet_bulb_k where that is above freezing. Air beyond saturation has its "wet bulb" above its
/// own temperature: the balance goes on smoothly. Air to 95 degC at 80 kPa or more.
template <class S>
S wet_bulb_fast_k(const S& temperature_k, const std::type_identity_t<S>& w, double pressure_pa) {
  const double t = value_of(temperature_k), w_value = value_of(w);
  const double bulb = wet_bulb_detail::saturated_value_k(t, w_value, pressure_pa, kWaterHeat,
                                                         [](double b) { return liquid_enthalpy(b); });
  if constexpr (std::is_arithmetic_v<S>) {
    return bulb;
  } else {
    // The implicit-function theorem: f moves by its slopes in T and w, and b makes up for it.
    const double liquid = liquid_enthalpy(bulb);
    const auto at = wet_bulb_detail::shortage(bulb, t, w_value, liquid, kWaterHeat, pressure_pa);
    const double by_t = (kDryAirHeat + w_value * kVapourHeat) / at.slope;
    const double by_w = (vapour_enthalpy(t) - liquid) / at.slope;
    return bulb + by_t * (temperature_k - t) + by_w * (w - w_value);
  }
}

/// Temperature [K] of air that has been saturated by water of a temperature [K] and nothing else: what a wet pad tends
/// to, with slopes, smooth past saturation in the same way. Within 0.001 K of the search in models/air/pad.hpp above
/// freezing.
template <class S>
S saturated_by_water_fast_k(const S& temperature_k, const std::type_identity_t<S>& w,
                            const std::type_identity_t<S>& water_k, double pressure_pa) {
  const double t = value_of(temperature_k), w_value = value_of(w);
  const double liquid = liquid_enthalpy(value_of(water_k));
  const double end =
      wet_bulb_detail::saturated_value_k(t, w_value, pressure_pa, 0.0, [liquid](double) { return liquid; });
  if constexpr (std::is_arithmetic_v<S>) {
    return end;
  } else {
    const auto at = wet_bulb_detail::shortage(end, t, w_value, liquid, 0.0, pressure_pa);
    const double by_t = (kDryAirHeat + w_value * kVapourHeat) / at.slope;
    const double by_w = (vapour_enthalpy(t) - liquid) / at.slope;
    const double by_water = (saturation_humidity_ratio_fast(end, pressure_pa) - w_value) * kWaterHeat / at.slope;
    return end + by_t * (temperature_k - t) + by_w * (w - w_value) + by_water * (water_k - value_of(water_k));
  }
}

/// How far apart two temperatures are once drying counts: zero for d <= 0 and d^2 / (d + width) above, so that the
/// slope begins with zero. Less than d [K] by less than the width.
template <class S>
S drying_difference_k(const S& difference_k, double width_k) {
  if (!(difference_k > 0.0)) return S(0.0);
  return difference_k * difference_k / (difference_k + width_k);
}

}  // namespace noonhouse
