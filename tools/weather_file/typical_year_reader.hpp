// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <filesystem>
#include <string>

#include "models/weather/weather_series.hpp"

namespace noonhouse {

/// How the rain column of a typical year is to be taken.
enum class RainColumn {
  automatic,              ///< tenths of a millimetre when the depths show it (see read_typical_year), else millimetres
  millimetres,            ///< as the column's name says
  tenths_of_millimetres,  ///< as some files of the kind really hold
  left_out,               ///< no rain
};

struct TypicalYearOptions {
  int nominal_year = 2001;  ///< the year the months are laid on; no leap year
  RainColumn rain = RainColumn::automatic;
};

/// Reads a typical meteorological year in the TMY3 layout: Wilcox & Marion 2008, Users Manual for TMY3 Data Sets,
/// NREL/TP-581-43156, tables 1-1 and 1-2 (from memory; the columns are found by name, never by place).
/// Row 1: station, name, state, UTC offset [h], latitude, longitude, elevation [m]; row 2: column names; then one row
/// an hour, stamped in local standard time at the hour's END, 01:00 to 24:00. The months come from different years and
/// are laid on one nominal year; 29 February is left out where a file holds it. Needs: GHI, DNI, DHI, Dry-bulb,
/// Pressure, Wdir, Wspd, and Dew-point or RHum. Reads where present: TotCld (cloud), Alb, Lprecip. Negative values
/// (such as -9900) in rain, cloud and albedo are "not measured": no rain, unknown, the default. A calm hour keeps the
/// direction of the hour before. Rain, automatic: a gauge that tips at 0.01 in (0.254 mm) never reports 1 or 2 whole
/// tenths nor only whole millimetres; a column of whole numbers, at least ten of them above zero and none of them 1 or
/// 2, is therefore taken as tenths of a millimetre in spite of its name, and the series' origin says so. Throws
/// UserError: file_missing, file_empty, file_too_large, weather_format with file:line. Does not read: illuminance,
/// uncertainty and source flags.
WeatherSeries read_typical_year(const std::filesystem::path& path, const TypicalYearOptions& options = {});

/// The same from text; `name` stands for the file in messages.
WeatherSeries parse_typical_year(const std::string& text, const std::string& name,
                                 const TypicalYearOptions& options = {});

}  // namespace noonhouse
