// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <functional>
#include <span>

/// Light through clear parallel sheets in air. Equation numbers of Duffie & Beckman, Solar Engineering of Thermal
/// Processes, 4th ed., ch. 5. Not modelled: haze, coatings, interference in thin films, wavelength.
namespace noonhouse {

/// Angle of the ray inside [rad]: Snell's law, sin(inside) = sin(incidence) / n.   [eq. (5.1.4)]
double refraction_angle_rad(double incidence_rad, double refractive_index);

/// Share of light reflected by one surface, by polarisation.
struct FresnelReflectance {
  double perpendicular = 0.0;
  double parallel = 0.0;
  double mean() const { return 0.5 * (perpendicular + parallel); }
};

/// Reflectance of one surface between air and a medium.   [eqs. (5.1.1)-(5.1.3), at normal incidence (5.1.5)]
FresnelReflectance fresnel_reflectance(double incidence_rad, double refractive_index);

/// Share of light that passes, returns and stays; the three sum to one.
struct SheetOptics {
  double transmittance = 1.0;
  double reflectance = 0.0;
  double absorptance = 0.0;
};

/// One clear sheet: its index against air and its optical depth along the normal (extinction times thickness).
struct Sheet {
  double refractive_index = 1.526;
  double optical_depth = 0.0;
};

/// Transmittance of the absorption alone: exp(-K L / cos(inside)).   [eq. (5.2.2)]
double absorption_transmittance(double incidence_rad, const Sheet& sheet);

/// One absorbing sheet for unpolarised light at an incidence angle of 0 to pi/2.   [eqs. (5.3.1)-(5.3.3)]
SheetOptics sheet_optics(double incidence_rad, const Sheet& sheet);

/// Sheets one behind the other, the first facing the light, each polarisation followed through separately.
/// Reflection between all sheets to every order.   [eqs. (5.3.7)-(5.3.8), applied sheet by sheet]
SheetOptics stack_optics(double incidence_rad, std::span<const Sheet> sheets);

/// n equal sheets.   [with no absorption: eq. (5.1.8)]
SheetOptics parallel_sheets_optics(double incidence_rad, int count, const Sheet& sheet);

/// Cosine-weighted mean over the incidence angles of a half-space, 0 to pi/2 [rad]: what even diffuse light sees of a
/// property of beams. Gauss's 30 points over sin^2; within 2e-4 for sheets, whose reflectance ends in a vertical slope.
double hemispherical_mean(const std::function<double(double)>& of_incidence_rad);

/// A stack under diffuse light of even radiance from the whole half-space: the cosine-weighted mean over angle.
SheetOptics diffuse_stack_optics(std::span<const Sheet> sheets);

/// Incidence angle [rad] at which a plane of this slope passes as much beam as it passes light of a uniform sky.
///   59.7 - 0.1388 s + 0.001497 s^2 deg      [eq. (5.4.2); Brandemuehl & Beckman 1980, Solar Energy 24, 511]
double sky_equivalent_angle_rad(double slope_rad);

/// The same for light sent up by the ground: 90 - 0.5788 s + 0.002693 s^2 deg.   [eq. (5.4.1)]
double ground_equivalent_angle_rad(double slope_rad);

/// Share of even diffuse light that crosses an even layer of absorbing matter: 2 E3(depth), where E3 is the third
/// exponential integral and depth that along the normal.   [Chandrasekhar 1960, Radiative Transfer, ch. I and app. I]
double even_layer_diffuse_transmittance(double optical_depth);

/// The depth along the normal at which it passes that share (0 to 1, not 0) of diffuse light.
double even_layer_optical_depth(double diffuse_transmittance);

}  // namespace noonhouse
