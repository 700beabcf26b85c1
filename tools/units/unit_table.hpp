// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <limits>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "tools/units/units.hpp"

namespace noonhouse {

/// One unit of one dimension: SI value = (number + shift) * numerator / denominator. Kept as a fraction of exact
/// constants and evaluated in extended precision, so that "1 in" is the double nearest to 0.0254 and every double can
/// be written in every unit.
struct UnitRow {
  Dimension dimension;
  const char* symbol;   ///< canonical spelling
  const char* aliases;  ///< further spellings, separated by `|`; squares and degrees are normalised before
  long double numerator;
  long double denominator;
  long double shift = 0.0L;
};

/// A unit that values are shown in, from a magnitude (in that unit) on.
struct ShownRow {
  Dimension dimension;
  UnitSystem system;
  const char* unit;
  double from;
};

struct DimensionRow {
  Dimension dimension;
  const char* name;
};

/// All units, those of one dimension together, the SI unit first.
std::span<const UnitRow> unit_rows();
/// All shown units, those of one dimension and system together, small ones first.
std::span<const ShownRow> shown_rows();
std::span<const DimensionRow> dimension_rows();

/// The spellings of a unit, the canonical one first.
std::vector<std::string> spellings(const UnitRow& row);
/// The unit of a dimension with a spelling (already normalised), or nothing.
const UnitRow* find_unit(Dimension dimension, std::string_view spelling);
/// "m²" and "m^2" to "m2", "°C" to "degC", micro signs to "u", runs of spaces to one.
std::string normalised_unit(std::string_view text);

inline double to_si(const UnitRow& row, long double number) {
  return static_cast<double>((number + row.shift) * row.numerator / row.denominator);
}
inline long double from_si(const UnitRow& row, double si) {
  return static_cast<long double>(si) * row.denominator / row.numerator - row.shift;
}
static_assert(std::numeric_limits<long double>::digits >= 64, "every double must be reachable in every unit");

}  // namespace noonhouse
