// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string_view>

/// What a gust does to covers and to what holds them down: static balances of forces. They help to see how loose a
/// cover is, not to design an anchorage.
namespace noonhouse {

/// To be shown wherever a figure of this header is shown.
inline constexpr std::string_view kWindCaution =
    "These are static estimates. What holds a house or its covers down in wind is for a structural engineer and the "
    "local building code to decide.";

/// Half the density of air at 15 degC and sea level [kg/m3].   [ASCE 7-16, eq. (26.10-1.si), its factors all one]
inline constexpr double kHalfAirDensity = 0.613;

/// Velocity pressure [Pa] of a wind speed [m/s] where the cover is:  q = 0.613 V^2
///   [ASCE 7-16, eq. (26.10-1.si), the factors for exposure, terrain, direction and height all one]
/// Never negative; the same for wind from either side. Does not model: height above ground, hills, direction.
double velocity_pressure_pa(double speed_m_s);

/// The same in air of this density [kg/m3]:  q = rho V^2 / 2; less by a tenth at each 1,000 m of altitude.
double velocity_pressure_in_air_pa(double speed_m_s, double density_kg_m3);

/// Net pressure that lifts a cover [Pa], positive away from the house:  -C_p q - m g
/// C_p is the net coefficient of both faces: negative where the wind sucks the cover off. m is the cover's mass per
/// area [kg/m2]; its weight counts in full, which is right for a level cover and flatters a steep one.
double net_uplift_pa(double speed_m_s, double mass_kg_m2, double net_coefficient);

/// Wind speed at which a cover that only lies there lifts [m/s]:  V = sqrt(m g / (0.613 |C_p|)), force balance.
/// Infinite where the coefficient is not negative: such a wind presses the cover on. Does not model: flutter, which
/// lifts an edge sooner, and straps, which hold it longer.
double lift_off_speed_m_s(double mass_kg_m2, double net_coefficient);

/// A cover that ballast is to hold down in a gust.
struct BallastNeed {
  double gust_m_s = 0.0;
  double area_m2 = 0.0;
  double net_coefficient = -0.6;  ///< as net_uplift_pa; a cloth over a low roof, common practice, no source
  double mass_kg_m2 = 0.0;        ///< the cover's own
  double safety_factor = 1.5;     ///< on the wind's lift, none on the weight; common practice, no source
};

/// Mass that must lie on a cover so that it stays [kg]:  max(0, S |C_p| q A / g - m A); 0 where nothing lifts.
/// Bags of sand or water may be blown or punctured: ballast that hangs from the edges counts, ballast that can roll
/// off does not. Does not model: sliding, an edge that peels before the middle lifts, buoyed ballast in a flood.
double ballast_kg(const BallastNeed& need);

/// The same for each metre of the edges that carry it [kg/m]. The edges' length [m] is above zero.
double ballast_kg_m(const BallastNeed& need, double edge_length_m);

}  // namespace noonhouse
