// SPDX-License-Identifier: Apache-2.0
#include "models/properties/convection.hpp"

#include <cmath>

#include "models/properties/air_transport.hpp"
#include "models/properties/constants.hpp"

namespace noonhouse {

namespace {

/// [1 + (c / Pr)^(9/16)], by which Churchill & Chu carry a law over all Prandtl numbers.
double prandtl_term(double constant, double prandtl) { return 1.0 + std::pow(constant / prandtl, 9.0 / 16.0); }

double fourth_root(double x) { return std::sqrt(std::sqrt(x)); }
double sixth_root(double x) { return std::sqrt(std::cbrt(x)); }

/// The form {a + 0.387 Ra^(1/6) / term^(8/27)}^2 of Churchill & Chu.
double churchill_chu(double conduction, double rayleigh, double term) {
  const double root = conduction + 0.387 * sixth_root(rayleigh) / std::pow(term, 8.0 / 27.0);
  return root * root;
}

}  // namespace

double rayleigh_number(double difference_k, double length_m, double film_temperature_k, double pressure_pa) {
  const AirTransport air = dry_air_transport(film_temperature_k, pressure_pa);
  return kGravity * std::abs(difference_k) / film_temperature_k * length_m * length_m * length_m /
         (air.kinematic_viscosity_m2_s * air.thermal_diffusivity_m2_s);
}

double reynolds_number(double speed_m_s, double length_m, double film_temperature_k, double pressure_pa) {
  return speed_m_s * length_m / dry_air_transport(film_temperature_k, pressure_pa).kinematic_viscosity_m2_s;
}

double coefficient_from_nusselt(double nusselt, double length_m, double film_temperature_k) {
  return nusselt * air_conductivity_w_m_k(film_temperature_k) / length_m;
}

double vertical_plate_nusselt(double rayleigh, double prandtl) {
  return churchill_chu(0.825, rayleigh, prandtl_term(0.492, prandtl));
}

double vertical_plate_laminar_nusselt(double rayleigh, double prandtl) {
  return 0.68 + 0.670 * fourth_root(rayleigh) / std::pow(prandtl_term(0.492, prandtl), 4.0 / 9.0);
}

double inclined_plate_nusselt(double rayleigh, double prandtl, double from_vertical_rad) {
  return vertical_plate_laminar_nusselt(rayleigh * std::cos(from_vertical_rad), prandtl);
}

double horizontal_plate_unstable_nusselt(double rayleigh) {
  return rayleigh < 1e7 ? 0.54 * fourth_root(rayleigh) : 0.15 * std::cbrt(rayleigh);
}

double horizontal_plate_stable_nusselt(double rayleigh) { return 0.27 * fourth_root(rayleigh); }

double horizontal_cylinder_nusselt(double rayleigh, double prandtl) {
  return churchill_chu(0.60, rayleigh, prandtl_term(0.559, prandtl));
}

double flat_plate_nusselt(double reynolds, double prandtl) {
  const double laminar = 0.664 * std::sqrt(reynolds);
  return (reynolds < 5e5 ? laminar : 0.037 * std::pow(reynolds, 0.8) - 871.0) * std::cbrt(prandtl);
}

double flat_plate_turbulent_nusselt(double reynolds, double prandtl) {
  return 0.037 * std::pow(reynolds, 0.8) * std::cbrt(prandtl);
}

double cylinder_crossflow_nusselt(double reynolds, double prandtl) {
  const double laminar =
      0.62 * std::sqrt(reynolds) * std::cbrt(prandtl) / fourth_root(1.0 + std::pow(0.4 / prandtl, 2.0 / 3.0));
  return 0.3 + laminar * std::pow(1.0 + std::pow(reynolds / 282000.0, 0.625), 0.8);
}

double sphere_nusselt(double reynolds, double prandtl) { return 2.0 + 0.6 * std::sqrt(reynolds) * std::cbrt(prandtl); }

double mixed_nusselt(double forced, double natural) {
  return std::cbrt(forced * forced * forced + natural * natural * natural);
}

double mcadams_wind_coefficient(double speed_m_s) { return 5.7 + 3.8 * speed_m_s; }
double watmuff_wind_coefficient(double speed_m_s) { return 2.8 + 3.0 * speed_m_s; }
double iso6946_outside_coefficient(double speed_m_s) { return 4.0 + 4.0 * speed_m_s; }

double iso6946_inside_coefficient(HeatFlow flow) {
  switch (flow) {
    case HeatFlow::up:
      return 5.0;
    case HeatFlow::horizontal:
      return 2.5;
    case HeatFlow::down:
      break;
  }
  return 0.7;
}

double iso6946_inside_resistance(HeatFlow flow) {
  switch (flow) {
    case HeatFlow::up:
      return 0.10;
    case HeatFlow::horizontal:
      return 0.13;
    case HeatFlow::down:
      break;
  }
  return 0.17;
}

}  // namespace noonhouse
