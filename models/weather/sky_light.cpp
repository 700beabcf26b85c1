// SPDX-License-Identifier: Apache-2.0
#include "models/weather/sky_light.hpp"

#include <algorithm>
#include <cmath>

#include "models/properties/constants.hpp"
#include "models/properties/irradiance.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/properties/sky.hpp"

namespace noonhouse {

SkyLight sky_light(const WeatherRow& row, const SunPosition& sun) {
  SkyLight out;
  if (sun.elevation_rad <= 0.0) return out;
  // On a plane that faces the sun the model's circumsolar term is the circumsolar light itself.
  const SkyView facing{kPi / 2.0 - sun.elevation_rad, 1.0, kPi / 2.0 - sun.elevation_rad,
                       extraterrestrial_normal_at_distance(sun.distance_au)};
  const SkyDiffuse parts = hay_davies_sky_diffuse(row.diffuse_horizontal_w_m2, row.beam_normal_w_m2, facing);
  out.beam_w_m2 = row.beam_normal_w_m2 + parts.circumsolar_w_m2;
  out.sky_w_m2 = row.diffuse_horizontal_w_m2 - parts.circumsolar_w_m2 * std::sin(sun.elevation_rad);
  out.global_w_m2 = row.global_horizontal_w_m2;
  return out;
}

double plane_irradiance(const SkyLight& light, const SunPosition& sun, double slope_rad, double azimuth_rad,
                        double albedo) {
  const double cosine = sun.elevation_rad > 0.0 ? std::max(0.0, incidence_cosine(sun, slope_rad, azimuth_rad)) : 0.0;
  return light.beam_w_m2 * cosine + isotropic_sky_diffuse(light.sky_w_m2, slope_rad) +
         ground_reflected(light.global_w_m2, albedo, slope_rad);
}

double sky_temperature_of(const WeatherRow& row, SkyForm form, double solar_hour, double pressure_pa,
                          double altitude_m) {
  if (std::isfinite(row.longwave_down_w_m2)) return std::sqrt(std::sqrt(row.longwave_down_w_m2 / kStefanBoltzmann));
  const double clear =
      form == SkyForm::dew_point
          ? berdahl_martin_emissivity(dew_point_k(row.humidity_ratio, pressure_pa), solar_hour, pressure_pa)
          : brutsaert_altitude_emissivity(row.temperature_k, vapour_pressure_pa(row.humidity_ratio, pressure_pa),
                                          altitude_m, pressure_pa);
  const double cloud = std::isfinite(row.cloud_share) ? row.cloud_share : 0.0;
  return sky_temperature_k(row.temperature_k, std::min(1.0, cloudy_emissivity(clear, cloud)));
}

}  // namespace noonhouse
