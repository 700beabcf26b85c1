// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cmath>
#include <type_traits>

#include "models/properties/constants.hpp"
#include "sim/core/dual.hpp"

namespace noonhouse {

/// A law known as a value and a slope at the value of x, as a scalar of x's kind: S(value) with x's
/// derivatives times the slope. Spares a law of one argument the term-by-term differentiation.
template <class S>
S from_value_and_slope(const S& x, double value, double slope) {
  if constexpr (std::is_arithmetic_v<S>) {
    return value;
  } else {
    return value + slope * (x - value_of(x));
  }
}

/// Saturation vapour pressure over liquid water [Pa] at a temperature [K].
/// Hyland & Wexler 1983, as ASHRAE Handbook of Fundamentals 2017, ch. 1, eq. (6).
/// Stated for 0 to 200 degC; below 0 degC it continues as the pressure over supercooled water
/// (within 1 % of published values to -30 degC, from memory).
template <class S>
S saturation_pressure_water_pa(const S& temperature_k) {
  using std::exp;
  using std::log;
  const S& t = temperature_k;
  return exp(-5.8002206e3 / t + 1.3914993 + t * (-4.8640239e-2 + t * (4.1764768e-5 - 1.4452093e-8 * t)) +
             6.5459673 * log(t));
}

/// Saturation vapour pressure over ice [Pa] at a temperature [K].
/// Hyland & Wexler 1983, as ASHRAE Handbook of Fundamentals 2017, ch. 1, eq. (5); -100 to 0 degC.
template <class S>
S saturation_pressure_ice_pa(const S& temperature_k) {
  using std::exp;
  using std::log;
  const S& t = temperature_k;
  return exp(-5.6745359e3 / t + 6.3925247 +
             t * (-9.677843e-3 + t * (6.2215701e-7 + t * (2.0747825e-9 - 9.484024e-13 * t))) + 4.1635019 * log(t));
}

/// Saturation vapour pressure [Pa] at a temperature [K]: over ice below the triple point, over liquid
/// above it. Same sources. Continuous there to 1e-5 of itself; its slope is not: a tenth smaller above.
template <class S>
S saturation_pressure_pa(const S& temperature_k) {
  if (temperature_k < kTriplePoint) return saturation_pressure_ice_pa(temperature_k);
  return saturation_pressure_water_pa(temperature_k);
}

/// Slope of saturation_pressure_pa with temperature [Pa/K], exact.
template <class S>
S saturation_pressure_slope(const S& temperature_k) {
  const S& t = temperature_k;
  if (t < kTriplePoint) {
    return saturation_pressure_ice_pa(t) *
           ((5.6745359e3 / t + 4.1635019) / t +
            (-9.677843e-3 + t * (2.0 * 6.2215701e-7 + t * (3.0 * 2.0747825e-9 - 4.0 * 9.484024e-13 * t))));
  }
  return saturation_pressure_water_pa(t) *
         ((5.8002206e3 / t + 6.5459673) / t + (-4.8640239e-2 + t * (2.0 * 4.1764768e-5 - 3.0 * 1.4452093e-8 * t)));
}

namespace saturation_fit {
/// The fourth root of saturation_pressure_water_pa as a polynomial of x = (T - 293.15 K) / 60 K.
inline constexpr double kCentre = 293.15;
inline constexpr double kHalfWidth = 60.0;
inline constexpr double kCoefficients[6] = {6.954204951,   6.46161046,     1.504726801,
                                            -0.1395146694, -0.03628940134, 0.01138101289};
}  // namespace saturation_fit

/// Saturation vapour pressure over liquid water [Pa] at a temperature [K], for inner loops: no
/// exponential, one smooth function (value and every slope) with no branch at the freezing point.
/// A fit of this project to saturation_pressure_water_pa: within 1e-5 of it on -40 to 80 degC and
/// within 7e-4 on -60 to 100 degC; its slope within 3e-5 on -20 to 70 degC. Over liquid also below
/// 0 degC, where it lies above the pressure over ice (by 5 % at -5 degC, 21 % at -20 degC).
/// Derivatives are the exact ones of the fit itself.
template <class S>
S saturation_pressure_fast_pa(const S& temperature_k) {
  const double x = (value_of(temperature_k) - saturation_fit::kCentre) / saturation_fit::kHalfWidth;
  const auto& c = saturation_fit::kCoefficients;
  const double root = c[0] + x * (c[1] + x * (c[2] + x * (c[3] + x * (c[4] + x * c[5]))));
  const double squared = root * root;
  if constexpr (std::is_arithmetic_v<S>) {
    return squared * squared;
  } else {
    const double rise = c[1] + x * (2.0 * c[2] + x * (3.0 * c[3] + x * (4.0 * c[4] + x * 5.0 * c[5])));
    return from_value_and_slope(temperature_k, squared * squared,
                                4.0 * squared * root * rise / saturation_fit::kHalfWidth);
  }
}

/// Saturation vapour pressure [Pa] at a temperature [K] by the Tetens form.
///   e = 610.8 exp(17.27 t / (t + 237.3)), t in degC      [Allen et al. 1998, FAO-56, eq. (11)]
/// For comparison with agricultural tables; use saturation_pressure_pa elsewhere.
template <class S>
S tetens_pressure_pa(const S& temperature_k) {
  using std::exp;
  const S t = temperature_k - kZeroCelsius;
  return 610.8 * exp(17.27 * t / (t + 237.3));
}

/// Slope of the Tetens form as FAO-56 writes it [Pa/K].
///   4098 e / (t + 237.3)^2                                [Allen et al. 1998, FAO-56, eq. (13)]
template <class S>
S tetens_slope_pa_per_k(const S& temperature_k) {
  const S t = temperature_k - (kZeroCelsius - 237.3);
  return 4098.0 * tetens_pressure_pa(temperature_k) / (t * t);
}

}  // namespace noonhouse
