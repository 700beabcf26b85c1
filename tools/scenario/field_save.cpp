// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/field_save.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string_view>

namespace noonhouse {
namespace {

bool is_word_of_yaml(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  constexpr std::array<std::string_view, 9> kWords = {"true", "false", "yes", "no", "on", "off", "null", "y", "n"};
  return std::find(kWords.begin(), kWords.end(), text) != kWords.end();
}

bool is_plain(const std::string& text) {
  const auto letter = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80U;
  };
  const auto safe = [&](char c) {
    return letter(c) || (c >= '0' && c <= '9') || std::string_view(" _-./()+,;'").find(c) != std::string_view::npos;
  };
  return !text.empty() && letter(text.front()) && text.back() != ' ' && std::all_of(text.begin(), text.end(), safe) &&
         !is_word_of_yaml(text);
}

bool written_bare(ScalarField::Type type) {
  return type == ScalarField::Type::quantity || type == ScalarField::Type::integer || type == ScalarField::Type::flag;
}

std::string spaces(int count) { return std::string(static_cast<std::size_t>(count), ' '); }

}  // namespace

std::string yaml_scalar(const std::string& text) {
  if (is_plain(text)) return text;
  std::string quoted = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') {
      quoted += '\\';
      quoted += c;
    } else if (c == '\n') {
      quoted += "\\n";
    } else if (c == '\t') {
      quoted += "\\t";
    } else if (static_cast<unsigned char>(c) < 0x20U || c == 0x7F) {
      quoted += fmt::format("\\x{:02x}", static_cast<unsigned>(c));
    } else {
      quoted += c;
    }
  }
  return quoted + "\"";
}

FieldSaver::Frame& FieldSaver::top() {
  if (frames_.empty()) frames_.emplace_back();
  return frames_.back();
}

std::string FieldSaver::finish() {
  NOON_ASSERT(frames_.size() <= 1);
  return top().empty ? "{}\n" : text_;
}

/// The indentation, dash and key that start a line of the innermost frame.
std::string FieldSaver::start_line(const std::string& name) {
  Frame& frame = top();
  frame.empty = false;
  if (frame.list) return spaces(frame.indent) + "-";
  const std::string key = yaml_scalar(name) + ":";
  if (!frame.dash) return spaces(frame.indent) + key;
  frame.dash = false;
  return spaces(frame.indent - 2) + "- " + key;
}

void FieldSaver::scalar(const ScalarField& field) {
  const std::optional<std::string> value = field.write(system_);
  if (!value) return;
  const std::string path = joined_path(top().path, field.name);
  text_ += start_line(field.name) + " " + (written_bare(field.type) ? *value : yaml_scalar(*value));
  const Place* place = places_ == nullptr ? nullptr : places_->at(path);
  text_ += place != nullptr && place->defaulted ? "  # default\n" : "\n";
}

void FieldSaver::push(const std::string& name, bool list) {
  Frame frame;
  frame.list = list;
  frame.path = joined_path(top().path, name);
  frame.indent = top().indent + 2;
  frame.dash = top().list;
  frame.empty_text = list ? "[]" : "{}";
  if (frame.dash) {
    top().empty = false;
  } else {
    text_ += start_line(name) + "\n";
  }
  frames_.push_back(std::move(frame));
}

bool FieldSaver::open_group(const GroupField& group) {
  if (group.optional && !group.present) return false;
  push(group.name, false);
  return true;
}

void FieldSaver::close_group() {
  const Frame frame = std::move(frames_.back());
  frames_.pop_back();
  if (!frame.empty) return;
  if (frame.dash) {
    text_ += spaces(frame.indent - 2) + "- " + frame.empty_text + "\n";
  } else {
    text_.insert(text_.size() - 1, " " + frame.empty_text);
  }
}

std::vector<std::string> FieldSaver::open_items(const ItemsField& items, std::vector<std::string> present) {
  push(items.name, items.type != ItemsField::Type::named);
  return present;
}

void FieldSaver::close_items() { close_group(); }

std::vector<std::size_t> FieldSaver::open_alternatives(const ScalarField& word, const std::size_t& index) {
  scalar(word);
  return {index};
}

}  // namespace noonhouse
