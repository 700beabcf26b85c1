// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "sim/core/errors.hpp"

/// Quantities as people write them, at the edge of the program: text with a unit in, SI out, and back.
///
/// The table is our own and not a general units library: the units growers use (gpm, gal/h, cfm, kWh, Ah) are missing
/// or mean something else in general libraries (there "gal" is an acceleration and "C" a coulomb), a difference in
/// degF would get the offset of a temperature, and such libraries read data files while running. A closed table is
/// also the only way to say "allowed here: ..." and to write the pattern of a field into the schema.
namespace noonhouse {

inline constexpr double kJoulesPerKilowattHour = 3.6e6;

/// What a value measures. It decides which units are allowed and which SI unit the value has inside.
enum class Dimension {
  none,                    ///< a bare number
  share,                   ///< 1; written in %
  length,                  ///< m
  area,                    ///< m2
  volume,                  ///< m3
  mass,                    ///< kg
  time,                    ///< s; a duration
  temperature,             ///< K; a point on the scale
  temperature_difference,  ///< K; no offset
  temperature_rate,        ///< K/s
  angle,                   ///< rad
  speed,                   ///< m/s
  pressure,                ///< Pa
  power,                   ///< W
  energy,                  ///< J
  volume_flow,             ///< m3/s; air or water
  mass_flow,               ///< kg/s
  density,                 ///< kg/m3
  area_density,            ///< kg/m2
  irradiance,              ///< W/m2; sun, or a heat flux
  radiant_dose,            ///< J/m2
  photon_flux,             ///< mol/m2/s; photosynthetic light
  photon_dose,             ///< mol/m2
  daily_light,             ///< mol/m2 in one day; written mol/m2/d
  rain_depth,              ///< m; 1 mm on a surface
  rain_rate,               ///< m/s
  thermal_conductivity,    ///< W/m/K
  heat_transfer,           ///< W/m2/K; surface coefficient or U-value
  thermal_resistance,      ///< m2 K/W; R-value
  thermal_conductance,     ///< W/K
  linear_conductance,      ///< W/m/K of an edge or a frame, per length
  heat_capacity,           ///< J/K
  specific_heat,           ///< J/kg/K
  volume_heat_capacity,    ///< J/m3/K; soil, floors
  area_heat_capacity,      ///< J/m2/K; boards, pots
  voltage,                 ///< V
  current,                 ///< A
  electric_charge,         ///< C; written in Ah
  resistance,              ///< ohm
  per_time,                ///< 1/s; air changes, self-discharge
  per_temperature,         ///< 1/K; temperature coefficients, written in %/K
  conductance,             ///< m/s; stomata and boundary layers
  vapour_resistance,       ///< s/m
};

enum class UnitSystem { metric, us };

/// A quantity as read: its SI value, and the unit it was written in.
struct ParsedQuantity {
  double si = 0.0;
  std::string unit;  ///< canonical spelling, such as "L/min"; empty for a bare number
};

/// Why a text is not a quantity of the dimension asked for.
struct QuantityFailure {
  ErrorKind kind = ErrorKind::wrong_unit;  ///< wrong_type: no number; wrong_unit: the unit; out_of_range: below 0 K
  std::string read;                        ///< the text as read
  std::string reason;                      ///< one sentence without a full stop, names the text and what is wrong
  std::vector<std::string> allowed;        ///< canonical units of this dimension
  std::string suggestion;                  ///< such as "38 degC"; empty where there is none
  /// The reason, the allowed units and the suggestion in one line.
  std::string message() const;
};

/// Reads "2.5 L/min" as a quantity of a dimension. A number is digits with an optional sign, point and exponent;
/// "010" is ten. The unit is required unless the dimension is `none`, and is exact about case (m is not M), but
/// "m2", "m^2" and "m²" are one unit, as are "degC" and "°C", "W/m2/K" and "W/(m2 K)".
/// Refuses: C and F alone (degC, degF), a decimal comma, a unit of another dimension (says which), below 0 K.
/// A suggestion for a number without a unit has `usual`, or the dimension's usual_unit where none is given.
std::variant<ParsedQuantity, QuantityFailure> parse_quantity(std::string_view text, Dimension dimension,
                                                             std::string_view usual = {});

/// The unit that people commonly write for a dimension, such as "L/min"; empty for `none`.
std::string usual_unit(Dimension dimension);

/// parse_quantity for text that the program itself wrote: the SI value; text that does not parse is a broken invariant.
double known_quantity(std::string_view text, Dimension dimension);

/// The value for people, in the unit they expect in their system, with three significant digits (temperatures: one
/// decimal; whole numbers are never rounded), such as "2.5 L/min" or "100.4 °F". Not a number shows as "none".
std::string format_quantity(double si, Dimension dimension, UnitSystem system);

/// The shortest text, in a common unit of the system, that parse_quantity reads back as exactly this value, bit for
/// bit; in the SI unit where no common unit does. The value must be finite.
std::string exact_quantity(double si, Dimension dimension, UnitSystem system = UnitSystem::metric);

/// The value in a named unit of the dimension with up to six significant digits, such as "2.6 m".
std::string quantity_in(double si, Dimension dimension, std::string_view unit);

/// A limit as a person reads it who wrote a value in that unit: in it where that is a plain number, such as "2.6 m";
/// else in the unit it is commonly given in, such as "1 s" for 0.0167 min; both where the first is still of a handy
/// size, such as "1440 min (24 h)".
std::string limit_text(double si, Dimension dimension, std::string_view unit);

/// Canonical spellings of the units allowed for a dimension, the SI unit first; empty for `none`.
std::vector<std::string> units_of(Dimension dimension);

/// The dimension in words, such as "volume flow".
std::string dimension_name(Dimension dimension);
/// The same with its article: "a volume flow", "an area".
std::string a_dimension(Dimension dimension);

/// An ECMA-262 regular expression that matches what parse_quantity accepts for the dimension (not the limit at 0 K).
std::string quantity_pattern(Dimension dimension);

}  // namespace noonhouse
