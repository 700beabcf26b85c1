// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/wind_plan.hpp"

#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <vector>

#include "models/properties/constants.hpp"

namespace noonhouse {
namespace {

constexpr double kRoofBelow = kPi / 3.0;  ///< slope from the level
constexpr double kStatedWind = 4.0;       ///< the wind that leakage is stated for [m/s]
constexpr int kBearings = 8;

/// Flow into a shut box of unit leakiness [m3/s per m3/(s Pa^n m2)], by the pressures on its facets.
double flow_through(const std::vector<double>& areas_m2, const std::vector<double>& pressures_pa, double exponent) {
  const auto inflow = [&](double inside_pa, bool only_in) {
    double sum = 0.0;
    for (std::size_t i = 0; i < areas_m2.size(); ++i) {
      const double dp = pressures_pa[i] - inside_pa;
      if (dp > 0.0 || !only_in) sum += std::copysign(areas_m2[i] * std::pow(std::abs(dp), exponent), dp);
    }
    return sum;
  };
  const auto [least, most] = std::minmax_element(pressures_pa.begin(), pressures_pa.end());
  if (*most - *least < 1e-12) return 0.0;
  std::uintmax_t iterations = 100;
  const auto found = boost::math::tools::toms748_solve([&](double p) { return inflow(p, false); }, *least, *most,
                                                       boost::math::tools::eps_tolerance<double>(40), iterations);
  return inflow(0.5 * (found.first + found.second), true);
}

}  // namespace

double wind_coefficient(const HouseShape& shape, const Facet& facet, Surroundings around, double wind_from_rad) {
  const double incidence = wind_incidence_rad(wind_from_rad, facet.azimuth_rad);
  if (facet.slope_rad < kRoofBelow)
    return low_rise_coefficient(LowRiseFacet::roof_slope, around, facet.slope_rad, incidence);
  const bool end = facet.side == WallSide::first_end || facet.side == WallSide::last_end;
  const bool long_side = end == (shape.width_m > shape.length_m);
  return low_rise_coefficient(long_side ? LowRiseFacet::long_wall : LowRiseFacet::gable_wall, around, 0.0, incidence);
}

double leakiness_m_s(const HouseShape& shape, Surroundings around, double exponent, double air_changes_per_s,
                     double density_kg_m3) {
  std::vector<double> areas;
  double volume = 0.0, flow = 0.0;
  for (const BayShape& bay : shape.bays) volume += bay.volume_m3;
  for (const Facet& facet : shape.facets) areas.push_back(facet.area_m2);
  for (int k = 0; k < kBearings; ++k) {
    std::vector<double> pressures;
    for (const Facet& facet : shape.facets)
      pressures.push_back(wind_coefficient(shape, facet, around, 2.0 * kPi * k / kBearings) *
                          velocity_pressure_pa(density_kg_m3, kStatedWind));
    flow += flow_through(areas, pressures, exponent) / kBearings;
  }
  return flow > 0.0 ? air_changes_per_s * volume / flow : 0.0;
}

}  // namespace noonhouse
