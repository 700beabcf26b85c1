// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <limits>
#include <numbers>

namespace noonhouse {

inline constexpr double kPi = std::numbers::pi;
inline constexpr double kRadiansPerDegree = kPi / 180.0;
/// A whole turn [rad].
inline constexpr double kTurn = 2.0 * kPi;
inline constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// Gas constant of dry air [J/(kg K)]. ASHRAE Handbook of Fundamentals 2017, ch. 1, eq. (1).
inline constexpr double kGasConstantDryAir = 287.042;
/// Gas constant of water vapour [J/(kg K)]. ASHRAE Handbook of Fundamentals 2017, ch. 1, eq. (2).
inline constexpr double kGasConstantVapour = 461.524;
/// Molar mass of water over that of dry air [-]. ASHRAE Handbook of Fundamentals 2017, ch. 1, eq. (20).
inline constexpr double kMolarRatio = 0.621945;
/// 0 degrees Celsius [K].
inline constexpr double kZeroCelsius = 273.15;
/// Triple point of water [K], where saturation over ice meets saturation over liquid.
inline constexpr double kTriplePoint = 273.16;
/// Stefan-Boltzmann constant [W/(m2 K4)]. CODATA 2018.
inline constexpr double kStefanBoltzmann = 5.670374419e-8;
/// Standard acceleration of gravity [m/s2].
inline constexpr double kGravity = 9.80665;
/// Standard pressure at sea level [Pa].
inline constexpr double kStandardPressure = 101325.0;

/// Heat capacity of dry air at constant pressure [J/(kg K)], of the enthalpy form of moist air.
/// ASHRAE Handbook of Fundamentals 2017, ch. 1, eq. (30).
inline constexpr double kDryAirHeat = 1006.0;
/// Heat capacity of water vapour [J/(kg K)], same equation.
inline constexpr double kVapourHeat = 1860.0;
/// Heat of vaporisation at 0 degC [J/kg], same equation.
inline constexpr double kLatentHeatZero = 2.501e6;
/// Heat capacity of liquid water [J/(kg K)]. Same chapter, eq. (33).
inline constexpr double kWaterHeat = 4186.0;
/// Heat capacity of ice [J/(kg K)]. Same chapter, eq. (35).
inline constexpr double kIceHeat = 2100.0;
/// Heat of sublimation at 0 degC [J/kg]. Same chapter, eq. (35).
inline constexpr double kSublimationHeatZero = 2.830e6;
/// Heat of fusion at 0 degC [J/kg]: the difference of the two above, so that a cycle closes.
inline constexpr double kFusionHeatZero = kSublimationHeatZero - kLatentHeatZero;
/// Le^(2/3) of vapour in air [-]: by so much a film passes heat less readily than vapour (Le 0.85, from memory).
inline constexpr double kLewisTwoThirds = 0.90;

/// Irradiance of the sun at the mean distance [W/m2]. Kopp & Lean 2011, Geophys. Res. Lett. 38, L01706 (1360.8).
inline constexpr double kSolarConstant = 1360.8;

/// Photons of photosynthetic light (400-700 nm) in each joule of it, sunlight [mol/J].
/// McCree 1972, Agric. Meteorol. 10, 443.
inline constexpr double kParPerJoule = 4.57e-6;
/// Photosynthetic share of the energy of global sunlight [-]; 0.43-0.50 with sky and humidity (from memory).
inline constexpr double kParShare = 0.45;

}  // namespace noonhouse
