// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <algorithm>
#include <span>
#include <string_view>

namespace noonhouse {

/// A figure with the place it comes from. The unit stands in the name of the field that holds it; `source` is the
/// published table or equation, and says "from memory" or "common practice, no source" where that is so.
struct SourcedValue {
  double value;
  const char* source;
};

/// The source of a figure that the trade uses and nobody published, as far as we know.
inline constexpr const char* kCommonPractice = "common practice, no source";

/// The entry of a library by its name, or null: the caller knows whom to ask again.
template <class Entry>
const Entry* find_named(std::span<const Entry> all, std::string_view name) {
  const auto found = std::find_if(all.begin(), all.end(), [&](const Entry& entry) { return name == entry.name; });
  return found == all.end() ? nullptr : &*found;
}

}  // namespace noonhouse
