// SPDX-License-Identifier: Apache-2.0
#include "tools/weather_file/weather_cover.hpp"

#include <fmt/format.h>

#include <cmath>
#include <cstdint>

#include "sim/core/errors.hpp"
#include "tools/weather_file/time_label.hpp"

namespace noonhouse {

void require_cover(const WeatherSeries& series, std::chrono::sys_seconds start, double duration_s) {
  const std::chrono::sys_seconds series_end =
      series.start + std::chrono::seconds{static_cast<std::int64_t>(std::floor(series.duration_s()))};
  const double lead_s = static_cast<double>((start - series.start).count());
  if (lead_s >= 0.0 && lead_s + duration_s <= series.duration_s()) return;
  const std::chrono::sys_seconds run_end =
      start + std::chrono::seconds{static_cast<std::int64_t>(std::ceil(duration_s))};
  const std::chrono::sys_seconds missing = start < series.start ? start : std::max(start, series_end);
  std::string fits;
  if (series.rows.empty()) {
    fits = "the series has no rows";
  } else if (start >= series.start && start < series_end) {
    fits = fmt::format("from {} at most {:.6g} days fit; run no later than {}, or bring a longer series",
                       time_label(start), (series.duration_s() - lead_s) / 86400.0, time_label(series_end));
  } else if (duration_s <= series.duration_s()) {
    const auto latest = series_end - (run_end - start);
    fits = fmt::format("a run of this length fits when it starts between {} and {}", time_label(series.start),
                       time_label(latest));
  } else {
    fits = fmt::format("the series holds {:.6g} days, the run asks for {:.6g}", series.duration_s() / 86400.0,
                       duration_s / 86400.0);
  }
  throw UserError(ErrorKind::weather_too_short,
                  fmt::format("weather \"{}\" covers {} to {} (local standard time), the run asks for {} to {}: the "
                              "first instant without weather is {}; {}",
                              series.name, time_label(series.start), time_label(series_end), time_label(start),
                              time_label(run_end), time_label(missing), fits));
}

}  // namespace noonhouse
