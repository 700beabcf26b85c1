// SPDX-License-Identifier: Apache-2.0
#include "models/properties/psychrometrics.hpp"

#include <algorithm>

namespace noonhouse {

namespace {

constexpr double kColdestDewPoint = kZeroCelsius - 100.0;

/// The bulb in [low, high] whose humidity ratio is w: Newton steps, halving where one leaves the bracket.
/// The residual rises from below zero at low to above zero at high.
double solve_wet_bulb(double temperature_k, double w, double pressure_pa, double low, double high) {
  double bulb = high;
  for (int iteration = 0; iteration < 100; ++iteration) {
    const Dual<1> at = humidity_ratio_from_wet_bulb(Dual<1>(temperature_k), Dual<1>::input(bulb, 0), pressure_pa);
    const double residual = at.value - w;
    (residual > 0.0 ? high : low) = bulb;
    double next = bulb - residual / at.grad[0];
    if (!(next > low && next < high)) next = 0.5 * (low + high);
    if (std::fabs(next - bulb) < 1e-10 || high - low < 1e-10) return next;
    bulb = next;
  }
  return bulb;
}

}  // namespace

double saturation_temperature_k(double vapour_pressure_pa) {
  if (vapour_pressure_pa <= saturation_pressure_pa(kColdestDewPoint)) return kColdestDewPoint;
  // ln p is nearly linear in 1/T, so Newton in 1/T converges in a few steps from anywhere.
  const double target = std::log(vapour_pressure_pa);
  double inverse = 1.0 / kTriplePoint;
  for (int iteration = 0; iteration < 50; ++iteration) {
    const double t = 1.0 / inverse;
    const double p = saturation_pressure_pa(t);
    const double step = (target - std::log(p)) / (-saturation_pressure_slope(t) / p * t * t);
    inverse += step;
    if (std::fabs(step) < 1e-15) break;
  }
  return 1.0 / inverse;
}

double wet_bulb_value_k(double temperature_k, double w, double pressure_pa) {
  if (w >= saturation_humidity_ratio(temperature_k, pressure_pa)) return temperature_k;
  const double dew = dew_point_k(w, pressure_pa);
  const double low = std::min(dew, temperature_k);
  if (temperature_k <= kZeroCelsius) return solve_wet_bulb(temperature_k, w, pressure_pa, low, temperature_k);
  if (humidity_ratio_from_wet_bulb(temperature_k, kZeroCelsius, pressure_pa) <= w) {
    return solve_wet_bulb(temperature_k, w, pressure_pa, std::max(low, kZeroCelsius), temperature_k);
  }
  const double freezing = std::nextafter(kZeroCelsius, 0.0);
  return solve_wet_bulb(temperature_k, w, pressure_pa, low, freezing);
}

double stull_wet_bulb_k(double temperature_k, double relative_humidity) {
  const double t = temperature_k - kZeroCelsius;
  const double rh = 100.0 * relative_humidity;
  return kZeroCelsius + t * std::atan(0.151977 * std::sqrt(rh + 8.313659)) + std::atan(t + rh) -
         std::atan(rh - 1.676331) + 0.00391838 * rh * std::sqrt(rh) * std::atan(0.023101 * rh) - 4.686035;
}

}  // namespace noonhouse
