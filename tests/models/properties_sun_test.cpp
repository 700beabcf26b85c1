// SPDX-License-Identifier: Apache-2.0
#include <gtest/gtest.h>

#include <cmath>

#include "models/properties/constants.hpp"
#include "models/properties/sun.hpp"
#include "tests/support/printed_units.hpp"

namespace noonhouse {
namespace {

double utc(int h, int m, double s = 0.0) { return 3600.0 * h + 60.0 * m + s; }

/// An azimuth counted from south, west positive [deg], from one clockwise from north [rad].
double from_south_deg(double azimuth_rad) { return azimuth_rad / kDeg - 180.0; }

// NREL/TP-560-34302 (rev. 2008), Table A4.1. Tolerance 1e-6 d.
TEST(JulianDay, MatchesTheTable) {
  EXPECT_NEAR(julian_day(2000, 1, 1, utc(12, 0)), 2451545.0, 1e-6);
  EXPECT_NEAR(julian_day(1999, 1, 1, 0.0), 2451179.5, 1e-6);
  EXPECT_NEAR(julian_day(1987, 6, 19, utc(12, 0)), 2446966.0, 1e-6);
  EXPECT_NEAR(julian_day(1600, 12, 31, 0.0), 2305812.5, 1e-6);
  EXPECT_NEAR(julian_day(837, 4, 10, utc(7, 12)), 2026871.8, 1e-6);
}

TEST(JulianDay, GregorianReformSkipsTenDays) {
  EXPECT_EQ(julian_day(1582, 10, 15, 0.0) - julian_day(1582, 10, 4, 0.0), 1.0);
}

TEST(DayOfYear, CountsLeapYears) {
  EXPECT_EQ(day_of_year(2025, 1, 1), 1);
  EXPECT_EQ(day_of_year(2025, 12, 31), 365);
  EXPECT_EQ(day_of_year(2024, 12, 31), 366);
  EXPECT_EQ(day_of_year(2024, 3, 1), 61);
}

/// The worked example of Reda & Andreas 2004: 17 October 2003, 12:30:30 at UTC-7.
struct WorkedExample {
  double julian_day_ut = julian_day(2003, 10, 17, utc(19, 30, 30));
  double latitude = 39.742476 * kDeg;
  double longitude = -105.1786 * kDeg;
  SunPosition sun = sun_position(julian_day_ut, latitude, longitude);
};

// Reda & Andreas 2004, Solar Energy 76, 577; NREL/TP-560-34302 rev. 2008, Table A5.1. Tolerance: 1e-6 d for the day;
// 0.5" and 0.1" for what the short nutation moves alone (Meeus 1998, ch. 22); 0.002 deg, the most that the terms left
// out of the longitude can add up to, for what follows from it; 3e-5 au for the same in the distance.
TEST(SunEphemeris, MatchesTheWorkedExample) {
  const WorkedExample at;
  EXPECT_NEAR(at.julian_day_ut, 2452930.312847, 1e-6);
  const SunEphemeris sun = sun_ephemeris(at.julian_day_ut);
  EXPECT_NEAR(sun.distance_au, 0.9965423, 3e-5);
  EXPECT_NEAR(sun.obliquity_rad / kDeg, 23.440465, 0.1 / 3600.0);
  EXPECT_NEAR(sun.sidereal_angle_rad / kDeg, 318.511910, 0.5 / 3600.0);
  EXPECT_NEAR(sun.apparent_longitude_rad / kDeg, 204.008552, 0.002);
  EXPECT_NEAR(sun.right_ascension_rad / kDeg, 202.227408, 0.002);
  EXPECT_NEAR(sun.declination_rad / kDeg, -9.31434, 0.001);  // sin(eps) of the longitude's
}

// The same table. Tolerance 0.003 deg, the method's; the zenith with the refraction for 820 mbar and 11 degC.
TEST(SunPosition, MatchesTheWorkedExample) {
  const WorkedExample at;
  EXPECT_NEAR(at.sun.distance_au, 0.9965423, 3e-5);
  EXPECT_NEAR(at.sun.declination_rad / kDeg, -9.31434, 0.001);
  EXPECT_NEAR(at.sun.hour_angle_rad / kDeg, 11.105902, 0.003);
  EXPECT_NEAR(at.sun.elevation_rad / kDeg, 39.872046, 0.003);
  EXPECT_NEAR(at.sun.azimuth_rad / kDeg, 194.340241, 0.003);
  const double lift = refraction_rad(at.sun.elevation_rad, 82000.0, kZeroCelsius + 11.0);
  EXPECT_NEAR(90.0 - (at.sun.elevation_rad + lift) / kDeg, 50.111622, 0.003);
}

// Reda & Andreas 2004: the topocentric declination and hour angle of the example (-9.316179, 11.10627 deg) differ from
// those of the earth's centre by the parallax; turned to the horizon without any parallax they are its elevation.
TEST(SunPosition, ParallaxLowersAsTheExampleDoes) {
  const WorkedExample at;
  const SunPosition centre = sun_position_from_hour_angle(-9.31434 * kDeg, at.latitude, 11.105902 * kDeg);
  const SunPosition ground = sun_position_from_hour_angle(-9.316179 * kDeg, at.latitude, 11.10627 * kDeg);
  EXPECT_NEAR(ground.elevation_rad / kDeg, 39.872046, 1e-5);
  EXPECT_NEAR((centre.elevation_rad - ground.elevation_rad) / kDeg, 8.794 / 3600.0 / 0.9965423 * std::cos(0.6959),
              1e-5);
}

// Measured, Astronomical Almanac, table of delta T (from memory), at the turn of the year. Tolerance of the fitted
// polynomials 0.5 s (from memory).
TEST(EarthClockLag, FollowsTheMeasuredTable) {
  const double rows[][2] = {{1950, 29.15}, {1960, 33.15}, {1970, 40.18}, {1980, 50.54}, {1990, 56.86}, {2000, 63.83}};
  for (const auto& [year, lag] : rows) {
    EXPECT_NEAR(earth_clock_lag_s(julian_day(static_cast<int>(year), 1, 1, 0.0)), lag, 0.5) << year;
  }
}

TEST(EarthClockLag, PiecesMeetAndEndsHold) {
  for (const int year : {1961, 1986, 2005}) {
    const double joint = julian_day(year, 1, 1, 0.0);
    EXPECT_NEAR(earth_clock_lag_s(joint - 2.0), earth_clock_lag_s(joint + 2.0), 0.5) << year;
  }
  EXPECT_EQ(earth_clock_lag_s(julian_day(2060, 1, 1, 0.0)), earth_clock_lag_s(julian_day(2090, 1, 1, 0.0)));
  EXPECT_EQ(earth_clock_lag_s(julian_day(1800, 1, 1, 0.0)), earth_clock_lag_s(julian_day(1940, 1, 1, 0.0)));
}

TEST(Refraction, MatchesTheWorkedExample) {
  EXPECT_NEAR(refraction_rad(39.872046 * kDeg, 82000.0, kZeroCelsius + 11.0) / kDeg, 0.016332, 1e-6);
}

// At the horizon 34 arc minutes are customary (from memory); the formula is stated for true elevation.
TEST(Refraction, IsLargestAtTheHorizonAndNothingOverheadOrFarBelow) {
  EXPECT_NEAR(60.0 * refraction_rad(-0.5667 * kDeg) / kDeg, 34.0, 2.0);
  EXPECT_NEAR(refraction_rad(90.0 * kDeg), 0.0, 1e-6);
  EXPECT_EQ(refraction_rad(-5.0 * kDeg), 0.0);
  for (double e = -0.8; e < 89.0; e += 0.2) ASSERT_GT(refraction_rad(e * kDeg), refraction_rad((e + 0.2) * kDeg));
}

// Same worked example: sunrise 06:12:43, sunset 17:20:19 local. The report works on the day of universal time:
// its sunset falls at 00:20 UT of 17 October, which is the evening of the 16th on local clocks. The sunset of the
// local 17th, 17:18:50, stands in an independent set of tests of the same algorithm. Tolerance 5 s.
TEST(SunTimes, MatchTheWorkedExample) {
  const WorkedExample at;
  const double midnight = julian_day(2003, 10, 17, utc(7, 0));
  const auto times = sun_times(midnight + 0.5, at.latitude, at.longitude);
  ASSERT_TRUE(times.has_value());
  EXPECT_NEAR((times->sunrise_julian_day - midnight) * 86400.0, utc(6, 12, 43), 5.0);
  EXPECT_NEAR((times->sunset_julian_day - midnight) * 86400.0, utc(17, 18, 50), 5.0);
  const auto before = sun_times(midnight - 0.5, at.latitude, at.longitude);
  ASSERT_TRUE(before.has_value());
  EXPECT_NEAR((before->sunset_julian_day - (midnight - 1.0)) * 86400.0, utc(17, 20, 19), 5.0);
}

// US Naval Observatory tables, 39 N 105 W, MST, 2015. Tolerance: 1 min.
TEST(SunTimes, MatchTheObservatoryTables) {
  struct Row {
    int month, day;
    double sunrise, sunset;
  };
  const Row rows[] = {{1, 2, utc(7, 19), utc(16, 49)},
                      {4, 2, utc(5, 43), utc(18, 24)},
                      {8, 2, utc(5, 1), utc(19, 10)},
                      {12, 2, utc(7, 1), utc(16, 38)}};
  for (const Row& row : rows) {
    const double midnight = julian_day(2015, row.month, row.day, utc(7, 0));
    const auto times = sun_times(midnight + 0.5, 39.0 * kDeg, -105.0 * kDeg);
    ASSERT_TRUE(times.has_value());
    EXPECT_NEAR((times->sunrise_julian_day - midnight) * 86400.0, row.sunrise, 60.0) << row.month;
    EXPECT_NEAR((times->sunset_julian_day - midnight) * 86400.0, row.sunset, 60.0) << row.month;
  }
}

TEST(SunTimes, StandOnTheRiseElevationAndAroundNoon) {
  for (int month = 1; month <= 12; ++month) {
    const double near = julian_day(2026, month, 11, utc(3, 0));
    const auto times = sun_times(near, -33.9 * kDeg, 151.2 * kDeg);
    ASSERT_TRUE(times.has_value());
    for (const double instant : {times->sunrise_julian_day, times->sunset_julian_day}) {
      EXPECT_NEAR(sun_position(instant, -33.9 * kDeg, 151.2 * kDeg).elevation_rad, kRiseElevation, 1e-6);
    }
    EXPECT_NEAR(sun_position(times->noon_julian_day, -33.9 * kDeg, 151.2 * kDeg).hour_angle_rad, 0.0, 1e-7);
    EXPECT_LE(std::fabs(times->noon_julian_day - near), 0.51);
  }
}

TEST(SunTimes, AreAbsentInPolarDayAndNight) {
  const double summer = julian_day(2026, 6, 21, utc(12, 0));
  const double winter = julian_day(2026, 12, 21, utc(12, 0));
  EXPECT_FALSE(sun_times(summer, 80.0 * kDeg, 0.0).has_value());
  EXPECT_FALSE(sun_times(winter, 80.0 * kDeg, 0.0).has_value());
  EXPECT_GT(sun_position(solar_noon_julian_day(summer, 0.0), 80.0 * kDeg, 0.0).elevation_rad, 0.0);
  EXPECT_LT(sun_position(solar_noon_julian_day(winter, 0.0), 80.0 * kDeg, 0.0).elevation_rad, 0.0);
}

// Equinoxes and solstices of 2025 (UT, almanac, from memory): 20 Mar 09:01, 21 Jun 02:42, 22 Sep 18:19,
// 21 Dec 15:03, to the minute. At the solstices the sun stands as far from the equator as the obliquity: 23.4393 deg
// less 0.0130 deg a century, and 0.0025 deg more by nutation, whose node is near zero longitude in 2025 (by hand).
// Tolerance: the sun's 0.002 deg and half a minute's 0.0002 deg in declination.
TEST(SunPosition, DeclinationAtTheSeasons) {
  const auto declination_deg = [](double jd) { return sun_position(jd, 0.0, 0.0).declination_rad / kDeg; };
  EXPECT_NEAR(declination_deg(julian_day(2025, 3, 20, utc(9, 1))), 0.0, 0.0022);
  EXPECT_NEAR(declination_deg(julian_day(2025, 9, 22, utc(18, 19))), 0.0, 0.0022);
  EXPECT_NEAR(declination_deg(julian_day(2025, 6, 21, utc(2, 42))), 23.4384, 0.0022);
  EXPECT_NEAR(declination_deg(julian_day(2025, 12, 21, utc(15, 3))), -23.4384, 0.0022);
}

// Duffie & Beckman, Solar Engineering of Thermal Processes, Example 1.5.1: 3 February, 89.4 W, zone meridian
// 90 W, 10:30 standard time: E -13.5 min, solar time 10:19. Tolerance 0.1 min.
TEST(EquationOfTime, MatchesTheTextbook) {
  const double minutes = spencer_equation_of_time_s(34) / 60.0;
  EXPECT_NEAR(minutes, -13.5, 0.1);
  EXPECT_NEAR(10.0 * 60.0 + 30.0 + 4.0 * (90.0 - 89.4) + minutes, 10.0 * 60.0 + 18.9, 0.1);
}

// Extremes of the year (almanac, from memory): 11 February -14 min 14 s, 14 May +3 min 40 s, 26 July -6 min 32 s,
// 3 November +16 min 27 s. Tolerance 5 s: the leap cycle moves them by about 1 s, 0.01 deg is 2.4 s.
TEST(EquationOfTime, ExtremesOfTheYear) {
  EXPECT_NEAR(equation_of_time_s(julian_day(2025, 2, 11, utc(12, 0))), -854.0, 5.0);
  EXPECT_NEAR(equation_of_time_s(julian_day(2025, 5, 14, utc(12, 0))), 220.0, 5.0);
  EXPECT_NEAR(equation_of_time_s(julian_day(2025, 7, 26, utc(12, 0))), -392.0, 5.0);
  EXPECT_NEAR(equation_of_time_s(julian_day(2025, 11, 3, utc(12, 0))), 987.0, 5.0);
}

// Sun and clock agree on 15 April, 13 June, 1 September and 25 December (almanac, from memory): the sign changes within
// a day and a half of noon of that day, whatever the place in the leap cycle.
TEST(EquationOfTime, CrossesZeroFourTimesAYear) {
  const int days[][3] = {{4, 15, 1}, {6, 13, -1}, {9, 1, 1}, {12, 25, -1}};  // month, day, rising or falling
  for (const auto& [month, day, way] : days) {
    for (int year = 2023; year <= 2026; ++year) {
      const double noon = julian_day(year, month, day, utc(12, 0));
      EXPECT_LT(way * equation_of_time_s(noon - 1.5), 0.0) << year << ' ' << month;
      EXPECT_GT(way * equation_of_time_s(noon + 1.5), 0.0) << year << ' ' << month;
    }
  }
}

// The series: 35 s at most in its own year (from memory), and up to a day of the leap cycle at 30 s a day.
TEST(EquationOfTime, EphemerisAndSeriesAgreeThroughTheYear) {
  for (int day = 1; day <= 365; ++day) {
    const double ephemeris = equation_of_time_s(julian_day(2025, 1, 1, utc(12, 0)) + day - 1);
    ASSERT_NEAR(ephemeris, spencer_equation_of_time_s(day), 65.0) << day;
  }
}

// Duffie & Beckman, Example 1.6.1: 43 N, 13 February, 10:30 solar time, slope 45, azimuth 15 west of south:
// cos(incidence) 0.817. Tolerance 0.5 deg.
TEST(Incidence, MatchesTheTextbook) {
  const SunPosition sun = sun_position_from_hour_angle(cooper_declination_rad(44), 43.0 * kDeg, -22.5 * kDeg);
  const double cosine = incidence_cosine(sun, 45.0 * kDeg, 195.0 * kDeg);
  EXPECT_NEAR(cosine, 0.817, 0.005);
  EXPECT_NEAR(std::acos(cosine) / kDeg, 35.0, 0.5);
}

// Duffie & Beckman, Examples 1.6.2 and 1.6.3: 43 N, solar time; azimuth from south, west positive. 0.3 deg.
TEST(SunPosition, ZenithAndAzimuthMatchTheTextbook) {
  struct Row {
    int day;
    double hour, zenith, azimuth;
  };
  const Row rows[] = {{44, 9.5, 66.5, -40.0}, {182, 18.5, 79.6, 112.0}, {75, 16.0, 70.3, 66.8}};
  for (const Row& row : rows) {
    const SunPosition sun =
        sun_position_from_hour_angle(cooper_declination_rad(row.day), 43.0 * kDeg, (row.hour - 12.0) * 15.0 * kDeg);
    EXPECT_NEAR(90.0 - sun.elevation_rad / kDeg, row.zenith, 0.3) << row.day;
    EXPECT_NEAR(from_south_deg(sun.azimuth_rad), row.azimuth, 0.3) << row.day;
  }
  EXPECT_NEAR(sunset_hour_angle_rad(43.0 * kDeg, cooper_declination_rad(75)) / kDeg, 87.8, 0.3);
}

// Allen et al. 1998, FAO-56, Examples 8 and 9: 20 S, 3 September. Tolerance 0.001 rad and 0.05 h.
TEST(Daylight, MatchesTheWorkedExamples) {
  const double declination = fao_declination_rad(246);
  EXPECT_NEAR(declination, 0.120, 0.001);
  EXPECT_NEAR(sunset_hour_angle_rad(-20.0 * kDeg, declination), 1.527, 0.001);
  EXPECT_NEAR(daylight_h(-20.0 * kDeg, declination), 11.7, 0.05);
  // FAO-56 Examples 17, 18 and 20.
  EXPECT_NEAR(daylight_h(13.73 * kDeg, fao_declination_rad(105)), 12.31, 0.05);
  EXPECT_NEAR(daylight_h(50.80 * kDeg, fao_declination_rad(187)), 16.1, 0.05);
  EXPECT_NEAR(daylight_h(45.72 * kDeg, fao_declination_rad(196)), 15.2, 0.1);
}

// A property of the formula: acos is clamped.
TEST(Daylight, IsAllOrNothingNearThePole) {
  EXPECT_EQ(daylight_h(80.0 * kDeg, fao_declination_rad(172)), 24.0);
  EXPECT_EQ(daylight_h(80.0 * kDeg, fao_declination_rad(355)), 0.0);
}

TEST(SunDirection, IsAUnitVectorWhoseDotProductIsTheIncidence) {
  for (int hour = 0; hour < 24; ++hour) {
    const SunPosition sun = sun_position(julian_day(2026, 7, 14, utc(hour, 17)), 33.4 * kDeg, -112.0 * kDeg);
    const auto [east, north, up] = sun_direction(sun);
    ASSERT_NEAR(east * east + north * north + up * up, 1.0, 1e-14);
    ASSERT_NEAR(up, std::sin(sun.elevation_rad), 1e-14);
    const double slope = 35.0 * kDeg;
    const double azimuth = 240.0 * kDeg;
    const double dot =
        east * std::sin(slope) * std::sin(azimuth) + north * std::sin(slope) * std::cos(azimuth) + up * std::cos(slope);
    ASSERT_NEAR(incidence_cosine(sun, slope, azimuth), dot, 1e-13);
    ASSERT_NEAR(incidence_cosine(sun, 0.0, azimuth), up, 1e-14);
  }
}

TEST(SunPosition, MorningIsEastAndSouthernNoonIsNorth) {
  const double noon = solar_noon_julian_day(julian_day(2026, 1, 15, utc(2, 0)), 151.2 * kDeg);
  const double latitude = -33.9 * kDeg;
  const double longitude = 151.2 * kDeg;
  EXPECT_NEAR(std::cos(sun_position(noon, latitude, longitude).azimuth_rad), 1.0, 1e-6);
  EXPECT_LT(sun_position(noon - 0.2, latitude, longitude).azimuth_rad, kPi);
  EXPECT_GT(sun_position(noon + 0.2, latitude, longitude).azimuth_rad, kPi);
  EXPECT_LT(sun_position(noon - 0.2, latitude, longitude).hour_angle_rad, 0.0);
}

}  // namespace
}  // namespace noonhouse
