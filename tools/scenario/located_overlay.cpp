// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/located_overlay.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <string_view>

#include "tools/scenario/field_places.hpp"
#include "tools/units/nearest.hpp"

namespace noonhouse {
namespace {

/// Takes the first part off a dotted path.
std::string_view first_part(std::string_view& path) {
  const std::size_t dot = path.find('.');
  const std::string_view part = path.substr(0, dot);
  path = dot == std::string_view::npos ? std::string_view() : path.substr(dot + 1);
  return part;
}

bool matches(std::string_view path, std::string_view pattern) {
  while (!path.empty() && !pattern.empty()) {
    const std::string_view wanted = first_part(pattern);
    const std::string_view part = first_part(path);
    if (wanted != "*" && wanted != part) return false;
  }
  return path.empty() && pattern.empty();
}

[[noreturn]] void unknown_item(const LocatedNode& base, const LocatedEntry& entry, const std::string& path) {
  std::vector<std::string> names;
  for (const LocatedEntry& known : base.entries) names.push_back(known.key);
  const std::string there = names.empty() ? "there is none" : fmt::format("there is {}", fmt::join(names, ", "));
  fail_at(ErrorKind::unknown_name, entry.key_position,
          fmt::format("{}: a change names \"{}\", which the scenario does not have{}; {}", shown_path(path), entry.key,
                      did_you_mean(entry.key, names), there));
}

void lay_over(LocatedNode& base, const LocatedNode& change, const NamedItems& named, const std::string& path) {
  const bool both = base.kind == LocatedNode::Kind::mapping && change.kind == LocatedNode::Kind::mapping;
  if (!both) {
    base = change;
    return;
  }
  const bool items = named != nullptr && named(path);
  for (const LocatedEntry& entry : change.entries) {
    if (LocatedEntry* old = base.find(entry.key)) {
      lay_over(old->value, entry.value, named, joined_path(path, entry.key));
      old->key_position = entry.key_position;
    } else if (items) {
      unknown_item(base, entry, path);
    } else if (named != nullptr && named(joined_path(path, entry.key)) && !entry.value.entries.empty()) {
      unknown_item({}, entry.value.entries.front(), joined_path(path, entry.key));
    } else {
      base.entries.push_back(entry);
    }
  }
}

}  // namespace

NamedItems named_items(std::vector<std::string> patterns) {
  return [patterns = std::move(patterns)](const std::string& path) {
    for (const std::string& pattern : patterns)
      if (matches(path, pattern)) return true;
    return false;
  };
}

LocatedNode overlay(const LocatedNode& base, const LocatedNode& change, const NamedItems& named) {
  LocatedNode result = base;
  lay_over(result, change, named, "");
  return result;
}

}  // namespace noonhouse
