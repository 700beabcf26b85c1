// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <memory>
#include <string>
#include <vector>

#include "tools/scenario/field_visitor.hpp"

namespace noonhouse {

/// Describes fields as a JSON Schema (2020-12); use schema_of (field_tools.hpp).
class FieldSchema final : public FieldVisitor {
 public:
  FieldSchema(const std::string& id, const std::string& title);
  ~FieldSchema() override;
  /// The schema as JSON text, indented by two.
  std::string finish();

 private:
  bool keeps_values() const override { return false; }
  void scalar(const ScalarField& field) override;
  bool open_group(const GroupField& group) override;
  void close_group() override;
  std::vector<std::string> open_items(const ItemsField& items, std::vector<std::string> present) override;
  void close_items() override;
  std::vector<std::size_t> open_alternatives(const ScalarField& word, const std::size_t& index) override;
  void open_alternative(std::size_t index) override;
  void close_alternatives() override;

  struct Keys;
  struct Frame;
  std::vector<Frame> frames_;
  std::string id_, title_;
};

}  // namespace noonhouse
