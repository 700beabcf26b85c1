// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/field_load.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "tools/units/nearest.hpp"

namespace noonhouse {
namespace {

std::string about_text(const std::string& about) { return about.empty() ? about : " (" + about + ")"; }

[[noreturn]] void wrong_kind(const LocatedNode& node, const std::string& path, std::string_view wanted) {
  const std::string remedy =
      node.kind == LocatedNode::Kind::nothing ? "; write one, or remove the key where it may be left out" : "";
  fail_at(ErrorKind::wrong_type, node.position,
          fmt::format("{}: read {}; this must be {}{}", shown_path(path), describe(node), wanted, remedy));
}

/// Names of items are parts of dotted paths and stand in tables and messages.
bool is_item_name(const std::string& name) {
  const auto letter = [](char c) {
    const auto byte = static_cast<unsigned char>(c);
    return (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z') || byte >= 0x80U;
  };
  const auto inner = [&](char c) { return letter(c) || (c >= '0' && c <= '9') || c == '_' || c == '-' || c == ' '; };
  return !name.empty() && letter(name.front()) && name.back() != ' ' && std::all_of(name.begin(), name.end(), inner);
}

/// What a scalar field holds, for a node that is no scalar at all.
std::string wanted_text(const ScalarField& field) {
  if (field.type == ScalarField::Type::quantity && field.dimension != Dimension::none)
    return a_dimension(field.dimension) + " with its unit";
  if (field.type == ScalarField::Type::quantity) return "a number";
  if (field.type == ScalarField::Type::integer) return "a whole number";
  if (field.type == ScalarField::Type::flag) return "true or false";
  if (field.type == ScalarField::Type::choice) return fmt::format("one of {}", fmt::join(field.words, ", "));
  return "a text";
}

bool written_bare(const ScalarField& field) {
  const bool number = field.type == ScalarField::Type::quantity && field.dimension == Dimension::none;
  return number || field.type == ScalarField::Type::integer || field.type == ScalarField::Type::flag;
}

}  // namespace

FieldLoader::FieldLoader(const LocatedNode& root, Places& places) : places_(places) {
  if (root.kind != LocatedNode::Kind::mapping) wrong_kind(root, "", "a mapping of keys and values");
  places_.note("", {root.position, "", false});
  Frame frame;
  frame.node = &root;
  frame.position = root.position;
  frames_.push_back(std::move(frame));
}

void FieldLoader::finish(const std::vector<std::string>& others) {
  NOON_ASSERT(frames_.size() == 1);
  std::vector<std::string>& known = frames_.back().known;
  known.insert(known.end(), others.begin(), others.end());
  close_group();
}

std::string FieldLoader::path_of(const std::string& name) const { return joined_path(frames_.back().path, name); }

const LocatedNode* FieldLoader::take(const std::string& name) {
  Frame& frame = frames_.back();
  if (frame.node == nullptr) return nullptr;
  if (frame.node->kind == LocatedNode::Kind::list) return &frame.node->items[std::stoul(name) - 1];
  if (!frame.items) {
    NOON_ASSERT(std::find(frame.known.begin(), frame.known.end(), name) == frame.known.end());  // a key listed twice
    frame.known.push_back(name);
  }
  const LocatedEntry* entry = frame.node->find(name);
  return entry == nullptr ? nullptr : &entry->value;
}

void FieldLoader::push(const LocatedNode* node, const std::string& name, bool items) {
  const Frame& parent = frames_.back();
  Frame frame;
  frame.node = node;
  frame.path = path_of(name);
  frame.items = items;
  frame.position = parent.position;
  if (node != nullptr) {
    const LocatedEntry* entry = parent.node->kind == LocatedNode::Kind::mapping ? parent.node->find(name) : nullptr;
    frame.position = entry == nullptr ? node->position : entry->key_position;
    places_.note(frame.path, {frame.position, "", false});
  }
  frames_.push_back(std::move(frame));
}

void FieldLoader::read_default(const ScalarField& field) {
  const std::string text = field.default_text.value_or("");
  const auto failure = field.read(text);
  NOON_ASSERT(!failure);  // a default is a valid value of its field
  places_.note(path_of(field.name), {frames_.back().position, text, true});
}

void FieldLoader::note_missing(const std::string& name, const std::string& about) {
  Frame& frame = frames_.back();
  if (!frame.missing) frame.missing = Missing{path_of(name), frame.position, about, ""};
}

void FieldLoader::scalar(const ScalarField& field) {
  const LocatedNode* node = take(field.name);
  const std::string path = path_of(field.name);
  if (node == nullptr) {
    if (field.default_text) {
      read_default(field);
      if (!field.lists.empty() && !field.default_text->empty())
        places_.note_name(path, *field.default_text, field.lists, field.words, field.having);
    } else if (!field.optional) {
      note_missing(field.name, field.about);
    }
    return;
  }
  if (node->kind != LocatedNode::Kind::scalar) wrong_kind(*node, path, wanted_text(field));
  places_.note(path, {node->position, node->text, false});
  if (node->quoted && written_bare(field))
    places_.fail(ErrorKind::wrong_type, path,
                 fmt::format("in quotes this is a text; this must be {}: remove the quotes", wanted_text(field)));
  if (const auto failure = field.read(node->text)) places_.fail(failure->kind, path, failure->message);
  if (!field.lists.empty()) places_.note_name(path, node->text, field.lists, field.words, field.having);
}

bool FieldLoader::open_group(const GroupField& group) {
  const LocatedNode* node = take(group.name);
  if (node == nullptr && group.optional) return false;
  if (node != nullptr && node->kind != LocatedNode::Kind::mapping)
    wrong_kind(*node, path_of(group.name), "a mapping of keys and values");
  push(node, group.name, false);
  frames_.back().about = group.about;
  frames_.back().example = group.example;
  return true;
}

void FieldLoader::close_group() {
  Frame frame = std::move(frames_.back());
  frames_.pop_back();
  check_unknown(frame);
  if (!frame.missing) return;
  if (frame.node == nullptr) {  // the whole group is missing: the mapping that lacks it comes first
    if (!frame.example.empty()) frame.missing = Missing{frame.path, frame.position, frame.about, frame.example};
    if (!frames_.back().missing) frames_.back().missing = frame.missing;
    return;
  }
  if (!frame.missing->example.empty())
    fail_at(ErrorKind::missing_key, frame.missing->position,
            fmt::format("{}: there is no such block{}; put one in, such as {}", shown_path(frame.missing->path),
                        about_text(frame.missing->about), frame.missing->example));
  fail_at(ErrorKind::missing_key, frame.missing->position,
          fmt::format("{}: this key is missing and has no default{}", shown_path(frame.missing->path),
                      about_text(frame.missing->about)));
}

void FieldLoader::check_unknown(const Frame& frame) const {
  if (frame.node == nullptr) return;
  for (const LocatedEntry& entry : frame.node->entries) {
    if (std::find(frame.known.begin(), frame.known.end(), entry.key) != frame.known.end()) continue;
    std::vector<std::string> unused;  // a suggestion that is already there would not help
    for (const std::string& key : frame.known)
      if (frame.node->find(key) == nullptr) unused.push_back(key);
    const std::string suggestion = did_you_mean(entry.key, unused);
    fail_at(ErrorKind::unknown_key, entry.key_position,
            fmt::format("{}: unknown key \"{}\"{}; allowed: {}", shown_path(frame.path), entry.key,
                        suggestion.empty() ? did_you_mean(entry.key, frame.known) : suggestion,
                        fmt::join(frame.known, ", ")));
  }
}

std::vector<std::string> FieldLoader::item_labels(const LocatedNode& node, const ItemsField& items,
                                                  const std::string& path) {
  std::vector<std::string> labels;
  if (items.type != ItemsField::Type::named) {
    if (node.kind != LocatedNode::Kind::list) wrong_kind(node, path, "a list");
    for (std::size_t i = 1; i <= node.items.size(); ++i) labels.push_back(std::to_string(i));
  } else {
    if (node.kind != LocatedNode::Kind::mapping) wrong_kind(node, path, "a mapping from names to their values");
    for (const LocatedEntry& entry : node.entries) {
      if (!is_item_name(entry.key))
        fail_at(ErrorKind::wrong_type, entry.key_position,
                fmt::format("{}: \"{}\" cannot be a name; a name starts with a letter and holds letters, digits, "
                            "spaces, - and _",
                            shown_path(path), entry.key));
      labels.push_back(entry.key);
    }
  }
  const ListOptions& o = items.options;
  if (labels.size() < o.minimum_count || labels.size() > o.maximum_count)
    fail_at(ErrorKind::out_of_range, node.position,
            fmt::format("{}: {} given; allowed: {} to {}", shown_path(path), labels.size(), o.minimum_count,
                        o.maximum_count));
  return labels;
}

std::vector<std::string> FieldLoader::open_items(const ItemsField& items, std::vector<std::string>) {
  const LocatedNode* node = take(items.name);
  if (node == nullptr && items.options.required)
    note_missing(items.name, items.options.about == nullptr ? "" : items.options.about);
  std::vector<std::string> labels;
  if (node != nullptr) labels = item_labels(*node, items, path_of(items.name));
  push(node, items.name, true);
  return labels;
}

void FieldLoader::close_items() {
  const Frame frame = std::move(frames_.back());
  frames_.pop_back();
  NOON_ASSERT(!frame.missing);
}

std::vector<std::size_t> FieldLoader::open_alternatives(const ScalarField& word, const std::size_t& index) {
  scalar(word);
  const Frame& frame = frames_.back();
  const bool given = frame.node != nullptr && frame.node->find(word.name) != nullptr;
  if (!given && !word.default_text && frame.node != nullptr) {  // which keys are allowed depends on it
    std::string typed;
    for (const LocatedEntry& entry : frame.node->entries)
      if (!nearest_word(entry.key, {word.name}).empty()) typed = fmt::format("; is \"{}\" meant to be it?", entry.key);
    fail_at(ErrorKind::missing_key, frame.position,
            fmt::format("{}: this key is missing; it is one of {}{}{}", shown_path(path_of(word.name)),
                        fmt::join(word.words, ", "), about_text(word.about), typed));
  }
  return {index};
}

}  // namespace noonhouse
