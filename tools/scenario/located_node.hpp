// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "sim/core/errors.hpp"

namespace noonhouse {

/// A text that was read, and the name people know it by (the file's path as given).
struct SourceText {
  std::string name;
  std::string text;
};

/// Where something stands in a text. Line and column count from 1, columns in characters; line 0 is nowhere.
struct Position {
  std::shared_ptr<const SourceText> source;
  int line = 0;
  int column = 0;
  bool known() const { return source != nullptr && line > 0; }
};

/// "heatwave.yaml:41:14", the name alone where the line is not known, or "(default)" where nothing is.
std::string where(const Position& position);
/// The line itself with its number, and a caret under the column; empty where the position is not known.
std::string caret_lines(const Position& position);
/// Throws UserError: "where: message" and the caret lines.
[[noreturn]] void fail_at(ErrorKind kind, const Position& position, std::string_view message);

struct LocatedEntry;

/// A tree of mappings, lists and scalars that knows where each part was written. Scalars stay text: nobody but the
/// reader of a field decides what a scalar means, so `010` is never eight and `no` never false by accident.
struct LocatedNode {
  enum class Kind { nothing, scalar, list, mapping };
  Kind kind = Kind::nothing;
  Position position;
  std::string text;                   ///< of a scalar
  bool quoted = false;                ///< the scalar stood in quotes or in a block
  std::vector<LocatedNode> items;     ///< of a list
  std::vector<LocatedEntry> entries;  ///< of a mapping, in file order; keys are unique

  /// The entry of a mapping with this key, or nothing.
  const LocatedEntry* find(std::string_view key) const;
  LocatedEntry* find(std::string_view key);
};

struct LocatedEntry {
  std::string key;
  Position key_position;
  LocatedNode value;
};

/// What a node is, for messages: `"9 m"`, "a mapping", "a list", "nothing".
std::string describe(const LocatedNode& node);

}  // namespace noonhouse
