// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cmath>
#include <vector>

#include "sim/core/smooth.hpp"

/// Fans by their curve of flow and static pressure. dp is the rise of static pressure from the fan's inlet to its
/// outlet [Pa], flows [m3/s] are positive from inlet to outlet. A curve is given at one density and speed; at others
/// the fan laws hold:  Q ~ N,  dp ~ rho N^2,  P ~ rho N^3   [ASHRAE Handbook HVAC Systems and Equipment, chapter on
/// fans; ISO 5801]. So at altitude a fan moves the same volume against less pressure. Not modelled: stall, shutters,
/// belts.
namespace noonhouse {

/// Density of the air that curves are published for [kg/m3].   [ISO 5801; ASHRAE gives 1.204 at 20 degC, from memory]
inline constexpr double kFanStandardDensity = 1.2;

/// Power that a fan gives to the air [W]:  P = Q dp. Negative where a pressure drives the fan; the motor's share of
/// heat is the electric power less this.
template <class S>
S air_power_w(const S& flow_m3_s, const S& dp_pa) {
  return flow_m3_s * dp_pa;
}

/// Power that a fan takes [W] of what it gives to the air, by efficiency of blades and motor together, above zero.
inline double electric_power_w(double air_power_w, double efficiency) { return air_power_w / efficiency; }

/// A quadratic curve through free flow and shut-off:
///   dp = (rho / rho_0) p_s n^2 [1 - (1 - c) x - c x |x|],   x = Q / (n Q_free)
/// n is the speed's share of the rated one, c the share of the curve's bend, 0 (straight) to 1 (a parabola with its top
/// at shut-off). Beyond shut-off air runs backwards, beyond free flow it is pushed through: the same formula continued.
/// A fan at rest (n = 0) is an opening of its c-term, for which c must be above zero.
struct QuadraticFan {
  double free_flow_m3_s = 0.0;
  double shut_off_pa = 0.0;
  double bend = 0.7;  ///< c; common practice, no source
  double density_kg_m3 = kFanStandardDensity;
  double softness = 1e-4;  ///< below |Y| is sqrt(Y^2 + softness^2)

  /// Flow against a rise of pressure, exact inverse of pressure_pa() but for the softness:
  ///   Q = Q_free 2 Y / [(1 - c) n + sqrt((1 - c)^2 n^2 + 4 c |Y|)],   Y = n^2 - dp rho_0 / (rho p_s)
  /// Smooth and falling in dp. For c above zero softness makes the slope at shut-off finite; the flow is small by a
  /// share below softness^2 / (4 Y^2), and at shut-off itself below c softness / ((1 - c) n)^2: 0.08 % as it stands.
  template <class S>
  S flow_m3_s(const S& dp_pa, const S& air_density_kg_m3, const S& speed_share) const {
    using std::sqrt;
    const S excess = speed_share * speed_share - dp_pa * (density_kg_m3 / shut_off_pa) / air_density_kg_m3;
    const S line = (1.0 - bend) * speed_share;
    return (2.0 * free_flow_m3_s) * excess / (line + sqrt(line * line + 4.0 * bend * smooth_abs(excess, softness)));
  }

  /// Rise of pressure at a flow [Pa]; speed_share may be zero.
  double pressure_pa(double flow_m3_s, double air_density_kg_m3, double speed_share) const;
};

/// A curve read from a data sheet: flows at rising pressures, joined by cubics that neither overshoot nor break in
/// slope
///   [Fritsch & Carlson 1980, SIAM J. Numer. Anal. 17, 238, slopes by Fritsch & Butland 1984, SIAM J. Sci. Stat.
///   Comput. 5, 300: weighted harmonic mean of the neighbours]
/// Outside the points the end's straight line goes on. A hump of stall has no one flow at a pressure and is refused.
class TabulatedFan {
 public:
  struct Point {
    double pressure_pa = 0.0;
    double flow_m3_s = 0.0;
  };

  /// At least two points, pressures rising, flows falling, both strictly; density at which they were measured. Throws
  /// UserError (does_not_fit) that names the first point that does not.
  explicit TabulatedFan(std::vector<Point> points, double density_kg_m3 = kFanStandardDensity);

  /// Flow against a rise of pressure. speed_share is above zero: a table says nothing of a fan at rest.
  template <class S>
  S flow_m3_s(const S& dp_pa, const S& air_density_kg_m3, const S& speed_share) const {
    const S pressure = dp_pa * density_kg_m3_ / (air_density_kg_m3 * speed_share * speed_share);
    return speed_share * rated_flow(pressure);
  }

 private:
  template <class S>
  S rated_flow(const S& pressure_pa) const {
    if (pressure_pa <= points_.front().pressure_pa) return line_from(0, pressure_pa);
    if (pressure_pa >= points_.back().pressure_pa) return line_from(points_.size() - 1, pressure_pa);
    std::size_t i = 0;
    while (pressure_pa >= points_[i + 1].pressure_pa) ++i;
    const Point &low = points_[i], &high = points_[i + 1];
    const double width = high.pressure_pa - low.pressure_pa;
    const S t = (pressure_pa - low.pressure_pa) / width;
    const S rest = 1.0 - t;
    return rest * rest * ((1.0 + 2.0 * t) * low.flow_m3_s + t * (width * slopes_[i])) +
           t * t * ((1.0 + 2.0 * rest) * high.flow_m3_s - rest * (width * slopes_[i + 1]));
  }

  template <class S>
  S line_from(std::size_t point, const S& pressure_pa) const {
    return points_[point].flow_m3_s + slopes_[point] * (pressure_pa - points_[point].pressure_pa);
  }

  std::vector<Point> points_;
  std::vector<double> slopes_;  ///< dQ/dp at each point
  double density_kg_m3_;
};

}  // namespace noonhouse
