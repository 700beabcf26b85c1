// SPDX-License-Identifier: Apache-2.0
#include "models/properties/irradiance.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "models/properties/constants.hpp"
#include "models/properties/sun.hpp"

namespace noonhouse {

namespace {

constexpr double kFaoSolarConstant = 0.0820e6 / 60.0;  // 0.0820 MJ/(m2 min), FAO-56 eq. (21)

/// Inverse square of the relative distance to the sun.   [FAO-56, eq. (23)]
double fao_inverse_distance_squared(int day_of_year) { return 1.0 + 0.033 * std::cos(2.0 * kPi * day_of_year / 365.0); }

/// Table 6 of Perez et al. 1990: one row a bin of clearness, up to its limit.
struct PerezBin {
  double clearness_limit;
  double f11, f12, f13, f21, f22, f23;
};
constexpr double kClearest = 1e300;
constexpr PerezBin kPerezBins[] = {
    {1.065, -0.008, 0.588, -0.062, -0.060, 0.072, -0.022}, {1.230, 0.130, 0.683, -0.151, -0.019, 0.066, -0.029},
    {1.500, 0.330, 0.487, -0.221, 0.055, -0.064, -0.026},  {1.950, 0.568, 0.187, -0.295, 0.109, -0.152, -0.014},
    {2.800, 0.873, -0.392, -0.362, 0.226, -0.462, 0.001},  {4.500, 1.132, -1.237, -0.412, 0.288, -0.823, 0.056},
    {6.200, 1.060, -1.600, -0.359, 0.264, -1.127, 0.131},  {kClearest, 0.678, -0.327, -0.250, 0.156, -1.377, 0.251},
};

const PerezBin& perez_bin(double clearness) {
  return *std::find_if(std::begin(kPerezBins), std::end(kPerezBins) - 1,
                       [&](const PerezBin& bin) { return clearness < bin.clearness_limit; });
}

/// Optical thickness of air without haze by air mass.   [Kasten 1996; Rigollier et al. 2000, eqs. (6)-(7)]
double rayleigh_thickness(double mass) {
  if (mass > 20.0) return 1.0 / (10.4 + 0.718 * mass);
  return 1.0 / (6.62960 + mass * (1.75130 + mass * (-0.12020 + mass * (0.00650 - 0.00013 * mass))));
}

/// Diffuse light of a clear sky on the horizontal over the extraterrestrial beam.   [Rigollier et al. 2000]
double clear_diffuse_transmittance(double sine, double turbidity) {
  const double t = turbidity;
  const double overhead = -1.5843e-2 + t * (3.0543e-2 + 3.797e-4 * t);
  const double level = std::max(2.6463e-1 + t * (-6.1581e-2 + 3.1408e-3 * t), 2.0e-3 / overhead);
  const double linear = 2.0402 + t * (1.8945e-2 - 1.1161e-2 * t);
  const double square = -1.3025 + t * (3.9231e-2 + 8.5079e-3 * t);
  return overhead * (level + sine * (linear + square * sine));
}

}  // namespace

double extraterrestrial_normal(int day_of_year) {
  const double b = 2.0 * kPi * (day_of_year - 1) / 365.0;
  return kSolarConstant * (1.000110 + 0.034221 * std::cos(b) + 0.001280 * std::sin(b) + 0.000719 * std::cos(2.0 * b) +
                           0.000077 * std::sin(2.0 * b));
}

double extraterrestrial_normal_at_distance(double distance_au) { return kSolarConstant / (distance_au * distance_au); }

double extraterrestrial_daily(double latitude_rad, int day_of_year) {
  const double sunset = sunset_hour_angle_rad(latitude_rad, fao_declination_rad(day_of_year));
  return extraterrestrial_hourly(latitude_rad, day_of_year, -sunset, sunset);
}

double extraterrestrial_hourly(double latitude_rad, int day_of_year, double hour_angle_1_rad, double hour_angle_2_rad) {
  return level_energy(kFaoSolarConstant * fao_inverse_distance_squared(day_of_year), latitude_rad,
                      fao_declination_rad(day_of_year), hour_angle_1_rad, hour_angle_2_rad);
}

double level_energy(double normal_w_m2, double latitude_rad, double declination_rad, double hour_angle_1_rad,
                    double hour_angle_2_rad) {
  const double sunset = sunset_hour_angle_rad(latitude_rad, declination_rad);
  const double first = std::clamp(hour_angle_1_rad, -sunset, sunset);
  const double last = std::clamp(hour_angle_2_rad, -sunset, sunset);
  const double seconds_per_radian = 86400.0 / (2.0 * kPi);
  return normal_w_m2 * seconds_per_radian *
         ((last - first) * std::sin(latitude_rad) * std::sin(declination_rad) +
          std::cos(latitude_rad) * std::cos(declination_rad) * (std::sin(last) - std::sin(first)));
}

double air_mass(double zenith_rad) {
  const double zenith_deg = std::min(zenith_rad / kRadiansPerDegree, 90.0);
  return 1.0 / (std::cos(zenith_deg * kRadiansPerDegree) + 0.50572 * std::pow(96.07995 - zenith_deg, -1.6364));
}

double haurwitz_ghi(double elevation_rad) {
  const double sine = std::sin(elevation_rad);
  if (sine <= 0.0) return 0.0;
  return 1098.0 * sine * std::exp(-0.059 / sine);
}

SolarSplit clear_sky(double elevation_rad, double pressure_pa, double linke_turbidity,
                     double extraterrestrial_normal_w_m2) {
  const double sine = std::sin(elevation_rad);
  if (sine <= 0.0) return {};
  const double seen_zenith = kPi / 2.0 - elevation_rad - refraction_rad(elevation_rad);
  const double mass = air_mass(seen_zenith) * pressure_pa / kStandardPressure;
  const double beam =
      extraterrestrial_normal_w_m2 * std::exp(-0.8662 * linke_turbidity * mass * rayleigh_thickness(mass));
  const double diffuse = extraterrestrial_normal_w_m2 * clear_diffuse_transmittance(sine, linke_turbidity);
  return {.beam_normal_w_m2 = beam, .diffuse_w_m2 = diffuse, .global_w_m2 = beam * sine + diffuse};
}

double erbs_diffuse_fraction(double clearness_index) {
  const double kt = clearness_index;
  if (kt <= 0.22) return 1.0 - 0.09 * std::max(kt, 0.0);
  if (kt <= 0.80) return 0.9511 + kt * (-0.1604 + kt * (4.388 + kt * (-16.638 + 12.336 * kt)));
  return 0.165;
}

SolarSplit split_global(double global_w_m2, double elevation_rad, double extraterrestrial_normal_w_m2) {
  const double global = std::max(global_w_m2, 0.0);
  if (elevation_rad < 3.0 * kRadiansPerDegree) return {.diffuse_w_m2 = global, .global_w_m2 = global};
  const double sine = std::sin(elevation_rad);
  const double diffuse = global * erbs_diffuse_fraction(global / (extraterrestrial_normal_w_m2 * sine));
  const double beam = std::min((global - diffuse) / sine, extraterrestrial_normal_w_m2);
  return {.beam_normal_w_m2 = beam, .diffuse_w_m2 = global - beam * sine, .global_w_m2 = global};
}

double isotropic_sky_diffuse(double diffuse_w_m2, double slope_rad) {
  return diffuse_w_m2 * 0.5 * (1.0 + std::cos(slope_rad));
}

double ground_reflected(double global_w_m2, double albedo, double slope_rad) {
  return global_w_m2 * albedo * 0.5 * (1.0 - std::cos(slope_rad));
}

SkyDiffuse hay_davies_sky_diffuse(double diffuse_w_m2, double beam_normal_w_m2, const SkyView& view) {
  const double anisotropy = std::clamp(beam_normal_w_m2 / view.extraterrestrial_normal_w_m2, 0.0, 1.0);
  const double level = std::max(std::cos(view.zenith_rad), std::sin(kRadiansPerDegree));
  const double ratio = std::max(view.incidence_cosine, 0.0) / level;
  return {.isotropic_w_m2 = isotropic_sky_diffuse(diffuse_w_m2 * (1.0 - anisotropy), view.slope_rad),
          .circumsolar_w_m2 = diffuse_w_m2 * anisotropy * ratio};
}

SkyDiffuse perez_1990_sky_diffuse(double diffuse_w_m2, double beam_normal_w_m2, double air_mass_relative,
                                  const SkyView& view) {
  if (diffuse_w_m2 <= 0.0) return {};
  const double z = view.zenith_rad;
  const double cubed = 1.041 * z * z * z;
  const double clearness = ((diffuse_w_m2 + beam_normal_w_m2) / diffuse_w_m2 + cubed) / (1.0 + cubed);
  const double brightness = diffuse_w_m2 * air_mass_relative / view.extraterrestrial_normal_w_m2;
  const PerezBin& bin = perez_bin(clearness);
  const double circumsolar = std::clamp(bin.f11 + bin.f12 * brightness + bin.f13 * z, 0.0, 1.0);
  const double horizon = bin.f21 + bin.f22 * brightness + bin.f23 * z;
  const double level = std::max(std::cos(z), std::cos(85.0 * kRadiansPerDegree));
  SkyDiffuse sky{.isotropic_w_m2 = isotropic_sky_diffuse(diffuse_w_m2 * (1.0 - circumsolar), view.slope_rad),
                 .circumsolar_w_m2 = diffuse_w_m2 * circumsolar * std::max(view.incidence_cosine, 0.0) / level,
                 .horizon_w_m2 = diffuse_w_m2 * horizon * std::sin(view.slope_rad)};
  sky.horizon_w_m2 = std::max(sky.horizon_w_m2, -(sky.isotropic_w_m2 + sky.circumsolar_w_m2));
  return sky;
}

double par_from_global(double global_w_m2) { return kParShare * kParPerJoule * global_w_m2; }

}  // namespace noonhouse
