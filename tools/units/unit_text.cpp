// SPDX-License-Identifier: Apache-2.0
// How units are spelt, and how values are written in them.
#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>

#include "tools/units/unit_table.hpp"

namespace noonhouse {
namespace {

void replace_all(std::string& text, std::string_view from, std::string_view to) {
  for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size()))
    text.replace(at, from.size(), to);
}

/// A number with a count of significant digits, without an exponent where that reads well, no trailing zeros.
std::string plain_number(long double value, int digits) {
  char buffer[64];
  const auto written =
      std::to_chars(buffer, buffer + sizeof buffer, value, std::chars_format::scientific, std::max(digits, 1) - 1);
  const std::string text(buffer, written.ptr);
  const std::size_t e = text.find('e');
  const int exponent = std::stoi(text.substr(e + 1));
  std::string sign, mantissa;
  for (const char c : text.substr(0, e)) {
    if (c == '-') sign = "-";
    if (c >= '0' && c <= '9') mantissa += c;
  }
  while (mantissa.size() > 1 && mantissa.back() == '0') mantissa.pop_back();
  if (mantissa == "0") return "0";
  const int count = static_cast<int>(mantissa.size());
  if (exponent < -5 || exponent > 14)
    return sign + mantissa.substr(0, 1) + (count > 1 ? "." + mantissa.substr(1) : "") + fmt::format("e{}", exponent);
  if (exponent < 0) return sign + "0." + std::string(static_cast<std::size_t>(-exponent - 1), '0') + mantissa;
  const auto whole = static_cast<std::size_t>(exponent) + 1;
  if (mantissa.size() <= whole) return sign + mantissa + std::string(whole - mantissa.size(), '0');
  return sign + mantissa.substr(0, whole) + "." + mantissa.substr(whole);
}

/// The unit a value is shown in: the last row whose magnitude it reaches.
const UnitRow& shown_unit(double si, Dimension dimension, UnitSystem system) {
  const UnitRow* best = nullptr;
  for (const ShownRow& row : shown_rows()) {
    if (row.dimension != dimension || row.system != system) continue;
    const UnitRow* unit = find_unit(dimension, row.unit);
    NOON_ASSERT(unit != nullptr);
    const bool zero = si == 0.0 && row.from <= 1.0;  // nothing is shown in a unit of everyday size
    const bool reached = std::fabs(from_si(*unit, si)) >= static_cast<long double>(row.from) * (1.0L - 1e-12L);
    if (best == nullptr || zero || reached) best = unit;
  }
  NOON_ASSERT(best != nullptr);
  return *best;
}

std::string symbol_for_people(const std::string& symbol) {
  std::string text = symbol;
  replace_all(text, "deg", "°");
  replace_all(text, "m2", "m²");
  replace_all(text, "m3", "m³");
  replace_all(text, "ft2", "ft²");
  replace_all(text, "ft3", "ft³");
  replace_all(text, "in2", "in²");
  replace_all(text, "umol", "µmol");
  return text;
}

/// The fewest significant digits, up to a limit, with which a value in a unit reads back bit for bit; 0 for none.
int digits_needed(const UnitRow& unit, double si, int limit) {
  for (int digits = 1; digits <= limit; ++digits) {
    const std::string text = plain_number(from_si(unit, si), digits);
    long double back = 0.0L;
    std::from_chars(text.data(), text.data() + text.size(), back);
    if (to_si(unit, back) == si) return digits;
  }
  return 0;
}

/// The value in a unit; what is left of 0 degC in rounded kelvins is nothing.
long double number_in(const UnitRow& unit, double si) { return to_si(unit, 0.0L) == si ? 0.0L : from_si(unit, si); }

std::string shortest_double(double value) {
  char buffer[32];
  return {buffer, std::to_chars(buffer, buffer + sizeof buffer, value).ptr};
}

}  // namespace

std::vector<std::string> spellings(const UnitRow& row) {
  std::vector<std::string> all{row.symbol};
  const std::string_view aliases = row.aliases;
  for (std::size_t start = 0; start < aliases.size();) {
    const std::size_t stop = std::min(aliases.find('|', start), aliases.size());
    all.emplace_back(aliases.substr(start, stop - start));
    start = stop + 1;
  }
  return all;
}

const UnitRow* find_unit(Dimension dimension, std::string_view spelling) {
  for (const UnitRow& row : unit_rows()) {
    if (row.dimension != dimension) continue;
    const auto all = spellings(row);
    if (std::find(all.begin(), all.end(), spelling) != all.end()) return &row;
  }
  return nullptr;
}

