// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string_view>
#include <vector>

#include "models/weather/weather_series.hpp"

namespace noonhouse {

/// The cells of one line of a plain weather file: a row, and the humidity in the forms that people measure.
struct PlainCells : WeatherRow {
  double relative_humidity = kUnknownWeather;
  double dew_point_k = kUnknownWeather;
};

/// A unit a column may be written in: SI value = (read + offset) * scale, for a depth per interval divided by the step.
struct PlainUnit {
  std::string_view name;
  double scale = 1.0;
  double offset = 0.0;
  bool per_step = false;
};

/// One column of the plain weather format.
struct PlainColumn {
  std::string_view name;
  std::vector<PlainUnit> units;
  double lowest = 0.0, highest = 0.0;  ///< what weather can be, SI
  bool may_be_unknown = false;         ///< an empty cell is "unknown"
  double PlainCells::*value = nullptr;
};

/// All columns of the format but `time`.
const std::vector<PlainColumn>& plain_columns();

}  // namespace noonhouse
