// SPDX-License-Identifier: Apache-2.0
#pragma once

namespace noonhouse {

/// Pressure of the standard atmosphere [Pa] at an altitude above sea level [m], -5000 to 11000 m.
///   p = 101325 (1 - 2.25577e-5 z)^5.2559      [ASHRAE Handbook of Fundamentals 2017, ch. 1, eq. (3)]
/// Does not model: weather, which moves it by about 3 %.
double standard_pressure_pa(double altitude_m);

/// Temperature of the standard atmosphere [K] at an altitude [m], -5000 to 11000 m.
///   t = 15 - 0.0065 z degC                     [same chapter, eq. (4)]
double standard_temperature_k(double altitude_m);

/// Mean pressure [Pa] at an altitude [m] as agricultural tables have it: 20 degC at sea level.
///   p = 101300 ((293 - 0.0065 z) / 293)^5.26   [Allen et al. 1998, FAO-56, eq. (7)]
double fao_pressure_pa(double altitude_m);

}  // namespace noonhouse
