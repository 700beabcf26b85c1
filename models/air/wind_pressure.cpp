// SPDX-License-Identifier: Apache-2.0
#include "models/air/wind_pressure.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "models/properties/constants.hpp"
#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

using AtAngles = std::array<double, 5>;  // 0, 45, 90, 135, 180 degrees

/// One table of the source: a house in its surroundings.
struct Coefficients {
  AtAngles long_wall, gable_wall, flat_roof, middle_roof, steep_roof;
};

constexpr Coefficients kOpenSite{{0.50, 0.25, -0.50, -0.80, -0.70},
                                 {0.60, 0.20, -0.90, -0.60, -0.35},
                                 {-0.70, -0.70, -0.80, -0.70, -0.70},
                                 {-0.70, -0.70, -0.70, -0.60, -0.50},
                                 {0.25, 0.00, -0.60, -0.90, -0.80}};
constexpr Coefficients kHalfHeightAround{{0.25, 0.06, -0.35, -0.60, -0.50},
                                         {0.40, 0.20, -0.60, -0.50, -0.30},
                                         {-0.60, -0.60, -0.60, -0.60, -0.60},
                                         {-0.60, -0.60, -0.55, -0.55, -0.45},
                                         {0.15, -0.08, -0.40, -0.75, -0.60}};
constexpr Coefficients kFullHeightAround{{0.06, -0.12, -0.20, -0.38, -0.30},
                                         {0.18, 0.15, -0.30, -0.32, -0.20},
                                         {-0.49, -0.46, -0.41, -0.46, -0.49},
                                         {-0.49, -0.46, -0.41, -0.46, -0.40},
                                         {0.06, -0.15, -0.23, -0.60, -0.42}};

const Coefficients& table_of(Surroundings surroundings) {
  switch (surroundings) {
    case Surroundings::open:
      return kOpenSite;
    case Surroundings::half_height:
      return kHalfHeightAround;
    case Surroundings::full_height:
      break;
  }
  return kFullHeightAround;
}

const AtAngles& row_of(const Coefficients& table, LowRiseFacet facet, double pitch_rad) {
  if (facet == LowRiseFacet::long_wall) return table.long_wall;
  if (facet == LowRiseFacet::gable_wall) return table.gable_wall;
  if (pitch_rad < 10.0 * kRadiansPerDegree) return table.flat_roof;
  return pitch_rad <= 30.0 * kRadiansPerDegree ? table.middle_roof : table.steep_roof;
}

/// An angle of any turn and sign as 0 to pi.
double folded(double angle_rad) { return std::abs(std::remainder(angle_rad, 2.0 * kPi)); }

}  // namespace

double swami_chandra_wall(double angle_rad, double width_ratio, double head_on) {
  NOON_ASSERT(width_ratio > 0.0);
  const double a = folded(angle_rad), g = std::log(width_ratio);
  const double sine = std::sin(a), half_sine = std::sin(0.5 * a), half_cosine = std::cos(0.5 * a);
  const double skew = std::sin(2.0 * a * g);
  return head_on *
         std::log(1.248 - 0.703 * half_sine - 1.175 * sine * sine + 0.131 * skew * skew * skew + 0.769 * half_cosine +
                  0.07 * g * g * half_sine * half_sine + 0.717 * half_cosine * half_cosine);
}

double low_rise_coefficient(LowRiseFacet facet, Surroundings surroundings, double pitch_rad, double angle_rad) {
  const AtAngles& row = row_of(table_of(surroundings), facet, pitch_rad);
  const double place = folded(angle_rad) / (45.0 * kRadiansPerDegree);
  const auto below = std::min(static_cast<std::size_t>(place), row.size() - 2);
  return std::lerp(row[below], row[below + 1], place - static_cast<double>(below));
}

double wind_incidence_rad(double wind_from_rad, double facet_azimuth_rad) {
  return folded(wind_from_rad - facet_azimuth_rad);
}

double shelter_speed_factor(int shielding_class) {
  constexpr std::array kShielding{0.324, 0.285, 0.240, 0.185, 0.102};
  NOON_ASSERT(shielding_class >= 1 && shielding_class <= 5);
  return kShielding[static_cast<std::size_t>(shielding_class - 1)] / kShielding[0];
}

double wind_speed_at_height(double station_speed_m_s, double station_height_m, const Terrain& station, double height_m,
                            const Terrain& site) {
  return station_speed_m_s * std::pow(station.layer_m / station_height_m, station.exponent) *
         std::pow(height_m / site.layer_m, site.exponent);
}

}  // namespace noonhouse
