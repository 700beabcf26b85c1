// SPDX-License-Identifier: Apache-2.0
#pragma once

/// Sunlight before it meets the house: extraterrestrial, clear sky, split into beam and diffuse, and what a
/// tilted plane gets. Irradiance in W/m2; angles in rad; zenith angles are from the vertical.
namespace noonhouse {

/// Irradiance outside the atmosphere on a plane facing the sun [W/m2], day 1 to 366.
/// kSolarConstant times the distance series of Spencer 1971 (Search 2, 172), within 0.01 %.
double extraterrestrial_normal(int day_of_year);

/// The same from the distance of the sun [au], as SunPosition gives it.
double extraterrestrial_normal_at_distance(double distance_au);

/// Energy outside the atmosphere on a horizontal square metre over a day [J/m2].
///   [Allen et al. 1998, FAO-56, eq. (21), solar constant 0.0820 MJ/(m2 min)]; zero in polar night.
double extraterrestrial_daily(double latitude_rad, int day_of_year);

/// The same between two hour angles [rad], first before second, clamped to sunrise and sunset [J/m2].
///   [FAO-56, eq. (28)]
double extraterrestrial_hourly(double latitude_rad, int day_of_year, double hour_angle_1_rad, double hour_angle_2_rad);

/// The same for an irradiance facing the sun [W/m2] and a declination that are given.
///   [Duffie & Beckman, eq. (1.10.4), with 1367 W/m2 (1 + 0.033 cos(2 pi n / 365)) and cooper_declination_rad]
double level_energy(double normal_w_m2, double latitude_rad, double declination_rad, double hour_angle_1_rad,
                    double hour_angle_2_rad);

/// Clear-sky energy on the horizontal over the same span [J/m2].
///   R_so = (0.75 + 2e-5 z) R_a      [FAO-56, eq. (37)]
constexpr double fao_clear_sky(double altitude_m, double extraterrestrial) {
  return (0.75 + 2e-5 * altitude_m) * extraterrestrial;
}

/// Solar energy from hours of sunshine over hours of daylight [unit of the third argument].
///   R_s = (0.25 + 0.50 n / N) R_a   [FAO-56, eq. (35)]
constexpr double angstrom_radiation(double sunshine_h, double daylight_h, double extraterrestrial) {
  return (0.25 + 0.50 * sunshine_h / daylight_h) * extraterrestrial;
}

/// Air mass relative to the vertical [-]; 1 overhead, 38 at the horizon. Zenith up to 90 deg, beyond: as at 90.
///   1 / (cos z + 0.50572 (96.07995 - z)^-1.6364), z in deg  [Kasten & Young 1989, Appl. Opt. 28, 4735]
double air_mass(double zenith_rad);

/// Global irradiance on the horizontal under a clear sky [W/m2] by solar elevation; zero below the horizon.
///   1098 sin(e) exp(-0.059 / sin(e))   [Haurwitz 1945, J. Meteorol. 2, 154]
double haurwitz_ghi(double elevation_rad);

/// Beam on a plane facing the sun, diffuse and global on the horizontal [W/m2].
struct SolarSplit {
  double beam_normal_w_m2 = 0.0;
  double diffuse_w_m2 = 0.0;
  double global_w_m2 = 0.0;
};

/// Clear-sky irradiance by the turbidity of Linke for air mass 2 (2 very clean and cold, 3 clear, 5 hazy; 1.5 to 7).
///   beam = E0 exp(-0.8662 T m d(m)), diffuse = E0 Trd(T) Fd(T, sin(elevation))
///   Rigollier, Bauer & Wald 2000, Solar Energy 68, 33 (the form of the European solar radiation atlas).
/// Altitude enters by the pressure. Zero with the sun down. Does not model: ozone, smoke, a white ground.
SolarSplit clear_sky(double elevation_rad, double pressure_pa, double linke_turbidity,
                     double extraterrestrial_normal_w_m2);

/// Diffuse share of the global irradiance [-] by clearness index kt = global / extraterrestrial on the horizontal.
///   Erbs, Klein & Duffie 1982, Solar Energy 28, 293, hourly. Continuous to 0.002.
double erbs_diffuse_fraction(double clearness_index);

/// Splits measured global irradiance by erbs_diffuse_fraction. Beam times sin(elevation) plus diffuse is
/// always the global given. Below 3 deg elevation everything is diffuse: hourly clearness says nothing there
/// and dividing by the sine would invent beams. No beam above the extraterrestrial: the rest is diffuse.
SolarSplit split_global(double global_w_m2, double elevation_rad, double extraterrestrial_normal_w_m2);

/// Diffuse light of a uniform sky on a tilted plane [W/m2]: D (1 + cos s) / 2.   [Liu & Jordan 1963]
double isotropic_sky_diffuse(double diffuse_w_m2, double slope_rad);

/// Light sent up by level ground on a tilted plane [W/m2]: G albedo (1 - cos s) / 2.   [Liu & Jordan 1963]
double ground_reflected(double global_w_m2, double albedo, double slope_rad);

/// Diffuse light of the sky on a tilted plane in parts [W/m2]: the circumsolar part comes from the sun's place.
struct SkyDiffuse {
  double isotropic_w_m2 = 0.0;
  double circumsolar_w_m2 = 0.0;
  double horizon_w_m2 = 0.0;  ///< may be negative under overcast: the horizon is darker than the dome
  double total() const { return isotropic_w_m2 + circumsolar_w_m2 + horizon_w_m2; }
};

/// What a model of the sky needs to know about sun and plane.
struct SkyView {
  double zenith_rad = 0.0;        ///< of the sun
  double incidence_cosine = 0.0;  ///< of sun and plane
  double slope_rad = 0.0;
  double extraterrestrial_normal_w_m2 = 0.0;
};

/// Sky diffuse on a tilted plane: circumsolar share = beam / extraterrestrial, the rest uniform.
///   Hay & Davies 1980; sin(elevation) no smaller than that of 1 deg.
SkyDiffuse hay_davies_sky_diffuse(double diffuse_w_m2, double beam_normal_w_m2, const SkyView& view);

/// Sky diffuse on a tilted plane with circumsolar and horizon brightening by clearness and brightness.
///   Perez, Ineichen, Seals, Michalsky & Stewart 1990, Solar Energy 44, 271, eq. (9), Table 6.
/// Air mass as the paper has it: without the correction for pressure. The total is never below zero.
SkyDiffuse perez_1990_sky_diffuse(double diffuse_w_m2, double beam_normal_w_m2, double air_mass_relative,
                                  const SkyView& view);

/// Photon flux of photosynthetic light [mol/(m2 s)] in global sunlight [W/m2]: kParShare kParPerJoule.
double par_from_global(double global_w_m2);

}  // namespace noonhouse
