// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <chrono>
#include <cstdint>
#include <vector>

#include "models/properties/sun.hpp"
#include "models/weather/weather_series.hpp"
#include "sim/core/tick.hpp"

namespace noonhouse {

/// A clear sky at an instant, used for its shape over time, and the limits above it. Zero when the sun is down.
struct SunShape {
  double sine_elevation = 0.0;
  double extraterrestrial_w_m2 = 0.0;  ///< on a plane facing the sun
  double beam_w_m2 = 0.0;              ///< on a plane facing the sun
  double diffuse_w_m2 = 0.0;           ///< on a level plane
};

/// The weather at any instant of a run. Immutable after construction: shared by threads without locks.
///
/// Rule per quantity, between the rows of the series:
/// - temperature, pressure, wind speed, longwave, cloud: straight lines between the instants the values belong to; flat
///   before the first and after the last. Unknown (NaN) on either side is unknown between.
/// - humidity ratio: a straight line, but never above saturation over liquid water at the instant.
/// - wind direction: along the shorter arc.
/// - rain: constant within the interval, and what cloudbursts bring.
/// - beam normal and diffuse horizontal: the row's mean is expressed as a share (index) of a clear sky's mean over the
///   same interval, and the value at an instant is the interpolated index times the clear sky at that instant. The
///   index is constant in the middle half of an interval and goes straight to the common edge value in the outer
///   quarters; the middle value is chosen so that the interval keeps its energy. Nothing while the sun's centre is
///   below the geometric horizon: what a file gives for an interval without sun is dropped. Values are limited to the
///   extraterrestrial ones, which can cost energy in intervals with minutes of sun only.
/// - global horizontal: beam normal times the sine of the sun's elevation, plus diffuse.
///
/// A cloudburst of the series darkens all of this while it lasts (Cloudburst::darken).
///
/// Clear sky used for the shape only: clear_sky of models/properties with a Linke turbidity of 3 at the place's
/// standard pressure; its beam grows from nothing while the sun's disc rises over its own diameter.
///
/// Does not model: variation inside an interval other than the sun's, clouds passing, gusts.
class WeatherSignal {
 public:
  /// The weather of a run that starts at `run_start` (local standard time label) and lasts `duration_s`. The series
  /// must cover it (tools check that for people; here it is asserted).
  WeatherSignal(WeatherSeries series, std::chrono::sys_seconds run_start, double duration_s);

  /// The weather at an instant since the run's start; outside the run, at its nearest instant.
  WeatherRow at(Tick t) const;

  /// Mean rain of a span [kg/(m2 s)], exact: rows and cloudbursts are summed, not sampled. What lies outside the run
  /// does not count; a span that has nothing of it has the rain of its nearest instant.
  double mean_rain(Tick from, Tick to) const;

  /// The sun's true position at an instant since the run's start (any instant).
  SunPosition sun(Tick t) const;

  /// The first instant strictly after t at which a line bends or a value jumps: interval edges, the instants rows
  /// belong to, the bends of cloudbursts, sunrise and sunset. kNever after the last. The mild bends of the irradiance
  /// index inside an interval are not breaks.
  Tick next_break(Tick t) const;

  /// The first sunrise (sunset) strictly after t and before the run's end: the sun's centre crosses the geometric
  /// horizon upward (downward), to 1 ms. kNever when there is none.
  Tick next_sunrise(Tick t) const;
  Tick next_sunset(Tick t) const;

  /// [from, until), since the run's start: the sun's centre is above the geometric horizon.
  struct Daylight {
    Tick from, until;
  };
  /// When the sun is up between two instants, which may lie outside the run; in time order, cut off at both. None in a
  /// polar night, one of the whole span in a polar day.
  std::vector<Daylight> daylight(Tick from, Tick until) const;

  Tick end() const { return end_; }
  const WeatherSeries& series() const { return series_; }
  std::chrono::sys_seconds run_start() const { return run_start_; }

 private:
  /// The share of a clear sky over one interval, by the share of the interval gone.
  struct Index {
    double left_edge = 0.0, middle = 0.0, right_edge = 0.0;
    double at(double share) const;
  };

  struct SunCrossing {
    Tick when;
    bool up;  ///< upward
  };
  std::vector<SunCrossing> sun_crossings(Tick from, Tick until) const;
  SunShape shape_at(double since_start_s) const;
  void index_irradiance();
  void collect_breaks();
  void put_states(std::int64_t series_ms, WeatherRow& out) const;
  double since_s(const Cloudburst& burst, Tick t) const;
  void put_irradiance(double since_start_s, std::size_t row, double share, WeatherRow& out) const;

  WeatherSeries series_;
  std::chrono::sys_seconds run_start_;
  Tick end_;
  std::int64_t step_ms_, lead_ms_;           ///< lead: from the series' start to the run's start
  double julian_day_start_;                  ///< of the run's start, UT
  double pressure_pa_;                       ///< of the standard atmosphere at the place
  std::size_t first_row_ = 0, end_row_ = 0;  ///< rows whose irradiance the run can ask for, end exclusive
  std::vector<Index> beam_, diffuse_;        ///< of rows first_row_ .. end_row_
  std::vector<Tick> sunrises_, sunsets_, breaks_;
};

}  // namespace noonhouse
