// SPDX-License-Identifier: Apache-2.0
#include "models/air/opening_flow.hpp"

#include <algorithm>
#include <cmath>

#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

/// 0.75 / log10(Re + 1.25) + 0.055 log10(Re): the part of a screen's loss that is not viscous.
double inertial_loss(double reynolds) { return 0.75 / std::log10(reynolds + 1.25) + 0.055 * std::log10(reynolds); }

double blockage(double porosity) {
  NOON_ASSERT(porosity > 0.0 && porosity <= 1.0);
  return (1.0 - porosity * porosity) / (porosity * porosity);
}

}  // namespace

double neutral_level_m(double dp_sill_pa, double density_a_kg_m3, double density_b_kg_m3) {
  return dp_sill_pa / (kGravity * (density_a_kg_m3 - density_b_kg_m3));
}

double bailey_screen_loss(double porosity, double thread_reynolds) {
  return (18.0 / thread_reynolds + inertial_loss(thread_reynolds)) * blockage(porosity);
}

ScreenResistance bailey_screen(double porosity, double thread_diameter_m, double reference_speed_m_s,
                               double density_kg_m3, double viscosity_pa_s) {
  const double reynolds = reference_speed_m_s * thread_diameter_m * density_kg_m3 / viscosity_pa_s;
  const double blocked = blockage(porosity);
  return {9.0 * blocked * viscosity_pa_s / thread_diameter_m, 0.5 * density_kg_m3 * blocked * inertial_loss(reynolds)};
}

ScreenResistance forchheimer_screen(double porosity, double thickness_m, double density_kg_m3, double viscosity_pa_s) {
  const double permeability_m2 = 3.44e-9 * std::pow(porosity, 1.6);
  const double inertial_factor = 4.3e-2 * std::pow(porosity, -2.13);
  return {thickness_m * viscosity_pa_s / permeability_m2,
          thickness_m * density_kg_m3 * inertial_factor / std::sqrt(permeability_m2)};
}

ScreenResistance screen_of_discharge(double discharge, double density_kg_m3) {
  return {0.0, density_kg_m3 / (2.0 * discharge * discharge)};
}

double discharge_in_series(double first, double second) { return first * second / std::hypot(first, second); }

double area_in_series_m2(std::span<const double> areas_m2) {
  NOON_ASSERT(!areas_m2.empty());
  double sum = 0.0;
  for (const double area : areas_m2) {
    if (area <= 0.0) return 0.0;
    sum += 1.0 / (area * area);
  }
  return 1.0 / std::sqrt(sum);
}

double stack_flow(double discharge, double area_m2, double height_m, double inside_k, double outside_k) {
  const double contrast = (inside_k - outside_k) / std::max(inside_k, outside_k);
  return std::copysign(discharge * area_m2 * std::sqrt(2.0 * kGravity * height_m * std::abs(contrast)), contrast);
}

double single_sided_stack_flow(double discharge, double area_m2, double height_m, double inside_k, double outside_k) {
  const double contrast = std::abs(inside_k - outside_k) / (0.5 * (inside_k + outside_k));
  return discharge * (area_m2 / 3.0) * std::sqrt(kGravity * height_m * contrast);
}

double single_sided_wind_flow(double area_m2, double speed_m_s) { return 0.025 * area_m2 * speed_m_s; }

double cross_wind_flow(double discharge, double area_m2, double speed_m_s, double pressure_coefficient_difference) {
  const double speed = speed_m_s * std::sqrt(std::abs(pressure_coefficient_difference));
  return std::copysign(discharge * area_m2 * speed, pressure_coefficient_difference);
}

double vent_exchange_flow(double discharge, double wind_effect, double area_m2, double height_m, double inside_k,
                          double outside_k, double speed_m_s) {
  const double stack = 0.5 * kGravity * height_m * std::abs(inside_k - outside_k) / outside_k;
  return 0.5 * area_m2 * discharge * std::sqrt(stack + wind_effect * speed_m_s * speed_m_s);
}

double inlet_wind_flow(double effectiveness, double area_m2, double speed_m_s) {
  return effectiveness * area_m2 * speed_m_s;
}

}  // namespace noonhouse
