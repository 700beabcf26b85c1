// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <gtest/gtest.h>

#include <cctype>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace noonhouse {

/// A strict reader of the XML that a drawing needs: elements, quoted attributes, text and the five named characters.
/// Comments, declarations and sections are refused, so nothing can hide in them.
class StrictXml {
 public:
  struct Element {
    std::string name, text;
    std::map<std::string, std::string> attributes;
  };

  /// What is wrong with the document, or nothing.
  static std::optional<std::string> fault_of(const std::string& document) {
    StrictXml reader(document);
    return reader.fault_;
  }
  static std::vector<Element> elements_of(const std::string& document) {
    StrictXml reader(document);
    EXPECT_FALSE(reader.fault_) << reader.fault_.value_or("");
    return reader.elements_;
  }

 private:
  explicit StrictXml(const std::string& document) : rest_(document) {
    while (!fault_ && !rest_.empty()) rest_.front() == '<' ? read_tag() : read_text();
    if (!fault_ && !open_.empty()) fault_ = "not closed: " + elements_[open_.back()].name;
    if (!fault_ && roots_ != 1) fault_ = "not one root";
  }

  void fail(const std::string& what) { fault_ = what + " before: " + std::string(rest_.substr(0, 40)); }
  bool take(std::string_view token) {
    if (!rest_.starts_with(token)) return false;
    rest_.remove_prefix(token.size());
    return true;
  }
  std::string take_until(std::string_view stops) {
    std::string taken(rest_.substr(0, rest_.find_first_of(stops)));
    rest_.remove_prefix(taken.size());
    return taken;
  }
  std::string take_name() {
    std::string name;
    while (!rest_.empty() && (std::isalnum(static_cast<unsigned char>(rest_.front())) != 0 || rest_.front() == '-')) {
      name += rest_.front();
      rest_.remove_prefix(1);
    }
    if (name.empty()) fail("no name");
    return name;
  }
  std::string resolved(const std::string& raw) {
    static const std::map<std::string, char> kNamed{
        {"amp", '&'}, {"lt", '<'}, {"gt", '>'}, {"quot", '"'}, {"#39", '\''}};
    std::string out;
    for (std::size_t at = 0; at < raw.size(); ++at) {
      if (raw[at] != '&') {
        if (static_cast<unsigned char>(raw[at]) < 0x20 && raw[at] != '\n') fail("a control character");
        out += raw[at];
        continue;
      }
      const std::size_t end = raw.find(';', at);
      const auto named = end == std::string::npos ? kNamed.end() : kNamed.find(raw.substr(at + 1, end - at - 1));
      if (named == kNamed.end()) {
        fail("a bare &");
        return out;
      }
      out += named->second;
      at = end;
    }
    return out;
  }
  void read_text() {
    const std::string text = resolved(take_until("<"));
    if (!open_.empty()) {
      elements_[open_.back()].text += text;
    } else if (text.find_first_not_of('\n') != std::string::npos) {
      fail("text outside of the root");
    }
  }
  void read_tag() {
    if (take("</")) {
      const std::string name = take_name();
      if (open_.empty() || elements_[open_.back()].name != name || !take(">")) return fail("a wrong end: " + name);
      open_.pop_back();
      return;
    }
    take("<");
    Element element{take_name(), "", {}};
    while (!fault_ && take(" ")) {
      const std::string name = take_name();
      if (!take("=\"")) return fail("an attribute without quotes");
      const std::string raw = take_until("\"<");
      if (!take("\"")) return fail("an attribute that does not end");
      if (!element.attributes.emplace(name, resolved(raw)).second) return fail("an attribute twice");
    }
    if (fault_) return;
    const bool empty = take("/>");
    if (!empty && !take(">")) return fail("a tag that does not end");
    if (open_.empty()) ++roots_;
    elements_.push_back(element);
    if (!empty) open_.push_back(elements_.size() - 1);
  }

  std::string_view rest_;
  std::vector<Element> elements_;
  std::vector<std::size_t> open_;
  int roots_ = 0;
  std::optional<std::string> fault_;
};

/// The texts of all elements of a name, in the order of the document.
inline std::vector<std::string> texts_of(const std::string& svg, const std::string& element) {
  std::vector<std::string> texts;
  for (const StrictXml::Element& found : StrictXml::elements_of(svg))
    if (found.name == element) texts.push_back(found.text);
  return texts;
}

}  // namespace noonhouse
