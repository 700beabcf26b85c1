// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "tools/scenario/field_options.hpp"
#include "tools/scenario/located_node.hpp"

namespace noonhouse {

/// Where one value of a loaded scenario came from.
struct Place {
  Position position;       ///< of the value; of the mapping that lacks it where it was defaulted
  std::string text;        ///< as read, or the default's text; empty for mappings and lists
  bool defaulted = false;  ///< the file did not give it
};

/// Where every value of a loaded scenario was written, by its dotted path "house.benches.fern_bench.height"; items of
/// lists count from 1. For checks made after loading, across values, that must still point at the right line.
class Places {
 public:
  void note(const std::string& path, Place place);
  /// The place of a path, or of its nearest ancestor that was noted; nothing only when the record is empty.
  const Place* find(const std::string& path) const;
  /// The place of exactly this path, or nothing.
  const Place* at(const std::string& path) const;
  /// Paths whose value was defaulted, in alphabetical order.
  std::vector<std::string> defaulted() const;
  /// A value at `path` names an item of one of the mappings `lists` (dotted paths from the root), or is one of `also`.
  /// With `having`, only items count whose value at that key reads like that.
  void note_name(const std::string& path, const std::string& name, std::vector<std::string> lists,
                 std::vector<std::string> also, KeyAndText having = {});
  /// Checks every noted name; throws unknown_name at its place with the nearest name.
  void check_names() const;

  /// Throws UserError(kind) at the place of a path:
  ///   heatwave.yaml:41:14: benches › low bench › height: read "9 m"; <message>
  /// and the line with a caret. A defaulted value says "(default)" and what it is.
  [[noreturn]] void fail(ErrorKind kind, const std::string& path, std::string_view message) const;

 private:
  struct NameUse {
    std::string path, name;
    std::vector<std::string> lists, also;
    KeyAndText having;
  };
  bool has(const std::string& item, const KeyAndText& having) const;
  /// The next path parts below a path.
  std::vector<std::string> children(const std::string& path) const;
  std::map<std::string, Place> places_;
  std::vector<NameUse> names_;
};

/// What may stand where a name was not found: "allowed: east, west", or "there is none".
std::string allowed_words(const std::vector<std::string>& names);

/// A path and the part below it, dotted.
std::string joined_path(const std::string& path, const std::string& part);
/// A dotted path as people read it: "benches › low bench › height".
std::string shown_path(std::string_view path);

}  // namespace noonhouse
