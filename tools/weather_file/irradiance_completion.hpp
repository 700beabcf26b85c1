// SPDX-License-Identifier: Apache-2.0
#pragma once
#include "models/weather/weather_series.hpp"

namespace noonhouse {

/// Which of the three irradiances a series holds.
struct IrradianceGiven {
  bool beam = false, diffuse = false, global = false;
};

/// The mean over row i's interval of the sine of the sun's elevation, counted as zero while the sun is down.
double mean_sine_elevation(const WeatherSeries& series, std::size_t row);

/// Fills the irradiances that are missing, interval by interval, with the interval's mean sun:
/// - beam and diffuse given: global = beam sine + diffuse;
/// - global and diffuse given: beam = (global - diffuse) / sine, not above the extraterrestrial one;
/// - global and beam given: diffuse = global - beam sine, not below zero;
/// - global alone: split by Erbs, Klein & Duffie 1982, Solar Energy 28, 293 (split_global in models/properties).
/// All three: left as they are. Without a beam given there is none below 3 deg of mean sun.
/// Throws UserError(weather_format) when neither global nor beam and diffuse are given.
void complete_irradiance(WeatherSeries& series, const IrradianceGiven& given);

}  // namespace noonhouse
