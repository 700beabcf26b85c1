// SPDX-License-Identifier: Apache-2.0
#include "tools/cli/key_list.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <utility>
#include <vector>

#include "sim/core/errors.hpp"
#include "tools/compare/comparison_layout.hpp"
#include "tools/compare/comparison_text.hpp"
#include "tools/units/nearest.hpp"

namespace noonhouse {
namespace {

using Json = nlohmann::ordered_json;

constexpr int kKeyIndent = 2, kTextIndent = 6;
constexpr std::string_view kRoot = "at the top of the file";

std::string word_of(const Json& schema, const char* key) {
  return schema.contains(key) && schema[key].is_string() ? schema[key].get<std::string>() : std::string();
}

/// A value as a file would have it: words without quotes.
std::string plain(const Json& value) { return value.is_string() ? value.get<std::string>() : value.dump(); }

bool is_mapping(const Json& schema) { return schema.contains("properties") || schema.contains("oneOf"); }
bool is_named(const Json& schema) {
  return schema.contains("additionalProperties") && schema["additionalProperties"].is_object();
}
bool is_list(const Json& schema) { return schema.contains("items"); }

/// The range of a plain number, which no unit's text tells.
std::string number_range(const Json& schema) {
  std::vector<std::string> parts;
  const std::pair<const char*, const char*> words[] = {{"minimum", "at least {}"},
                                                       {"exclusiveMinimum", "above {}"},
                                                       {"maximum", "at most {}"},
                                                       {"exclusiveMaximum", "below {}"}};
  for (const auto& [key, text] : words)
    if (schema.contains(key))
      parts.push_back(fmt::format(fmt::runtime(text), fmt::format("{:.6g}", schema[key].get<double>())));
  return fmt::format("{}", fmt::join(parts, " and "));
}

/// What a value is: its choices, its range, its kind where the description does not say.
std::string value_words(const Json& schema) {
  if (schema.contains("const")) return "";
  if (schema.contains("enum")) {
    std::vector<std::string> words;
    for (const Json& word : schema["enum"]) words.push_back(plain(word));
    return fmt::format("one of: {}", fmt::join(words, ", "));
  }
  const std::string type = word_of(schema, "type");
  if (type == "boolean") return "true or false";
  if (type == "integer" || type == "number") {
    const std::string range = number_range(schema);
    return (type == "integer" ? "whole number" : "number") + (range.empty() ? "" : ", " + range);
  }
  return "";
}

/// The description, in the place of its list of all units the first few.
std::string with_few_units(std::string about) {
  constexpr std::string_view kUnits = ". Units: ", kComma = ", ";
  constexpr int kMost = 4;
  const std::size_t at = about.find(kUnits);
  if (at == std::string::npos) return about;
  std::size_t end = at + kUnits.size();
  for (int i = 0; i < kMost && end < about.size(); ++i) end = std::min(about.find(kComma, end + 1), about.size());
  if (end < about.size()) about.replace(end, std::string::npos, " and others");
  return about.replace(at, kUnits.size(), "; in ");
}

/// The name of a block as it is asked for: "thermostats" of "thermostats.NAME".
std::string asked_as(std::string path) {
  for (const std::string_view end : {".NAME", ".each"})
    if (path.ends_with(end)) path.resize(path.size() - end.size());
  return path;
}

class Lister {
 public:
  Lister(std::string_view wanted, int width) : wanted_(wanted), width_(width) {}

  void block(const Json& schema, const std::string& path, const std::string& note) {
    if (schema.contains("oneOf")) {
      for (const Json& one : schema["oneOf"]) {
        std::string which;
        for (const auto& [key, property] : one["properties"].items())
          if (property.contains("const")) which = fmt::format("with {}: {}", key, plain(property["const"]));
        block(one, path, note.empty() ? which : fmt::format("{}; {}", note, which));
      }
      return;
    }
    if (!schema.contains("properties")) return;
    paths_.push_back(asked_as(path));
    const bool shown = is_wanted(path);
    if (shown) heading(path, note);
    std::vector<std::pair<std::string, const Json*>> deeper;
    for (const auto& [key, property] : schema["properties"].items()) {
      if (shown) line(key, property, needed(schema, key));
      deeper.emplace_back(path.empty() ? key : fmt::format("{}.{}", path, key), &property);
    }
    for (const auto& [below, property] : deeper) inside(*property, below);
  }

  std::string out;
  const std::vector<std::string>& paths() const { return paths_; }

 private:
  /// What lies in a key: one mapping, one by each name, or one each of a list.
  void inside(const Json& schema, const std::string& path) {
    const std::string about = word_of(schema, "description");
    if (is_mapping(schema)) return block(schema, path, about);
    if (is_named(schema)) return block(schema["additionalProperties"], path + ".NAME", about);
    if (is_list(schema)) block(schema["items"], path + ".each", about);
  }

  bool is_wanted(const std::string& path) const {
    return wanted_.empty() || path == wanted_ || path.starts_with(std::string(wanted_) + ".");
  }

  static bool needed(const Json& schema, const std::string& key) {
    const auto found = schema.find("required");
    return found != schema.end() && std::find(found->begin(), found->end(), Json(key)) != found->end();
  }

  void heading(const std::string& path, const std::string& note) {
    if (!out.empty()) out += '\n';
    const std::string name = path.empty() ? std::string(kRoot) : path;
    for (const std::string& text : wrap_text(note.empty() ? name : fmt::format("{}: {}", name, note), width_)) {
      out += text;
      out += '\n';
    }
  }

  void line(const std::string& key, const Json& schema, bool is_needed) {
    std::vector<std::string> parts;
    const auto add = [&](const std::string& part) {
      if (!part.empty()) parts.push_back(part);
    };
    std::string about = word_of(schema, "description");
    if (about.ends_with('.')) about.pop_back();
    add(with_few_units(about));
    const bool many = is_list(schema) && !is_mapping(schema["items"]) && !is_named(schema["items"]);
    const Json& value = many ? schema["items"] : schema;
    if (many)
      add(value["description"] == schema["description"] ? "list" : "list, each " + word_of(value, "description"));
    if (schema.contains("const")) add("here: " + plain(schema["const"]));
    add(value_words(value));
    if (is_mapping(schema)) add("a block of its own");
    if (is_named(schema)) add("blocks by names of yours");
    if (is_list(schema) && !many) add("a list of blocks");
    if (const std::string text = plain(schema.value("default", Json(""))); !text.empty()) add("default " + text);
    if (is_needed) add("needed");
    const std::string text = fmt::format("{}: {}", key, fmt::join(parts, "; "));
    std::vector<std::string> lines = wrap_text(text, width_ - kTextIndent);
    for (std::size_t i = 0; i < lines.size(); ++i)
      out += std::string(static_cast<std::size_t>(i == 0 ? kKeyIndent : kTextIndent), ' ') + lines[i] + '\n';
  }

  std::string_view wanted_;
  int width_;
  std::vector<std::string> paths_;
};

}  // namespace

std::string key_list(const std::string& schema, std::string_view block, int width) {
  Lister lister(block, std::clamp(width, kNarrowestTable, kWidestTable));
  Json all = Json::parse(schema);
  // A plan's change has the keys of the whole file: told, not listed again.
  lister.block(all, "", "a value with its unit stands as text: 300 L, 38 degC, 2.5 L/min");
  if (!lister.out.empty()) return lister.out;
  throw UserError(ErrorKind::unknown_name,
                  fmt::format("scenario files have no block \"{}\"{}; \"noonhouse keys\" lists all", block,
                              did_you_mean(std::string(block), lister.paths())));
}

}  // namespace noonhouse
