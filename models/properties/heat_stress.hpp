// SPDX-License-Identifier: Apache-2.0
#pragma once

/// Heat that people bear at work, by the wet-bulb globe temperature (WBGT). A figure for planning the day, not a
/// medical judgement: occupational rules of the place come first, and so does how somebody feels.
namespace noonhouse {

/// WBGT [K] where the sun shines on the person:  0.7 T_nwb + 0.2 T_g + 0.1 T_a        [ISO 7243:1989, eq. (2)]
/// T_nwb is the bulb under its wet wick left to the air's own movement, T_g the black globe of 150 mm, T_a the air in
/// the shade, all [K].
double wbgt_in_sun_k(double natural_wet_bulb_k, double globe_k, double air_k);

/// WBGT [K] without sun, indoors or out:  0.7 T_nwb + 0.3 T_g                         [ISO 7243:1989, eq. (1)]
/// A house under glass is in the sun by day.
double wbgt_without_sun_k(double natural_wet_bulb_k, double globe_k);

/// What somebody's body turns over at work, by the area of the skin.   [ISO 7243:1989, Table A.1]
enum class WorkRate {
  resting,    ///< class 0, up to 65 W/m2 (117 W): sitting
  low,        ///< class 1, up to 130 W/m2 (234 W): light handwork, slow walking
  moderate,   ///< class 2, up to 200 W/m2 (360 W): carrying pots, pruning
  high,       ///< class 3, up to 260 W/m2 (468 W): digging, pushing loads
  very_high,  ///< class 4, above: fast digging, climbing with loads
};

/// Area of the skin that the classes in watts are made for [m2].   [same table]
inline constexpr double kSkinArea_m2 = 1.8;

/// The class of a metabolic rate [W/m2].
WorkRate work_rate(double metabolic_w_m2);

/// Who works, and how the air moves about them.
struct Worker {
  WorkRate rate = WorkRate::moderate;
  bool acclimatised = false;  ///< at least a week at such work in such heat
  bool moving_air = false;    ///< felt on the skin; counts in classes 3 and 4 alone
};

/// Reference value of WBGT [K] for that work: 33, 30, 28, 25 (26 in moving air), 23 (25) degC of classes 0 to 4;
/// not acclimatised 32, 29, 26, 22 (23), 18 (20).   [ISO 7243:1989, Table A.1]
/// For healthy people in light summer clothes, a rectal temperature of 38 degC at most, over about an hour. Does not
/// model: overalls and respirators, age, illness, drink. The edition of 2017 has curves in place of the table.
double wbgt_reference_k(const Worker& worker);

/// Whether the work goes beyond the reference value: rest, slower work or another hour of the day is called for.
bool unwise_to_work(double wbgt_k, const Worker& worker);

/// What a small body stands in: air, what it sees, and the sun.
struct HeatSurroundings {
  double air_k = 298.15;
  double humidity_ratio = 0.01;
  double pressure_pa = 101325.0;
  double speed_m_s = 0.5;             ///< of the air; below kLeastAirSpeed_m_s that counts
  double radiant_k = 298.15;          ///< mean radiant temperature of all longwave around
  double beam_normal_w_m2 = 0.0;      ///< sun on a plane facing it, where the person is
  double diffuse_level_w_m2 = 0.0;    ///< from above on a level plane
  double reflected_level_w_m2 = 0.0;  ///< from the ground, upwards
};
/// Air about people is never quite still [m/s]. Liljegren et al. 2008, from memory.
inline constexpr double kLeastAirSpeed_m_s = 0.13;

/// Sunlight on a small sphere, per area of its whole surface [W/m2]:  B/4 + D/2 + R/2, by its geometry.
double sphere_sunlight_w_m2(const HeatSurroundings& around);

/// Temperature [K] of the black globe of 150 mm in balance:
///   0.95 (I + sigma T_r^4 - sigma T_g^4) = h_g (T_g - T_a)
///   h_g = max(1.4 (|T_g - T_a| / D)^(1/4), 6.3 V^0.6 / D^0.4), D = 0.15 m, I = sphere_sunlight_w_m2
/// [ISO 7726:1998, annex B; from memory]; black in sunlight to 0.95 too (Liljegren et al. 2008, from memory).
/// Does not model: the 20 minutes that the globe takes.
double globe_temperature_k(const HeatSurroundings& around);

/// Natural wet-bulb temperature [K]: a wet wick of 7 mm, in balance of convection, evaporation and radiation.
///   h (T_a - T_w) + 0.6 I + 0.95 sigma (T_r^4 - T_w^4) = (h / c_p) L (M_w / M_a) (Pr / Sc)^0.56 (e_w - e) / (p - e_w)
///   Nu = 0.281 Re^0.6 Pr^0.44                  [Bedingfield & Drew 1950, as Liljegren et al. 2008,
///   J. Occup. Environ. Hyg. 5, 645, have it; all from memory, as are the wick's 0.6 and 0.95]
/// Simpler than theirs: sunlight as on a small sphere, films of the air's temperature. In the shade of walls as warm as
/// the air it is within 0.2 K of the thermodynamic wet bulb at 5 m/s, and above it by up to 1.2 K at 0.3 m/s and 2.1 K
/// in still air (20 to 80 % humidity, 15 to 45 degC). Does not model: a wick that freezes or dries out.
double natural_wet_bulb_k(const HeatSurroundings& around);

/// WBGT [K] of these surroundings, by the two above: with sun the first form, without any the second.
double wbgt_k(const HeatSurroundings& around);

}  // namespace noonhouse
