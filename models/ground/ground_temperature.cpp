// SPDX-License-Identifier: Apache-2.0
#include "models/ground/ground_temperature.hpp"

#include <cmath>

#include "models/properties/constants.hpp"
#include "sim/core/errors.hpp"

namespace noonhouse {

namespace {

/// B' = A / (P / 2) of a slab [m].
double characteristic_dimension_m(const GroundSlab& slab) {
  NOON_ASSERT(slab.area_m2 > 0.0 && slab.perimeter_m > 0.0);
  return slab.area_m2 / (0.5 * slab.perimeter_m);
}

constexpr double kYearFrequency = 2.0 * kPi / kGroundYearS;  // [rad/s]

}  // namespace

double damping_depth_m(double diffusivity_m2_s, double period_s) {
  return std::sqrt(diffusivity_m2_s * period_s / kPi);
}

double UndisturbedGround::temperature_k(double depth_m, double time_s) const {
  const double depths = depth_m / damping_depth_m(diffusivity_m2_s, kGroundYearS);
  return mean_k - amplitude_k * std::exp(-depths) * std::cos(kYearFrequency * (time_s - coldest_s) - depths);
}

double UndisturbedGround::flux_down_w_m2(double depth_m, double time_s, double conductivity_w_m_k) const {
  const double damping_m = damping_depth_m(diffusivity_m2_s, kGroundYearS);
  const double depths = depth_m / damping_m;
  const double phase = kYearFrequency * (time_s - coldest_s) - depths;
  return -conductivity_w_m_k * amplitude_k / damping_m * std::exp(-depths) * (std::cos(phase) - std::sin(phase));
}

double UndisturbedGround::lag_s(double depth_m) const {
  return depth_m / damping_depth_m(diffusivity_m2_s, kGroundYearS) / kYearFrequency;
}

double slab_on_ground_transmittance_w_m2_k(const GroundSlab& slab) {
  const double lambda = slab.ground_conductivity_w_m_k;
  const double b = characteristic_dimension_m(slab);
  const double inside_resistance = 0.17, outside_resistance = 0.04;
  const double equivalent_m =
      slab.wall_thickness_m + lambda * (inside_resistance + slab.floor_resistance_m2_k_w + outside_resistance);
  if (equivalent_m >= b) return lambda / (0.457 * b + equivalent_m);
  return 2.0 * lambda / (kPi * b + equivalent_m) * std::log(kPi * b / equivalent_m + 1.0);
}

double slab_edge_loss_w_m_k(const GroundSlab& slab) {
  return slab_on_ground_transmittance_w_m2_k(slab) * 0.5 * characteristic_dimension_m(slab);
}

}  // namespace noonhouse
