// SPDX-License-Identifier: Apache-2.0
// Prints the sun's place for every line "julian_day latitude_deg longitude_deg" of the input, universal time, east
// positive: elevation and azimuth in degrees.
#include <cstdio>

#include "models/properties/constants.hpp"
#include "models/properties/sun.hpp"

int main() {
  double julian_day = 0.0;
  double latitude_deg = 0.0;
  double longitude_deg = 0.0;
  while (std::scanf("%lf %lf %lf", &julian_day, &latitude_deg, &longitude_deg) == 3) {
    const noonhouse::SunPosition sun = noonhouse::sun_position(julian_day, latitude_deg * noonhouse::kRadiansPerDegree,
                                                               longitude_deg * noonhouse::kRadiansPerDegree);
    std::printf("%.9f %.9f\n", sun.elevation_rad / noonhouse::kRadiansPerDegree,
                sun.azimuth_rad / noonhouse::kRadiansPerDegree);
  }
  return 0;
}
