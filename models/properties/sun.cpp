// SPDX-License-Identifier: Apache-2.0
#include "models/properties/sun.hpp"

#include <algorithm>
#include <boost/math/tools/toms748_solve.hpp>
#include <chrono>
#include <cmath>
#include <cstdint>
#include <span>
#include <utility>

#include "models/properties/constants.hpp"
#include "sim/core/tick.hpp"

namespace noonhouse {

namespace {

constexpr double kJulianDay2000 = 2451545.0;
constexpr double kArcSecond = kRadiansPerDegree / 3600.0;

/// The angle brought to -pi to pi.
double wrapped(double angle_rad) { return std::remainder(angle_rad, 2.0 * kPi); }

/// The angle brought to 0 to 2 pi.
double turned(double angle_rad) { return angle_rad - 2.0 * kPi * std::floor(angle_rad / (2.0 * kPi)); }

/// One periodic term: a cos(b + c t), t in thousands of years since 2000.
struct Term {
  double a, b, c;
};

// Table A4.2 of NREL/TP-560-34302: heliocentric longitude of the earth [1e-8 rad] by powers of t, terms above 450, and
// its distance [1e-8 au], terms above 1000. What is left out adds up to 0.002 deg at the very most.
constexpr double kTableUnit = 1e-8;
constexpr double kLongitude0 = 175347046.0;
constexpr double kLongitude1 = 628331966747.0;
constexpr double kLongitude2 = 52919.0;
constexpr Term kLongitudeTerms0[] = {{3341656, 4.6692568, 6283.07585},
                                     {34894, 4.6261, 12566.1517},
                                     {3497, 2.7441, 5753.3849},
                                     {3418, 2.8289, 3.5231},
                                     {3136, 3.6277, 77713.7715},
                                     {2676, 4.4181, 7860.4194},
                                     {2343, 6.1352, 3930.2097},
                                     {1324, 0.7425, 11506.7698},
                                     {1273, 2.0371, 529.691},
                                     {1199, 1.1096, 1577.3435},
                                     {990, 5.233, 5884.927},
                                     {902, 2.045, 26.298},
                                     {857, 3.508, 398.149},
                                     {780, 1.179, 5223.694},
                                     {753, 2.533, 5507.553},
                                     {505, 4.583, 18849.228},
                                     {492, 4.205, 775.523}};
constexpr Term kLongitudeTerms1[] = {{206059, 2.678235, 6283.07585}, {4303, 2.6351, 12566.1517}};
constexpr Term kLongitudeTerms2[] = {{8720, 1.0721, 6283.0758}};
constexpr double kDistance0 = 100013989.0;
constexpr Term kDistanceTerms0[] = {{1670700, 3.0984635, 6283.07585},
                                    {13956, 3.05525, 12566.1517},
                                    {3084, 5.1985, 77713.7715},
                                    {1628, 1.1739, 5753.3849},
                                    {1576, 2.8469, 7860.4194}};
constexpr Term kDistanceTerms1[] = {{103019, 1.10749, 6283.07585}};

double sum(std::span<const Term> terms, double t) {
  double total = 0.0;
  for (const Term& term : terms) total += term.a * std::cos(term.b + term.c * t);
  return total;
}

/// How far the axis nods [rad].   [Meeus 1998, ch. 22: 0.5" in longitude, 0.1" in obliquity]
struct Nutation {
  double longitude_rad = 0.0;
  double obliquity_rad = 0.0;
};

Nutation nutation(double centuries) {
  const double node = (125.04452 - 1934.136261 * centuries) * kRadiansPerDegree;
  const double sun = 2.0 * (280.4665 + 36000.7698 * centuries) * kRadiansPerDegree;
  const double moon = 2.0 * (218.3165 + 481267.8813 * centuries) * kRadiansPerDegree;
  return {.longitude_rad = kArcSecond * (-17.20 * std::sin(node) - 1.32 * std::sin(sun) - 0.23 * std::sin(moon) +
                                         0.21 * std::sin(2.0 * node)),
          .obliquity_rad = kArcSecond * (9.20 * std::cos(node) + 0.57 * std::cos(sun) + 0.10 * std::cos(moon) -
                                         0.09 * std::cos(2.0 * node))};
}

/// The instant in [low, high] at which the sun crosses an elevation; the ends lie on either side.
double crossing(double low, double high, double latitude_rad, double longitude_east_rad, double elevation_rad) {
  const auto above = [&](double julian_day_ut) {
    return sun_position(julian_day_ut, latitude_rad, longitude_east_rad).elevation_rad - elevation_rad;
  };
  std::uintmax_t most = 60;
  const auto width = [](double a, double b) { return std::fabs(b - a) < 1e-8; };
  const std::pair<double, double> bracket = boost::math::tools::toms748_solve(above, low, high, width, most);
  return 0.5 * (bracket.first + bracket.second);
}

}  // namespace

double julian_day(int year, int month, int day, double seconds_of_day_ut) {
  const bool gregorian = year > 1582 || (year == 1582 && (month > 10 || (month == 10 && day >= 15)));
  if (month <= 2) {
    year -= 1;
    month += 12;
  }
  const double century = std::floor(year / 100.0);
  const double leap = gregorian ? 2.0 - century + std::floor(century / 4.0) : 0.0;
  return std::floor(365.25 * (year + 4716)) + std::floor(30.6001 * (month + 1)) + day + leap - 1524.5 +
         seconds_of_day_ut / kSecondsPerDay;
}

int day_of_year(int year, int month, int day) {
  using namespace std::chrono;
  const sys_days date =
      std::chrono::year{year} / std::chrono::month{static_cast<unsigned>(month)} / static_cast<unsigned>(day);
  const sys_days first = std::chrono::year{year} / January / 1;
  return static_cast<int>((date - first).count()) + 1;
}

SunPosition sun_position_from_hour_angle(double declination_rad, double latitude_rad, double hour_angle_rad) {
  const double up = std::sin(declination_rad) * std::sin(latitude_rad) +
                    std::cos(declination_rad) * std::cos(latitude_rad) * std::cos(hour_angle_rad);
  const double east = -std::cos(declination_rad) * std::sin(hour_angle_rad);
  const double north = std::sin(declination_rad) * std::cos(latitude_rad) -
                       std::cos(declination_rad) * std::sin(latitude_rad) * std::cos(hour_angle_rad);
  const double azimuth = std::atan2(east, north);
  return {.elevation_rad = std::atan2(up, std::hypot(east, north)),
          .azimuth_rad = azimuth < 0.0 ? azimuth + 2.0 * kPi : azimuth,
          .declination_rad = declination_rad,
          .hour_angle_rad = hour_angle_rad,
          .distance_au = 1.0};
}

double earth_clock_lag_s(double julian_day_ut) {
  const double year = std::clamp(2000.0 + (julian_day_ut - kJulianDay2000) / 365.25, 1941.0, 2050.0);
  if (year < 1961.0) {
    const double t = year - 1950.0;
    return 29.07 + t * (0.407 + t * (-1.0 / 233.0 + t / 2547.0));
  }
  if (year < 1986.0) {
    const double t = year - 1975.0;
    return 45.45 + t * (1.067 + t * (-1.0 / 260.0 - t / 718.0));
  }
  const double t = year - 2000.0;
  if (year < 2005.0) {
    return 63.86 + t * (0.3345 + t * (-0.060374 + t * (0.0017275 + t * (0.000651814 + t * 0.00002373599))));
  }
  return 62.92 + t * (0.32217 + t * 0.005589);
}

SunEphemeris sun_ephemeris(double julian_day_ut) {
  const double days_ut = julian_day_ut - kJulianDay2000;
  const double centuries_ut = days_ut / 36525.0;
  const double centuries = (days_ut + earth_clock_lag_s(julian_day_ut) / kSecondsPerDay) / 36525.0;
  const double t = 0.1 * centuries;
  const double distance = kTableUnit * (kDistance0 + sum(kDistanceTerms0, t) + t * sum(kDistanceTerms1, t));
  const double earth =
      kTableUnit * (kLongitude0 + sum(kLongitudeTerms0, t) +
                    t * (kLongitude1 + sum(kLongitudeTerms1, t) + t * (kLongitude2 + sum(kLongitudeTerms2, t))));
  const Nutation nod = nutation(centuries);
  const double aberration = 20.4898 * kArcSecond / distance;
  const double longitude = earth + kPi + nod.longitude_rad - aberration;
  const double obliquity = (84381.448 - 46.8150 * centuries) * kArcSecond + nod.obliquity_rad;
  // The turns of whole days are taken off before they cost digits.
  const double turns = 360.0 * (days_ut - std::floor(days_ut)) + 0.98564736629 * days_ut;
  const double sidereal = (280.46061837 + turns + 0.000387933 * centuries_ut * centuries_ut) * kRadiansPerDegree +
                          nod.longitude_rad * std::cos(obliquity);
  return {.apparent_longitude_rad = turned(longitude),
          .obliquity_rad = obliquity,
          .right_ascension_rad = turned(std::atan2(std::cos(obliquity) * std::sin(longitude), std::cos(longitude))),
          .declination_rad = std::asin(std::sin(obliquity) * std::sin(longitude)),
          .sidereal_angle_rad = turned(sidereal),
          .distance_au = distance};
}

SunPosition sun_position(double julian_day_ut, double latitude_rad, double longitude_east_rad) {
  const SunEphemeris sun = sun_ephemeris(julian_day_ut);
  const double hour_angle = wrapped(sun.sidereal_angle_rad + longitude_east_rad - sun.right_ascension_rad);
  SunPosition position = sun_position_from_hour_angle(sun.declination_rad, latitude_rad, hour_angle);
  position.elevation_rad -= 8.794 * kArcSecond / sun.distance_au * std::cos(position.elevation_rad);
  position.distance_au = sun.distance_au;
  return position;
}

double refraction_rad(double true_elevation_rad, double pressure_pa, double temperature_k) {
  const double elevation = true_elevation_rad / kRadiansPerDegree;
  if (true_elevation_rad < kRiseElevation) return 0.0;
  const double lift = 1.02 / (60.0 * std::tan((elevation + 10.3 / (elevation + 5.11)) * kRadiansPerDegree));
  return std::max(0.0, lift) * (pressure_pa / 101000.0) * (283.0 / (temperature_k - kZeroCelsius + 273.0)) *
         kRadiansPerDegree;
}

std::array<double, 3> sun_direction(const SunPosition& sun) {
  const double level = std::cos(sun.elevation_rad);
  return {level * std::sin(sun.azimuth_rad), level * std::cos(sun.azimuth_rad), std::sin(sun.elevation_rad)};
}

double incidence_cosine(const SunPosition& sun, double slope_rad, double azimuth_rad) {
  return std::sin(sun.elevation_rad) * std::cos(slope_rad) +
         std::cos(sun.elevation_rad) * std::sin(slope_rad) * std::cos(sun.azimuth_rad - azimuth_rad);
}

double equation_of_time_s(double julian_day_ut) {
  const double days = julian_day_ut - kJulianDay2000;
  const double since_midnight_days = days + 0.5;
  const double mean_hour_angle = 2.0 * kPi * (since_midnight_days - std::floor(since_midnight_days)) - kPi;
  const SunEphemeris sun = sun_ephemeris(julian_day_ut);
  const double early = wrapped(sun.sidereal_angle_rad - sun.right_ascension_rad - mean_hour_angle);
  return early * kSecondsPerDay / (2.0 * kPi);
}

double spencer_equation_of_time_s(int day) {
  const double b = 2.0 * kPi * (day - 1) / 365.0;
  return 60.0 * 229.2 *
         (0.000075 + 0.001868 * std::cos(b) - 0.032077 * std::sin(b) - 0.014615 * std::cos(2.0 * b) -
          0.04089 * std::sin(2.0 * b));
}

double cooper_declination_rad(int day) { return 23.45 * kRadiansPerDegree * std::sin(2.0 * kPi * (284 + day) / 365.0); }

double fao_declination_rad(int day) { return 0.409 * std::sin(2.0 * kPi * day / 365.0 - 1.39); }

double sunset_hour_angle_rad(double latitude_rad, double declination_rad) {
  return std::acos(std::clamp(-std::tan(latitude_rad) * std::tan(declination_rad), -1.0, 1.0));
}

double daylight_h(double latitude_rad, double declination_rad) {
  return 24.0 / kPi * sunset_hour_angle_rad(latitude_rad, declination_rad);
}

double solar_noon_julian_day(double near_julian_day_ut, double longitude_east_rad) {
  double noon = near_julian_day_ut;
  for (int round = 0; round < 4; ++round)
    noon -= sun_position(noon, 0.0, longitude_east_rad).hour_angle_rad / (2.0 * kPi);
  return noon;
}

std::optional<SunTimes> sun_times(double near_julian_day_ut, double latitude_rad, double longitude_east_rad,
                                  double rise_elevation_rad) {
  const double noon = solar_noon_julian_day(near_julian_day_ut, longitude_east_rad);
  const auto up = [&](double instant) {
    return sun_position(instant, latitude_rad, longitude_east_rad).elevation_rad > rise_elevation_rad;
  };
  if (!up(noon) || up(noon - 0.5) || up(noon + 0.5)) return std::nullopt;
  return SunTimes{
      .sunrise_julian_day = crossing(noon - 0.5, noon, latitude_rad, longitude_east_rad, rise_elevation_rad),
      .noon_julian_day = noon,
      .sunset_julian_day = crossing(noon, noon + 0.5, latitude_rad, longitude_east_rad, rise_elevation_rad)};
}

}  // namespace noonhouse
