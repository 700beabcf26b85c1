// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/located_yaml.hpp"

#include <fmt/format.h>
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/mark.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <fstream>
#include <iterator>
#include <map>
#include <sstream>

#include "tools/scenario/located_text.hpp"

namespace noonhouse {
namespace {

/// Builds the tree from the parser's events. Events, not the parser's own tree: aliases can be counted before they
/// are expanded, duplicate keys are still there, and every scalar comes with its mark.
class TreeBuilder final : public YAML::EventHandler {
 public:
  explicit TreeBuilder(std::shared_ptr<const SourceText> source) : source_(std::move(source)), lines_(source_->text) {}

  LocatedNode take_root() { return std::move(root_); }
  Position position(const YAML::Mark& mark) const {
    return {source_, mark.line + 1, lines_.column_in_characters(mark.line, mark.column)};
  }

  void OnDocumentStart(const YAML::Mark&) override {}
  void OnDocumentEnd() override {}
  void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override {
    LocatedNode node;
    node.position = position(mark);
    add(std::move(node), anchor);
  }
  void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                const std::string& value) override {
    check_tag(mark, tag);
    LocatedNode node;
    node.position = position(mark);
    node.quoted = tag == "!";
    const bool null_word = !node.quoted && (value == "~" || value == "null" || value == "Null" || value == "NULL");
    if (!null_word) {
      node.kind = LocatedNode::Kind::scalar;
      node.text = value;
    }
    add(std::move(node), anchor);
  }
  void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                       YAML::EmitterStyle::value) override {
    open(mark, tag, anchor, LocatedNode::Kind::list);
  }
  void OnSequenceEnd() override { close(); }
  void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                  YAML::EmitterStyle::value) override {
    open(mark, tag, anchor, LocatedNode::Kind::mapping);
  }
  void OnMapEnd() override { close(); }
  void OnAlias(const YAML::Mark& mark, YAML::anchor_t anchor) override {
    const auto known = anchors_.find(anchor);
    if (known == anchors_.end())
      fail_at(ErrorKind::anchor_cycle, position(mark), "an alias stands inside the anchor it names");
    if (wants_key()) key_must_be_plain(position(mark));
    const Size size = sizes_.at(anchor);
    count(size.nodes, static_cast<int>(open_.size()) + size.depth, position(mark));
    attach(known->second);
  }

 private:
  struct Size {
    int nodes = 0, depth = 0;
  };
  struct Open {
    LocatedNode node;
    YAML::anchor_t anchor = YAML::NullAnchor;
    bool has_key = false;
    LocatedEntry pending;
  };

  static Size size_of(const LocatedNode& node) {
    Size size{1, 1};
    const auto include = [&](const LocatedNode& child) {
      const Size inner = size_of(child);
      size.nodes += inner.nodes;
      size.depth = std::max(size.depth, inner.depth + 1);
    };
    for (const LocatedNode& item : node.items) include(item);
    for (const LocatedEntry& entry : node.entries) include(entry.value);
    return size;
  }

  void check_tag(const YAML::Mark& mark, const std::string& tag) const {
    if (tag.empty() || tag == "?" || tag == "!") return;
    fail_at(ErrorKind::file_syntax, position(mark), fmt::format("the tag \"{}\" is not used here; remove it", tag));
  }
  [[noreturn]] static void key_must_be_plain(const Position& at) {
    fail_at(ErrorKind::file_syntax, at, "a key must be a plain word, not a list, a mapping, an alias or nothing");
  }
  void count(int nodes, int depth, const Position& at) {
    nodes_ += nodes;
    if (nodes_ > kYamlMaxNodes)
      fail_at(ErrorKind::anchor_cycle, at,
              fmt::format("more than {} values, counted with aliases expanded", kYamlMaxNodes));
    if (depth > kYamlMaxDepth)
      fail_at(ErrorKind::anchor_cycle, at, fmt::format("nested more than {} levels deep", kYamlMaxDepth));
  }
  bool wants_key() const {
    return !open_.empty() && open_.back().node.kind == LocatedNode::Kind::mapping && !open_.back().has_key;
  }
  void open(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor, LocatedNode::Kind kind) {
    check_tag(mark, tag);
    if (wants_key()) key_must_be_plain(position(mark));
    count(1, static_cast<int>(open_.size()) + 1, position(mark));
    Open opened;
    opened.node.kind = kind;
    opened.node.position = position(mark);
    opened.anchor = anchor;
    open_.push_back(std::move(opened));
  }
  void close() {
    Open closed = std::move(open_.back());
    open_.pop_back();
    remember(closed.anchor, closed.node);
    attach(std::move(closed.node));
  }
  void add(LocatedNode node, YAML::anchor_t anchor) {
    if (wants_key()) return take_key(node, anchor);
    count(1, static_cast<int>(open_.size()) + 1, node.position);
    remember(anchor, node);
    attach(std::move(node));
  }
  void remember(YAML::anchor_t anchor, const LocatedNode& node) {
    if (anchor == YAML::NullAnchor) return;
    const Size size = size_of(node);
    kept_nodes_ += size.nodes;  // anchors inside anchors are kept more than once
    if (kept_nodes_ > kYamlMaxNodes)
      fail_at(ErrorKind::anchor_cycle, node.position, fmt::format("more than {} values under anchors", kYamlMaxNodes));
    anchors_[anchor] = node;
    sizes_[anchor] = size;
  }
  void take_key(const LocatedNode& node, YAML::anchor_t anchor) {
    if (node.kind != LocatedNode::Kind::scalar || node.text.empty()) key_must_be_plain(node.position);
    if (node.text == "<<" && !node.quoted)
      fail_at(ErrorKind::file_syntax, node.position,
              "merge keys (<<) are not used here; write the keys out, or make a plan that changes a few of them");
    remember(anchor, node);
    Open& mapping = open_.back();
    if (const LocatedEntry* first = mapping.node.find(node.text))
      fail_at(ErrorKind::duplicate_key, node.position,
              fmt::format("the key \"{}\" stands here for the second time; the first is at {}:{}", node.text,
                          first->key_position.line, first->key_position.column));
    mapping.pending = {node.text, node.position, {}};
    mapping.has_key = true;
  }
  void attach(LocatedNode node) {
    if (open_.empty()) {
      root_ = std::move(node);
    } else if (Open& parent = open_.back(); parent.node.kind == LocatedNode::Kind::list) {
      parent.node.items.push_back(std::move(node));
    } else {
      if (node.kind == LocatedNode::Kind::nothing)
        node.position = parent.pending.key_position;  // its mark is behind it
      parent.pending.value = std::move(node);
      parent.node.entries.push_back(std::move(parent.pending));
      parent.pending = {};
      parent.has_key = false;
    }
  }

  std::shared_ptr<const SourceText> source_;
  LineIndex lines_;
  LocatedNode root_;
  std::vector<Open> open_;
  std::map<YAML::anchor_t, LocatedNode> anchors_;
  std::map<YAML::anchor_t, Size> sizes_;
  int nodes_ = 0;
  int kept_nodes_ = 0;
};

