// SPDX-License-Identifier: Apache-2.0
#include "models/water/water_line.hpp"

#include <cmath>

#include "models/properties/constants.hpp"
#include "models/properties/water.hpp"

namespace noonhouse {

double water_viscosity_pa_s(double temperature_k) { return 2.414e-5 * std::pow(10.0, 247.8 / (temperature_k - 140.0)); }

double darcy_friction_factor(double reynolds, double relative_roughness) {
  if (reynolds < 1.0) return 64.0 / reynolds;  // the formula's own value, whose powers would overflow
  const double log_term = 2.457 * std::log(1.0 / (std::pow(7.0 / reynolds, 0.9) + 0.27 * relative_roughness));
  const double turbulent = std::pow(log_term, 16.0) + std::pow(37530.0 / reynolds, 16.0);
  return 8.0 * std::pow(std::pow(8.0 / reynolds, 12.0) + std::pow(turbulent, -1.5), 1.0 / 12.0);
}

double line_loss_pa(const WaterLine& line, double flow_m3_s, double temperature_k) {
  if (flow_m3_s == 0.0) return 0.0;
  const double density_kg_m3 = water_density_kg_m3(temperature_k);
  const double speed_m_s = std::abs(flow_m3_s) / (0.25 * kPi * line.bore_m * line.bore_m);
  const double reynolds = density_kg_m3 * speed_m_s * line.bore_m / water_viscosity_pa_s(temperature_k);
  const double friction = darcy_friction_factor(reynolds, line.roughness_m / line.bore_m);
  const double losses = friction * line.length_m / line.bore_m + line.fittings;
  return std::copysign(0.5 * density_kg_m3 * speed_m_s * speed_m_s * losses, flow_m3_s);
}

}  // namespace noonhouse
