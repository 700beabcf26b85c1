// SPDX-License-Identifier: Apache-2.0
#include "models/weather/finer_rows.hpp"

#include <algorithm>
#include <cmath>

#include "models/weather/weather_signal.hpp"
#include "sim/core/errors.hpp"

namespace noonhouse {
namespace {

constexpr double kSample_s = 60.0;
constexpr int kFewestSamples = 4;

/// Where in its part the instant of a row lies, as a share; 1 stays 1, so that the last instant is not lost.
double finer_instant_share(double share, double parts) {
  if (share == 1.0) return 1.0;
  const double position = share * parts;
  return position - std::floor(position);
}

/// Beam, diffuse and global light of the parts of one row.
class RowLight {
 public:
  RowLight(const WeatherSignal& signal, double begin_s, double part_s, int parts) {
    const int samples = std::max(kFewestSamples, static_cast<int>(std::lround(part_s / kSample_s)));
    for (int part = 0; part < parts; ++part) {
      Part mean;
      for (int k = 0; k < samples; ++k) {
        const double into_s = (part + (k + 0.5) / samples) * part_s;
        const WeatherRow now = signal.at(ticks(begin_s + into_s));
        mean.beam += now.beam_normal_w_m2 / samples;
        mean.diffuse += now.diffuse_horizontal_w_m2 / samples;
        mean.level_beam += (now.global_horizontal_w_m2 - now.diffuse_horizontal_w_m2) / samples;
      }
      whole_.beam += mean.beam / parts;
      whole_.diffuse += mean.diffuse / parts;
      parts_.push_back(mean);
    }
  }
  void put(int part, const WeatherRow& row, WeatherRow& out) const {
    if (whole_.diffuse <= 0.0 && whole_.beam <= 0.0) return;  // out has the row's own
    const Part& mean = parts_[static_cast<std::size_t>(part)];
    // What the samples miss of the row's energy goes to all parts alike.
    const double beam = whole_.beam > 0.0 ? row.beam_normal_w_m2 / whole_.beam : 0.0;
    const double diffuse = whole_.diffuse > 0.0 ? row.diffuse_horizontal_w_m2 / whole_.diffuse : 0.0;
    out.beam_normal_w_m2 = whole_.beam > 0.0 ? beam * mean.beam : row.beam_normal_w_m2;
    out.diffuse_horizontal_w_m2 = whole_.diffuse > 0.0 ? diffuse * mean.diffuse : row.diffuse_horizontal_w_m2;
    out.global_horizontal_w_m2 = beam * mean.level_beam + out.diffuse_horizontal_w_m2;
  }

 private:
  struct Part {
    double beam = 0.0, diffuse = 0.0, level_beam = 0.0;
  };
  std::vector<Part> parts_;
  Part whole_;
};

}  // namespace

WeatherSeries with_finer_rows(const WeatherSeries& series, double step_s) {
  const auto parts = static_cast<int>(ticks(series.step_s).ms / ticks(step_s).ms);
  NOON_ASSERT(parts >= 1 && ticks(step_s).ms * parts == ticks(series.step_s).ms && seconds(ticks(step_s)) == step_s);
  if (parts == 1 || series.rows.empty()) return series;
  const WeatherSignal signal(series, series.start, series.duration_s());
  WeatherSeries out = series;
  out.rows.clear();
  out.rows.reserve(series.rows.size() * static_cast<std::size_t>(parts));
  out.step_s = step_s;
  out.instant_share = finer_instant_share(series.instant_share, parts);
  for (std::size_t i = 0; i < series.rows.size(); ++i) {
    const WeatherRow& row = series.rows[i];
    const double begin_s = static_cast<double>(i) * series.step_s;
    const RowLight light(signal, begin_s, step_s, parts);
    for (int part = 0; part < parts; ++part) {
      WeatherRow finer = signal.at(ticks(begin_s + (part + out.instant_share) * step_s));
      finer.rain_kg_m2_s = row.rain_kg_m2_s;
      finer.beam_normal_w_m2 = row.beam_normal_w_m2;
      finer.diffuse_horizontal_w_m2 = row.diffuse_horizontal_w_m2;
      finer.global_horizontal_w_m2 = row.global_horizontal_w_m2;
      light.put(part, row, finer);
      out.rows.push_back(finer);
    }
  }
  return out;
}

}  // namespace noonhouse
