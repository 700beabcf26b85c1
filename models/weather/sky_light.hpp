// SPDX-License-Identifier: Apache-2.0
#pragma once
#include "models/properties/sun.hpp"
#include "models/weather/weather_series.hpp"

namespace noonhouse {

/// Sunlight by where it comes from: the sun's place, or all of the sky alike.
struct SkyLight {
  double beam_w_m2 = 0.0;  ///< on a plane facing the sun; the circumsolar part of the sky's light counts here
  double sky_w_m2 = 0.0;   ///< on a level plane, the part of the sky's light that is the same from everywhere
  double global_w_m2 = 0.0;
};

/// Divides the row's sunlight by the anisotropy index A = beam / extraterrestrial: A of the diffuse light comes from
/// about the sun, the rest is uniform. Nothing while the sun is down.
///   [Hay & Davies 1980; the circumsolar part over sin(elevation), no smaller than that of 1 deg]
SkyLight sky_light(const WeatherRow& row, const SunPosition& sun);

/// Irradiance of an unshaded tilted plane [W/m2]: beam, uniform sky and light from the ground [Liu & Jordan 1963].
double plane_irradiance(const SkyLight& light, const SunPosition& sun, double slope_rad, double azimuth_rad,
                        double albedo);

/// What tells how a clear sky radiates.
enum class SkyForm {
  dew_point,       ///< Berdahl & Martin 1984, with the hour and the pressure
  vapour_pressure  ///< Brutsaert 1975, carried to altitude by Marks & Dozier 1979
};

/// Temperature of the black sky that radiates as the sky does [K]: by the row's measured longwave if it has any, else
/// by the form for a clear sky and the row's cloud [Unsworth & Monteith 1975].
double sky_temperature_of(const WeatherRow& row, SkyForm form, double solar_hour, double pressure_pa,
                          double altitude_m);

}  // namespace noonhouse
