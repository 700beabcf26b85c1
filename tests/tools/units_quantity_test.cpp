// SPDX-License-Identifier: Apache-2.0
// Long because it holds the tables of published factors.
#include <gtest/gtest.h>

#include <bit>
#include <cmath>
#include <limits>
#include <numbers>
#include <random>
#include <regex>

#include "tools/units/nearest.hpp"
#include "tools/units/unit_table.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {
namespace {

using enum Dimension;

double si_of(const std::string& text, Dimension dimension) {
  const auto parsed = parse_quantity(text, dimension);
  if (const auto* failure = std::get_if<QuantityFailure>(&parsed)) {
    ADD_FAILURE() << text << ": " << failure->message();
    return std::numeric_limits<double>::quiet_NaN();
  }
  return std::get<ParsedQuantity>(parsed).si;
}

QuantityFailure failure_of(const std::string& text, Dimension dimension) {
  const auto parsed = parse_quantity(text, dimension);
  if (std::holds_alternative<ParsedQuantity>(parsed)) {
    ADD_FAILURE() << text << " was read";
    return {};
  }
  return std::get<QuantityFailure>(parsed);
}

struct PrintedFactor {
  const char* text;
  Dimension dimension;
  double si;  ///< seven printed digits
};

// NIST Special Publication 811 (2008 edition), appendix B.8, "Factors for units listed alphabetically": seven printed
// digits, typed from memory; the gallon per minute was compared with a published transcription.
constexpr PrintedFactor kPrinted[] = {
    {"1 gpm", volume_flow, 6.309020E-05},
    {"1 gal/d", volume_flow, 4.381264E-08},
    {"1 cfm", volume_flow, 4.719474E-04},
    {"1 ft3/s", volume_flow, 2.831685E-02},
    {"1 gal", volume, 3.785412E-03},
    {"1 qt", volume, 9.463529E-04},
    {"1 pt", volume, 4.731765E-04},
    {"1 fl oz", volume, 2.957353E-05},
    {"1 in3", volume, 1.638706E-05},
    {"1 ft3", volume, 2.831685E-02},
    {"1 yd3", volume, 7.645549E-01},
    {"1 ft2", area, 9.290304E-02},
    {"1 in2", area, 6.451600E-04},
    {"1 yd2", area, 8.361274E-01},
    {"1 mi", length, 1.609344E+03},
    {"1 yd", length, 9.144000E-01},
    {"1 lb", mass, 4.535924E-01},
    {"1 oz", mass, 2.834952E-02},
    {"1 psi", pressure, 6.894757E+03},
    {"1 inH2O", pressure, 2.490889E+02},
    {"1 ftH2O", pressure, 2.989067E+03},
    {"1 inHg", pressure, 3.386389E+03},
    {"1 mmHg", pressure, 1.333224E+02},
    {"1 mph", speed, 4.470400E-01},
    {"1 kn", speed, 5.144444E-01},
    {"1 ft/min", speed, 5.080000E-03},
    {"1 km/h", speed, 2.777778E-01},
    {"1 BTU", energy, 1.055056E+03},
    {"1 BTU/h", power, 2.930711E-01},
    {"1 hp", power, 7.456999E+02},
    {"1 lb/h", mass_flow, 1.259979E-04},
    {"1 lb/ft3", density, 1.601846E+01},
    {"1 lb/ft2", area_density, 4.882428E+00},
    {"1 oz/yd2", area_density, 3.390575E-02},
    {"1 BTU/h/ft2", irradiance, 3.154591E+00},
    {"1 BTU/ft2", radiant_dose, 1.135653E+04},
    {"1 BTU/h/ft2/degF", heat_transfer, 5.678263E+00},
    {"1 BTU/h/ft/degF", thermal_conductivity, 1.730735E+00},
    {"1 BTU in/h/ft2/degF", thermal_conductivity, 1.442279E-01},
    {"1 ft2 degF h/BTU", thermal_resistance, 1.761102E-01},
    {"1 BTU/degF", heat_capacity, 1.899101E+03},
    {"1 BTU/lb/degF", specific_heat, 4.186800E+03},
    {"1 deg", angle, 1.745329E-02},
};

TEST(UnitsQuantity, FactorsAgreeWithThePublishedTableToItsPrintedDigits) {
  for (const PrintedFactor& row : kPrinted) {
    const double half_digit = 0.5001 * std::pow(10.0, std::floor(std::log10(row.si)) - 6.0);
    EXPECT_NEAR(si_of(row.text, row.dimension), row.si, half_digit) << row.text;
  }
}

struct ExactValue {
  const char* text;
  Dimension dimension;
  double si;
};

// Exact by definition (NIST SP 811, B.8 bold factors; prefixes), so the nearest double is demanded.
constexpr ExactValue kExact[] = {
    {"2.5 L/min", volume_flow, 2.5 / 60'000.0},
    {"300 L", volume, 0.3},
    {"300L", volume, 0.3},
    {"1 in", length, 0.0254},
    {"6 ft", length, 1.8288},
    {"12 mm", rain_depth, 0.012},
    {"38 degC", temperature, 311.15},
    {"38 °C", temperature, 311.15},
    {"-40 degC", temperature, 233.15},
    {"-40 degF", temperature, 233.15},
    {"32 degF", temperature, 273.15},
    {"212 °F", temperature, 373.15},
    {"3 K", temperature_difference, 3.0},
    {"3 degC", temperature_difference, 3.0},
    {"9 degF", temperature_difference, 5.0},
    {"0 K", temperature, 0.0},
    {"100 %", share, 1.0},
    {"85%", share, 0.85},
    {"1.5 kWh", energy, 5.4e6},
    {"100 Ah", electric_charge, 360'000.0},
    {"90 s", time, 90.0},
    {"15 min", time, 900.0},
    {"1 h", time, 3600.0},
    {"3 days", time, 259'200.0},
    {"4.2 W/m2/K", heat_transfer, 4.2},
    {"4.2 W/(m² K)", heat_transfer, 4.2},
    {"4.2 W/m^2K", heat_transfer, 4.2},
    {"2.0 MJ/m3/K", volume_heat_capacity, 2.0e6},
    {"2000 kJ/(m³ K)", volume_heat_capacity, 2.0e6},
    {"15 kJ/m2/K", area_heat_capacity, 15'000.0},
    {"0.04 MJ/(m² K)", area_heat_capacity, 40'000.0},
    {"50 m²", area, 50.0},
    {"20 µmol/m²/s", photon_flux, 2e-5},
    {"0.4 %/K", per_temperature, 0.004},
    {"1013.25 hPa", pressure, 101'325.0},
    {"3 bar", pressure, 300'000.0},
    {"010 L", volume, 0.010},
    {"1e3 W", power, 1000.0},
    {"+5 m", length, 5.0},
    {".5 m", length, 0.5},
    {"7", none, 7.0},
    {"-0.25", none, -0.25},
    {"180 deg", angle, std::numbers::pi},
};

TEST(UnitsQuantity, ValuesExactByDefinitionAreTheNearestDouble) {
  for (const ExactValue& row : kExact) EXPECT_EQ(si_of(row.text, row.dimension), row.si) << row.text;
}

struct Refused {
  const char* text;
  Dimension dimension;
  ErrorKind kind;
  const char* says;
  const char* suggestion;
};

constexpr Refused kRefused[] = {
    {"2.5", volume_flow, ErrorKind::wrong_unit, "has no unit", "2.5 L/min"},
    {"0.8", share, ErrorKind::wrong_unit, "has no unit", "80 %"},
    {"38 C", temperature, ErrorKind::wrong_unit, "alone is not a unit", "38 degC"},
    {"100 F", temperature, ErrorKind::wrong_unit, "alone is not a unit", "100 degF"},
    {"5 F", temperature_difference, ErrorKind::wrong_unit, "alone is not a unit", "5 degF"},
    {"6 ft", volume, ErrorKind::wrong_unit, "\"ft\" is a unit of length, and this is a volume", ""},
    {"3 m", time, ErrorKind::wrong_unit, "unit of length", ""},
    {"100 Ah", energy, ErrorKind::wrong_unit, "this is an energy; times volts: 100 Ah at 12 V is 1200 Wh", ""},
    {"7500 mA h", energy, ErrorKind::wrong_unit, "times volts: 7500 mAh at 12 V is 90 Wh", ""},
    {"3 L", none, ErrorKind::wrong_unit, "a bare number belongs here", ""},
    {"5 kwh", energy, ErrorKind::wrong_unit, "not a unit known here", "5 kWh"},
    {"5 l/mn", volume_flow, ErrorKind::wrong_unit, "not a unit known here", "5 L/min"},
    {"5 M", length, ErrorKind::wrong_unit, "not a unit known here", "5 m"},
    {"5 gall", volume, ErrorKind::wrong_unit, "not a unit known here", "5 gal"},
    {"2,5 L", volume, ErrorKind::wrong_type, "comma", "2.5 L"},
    {"lots", volume, ErrorKind::wrong_type, "is not a number and its unit", ""},
    {"", volume, ErrorKind::wrong_type, "is not a number", ""},
    {"nan m", length, ErrorKind::wrong_type, "is not a number", ""},
    {"inf", none, ErrorKind::wrong_type, "is not a number", ""},
    {"1e999 m", length, ErrorKind::wrong_type, "is not a number", ""},
    {"+-3 m", length, ErrorKind::wrong_type, "is not a number", ""},
    {"0x10 m", length, ErrorKind::wrong_unit, "not a unit known here", ""},
    {"-1 K", temperature, ErrorKind::out_of_range, "below absolute zero", ""},
    {"-300 degC", temperature, ErrorKind::out_of_range, "below absolute zero", ""},
};

TEST(UnitsQuantity, RefusalsSayWhatIsWrongAndSuggest) {
  for (const Refused& row : kRefused) {
    const QuantityFailure failure = failure_of(row.text, row.dimension);
    EXPECT_EQ(failure.kind, row.kind) << row.text;
    EXPECT_EQ(failure.read, row.text);
    EXPECT_NE(failure.reason.find(row.says), std::string::npos) << row.text << ": " << failure.reason;
    EXPECT_EQ(failure.suggestion, row.suggestion) << row.text;
  }
}

TEST(UnitsQuantity, RefusalListsTheAllowedUnitsInItsMessage) {
  const std::string message = failure_of("3 m", time).message();
  EXPECT_NE(message.find("allowed: s, ms, min, h, d, wk"), std::string::npos) << message;
}

TEST(UnitsQuantity, NoSpellingMeansTwoUnitsOfOneDimension) {
  for (const UnitRow& row : unit_rows())
    for (const std::string& spelling : spellings(row)) {
      EXPECT_EQ(find_unit(row.dimension, spelling), &row) << spelling;
      EXPECT_EQ(normalised_unit(spelling), spelling) << "spelt in the table as people's variants are normalised to";
    }
}

TEST(UnitsQuantity, EveryDimensionHasANameAndShownUnitsOfItsOwn) {
  for (const DimensionRow& row : dimension_rows()) {
    if (row.dimension == none) continue;
    const auto units = units_of(row.dimension);
    ASSERT_FALSE(units.empty()) << row.name;
    for (const UnitSystem system : {UnitSystem::metric, UnitSystem::us})
      EXPECT_FALSE(format_quantity(1.0, row.dimension, system).empty()) << row.name;
  }
  for (const ShownRow& row : shown_rows()) EXPECT_NE(find_unit(row.dimension, row.unit), nullptr) << row.unit;
}

TEST(UnitsQuantity, ExactTextReadsBackBitForBit) {
  std::mt19937_64 bits(20250714);
  for (const DimensionRow& row : dimension_rows()) {
    for (int i = 0; i < 300; ++i) {
      const int exponent = static_cast<int>(bits() % 24) - 12;
      const double mantissa = static_cast<double>(bits() >> 11) / 9007199254740992.0;
      double si = std::ldexp(0.5 + mantissa / 2.0, exponent);
      if (row.dimension != temperature && i % 2 == 1) si = -si;
      for (const UnitSystem system : {UnitSystem::metric, UnitSystem::us}) {
        const std::string text = exact_quantity(si, row.dimension, system);
        const double back = si_of(text, row.dimension);
        ASSERT_EQ(std::bit_cast<std::uint64_t>(back), std::bit_cast<std::uint64_t>(si)) << row.name << ": " << text;
      }
    }
  }
}

TEST(UnitsQuantity, ExactTextIsWhatAPersonWouldWrite) {
  EXPECT_EQ(exact_quantity(311.15, temperature), "38 degC");
  EXPECT_EQ(exact_quantity(si_of("100 degF", temperature), temperature, UnitSystem::us), "100 degF");
  EXPECT_EQ(exact_quantity(si_of("0 degC", temperature), temperature), "0 degC");
  EXPECT_EQ(exact_quantity(0.0, volume), "0 L");
  EXPECT_EQ(exact_quantity(0.3, volume), "300 L");
  EXPECT_EQ(exact_quantity(2.5 / 60'000.0, volume_flow), "2.5 L/min");
  EXPECT_EQ(exact_quantity(1.0, share), "100 %");
  EXPECT_EQ(exact_quantity(900.0, time), "15 min");
  EXPECT_EQ(exact_quantity(90.0, time), "90 s");
  EXPECT_EQ(exact_quantity(0.0, length), "0 m");
  EXPECT_EQ(exact_quantity(0.004, per_temperature), "0.4 %/K");
}

TEST(UnitsQuantity, ShownTextHasSensibleDigitsAndTheUnitsOfTheSystem) {
  EXPECT_EQ(format_quantity(311.15, temperature, UnitSystem::metric), "38.0 °C");
  EXPECT_EQ(format_quantity(311.15, temperature, UnitSystem::us), "100.4 °F");
  EXPECT_EQ(format_quantity(273.14, temperature, UnitSystem::metric), "0.0 °C");  // never "-0.0"
  EXPECT_EQ(format_quantity(5.0, temperature_difference, UnitSystem::us), "9 °F");
  EXPECT_EQ(format_quantity(1.234567, volume, UnitSystem::metric), "1235 L");
  EXPECT_EQ(format_quantity(12.34567, volume, UnitSystem::metric), "12.3 m³");
  EXPECT_EQ(format_quantity(0.3, volume, UnitSystem::us), "79.3 gal");
  EXPECT_EQ(format_quantity(2.5 / 60'000.0, volume_flow, UnitSystem::metric), "2.5 L/min");
  EXPECT_EQ(format_quantity(0.0, volume, UnitSystem::metric), "0 L");
  EXPECT_EQ(format_quantity(0.8, share, UnitSystem::metric), "80 %");
  EXPECT_EQ(format_quantity(-3600.0 * 250.0, energy, UnitSystem::metric), "-250 Wh");
  EXPECT_EQ(format_quantity(std::nan(""), energy, UnitSystem::metric), "none");
  EXPECT_EQ(format_quantity(1234.0, none, UnitSystem::metric), "1234");
  EXPECT_EQ(quantity_in(2.6, length, "m"), "2.6 m");
}

TEST(UnitsQuantity, LimitsStandInTheUnitThatWasWrittenOrTheUsualOne) {
  EXPECT_EQ(limit_text(2.6, length, "m"), "2.6 m");
  EXPECT_EQ(limit_text(1.0, time, "min"), "1 s");
  EXPECT_EQ(limit_text(86400.0, time, "h"), "24 h");
  EXPECT_EQ(limit_text(86400.0, time, "s"), "86400 s (24 h)");
  EXPECT_EQ(limit_text(86400.0, time, "min"), "1440 min (24 h)");
  EXPECT_EQ(limit_text(273.15, temperature, "degC"), "0 degC");
  EXPECT_EQ(limit_text(343.15, temperature, "K"), "343.15 K");
  EXPECT_EQ(limit_text(5000.0, length, "ft"), "16404.2 ft (5000 m)");
  EXPECT_EQ(limit_text(1000.0, volume, "L"), "1000 m3");
  EXPECT_EQ(limit_text(1.0, energy, "kWh"), "1 J");
  EXPECT_EQ(limit_text(0.0, volume_flow, "gpm"), "0 gpm");
  EXPECT_EQ(limit_text(0.3, none, ""), "0.3");
}

TEST(UnitsQuantity, ANumberAloneIsOfferedTheUnitThatIsUsualThere) {
  const auto offered = [](const char* text, Dimension dimension, const char* usual) {
    return std::get<QuantityFailure>(parse_quantity(text, dimension, usual)).suggestion;
  };
  EXPECT_EQ(offered("24", time, "h"), "24 h");
  EXPECT_EQ(offered("24", time, ""), "24 s");
  EXPECT_EQ(offered("700", volume_flow, "m3/h"), "700 m3/h");
}

TEST(UnitsQuantity, PatternMatchesWhatIsReadAndNothingElse) {
  for (const DimensionRow& row : dimension_rows()) {
    const std::regex pattern(quantity_pattern(row.dimension), std::regex::ECMAScript);
    for (const UnitRow& unit : unit_rows()) {
      for (const std::string& spelling : spellings(unit)) {
        const std::string text = "300.5 " + spelling;  // above absolute zero in every unit
        const bool read = std::holds_alternative<ParsedQuantity>(parse_quantity(text, row.dimension));
        EXPECT_EQ(std::regex_match(text, pattern), read) << row.name << ": " << text;
      }
    }
    EXPECT_EQ(std::regex_match("3", pattern), row.dimension == none);
    EXPECT_FALSE(std::regex_match("x", pattern));
  }
  for (const ExactValue& row : kExact)
    EXPECT_TRUE(std::regex_match(row.text, std::regex(quantity_pattern(row.dimension)))) << row.text;
}

TEST(UnitsNearest, DistanceCountsEdits) {
  EXPECT_EQ(edit_distance("vent", "vent"), 0U);
  EXPECT_EQ(edit_distance("vent", "Vent"), 0U);
  EXPECT_EQ(edit_distance("vent", "vents"), 1U);
  EXPECT_EQ(edit_distance("vetn", "vent"), 1U);
  EXPECT_EQ(edit_distance("kitten", "sitting"), 3U);  // the textbook example of Levenshtein's distance
  EXPECT_EQ(edit_distance("", "abc"), 3U);
}

TEST(UnitsNearest, SuggestsOnlyWhatIsNear) {
  const std::vector<std::string> words = {"area", "height", "width"};
  EXPECT_EQ(nearest_word("heigth", words), "height");
  EXPECT_EQ(nearest_word("aera", words), "area");
  EXPECT_EQ(nearest_word("colour", words), "");
  EXPECT_EQ(nearest_word("s", {"m"}), "");
  EXPECT_EQ(did_you_mean("wdth", words), ", did you mean \"width\"?");
}

}  // namespace
}  // namespace noonhouse
