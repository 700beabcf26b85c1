// SPDX-License-Identifier: Apache-2.0
#include "models/properties/sun.hpp"

#include <algorithm>
#include <boost/math/tools/toms748_solve.hpp>
#include <chrono>
#include <cmath>
#include <cstdint>
#include <utility>

#include "models/properties/constants.hpp"

namespace noonhouse {

namespace {

constexpr double kJulianDay2000 = 2451545.0;
constexpr double kSecondsPerDay = 86400.0;

/// The angle brought to -pi to pi.
double wrapped(double angle_rad) { return std::remainder(angle_rad, 2.0 * kPi); }

/// Position of the sun on the sky sphere, of the earth's centre [rad, au].
struct Ephemeris {
  double mean_longitude = 0.0;
  double right_ascension = 0.0;
  double declination = 0.0;
  double distance_au = 1.0;
};

/// Michalsky 1988: the numbers are degrees at 2000 January 1.5 and degrees a day.
Ephemeris ephemeris(double days_since_2000) {
  const double n = days_since_2000;
  const double mean_longitude = (280.460 + 0.9856474 * n) * kRadiansPerDegree;
  const double anomaly = (357.528 + 0.9856003 * n) * kRadiansPerDegree;
  const double longitude =
      mean_longitude + (1.915 * std::sin(anomaly) + 0.020 * std::sin(2.0 * anomaly)) * kRadiansPerDegree;
  const double obliquity = (23.439 - 4.0e-7 * n) * kRadiansPerDegree;
  return {.mean_longitude = mean_longitude,
          .right_ascension = std::atan2(std::cos(obliquity) * std::sin(longitude), std::cos(longitude)),
          .declination = std::asin(std::sin(obliquity) * std::sin(longitude)),
          .distance_au = 1.00014 - 0.01671 * std::cos(anomaly) - 0.00014 * std::cos(2.0 * anomaly)};
}

/// Hour angle of the sun [rad], -pi to pi; sidereal time as Michalsky 1988, in hours.
double hour_angle(double days_since_2000, double right_ascension, double longitude_east_rad) {
  const double since_midnight_days = days_since_2000 + 0.5;
  const double ut_h = 24.0 * (since_midnight_days - std::floor(since_midnight_days));
  const double sidereal_h = 6.697375 + 0.0657098242 * days_since_2000 + ut_h;
  return wrapped(std::remainder(sidereal_h, 24.0) * kPi / 12.0 + longitude_east_rad - right_ascension);
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

SunPosition sun_position(double julian_day_ut, double latitude_rad, double longitude_east_rad) {
  const double days = julian_day_ut - kJulianDay2000;
  const Ephemeris sun = ephemeris(days);
  SunPosition position = sun_position_from_hour_angle(sun.declination, latitude_rad,
                                                      hour_angle(days, sun.right_ascension, longitude_east_rad));
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
  const double early = wrapped(hour_angle(days, ephemeris(days).right_ascension, 0.0) - mean_hour_angle);
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
