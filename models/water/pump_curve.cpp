// SPDX-License-Identifier: Apache-2.0
#include "models/water/pump_curve.hpp"

#include <cmath>

#include "models/properties/constants.hpp"
#include "models/properties/water.hpp"

namespace noonhouse {

PumpedFlow operating_point(const PumpCurve& pump, const WaterLine& line, double lift_m, double nozzle_constant,
                           int nozzles, double temperature_k) {
  const double opening = nozzle_constant * nozzles;
  const double lift_pa = water_density_kg_m3(temperature_k) * kGravity * lift_m;
  // What is left for the nozzles falls with the flow, what they need rises: one root.
  const auto left_pa = [&](double flow_m3_s) {
    return pump.pressure_pa(flow_m3_s) - lift_pa - line_loss_pa(line, flow_m3_s, temperature_k);
  };
  const auto needed_pa = [&](double flow_m3_s) { return (flow_m3_s / opening) * (flow_m3_s / opening); };
  if (opening <= 0.0 || left_pa(0.0) <= 0.0) return {};

  double low = 0.0, high = opening * std::sqrt(left_pa(0.0));  // nothing lost on the way
  while (high - low > 1e-14 * high) {
    const double middle = 0.5 * (low + high);
    if (middle <= low || middle >= high) break;
    (left_pa(middle) > needed_pa(middle) ? low : high) = middle;
  }
  const double flow_m3_s = 0.5 * (low + high);
  return {flow_m3_s, needed_pa(flow_m3_s), hydraulic_power_w(pump.pressure_pa(flow_m3_s), flow_m3_s)};
}

}  // namespace noonhouse
