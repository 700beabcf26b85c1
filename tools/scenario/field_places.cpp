// SPDX-License-Identifier: Apache-2.0
#include "tools/scenario/field_places.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "tools/units/nearest.hpp"

namespace noonhouse {

void Places::note(const std::string& path, Place place) { places_[path] = std::move(place); }

const Place* Places::at(const std::string& path) const {
  const auto found = places_.find(path);
  return found == places_.end() ? nullptr : &found->second;
}

const Place* Places::find(const std::string& path) const {
  for (std::string part = path; !part.empty();) {
    if (const Place* place = at(part)) return place;
    const std::size_t dot = part.rfind('.');
    part.resize(dot == std::string::npos ? 0 : dot);
  }
  return at("");
}

std::vector<std::string> Places::defaulted() const {
  std::vector<std::string> paths;
  for (const auto& [path, place] : places_)
    if (place.defaulted) paths.push_back(path);
  return paths;
}

void Places::note_name(const std::string& path, const std::string& name, std::vector<std::string> lists,
                       std::vector<std::string> also) {
  names_.push_back({path, name, std::move(lists), std::move(also)});
}

std::vector<std::string> Places::children(const std::string& path) const {
  std::vector<std::string> parts;
  const std::string prefix = path + ".";
  for (auto it = places_.lower_bound(prefix); it != places_.end() && it->first.starts_with(prefix); ++it) {
    const std::string rest = it->first.substr(prefix.size());
    if (rest.find('.') == std::string::npos) parts.push_back(rest);
  }
  return parts;
}

void Places::check_names() const {
  for (const NameUse& use : names_) {
    std::vector<std::string> allowed = use.also;
    std::vector<std::string> lists;
    for (const std::string& list : use.lists) {
      const auto names = children(list);
      allowed.insert(allowed.end(), names.begin(), names.end());
      lists.push_back(shown_path(list));
    }
    if (std::find(allowed.begin(), allowed.end(), use.name) != allowed.end()) continue;
    const std::string there = allowed.empty() ? "there is none" : fmt::format("allowed: {}", fmt::join(allowed, ", "));
    fail(ErrorKind::unknown_name, use.path,
         fmt::format("no such name under {}{}; {}", fmt::join(lists, " or "), did_you_mean(use.name, allowed), there));
  }
}

void Places::fail(ErrorKind kind, const std::string& path, std::string_view message) const {
  const Place* exact = at(path);
  const Place* place = exact != nullptr ? exact : find(path);
  std::string read;
  if (exact != nullptr && exact->defaulted) {
    read = fmt::format("not given, so \"{}\"; ", exact->text);
  } else if (exact != nullptr && !exact->text.empty()) {
    read = fmt::format("read \"{}\"; ", exact->text);
  }
  fail_at(kind, place == nullptr ? Position{} : place->position,
          fmt::format("{}: {}{}", shown_path(path), read, message));
}

std::string joined_path(const std::string& path, const std::string& part) {
  return path.empty() ? part : path + "." + part;
}

std::string shown_path(std::string_view path) {
  std::string shown;
  for (const char c : path) {
    if (c == '.') {
      shown += " › ";
    } else {
      shown += c;
    }
  }
  return shown.empty() ? "the scenario" : shown;
}

}  // namespace noonhouse
