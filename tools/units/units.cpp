// SPDX-License-Identifier: Apache-2.0
#include "tools/units/units.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>

#include "tools/units/nearest.hpp"
#include "tools/units/unit_table.hpp"

namespace noonhouse {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_space(char c) { return c == ' ' || c == '\t'; }

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && is_space(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_space(text.back())) text.remove_suffix(1);
  return text;
}

struct Number {
  long double value = 0.0L;
  std::string text;       ///< the digits as read
  std::string_view rest;  ///< what follows, trimmed
};

/// The number at the start of a text; nothing where there is none, or where it has no finite value.
std::optional<Number> leading_number(std::string_view text) {
  std::string_view digits = text;
  if (!digits.empty() && digits.front() == '+') digits.remove_prefix(1);
  const std::size_t first = digits.empty() || digits.front() != '-' ? 0 : 1;
  if (first > 0 && digits.size() != text.size()) return std::nullopt;  // "+-3"
  if (digits.size() <= first || (!is_digit(digits[first]) && digits[first] != '.')) return std::nullopt;
  Number number;
  const char* const end = digits.data() + digits.size();
  const auto [stop, error] = std::from_chars(digits.data(), end, number.value);
  if (error != std::errc() || !std::isfinite(static_cast<double>(number.value))) return std::nullopt;
  number.text.assign(digits.data(), stop);
  number.rest = trimmed(std::string_view(stop, static_cast<std::size_t>(end - stop)));
  return number;
}

QuantityFailure failure(ErrorKind kind, std::string_view text, Dimension dimension, std::string reason,
                        std::string suggestion = {}) {
  return {kind, std::string(text), std::move(reason), units_of(dimension), std::move(suggestion)};
}

QuantityFailure no_number(std::string_view text, Dimension dimension, std::string_view usual) {
  const std::string what =
      dimension == Dimension::none ? "a number" : fmt::format("a number and its unit such as \"3 {}\"", usual);
  return failure(ErrorKind::wrong_type, text, dimension, fmt::format("\"{}\" is not {}", text, what));
}

QuantityFailure no_unit(const Number& number, std::string_view text, Dimension dimension, std::string_view usual) {
  const long double value = number.value;
  const bool fraction = dimension == Dimension::share && std::fabs(value) <= 1.0L && value != 0.0L;
  const std::string suggestion = fraction ? fmt::format("{:.6g} %", static_cast<double>(value * 100.0L))
                                          : fmt::format("{} {}", number.text, usual);
  return failure(ErrorKind::wrong_unit, text, dimension,
                 fmt::format("\"{}\" has no unit; {} is written with one", text, a_dimension(dimension)), suggestion);
}

/// The dimensions a spelling is a unit of, in words: "length or depth of rain".
std::string dimensions_of(const std::string& unit) {
  std::vector<std::string> names;
  for (const DimensionRow& row : dimension_rows())
    if (find_unit(row.dimension, unit) != nullptr) names.emplace_back(row.name);
  return fmt::format("{}", fmt::join(names, " or "));
}

/// The canonical spelling nearest to what was read: one that differs only in letter case first.
std::string nearest_unit(const std::string& unit, Dimension dimension) {
  std::vector<std::string> all;
  for (const UnitRow& row : unit_rows()) {
    if (row.dimension != dimension) continue;
    for (const std::string& spelling : spellings(row)) {
      if (edit_distance(unit, spelling) == 0) return row.symbol;
      all.push_back(spelling);
    }
  }
  const UnitRow* row = find_unit(dimension, nearest_word(unit, all));
  return row == nullptr ? std::string() : std::string(row->symbol);
}

/// What a charge comes to as energy, where an energy is asked for: batteries are often sold by their charge.
std::string times_volts(const Number& number, const std::string& unit, Dimension dimension) {
  constexpr double kBatteryVolts = 12.0;
  const UnitRow* charge = find_unit(Dimension::electric_charge, unit);
  if (charge == nullptr || dimension != Dimension::energy) return {};
  return fmt::format("; times volts: {} {} at {:.6g} V is {}", number.text, charge->symbol, kBatteryVolts,
                     quantity_in(kBatteryVolts * to_si(*charge, number.value), Dimension::energy, "Wh"));
}

QuantityFailure wrong_unit(const Number& number, std::string_view text, Dimension dimension) {
  if (number.rest.front() == ',')
    return failure(ErrorKind::wrong_type, text, dimension,
                   fmt::format("\"{}\" has a comma; decimals are written with a point", text),
                   number.text + "." + std::string(trimmed(number.rest.substr(1))));
  const std::string unit = normalised_unit(number.rest);
  const bool warm = dimension == Dimension::temperature || dimension == Dimension::temperature_difference;
  if (warm && (unit == "C" || unit == "F"))
    return failure(ErrorKind::wrong_unit, text, dimension,
                   fmt::format("\"{}\" alone is not a unit of temperature (C is the coulomb, F the farad)", unit),
                   fmt::format("{} deg{}", number.text, unit));
  const std::string other = dimensions_of(unit);
  if (!other.empty()) {
    const std::string wanted =
        dimension == Dimension::none ? "a bare number belongs here" : "this is " + a_dimension(dimension);
    return failure(ErrorKind::wrong_unit, text, dimension,
                   fmt::format("\"{}\" is a unit of {}, and {}{}", number.rest, other, wanted,
                               times_volts(number, unit, dimension)));
  }
  const std::string nearest = nearest_unit(unit, dimension);
  return failure(ErrorKind::wrong_unit, text, dimension, fmt::format("\"{}\" is not a unit known here", number.rest),
                 nearest.empty() ? nearest : fmt::format("{} {}", number.text, nearest));
}

