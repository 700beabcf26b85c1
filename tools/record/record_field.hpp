// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstddef>
#include <string_view>
#include <tuple>
#include <type_traits>
#include <utility>

#include "tools/record/run_record.hpp"

namespace noonhouse {

/// One field of a record struct: its name in the file, place, unit (UDUNITS text; empty for text and identifiers),
/// meaning. The lists (RecordFields<Struct>::list) are the only place that names these fields: writer, reader and
/// comparison all walk them, and a list that misses a field of its struct does not compile.
template <class Struct, class Value>
struct RecordField {
  const char* name;
  Value Struct::*member;
  std::string_view units;
  const char* long_name;
};
template <class Struct, class Value>
RecordField(const char*, Value Struct::*, std::string_view, const char*) -> RecordField<Struct, Value>;

inline constexpr std::string_view kSinceStart = "@since start";  ///< the run's own "seconds since <start>"

template <class Struct>
struct RecordFields;

/// Calls visit(field) for every field of a struct, in order.
template <class Struct, class Visit>
constexpr void for_each_field(Visit&& visit) {
  std::apply([&](const auto&... fields) { (visit(fields), ...); }, RecordFields<Struct>::list);
}

/// Converts to anything: stands for a field when fields are counted.
struct AnyField {
  template <class Value>
  operator Value() const;
};

/// True when an aggregate can be initialised from this many fields.
template <class Struct, std::size_t... Index>
constexpr bool takes_fields(std::index_sequence<Index...>) {
  return requires { Struct{(static_cast<void>(Index), AnyField{})...}; };
}

/// How many fields a plain struct has.
template <class Struct, std::size_t Count = 1>
constexpr std::size_t field_count() {
  if constexpr (takes_fields<Struct>(std::make_index_sequence<Count + 1>{})) {
    return field_count<Struct, Count + 1>();
  } else {
    return Count;
  }
}

/// How many fields of a struct its list names.
template <class Struct>
constexpr std::size_t listed_count() {
  return std::tuple_size_v<std::remove_cvref_t<decltype(RecordFields<Struct>::list)>>;
}

}  // namespace noonhouse
