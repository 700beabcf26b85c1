// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <string>
#include <vector>

#include "tools/scenario/field_places.hpp"
#include "tools/scenario/field_visitor.hpp"

namespace noonhouse {

/// Writes fields as YAML text; use save_fields (field_tools.hpp).
class FieldSaver final : public FieldVisitor {
 public:
  /// places may be null; otherwise it must outlive the saver.
  FieldSaver(UnitSystem system, const Places* places) : system_(system), places_(places) {}
  /// The text; ends with a newline.
  std::string finish();

 private:
  struct Frame {
    std::string path;
    int indent = 0;
    bool list = false;
    bool dash = false;  ///< the next line starts the item of a list
    bool empty = true;
    std::string empty_text;  ///< what an empty frame is written as
  };

  bool keeps_values() const override { return true; }
  void scalar(const ScalarField& field) override;
  bool open_group(const GroupField& group) override;
  void close_group() override;
  std::vector<std::string> open_items(const ItemsField& items, std::vector<std::string> present) override;
  void close_items() override;
  std::vector<std::size_t> open_alternatives(const ScalarField& word, const std::size_t& index) override;

  Frame& top();
  std::string start_line(const std::string& name);
  void push(const std::string& name, bool list);

  UnitSystem system_;
  const Places* places_;
  std::vector<Frame> frames_;
  std::string text_;
};

/// A YAML scalar that every reader takes as this text: plain where that is safe, else in double quotes.
std::string yaml_scalar(const std::string& text);

}  // namespace noonhouse
