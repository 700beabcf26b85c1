// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/located_node.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "tools/scenario/located_text.hpp"

namespace noonhouse {
namespace {

bool continues_character(char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; }

}  // namespace

const LocatedEntry* LocatedNode::find(std::string_view key) const {
  const auto found = std::find_if(entries.begin(), entries.end(), [&](const LocatedEntry& e) { return e.key == key; });
  return found == entries.end() ? nullptr : &*found;
}

LocatedEntry* LocatedNode::find(std::string_view key) {
  return const_cast<LocatedEntry*>(std::as_const(*this).find(key));
}

std::string where(const Position& position) {
  if (position.source == nullptr) return "(default)";
  if (position.line <= 0) return position.source->name;
  return fmt::format("{}:{}:{}", position.source->name, position.line, position.column);
}

std::string caret_lines(const Position& position) {
  if (!position.known()) return {};
  const std::string line = line_text(*position.source, position.line);
  std::string blank;  // keeps tabs, so that the caret stands under its character whatever their width
  int column = 1;
  for (const char c : line) {
    if (continues_character(c)) continue;
    if (column++ >= position.column) break;
    blank += c == '\t' ? '\t' : ' ';
  }
  const std::string number = fmt::format("{:>6}", position.line);
  return fmt::format("{} | {}\n{} | {}^", number, line, std::string(number.size(), ' '), blank);
}

void fail_at(ErrorKind kind, const Position& position, std::string_view message) {
  std::string text = position.source == nullptr ? std::string(message) : where(position) + ": " + std::string(message);
  if (position.known()) text += "\n" + caret_lines(position);
  throw UserError(kind, text);
}

std::string describe(const LocatedNode& node) {
  switch (node.kind) {
    case LocatedNode::Kind::nothing:
      return "nothing";
    case LocatedNode::Kind::scalar:
      return "\"" + node.text + "\"";
    case LocatedNode::Kind::list:
      return "a list";
    case LocatedNode::Kind::mapping:
      return "a mapping";
  }
  NOON_ASSERT(!"a kind of node");
}

}  // namespace noonhouse
