// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "tools/scenario/field_places.hpp"
#include "tools/scenario/field_visitor.hpp"
#include "tools/scenario/located_node.hpp"

namespace noonhouse {

/// Reads fields from a located mapping; use load_fields (field_tools.hpp). In each mapping an unknown key is reported
/// before a missing one: a misspelt key is both, and the spelling is what helps.
class FieldLoader final : public FieldVisitor {
 public:
  /// The root must outlive the loader.
  FieldLoader(const LocatedNode& root, Places& places);
  /// Checks the root mapping for unknown and missing keys; `others` are keys that belong there and were taken before.
  void finish(const std::vector<std::string>& others = {});

 private:
  struct Missing {
    std::string path;
    Position position;
    std::string about;
    std::string example;  ///< of the block that is missing with it; empty: the key alone is missing
  };
  struct Frame {
    const LocatedNode* node = nullptr;  ///< nothing: the group is absent
    Position position;                  ///< where a missing key would belong
    std::string path;
    bool items = false;              ///< a list or named items: every entry is visited
    std::vector<std::string> known;  ///< keys the fields asked for
    std::optional<Missing> missing;  ///< the first
    std::string about, example;      ///< of the group
  };

  bool keeps_values() const override { return false; }
  void scalar(const ScalarField& field) override;
  bool open_group(const GroupField& group) override;
  void close_group() override;
  std::vector<std::string> open_items(const ItemsField& items, std::vector<std::string> present) override;
  void close_items() override;
  std::vector<std::size_t> open_alternatives(const ScalarField& word, const std::size_t& index) override;

  const LocatedNode* take(const std::string& name);
  std::string path_of(const std::string& name) const;
  void push(const LocatedNode* node, const std::string& name, bool items);
  void read_default(const ScalarField& field);
  void note_missing(const std::string& name, const std::string& about);
  std::vector<std::string> item_labels(const LocatedNode& node, const ItemsField& items, const std::string& path);
  void check_unknown(const Frame& frame) const;

  std::vector<Frame> frames_;
  Places& places_;
};

}  // namespace noonhouse
