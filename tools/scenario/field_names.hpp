// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "tools/scenario/field_visitor.hpp"

namespace noonhouse {

/// Collects the dotted paths of the mappings that hold named items; use named_patterns (field_tools.hpp).
class FieldNames final : public FieldVisitor {
 public:
  const std::vector<std::string>& patterns() const { return patterns_; }

 private:
  bool keeps_values() const override { return false; }
  void scalar(const ScalarField&) override {}
  bool open_group(const GroupField& group) override;
  void close_group() override;
  std::vector<std::string> open_items(const ItemsField& items, std::vector<std::string> present) override;
  void close_items() override;
  std::vector<std::size_t> open_alternatives(const ScalarField& word, const std::size_t& index) override;

  std::vector<std::string> path_;
  std::vector<std::string> patterns_;
};

}  // namespace noonhouse
