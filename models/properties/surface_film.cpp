// SPDX-License-Identifier: Apache-2.0
#include "models/properties/surface_film.hpp"

#include <algorithm>

#include "models/properties/air_transport.hpp"
#include "models/properties/constants.hpp"
#include "models/properties/convection.hpp"
#include "sim/core/errors.hpp"

namespace noonhouse {

namespace {

double cube(double x) { return x * x * x; }
double quartic_root(double x) { return std::sqrt(std::sqrt(x)); }

/// The larger laws of h = (k/L) max(laminar Ra^(1/4), turbulent Ra^(1/3)), Ra being that of 1 K.
FreeFilm free_film(double laminar_nusselt, double turbulent_nusselt, double conduction_w_m2_k) {
  FreeFilm film;
  film.laminar_cubed = cube(conduction_w_m2_k * laminar_nusselt);
  film.turbulent_cubed = cube(conduction_w_m2_k * turbulent_nusselt);
  if (film.turbulent_cubed > 0.0) {
    const double quarter = (1.0 + FreeFilm::kCorner) * film.laminar_cubed / film.turbulent_cubed;
    film.turbulent_from_k = quarter * quarter * quarter * quarter;
  }
  return film;
}

}  // namespace

SurfaceFilm surface_film(double tilt_rad, double length_m, double air_speed_m_s, double temperature_k,
                         double pressure_pa, std::optional<double> run_length_m) {
  NOON_ASSERT(tilt_rad >= 0.0 && tilt_rad <= kPi && length_m > 0.0 && air_speed_m_s >= 0.0);
  const double prandtl = dry_air_transport(temperature_k, pressure_pa).prandtl;
  const double rayleigh_1k = rayleigh_number(1.0, length_m, temperature_k, pressure_pa);
  const double along = rayleigh_1k * std::max(0.0, std::sin(tilt_rad));
  const double across = rayleigh_1k * std::abs(std::cos(tilt_rad));
  const double conduction = coefficient_from_nusselt(1.0, length_m, temperature_k);

  const double upright_laminar =
      vertical_plate_laminar_nusselt(along, prandtl) - vertical_plate_laminar_nusselt(0.0, prandtl);
  const double upright_turbulent = 0.10 * std::cbrt(along);
  const FreeFilm unstable = free_film(std::max(upright_laminar, 0.54 * quartic_root(across)),
                                      std::max(upright_turbulent, 0.15 * std::cbrt(across)), conduction);
  const FreeFilm stable =
      free_film(std::max(upright_laminar, 0.27 * quartic_root(across)), upright_turbulent, conduction);

  const bool faces_up = tilt_rad <= 0.5 * kPi;
  const double run = run_length_m.value_or(length_m);
  const double reynolds = reynolds_number(air_speed_m_s, run, temperature_k, pressure_pa);
  const double forced = coefficient_from_nusselt(flat_plate_nusselt(reynolds, prandtl), run, temperature_k);
  return {cube(forced), faces_up ? unstable : stable, faces_up ? stable : unstable};
}

}  // namespace noonhouse
