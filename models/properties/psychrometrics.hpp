// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cmath>
#include <type_traits>

#include "models/properties/constants.hpp"
#include "models/properties/saturation.hpp"
#include "sim/core/dual.hpp"
#include "sim/core/errors.hpp"

/// Moist air as a mixture of ideal gases. Humidity ratio w is kg of vapour per kg of dry air. Equation
/// numbers are those of ASHRAE Handbook of Fundamentals 2017, ch. 1. Not modelled: the enhancement factor
/// of real moist air, so humidity at saturation is 0.4 to 0.7 % low at sea level.
/// A law of two state variables takes its scalar from the first; the pressure of the air is a plain number.
namespace noonhouse {

/// Humidity ratio [kg/kg dry air] of air with this vapour pressure [Pa] at this total pressure [Pa].
///   w = 0.621945 e / (p - e)      [eq. (20)]; for e below p.
template <class S>
S humidity_ratio(const S& vapour_pressure_pa, double pressure_pa) {
  return kMolarRatio * vapour_pressure_pa / (pressure_pa - vapour_pressure_pa);
}

/// Humidity ratio at saturation [kg/kg dry air], over ice below the triple point. [eq. (21)]
/// For temperatures below boiling at this pressure.
template <class S>
S saturation_humidity_ratio(const S& temperature_k, double pressure_pa) {
  return humidity_ratio(saturation_pressure_pa(temperature_k), pressure_pa);
}

/// Humidity ratio at saturation over liquid [kg/kg dry air] by the smooth fit saturation_pressure_fast_pa.
template <class S>
S saturation_humidity_ratio_fast(const S& temperature_k, double pressure_pa) {
  return humidity_ratio(saturation_pressure_fast_pa(temperature_k), pressure_pa);
}

/// Vapour pressure [Pa] of air with humidity ratio w [kg/kg dry air]: the inverse of humidity_ratio.
template <class S>
S vapour_pressure_pa(const S& w, double pressure_pa) {
  return pressure_pa * w / (kMolarRatio + w);
}

/// Relative humidity as a share (1 = saturated) over ice below the triple point.   [eq. (12)]
template <class S>
S relative_humidity(const S& temperature_k, const std::type_identity_t<S>& w, double pressure_pa) {
  return vapour_pressure_pa(w, pressure_pa) / saturation_pressure_pa(temperature_k);
}

/// Saturation pressure less vapour pressure [Pa]; negative above saturation.
template <class S>
S vapour_pressure_deficit_pa(const S& temperature_k, const std::type_identity_t<S>& w, double pressure_pa) {
  return saturation_pressure_pa(temperature_k) - vapour_pressure_pa(w, pressure_pa);
}

/// Enthalpy of water vapour [J/kg], liquid water at 0 degC being zero.   [eq. (30)]
template <class S>
S vapour_enthalpy(const S& temperature_k) {
  return kLatentHeatZero + kVapourHeat * (temperature_k - kZeroCelsius);
}

/// Enthalpy of liquid water [J/kg], zero at 0 degC.   [eq. (33)]
template <class S>
S liquid_enthalpy(const S& temperature_k) {
  return kWaterHeat * (temperature_k - kZeroCelsius);
}

/// Enthalpy of moist air [J/kg dry air]; dry air and liquid water at 0 degC are zero.
///   h = 1006 t + w (2.501e6 + 1860 t), t in degC      [eq. (30)]
template <class S>
S moist_air_enthalpy(const S& temperature_k, const std::type_identity_t<S>& w) {
  return kDryAirHeat * (temperature_k - kZeroCelsius) + w * vapour_enthalpy(temperature_k);
}

/// Temperature [K] of moist air of this enthalpy [J/kg dry air]: the inverse of moist_air_enthalpy.
template <class S>
S temperature_from_enthalpy_k(const S& enthalpy, const std::type_identity_t<S>& w) {
  return kZeroCelsius + (enthalpy - kLatentHeatZero * w) / (kDryAirHeat + kVapourHeat * w);
}

/// Volume of the mixture [m3/kg dry air].
///   v = R_da T (1 + 1.607858 w) / p      [eq. (26)]
template <class S>
S specific_volume(const S& temperature_k, const std::type_identity_t<S>& w, double pressure_pa) {
  return kGasConstantDryAir * temperature_k * (1.0 + w / kMolarRatio) / pressure_pa;
}

/// Density of the mixture, dry air and vapour together [kg/m3].   [eq. (11)]
template <class S>
S moist_air_density(const S& temperature_k, const std::type_identity_t<S>& w, double pressure_pa) {
  return (1.0 + w) / specific_volume(temperature_k, w, pressure_pa);
}

/// Mass of dry air in a cubic metre of the mixture [kg dry air/m3].
template <class S>
S dry_air_density(const S& temperature_k, const std::type_identity_t<S>& w, double pressure_pa) {
  return 1.0 / specific_volume(temperature_k, w, pressure_pa);
}

/// Temperature [K] at which this vapour pressure [Pa] saturates: dew point, below 0.01 degC the frost
/// point. Never below -100 degC, the end of the saturation law.
double saturation_temperature_k(double vapour_pressure_pa);

/// Dew point [K] (frost point below 0.01 degC) of air with humidity ratio w. Never below -100 degC.
template <class S>
S dew_point_k(const S& w, double pressure_pa) {
  const S e = vapour_pressure_pa(w, pressure_pa);
  const double dew = saturation_temperature_k(value_of(e));
  return from_value_and_slope(e, dew, 1.0 / saturation_pressure_slope(dew));
}

/// Humidity ratio [kg/kg dry air] of air at a temperature whose thermodynamic wet bulb is given [K].
///   above freezing: W = ((L0 - (cw - cpv) t*) Ws* - cpa (t - t*)) / (L0 + cpv t - cw t*)    [eq. (33)]
///   below:          the same with heat of sublimation and ice                                [eq. (35)]
/// Negative where no air so dry exists. The two forms do not meet at 0 degC.
template <class S>
S humidity_ratio_from_wet_bulb(const S& temperature_k, const std::type_identity_t<S>& wet_bulb_k, double pressure_pa) {
  const bool frozen = wet_bulb_k < kZeroCelsius;
  const double heat = frozen ? kSublimationHeatZero : kLatentHeatZero;
  const double condensed = frozen ? kIceHeat : kWaterHeat;
  const S t = temperature_k - kZeroCelsius;
  const S b = wet_bulb_k - kZeroCelsius;
  const S saturated = saturation_humidity_ratio<S>(wet_bulb_k, pressure_pa);
  return ((heat - (condensed - kVapourHeat) * b) * saturated - kDryAirHeat * (t - b)) /
         (heat + kVapourHeat * t - condensed * b);
}

/// Thermodynamic wet-bulb temperature [K] as a plain number: the root of humidity_ratio_from_wet_bulb,
/// kept in its bracket. Where both a liquid and a frozen bulb satisfy the definition, the liquid one.
/// Air at or above saturation returns its own temperature.
double wet_bulb_value_k(double temperature_k, double w, double pressure_pa);

/// Thermodynamic wet-bulb temperature [K] of air at this temperature and humidity ratio.   [eqs. (33), (35)]
template <class S>
S wet_bulb_k(const S& temperature_k, const std::type_identity_t<S>& w, double pressure_pa) {
  const double bulb = wet_bulb_value_k(value_of(temperature_k), value_of(w), pressure_pa);
  if constexpr (std::is_arithmetic_v<S>) {
    return bulb;
  } else {
    if (bulb >= value_of(temperature_k)) return temperature_k;
    // One Newton step of the derivative-carrying residual: the implicit-function theorem.
    const Dual<1> rise =
        humidity_ratio_from_wet_bulb(Dual<1>(value_of(temperature_k)), Dual<1>::input(bulb, 0), pressure_pa);
    const S residual = humidity_ratio_from_wet_bulb(temperature_k, S(bulb), pressure_pa) - w;
    return bulb - (residual - value_of(residual)) / rise.grad[0];
  }
}

/// Wet-bulb temperature [K] by an approximation for 101.3 kPa, 5 to 99 % relative humidity and -20 to
/// 50 degC, error -1 to 0.65 K.   [Stull 2011, J. Appl. Meteorol. Climatol. 50, 2267, eq. (1)]
double stull_wet_bulb_k(double temperature_k, double relative_humidity);

/// Psychrometric constant [Pa/K] at a pressure [Pa].
///   gamma = 0.665e-3 p      [Allen et al. 1998, FAO-56, eq. (8)]
constexpr double psychrometric_constant_pa_per_k(double pressure_pa) { return 0.665e-3 * pressure_pa; }

}  // namespace noonhouse
