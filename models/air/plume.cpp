// SPDX-License-Identifier: Apache-2.0
#include "models/air/plume.hpp"

#include <boost/math/tools/toms748_solve.hpp>
#include <cstdint>

#include "sim/core/errors.hpp"

namespace noonhouse {

double plume_excess_k(double heat_w, double flow_m3_s, double density_kg_m3) {
  return heat_w / (density_kg_m3 * kDryAirHeat * flow_m3_s);
}

double round_plume_constant(double entrainment) { return 1.2 * entrainment * std::cbrt(0.9 * entrainment * kPi * kPi); }

double virtual_origin_m(double source_area_m2, double entrainment) {
  return std::sqrt(source_area_m2 / kPi) / (1.2 * entrainment);
}

double effective_opening_m2(double top_area_m2, double bottom_area_m2, double top_discharge, double bottom_discharge) {
  const double top = top_discharge * top_area_m2, bottom = bottom_discharge * bottom_area_m2;
  if (top <= 0.0 || bottom <= 0.0) return 0.0;
  return std::sqrt(2.0) * top * bottom / std::hypot(top, bottom);
}

double interface_height_share(double effective_opening_m2, double height_m, int plumes, double entrainment) {
  NOON_ASSERT(height_m > 0.0 && plumes > 0 && entrainment > 0.0 && effective_opening_m2 >= 0.0);
  if (effective_opening_m2 == 0.0) return 0.0;
  // The equation squared and multiplied by (1 - xi): rises from below zero at 0 to above zero at 1, one root.
  const double openness = effective_opening_m2 / (plumes * height_m * height_m);
  const double c = round_plume_constant(entrainment);
  const double ratio = openness * openness / (c * c * c);
  const auto excess = [ratio](double xi) { return xi * xi * xi * xi * xi - ratio * (1.0 - xi); };
  std::uintmax_t steps = 100;
  const auto [below, above] = boost::math::tools::toms748_solve(excess, 0.0, 1.0, -ratio, 1.0,
                                                                boost::math::tools::eps_tolerance<double>(40), steps);
  return 0.5 * (below + above);
}

}  // namespace noonhouse