/// The parser's message, and what it usually means.
std::string syntax_message(const std::string& message, std::string_view line) {
  std::string text = "not readable as YAML: " + message;
  if (line.find('\t') != std::string_view::npos) text += " (the line holds a tab: indent with spaces)";
  if (line.find(": %") != std::string_view::npos) text += " (a value may not start with %)";
  return text;
}

LocatedNode parse(const std::shared_ptr<const SourceText>& source) {
  std::istringstream stream(source->text);
  TreeBuilder builder(source);
  try {
    YAML::Parser parser(stream);
    if (!parser.HandleNextDocument(builder))
      fail_at(ErrorKind::file_empty, {source, 0, 0}, "the file holds nothing but comments and blank lines");
    LocatedNode root = builder.take_root();
    TreeBuilder second(source);
    if (parser.HandleNextDocument(second)) {
      const LocatedNode extra = second.take_root();
      fail_at(ErrorKind::file_syntax, extra.position, "a second document (after ---) starts here; one file holds one");
    }
    if (root.kind == LocatedNode::Kind::nothing)
      fail_at(ErrorKind::file_empty, {source, 0, 0}, "the file holds no keys and values");
    return root;
  } catch (const YAML::Exception& e) {
    const Position at = builder.position(e.mark);
    const std::string line = line_text(*source, at.line);
    fail_at(ErrorKind::file_syntax, e.mark.is_null() ? Position{source, 0, 0} : at, syntax_message(e.msg, line));
  }
}

}  // namespace

LocatedNode read_yaml_text(std::string_view text, const std::string& name) {
  const auto source = std::make_shared<const SourceText>(SourceText{name, std::string(text)});
  if (text.size() > kYamlMaxBytes)
    fail_at(ErrorKind::file_too_large, {source, 0, 0},
            fmt::format("{} bytes; at most {} are read", text.size(), kYamlMaxBytes));
  check_is_text(source);
  if (only_comments(text))
    fail_at(ErrorKind::file_empty, {source, 0, 0},
            text.empty() ? "the file is empty" : "the file holds nothing but comments and blank lines");
  return parse(source);
}

LocatedNode read_yaml_file(const std::filesystem::path& path) {
  return read_yaml_text(read_text_file(path), path.string());
}

}  // namespace noonhouse
