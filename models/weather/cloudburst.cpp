// SPDX-License-Identifier: Apache-2.0
#include "models/weather/cloudburst.hpp"

#include <algorithm>
#include <cmath>

#include "models/properties/sky.hpp"
#include "models/weather/weather_series.hpp"

namespace noonhouse {
namespace {

constexpr double kDarkens_s = 60.0, kDarkensAtMost = 0.25;  // of its length; common practice, no source
constexpr double kOvercastOpen = 0.16;                      // 1 - 0.84, see cloudy_emissivity

double darkens_s(const Cloudburst& burst) { return std::min(kDarkens_s, kDarkensAtMost * burst.duration_s); }

double mix(double a, double b, double share) { return a + share * (b - a); }

/// The longwave of an overcast sky, where a row tells its own; never less than that.
double overcast_longwave(const WeatherRow& row) {
  const double black_w_m2 = blackbody_emission(row.temperature_k);
  const double known_cloud = std::isfinite(row.cloud_share) ? std::min(row.cloud_share, 1.0) : 0.0;
  const double covered = (1.0 - kOvercastOpen) * known_cloud;
  const double clear = std::min(1.0, (row.longwave_down_w_m2 / black_w_m2 - covered) / (1.0 - covered));
  return std::max(row.longwave_down_w_m2, black_w_m2 * (1.0 - kOvercastOpen * (1.0 - clear)));
}

}  // namespace

std::array<double, 7> Cloudburst::bends_s() const {
  const double edge_s = darkens_s(*this);
  return {0.0, edge_s, 0.25 * duration_s, 0.5 * duration_s, 0.75 * duration_s, duration_s - edge_s, duration_s};
}

double Cloudburst::fallen_kg_m2(double since_s) const {
  const double gone = std::clamp(since_s / duration_s, 0.0, 1.0), left = 1.0 - gone;
  return depth_kg_m2 * (gone < 0.5 ? 2.0 * gone * gone : 1.0 - 2.0 * left * left);
}

double Cloudburst::rain_kg_m2_s(double since_s) const {
  const double gone = std::clamp(since_s / duration_s, 0.0, 1.0);
  return 4.0 * depth_kg_m2 / duration_s * std::min(gone, 1.0 - gone);
}

double Cloudburst::dark_share(double since_s) const {
  return std::clamp(std::min(since_s, duration_s - since_s) / darkens_s(*this), 0.0, 1.0);
}

void Cloudburst::darken(double since_s, WeatherRow& row) const {
  const double dark = dark_share(since_s);
  if (dark <= 0.0) return;
  const double level_beam = row.global_horizontal_w_m2 - row.diffuse_horizontal_w_m2;
  row.global_horizontal_w_m2 *= mix(1.0, light_share, dark);
  row.diffuse_horizontal_w_m2 = row.global_horizontal_w_m2 - (1.0 - dark) * level_beam;
  row.beam_normal_w_m2 *= 1.0 - dark;
  if (std::isfinite(row.longwave_down_w_m2))
    row.longwave_down_w_m2 = mix(row.longwave_down_w_m2, overcast_longwave(row), dark);
  row.cloud_share = mix(std::isfinite(row.cloud_share) ? row.cloud_share : 0.0, 1.0, dark);
}

}  // namespace noonhouse
