// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/field_schema.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <numeric>
#include <utility>

#include "tools/scenario/field_places.hpp"

namespace noonhouse {

using Json = nlohmann::ordered_json;

namespace {

constexpr const char* kItemNamePattern =
    "^[A-Za-z\\u0080-\\uFFFF]([A-Za-z0-9_ \\u0080-\\uFFFF-]*[A-Za-z0-9_\\u0080-\\uFFFF-])?$";

void describe_number(Json& schema, const ScalarField& field) {
  const QuantityOptions& o = field.limits;
  schema["type"] = "number";
  if (std::isfinite(o.minimum)) schema[o.exclusive_minimum ? "exclusiveMinimum" : "minimum"] = o.minimum;
  if (std::isfinite(o.maximum)) schema[o.exclusive_maximum ? "exclusiveMaximum" : "maximum"] = o.maximum;
}

std::string description(const ScalarField& field) {
  std::string text = field.about;
  if (field.type == ScalarField::Type::quantity && field.dimension != Dimension::none) {
    const std::string range = range_text(field.dimension, field.limits, unit_written(field.dimension, field.limits));
    if (!range.empty()) text += "; " + range;
    text += fmt::format(". Units: {}.", fmt::join(units_of(field.dimension), ", "));
  }
  if (!field.lists.empty()) {
    std::vector<std::string> lists;
    for (const std::string& list : field.lists) lists.push_back(shown_path(list));
    text += fmt::format("; a name under {}", fmt::join(lists, " or "));
    if (!field.words.empty()) text += fmt::format(", or {}", fmt::join(field.words, ", "));
  }
  return text;
}

Json scalar_schema(const ScalarField& field) {
  Json schema = {{"description", description(field)}};
  switch (field.type) {
    case ScalarField::Type::quantity:
      if (field.dimension == Dimension::none) {
        describe_number(schema, field);
      } else {
        schema["type"] = "string";
        schema["pattern"] = quantity_pattern(field.dimension);
      }
      break;
    case ScalarField::Type::integer:
      schema["type"] = "integer";
      if (field.minimum != std::numeric_limits<std::int64_t>::min()) schema["minimum"] = field.minimum;
      if (field.maximum != std::numeric_limits<std::int64_t>::max()) schema["maximum"] = field.maximum;
      break;
    case ScalarField::Type::flag:
      schema["type"] = "boolean";
      break;
    case ScalarField::Type::choice:
      schema["enum"] = field.words;
      break;
    case ScalarField::Type::pattern:
      schema["type"] = "string";
      schema["pattern"] = field.pattern;
      break;
    case ScalarField::Type::text:
      schema["type"] = "string";
      break;
  }
  if (field.default_text) {
    const bool bare = schema.contains("type") && schema["type"] != "string";
    schema["default"] = bare ? Json::parse(*field.default_text) : Json(*field.default_text);
  }
  return schema;
}

}  // namespace

/// Keys of one mapping, or of one alternative of it.
struct FieldSchema::Keys {
  Json properties = Json::object();
  Json required = Json::array();

  Json schema(const std::string& about) const {
    Json schema = {{"type", "object"}};
    if (!about.empty()) schema["description"] = about;
    schema["properties"] = properties;
    if (!required.empty()) schema["required"] = required;
    schema["additionalProperties"] = false;
    return schema;
  }
};

struct FieldSchema::Frame {
  std::string name, about;
  bool optional = false;
  bool items = false;  ///< a list or named items: the one child is the items' schema
  ItemsField::Type type = ItemsField::Type::list;
  ListOptions options;
  Json item = Json::object();
  Keys keys;
  std::string word;  ///< the key that chooses among the alternatives
  bool word_required = false;
  Json word_schema;
  std::vector<std::pair<std::string, Keys>> alternatives;
  std::vector<std::string> words;
  bool in_alternative = false;

  void add(const std::string& key, Json schema, bool is_required) {
    if (items) {
      item = std::move(schema);
      return;
    }
    Keys& target = in_alternative ? alternatives.back().second : keys;
    NOON_ASSERT(!target.properties.contains(key));  // a key listed twice
    target.properties[key] = std::move(schema);
    if (is_required) target.required.push_back(key);
  }

