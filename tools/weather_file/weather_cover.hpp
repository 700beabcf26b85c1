// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <chrono>

#include "models/weather/weather_series.hpp"

namespace noonhouse {

/// Throws UserError(ErrorKind::weather_too_short) unless the series covers `duration_s` from `start` (local standard
/// time label, as in WeatherSeries). The message names the first instant without weather and what would fit.
void require_cover(const WeatherSeries& series, std::chrono::sys_seconds start, double duration_s);

}  // namespace noonhouse
