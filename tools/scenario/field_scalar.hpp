// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "sim/core/errors.hpp"
#include "tools/scenario/field_options.hpp"
#include "tools/units/clock_text.hpp"
#include "tools/units/units.hpp"

namespace noonhouse {

/// Why a text is not a value of a field, in words that follow `read "...": `.
struct FieldFailure {
  ErrorKind kind = ErrorKind::wrong_type;
  std::string message;
};

/// One scalar field as visitors see it: how to read it, write it and describe it.
struct ScalarField {
  enum class Type { quantity, integer, flag, text, choice, pattern };
  std::string name;
  Type type = Type::text;
  std::string about;
  std::optional<std::string> default_text;  ///< absent: required, unless optional
  bool optional = false;                    ///< may be absent without a default
  Dimension dimension = Dimension::none;    ///< of a quantity
  QuantityOptions limits;                   ///< of a quantity
  std::int64_t minimum = 0, maximum = 0;    ///< of an integer
  std::vector<std::string> words;           ///< of a choice; further words of a name
  std::vector<std::string> lists;           ///< where a name's items are
  KeyAndText having;                        ///< what the items that count have
  std::string pattern;                      ///< of a pattern, ECMA-262
  /// Sets the value from text.
  std::function<std::optional<FieldFailure>(const std::string&)> read;
  /// The value as text that read takes back exactly; nothing for an optional value that is absent.
  std::function<std::optional<std::string>(UnitSystem)> write;
};

ScalarField quantity_field(std::string name, double& si, Dimension dimension, const QuantityOptions& options);
ScalarField quantity_field(std::string name, std::optional<double>& si, Dimension dimension,
                           const QuantityOptions& options);
ScalarField integer_field(std::string name, std::int64_t value, std::function<void(std::int64_t)> set,
                          const IntegerOptions& options);
ScalarField flag_field(std::string name, bool& value, const PlainOptions& options);
ScalarField text_field(std::string name, std::string& value, const PlainOptions& options);
ScalarField name_field(std::string name, std::string& value, const NameOptions& options);
ScalarField choice_field(std::string name, std::vector<std::string> words, std::size_t index,
                         std::function<void(std::size_t)> set, const PlainOptions& options);
ScalarField time_of_day_field(std::string name, double& seconds, const PlainOptions& options);
ScalarField date_field(std::string name, std::chrono::year_month_day& value, const PlainOptions& options);
ScalarField date_time_field(std::string name, LocalTime& value, const PlainOptions& options);
ScalarField utc_offset_field(std::string name, double& seconds_east, const PlainOptions& options);

/// The unit that people write a field in: its own, that of its default, or the dimension's usual one.
std::string unit_written(Dimension dimension, const QuantityOptions& options);

/// A limit range in words, in the unit a person used: "above 0 m and at most 2.6 m".
std::string range_text(Dimension dimension, const QuantityOptions& limits, const std::string& unit);

}  // namespace noonhouse
