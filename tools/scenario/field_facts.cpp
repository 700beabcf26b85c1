// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/field_facts.hpp"

#include <algorithm>

namespace noonhouse {

void FieldFacts::scalar(const ScalarField& field) {
  std::optional<std::string> text = field.write(system_);
  if (!text) return;
  if (field.type == ScalarField::Type::quantity)
    text = format_quantity(known_quantity(*text, field.dimension), field.dimension, system_);
  if (field.type == ScalarField::Type::flag) text = *text == "true" ? "yes" : "no";
  const Place* place = places_.at(joined_path(path_.back(), field.name));
  facts_.push_back({path_.back(), field.name, *text, place != nullptr && place->defaulted});
}

bool FieldFacts::open_group(const GroupField& group) {
  if (group.optional && !group.present) return false;
  path_.push_back(joined_path(path_.back(), group.name));
  return true;
}

std::vector<std::string> FieldFacts::open_items(const ItemsField& items, std::vector<std::string> present) {
  path_.push_back(joined_path(path_.back(), items.name));
  return present;
}

std::vector<std::size_t> FieldFacts::open_alternatives(const ScalarField& word, const std::size_t& index) {
  scalar(word);
  return {index};
}

std::string key_words(std::string key) {
  std::replace(key.begin(), key.end(), '_', ' ');
  return key;
}

}  // namespace noonhouse
