// SPDX-License-Identifier: Apache-2.0
#include "models/weather/weather_signal.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "models/properties/atmosphere.hpp"
#include "models/properties/constants.hpp"
#include "models/properties/irradiance.hpp"
#include "models/properties/psychrometrics.hpp"
#include "models/properties/sun.hpp"
#include "sim/core/errors.hpp"
#include "sim/core/tick.hpp"

namespace noonhouse {
namespace {

constexpr double kTurbidity = 3.0;  // Linke, of the clear sky used for the shape: clear air, common practice
constexpr double kSunDiameter_rad = 0.533 * kRadiansPerDegree;  // seen from the mean distance (from memory)
constexpr double kHighestIndex =
    20.0;  // of what a file may claim over the clear sky used for the shape: thick bright cloud gives 8
constexpr double kRamp = 0.25;            // share of an interval over which the index goes to the edge's
constexpr double kSamplingStep_s = 60.0;  // within an interval, to sum the clear sky
constexpr Tick kCrossingSearch = 10_min;  // a sun up or down for less may be missed

double straight(double a, double b, double share) { return share == 0.0 ? a : a + (b - a) * share; }

double along_shorter_arc(double a, double b, double share) {
  const double turn = 2.0 * kPi;
  const double angle = a + share * std::remainder(b - a, turn);
  const double wrapped = std::fmod(angle, turn);
  return wrapped < 0.0 ? wrapped + turn : wrapped;
}

/// What the index' edges and middle weigh at a share of the interval; they sum to one.
struct HatWeights {
  double left, right;
  double middle() const { return 1.0 - left - right; }
};

HatWeights hats(double share) {
  return {std::max(0.0, 1.0 - share / kRamp), std::max(0.0, 1.0 - (1.0 - share) / kRamp)};
}

/// The clear sky's mean over one interval, and the parts of it that belong to the index' left edge and right edge.
struct IntervalSum {
  double whole = 0.0, left = 0.0, right = 0.0;
  void add(double value, HatWeights weights, double sample_share) {
    whole += value * sample_share;
    left += value * weights.left * sample_share;
    right += value * weights.right * sample_share;
  }
  /// The highest value both edges may have so that the middle need not be negative to keep `mean`.
  double highest_edge(double mean) const { return left + right > 0.0 ? mean / (left + right) : kHighestIndex; }
};

double mean_index(double mean, const IntervalSum& clear) {
  return clear.whole > 0.0 ? std::clamp(mean / clear.whole, 0.0, kHighestIndex) : 0.0;
}

/// The index at the edge between two intervals: their indices weighted by the sun each saw, low enough for both.
double edge_index(double mean_a, const IntervalSum& a, double mean_b, const IntervalSum& b) {
  const double sun = a.whole + b.whole;
  if (sun <= 0.0) return 0.0;
  const double blend = (mean_index(mean_a, a) * a.whole + mean_index(mean_b, b) * b.whole) / sun;
  const double limit_a = a.whole > 0.0 ? a.highest_edge(mean_a) : kHighestIndex;
  const double limit_b = b.whole > 0.0 ? b.highest_edge(mean_b) : kHighestIndex;
  return std::min({blend, limit_a, limit_b});
}

double middle_index(double mean, const IntervalSum& clear, double left_edge, double right_edge) {
  const double middle = clear.whole - clear.left - clear.right;
  if (middle <= 0.0) return mean_index(mean, clear);
  const double rest = mean - left_edge * clear.left - right_edge * clear.right;
  return std::clamp(rest / middle, 0.0, kHighestIndex);
}

Tick first_after(const std::vector<Tick>& instants, Tick t) {
  const auto found = std::upper_bound(instants.begin(), instants.end(), t);
  return found == instants.end() ? kNever : *found;
}

}  // namespace

WeatherSignal::WeatherSignal(WeatherSeries series, std::chrono::sys_seconds run_start, double duration_s)
    : series_(std::move(series)),
      run_start_(run_start),
      end_(ticks(duration_s)),
      step_ms_(ticks(series_.step_s).ms),
      lead_ms_((run_start - series_.start).count() * kTicksPerSecond),
      pressure_pa_(standard_pressure_pa(series_.altitude_m)) {
  NOON_ASSERT(step_ms_ > 0 && seconds(Tick{step_ms_}) == series_.step_s);
  NOON_ASSERT(!series_.rows.empty() && lead_ms_ >= 0 && end_.ms >= 0);
  NOON_ASSERT(lead_ms_ + end_.ms <= step_ms_ * static_cast<std::int64_t>(series_.rows.size()));
  const double utc_s = static_cast<double>(run_start.time_since_epoch().count()) - series_.utc_offset_s;
  julian_day_start_ = kUnixEpochJulianDay + utc_s / kSecondsPerDay;
  index_irradiance();
  for (const SunCrossing& crossing : sun_crossings(Tick{0}, end_))
    (crossing.up ? sunrises_ : sunsets_).push_back(crossing.when);
  collect_breaks();
}

SunPosition WeatherSignal::sun(Tick t) const {
  return sun_position(julian_day_start_ + seconds(t) / kSecondsPerDay, series_.latitude_deg * kRadiansPerDegree,
                      series_.longitude_deg * kRadiansPerDegree);
}

SunShape WeatherSignal::shape_at(double since_start_s) const {
  const SunPosition position = sun(ticks(since_start_s));
  if (position.elevation_rad <= 0.0) return {};
  SunShape shape;
  shape.sine_elevation = std::sin(position.elevation_rad);
  shape.extraterrestrial_w_m2 = extraterrestrial_normal_at_distance(position.distance_au);
  const SolarSplit clear = clear_sky(position.elevation_rad, pressure_pa_, kTurbidity, shape.extraterrestrial_w_m2);
  // The disc takes its time to rise; without it the beam would jump at the horizon.
  shape.beam_w_m2 = clear.beam_normal_w_m2 * std::min(1.0, position.elevation_rad / kSunDiameter_rad);
  shape.diffuse_w_m2 = clear.diffuse_w_m2;
  return shape;
}

double WeatherSignal::Index::at(double share) const {
  const HatWeights weights = hats(share);
  return weights.left * left_edge + weights.middle() * middle + weights.right * right_edge;
}

void WeatherSignal::index_irradiance() {
  // One row more on either side, so that the run's outer edges lean on neighbours too.
  const auto rows = static_cast<std::int64_t>(series_.rows.size());
  first_row_ = static_cast<std::size_t>(std::clamp<std::int64_t>(lead_ms_ / step_ms_ - 1, 0, rows - 1));
  end_row_ = static_cast<std::size_t>(std::clamp<std::int64_t>((lead_ms_ + end_.ms) / step_ms_ + 2, 1, rows));
  const std::size_t count = end_row_ - first_row_;
  std::vector<IntervalSum> beam(count), diffuse(count);
  const int samples = std::clamp(static_cast<int>(std::lround(series_.step_s / kSamplingStep_s)), 12, 240);
  for (std::size_t i = 0; i < count; ++i) {
    const double begin_s = seconds(Tick{step_ms_ * static_cast<std::int64_t>(first_row_ + i) - lead_ms_});
    for (int k = 0; k < samples; ++k) {
      const double share = (k + 0.5) / samples;
      const SunShape clear = shape_at(begin_s + share * series_.step_s);
      beam[i].add(clear.beam_w_m2, hats(share), 1.0 / samples);
      diffuse[i].add(clear.diffuse_w_m2, hats(share), 1.0 / samples);
    }
  }
  const auto indices = [&](double WeatherRow::*value, const std::vector<IntervalSum>& clear) {
    const auto mean = [&](std::size_t i) { return series_.rows[first_row_ + i].*value; };
    std::vector<Index> out(count);
    for (std::size_t i = 0; i < count; ++i) {
      Index& index = out[i];
      index.left_edge = i == 0 ? mean_index(mean(0), clear[0]) : out[i - 1].right_edge;
      index.right_edge =
          i + 1 == count ? mean_index(mean(i), clear[i]) : edge_index(mean(i), clear[i], mean(i + 1), clear[i + 1]);
      index.middle = middle_index(mean(i), clear[i], index.left_edge, index.right_edge);
    }
    return out;
  };
  beam_ = indices(&WeatherRow::beam_normal_w_m2, beam);
  diffuse_ = indices(&WeatherRow::diffuse_horizontal_w_m2, diffuse);
}

/// In (from, until], in time order.
std::vector<WeatherSignal::SunCrossing> WeatherSignal::sun_crossings(Tick from, Tick until) const {
  const auto up = [this](Tick t) { return sun(t).elevation_rad > 0.0; };
  std::vector<SunCrossing> out;
  for (Tick begin = from; begin < until; begin = begin + kCrossingSearch) {
    Tick low = begin, high = std::min(begin + kCrossingSearch, until);
    const bool was_up = up(low);
    if (up(high) == was_up) continue;
    while (high.ms - low.ms > 1) {
      const Tick middle{low.ms + (high.ms - low.ms) / 2};
      (up(middle) == was_up ? low : high) = middle;
    }
    out.push_back({high, !was_up});
  }
  return out;
}

std::vector<WeatherSignal::Daylight> WeatherSignal::daylight(Tick from, Tick until) const {
  std::vector<Daylight> out;
  bool up = sun(from).elevation_rad > 0.0;
  Tick since = from;
  for (const SunCrossing& crossing : sun_crossings(from, until)) {
    if (up) out.push_back({since, crossing.when});
    up = crossing.up;
    since = crossing.when;
  }
  if (up && since < until) out.push_back({since, until});
  return out;
}

void WeatherSignal::collect_breaks() {
  const auto instant_ms =
      static_cast<std::int64_t>(std::llround(series_.instant_share * static_cast<double>(step_ms_)));
  for (std::size_t row = first_row_; row <= end_row_; ++row) {
    const std::int64_t edge = step_ms_ * static_cast<std::int64_t>(row) - lead_ms_;
    breaks_.push_back({edge});
    breaks_.push_back({edge + instant_ms});
  }
  for (const Cloudburst& burst : series_.cloudbursts)
    for (const double bend_s : burst.bends_s()) breaks_.push_back(ticks(bend_s - since_s(burst, Tick{0})));
  breaks_.insert(breaks_.end(), sunrises_.begin(), sunrises_.end());
  breaks_.insert(breaks_.end(), sunsets_.begin(), sunsets_.end());
  std::erase_if(breaks_, [this](Tick t) { return t <= Tick{0} || t > end_; });
  std::sort(breaks_.begin(), breaks_.end());
  breaks_.erase(std::unique(breaks_.begin(), breaks_.end()), breaks_.end());
}

WeatherRow WeatherSignal::at(Tick t) const {
  const Tick inside = std::clamp(t, Tick{0}, end_);
  const std::int64_t series_ms = lead_ms_ + inside.ms;
  const std::size_t row = std::min(static_cast<std::size_t>(series_ms / step_ms_), series_.rows.size() - 1);
  const std::int64_t into_ms = series_ms - step_ms_ * static_cast<std::int64_t>(row);
  WeatherRow out;
  put_states(series_ms, out);
  put_irradiance(seconds(inside), row, static_cast<double>(into_ms) / static_cast<double>(step_ms_), out);
  out.rain_kg_m2_s = series_.rows[row].rain_kg_m2_s;
  for (const Cloudburst& burst : series_.cloudbursts) {
    burst.darken(since_s(burst, inside), out);
    out.rain_kg_m2_s += burst.rain_kg_m2_s(since_s(burst, inside));
  }
  return out;
}

double WeatherSignal::since_s(const Cloudburst& burst, Tick t) const {
  return seconds(t) - static_cast<double>((burst.begin - run_start_).count());
}

double WeatherSignal::mean_rain(Tick from, Tick to) const {
  const Tick begin = std::clamp(from, Tick{0}, end_), end = std::clamp(to, Tick{0}, end_);
  if (begin >= end) return at(begin).rain_kg_m2_s;
  double sum = 0.0;
  for (Tick t = begin; t < end;) {
    const std::int64_t row = (lead_ms_ + t.ms) / step_ms_;
    const Tick next = std::min(end, Tick{(row + 1) * step_ms_ - lead_ms_});
    sum += series_.rows[static_cast<std::size_t>(row)].rain_kg_m2_s * seconds(next - t);
    t = next;
  }
  for (const Cloudburst& burst : series_.cloudbursts)
    sum += burst.fallen_kg_m2(since_s(burst, end)) - burst.fallen_kg_m2(since_s(burst, begin));
  return sum / seconds(end - begin);
}

void WeatherSignal::put_states(std::int64_t series_ms, WeatherRow& out) const {
  const double last = static_cast<double>(series_.rows.size() - 1);
  const double position =
      std::clamp(static_cast<double>(series_ms) / static_cast<double>(step_ms_) - series_.instant_share, 0.0, last);
  const auto row = static_cast<std::size_t>(position);
  const WeatherRow& a = series_.rows[row];
  const WeatherRow& b = series_.rows[std::min(row + 1, series_.rows.size() - 1)];
  const double share = position - static_cast<double>(row);
  out.temperature_k = straight(a.temperature_k, b.temperature_k, share);
  out.pressure_pa = straight(a.pressure_pa, b.pressure_pa, share);
  out.humidity_ratio = std::min(straight(a.humidity_ratio, b.humidity_ratio, share),
                                humidity_ratio(saturation_pressure_water_pa(out.temperature_k), out.pressure_pa));
  out.wind_m_s = straight(a.wind_m_s, b.wind_m_s, share);
  out.wind_from_rad = along_shorter_arc(a.wind_from_rad, b.wind_from_rad, share);
  out.longwave_down_w_m2 = straight(a.longwave_down_w_m2, b.longwave_down_w_m2, share);
  out.cloud_share = straight(a.cloud_share, b.cloud_share, share);
}

void WeatherSignal::put_irradiance(double since_start_s, std::size_t row, double share, WeatherRow& out) const {
  const SunShape clear = shape_at(since_start_s);
  const std::size_t i = row - first_row_;
  out.beam_normal_w_m2 = std::min(beam_[i].at(share) * clear.beam_w_m2, clear.extraterrestrial_w_m2);
  out.diffuse_horizontal_w_m2 =
      std::min(diffuse_[i].at(share) * clear.diffuse_w_m2, clear.extraterrestrial_w_m2 * clear.sine_elevation);
  out.global_horizontal_w_m2 = out.beam_normal_w_m2 * clear.sine_elevation + out.diffuse_horizontal_w_m2;
}

Tick WeatherSignal::next_break(Tick t) const { return first_after(breaks_, t); }
Tick WeatherSignal::next_sunrise(Tick t) const { return first_after(sunrises_, t); }
Tick WeatherSignal::next_sunset(Tick t) const { return first_after(sunsets_, t); }

}  // namespace noonhouse