  bool is_default(const std::string& chosen) const {
    return word_schema.contains("default") && word_schema["default"] == chosen;
  }

  /// Whether an empty mapping would lack something.
  bool has_required() const {
    return !keys.required.empty() || word_required ||
           std::any_of(alternatives.begin(), alternatives.end(), [&](const auto& alternative) {
             return is_default(alternative.first) && !alternative.second.required.empty();
           });
  }

  Json object() const {
    if (alternatives.empty()) return keys.schema(about);
    Json all = Json::array();
    for (const auto& [chosen, extra] : alternatives) {
      Keys merged = keys;
      merged.properties[word] = word_schema;
      merged.properties[word].erase("enum");
      merged.properties[word]["const"] = chosen;
      if (!is_default(chosen)) merged.required.push_back(word);
      for (const auto& [key, schema] : extra.properties.items()) merged.properties[key] = schema;
      for (const Json& key : extra.required) merged.required.push_back(key);
      all.push_back(merged.schema(""));
    }
    Json schema = Json::object();
    if (!about.empty()) schema["description"] = about;
    schema["oneOf"] = std::move(all);
    return schema;
  }
};

FieldSchema::FieldSchema(const std::string& id, const std::string& title) : id_(id), title_(title) {
  frames_.emplace_back();
}

FieldSchema::~FieldSchema() = default;

std::string FieldSchema::finish() {
  NOON_ASSERT(frames_.size() == 1);
  Json schema = {{"$schema", "https://json-schema.org/draft/2020-12/schema"}, {"$id", id_}, {"title", title_}};
  schema.update(frames_.back().object());
  return schema.dump(2) + "\n";
}

void FieldSchema::scalar(const ScalarField& field) {
  frames_.back().add(field.name, scalar_schema(field), !field.default_text && !field.optional);
}

bool FieldSchema::open_group(const GroupField& group) {
  Frame frame;
  frame.name = group.name;
  frame.about = group.about;
  frame.optional = group.optional;
  frames_.push_back(std::move(frame));
  return true;
}

void FieldSchema::close_group() {
  const Frame frame = std::move(frames_.back());
  frames_.pop_back();
  frames_.back().add(frame.name, frame.object(), !frame.optional && frame.has_required());
}

std::vector<std::string> FieldSchema::open_items(const ItemsField& items, std::vector<std::string>) {
  Frame frame;
  frame.name = items.name;
  frame.about = items.options.about == nullptr ? "" : items.options.about;
  frame.items = true;
  frame.type = items.type;
  frame.options = items.options;
  frames_.push_back(std::move(frame));
  return {"1"};
}

void FieldSchema::close_items() {
  const Frame frame = std::move(frames_.back());
  frames_.pop_back();
  const bool named = frame.type == ItemsField::Type::named;
  Json schema = {{"type", named ? "object" : "array"}, {"description", frame.about}};
  if (named) schema["propertyNames"] = {{"pattern", kItemNamePattern}};
  schema[named ? "additionalProperties" : "items"] = frame.item;
  if (frame.options.minimum_count > 0) schema[named ? "minProperties" : "minItems"] = frame.options.minimum_count;
  schema[named ? "maxProperties" : "maxItems"] = frame.options.maximum_count;
  frames_.back().add(frame.name, std::move(schema), frame.options.required);
}

std::vector<std::size_t> FieldSchema::open_alternatives(const ScalarField& word, const std::size_t&) {
  Frame& frame = frames_.back();
  NOON_ASSERT(frame.alternatives.empty());  // at most once per mapping
  frame.word = word.name;
  frame.word_schema = scalar_schema(word);
  frame.word_required = !word.default_text;
  frame.words = word.words;
  std::vector<std::size_t> all(word.words.size());
  std::iota(all.begin(), all.end(), std::size_t{0});
  return all;
}

void FieldSchema::open_alternative(std::size_t index) {
  Frame& frame = frames_.back();
  frame.alternatives.emplace_back(frame.words[index], Keys{});
  frame.in_alternative = true;
}

void FieldSchema::close_alternatives() { frames_.back().in_alternative = false; }

}  // namespace noonhouse
