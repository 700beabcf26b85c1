// SPDX-License-Identifier: Apache-2.0
#include "tools/weather_file/weather_shapes.hpp"

#include "models/properties/constants.hpp"
#include "sim/core/tick.hpp"

namespace noonhouse {
namespace {

constexpr double kEveningPower = 0.7;

/// From 0 to 1 along half a cosine wave, flat at both ends.
double half_wave(double share) { return 0.5 * (1.0 - std::cos(kPi * share)); }

/// Mean of the wave that leaves a high, by the rule of the middle: how much of the fall is behind, over its time.
double mean_of_evening_wave() {
  constexpr int kParts = 2000;
  double sum = 0.0;
  for (int k = 0; k < kParts; ++k) sum += half_wave(std::pow((k + 0.5) / kParts, kEveningPower));
  return sum / kParts;
}

}  // namespace

double ramp(double x, double x_a, double x_b, double a, double b) {
  return a + (b - a) * std::clamp((x - x_a) / (x_b - x_a), 0.0, 1.0);
}

double daily_wave(double time_s, double hour) {
  return 0.5 * (1.0 + std::cos(2.0 * kPi * (time_s - hour * kSecondsPerHour) / kSecondsPerDay));
}

double fallen_share(double time_share) {
  const double x = std::clamp(time_share, 0.0, 1.0);
  return x - std::sin(2.0 * kPi * x) / (2.0 * kPi);
}

double temperature_between(const std::vector<TemperatureTurn>& turns, double time_s) {
  const auto after = std::upper_bound(turns.begin() + 1, turns.end() - 1, time_s,
                                      [](double t, const TemperatureTurn& turn) { return t < turn.time_s; });
  const TemperatureTurn& a = *(after - 1);
  const TemperatureTurn& b = *after;
  const double share = std::clamp((time_s - a.time_s) / (b.time_s - a.time_s), 0.0, 1.0);
  const double wave = half_wave(a.highest ? std::pow(share, kEveningPower) : share);
  return a.temperature_k + (b.temperature_k - a.temperature_k) * wave;
}

double mean_share_of_wave(double rise_share) {
  static const double evening = mean_of_evening_wave();
  return 0.5 * rise_share + (1.0 - rise_share) * (1.0 - evening);
}

double light_through_clouds(double cloud_share) { return 1.0 - 0.75 * std::pow(cloud_share, 3.4); }

SolarSplit under_clouds(double clear_beam_w_m2, double clear_diffuse_w_m2, double sine, double cloud_share) {
  SolarSplit out;
  out.beam_normal_w_m2 = clear_beam_w_m2 * (1.0 - cloud_share);
  out.global_w_m2 = (clear_beam_w_m2 * sine + clear_diffuse_w_m2) * light_through_clouds(cloud_share);
  out.diffuse_w_m2 = out.global_w_m2 - out.beam_normal_w_m2 * sine;
  return out;
}

}  // namespace noonhouse
