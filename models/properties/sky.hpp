// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cmath>
#include <type_traits>

#include "models/properties/constants.hpp"
#include "models/properties/saturation.hpp"

/// Longwave radiation of the sky. Emissivities refer to blackbody radiation at the screen-height air temperature.
namespace noonhouse {

/// Radiation of a black surface [W/m2].
template <class S>
S blackbody_emission(const S& temperature_k) {
  const S squared = temperature_k * temperature_k;
  return kStefanBoltzmann * squared * squared;
}

/// Radiative coefficient [W/(m2 K)] between black surfaces near this mean temperature: 4 sigma T^3.
template <class S>
S radiative_coefficient(const S& mean_temperature_k) {
  return 4.0 * kStefanBoltzmann * mean_temperature_k * mean_temperature_k * mean_temperature_k;
}

/// Emissivity of the clear sky by dew point, solar hour of the day and pressure; dew points -20 to 30 degC.
///   0.711 + 0.56 (t/100) + 0.73 (t/100)^2 + 0.013 cos(2 pi h / 24) + 0.00012 (p / 100 Pa - 1000)
///   Berdahl & Martin 1984, Solar Energy 32, 663; the pressure term as Martin & Berdahl 1984, Solar Energy 33, 321.
template <class S>
S berdahl_martin_emissivity(const S& dew_point_k, double solar_hour, double pressure_pa) {
  const S t = (dew_point_k - kZeroCelsius) / 100.0;
  return 0.711 + t * (0.56 + 0.73 * t) + 0.013 * std::cos(2.0 * kPi * solar_hour / 24.0) +
         0.00012 * (pressure_pa / 100.0 - 1000.0);
}

/// Emissivity of the clear sky by vapour pressure [Pa]: 0.52 + 0.065 sqrt(e / 100 Pa).
///   Brunt 1932, Q. J. R. Meteorol. Soc. 58, 389.
template <class S>
S brunt_emissivity(const S& vapour_pressure_pa) {
  using std::sqrt;
  return 0.52 + 0.065 * sqrt(vapour_pressure_pa / 100.0);
}

/// Emissivity of the clear sky by air temperature and vapour pressure: 1.24 (e / 100 Pa / T)^(1/7).
///   Brutsaert 1975, Water Resour. Res. 11, 742, eq. (11).
template <class S>
S brutsaert_emissivity(const S& temperature_k, const std::type_identity_t<S>& vapour_pressure_pa) {
  using std::pow;
  return 1.24 * pow(vapour_pressure_pa / (100.0 * temperature_k), 1.0 / 7.0);
}

/// Emissivity of the clear sky above a site at an altitude [m], by the air there: Brutsaert's form for the air as it
/// would be at sea level, less the air that is missing overhead.
///   1.24 (e' / 100 Pa / T')^(1/7) p / p_0
///   T' = T + 0.0065 z;  e' = r e_s(T'), r = e / e_s(T), over water;  p_0 = 101325 Pa
///   Marks & Dozier 1979, Arch. Meteorol. Geophys. Bioklimatol. B 27, 159; from memory. Made for 2 to 4 km in
///   mountains; at sea level and standard pressure it is brutsaert_emissivity. Does not model: the slopes around the
///   site.
template <class S>
S brutsaert_altitude_emissivity(const S& temperature_k, const std::type_identity_t<S>& vapour_pressure_pa,
                                double altitude_m, double pressure_pa) {
  const S below_k = temperature_k + 0.0065 * altitude_m;
  const S humidity = vapour_pressure_pa / saturation_pressure_water_pa(temperature_k);
  const S below_pa = humidity * saturation_pressure_water_pa(below_k);
  return brutsaert_emissivity(below_k, below_pa) * (pressure_pa / kStandardPressure);
}

/// Emissivity of the clear sky by air temperature: 1 - 0.261 exp(-7.77e-4 (273 - T)^2).
///   Idso & Jackson 1969, J. Geophys. Res. 74, 5397.
template <class S>
S idso_jackson_emissivity(const S& temperature_k) {
  using std::exp;
  const S below = 273.0 - temperature_k;
  return 1.0 - 0.261 * exp(-7.77e-4 * below * below);
}

/// Temperature of the clear sky [K] by air temperature: 0.0552 T^1.5.
///   Swinbank 1963, Q. J. R. Meteorol. Soc. 89, 339. Humid sites by night.
template <class S>
S swinbank_sky_temperature_k(const S& temperature_k) {
  using std::sqrt;
  return 0.0552 * temperature_k * sqrt(temperature_k);
}

/// Emissivity of the clear sky that follows from swinbank_sky_temperature_k: (T_sky / T)^4.
template <class S>
S swinbank_emissivity(const S& temperature_k) {
  const S ratio = swinbank_sky_temperature_k(temperature_k) / temperature_k;
  return ratio * ratio * ratio * ratio;
}

/// Emissivity of a sky covered to a fraction of 0 to 1 by cloud of unknown height.
///   (1 - 0.84 c) e_clear + 0.84 c          [Unsworth & Monteith 1975, Q. J. R. Meteorol. Soc. 101, 13]
/// Low cloud; high thin cloud radiates less: cloud_base_emissivity knows the height.
template <class S>
S cloudy_emissivity(const S& clear_emissivity, double cloud_fraction) {
  return (1.0 - 0.84 * cloud_fraction) * clear_emissivity + 0.84 * cloud_fraction;
}

/// Emissivity of a sky with cloud whose base is at a height [m] and which is opaque to a degree of 0 to 1
/// (1 low and middle cloud, 0.4 cirrus).
///   e + (1 - e) c e_c exp(-h / 8200 m)     [Martin & Berdahl 1984, Solar Energy 33, 321; from memory]
/// One layer of cloud: for several, add their c e_c exp(-h / 8200 m), each c the share seen from the ground.
template <class S>
S cloud_base_emissivity(const S& clear_emissivity, double cloud_fraction, double base_height_m,
                        double cloud_emissivity = 1.0) {
  return clear_emissivity +
         (1.0 - clear_emissivity) * (cloud_fraction * cloud_emissivity * std::exp(-base_height_m / 8200.0));
}

/// Temperature [K] of the black sky that radiates the same: T e^(1/4).
template <class S>
S sky_temperature_k(const S& temperature_k, const std::type_identity_t<S>& emissivity) {
  using std::sqrt;
  return temperature_k * sqrt(sqrt(emissivity));
}

/// Net longwave loss of a grass surface over a day [J/m2], positive upwards, by that day's extremes [K], vapour
/// pressure [Pa] and the ratio of solar to clear-sky energy (0.3 to 1).
///   [Allen et al. 1998, FAO-56, eq. (39)]
double fao_net_longwave_daily(double coldest_k, double warmest_k, double vapour_pressure_pa, double clearness_ratio);

/// Cloud fraction, 0 to 1, from the ratio of solar to clear-sky energy: the cloud factor 1.35 x - 0.35 of FAO-56,
/// eq. (39) (x clamped to 0.3 to 1), as the share of the clear sky left open.
double cloud_fraction_from_clearness(double clearness_ratio);

}  // namespace noonhouse
