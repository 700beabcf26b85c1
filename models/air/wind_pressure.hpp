// SPDX-License-Identifier: Apache-2.0
#pragma once

/// What wind does to the outside of a low house with a gabled roof. Coefficients are means over a facet, referred to
/// the velocity pressure of the undisturbed wind at the height of the eaves (Swami & Chandra) or of the house (tables).
/// Angles [rad] lie between the direction the wind comes from and the outward normal of the facet, for a roof slope
/// that of the wall below it; any sign and turn. Not modelled: gusts, corners of a facet, a neighbour at one side only.
namespace noonhouse {

/// Velocity pressure [Pa]:  q = rho U^2 / 2   [Bernoulli]
template <class S>
S velocity_pressure_pa(const S& density_kg_m3, const S& speed_m_s) {
  return 0.5 * density_kg_m3 * speed_m_s * speed_m_s;
}

/// Pressure coefficient of a wall of a low house [-], positive inwards:
///   C_p / C_p(0) = ln[1.248 - 0.703 sin(a/2) - 1.175 sin^2(a) + 0.131 sin^3(2 a G) + 0.769 cos(a/2)
///                     + 0.07 G^2 sin^2(a/2) + 0.717 cos^2(a/2)],   G = ln(width of this wall / width of the next)
/// [Swami & Chandra 1988, ASHRAE Trans. 94(1), 243; 1987, Florida Solar Energy Center FSEC-CR-163-86]. C_p(0) = 0.6
/// there. Ratios of widths 0.25 to 4; up to three storeys. The logarithm is 1.0058 at a = 0, as printed.
double swami_chandra_wall(double angle_rad, double width_ratio, double head_on = 0.6);

/// The facets of a house of two squares whose ridge runs along its long side.
enum class LowRiseFacet { long_wall, gable_wall, roof_slope };

/// What stands around the house: nothing, things of half its height, things of its height.
enum class Surroundings { open, half_height, full_height };

/// Pressure coefficient of a facet of a house twice as long as wide and up to three storeys [-], positive inwards.
/// Values at 0, 45, 90, 135 and 180 degrees, straight lines between; the roof by class of pitch: below 10 degrees, to
/// 30, above. Pitch [rad] counts for the roof alone.
///   [Liddament, Air Infiltration Calculation Techniques, AIVC 1986, and A Guide to Energy Efficient Ventilation, AIVC
///   1996, tables of low-rise buildings, length to width 2:1; from memory]
/// The angle's slope breaks at each 45 degrees, and values jump between classes of pitch, as the tables do.
double low_rise_coefficient(LowRiseFacet facet, Surroundings surroundings, double pitch_rad, double angle_rad);

/// Angle [rad], 0 to pi, of a wind that comes from a compass bearing, to a facet that looks to one.
double wind_incidence_rad(double wind_from_rad, double facet_azimuth_rad);

/// Share of the wind's speed that reaches a house by its local shielding, class 1 (none) to 5 (very heavy, city):
///   C' / 0.324 with C' = 0.324, 0.285, 0.240, 0.185, 0.102
///   [Sherman & Grimsrud 1980, Lawrence Berkeley Laboratory, LBL-10852, table of shielding coefficients; from memory]
/// Wind pressure takes its square. For coefficients of open surroundings only: others hold the shelter already.
double shelter_speed_factor(int shielding_class);

/// Terrain of a boundary layer: U(z) ~ (z / delta)^a.
struct Terrain {
  double exponent = 0.14;
  double layer_m = 270.0;
};
/// [ASHRAE Handbook of Fundamentals 2017, ch. 24, table 1]: city; suburb and wood; open land; open water.
inline constexpr Terrain kCity{0.33, 460.0}, kSuburb{0.22, 370.0}, kOpenLand{0.14, 270.0}, kOpenWater{0.10, 210.0};

/// Wind speed at a height of the site [m/s] from that of a weather station:
///   U = U_met (delta_met / z_met)^a_met (z / delta)^a
///   [ASHRAE Handbook of Fundamentals 2017, ch. 24, eq. (4)]; heights within the layers and above what stands there.
double wind_speed_at_height(double station_speed_m_s, double station_height_m, const Terrain& station, double height_m,
                            const Terrain& site);

}  // namespace noonhouse
