// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <algorithm>
#include <cmath>
#include <vector>

#include "models/properties/irradiance.hpp"
#include "models/weather/weather_series.hpp"

/// The pieces that every invented weather is put together from.
namespace noonhouse {

/// Goes straight from a to b while x goes from x_a to x_b; a before, b after.
double ramp(double x, double x_a, double x_b, double a, double b);

/// One at the hour, zero twelve hours from it, by the time since any midnight [s].
double daily_wave(double time_s, double hour);

/// Share of a burst of rain that has fallen when this share of its time is gone: sin^2 in intensity, so its running
/// sum is x - sin(2 pi x) / (2 pi). 0 .. 1, clamped.
double fallen_share(double time_share);

/// A lowest or highest temperature of a day and when it comes.
struct TemperatureTurn {
  double time_s, temperature_k;
  bool highest;
};

/// Temperature [K] between turns in the order of time: half cosine waves, of which those that leave a high run ahead of
/// the clock (the evening falls fast and then slowly: share of time to the power 0.7; own choice). As at the ends
/// beyond the first and the last turn. At least two turns.
double temperature_between(const std::vector<TemperatureTurn>& turns, double time_s);

/// Mean over a day of temperature_between as a share of the way from the low to the high, when each day is as the
/// others and the rise takes this share of it: rise / 2 + (1 - rise) times the falling wave's mean.
double mean_share_of_wave(double rise_share);

/// What a cloud cover N leaves of a clear sky's light at a sine of the sun's elevation: global falls by 1 - 0.75 N^3.4
/// [Kasten & Czeplak 1980, Solar Energy 24, 177], the beam by 1 - N (own choice), and the diffuse light is what closes
/// global = beam sine + diffuse: clouds give back as diffuse part of what they take from the beam. Never brighter than
/// the clear sky: no reflection off the edges of clouds.
SolarSplit under_clouds(double clear_beam_w_m2, double clear_diffuse_w_m2, double sine, double cloud_share);

/// Share of a clear sky's global light that a cloud cover leaves: 1 - 0.75 N^3.4, as above.
double light_through_clouds(double cloud_share);

/// Puts the means over a row's interval [begin, begin + step) into it; `sun_at(time_s)` gives the SolarSplit of an
/// instant. Sampled in the middle of equal parts of at most a minute.
template <class SunAt>
void put_mean_sun(double begin_s, double step_s, const SunAt& sun_at, WeatherRow& row) {
  constexpr double kSunSample_s = 60.0;
  const int samples = std::max(1, static_cast<int>(std::ceil(step_s / kSunSample_s)));
  for (int k = 0; k < samples; ++k) {
    const SolarSplit sun = sun_at(begin_s + step_s * (k + 0.5) / samples);
    row.beam_normal_w_m2 += sun.beam_normal_w_m2 / samples;
    row.diffuse_horizontal_w_m2 += sun.diffuse_w_m2 / samples;
    row.global_horizontal_w_m2 += sun.global_w_m2 / samples;
  }
}

}  // namespace noonhouse
