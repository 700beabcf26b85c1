// SPDX-License-Identifier: Apache-2.0
#include "models/air/fan_curve.hpp"

#include <cmath>
#include <sstream>
#include <utility>

#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

using Points = std::vector<TabulatedFan::Point>;

void require_falling(const Points& points) {
  if (points.size() < 2) throw UserError(ErrorKind::does_not_fit, "a fan's curve needs at least two points");
  for (std::size_t i = 1; i < points.size(); ++i) {
    const auto& [pressure, flow] = points[i];
    if (pressure > points[i - 1].pressure_pa && flow < points[i - 1].flow_m3_s) continue;
    std::ostringstream message;
    message << "point " << i + 1 << " of the fan's curve (" << pressure << " Pa, " << flow << " m3/s) follows ("
            << points[i - 1].pressure_pa << " Pa, " << points[i - 1].flow_m3_s
            << " m3/s): pressures must rise and flows fall from point to point; leave out the hump of stall";
    throw UserError(ErrorKind::does_not_fit, message.str());
  }
}

double secant(const Points& p, std::size_t i) {
  return (p[i + 1].flow_m3_s - p[i].flow_m3_s) / (p[i + 1].pressure_pa - p[i].pressure_pa);
}

/// Slopes at all points: between two secants their weighted harmonic mean, at the ends the secant itself.
std::vector<double> monotone_slopes(const Points& p) {
  std::vector<double> slopes(p.size());
  slopes.front() = secant(p, 0);
  slopes.back() = secant(p, p.size() - 2);
  for (std::size_t i = 1; i + 1 < p.size(); ++i) {
    const double before = p[i].pressure_pa - p[i - 1].pressure_pa, after = p[i + 1].pressure_pa - p[i].pressure_pa;
    const double weight_before = 2.0 * after + before, weight_after = after + 2.0 * before;
    slopes[i] = (weight_before + weight_after) / (weight_before / secant(p, i - 1) + weight_after / secant(p, i));
  }
  return slopes;
}

}  // namespace

double QuadraticFan::pressure_pa(double flow_m3_s, double air_density_kg_m3, double speed_share) const {
  const double flow = flow_m3_s / free_flow_m3_s;
  const double curve = speed_share * speed_share - (1.0 - bend) * speed_share * flow - bend * flow * std::abs(flow);
  return shut_off_pa * (air_density_kg_m3 / density_kg_m3) * curve;
}

TabulatedFan::TabulatedFan(std::vector<Point> points, double density_kg_m3)
    : points_(std::move(points)), density_kg_m3_(density_kg_m3) {
  require_falling(points_);
  slopes_ = monotone_slopes(points_);
}

}  // namespace noonhouse
