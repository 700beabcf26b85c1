// SPDX-License-Identifier: Apache-2.0
#pragma once
#include "models/weather/weather_series.hpp"

namespace noonhouse {

/// The same weather in rows of `step_s`, a whole part of the series' own step (whole milliseconds), so that something
/// short can be put between its rows. WeatherSignal reads it as it read the series:
/// - temperature, humidity ratio, pressure, wind, longwave, cloud: the same lines; instant_share changes where no finer
///   row would otherwise belong to the instants of the series' rows;
/// - rain: the same rate in all parts of a row;
/// - beam normal and diffuse horizontal: the means of WeatherSignal over each part, together the mean of the row. The
///   instants between follow within what its index does; a row that has no sun keeps its values in all parts;
/// - global horizontal: from the two, so that the rows close.
/// The cost is that of a clear sky for each minute of the series.
WeatherSeries with_finer_rows(const WeatherSeries& series, double step_s);

}  // namespace noonhouse
