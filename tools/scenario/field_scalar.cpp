// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/field_scalar.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <utility>

#include "tools/units/nearest.hpp"

namespace noonhouse {
namespace {

using Failure = std::optional<FieldFailure>;
constexpr std::size_t kDateLength = 10;  ///< of "2025-07-14"

ScalarField base_field(std::string name, ScalarField::Type type, const char* about, const char* default_text) {
  NOON_ASSERT(about != nullptr && *about != '\0');  // every field says what it is
  ScalarField field;
  field.name = std::move(name);
  field.type = type;
  field.about = about;
  if (default_text != nullptr) field.default_text = default_text;
  return field;
}

Failure read_quantity(const std::string& text, Dimension dimension, const QuantityOptions& limits, double& si) {
  const auto parsed = parse_quantity(text, dimension, unit_written(dimension, limits));
  if (const auto* failure = std::get_if<QuantityFailure>(&parsed))
    return FieldFailure{failure->kind, failure->message()};
  const ParsedQuantity& quantity = std::get<ParsedQuantity>(parsed);
  const bool low = quantity.si < limits.minimum || (limits.exclusive_minimum && quantity.si == limits.minimum);
  const bool high = quantity.si > limits.maximum || (limits.exclusive_maximum && quantity.si == limits.maximum);
  if (low || high)
    return FieldFailure{ErrorKind::out_of_range, "allowed: " + range_text(dimension, limits, quantity.unit)};
  si = quantity.si;
  return std::nullopt;
}

/// A field whose text one parser reads: a date, a time of day.
template <class T, class Parse>
std::function<Failure(const std::string&)> reader(T& value, Parse parse, std::string expected) {
  return [&value, parse, expected = std::move(expected)](const std::string& text) -> Failure {
    const auto parsed = parse(text);
    if (!parsed) {
      const std::string why = no_such_date(text.substr(0, kDateLength));  // of a date with a time too
      return FieldFailure{ErrorKind::wrong_type, (why.empty() ? why : why + "; ") + "this must be " + expected};
    }
    value = *parsed;
    return std::nullopt;
  };
}

ScalarField pattern_field(std::string name, const PlainOptions& options, const char* pattern) {
  ScalarField field = base_field(std::move(name), ScalarField::Type::pattern, options.about, options.default_text);
  field.pattern = pattern;
  return field;
}

std::vector<std::string> strings(const std::vector<const char*>& words) { return {words.begin(), words.end()}; }

}  // namespace

std::string range_text(Dimension dimension, const QuantityOptions& limits, const std::string& unit) {
  std::string text;
  const auto shown = [&](double si) { return limit_text(si, dimension, unit); };
  if (std::isfinite(limits.minimum)) text = (limits.exclusive_minimum ? "above " : "at least ") + shown(limits.minimum);
  if (std::isfinite(limits.maximum)) {
    if (!text.empty()) text += " and ";
    text += (limits.exclusive_maximum ? "below " : "at most ") + shown(limits.maximum);
  }
  return text;
}

std::string unit_written(Dimension dimension, const QuantityOptions& options) {
  if (options.unit != nullptr) return options.unit;
  if (options.default_text == nullptr) return usual_unit(dimension);
  return std::get<ParsedQuantity>(parse_quantity(options.default_text, dimension)).unit;
}

ScalarField quantity_field(std::string name, double& si, Dimension dimension, const QuantityOptions& options) {
  ScalarField field = base_field(std::move(name), ScalarField::Type::quantity, options.about, options.default_text);
  field.dimension = dimension;
  field.limits = options;
  field.read = [&si, dimension, options](const std::string& text) {
    return read_quantity(text, dimension, options, si);
  };
  field.write = [&si, dimension](UnitSystem system) { return exact_quantity(si, dimension, system); };
  return field;
}

ScalarField quantity_field(std::string name, std::optional<double>& si, Dimension dimension,
                           const QuantityOptions& options) {
  double unused = 0.0;
  ScalarField field = quantity_field(std::move(name), unused, dimension, options);
  field.optional = true;
  field.read = [&si, dimension, options](const std::string& text) {
    double value = 0.0;
    Failure failure = read_quantity(text, dimension, options, value);
    if (!failure) si = value;
    return failure;
  };
  field.write = [&si, dimension](UnitSystem system) -> std::optional<std::string> {
    if (!si) return std::nullopt;
    return exact_quantity(*si, dimension, system);
  };
  return field;
}

ScalarField integer_field(std::string name, std::int64_t value, std::function<void(std::int64_t)> set,
                          const IntegerOptions& options) {
  ScalarField field = base_field(std::move(name), ScalarField::Type::integer, options.about, options.default_text);
  field.minimum = options.minimum;
  field.maximum = options.maximum;
  field.read = [set = std::move(set), options](const std::string& text) -> Failure {
    std::int64_t number = 0;
    const char* const end = text.data() + text.size();
    const auto [stop, error] = std::from_chars(text.data(), end, number);
    const bool too_large = error == std::errc::result_out_of_range && stop == end;
    if (!too_large && (error != std::errc() || stop != end))
      return FieldFailure{ErrorKind::wrong_type, "this must be a whole number, without a unit"};
    if (too_large || number < options.minimum || number > options.maximum)
      return FieldFailure{ErrorKind::out_of_range,
                          fmt::format("allowed: whole numbers from {} to {}", options.minimum, options.maximum)};
    set(number);
    return std::nullopt;
  };
  field.write = [value](UnitSystem) { return std::to_string(value); };
  return field;
}

ScalarField flag_field(std::string name, bool& value, const PlainOptions& options) {
  ScalarField field = base_field(std::move(name), ScalarField::Type::flag, options.about, options.default_text);
  field.read = [&value](const std::string& text) -> Failure {
    if (text != "true" && text != "false") {
      const bool yes = text == "yes" || text == "Yes" || text == "on" || text == "True" || text == "TRUE";
      const bool no = text == "no" || text == "No" || text == "off" || text == "False" || text == "FALSE";
      const std::string hint = yes ? "; did you mean \"true\"?" : no ? "; did you mean \"false\"?" : "";
      return FieldFailure{ErrorKind::wrong_type, "this must be true or false" + hint};
    }
    value = text == "true";
    return std::nullopt;
  };
  field.write = [&value](UnitSystem) { return std::string(value ? "true" : "false"); };
  return field;
}

ScalarField text_field(std::string name, std::string& value, const PlainOptions& options) {
  ScalarField field = base_field(std::move(name), ScalarField::Type::text, options.about, options.default_text);
  field.read = [&value](const std::string& text) -> Failure {
    value = text;
    return std::nullopt;
  };
  field.write = [&value](UnitSystem) { return value; };
  return field;
}

ScalarField name_field(std::string name, std::string& value, const NameOptions& options) {
  ScalarField field = text_field(std::move(name), value, {options.default_text, options.about});
  field.lists = strings(options.of);
  field.having = options.having;
  field.words = strings(options.also);
  return field;
}

ScalarField choice_field(std::string name, std::vector<std::string> words, std::size_t index,
                         std::function<void(std::size_t)> set, const PlainOptions& options) {
  NOON_ASSERT(index < words.size());
  ScalarField field = base_field(std::move(name), ScalarField::Type::choice, options.about, options.default_text);
  field.words = std::move(words);
  field.read = [all = field.words, set = std::move(set)](const std::string& text) -> Failure {
    const auto found = std::find(all.begin(), all.end(), text);
    if (found == all.end())
      return FieldFailure{ErrorKind::wrong_type,
                          fmt::format("this must be one of {}{}", fmt::join(all, ", "), did_you_mean(text, all))};
    set(static_cast<std::size_t>(found - all.begin()));
    return std::nullopt;
  };
  field.write = [word = field.words[index]](UnitSystem) { return word; };
  return field;
}

ScalarField time_of_day_field(std::string name, double& seconds, const PlainOptions& options) {
  ScalarField field = pattern_field(std::move(name), options, kTimeOfDayPattern);
  field.read = reader(seconds, parse_time_of_day, "a time of day from 00:00 to 24:00, such as \"08:30\"");
  field.write = [&seconds](UnitSystem) { return format_time_of_day(seconds); };
  return field;
}

ScalarField date_field(std::string name, std::chrono::year_month_day& value, const PlainOptions& options) {
  ScalarField field = pattern_field(std::move(name), options, kDatePattern);
  field.read = reader(value, parse_date, "a date such as \"2025-07-14\"");
  field.write = [&value](UnitSystem) { return format_date(value); };
  return field;
}

ScalarField date_time_field(std::string name, LocalTime& value, const PlainOptions& options) {
  ScalarField field = pattern_field(std::move(name), options, kDateTimePattern);
  field.read = reader(value, parse_date_time, "a date and a time of day such as \"2025-07-14 08:30\"");
  field.write = [&value](UnitSystem) { return format_date_time(value); };
  return field;
}

ScalarField utc_offset_field(std::string name, double& seconds_east, const PlainOptions& options) {
  ScalarField field = pattern_field(std::move(name), options, kUtcOffsetPattern);
  field.read = reader(seconds_east, parse_utc_offset, "hours ahead of UTC such as \"-07:00\"");
  field.write = [&seconds_east](UnitSystem) { return format_utc_offset(seconds_east); };
  return field;
}

}  // namespace noonhouse
