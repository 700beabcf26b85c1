// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <filesystem>

#include "models/weather/weather_series.hpp"

namespace noonhouse {

/// The year that typical years are laid on unless asked otherwise: any year that is no leap year.
inline constexpr int kNominalYear = 2001;

/// Reads a typical meteorological year in the TMY3 layout: Wilcox & Marion 2008, Users Manual for TMY3 Data Sets,
/// NREL/TP-581-43156, tables 1-1 and 1-2 (from memory; the columns are found by name, never by place).
/// Row 1: station, name, state, UTC offset [h], latitude, longitude, elevation [m]; row 2: column names; then one row
/// an hour, stamped in local standard time at the hour's END, 01:00 to 24:00. The months come from different years and
/// are laid on `nominal_year`, which must not be a leap year; 29 February is left out where a file holds it. Needs:
/// GHI, DNI, DHI, Dry-bulb, Pressure, Wdir, Wspd, and Dew-point or RHum. Reads where present: TotCld (cloud), Alb.
/// Negative values (such as -9900) in rain, cloud and albedo are "not measured": no rain, unknown, the default. Throws
/// UserError: file_missing, file_empty, file_too_large, weather_format with file:line. Does not read: illuminance,
/// uncertainty, source flags. Rain depth is taken as the column's name says, in mm.
WeatherSeries read_typical_year(const std::filesystem::path& path, int nominal_year = kNominalYear);

}  // namespace noonhouse
