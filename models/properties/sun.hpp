// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <array>
#include <optional>

namespace noonhouse {

/// Where the sun's centre stands, without refraction.
struct SunPosition {
  double elevation_rad = 0.0;    ///< above the true horizon, negative by night
  double azimuth_rad = 0.0;      ///< clockwise from true north, 0 to 2 pi
  double declination_rad = 0.0;  ///< north positive
  double hour_angle_rad = 0.0;   ///< zero at solar noon, positive in the afternoon, -pi to pi
  double distance_au = 1.0;      ///< from the earth
};

/// Day number of an instant in universal time; days begin at noon. Dates before 15 October 1582 are of
/// the Julian calendar.   [Meeus 1998, Astronomical Algorithms, 2nd ed., eq. (7.1)]
double julian_day(int year, int month, int day, double seconds_of_day_ut);
/// 1970-01-01 00:00 in universal time, as a julian day.
inline constexpr double kUnixEpochJulianDay = 2440587.5;

/// Day of the year, 1 to 366, of the Gregorian calendar.
int day_of_year(int year, int month, int day);

/// Terrestrial time less universal time [s]: how far the turning earth lags behind even time, 29 to 93 s from 1950 to
/// 2050; as at the ends before 1941 and after 2050. Forecast from 2005 on: by 2026 it says 6 s too much, which moves
/// the sun by 0.0001 deg.   [Espenak & Meeus 2006, NASA/TP-2006-214141, polynomial expressions for delta T]
double earth_clock_lag_s(double julian_day_ut);

/// Where the sun stands among the stars as seen from the earth's centre, and how far the earth has turned.
struct SunEphemeris {
  double apparent_longitude_rad = 0.0;  ///< lambda: along the ecliptic, with nutation and aberration, 0 to 2 pi
  double obliquity_rad = 0.0;           ///< epsilon: of the ecliptic, with nutation
  double right_ascension_rad = 0.0;     ///< alpha, 0 to 2 pi
  double declination_rad = 0.0;         ///< delta, north positive
  double sidereal_angle_rad = 0.0;      ///< nu: apparent, at Greenwich, 0 to 2 pi
  double distance_au = 1.0;             ///< R
};

/// The sun by the method of Reda & Andreas 2004, Solar Energy 76, 577 (NREL/TP-560-34302 rev. 2008), shortened: the 20
/// largest periodic terms of its Table A4.2 for the earth's longitude and 6 for the distance, the 4 largest of nutation
/// [Meeus 1998, ch. 22]. Longitude good to 0.002 deg from 1950 to 2050. Does not model: the sun's latitude (0.0003
/// deg).
SunEphemeris sun_ephemeris(double julian_day_ut);

/// Position of the sun as seen from the ground, good to 0.003 deg from 1950 to 2050: sun_ephemeris() turned to the
/// horizon, less the parallax (8.794" / R) cos(e). Declination and hour angle are those of the earth's centre.
/// Longitude is positive to the east. Does not model: refraction, the ellipsoid (0.00001 deg), height.
SunPosition sun_position(double julian_day_ut, double latitude_rad, double longitude_east_rad);

/// Position from solar time: hour angle and declination at a latitude; distance is left at 1 au.
SunPosition sun_position_from_hour_angle(double declination_rad, double latitude_rad, double hour_angle_rad);

/// How much refraction lifts the sun [rad] at a true elevation; zero below -0.833 deg.
///   1.02/60 deg / tan(e + 10.3/(e + 5.11)) (p / 1010 mbar) (283 / T)   [Reda & Andreas 2004, Solar Energy 76, 577, eq.
///   (42)]
double refraction_rad(double true_elevation_rad, double pressure_pa = 101325.0, double temperature_k = 283.15);

/// Unit vector towards the sun: east, north, up.
std::array<double, 3> sun_direction(const SunPosition& sun);

/// Cosine of the angle between the sun and the normal of a plane: positive where the sun is in front.
/// Slope from the horizontal (pi/2 vertical), azimuth of the normal clockwise from north.
/// Does not model: the horizon; a sun that is down can still be in front of a plane.
double incidence_cosine(const SunPosition& sun, double slope_rad, double azimuth_rad);

/// Sun time less mean time [s] at this instant, from the ephemeris: positive when the sun is early.
double equation_of_time_s(double julian_day_ut);

/// Sun time less mean time [s] by day of the year.   [Spencer 1971; Duffie & Beckman, eq. (1.5.3)]
double spencer_equation_of_time_s(int day_of_year);

/// Declination [rad] by day of the year.
///   23.45 deg sin(360 deg (284 + n) / 365)      [Cooper 1969; Duffie & Beckman, eq. (1.6.1a)]
double cooper_declination_rad(int day_of_year);

/// Declination [rad] by day of the year: 0.409 sin(2 pi J / 365 - 1.39)   [Allen et al. 1998, FAO-56, eq. (24)]
double fao_declination_rad(int day_of_year);

/// Hour angle of sunset [rad] of a geometric horizon, 0 in polar night to pi in polar day.
///   acos(-tan(latitude) tan(declination))       [Allen et al. 1998, FAO-56, eq. (25)]
double sunset_hour_angle_rad(double latitude_rad, double declination_rad);

/// Length of the geometric day [h]: 24 / pi times the sunset hour angle   [FAO-56, eq. (34)].
double daylight_h(double latitude_rad, double declination_rad);

/// The instants of one day, as julian days in universal time.
struct SunTimes {
  double sunrise_julian_day = 0.0;
  double noon_julian_day = 0.0;  ///< the sun crosses the meridian
  double sunset_julian_day = 0.0;
};

/// True elevation at which the upper limb shows on a flat horizon: refraction 34', radius 16'. [rad]
inline constexpr double kRiseElevation = -0.8333 * 0.017453292519943295;

/// Meridian passage nearest to an instant [julian day, universal time].
double solar_noon_julian_day(double near_julian_day_ut, double longitude_east_rad);

/// Sunrise and sunset about the meridian passage nearest to an instant (such as local midday);
/// nothing when the sun does not cross the rise elevation: test the elevation at noon to tell which.
std::optional<SunTimes> sun_times(double near_julian_day_ut, double latitude_rad, double longitude_east_rad,
                                  double rise_elevation_rad = kRiseElevation);

}  // namespace noonhouse
