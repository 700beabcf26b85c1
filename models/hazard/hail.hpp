// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <span>

#include "models/properties/sourced_value.hpp"

/// Hailstones as hard round balls: how fast they fall, what energy they bring, what covers bear of it and how many
/// panes are hit. Ice that is soft, lobed or wet hits otherwise; ratings are those of new material.
namespace noonhouse {

/// A hailstone and the air it falls through. The drag coefficient, with air of 20 degC at sea level, is chosen so that
/// the damage surveyors' table of terminal speeds is met [T. Marshall, hail table: 12.7 to 50.8 mm, 15.5 to 32.0 m/s,
/// all within 2.1 % in speed and 4.6 % in energy]; spheres of this size have about 0.5 (from memory).
struct Hailstone {
  double diameter_m = 0.02;
  double density_kg_m3 = 900.0;  ///< hard ice; the same table
  double drag_coefficient = 0.50;
  double air_density_kg_m3 = 1.204;
};

/// Mass of the ball [kg]:  pi/6 rho_i d^3.
double hailstone_mass_kg(const Hailstone& stone);

/// Terminal speed [m/s] by the balance of weight and drag:  V = sqrt(4 rho_i g d / (3 rho_a C_d)). Stones of 5 mm
/// and more; smaller ones fall faster here than they do. Does not model: up- and downdraughts.
double hail_fall_speed_m_s(const Hailstone& stone);

/// Speed [m/s] of a stone that falls at its terminal speed and drifts with the wind:  sqrt(V^2 + w^2).
double hail_impact_speed_m_s(const Hailstone& stone, double wind_m_s);

/// Kinetic energy [J] of that stone. On a roof all of it counts, whatever the angle at which it is met: cautious.
double hail_energy_j(const Hailstone& stone, double wind_m_s = 0.0);

/// What a cover bears of one hard hit, when new, and what a hit that breaks it opens.
struct HailRating {
  const char* name;
  SourcedValue bears_j;  ///< energy up to which it is taken to hold [J]
  SourcedValue tears{};  ///< how wide a hole is left, in stones; 0: the whole pane is gone
};

/// What one breaking hit opens of a cover [m2]: a pane of 0.36 m2 (common practice, no source), or a square hole as
/// many stones wide as the rating says. Does not model: panes that crack and hold, tears that wind lengthens.
double hail_opening_m2(const HailRating* rating, double stone_m);

/// The classes of hail resistance by diameter of the ice ball:  10 mm 0.04 J, 20 mm 0.69 J, 30 mm 3.5 J, 40 mm 11.1 J,
/// 50 mm 27 J   [Swiss register of hail protection (VKF), table of ice balls of 870 kg/m3]
/// Energy [J] of class 1 to 5.
double hail_class_energy_j(int hail_class);

/// Covers of houses, by their names here. Estimates: no figure stands for a product. Ageing takes much of what plastic
/// bears, and the maker's tested class, where there is one, should replace the figure.
std::span<const HailRating> hail_ratings();

/// Nets and cloths over a house, by what they take off each stone [J]. Not touching the cover, and drawn taut.
std::span<const HailRating> hail_nets();

/// Whether a hit of this energy [J] breaks what bears so much [J]. What it just bears does not break it.
constexpr bool hail_breaks(double energy_j, double bears_j) { return energy_j > bears_j; }

/// Ice of a severe hailstorm that falls [kg/(m2 s)]: 10 mm of water in ten minutes; common practice, no source.
inline constexpr double kSevereHail_kg_m2_s = 10.0 / 600.0;

/// Hits on a level square metre [1/(m2 s)] by the ice that falls [kg/(m2 s)], all of it in stones of one size. Storms
/// bring many small stones for each large one, so that this, with the largest stone, is few hits of the worst kind.
double hail_hits_per_m2_s(double ice_kg_m2_s, const Hailstone& stone);

/// How stones that drift with the wind meet a facet.
struct HailOnFacet {
  double per_level_hit = 1.0;  ///< hits of a square metre of it over those of a level one; 0 in its lee
  double across_share = 1.0;   ///< what a stone brings across the facet, of all its energy [0 to 1]
};

/// Stones come down at V and drift at w; across a facet that leans by `slope_rad` from level and faces `off_wind_rad`
/// away from where the wind comes from they go at
///   u = V cos(slope) + w sin(slope) cos(off wind):   hits max(u, 0) / V, energy u^2 / (V^2 + w^2)
/// [geometry of parallel paths]. Does not model: the flow around the house, which carries small stones past it;
/// bounces.
HailOnFacet hail_on_facet(const Hailstone& stone, double wind_m_s, double slope_rad, double off_wind_rad);

/// Share of a facet [0 to 1] that a storm opens whose every hit opens as much: panes hit at least once, or holes that
/// overlap, where hits fall at random.   1 - exp(-n), n = hits of what one hit opens in that time [Poisson]
double hail_broken_share(double hits_per_m2_s, double opens_m2, double duration_s);

}  // namespace noonhouse
