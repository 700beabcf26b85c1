// SPDX-License-Identifier: Apache-2.0
#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace noonhouse {

/// Edits (insert, delete, replace, swap of neighbours; each counts 1) that turn one word into the other; letter case
/// is ignored. Optimal string alignment.
std::size_t edit_distance(std::string_view a, std::string_view b);

/// The candidate nearest to what was read, the first of equals; empty when none is within a third of its length
/// (at least 1 edit).
std::string nearest_word(std::string_view read, const std::vector<std::string>& candidates);

/// ", did you mean "vents"?" or nothing where no candidate is near.
std::string did_you_mean(std::string_view read, const std::vector<std::string>& candidates);

}  // namespace noonhouse
