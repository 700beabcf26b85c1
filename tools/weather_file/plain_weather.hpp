// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <filesystem>
#include <string>

#include "models/weather/weather_series.hpp"

namespace noonhouse {

/// Reads a plain weather file: text, comma separated.
///
///     # noonhouse weather 1
///     # name: Ridge station, July
///     # origin: own measurements
///     # invented: no
///     # latitude: 35.04 deg
///     # longitude: -106.62 deg
///     # altitude: 1619 m
///     # utc_offset: -7 h
///     # step: 600 s
///     # instant_share: 0
///     # albedo: 0.25
///     time,temperature[degC],relative_humidity[%],pressure[hPa],global[W/m2],wind[m/s],wind_from[deg],rain[mm]
///     2025-07-14 00:00,21.5,30,835.2,0,1.2,225,0
///
/// The first line is as shown; the others may stand in any order. Needed are latitude and longitude (north and east
/// positive), altitude, utc_offset (local standard time minus UTC; h, min or s) and step (s, min or h). The rest may be
/// left out: instant_share (default 0) says where in its interval a temperature belongs, 0 its beginning to 1 its end.
/// `time` is the BEGINNING of the row's interval in local standard time. Rows follow one another by `step` without
/// gaps. Columns are found by name, in any order; each carries its unit:
///   temperature      [degC] or [K]                                        required
///   one of relative_humidity [%], dew_point [degC] or [K], humidity_ratio [kg/kg]   required
///   pressure         [hPa] or [Pa]             absent: the standard atmosphere's at the altitude
///   beam_normal, diffuse, global   [W/m2]      global, or beam_normal and diffuse, or all three; interval means.
///                    Global alone is split by Erbs, Klein & Duffie 1982; global and diffuse give the beam.
///   wind             [m/s] or [km/h]           required
///   wind_from        [deg] or [rad], clockwise from north; absent: 0
///   rain             [mm] in the interval or [kg/m2/s];  absent: none
///   longwave_down    [W/m2]                    absent or empty: unknown
///   cloud            [%] or [1]                absent or empty: unknown
/// An unknown column, a gap, a value outside what weather can be, or a missing unit is a UserError(weather_format) with
/// file:line; file_missing, file_empty and file_too_large as named.
WeatherSeries read_plain_weather(const std::filesystem::path& path);

/// The same from text; `name` stands for the file in messages.
WeatherSeries parse_plain_weather(const std::string& text, const std::string& name);

/// The series as a plain weather file, in units and digits that read back to the same bits.
std::string plain_weather_text(const WeatherSeries& series);

/// Writes plain_weather_text to a file, by way of a temporary one beside it. Throws UserError(results_not_writable).
void write_plain_weather(const WeatherSeries& series, const std::filesystem::path& path);

/// Reads a weather file of either kind: a plain one when its first line says so, else a typical year.
WeatherSeries read_weather(const std::filesystem::path& path);

}  // namespace noonhouse
