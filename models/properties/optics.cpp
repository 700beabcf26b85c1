// SPDX-License-Identifier: Apache-2.0
#include "models/properties/optics.hpp"

#include <algorithm>
#include <boost/math/quadrature/gauss.hpp>
#include <boost/math/special_functions/expint.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <cstdint>
#include <vector>

#include "models/properties/constants.hpp"
#include "sim/core/errors.hpp"

namespace noonhouse {

namespace {

/// What one polarisation does in a stack: the same transmittance both ways, but two reflectances.
struct Polarised {
  double transmittance = 1.0;
  double front = 0.0;
  double back = 0.0;
};

/// One sheet: surface reflectance r, internal transmittance a.   [eqs. (5.3.1)-(5.3.2)]
Polarised polarised_sheet(double r, double a) {
  if (r >= 1.0) return {.transmittance = 0.0, .front = 1.0, .back = 1.0};
  const double through = a * (1.0 - r) * (1.0 - r) / (1.0 - r * r * a * a);
  const double returned = r * (1.0 + a * through);
  return {.transmittance = through, .front = returned, .back = returned};
}

/// A stack with a further sheet behind it.   [eqs. (5.3.7)-(5.3.8)]
Polarised joined(const Polarised& stack, const Polarised& sheet) {
  const double room = 1.0 - stack.back * sheet.front;
  if (room <= 0.0) return {.transmittance = 0.0, .front = 1.0, .back = 1.0};
  return {.transmittance = stack.transmittance * sheet.transmittance / room,
          .front = stack.front + stack.transmittance * stack.transmittance * sheet.front / room,
          .back = sheet.back + sheet.transmittance * sheet.transmittance * stack.back / room};
}

SheetOptics unpolarised(const Polarised& perpendicular, const Polarised& parallel) {
  const double transmittance = 0.5 * (perpendicular.transmittance + parallel.transmittance);
  const double reflectance = 0.5 * (perpendicular.front + parallel.front);
  return {.transmittance = transmittance,
          .reflectance = reflectance,
          .absorptance = std::max(0.0, 1.0 - transmittance - reflectance)};
}

double inside_cosine(double incidence_rad, double refractive_index) {
  const double sine = std::sin(incidence_rad) / refractive_index;
  return std::sqrt(std::max(0.0, 1.0 - sine * sine));
}

}  // namespace

double refraction_angle_rad(double incidence_rad, double refractive_index) {
  NOON_ASSERT(refractive_index >= 1.0);
  return std::asin(std::sin(incidence_rad) / refractive_index);
}

FresnelReflectance fresnel_reflectance(double incidence_rad, double refractive_index) {
  NOON_ASSERT(refractive_index >= 1.0);
  const double outside = std::cos(incidence_rad);
  const double inside = inside_cosine(incidence_rad, refractive_index);
  const double perpendicular = (outside - refractive_index * inside) / (outside + refractive_index * inside);
  const double parallel = (refractive_index * outside - inside) / (refractive_index * outside + inside);
  return {.perpendicular = perpendicular * perpendicular, .parallel = parallel * parallel};
}

double absorption_transmittance(double incidence_rad, const Sheet& sheet) {
  if (sheet.optical_depth <= 0.0) return 1.0;
  return std::exp(-sheet.optical_depth / inside_cosine(incidence_rad, sheet.refractive_index));
}

SheetOptics sheet_optics(double incidence_rad, const Sheet& sheet) {
  return stack_optics(incidence_rad, std::span(&sheet, 1));
}

SheetOptics stack_optics(double incidence_rad, std::span<const Sheet> sheets) {
  Polarised perpendicular;
  Polarised parallel;
  for (const Sheet& sheet : sheets) {
    const FresnelReflectance surface = fresnel_reflectance(incidence_rad, sheet.refractive_index);
    const double inside = absorption_transmittance(incidence_rad, sheet);
    perpendicular = joined(perpendicular, polarised_sheet(surface.perpendicular, inside));
    parallel = joined(parallel, polarised_sheet(surface.parallel, inside));
  }
  return unpolarised(perpendicular, parallel);
}

SheetOptics parallel_sheets_optics(double incidence_rad, int count, const Sheet& sheet) {
  NOON_ASSERT(count >= 0);
  const std::vector<Sheet> sheets(static_cast<std::size_t>(count), sheet);
  return stack_optics(incidence_rad, sheets);
}

double hemispherical_mean(const std::function<double(double)>& of_incidence_rad) {
  // Over s = sin^2 of the incidence angle, from 0 to 1, an even sky weighs evenly.
  return boost::math::quadrature::gauss<double, 30>::integrate(
      [&](double s) { return of_incidence_rad(std::asin(std::sqrt(s))); }, 0.0, 1.0);
}

SheetOptics diffuse_stack_optics(std::span<const Sheet> sheets) {
  const auto mean = [&](double SheetOptics::*part) {
    return hemispherical_mean([&](double incidence) { return stack_optics(incidence, sheets).*part; });
  };
  const double transmittance = mean(&SheetOptics::transmittance);
  const double reflectance = mean(&SheetOptics::reflectance);
  return {.transmittance = transmittance,
          .reflectance = reflectance,
          .absorptance = std::max(0.0, 1.0 - transmittance - reflectance)};
}

double sky_equivalent_angle_rad(double slope_rad) {
  const double slope = slope_rad / kRadiansPerDegree;
  return (59.7 - 0.1388 * slope + 0.001497 * slope * slope) * kRadiansPerDegree;
}

double ground_equivalent_angle_rad(double slope_rad) {
  const double slope = slope_rad / kRadiansPerDegree;
  return (90.0 - 0.5788 * slope + 0.002693 * slope * slope) * kRadiansPerDegree;
}

double even_layer_diffuse_transmittance(double optical_depth) {
  NOON_ASSERT(optical_depth >= 0.0);
  return 2.0 * boost::math::expint(3, optical_depth);
}

double even_layer_optical_depth(double diffuse_transmittance) {
  NOON_ASSERT(diffuse_transmittance > 0.0 && diffuse_transmittance <= 1.0);
  if (diffuse_transmittance >= 1.0) return 0.0;
  // The slanted paths make the layer weigh between once and twice its depth.
  const double most = -std::log(diffuse_transmittance);
  const auto excess = [&](double depth) { return even_layer_diffuse_transmittance(depth) - diffuse_transmittance; };
  const auto close = [&](double a, double b) { return std::fabs(b - a) <= 1e-15 + 1e-14 * most; };
  std::uintmax_t rounds = 100;
  const auto bracket = boost::math::tools::toms748_solve(excess, 0.45 * most, most, close, rounds);
  return 0.5 * (bracket.first + bracket.second);
}

}  // namespace noonhouse
