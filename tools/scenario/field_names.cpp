// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/field_names.hpp"

#include <algorithm>
#include <numeric>

#include "tools/scenario/field_places.hpp"

namespace noonhouse {

bool FieldNames::open_group(const GroupField& group) {
  path_.push_back(group.name);
  return true;
}

void FieldNames::close_group() { path_.pop_back(); }

std::vector<std::string> FieldNames::open_items(const ItemsField& items, std::vector<std::string>) {
  path_.push_back(items.name);
  if (items.type == ItemsField::Type::named) {
    const std::string path = std::accumulate(path_.begin(), path_.end(), std::string(), joined_path);
    if (std::find(patterns_.begin(), patterns_.end(), path) == patterns_.end()) patterns_.push_back(path);
  }
  return {"*"};
}

void FieldNames::close_items() { path_.pop_back(); }

std::vector<std::size_t> FieldNames::open_alternatives(const ScalarField& word, const std::size_t&) {
  std::vector<std::size_t> all(word.words.size());
  std::iota(all.begin(), all.end(), std::size_t{0});
  return all;
}

}  // namespace noonhouse
