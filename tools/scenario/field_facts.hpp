// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "tools/scenario/field_places.hpp"
#include "tools/scenario/field_visitor.hpp"

namespace noonhouse {

/// One value of a scenario as people read it.
struct Fact {
  std::string group;     ///< dotted path of what it belongs to, "benches.low bench"
  std::string key;       ///< "heat_capacity"
  std::string text;      ///< "15 kJ/m²/K", rounded for people
  bool assumed = false;  ///< the file did not give it
};

/// Collects every value of a field list, in its order; use facts_of.
class FieldFacts final : public FieldVisitor {
 public:
  /// places must outlive the collector.
  FieldFacts(UnitSystem system, const Places& places) : system_(system), places_(places), path_{""} {}
  const std::vector<Fact>& facts() const { return facts_; }

 private:
  bool keeps_values() const override { return true; }
  void scalar(const ScalarField& field) override;
  bool open_group(const GroupField& group) override;
  void close_group() override { path_.pop_back(); }
  std::vector<std::string> open_items(const ItemsField& items, std::vector<std::string> present) override;
  void close_items() override { path_.pop_back(); }
  std::vector<std::size_t> open_alternatives(const ScalarField& word, const std::size_t& index) override;

  UnitSystem system_;
  const Places& places_;
  std::vector<std::string> path_;
  std::vector<Fact> facts_;
};

template <class T>
std::vector<Fact> facts_of(T value, UnitSystem system, const Places& places) {
  FieldFacts collector(system, places);
  fields(collector, value);
  return collector.facts();
}

/// A key as words: "heat capacity".
std::string key_words(std::string key);

}  // namespace noonhouse
