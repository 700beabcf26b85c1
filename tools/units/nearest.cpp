// SPDX-License-Identifier: Apache-2.0
#include "tools/units/nearest.hpp"

#include <algorithm>
#include <limits>

namespace noonhouse {
namespace {

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }
bool same(char a, char b) { return lower(a) == lower(b); }

}  // namespace

std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> before(b.size() + 1), previous(b.size() + 1), row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) previous[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t replaced = previous[j - 1] + (same(a[i - 1], b[j - 1]) ? 0U : 1U);
      row[j] = std::min({previous[j] + 1, row[j - 1] + 1, replaced});
      const bool swapped = i > 1 && j > 1 && same(a[i - 1], b[j - 2]) && same(a[i - 2], b[j - 1]);
      if (swapped) row[j] = std::min(row[j], before[j - 2] + 1);
    }
    before.swap(previous);
    previous.swap(row);
  }
  return previous[b.size()];
}

std::string nearest_word(std::string_view read, const std::vector<std::string>& candidates) {
  std::string nearest;
  std::size_t least = std::numeric_limits<std::size_t>::max();
  for (const std::string& candidate : candidates) {
    const std::size_t length = std::max(read.size(), candidate.size());
    const std::size_t distance = edit_distance(read, candidate);
    const bool near = distance <= std::max<std::size_t>(1, length / 3) && distance < length;
    if (near && distance < least) {
      least = distance;
      nearest = candidate;
    }
  }
  return nearest;
}

std::string did_you_mean(std::string_view read, const std::vector<std::string>& candidates) {
  const std::string nearest = nearest_word(read, candidates);
  return nearest.empty() ? nearest : ", did you mean \"" + nearest + "\"?";
}

}  // namespace noonhouse
