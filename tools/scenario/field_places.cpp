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
                       std::vector<std::string> also, KeyAndText having) {
  names_.push_back({path, name, std::move(lists), std::move(also), std::move(having)});
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

bool Places::has(const std::string& item, const KeyAndText& having) const {
  if (having.first.empty()) return true;
  const Place* value = at(joined_path(item, having.first));
  return value != nullptr && value->text == having.second;
}

void Places::check_names() const {
  for (const NameUse& use : names_) {
    std::vector<std::string> all = use.also, allowed = use.also;
    std::vector<std::string> lists;
    for (const std::string& list : use.lists) {
      lists.push_back(shown_path(list));
      for (const std::string& name : children(list)) {
        all.push_back(name);
        if (has(joined_path(list, name), use.having)) allowed.push_back(name);
      }
    }
    const auto among = [&](const std::vector<std::string>& names) {
      return std::find(names.begin(), names.end(), use.name) != names.end();
    };
    if (among(allowed)) continue;
    const std::string where = fmt::format("{}", fmt::join(lists, " or "));
    const std::string wrong =
        among(all) ? fmt::format("this must be one under {} that {} {}", where, use.having.first, use.having.second)
                   : "no such name under " + where;
    fail(among(all) ? ErrorKind::wrong_type : ErrorKind::unknown_name, use.path,
         fmt::format("{}{}; {}", wrong, did_you_mean(use.name, allowed), allowed_words(allowed)));
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

std::string allowed_words(const std::vector<std::string>& names) {
  return names.empty() ? "there is none" : fmt::format("allowed: {}", fmt::join(names, ", "));
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