std::string normalised_unit(std::string_view text) {
  std::string unit(text);
  replace_all(unit, "²", "2");
  replace_all(unit, "³", "3");
  replace_all(unit, "^2", "2");
  replace_all(unit, "^3", "3");
  replace_all(unit, "°", "deg");
  replace_all(unit, "µ", "u");
  replace_all(unit, "μ", "u");
  replace_all(unit, "\t", " ");
  while (unit.find("  ") != std::string::npos) replace_all(unit, "  ", " ");
  return unit;
}

std::string format_quantity(double si, Dimension dimension, UnitSystem system) {
  if (std::isnan(si)) return "none";
  if (std::isinf(si)) return si > 0 ? "unlimited" : "-unlimited";
  if (dimension == Dimension::none)
    return plain_number(si, 3 + std::max(0, static_cast<int>(std::log10(std::fabs(si) + 1.0)) - 2));
  const UnitRow& unit = shown_unit(si, dimension, system);
  const long double value = from_si(unit, si);
  if (dimension == Dimension::temperature) {
    const std::string text = fmt::format("{:.1f}", static_cast<double>(value));
    return (text == "-0.0" ? "0.0" : text) + " " + symbol_for_people(unit.symbol);
  }
  const double size = std::fabs(static_cast<double>(value));
  const int whole_digits = size >= 1.0 ? static_cast<int>(std::floor(std::log10(size))) + 1 : 1;
  const std::string text = plain_number(value, std::max(3, whole_digits));
  return dimension == Dimension::angle ? text + "°" : text + " " + symbol_for_people(unit.symbol);
}

std::string exact_quantity(double si, Dimension dimension, UnitSystem system) {
  NOON_ASSERT(std::isfinite(si));
  if (dimension == Dimension::none) return shortest_double(si);
  const UnitRow& usual = shown_unit(si, dimension, system);
  if (to_si(usual, 0.0L) == si) return std::string("0 ") + usual.symbol;  // 0 degC, whose kelvins are rounded
  const auto in_usual = [&](int digits) { return plain_number(from_si(usual, si), digits) + " " + usual.symbol; };
  const int usual_digits = digits_needed(usual, si, 12);
  if (usual_digits > 0 && usual_digits <= 4) return in_usual(usual_digits);
  const UnitRow* best = nullptr;
  int least = 10;
  for (const ShownRow& row : shown_rows()) {
    if (row.dimension != dimension || row.system != system) continue;
    const UnitRow* unit = find_unit(dimension, row.unit);
    const int digits = digits_needed(*unit, si, least - 1);
    if (digits > 0) {
      best = unit;
      least = digits;
    }
  }
  if (best != nullptr) return plain_number(from_si(*best, si), least) + " " + best->symbol;
  if (usual_digits > 0) return in_usual(usual_digits);
  const UnitRow& base = *find_unit(dimension, units_of(dimension).front());
  if (to_si(base, static_cast<long double>(si)) == si && base.numerator == base.denominator)
    return shortest_double(si) + " " + base.symbol;
  const int digits = digits_needed(base, si, 21);
  NOON_ASSERT(digits > 0);
  return plain_number(from_si(base, si), digits) + " " + base.symbol;
}

std::string quantity_in(double si, Dimension dimension, std::string_view unit) {
  if (dimension == Dimension::none) return plain_number(si, 6);
  const UnitRow* row = find_unit(dimension, unit);
  NOON_ASSERT(row != nullptr);
  return plain_number(number_in(*row, si), 6) + " " + row->symbol;
}

std::string limit_text(double si, Dimension dimension, std::string_view unit) {
  std::string written = quantity_in(si, dimension, unit);
  if (dimension == Dimension::none) return written;
  const long double size = std::fabs(number_in(*find_unit(dimension, unit), si));
  const auto digits = std::count_if(written.begin(), written.begin() + static_cast<std::ptrdiff_t>(written.find(' ')),
                                    [](char c) { return c >= '0' && c <= '9'; });
  const bool handy = size == 0.0L || (size > 0.0099L && size < 99'999.5L);
  if (size == 0.0L || (handy && digits <= (dimension == Dimension::time ? 3 : 5))) return written;
  const std::string usual = exact_quantity(si, dimension);
  if (usual == written) return written;
  return handy && size >= 1.0L ? fmt::format("{} ({})", written, usual) : usual;
}

}  // namespace noonhouse
