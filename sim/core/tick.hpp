// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cmath>
#include <compare>
#include <cstdint>

namespace noonhouse {

/// An instant or a span of simulated time, an integer count of milliseconds [ms]; equality is exact.
/// As an instant it counts from the start of the run.
struct Tick {
  std::int64_t ms = 0;
  friend constexpr auto operator<=>(Tick, Tick) = default;
  friend constexpr Tick operator+(Tick a, Tick b) { return {a.ms + b.ms}; }
  friend constexpr Tick operator-(Tick a, Tick b) { return {a.ms - b.ms}; }
  friend constexpr Tick operator*(Tick a, std::int64_t n) { return {a.ms * n}; }
};

inline constexpr std::int64_t kTicksPerSecond = 1000;
inline constexpr Tick kNever{INT64_MAX};

/// The instant or span in seconds [s], exact below 2^53 ms.
constexpr double seconds(Tick t) { return static_cast<double>(t.ms) / 1000.0; }
/// The nearest tick to a time in seconds [s].
inline Tick ticks(double seconds) { return {std::llround(seconds * 1000.0)}; }
/// The first tick not before a time in seconds [s]; a time that is a tick but for rounding is that tick.
inline Tick ticks_up(double time_s) {
  const Tick nearest = ticks(time_s);
  return seconds(nearest) >= time_s ? nearest : Tick{nearest.ms + 1};
}
constexpr Tick operator""_s(unsigned long long n) { return {static_cast<std::int64_t>(n) * 1000}; }
constexpr Tick operator""_min(unsigned long long n) { return {static_cast<std::int64_t>(n) * 60'000}; }
constexpr Tick operator""_h(unsigned long long n) { return {static_cast<std::int64_t>(n) * 3'600'000}; }
inline constexpr Tick kDay = 24_h;

inline constexpr double kSecondsPerMinute = 60.0, kSecondsPerHour = 3600.0, kSecondsPerDay = 86400.0;

}  // namespace noonhouse
