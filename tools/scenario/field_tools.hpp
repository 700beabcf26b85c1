// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "tools/scenario/field_load.hpp"
#include "tools/scenario/field_names.hpp"
#include "tools/scenario/field_save.hpp"
#include "tools/scenario/field_schema.hpp"
#include "tools/scenario/field_visitor.hpp"

namespace noonhouse {

/// A struct read from a mapping, and where each of its values was written. Throws UserError at the place of the first
/// mistake: unknown_key, missing_key, wrong_type, wrong_unit, out_of_range. Names of items elsewhere are only noted.
template <class T>
struct Loaded {
  T value;
  Places places;
};

template <class T>
Loaded<T> load_fields(const LocatedNode& root, const std::vector<std::string>& others = {}) {
  Loaded<T> loaded{};
  FieldLoader loader(root, loaded.places);
  fields(loader, loaded.value);
  loader.finish(others);
  return loaded;
}

/// The struct as YAML text with every default written out; load_fields gives back exactly the same values. With
/// `places`, values that the file did not give are marked "# default".
template <class T>
std::string save_fields(T value, UnitSystem system = UnitSystem::metric, const Places* places = nullptr) {
  FieldSaver saver(system, places);
  fields(saver, value);
  return saver.finish();
}

/// The JSON Schema (2020-12) of what load_fields accepts, as JSON text indented by two.
template <class T>
std::string schema_of(const std::string& id, const std::string& title) {
  FieldSchema schema(id, title);
  T scratch{};
  fields(schema, scratch);
  return schema.finish();
}

/// Patterns of the mappings that hold named items, such as "house.bays.*.vents", for named_items().
template <class T>
std::vector<std::string> named_patterns() {
  FieldNames names;
  T scratch{};
  fields(names, scratch);
  return names.patterns();
}

}  // namespace noonhouse