std::string escaped(const std::string& spelling) {
  std::string pattern;
  for (std::size_t i = 0; i < spelling.size(); ++i) {
    const char c = spelling[i];
    const bool after_letter = i > 0 && std::isalpha(static_cast<unsigned char>(spelling[i - 1])) != 0;
    const bool power = after_letter && (c == '2' || c == '3') && (i + 1 == spelling.size() || spelling[i + 1] != 'O');
    if (power) {
      pattern += c == '2' ? "(?:\\^?2|²)" : "(?:\\^?3|³)";
    } else if (spelling.compare(i, 3, "deg") == 0 && spelling.compare(i, 5, "degre") != 0) {
      pattern += "(?:deg|°)";
      i += 2;
    } else if (c == 'u' && i == 0 && spelling[1] == 'm') {
      pattern += "(?:u|µ|μ)";
    } else if (c == ' ') {
      pattern += " +";
    } else {
      if (c == '(' || c == ')' || c == '/') pattern += '\\';
      pattern += c;
    }
  }
  return pattern;
}

}  // namespace

std::string QuantityFailure::message() const {
  std::string text = reason;
  if (!allowed.empty()) text += fmt::format("; allowed: {}", fmt::join(allowed, ", "));
  if (!suggestion.empty()) text += fmt::format("; did you mean \"{}\"?", suggestion);
  return text;
}

std::string usual_unit(Dimension dimension) {
  std::string unit;
  for (const ShownRow& row : shown_rows())
    if (row.dimension == dimension && row.system == UnitSystem::metric && row.from <= 1.0) unit = row.unit;
  return unit;
}

std::variant<ParsedQuantity, QuantityFailure> parse_quantity(std::string_view text, Dimension dimension,
                                                             std::string_view usual) {
  const std::string_view body = trimmed(text);
  const std::string example = usual.empty() ? usual_unit(dimension) : std::string(usual);
  const std::optional<Number> number = leading_number(body);
  if (!number) return no_number(body, dimension, example);
  if (dimension == Dimension::none) {
    if (!number->rest.empty()) return wrong_unit(*number, body, dimension);
    return ParsedQuantity{static_cast<double>(number->value), ""};
  }
  if (number->rest.empty()) return no_unit(*number, body, dimension, example);
  const UnitRow* row = find_unit(dimension, normalised_unit(number->rest));
  if (row == nullptr) return wrong_unit(*number, body, dimension);
  const double si = to_si(*row, number->value);
  if (!std::isfinite(si)) return no_number(body, dimension, example);
  if (dimension == Dimension::temperature && si < 0.0)
    return failure(ErrorKind::out_of_range, body, dimension, fmt::format("\"{}\" is below absolute zero", body));
  return ParsedQuantity{si, row->symbol};
}

double known_quantity(std::string_view text, Dimension dimension) {
  const auto parsed = parse_quantity(text, dimension);
  const ParsedQuantity* quantity = std::get_if<ParsedQuantity>(&parsed);
  NOON_ASSERT(quantity != nullptr);
  return quantity->si;
}

std::vector<std::string> units_of(Dimension dimension) {
  std::vector<std::string> units;
  for (const UnitRow& row : unit_rows())
    if (row.dimension == dimension) units.emplace_back(row.symbol);
  return units;
}

std::string dimension_name(Dimension dimension) {
  for (const DimensionRow& row : dimension_rows())
    if (row.dimension == dimension) return row.name;
  NOON_ASSERT(!"a dimension without a name");
}

std::string a_dimension(Dimension dimension) {
  const std::string name = dimension_name(dimension);
  const bool vowel = std::string_view("aeiou").find(name.front()) != std::string_view::npos;
  return (vowel ? "an " : "a ") + name;
}

std::string quantity_pattern(Dimension dimension) {
  std::vector<std::string> alternatives;
  for (const UnitRow& row : unit_rows())
    if (row.dimension == dimension)
      for (const std::string& spelling : spellings(row)) alternatives.push_back(escaped(spelling));
  const std::string number = R"(^[ \t]*(?:\+|-)?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?[ \t]*)";
  if (alternatives.empty()) return number + "$";
  return fmt::format("{}(?:{})[ \\t]*$", number, fmt::join(alternatives, "|"));
}

}  // namespace noonhouse
