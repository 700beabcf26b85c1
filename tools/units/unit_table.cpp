// SPDX-License-Identifier: Apache-2.0
// Long because it is one table, a line a unit. Customary factors: NIST Special Publication 811 (2008), appendix B.8;
// those derived from the foot, pound and gallon are written as the exact product.
#include "tools/units/unit_table.hpp"

namespace noonhouse {
namespace {

constexpr long double kFoot = 0.3048L;            // m, exact
constexpr long double kPound = 0.45359237L;       // kg, exact
constexpr long double kGallon = 3.785411784e-3L;  // m3, exact: 231 cubic inches
constexpr long double kBtu = 1055.05585262L;      // J, exact: International Table
constexpr long double kFahrenheit = 5.0L / 9.0L;  // K
constexpr long double kExactPi = 3.141592653589793238462643L;
constexpr long double kSquareFoot = kFoot * kFoot;
constexpr long double kCubicFoot = kFoot * kFoot * kFoot;
constexpr long double kPoundForce = kPound * 9.80665L;  // N, exact
constexpr long double kHour = 3600.0L, kDayS = 86400.0L;

using enum Dimension;

// clang-format off
constexpr UnitRow kUnits[] = {
    {share, "%", "percent", 1, 100},

    {length, "m", "metre|metres|meter|meters", 1, 1},
    {length, "mm", "", 1, 1000},
    {length, "cm", "", 1, 100},
    {length, "km", "", 1000, 1},
    {length, "um", "", 1, 1'000'000},
    {length, "in", "inch|inches", 254, 10'000},
    {length, "ft", "foot|feet", 3048, 10'000},
    {length, "yd", "yard|yards", 9144, 10'000},
    {length, "mi", "mile|miles", 1'609'344, 1000},

    {area, "m2", "sq m", 1, 1},
    {area, "cm2", "sq cm", 1, 10'000},
    {area, "mm2", "sq mm", 1, 1'000'000},
    {area, "in2", "sq in", 254 * 254, 100'000'000},
    {area, "ft2", "sq ft", 3048 * 3048, 100'000'000},
    {area, "yd2", "sq yd", 9144 * 9144, 100'000'000},

    {volume, "m3", "cu m", 1, 1},
    {volume, "L", "l|litre|litres|liter|liters", 1, 1000},
    {volume, "mL", "ml", 1, 1'000'000},
    {volume, "cm3", "", 1, 1'000'000},
    {volume, "gal", "US gal|gallon|gallons", 3'785'411'784.0L, 1e12L},
    {volume, "qt", "quart|quarts", 3'785'411'784.0L, 4e12L},
    {volume, "pt", "pint|pints", 3'785'411'784.0L, 8e12L},
    {volume, "fl oz", "", 3'785'411'784.0L, 128e12L},
    {volume, "in3", "cu in", 16'387'064.0L, 1e12L},
    {volume, "ft3", "cu ft", kCubicFoot, 1},
    {volume, "yd3", "cu yd", 27 * kCubicFoot, 1},

    {mass, "kg", "", 1, 1},
    {mass, "g", "", 1, 1000},
    {mass, "mg", "", 1, 1'000'000},
    {mass, "t", "tonne|tonnes", 1000, 1},
    {mass, "lb", "lbs|pound|pounds", 45'359'237, 100'000'000},
    {mass, "oz", "ounce|ounces", 45'359'237, 1'600'000'000},

    {time, "s", "sec|second|seconds", 1, 1},
    {time, "ms", "", 1, 1000},
    {time, "min", "minute|minutes", 60, 1},
    {time, "h", "hr|hrs|hour|hours", kHour, 1},
    {time, "d", "day|days", kDayS, 1},
    {time, "wk", "week|weeks", 7 * kDayS, 1},

    {temperature, "K", "", 1, 1},
    {temperature, "degC", "deg C", 1, 1, 273.15L},
    {temperature, "degF", "deg F", 5, 9, 459.67L},

    {temperature_difference, "K", "", 1, 1},
    {temperature_difference, "degC", "deg C", 1, 1},
    {temperature_difference, "degF", "deg F", 5, 9},

    {temperature_rate, "K/s", "degC/s", 1, 1},
    {temperature_rate, "K/min", "degC/min", 1, 60},
    {temperature_rate, "K/h", "degC/h", 1, kHour},
    {temperature_rate, "degF/min", "", 5, 540},
    {temperature_rate, "degF/h", "", 5, 9 * kHour},

    {angle, "rad", "", 1, 1},
    {angle, "deg", "degree|degrees", kExactPi, 180},

    {speed, "m/s", "", 1, 1},
    {speed, "km/h", "kph", 1, 3.6L},
    {speed, "mph", "mi/h", 44'704, 100'000},
    {speed, "ft/s", "fps", 3048, 10'000},
    {speed, "ft/min", "fpm", 3048, 600'000},
    {speed, "kn", "knot|knots", 1852, kHour},

    {pressure, "Pa", "", 1, 1},
    {pressure, "hPa", "", 100, 1},
    {pressure, "kPa", "", 1000, 1},
    {pressure, "MPa", "", 1'000'000, 1},
    {pressure, "mbar", "", 100, 1},
    {pressure, "bar", "", 100'000, 1},
    {pressure, "psi", "lbf/in2", kPoundForce, 6.4516e-4L},
    {pressure, "mH2O", "m H2O", 9806.65L, 1},
    {pressure, "mmHg", "mm Hg", 133.3224L, 1},
    {pressure, "inH2O", "in H2O", 249.0889L, 1},
    {pressure, "ftH2O", "ft H2O", 2989.067L, 1},
    {pressure, "inHg", "in Hg", 3386.389L, 1},

    {power, "W", "watt|watts", 1, 1},
    {power, "mW", "", 1, 1000},
    {power, "kW", "", 1000, 1},
    {power, "BTU/h", "Btu/h|BTU/hr|Btu/hr", kBtu, kHour},
    {power, "hp", "", 550 * kFoot * kPoundForce, 1},

    {energy, "J", "", 1, 1},
    {energy, "kJ", "", 1000, 1},
    {energy, "MJ", "", 1'000'000, 1},
    {energy, "Wh", "W h", kHour, 1},
    {energy, "kWh", "kW h", 1000 * kHour, 1},
    {energy, "BTU", "Btu", kBtu, 1},

    {volume_flow, "m3/s", "", 1, 1},
    {volume_flow, "m3/min", "", 1, 60},
    {volume_flow, "m3/h", "", 1, kHour},
    {volume_flow, "L/s", "l/s", 1, 1000},
    {volume_flow, "L/min", "l/min|lpm", 1, 60'000},
    {volume_flow, "L/h", "l/h|lph", 1, 1000 * kHour},
    {volume_flow, "L/d", "l/d|L/day|l/day", 1, 1000 * kDayS},
    {volume_flow, "mL/min", "ml/min", 1, 60'000'000},
    {volume_flow, "mL/h", "ml/h", 1, 1'000'000 * kHour},
    {volume_flow, "mL/d", "ml/d|mL/day|ml/day", 1, 1'000'000 * kDayS},
    {volume_flow, "gpm", "gal/min", kGallon, 60},
    {volume_flow, "gph", "gal/h|gal/hr", kGallon, kHour},
    {volume_flow, "gal/d", "gal/day|gpd", kGallon, kDayS},
    {volume_flow, "cfm", "ft3/min|cu ft/min", kCubicFoot, 60},
    {volume_flow, "ft3/s", "cfs", kCubicFoot, 1},

    {mass_flow, "kg/s", "", 1, 1},
    {mass_flow, "kg/h", "", 1, kHour},
    {mass_flow, "g/s", "", 1, 1000},
    {mass_flow, "g/min", "", 1, 60'000},
    {mass_flow, "g/h", "", 1, 1000 * kHour},
    {mass_flow, "lb/h", "lb/hr", kPound, kHour},
    {mass_flow, "lb/min", "", kPound, 60},

    {density, "kg/m3", "", 1, 1},
    {density, "g/m3", "", 1, 1000},
    {density, "g/cm3", "", 1000, 1},
    {density, "kg/L", "kg/l", 1000, 1},
    {density, "g/L", "g/l", 1, 1},
    {density, "lb/ft3", "", kPound, kCubicFoot},

    {area_density, "kg/m2", "", 1, 1},
    {area_density, "g/m2", "", 1, 1000},
    {area_density, "lb/ft2", "", kPound, kSquareFoot},
    {area_density, "oz/yd2", "", kPound, 144 * kSquareFoot},

    {irradiance, "W/m2", "", 1, 1},
    {irradiance, "kW/m2", "", 1000, 1},
    {irradiance, "BTU/h/ft2", "Btu/h/ft2|BTU/(h ft2)|Btu/(h ft2)", kBtu, kHour * kSquareFoot},

    {radiant_dose, "J/m2", "", 1, 1},
    {radiant_dose, "kJ/m2", "", 1000, 1},
    {radiant_dose, "MJ/m2", "", 1'000'000, 1},
    {radiant_dose, "Wh/m2", "", kHour, 1},
    {radiant_dose, "kWh/m2", "", 1000 * kHour, 1},
    {radiant_dose, "BTU/ft2", "Btu/ft2", kBtu, kSquareFoot},

    {photon_flux, "mol/m2/s", "mol/(m2 s)", 1, 1},
    {photon_flux, "umol/m2/s", "umol/(m2 s)", 1, 1'000'000},
    {photon_dose, "mol/m2", "", 1, 1},
    {photon_dose, "umol/m2", "", 1, 1'000'000},
    {daily_light, "mol/m2/d", "mol/m2/day|mol/(m2 d)|mol/(m2 day)", 1, 1},

    {rain_depth, "m", "", 1, 1},
    {rain_depth, "mm", "", 1, 1000},
    {rain_depth, "cm", "", 1, 100},
    {rain_depth, "in", "inch|inches", 254, 10'000},

    {rain_rate, "m/s", "", 1, 1},
    {rain_rate, "mm/min", "", 1, 60'000},
    {rain_rate, "mm/h", "mm/hr", 1, 1000 * kHour},
    {rain_rate, "mm/d", "mm/day", 1, 1000 * kDayS},
    {rain_rate, "in/h", "in/hr", 254, 10'000 * kHour},
    {rain_rate, "in/d", "in/day", 254, 10'000 * kDayS},

    {thermal_conductivity, "W/m/K", "W/(m K)|W/mK", 1, 1},
    {thermal_conductivity, "BTU/h/ft/degF", "BTU/(h ft degF)", kBtu, kHour * kFoot * kFahrenheit},
    {thermal_conductivity, "BTU in/h/ft2/degF", "BTU in/(h ft2 degF)", kBtu, 12 * kHour * kFoot * kFahrenheit},

    {heat_transfer, "W/m2/K", "W/(m2 K)|W/m2K|W/m2/degC", 1, 1},
    {heat_transfer, "BTU/h/ft2/degF", "BTU/(h ft2 degF)|Btu/h/ft2/degF", kBtu, kHour * kSquareFoot * kFahrenheit},

    {thermal_resistance, "m2 K/W", "m2K/W", 1, 1},
    {thermal_resistance, "ft2 degF h/BTU", "ft2 h degF/BTU|h ft2 degF/BTU", kHour * kSquareFoot * kFahrenheit, kBtu},

    {thermal_conductance, "W/K", "W/degC", 1, 1},
    {thermal_conductance, "BTU/h/degF", "BTU/(h degF)", kBtu, kHour * kFahrenheit},

    {linear_conductance, "W/m/K", "W/(m K)|W/mK", 1, 1},
    {linear_conductance, "BTU/h/ft/degF", "BTU/(h ft degF)", kBtu, kHour * kFoot * kFahrenheit},

    {heat_capacity, "J/K", "", 1, 1},
    {heat_capacity, "kJ/K", "", 1000, 1},
    {heat_capacity, "Wh/K", "", kHour, 1},
    {heat_capacity, "BTU/degF", "", kBtu, kFahrenheit},

    {specific_heat, "J/kg/K", "J/(kg K)", 1, 1},
    {specific_heat, "kJ/kg/K", "kJ/(kg K)", 1000, 1},
    {specific_heat, "BTU/lb/degF", "BTU/(lb degF)", kBtu, kPound * kFahrenheit},

    {volume_heat_capacity, "J/m3/K", "J/(m3 K)", 1, 1},
    {volume_heat_capacity, "kJ/m3/K", "kJ/(m3 K)", 1000, 1},
    {volume_heat_capacity, "MJ/m3/K", "MJ/(m3 K)", 1'000'000, 1},
    {volume_heat_capacity, "BTU/ft3/degF", "BTU/(ft3 degF)", kBtu, kCubicFoot * kFahrenheit},

    {area_heat_capacity, "J/m2/K", "J/(m2 K)", 1, 1},
    {area_heat_capacity, "kJ/m2/K", "kJ/(m2 K)", 1000, 1},
    {area_heat_capacity, "MJ/m2/K", "MJ/(m2 K)", 1'000'000, 1},
    {area_heat_capacity, "BTU/ft2/degF", "BTU/(ft2 degF)", kBtu, kSquareFoot * kFahrenheit},

    {voltage, "V", "volt|volts", 1, 1},
    {voltage, "mV", "", 1, 1000},
    {voltage, "kV", "", 1000, 1},
    {current, "A", "amp|amps", 1, 1},
    {current, "mA", "", 1, 1000},
    {electric_charge, "A s", "As", 1, 1},
    {electric_charge, "Ah", "A h", kHour, 1},
    {electric_charge, "mAh", "mA h", kHour, 1000},
    {resistance, "ohm", "ohms|Ω", 1, 1},
    {resistance, "mohm", "mΩ", 1, 1000},
    {resistance, "kohm", "kΩ", 1000, 1},

    {per_time, "1/s", "/s", 1, 1},
    {per_time, "1/min", "/min", 1, 60},
    {per_time, "1/h", "/h|1/hr|ACH", 1, kHour},
    {per_time, "1/d", "/d|1/day", 1, kDayS},
    {per_time, "%/h", "%/hr", 1, 100 * kHour},
    {per_time, "%/d", "%/day", 1, 100 * kDayS},
    {per_time, "%/month", "", 1, 3000 * kDayS},  // a month of 30 days: common practice, no source

    {per_temperature, "1/K", "/K|1/degC", 1, 1},
    {per_temperature, "%/K", "%/degC", 1, 100},
    {per_temperature, "%/degF", "", 1, 100 * kFahrenheit},

    {conductance, "m/s", "", 1, 1},
    {conductance, "cm/s", "", 1, 100},
    {conductance, "mm/s", "", 1, 1000},
    {vapour_resistance, "s/m", "", 1, 1},
    {vapour_resistance, "s/cm", "", 100, 1},
};

constexpr UnitSystem kM = UnitSystem::metric;
constexpr UnitSystem kU = UnitSystem::us;

constexpr ShownRow kShown[] = {
    {share, kM, "%", 0}, {share, kU, "%", 0},
    {length, kM, "mm", 0}, {length, kM, "m", 0.1}, {length, kM, "km", 10},
    {length, kU, "in", 0}, {length, kU, "ft", 1}, {length, kU, "mi", 5},
    {area, kM, "cm2", 0}, {area, kM, "m2", 0.01}, {area, kU, "in2", 0}, {area, kU, "ft2", 0.5},
    {volume, kM, "mL", 0}, {volume, kM, "L", 0.5}, {volume, kM, "m3", 10},
    {volume, kU, "fl oz", 0}, {volume, kU, "gal", 0.25},
    {mass, kM, "g", 0}, {mass, kM, "kg", 0.5}, {mass, kU, "oz", 0}, {mass, kU, "lb", 1},
    {time, kM, "s", 0}, {time, kM, "min", 2}, {time, kM, "h", 2}, {time, kM, "d", 3},
    {time, kU, "s", 0}, {time, kU, "min", 2}, {time, kU, "h", 2}, {time, kU, "d", 3},
    {temperature, kM, "degC", 0}, {temperature, kU, "degF", 0},
    {temperature_difference, kM, "K", 0}, {temperature_difference, kU, "degF", 0},
    {temperature_rate, kM, "K/h", 0}, {temperature_rate, kU, "degF/h", 0},
    {angle, kM, "deg", 0}, {angle, kU, "deg", 0},
    {speed, kM, "m/s", 0}, {speed, kU, "mph", 0},
    {pressure, kM, "Pa", 0}, {pressure, kM, "kPa", 0.5}, {pressure, kM, "bar", 1.5},
    {pressure, kU, "inH2O", 0}, {pressure, kU, "psi", 0.5},
    {power, kM, "W", 0}, {power, kM, "kW", 2}, {power, kU, "W", 0}, {power, kU, "kW", 2},
    {energy, kM, "J", 0}, {energy, kM, "Wh", 0.1}, {energy, kM, "kWh", 1},
    {energy, kU, "J", 0}, {energy, kU, "Wh", 0.1}, {energy, kU, "kWh", 1},
    {volume_flow, kM, "mL/min", 0}, {volume_flow, kM, "L/min", 0.1}, {volume_flow, kM, "m3/h", 10},
    {volume_flow, kU, "gph", 0}, {volume_flow, kU, "gpm", 0.5}, {volume_flow, kU, "cfm", 20},
    {mass_flow, kM, "g/h", 0}, {mass_flow, kM, "kg/h", 0.5}, {mass_flow, kU, "lb/h", 0},
    {density, kM, "g/m3", 0}, {density, kM, "kg/m3", 0.5}, {density, kU, "lb/ft3", 0},
    {area_density, kM, "g/m2", 0}, {area_density, kM, "kg/m2", 1}, {area_density, kU, "lb/ft2", 0},
    {irradiance, kM, "W/m2", 0}, {irradiance, kU, "W/m2", 0},
    {radiant_dose, kM, "MJ/m2", 0}, {radiant_dose, kU, "BTU/ft2", 0},
    {photon_flux, kM, "umol/m2/s", 0}, {photon_flux, kU, "umol/m2/s", 0},
    {photon_dose, kM, "mol/m2", 0}, {photon_dose, kU, "mol/m2", 0},
    {daily_light, kM, "mol/m2/d", 0}, {daily_light, kU, "mol/m2/d", 0},
    {rain_depth, kM, "mm", 0}, {rain_depth, kU, "in", 0},
    {rain_rate, kM, "mm/h", 0}, {rain_rate, kU, "in/h", 0},
    {thermal_conductivity, kM, "W/m/K", 0}, {thermal_conductivity, kU, "BTU/h/ft/degF", 0},
    {heat_transfer, kM, "W/m2/K", 0}, {heat_transfer, kU, "BTU/h/ft2/degF", 0},
    {thermal_resistance, kM, "m2 K/W", 0}, {thermal_resistance, kU, "ft2 degF h/BTU", 0},
    {thermal_conductance, kM, "W/K", 0}, {thermal_conductance, kU, "BTU/h/degF", 0},
    {linear_conductance, kM, "W/m/K", 0}, {linear_conductance, kU, "BTU/h/ft/degF", 0},
    {heat_capacity, kM, "J/K", 0}, {heat_capacity, kM, "kJ/K", 1}, {heat_capacity, kU, "BTU/degF", 0},
    {specific_heat, kM, "J/kg/K", 0}, {specific_heat, kU, "BTU/lb/degF", 0},
    {volume_heat_capacity, kM, "J/m3/K", 0}, {volume_heat_capacity, kM, "kJ/m3/K", 1},
    {volume_heat_capacity, kM, "MJ/m3/K", 1}, {volume_heat_capacity, kU, "BTU/ft3/degF", 0},
    {area_heat_capacity, kM, "J/m2/K", 0}, {area_heat_capacity, kM, "kJ/m2/K", 1},
    {area_heat_capacity, kM, "MJ/m2/K", 2}, {area_heat_capacity, kU, "BTU/ft2/degF", 0},
    {voltage, kM, "V", 0}, {voltage, kU, "V", 0},
    {current, kM, "mA", 0}, {current, kM, "A", 0.5}, {current, kU, "mA", 0}, {current, kU, "A", 0.5},
    {electric_charge, kM, "mAh", 0}, {electric_charge, kM, "Ah", 0.5},
    {electric_charge, kU, "mAh", 0}, {electric_charge, kU, "Ah", 0.5},
    {resistance, kM, "mohm", 0}, {resistance, kM, "ohm", 0.5},
    {resistance, kU, "mohm", 0}, {resistance, kU, "ohm", 0.5},
    {per_time, kM, "%/d", 0}, {per_time, kM, "1/h", 0.05}, {per_time, kU, "%/d", 0}, {per_time, kU, "1/h", 0.05},
    {per_temperature, kM, "%/K", 0}, {per_temperature, kU, "%/degF", 0},
    {conductance, kM, "mm/s", 0}, {conductance, kU, "mm/s", 0},
    {vapour_resistance, kM, "s/m", 0}, {vapour_resistance, kU, "s/m", 0},
};

constexpr DimensionRow kDimensions[] = {
    {none, "number"}, {share, "share"}, {length, "length"}, {area, "area"}, {volume, "volume"}, {mass, "mass"},
    {time, "duration"}, {temperature, "temperature"}, {temperature_difference, "temperature difference"},
    {temperature_rate, "rate of temperature"}, {angle, "angle"}, {speed, "speed"}, {pressure, "pressure"},
    {power, "power"}, {energy, "energy"}, {volume_flow, "volume flow"}, {mass_flow, "mass flow"},
    {density, "density"}, {area_density, "mass per area"}, {irradiance, "irradiance"},
    {radiant_dose, "energy per area"}, {photon_flux, "flux of light"}, {photon_dose, "amount of light"},
    {daily_light, "light in a day"}, {rain_depth, "depth of rain"}, {rain_rate, "rate of rain"},
    {thermal_conductivity, "thermal conductivity"}, {heat_transfer, "heat transfer coefficient"},
    {thermal_resistance, "thermal resistance"}, {thermal_conductance, "thermal conductance"},
    {linear_conductance, "thermal conductance per length"}, {heat_capacity, "heat capacity"},
    {specific_heat, "specific heat"}, {volume_heat_capacity, "heat capacity per volume"},
    {area_heat_capacity, "heat capacity per area"}, {voltage, "voltage"}, {current, "current"},
    {electric_charge, "electric charge"}, {resistance, "electrical resistance"}, {per_time, "rate per time"},
    {per_temperature, "change per kelvin"}, {conductance, "conductance"}, {vapour_resistance, "vapour resistance"},
};
// clang-format on

}  // namespace

std::span<const UnitRow> unit_rows() { return kUnits; }
std::span<const ShownRow> shown_rows() { return kShown; }
std::span<const DimensionRow> dimension_rows() { return kDimensions; }

}  // namespace noonhouse
